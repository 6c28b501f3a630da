/*
 * Cutting stock on published instances: of each set, the share proved optimal and at the known optimum, the median and
 * the worst time. An argument picks sets whose name holds it; a second one lists every instance that took longer than
 * so many milliseconds or is not settled.
 */
#include "pack/instances.h"

#include <stdlib.h>
#include <string.h>
#include <time.h>

typedef struct Set {
    const char *name, *file;
    bool several;
} Set;

static const Set sets[] = {
    {"u120", "binpack1_u120.txt", false},   {"u250", "binpack2_u250.txt", false},
    {"u500", "binpack3_u500.txt", false},   {"u1000", "binpack4_u1000.txt", false},
    {"t60", "binpack5_t60.txt", false},     {"t120", "binpack6_t120.txt", false},
    {"t249", "binpack7_t249.txt", false},   {"t501", "binpack8_t501.txt", false},
    {"scholl 1", "scholl1.txt", false},     {"scholl 2", "scholl2.txt", false},
    {"scholl 3", "scholl3.txt", false},     {"schwerin 1", "schwerin1.txt", false},
    {"schwerin 2", "schwerin2.txt", false}, {"waescher", "waescher.txt", false},
    {"hard28", "hard28.txt", false},        {"several lengths", "boards_several_lengths.txt", true},
};

enum { INSTANCES_MOST = 1000, SETS = sizeof sets / sizeof *sets };

typedef struct Tally {
    int count, proved, optimal;
    double times[INSTANCES_MOST]; /* milliseconds */
} Tally;

static double now(void)
{
    struct timespec at;
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &at);
    return (double)at.tv_sec * 1e3 + (double)at.tv_nsec / 1e6;
}

static int by_time(const void *a, const void *b)
{
    const double *x = a, *y = b;
    return *x < *y ? -1 : *x > *y;
}

static void print_tally(const char *name, Tally *tally)
{
    if (tally->count == 0)
        return;
    qsort(tally->times, (size_t)tally->count, sizeof *tally->times, by_time);
    printf("%-16s %9d %8.1f %% %8.1f %% %10.2f %10.1f\n", name, tally->count, 100.0 * tally->proved / tally->count,
           100.0 * tally->optimal / tally->count, tally->times[tally->count / 2], tally->times[tally->count - 1]);
}

int main(int count, char **words)
{
    static Tally all, one;
    double slow = count > 2 ? strtod(words[2], NULL) : 1e9;
    int faults = 0;
    printf("%-16s %9s %10s %10s %10s %10s\n", "set", "instances", "proved", "optimal", "median ms", "worst ms");
    for (int s = 0; s < SETS; s++) {
        if (count > 1 && strstr(sets[s].name, words[1]) == NULL)
            continue;
        one.count = one.proved = one.optimal = 0;
        FILE *file = instances_open(sets[s].file);
        Arena *arena = arena_new();
        Instance instance;
        while (instance_read(file, sets[s].several, arena, &instance)) {
            double begun = now();
            PackResult *result =
                pack_solve(arena, instance.stock, instance.stock_count, instance.items, instance.item_count, 0);
            double took = now() - begun;
            const char *fault = instance_fault(&instance, result);
            if (fault == NULL && (result->missing_count > 0 || result->cost_bound > instance.upper))
                fault = "pieces missing, or a bound above what is known to be reached";
            if (fault != NULL) {
                printf("FAULT %s: %s\n", instance.name, fault);
                faults++;
            }
            bool optimal = result->cost <= instance.upper;
            if (count > 2 && (took > slow || !result->proved || !optimal))
                printf("  %s: %lld, bound %lld, known %lld to %lld, %s, %.1f ms\n", instance.name,
                       (long long)result->cost, (long long)result->cost_bound, (long long)instance.lower,
                       (long long)instance.upper,
                       result->proved        ? "proved"
                       : result->cost_proved ? "cost proved"
                                             : "open",
                       took);
            one.proved += result->proved;
            one.optimal += optimal;
            one.times[one.count++] = took;
            all.proved += result->proved;
            all.optimal += optimal;
            all.times[all.count++] = took;
            arena_reset(arena);
        }
        fclose(file);
        arena_free(arena);
        print_tally(sets[s].name, &one);
        fflush(stdout);
    }
    print_tally("all", &all);
    return faults > 0;
}
