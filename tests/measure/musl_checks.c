/*
 * Debian's static libyaml and ncursesw call checks of the GNU C library that musl has not. For a program linked with
 * both to run its commands, not to be shipped.
 */
#include <stdarg.h>
#include <stdio.h>
#include <string.h>

int __sprintf_chk(char *out, int flag, size_t size, const char *format, ...);
int __fprintf_chk(FILE *file, int flag, const char *format, ...);
int __vfprintf_chk(FILE *file, int flag, const char *format, va_list arguments);
int __vsnprintf_chk(char *out, size_t length, int flag, size_t size, const char *format, va_list arguments);
void *__memcpy_chk(void *out, const void *from, size_t length, size_t size);

int __vsnprintf_chk(char *out, size_t length, int flag, size_t size, const char *format, va_list arguments)
{
    (void)flag;
    return vsnprintf(out, length < size ? length : size, format, arguments);
}

int __sprintf_chk(char *out, int flag, size_t size, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    int length = __vsnprintf_chk(out, size, flag, size, format, arguments);
    va_end(arguments);
    return length;
}

int __vfprintf_chk(FILE *file, int flag, const char *format, va_list arguments)
{
    (void)flag;
    return vfprintf(file, format, arguments);
}

int __fprintf_chk(FILE *file, int flag, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    int length = __vfprintf_chk(file, flag, format, arguments);
    va_end(arguments);
    return length;
}

void *__memcpy_chk(void *out, const void *from, size_t length, size_t size)
{
    (void)size;
    return memcpy(out, from, length);
}
