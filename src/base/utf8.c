#include "base/utf8.h"

#include "base/utf8_tables.h"

#include <limits.h>
#include <string.h>

enum { STAND_IN = 0xfffd };

/* The shape of what is shown in place of the next character: its bytes taken, what is shown, the cells of that. */
typedef struct StandIn {
    int bytes;
    uint32_t code;
    int cells;
} StandIn;

int utf8_decode(const char *bytes, size_t length, uint32_t *code)
{
    if (length == 0)
        return 0;
    const unsigned char *at = (const unsigned char *)bytes;
    if (at[0] < 0x80) {
        *code = at[0];
        return 1;
    }
    int size = at[0] >= 0xf0 ? 4 : at[0] >= 0xe0 ? 3 : 2;
    if (at[0] < 0xc2 || at[0] > 0xf4 || length < (size_t)size)
        return -1;
    uint32_t value = at[0] & (0x7fu >> size);
    for (int i = 1; i < size; i++) {
        if ((at[i] & 0xc0) != 0x80)
            return -1;
        value = value << 6 | (at[i] & 0x3fu);
    }
    bool overlong = (size == 3 && value < 0x800) || (size == 4 && value < 0x10000);
    if (overlong || (value >= 0xd800 && value <= 0xdfff) || value > 0x10ffff)
        return -1;
    *code = value;
    return size;
}

int utf8_encode(uint32_t code, char out[4])
{
    if (code < 0x80) {
        out[0] = (char)code;
        return 1;
    }
    if (code < 0x800) {
        out[0] = (char)(0xc0 | code >> 6);
        out[1] = (char)(0x80 | (code & 0x3f));
        return 2;
    }
    if (code < 0x10000) {
        out[0] = (char)(0xe0 | code >> 12);
        out[1] = (char)(0x80 | (code >> 6 & 0x3f));
        out[2] = (char)(0x80 | (code & 0x3f));
        return 3;
    }
    out[0] = (char)(0xf0 | code >> 18);
    out[1] = (char)(0x80 | (code >> 12 & 0x3f));
    out[2] = (char)(0x80 | (code >> 6 & 0x3f));
    out[3] = (char)(0x80 | (code & 0x3f));
    return 4;
}

static bool in_table(const CodeRange *table, size_t count, uint32_t code)
{
    size_t low = 0;
    size_t high = count;
    while (low < high) {
        size_t middle = low + (high - low) / 2;
        if (code > table[middle].last)
            low = middle + 1;
        else
            high = middle;
    }
    return low < count && code >= table[low].first;
}

#define IN_TABLE(table, code) in_table(table, sizeof(table) / sizeof *(table), code)

bool utf8_unseen(uint32_t code)
{
    return IN_TABLE(unseen, code);
}

int utf8_width(uint32_t code)
{
    if ((code >= 0x20 && code < 0x7f) || IN_TABLE(unseen, code))
        return 1;
    if (IN_TABLE(no_cell, code))
        return 0;
    return IN_TABLE(two_cells, code) ? 2 : 1;
}

/* What is shown for the character at `at`; bytes is 0 at the end. A mark with nothing before it to sit on would sit on
 * what stands to the left of the text, so it is shown as a stand-in too. */
static StandIn next_shown(const char *at, size_t length, bool first, bool ascii)
{
    StandIn shown = {0};
    shown.bytes = utf8_decode(at, length, &shown.code);
    if (shown.bytes == 0)
        return shown;
    if (shown.bytes < 0)
        return (StandIn){.bytes = 1, .code = ascii ? '?' : STAND_IN, .cells = 1};
    shown.cells = utf8_width(shown.code);
    if (IN_TABLE(unseen, shown.code) || (first && shown.cells == 0))
        return (StandIn){.bytes = shown.bytes, .code = ascii ? '?' : STAND_IN, .cells = 1};
    if (ascii && shown.code > 0x7f) {
        shown.code = '?';
        shown.cells = shown.cells == 0 ? 0 : 1;
    }
    return shown;
}

int utf8_cells(const char *string)
{
    size_t length = strlen(string);
    int cells = 0;
    for (size_t at = 0; at < length && cells < INT_MAX - 2;) {
        StandIn shown = next_shown(string + at, length - at, at == 0, false);
        cells += shown.cells;
        at += (size_t)shown.bytes;
    }
    return cells;
}

void utf8_safe(char *out, size_t size, const char *string, int cells, bool ascii)
{
    if (size == 0)
        return;
    size_t length = strlen(string);
    size_t put = 0;
    for (size_t at = 0; at < length;) {
        StandIn shown = next_shown(string + at, length - at, at == 0, ascii);
        at += (size_t)shown.bytes;
        if (ascii && shown.cells == 0)
            continue;
        char bytes[4];
        size_t count = (size_t)utf8_encode(shown.code, bytes);
        if (shown.cells > cells || put + count >= size)
            break;
        memcpy(out + put, bytes, count);
        put += count;
        cells -= shown.cells;
    }
    out[put] = '\0';
}

const char *utf8_safe_in(Arena *arena, const char *string)
{
    size_t length = strlen(string);
    for (size_t at = 0; at < length;) {
        StandIn shown = next_shown(string + at, length - at, at == 0, false);
        if (shown.code == STAND_IN) {
            /* a stand-in takes 3 bytes where a bad one took 1 */
            char *safe = arena_bytes(arena, 3 * length + 1);
            utf8_safe(safe, 3 * length + 1, string, INT_MAX, false);
            return safe;
        }
        at += (size_t)shown.bytes;
    }
    return string;
}

size_t utf8_prefix(const char *string, int cells)
{
    size_t length = strlen(string);
    size_t at = 0;
    while (at < length) {
        StandIn shown = next_shown(string + at, length - at, at == 0, false);
        if (shown.cells > cells)
            break;
        cells -= shown.cells;
        at += (size_t)shown.bytes;
    }
    return at;
}
