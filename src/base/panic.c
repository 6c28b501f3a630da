#include "base/panic.h"

#include <stdio.h>
#include <stdlib.h>

static PanicHook *the_hook;
static bool panicking;

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
