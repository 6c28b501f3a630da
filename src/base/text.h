/*
 * Text that grows: UTF-8 bytes on the heap, always ended with NUL. For sheets, messages and files that are
 * built piece by piece. Out of memory is a panic. It knows nothing of the locale.
 */
#ifndef BASE_TEXT_H
#define BASE_TEXT_H

#include "base/arena.h"

#include <stdarg.h>
#include <stddef.h>

typedef struct Text {
    char *bytes;   /* never NULL after text_init; bytes[length] is NUL */
    size_t length; /* in bytes, the NUL not counted */
    size_t room;
} Text;

void text_init(Text *text);
void text_finish(Text *text);
void text_clear(Text *text); /* length 0, room kept */

void text_put(Text *text, const char *string);
void text_put_bytes(Text *text, const char *bytes, size_t length);
void text_put_times(Text *text, char byte, int count); /* `count` times; negative is none */
void text_format(Text *text, const char *format, ...) __attribute__((format(printf, 2, 3)));
void text_format_list(Text *text, const char *format, va_list list) __attribute__((format(printf, 2, 0)));

/* A text as by printf, in `arena`. */
char *text_in(Arena *arena, const char *format, ...) __attribute__((format(printf, 2, 3)));
char *text_in_list(Arena *arena, const char *format, va_list list) __attribute__((format(printf, 2, 0)));

/* Pads with spaces so that the text since byte `from` fills `columns` character cells; longer stays as it is. */
void text_pad(Text *text, size_t from, int columns);

#endif
