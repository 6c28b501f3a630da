#include "base/wide.h"

#include "base/panic.h"

__extension__ typedef unsigned __int128 Unsigned;

static Unsigned size_of(Wide a)
{
    return a < 0 ? -(Unsigned)a : (Unsigned)a;
}

Wide wide_divide(Wide a, Wide b)
{
    BUG_UNLESS(b != 0);
    Unsigned over = size_of(a);
    Unsigned under = size_of(b);
    Unsigned quotient = over / under;
    Unsigned rest = over % under;
    if (rest >= under - rest)
        quotient++;
    return (Wide)((a < 0) != (b < 0) ? -quotient : quotient);
}

Wide wide_floor(Wide a, Wide b)
{
    BUG_UNLESS(b != 0);
    Wide quotient = a / b;
    return a % b != 0 && (a < 0) != (b < 0) ? quotient - 1 : quotient;
}

Wide wide_ceiling(Wide a, Wide b)
{
    BUG_UNLESS(b != 0);
    Wide quotient = a / b;
    return a % b != 0 && (a < 0) == (b < 0) ? quotient + 1 : quotient;
}

/*
 * Whole parts first; where they agree, a/b and c/d differ as their rests do, ra/b and rc/d, and those differ the
 * other way round from b/ra and d/rc: sign(ra/b - rc/d) = sign(d/rc - b/ra). Numbers shrink as in Euclid's algorithm.
 */
int wide_compare_ratio(Wide a, Wide b, Wide c, Wide d)
{
    BUG_UNLESS(b > 0 && d > 0);
    for (;;) {
        Wide whole_a = wide_floor(a, b);
        Wide whole_c = wide_floor(c, d);
        if (whole_a != whole_c)
            return whole_a < whole_c ? -1 : 1;
        Wide rest_a = a % b < 0 ? a % b + b : a % b;
        Wide rest_c = c % d < 0 ? c % d + d : c % d;
        if (rest_a == 0 || rest_c == 0)
            return (rest_a > 0) - (rest_c > 0);
        Wide old_b = b;
        a = d, b = rest_c;
        c = old_b, d = rest_a;
    }
}

int64_t wide_narrow(Wide a)
{
    BUG_UNLESS(a >= INT64_MIN && a <= INT64_MAX);
    return (int64_t)a;
}
