#include "base/text.h"

#include "base/panic.h"
#include "base/utf8.h"

#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* Room for `more` bytes and the NUL. */
static void make_room(Text *text, size_t more)
{
    BUG_UNLESS(more < SIZE_MAX / 4 && text->length < SIZE_MAX / 4);
    size_t need = text->length + more + 1;
    if (need <= text->room)
        return;
    size_t room = text->room * 2 > need ? text->room * 2 : need;
    char *bytes = realloc(text->bytes, room);
    if (bytes == NULL)
        panic_no_memory();
    text->bytes = bytes;
    text->room = room;
}

void text_init(Text *text)
{
    *text = (Text){0};
    make_room(text, 63);
    text->bytes[0] = '\0';
}

void text_finish(Text *text)
{
    free(text->bytes);
    *text = (Text){0};
}

void text_clear(Text *text)
{
    text->length = 0;
    text->bytes[0] = '\0';
}

void text_put(Text *text, const char *string)
{
    text_put_bytes(text, string, strlen(string));
}

void text_put_bytes(Text *text, const char *bytes, size_t length)
{
    make_room(text, length);
    if (length > 0)
        memcpy(text->bytes + text->length, bytes, length);
    text->length += length;
    text->bytes[text->length] = '\0';
}

void text_put_times(Text *text, char byte, int count)
{
    if (count <= 0)
        return;
    make_room(text, (size_t)count);
    memset(text->bytes + text->length, byte, (size_t)count);
    text->length += (size_t)count;
    text->bytes[text->length] = '\0';
}

void text_format(Text *text, const char *format, ...)
{
    va_list list;
    va_start(list, format);
    text_format_list(text, format, list);
    va_end(list);
}

void text_format_list(Text *text, const char *format, va_list list)
{
    va_list again;
    va_copy(again, list);
    int need = vsnprintf(NULL, 0, format, list);
    BUG_UNLESS(need >= 0);
    make_room(text, (size_t)need);
    vsnprintf(text->bytes + text->length, (size_t)need + 1, format, again);
    va_end(again);
    text->length += (size_t)need;
}

char *text_in_list(Arena *arena, const char *format, va_list list)
{
    Text text;
    text_init(&text);
    text_format_list(&text, format, list);
    char *out = arena_text(arena, text.bytes, text.length);
    text_finish(&text);
    return out;
}

char *text_in(Arena *arena, const char *format, ...)
{
    va_list list;
    va_start(list, format);
    char *out = text_in_list(arena, format, list);
    va_end(list);
    return out;
}

void text_pad(Text *text, size_t from, int columns)
{
    BUG_UNLESS(from <= text->length);
    text_put_times(text, ' ', columns - utf8_cells(text->bytes + from));
}
