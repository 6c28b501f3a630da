/*
 * Cutting stock against an exact integer program: every pattern of each stock length as a whole-numbered column, solved
 * by glpsol (GNU Linear Programming Kit), a program of quite another make. Skipped where glpsol is not installed.
 */
#include "support/test.h"

#include "base/random.h"
#include "pack/instances.h"

#include <errno.h>
#include <fcntl.h>
#include <stdlib.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

enum { ROUNDS = 40, PATTERNS_MOST = 4000, SIZES_MOST = 8, WEIGHT = 1000 };

typedef struct Program {
    const Instance *instance;
    int stock[PATTERNS_MOST];
    int counts[PATTERNS_MOST][SIZES_MOST];
    int pattern_count;
} Program;

static void list_patterns(Program *program, int stock, int size, Length room, int counts[SIZES_MOST])
{
    const Instance *instance = program->instance;
    if (size == instance->item_count) {
        assert_true(program->pattern_count < PATTERNS_MOST);
        program->stock[program->pattern_count] = stock;
        memcpy(program->counts[program->pattern_count++], counts, SIZES_MOST * sizeof *counts);
        return;
    }
    for (int n = 0; n <= instance->items[size].count && n * instance->items[size].size <= room; n++) {
        counts[size] = n;
        list_patterns(program, stock, size + 1, room - n * instance->items[size].size, counts);
    }
    counts[size] = 0;
}

/* The program in the LP format that glpsol reads: cost and then boards the least, demands met, stock not exceeded. */
static void write_program(const Program *program, const char *path)
{
    const Instance *instance = program->instance;
    FILE *file = fopen(path, "w");
    assert_non_null(file);
    fprintf(file, "minimize\n value: 0 z");
    for (int p = 0; p < program->pattern_count; p++)
        fprintf(file, "\n + %lld x%d", (long long)instance->stock[program->stock[p]].cost * WEIGHT + 1, p);
    fprintf(file, "\nsubject to\n");
    for (int i = 0; i < instance->item_count; i++) {
        fprintf(file, " d%d: 0 z", i);
        for (int p = 0; p < program->pattern_count; p++)
            if (program->counts[p][i] > 0)
                fprintf(file, "\n + %d x%d", program->counts[p][i], p);
        fprintf(file, " >= %d\n", instance->items[i].count);
    }
    for (int k = 0; k < instance->stock_count; k++) {
        fprintf(file, " s%d: 0 z", k);
        for (int p = 0; p < program->pattern_count; p++)
            if (program->stock[p] == k)
                fprintf(file, "\n + x%d", p);
        fprintf(file, " <= %d\n", instance->stock[k].count);
    }
    fprintf(file, "general\n");
    for (int p = 0; p < program->pattern_count; p++)
        fprintf(file, " x%d\n", p);
    fprintf(file, "end\n");
    assert_int_equal(fclose(file), 0);
}

/* Exit status of glpsol, 127 where there is none. */
static int run_glpsol(const char *program, const char *report)
{
    pid_t child = fork();
    assert_true(child >= 0);
    if (child == 0) {
        int quiet = open("/dev/null", O_WRONLY);
        if (quiet >= 0) {
            dup2(quiet, STDOUT_FILENO);
            dup2(quiet, STDERR_FILENO);
        }
        if (program == NULL)
            execlp("glpsol", "glpsol", "--version", (char *)NULL);
        else
            execlp("glpsol", "glpsol", "--tmlim", "2", "--lp", program, "--write", report, (char *)NULL);
        _exit(127);
    }
    int status;
    while (waitpid(child, &status, 0) < 0)
        assert_int_equal(errno, EINTR);
    return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
}

/* The objective of a whole-numbered solution: "s mip ROWS COLUMNS STATUS OBJECTIVE", STATUS o optimal, n infeasible. */
static char read_report(const char *path, double *objective)
{
    FILE *file = fopen(path, "r");
    assert_non_null(file);
    char line[256], status = '?';
    while (fgets(line, sizeof line, file) != NULL)
        if (sscanf(line, "s mip %*d %*d %c %lf", &status, objective) == 2)
            break;
    fclose(file);
    return status;
}

START_TEST(plans_equal_the_program)
{
    if (run_glpsol(NULL, NULL) != 0) {
        SKIP("glpsol is not installed (Debian: glpk-utils)");
    }
    const char *folder = getenv("TMPDIR");
    char program_path[512], report_path[512];
    snprintf(program_path, sizeof program_path, "%s/datumrow-pack-%ld.lp", folder != NULL ? folder : "/tmp",
             (long)getpid());
    snprintf(report_path, sizeof report_path, "%s/datumrow-pack-%ld.out", folder != NULL ? folder : "/tmp",
             (long)getpid());
    Random random = {.state = 50};
    int compared = 0, equal = 0, proved = 0;
    Program *program = calloc(1, sizeof *program);
    assert_non_null(program);
    for (int round = 0; round < ROUNDS; round++) {
        Arena *arena = arena_new();
        PackStock stock[3];
        PackItem items[SIZES_MOST];
        Instance instance = {"random", stock, (int)random_between(&random, 1, 3), items, 0, 0, 0};
        instance.item_count = (int)random_between(&random, 3, SIZES_MOST);
        for (int k = 0; k < instance.stock_count; k++) {
            Length length = random_between(&random, 48, 120);
            stock[k] = (PackStock){length + 1, length, (int)random_between(&random, 2, 20)};
        }
        for (int i = 0; i < instance.item_count; i++)
            items[i] = (PackItem){random_between(&random, 16, 70) + 1, (int)random_between(&random, 1, 6)};
        memset(program, 0, sizeof *program);
        program->instance = &instance;
        int counts[SIZES_MOST] = {0};
        for (int k = 0; k < instance.stock_count; k++)
            list_patterns(program, k, 0, stock[k].capacity, counts);
        write_program(program, program_path);
        assert_int_equal(run_glpsol(program_path, report_path), 0);
        double objective = 0;
        char status = read_report(report_path, &objective);
        PackResult *result =
            pack_solve(arena, instance.stock, instance.stock_count, instance.items, instance.item_count, 0);
        assert_null(instance_fault(&instance, result));
        if (status == 'n')
            assert_true(result->missing_count > 0);
        if (status == 'o') {
            long long least = (long long)(objective + 0.5);
            compared++;
            assert_int_equal(result->missing_count, 0);
            assert_true(result->cost_bound <= least / WEIGHT);
            bool same = result->cost == least / WEIGHT && result->bin_count == least % WEIGHT;
            equal += same;
            proved += result->proved;
            if (result->proved)
                assert_true(same);
        }
        arena_free(arena);
    }
    free(program);
    unlink(program_path);
    unlink(report_path);
    printf("# of %d that fit, %d equal the program, %d proved\n", compared, equal, proved);
    assert_true(compared >= ROUNDS / 2);
    assert_true(equal * 100 >= compared * 95);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        plans_equal_the_program,
    };
    return RUN(tests);
}
