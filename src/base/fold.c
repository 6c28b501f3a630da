#include "base/fold.h"

#include <stdbool.h>
#include <string.h>

#include "base/utf8.h"

#define HARD_SPACE "\xc2\xa0"

static bool digit(char c)
{
    return c >= '0' && c <= '9';
}

/* Whether the space at text[i] stands between the parts of a length or before its unit. */
static bool within_length(const char *text, size_t i)
{
    if (i == 0 || text[i] != ' ' || (!digit(text[i - 1]) && text[i - 1] != '\''))
        return false;
    const char *next = text + i + 1;
    size_t digits = strspn(next, "0123456789");
    if (digits > 0)
        return next[digits] == '/' || text[i - 1] == '\'';
    bool unit = strncmp(next, "in", 2) == 0 || strncmp(next, "mm", 2) == 0;
    return unit && !(next[2] >= 'a' && next[2] <= 'z');
}

/* The bytes of `text` that go into one line of `width` cells: up to the last space that fits and is not within a
 * length, else up to any space, or cut within a word that is longer than a whole line. */
static size_t line_bytes(const char *text, int width)
{
    size_t fits = utf8_prefix(text, width);
    if (text[fits] == '\0')
        return fits;
    for (size_t i = fits + 1; i > 0; i--)
        if (text[i - 1] == ' ' && !within_length(text, i - 1))
            return i;
    for (size_t i = fits + 1; i > 0; i--)
        if (text[i - 1] == ' ')
            return i;
    return fits > 0 ? fits : 1;
}

int fold_line(const char *text, int width, int number, int *begin)
{
    size_t at = 0;
    for (int line = 0;; line++) {
        size_t bytes = line_bytes(text + at, width);
        size_t next = at + bytes;
        while (text[next] == ' ')
            next++;
        if (line == number) {
            while (bytes > 0 && text[at + bytes - 1] == ' ')
                bytes--;
            *begin = (int)at;
            return (int)bytes;
        }
        if (text[next] == '\0')
            return -1;
        at = next;
    }
}

int fold_lines(const char *text, int width)
{
    int begin, count = 1;
    while (fold_line(text, width, count, &begin) >= 0)
        count++;
    return count;
}

void fold_put(Text *out, const char *text, size_t count)
{
    const size_t hard = sizeof HARD_SPACE - 1;
    for (size_t i = 0; i < count; i++) {
        bool is_hard = strncmp(text + i, HARD_SPACE, hard) == 0;
        text_put_bytes(out, is_hard ? " " : text + i, 1);
        i += is_hard ? hard - 1 : 0;
    }
}

const char *fold_hold(Arena *arena, const char *text)
{
    size_t length = strlen(text), count = 0;
    for (size_t i = 0; i < length; i++)
        count += within_length(text, i) ? 1 : 0;
    if (count == 0)
        return text;
    char *out = arena_bytes(arena, length + count + 1);
    char *at = out;
    for (size_t i = 0; i < length; i++) {
        if (within_length(text, i)) {
            *at++ = HARD_SPACE[0];
            *at++ = HARD_SPACE[1];
        } else {
            *at++ = text[i];
        }
    }
    return out;
}
