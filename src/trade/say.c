#include "trade/say.h"

#include "base/text.h"
#include "base/utf8.h"
#include "base/wide.h"

#include <inttypes.h>

const char *say(Arena *arena, const char *format, ...)
{
    va_list list;
    va_start(list, format);
    char *said = text_in_list(arena, format, list);
    va_end(list);
    return utf8_safe_in(arena, said);
}

/* To a step of the caller's. */
static const char *say_to(Arena *arena, const Wall *wall, Length length, Length step)
{
    char shown[LENGTH_TEXT_MAX];
    bool hidden = length > 0 && length_round(length, step) == 0;
    length_show_unit(hidden ? step : length, wall->units, step, shown);
    return say(arena, "%s%s", hidden ? "under " : "", shown);
}

const char *say_length(Arena *arena, const Wall *wall, Length length)
{
    return say_to(arena, wall, length, wall->round);
}

const char *say_place(Arena *arena, const Wall *wall, Length place)
{
    char shown[LENGTH_TEXT_MAX];
    length_show_unit(place, wall->units, wall->round, shown);
    return say(arena, "%s", shown);
}

const char *say_fine(Arena *arena, const Wall *wall, Length length)
{
    return say_to(arena, wall, length, wall->units == UNITS_IN ? LENGTH_INCH / 64 : LENGTH_MM / 10);
}

const char *say_thin(Arena *arena, const Wall *wall, Length length)
{
    if (wall->units == UNITS_IN) {
        int64_t thousandths = (int64_t)wide_divide((Wide)length * 1000, LENGTH_INCH);
        return say(arena, "%" PRId64 ".%03" PRId64 " in", thousandths / 1000, thousandths % 1000);
    }
    char shown[LENGTH_TEXT_MAX];
    length_show_unit(length, UNITS_MM, LENGTH_MM / 100, shown);
    return say(arena, "%s", shown);
}

const char *say_count(Arena *arena, int64_t count, const char *one, const char *many)
{
    return count == 1 ? say(arena, "one %s", one) : say(arena, "%" PRId64 " %s", count, many);
}
