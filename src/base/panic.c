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
static void *reserve;
static size_t reserve_size;

void panic_reserve(size_t size)
{
    reserve_size = size;
    if (reserve == NULL && size > 0)
        reserve = malloc(size); /* where there is no room for it, work goes on without */
}

static const char *base_name(const char *file)
{
    const char *slash = strrchr(file, '/');
    return slash != NULL ? slash + 1 : file;
}

void panic_hook(PanicHook *hook)
{
    the_hook = hook;
}

static _Noreturn void end(const char *text)
{
    if (panicking)
        abort();
    panicking = true;
    free(reserve); /* the hook may want it, whatever the reason */
    reserve = NULL;
    if (the_hook != NULL)
        the_hook(text);
    else
        fprintf(stderr, "datumrow: %s\n", text);
    abort();
}

_Noreturn void panic(const char *file, int line, const char *message)
{
    char text[512];
    snprintf(text, sizeof text, "%s:%d: %s", base_name(file), line, message);
    end(text);
}

void panic_last(void)
{
    panicking = true;
}

static _Noreturn void give_up(const char *place)
{
    snprintf(attempt->place, attempt->size, "%s", place);
    longjmp(attempt->back, 1);
}

_Noreturn void panic_no_memory(void)
{
    free(reserve);
    reserve = NULL;
    if (attempt == NULL || panicking)
        end("there is not enough memory; close other programs, or lift the limit set for this one");
    give_up(PANIC_NO_MEMORY);
}

bool panic_attempt(PanicWork *work, void *with, char *place, size_t size)
{
    Attempt here = {.place = place, .size = size, .outer = attempt};
    if (setjmp(here.back) != 0) {
        attempt = here.outer;
        panic_reserve(reserve_size);
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
    char place[64];
    snprintf(place, sizeof place, "%s:%d", base_name(file), line);
    give_up(place);
}
