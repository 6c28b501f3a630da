/*
 * Preloaded into a program: makes one allocation or one file operation fail, or ends the program there. Nothing is
 * counted before main.
 *
 *     FAIL_ALLOC=N     the Nth allocation gives NULL
 *     FAIL_FILE=N:E    the Nth file operation fails with errno E; E = 0: the program is killed before it
 *     FAIL_COUNT=FILE  writes "ALLOCATIONS OPERATIONS" there at the end
 */
#include <dlfcn.h>
#include <errno.h>
#include <fcntl.h>
#include <signal.h>
#include <stdarg.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <sys/stat.h>
#include <unistd.h>

typedef int Main(int count, char **words, char **environment);
typedef int Start(Main *run, int count, char **words, void (*begin)(void), void (*end)(void), void (*loader_end)(void),
                  void *stack);

extern void *__libc_malloc(size_t size);
extern void *__libc_calloc(size_t count, size_t size);
extern void *__libc_realloc(void *old, size_t size);
extern Start __libc_start_main;

static bool armed;
static long allocations, operations;
static long failing_allocation, failing_operation;
static int failure;
static Main *real_main;

/* Of the process that counted most: what draws is a child that goes on from its parent's count. */
static void write_count(void)
{
    const char *path = getenv("FAIL_COUNT");
    long before = 0;
    armed = false;
    FILE *file = path == NULL ? NULL : fopen(path, "r");
    if (file != NULL && fscanf(file, "%ld", &before) != 1)
        before = 0;
    if (file != NULL)
        fclose(file);
    file = path == NULL || before > allocations ? NULL : fopen(path, "w");
    if (file == NULL)
        return;
    fprintf(file, "%ld %ld\n", allocations, operations);
    fclose(file);
}

_Noreturn void _exit(int status)
{
    write_count();
    _Exit(status);
}

static int armed_main(int count, char **words, char **environment)
{
    const char *alloc = getenv("FAIL_ALLOC"), *file = getenv("FAIL_FILE");
    failing_allocation = alloc == NULL ? 0 : strtol(alloc, NULL, 10);
    if (file != NULL && sscanf(file, "%ld:%d", &failing_operation, &failure) != 2)
        abort();
    atexit(write_count);
    armed = true;
    return real_main(count, words, environment);
}

int __libc_start_main(Main *run, int count, char **words, void (*begin)(void), void (*end)(void),
                      void (*loader_end)(void), void *stack)
{
    Start *real;
    *(void **)&real = dlsym(RTLD_NEXT, "__libc_start_main");
    real_main = run;
    return real(armed_main, count, words, begin, end, loader_end, stack);
}

static bool no_memory(void)
{
    if (!armed || ++allocations != failing_allocation)
        return false;
    errno = ENOMEM;
    return true;
}

void *malloc(size_t size)
{
    return no_memory() ? NULL : __libc_malloc(size);
}

void *calloc(size_t count, size_t size)
{
    return no_memory() ? NULL : __libc_calloc(count, size);
}

void *realloc(void *old, size_t size)
{
    return no_memory() ? NULL : __libc_realloc(old, size);
}

static bool fails(void)
{
    if (!armed || ++operations != failing_operation)
        return false;
    if (failure == 0)
        raise(SIGKILL);
    errno = failure;
    return true;
}

#define OPERATION(type, name, parameters, arguments) \
    type name parameters                             \
    {                                                \
        type(*real) parameters;                      \
        *(void **)&real = dlsym(RTLD_NEXT, #name);   \
        return fails() ? -1 : real arguments;        \
    }

OPERATION(int, close, (int file), (file))
OPERATION(int, fsync, (int file), (file))
OPERATION(int, fchmod, (int file, mode_t mode), (file, mode))
OPERATION(int, fchown, (int file, uid_t owner, gid_t group), (file, owner, group))
OPERATION(int, mkdir, (const char *path, mode_t mode), (path, mode))
OPERATION(int, rename, (const char *from, const char *to), (from, to))
OPERATION(int, link, (const char *from, const char *to), (from, to))
OPERATION(int, unlink, (const char *path), (path))
OPERATION(ssize_t, read, (int file, void *bytes, size_t size), (file, bytes, size))
OPERATION(ssize_t, write, (int file, const void *bytes, size_t size), (file, bytes, size))

static int open_really(const char *name, const char *path, int flags, mode_t mode)
{
    int (*real)(const char *, int, ...);
    *(void **)&real = dlsym(RTLD_NEXT, name);
    return fails() ? -1 : real(path, flags, mode);
}

#define OPENING(name)                                                    \
    int name(const char *path, int flags, ...)                           \
    {                                                                    \
        va_list list;                                                    \
        va_start(list, flags);                                           \
        mode_t mode = (flags & O_CREAT) != 0 ? va_arg(list, mode_t) : 0; \
        va_end(list);                                                    \
        return open_really(#name, path, flags, mode);                    \
    }

#undef open
#undef open64
OPENING(open)
OPENING(open64)
