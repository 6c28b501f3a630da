#include "length/length.h"

#include "base/panic.h"
#include "base/wide.h"

Length length_round(Length value, Length step)
{
    BUG_UNLESS(step > 0);
    return wide_narrow(wide_divide(value, step) * step);
}

Length length_round_down(Length value, Length step)
{
    BUG_UNLESS(step > 0);
    return wide_narrow(wide_floor(value, step) * step);
}

Length length_round_up(Length value, Length step)
{
    BUG_UNLESS(step > 0);
    return wide_narrow(wide_ceiling(value, step) * step);
}

Length length_between(Length from, Length to, Length step)
{
    return length_round(to, step) - length_round(from, step);
}
