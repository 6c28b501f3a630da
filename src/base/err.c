#include "base/err.h"

#include "base/utf8.h"

#include <limits.h>
#include <stdarg.h>
#include <stdio.h>
#include <string.h>

/* What callers format may quote a user's bytes and may be too long: it is made safe and cut at a character. */
static void settle(char *out, size_t size, const char *raw)
{
    utf8_safe(out, size, raw, INT_MAX, false);
}

bool err_set(Err *err, ErrKind kind, const char *format, ...)
{
    if (err == NULL)
        return false;
    char raw[2 * ERR_TEXT_MAX];
    va_list list;
    va_start(list, format);
    vsnprintf(raw, sizeof raw, format, list);
    va_end(list);
    *err = (Err){.kind = kind};
    settle(err->text, sizeof err->text, raw);
    return false;
}

bool err_system(Err *err, int errnum, const char *format, ...)
{
    if (err == NULL)
        return false;
    char raw[2 * ERR_TEXT_MAX];
    va_list list;
    va_start(list, format);
    int length = vsnprintf(raw, sizeof raw, format, list);
    va_end(list);
    if (length >= 0 && (size_t)length < sizeof raw)
        snprintf(raw + length, sizeof raw - (size_t)length, ": %s", strerror(errnum));
    *err = (Err){.kind = ERR_SYSTEM};
    settle(err->text, sizeof err->text, raw);
    return false;
}

bool err_at(Err *err, const char *place, int line, int column)
{
    if (err == NULL)
        return false;
    settle(err->place, sizeof err->place, place);
    err->line = line;
    err->column = column;
    return false;
}

void err_line(const Err *err, char *out, size_t size)
{
    char place[ERR_PLACE_MAX + 32];
    if (err->line > 0 && err->column > 0)
        snprintf(place, sizeof place, "%s:%d:%d: ", err->place, err->line, err->column);
    else if (err->line > 0)
        snprintf(place, sizeof place, "%s:%d: ", err->place, err->line);
    else if (err->place[0] != '\0')
        snprintf(place, sizeof place, "%s: ", err->place);
    else
        place[0] = '\0';
    char line[sizeof place + ERR_TEXT_MAX];
    snprintf(line, sizeof line, "%s%s", place, err->text);
    settle(out, size, line);
}
