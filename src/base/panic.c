#include "base/panic.h"

#include <setjmp.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static PanicHook *the_hook;
static bool panicking;

typedef struct Attempt {
    jmp_buf back;
    char *place;
    size_t size;
    struct Attempt *outer;
} Attempt;

static Attempt *attempt; /* the innermost under way */

void panic_hook(PanicHook *hook)
{
    the_hook = hook;
}

_Noreturn void panic(const char *file, int line, const char *message)
{
    if (panicking)
        abort();
    panicking = true;
    char text[512];
    snprintf(text, sizeof text, "%s:%d: %s", file, line, message);
    if (the_hook != NULL)
        the_hook(text);
    else
        fprintf(stderr, "datumrow: %s\n", text);
    abort();
}

bool panic_attempt(PanicWork *work, void *with, char *place, size_t size)
{
    Attempt here = {.place = place, .size = size, .outer = attempt};
    if (setjmp(here.back) != 0) {
        attempt = here.outer;
        return false;
    }
    attempt = &here;
    work(with);
    attempt = here.outer;
    return true;
}

_Noreturn void panic_bug(const char *file, int line, const char *message)
{
    if (attempt == NULL || panicking)
        panic(file, line, message);
    const char *slash = strrchr(file, '/');
    snprintf(attempt->place, attempt->size, "%s:%d", slash != NULL ? slash + 1 : file, line);
    longjmp(attempt->back, 1);
}
