#include "wall/finding.h"

#include "base/panic.h"

#include <stdlib.h>
#include <string.h>

/*
 * One row a rule, in the order of the enumeration, which is the order of the plan.
 */
/* clang-format off */
static const struct {
    const char *word;
    Grade grade;
} rules[RULE_COUNT] = {
    [RULE_STAGGER] = {"stagger", GRADE_FAULT},
    [RULE_SHORTEST] = {"shortest", GRADE_FAULT},
    [RULE_STUD] = {"stud", GRADE_FAULT},
    [RULE_STOCK] = {"stock", GRADE_FAULT},
    [RULE_CROSSING] = {"crossing", GRADE_FAULT},
    [RULE_HUNG] = {"hung", GRADE_FAULT},
    [RULE_CORNER] = {"corner", GRADE_FAULT},
    [RULE_MISSING] = {"missing", GRADE_FAULT},
    [RULE_FIRE] = {"fire", GRADE_HAZARD},
    [RULE_BOX] = {"box", GRADE_HAZARD},
    [RULE_WIRE] = {"wire", GRADE_HAZARD},
    [RULE_CARE] = {"care", GRADE_HAZARD},
    [RULE_SLIVER] = {"sliver", GRADE_CAUTION},
    [RULE_STUB] = {"stub", GRADE_CAUTION},
    [RULE_SHALLOW] = {"shallow", GRADE_CAUTION},
    [RULE_KERF] = {"kerf", GRADE_CAUTION},
    [RULE_PLATE] = {"plate", GRADE_CAUTION},
    [RULE_NAIL] = {"nail", GRADE_CAUTION},
    [RULE_SEASON] = {"season", GRADE_CAUTION},
    [RULE_ANCHOR] = {"anchor", GRADE_CAUTION},
    [RULE_RANGE] = {"range", GRADE_CAUTION},
    [RULE_BOUND] = {"bound", GRADE_CAUTION},
    [RULE_ANEW] = {"anew", GRADE_CAUTION},
    [RULE_CLOSER] = {"closer", GRADE_CAUTION},
    [RULE_EDGE] = {"edge", GRADE_CAUTION},
    [RULE_FLUSH] = {"flush", GRADE_CAUTION},
    [RULE_LEAVE] = {"leave", GRADE_CAUTION},
    [RULE_PIN] = {"pin", GRADE_CAUTION},
    [RULE_REFERENCE] = {"reference", GRADE_CAUTION},
    [RULE_SHOW] = {"show", GRADE_CAUTION},
    [RULE_TRIM] = {"trim", GRADE_CAUTION},
};
/* clang-format on */

Finding finding_of(Rule rule)
{
    return (Finding){.rule = rule, .face = -1, .opening = -1};
}

const char *rule_word(Rule rule)
{
    BUG_UNLESS(rule < RULE_COUNT && rules[rule].word != NULL);
    return rules[rule].word;
}

Grade rule_grade(Rule rule)
{
    BUG_UNLESS(rule < RULE_COUNT);
    return rules[rule].grade;
}

const char *grade_word(Grade grade)
{
    switch (grade) {
    case GRADE_FAULT: return "fault";
    case GRADE_HAZARD: return "hazard";
    case GRADE_CAUTION: return "caution";
    }
    return "";
}

static int compare_numbers(int64_t a, int64_t b)
{
    return a < b ? -1 : a > b;
}

static int compare_findings(const Finding *a, const Finding *b)
{
    int order = compare_numbers((int64_t)a->rule, (int64_t)b->rule);
    if (order == 0)
        order = compare_numbers(a->face, b->face);
    if (order == 0)
        order = compare_numbers(a->has_course, b->has_course);
    if (order == 0)
        order = compare_numbers(a->course, b->course);
    if (order == 0)
        order = compare_numbers(a->has_at, b->has_at);
    if (order == 0)
        order = compare_numbers(a->at, b->at);
    if (order == 0)
        order = compare_numbers(a->opening, b->opening);
    if (order == 0)
        order = compare_numbers(a->board, b->board);
    if (order == 0)
        order = compare_numbers(a->piece, b->piece);
    return order;
}

/* Merge sort from the bottom up: stable, so that equal findings stay in the order in which they were added. */
void findings_sort(Findings *findings)
{
    const int count = findings->count;
    if (count < 2)
        return;
    Arena *arena = arena_new();
    Finding *from = findings->at;
    Finding *to = arena_array(arena, Finding, count);
    for (int run = 1; run<count; run = run> count / 2 ? count : 2 * run) {
        for (int start = 0; start < count;) {
            const int middle = run < count - start ? start + run : count;
            const int end = run < count - middle ? middle + run : count;
            int left = start;
            int right = middle;
            for (int out = start; out < end; out++) {
                const bool take_left =
                    left < middle && (right >= end || compare_findings(&from[left], &from[right]) <= 0);
                to[out] = take_left ? from[left++] : from[right++];
            }
            start = end;
        }
        Finding *swap = from;
        from = to;
        to = swap;
    }
    if (from != findings->at)
        memcpy(findings->at, from, (size_t)count * sizeof *from);
    arena_free(arena);
}

int findings_of(const Findings *findings, Grade grade)
{
    int count = 0;
    for (int i = 0; i < findings->count; i++)
        count += rule_grade(findings->at[i].rule) == grade;
    return count;
}

/* How many from `first` on are of one rule and face. */
static int count_of_kind(const Findings *findings, int first)
{
    int count = 1;
    while (first + count < findings->count && findings->at[first + count].rule == findings->at[first].rule &&
           findings->at[first + count].face == findings->at[first].face)
        count++;
    return count;
}

static bool shares_lead(const Finding *one, const Finding *other)
{
    return one->lead != NULL && other->lead != NULL && strcmp(one->lead, other->lead) == 0;
}

/* Those of a grade, all of a lead where the first of them stands. */
static void read_grade(Arena *arena, const Findings *findings, Grade grade, Findings *out)
{
    bool *put = arena_array(arena, bool, findings->count);
    for (int first = 0, count; first < findings->count; first += count) {
        count = count_of_kind(findings, first);
        const int end = rule_grade(findings->at[first].rule) == grade ? first + count : first;
        for (int i = first; i < end; i++) {
            if (put[i])
                continue;
            for (int k = i; k < end; k++)
                if (!put[k] && (k == i || shares_lead(&findings->at[i], &findings->at[k]))) {
                    *arena_push(arena, out) = findings->at[k];
                    put[k] = true;
                }
        }
    }
}

Findings findings_read(Arena *arena, const Findings *findings)
{
    Findings read = {0};
    read_grade(arena, findings, GRADE_HAZARD, &read);
    read_grade(arena, findings, GRADE_FAULT, &read);
    read_grade(arena, findings, GRADE_CAUTION, &read);
    return read;
}
