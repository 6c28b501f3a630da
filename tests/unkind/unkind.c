/*
 * Unkind walls, thousands of them, through the whole program. Each is looked at in a child, so that one that stops the
 * program is told like any other that fails, and the rest goes on. Prints TAP.
 *
 *     unkind                 the usual number; DATUMROW_UNKIND another, DATUMROW_UNKIND_FROM the first seed
 *     unkind check FROM COUNT [JOBS]     those, in so many processes
 *     unkind wall SEED       prints that wall as a file
 *     unkind bytes FILE      prints the wall that the bytes of a file choose, as the fuzzer understands them
 */
#include "base/arena.h"
#include "base/file.h"
#include "store/store.h"
#include "support/unkind_wall.h"
#include "unkind/hold.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/mman.h>
#include <sys/resource.h>
#include <sys/time.h>
#include <sys/wait.h>
#include <unistd.h>

/* One in DRAWN is drawn too; a wall that takes more than SECONDS_MOST of processor time counts as one that hangs. */
enum { USUAL = 100, JOBS_MOST = 64, DRAWN = 25, SECONDS_MOST = 20, WHY_MOST = 400, BYTES_MOST = 1 << 20 };

/* What the children tell, shared with them. */
typedef struct Slot {
    int64_t seed; /* at work on it */
    char why[WHY_MOST];
} Slot;

typedef struct Shared {
    Slot slots[JOBS_MOST];
    int milliseconds[]; /* of each seed; -1 not looked at yet */
} Shared;

typedef struct Run {
    int64_t first, count;
    int jobs;
    Shared *shared;
    int failed;
} Run;

static int milliseconds_used(void)
{
    struct rusage usage;
    getrusage(RUSAGE_SELF, &usage);
    return (int)(usage.ru_utime.tv_sec * 1000 + usage.ru_utime.tv_usec / 1000);
}

/* ---- in a child ---- */

/* Ends the process after so much of its own time from now on. */
static void limit_time(void)
{
    const struct itimerval limit = {.it_value = {SECONDS_MOST, 0}};
    setitimer(ITIMER_PROF, &limit, NULL);
}

/* Every jobs-th seed from `seed` on; ends with 0 after the last, 1 behind the first that fails. */
static _Noreturn void look_at(const Run *run, int job, int64_t seed)
{
    Slot *slot = &run->shared->slots[job];
    for (; seed < run->first + run->count; seed += run->jobs) {
        Arena *arena = arena_new();
        Held held = {0};
        Text why;
        text_init(&why);
        slot->seed = seed;
        const int before = milliseconds_used();
        limit_time();
        const Wall *wall = unkind_wall(arena, (uint64_t)seed);
        if (!hold_wall(wall, (Wish){.drawn = seed % DRAWN == 0}, &held, &why)) {
            snprintf(slot->why, sizeof slot->why, "%s", why.bytes);
            _exit(1);
        }
        run->shared->milliseconds[seed - run->first] = milliseconds_used() - before;
        text_finish(&why);
        arena_free(arena);
    }
    _exit(0);
}

/* ---- in the parent ---- */

static pid_t begin(const Run *run, int job, int64_t seed)
{
    fflush(stdout);
    const pid_t child = fork();
    if (child == 0)
        look_at(run, job, seed);
    return child;
}

static void tell(Run *run, const Slot *slot, int status)
{
    run->failed++;
    if (WIFSIGNALED(status) && WTERMSIG(status) == SIGPROF)
        printf("# wall %lld: not done after %d s\n", (long long)slot->seed, SECONDS_MOST);
    else if (WIFSIGNALED(status))
        printf("# wall %lld: stopped by signal %d\n", (long long)slot->seed, WTERMSIG(status));
    else
        printf("# wall %lld: %s\n", (long long)slot->seed, slot->why);
}

static void run_all(Run *run)
{
    pid_t children[JOBS_MOST];
    int at_work = 0;
    for (int job = 0; job < run->jobs; job++) {
        children[job] = begin(run, job, run->first + job);
        at_work += children[job] > 0;
    }
    while (at_work > 0) {
        int status = 0;
        const pid_t ended = wait(&status);
        int job = 0;
        while (job < run->jobs && children[job] != ended)
            job++;
        if (job == run->jobs)
            continue;
        at_work--;
        if (WIFEXITED(status) && WEXITSTATUS(status) == 0)
            continue;
        const Slot *slot = &run->shared->slots[job];
        tell(run, slot, status);
        children[job] = begin(run, job, slot->seed + run->jobs);
        at_work += children[job] > 0;
    }
}

static int by_size(const void *a, const void *b)
{
    return *(const int *)a - *(const int *)b;
}

static void tell_times(Run *run)
{
    int *times = run->shared->milliseconds;
    int slowest = 0;
    for (int i = 0; i < run->count; i++)
        slowest = times[i] > times[slowest] ? i : slowest;
    const int64_t seed = run->first + slowest;
    qsort(times, (size_t)run->count, sizeof *times, by_size);
    printf("# processor time a wall, all sheets too: median %d ms, 99 of 100 under %d ms, wall %lld took %d ms\n",
           times[run->count / 2], times[run->count * 99 / 100], (long long)seed, times[run->count - 1]);
}

static int check(int64_t first, int64_t count, int jobs)
{
    const size_t size = sizeof(Shared) + (size_t)count * sizeof(int);
    Run run = {.first = first, .count = count, .jobs = jobs < 1 ? 1 : jobs > JOBS_MOST ? JOBS_MOST : jobs};
    FILE *file = tmpfile();
    if (count < 1 || file == NULL || ftruncate(fileno(file), (off_t)size) != 0 ||
        (run.shared = mmap(NULL, size, PROT_READ | PROT_WRITE, MAP_SHARED, fileno(file), 0)) == MAP_FAILED) {
        printf("Bail out! no memory for %lld walls\n", (long long)count);
        return 2;
    }
    memset(run.shared->milliseconds, -1, (size_t)count * sizeof(int));
    printf("1..1\n");
    run_all(&run);
    tell_times(&run);
    printf("%s 1 - %lld unkind walls from %lld on, %d failed\n", run.failed == 0 ? "ok" : "not ok", (long long)count,
           (long long)first, run.failed);
    return run.failed == 0 ? 0 : 1;
}

static int print_wall(const Wall *wall)
{
    Text text;
    text_init(&text);
    store_write(wall, NULL, &text);
    fwrite(text.bytes, 1, text.length, stdout);
    text_finish(&text);
    return 0;
}

static int print_wall_of_bytes(Arena *arena, const char *path)
{
    Text bytes;
    Err err = {0};
    text_init(&bytes);
    if (!file_read(path, BYTES_MOST, &bytes, &err)) {
        fprintf(stderr, "unkind: %s\n", err.text);
        return 2;
    }
    print_wall(unkind_wall_of_bytes(arena, (const uint8_t *)bytes.bytes, bytes.length));
    text_finish(&bytes);
    return 0;
}

static int64_t number_of(const char *text, int64_t fallback)
{
    return text == NULL ? fallback : strtoll(text, NULL, 10);
}

int main(int count, char **words)
{
    if (count == 3 && (strcmp(words[1], "wall") == 0 || strcmp(words[1], "bytes") == 0)) {
        Arena *arena = arena_new();
        const int status = words[1][0] == 'w' ? print_wall(unkind_wall(arena, (uint64_t)number_of(words[2], 0)))
                                              : print_wall_of_bytes(arena, words[2]);
        arena_free(arena);
        return status;
    }
    if ((count == 4 || count == 5) && strcmp(words[1], "check") == 0)
        return check(number_of(words[2], 0), number_of(words[3], 0), (int)number_of(words[4], 1));
    if (count == 1)
        return check(number_of(getenv("DATUMROW_UNKIND_FROM"), 0), number_of(getenv("DATUMROW_UNKIND"), USUAL), 1);
    fputs("usage: unkind [check FROM COUNT [JOBS] | wall SEED | bytes FILE]\n", stderr);
    return 2;
}
