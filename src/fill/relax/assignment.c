/*
 * Invariants: left[] is what each span still holds once the pieces given it are cut; a board none of whose spans has
 * given anything counts as unopened.
 */
#include "fill/relax/assignment.h"

#include "fill/buckets.h"

/* A piece that the paths ask for. */
typedef struct Wanted {
    int run, size;
    Length left, right;
    Length wood;
    int span; /* -1: no wood yet */
} Wanted;

typedef struct Assignment {
    Arena *arena;
    const Relaxation *relaxation;
    Solution *solution;
    const Chosen *chosen;
    const FixedPatterns *fixed;
    struct {
        Wanted *at;
        int count, room;
    } wanted;              /* run by run */
    int *by_size;          /* wanted pieces sorted by size */
    int *first, *last;     /* of each size: where those not given yet begin, and its end */
    Length *left;          /* of each span */
    int *next;             /* of each kind: the first board that may be untouched */
    int *skip;             /* of each kind: itself, or, where it has no untouched board left, one behind it */
    Buckets rests, boards; /* spans by what is left of them: of boards that something is cut from, of others */
} Assignment;

enum { TRIED_MOST = 256 }; /* of things that are about as long */

static void find_wanted(Assignment *assignment)
{
    const Demand *demand = assignment->solution->demand;
    for (int i = 0; i < demand->run_count; i++) {
        if (assignment->chosen[i].column < 0)
            continue;
        const Run *run = &demand->runs[i];
        const Block *block = &assignment->relaxation->blocks[assignment->relaxation->block_of[i]];
        Path path = relaxation_path(assignment->relaxation, assignment->chosen[i].column, assignment->chosen[i].above);
        for (int j = path.count - 1; j >= 0; j--) {
            Length left = paths_place(run, path_from(&path, j)), right = paths_place(run, path.parts[j].at);
            *arena_push(assignment->arena, &assignment->wanted) =
                (Wanted){i,
                         relaxation_piece_size(assignment->relaxation, block, &path, j),
                         left,
                         right,
                         demand_wood(demand, run, left, right, true),
                         -1};
        }
    }
}

static bool span_fits(const Assignment *assignment, const Wanted *wanted, int span)
{
    const Solution *solution = assignment->solution;
    const Supply *supply = solution->supply;
    if (wanted->span >= 0 || wanted->wood > assignment->left[span])
        return false;
    return !supply->narrow || demand_need(solution->demand, &solution->demand->runs[wanted->run], wanted->left,
                                          wanted->right) <= supply->widths[supply->spans[span].board];
}

static void give(Assignment *assignment, Wanted *wanted, int span)
{
    wanted->span = span;
    assignment->left[span] -= wanted->wood + assignment->solution->demand->kerf;
}

static bool is_touched(const Assignment *assignment, int board)
{
    const Supply *supply = assignment->solution->supply;
    for (int i = 0; i < supply->boards[board].span_count; i++) {
        int span = supply->boards[board].span_first + i;
        if (assignment->left[span] != supply->spans[span].left)
            return true;
    }
    return false;
}

/* A board of the kind from which nothing is cut yet; -1 where there is none. */
static int untouched(Assignment *assignment, int kind)
{
    int *next = &assignment->next[kind];
    while (*next >= 0 && is_touched(assignment, *next))
        *next = assignment->solution->supply->boards[*next].next;
    return *next;
}

/* The first piece of the size that fits; -1 where none does. */
static int fitting(Assignment *assignment, int size, int span)
{
    int *from = &assignment->first[size];
    while (*from < assignment->last[size] && assignment->wanted.at[assignment->by_size[*from]].span >= 0)
        ++*from;
    for (int i = *from; i < assignment->last[size] && i < *from + TRIED_MOST; i++)
        if (span_fits(assignment, &assignment->wanted.at[assignment->by_size[i]], span))
            return assignment->by_size[i];
    return -1;
}

/* The first kind at `kind` or behind it that has an untouched board; their count where none has. */
static int next_kind(Assignment *assignment, int kind)
{
    int *skip = assignment->skip, count = assignment->solution->supply->kind_count, found = kind;
    while (found < count && (skip[found] != found || untouched(assignment, found) < 0)) {
        if (skip[found] == found)
            skip[found] = found + 1;
        found = skip[found];
    }
    while (kind < found) {
        int next = skip[kind];
        skip[kind] = found;
        kind = next;
    }
    return found;
}

/* The first kind whose boards are `length` or longer. */
static int first_kind(const Supply *supply, Length length)
{
    int low = 0, high = supply->kind_count;
    while (low < high) {
        int middle = low + (high - low) / 2;
        if (supply->kinds[middle].length < length)
            low = middle + 1;
        else
            high = middle;
    }
    return low;
}

/* A board for the pattern: of its kind, or, where there is none left, the shortest that holds as much; -1 where there
 * is none. */
static int board_for(Assignment *assignment, const ColumnInfo *info)
{
    const Supply *supply = assignment->solution->supply;
    const Sizes *sizes = assignment->relaxation->sizes;
    int board = untouched(assignment, info->of);
    if (board >= 0 || supply->kinds[info->of].span_count != 1)
        return board;
    int64_t cells = 0;
    for (int i = info->first; i < info->first + info->count; i++)
        cells += sizes->cells[assignment->relaxation->parts.at[i].at];
    for (int i = next_kind(assignment, first_kind(supply, cells * sizes->width - supply->kerf)); i < supply->kind_count;
         i = next_kind(assignment, i + 1)) {
        const Kind *kind = &supply->kinds[i];
        if (kind->span_count == 1 && (supply->slots[kind->slot_first].left + supply->kerf) / sizes->width >= cells)
            return untouched(assignment, i);
    }
    return -1;
}

static void give_out_patterns(Assignment *assignment)
{
    const Supply *supply = assignment->solution->supply;
    for (int i = 0; i < assignment->fixed->count; i++) {
        const ColumnInfo *info = &assignment->relaxation->infos.at[assignment->fixed->at[i].column];
        for (int j = 0; j < assignment->fixed->at[i].times; j++) {
            int board = board_for(assignment, info);
            for (int k = info->first; k < info->first + info->count && board >= 0; k++) {
                const ColumnPart *part = &assignment->relaxation->parts.at[k];
                int span = supply->boards[board].span_first + part->span;
                int piece = fitting(assignment, part->at, span);
                if (piece >= 0)
                    give(assignment, &assignment->wanted.at[piece], span);
            }
        }
    }
}

/* Of the spans there that the piece fits, the shortest, of those the first; -1 where there is none. */
static int shortest_fitting(const Assignment *assignment, const Wanted *wanted, const Buckets *spans)
{
    int best = -1, bucket = -1, tried = 0;
    for (int span = buckets_from(spans, wanted->wood); span != BUCKETS_NONE && tried < 16 * TRIED_MOST;
         span = buckets_up(spans, span), tried++) {
        if (best >= 0 && (spans->cell[span] != bucket || tried >= TRIED_MOST))
            break; /* all others are longer, or as many have been looked at as is worth it */
        Length left = assignment->left[span];
        if (!span_fits(assignment, wanted, span))
            continue;
        if (best < 0 || left < assignment->left[best] || (left == assignment->left[best] && span < best))
            best = span;
        bucket = spans->cell[span];
    }
    return best;
}

/* What the patterns had no slot for: the shortest rest that fits, else the shortest board. */
static void give_out_rest(Assignment *assignment)
{
    const Supply *supply = assignment->solution->supply;
    buckets_start(&assignment->rests, assignment->arena, supply->span_count, supply->longest);
    buckets_start(&assignment->boards, assignment->arena, supply->span_count, supply->longest);
    for (int i = supply->span_count - 1; i >= 0; i--)
        buckets_put(assignment->left[i] != supply->spans[i].left ? &assignment->rests : &assignment->boards, i,
                    assignment->left[i]);
    for (int i = 0; i < assignment->wanted.count; i++) {
        Wanted *wanted = &assignment->wanted.at[i];
        if (wanted->span >= 0)
            continue;
        int span = shortest_fitting(assignment, wanted, &assignment->rests);
        if (span < 0)
            span = shortest_fitting(assignment, wanted, &assignment->boards);
        if (span < 0)
            continue;
        give(assignment, wanted, span);
        buckets_take(&assignment->rests, span);
        buckets_take(&assignment->boards, span);
        if (assignment->left[span] > 0)
            buckets_put(&assignment->rests, span, assignment->left[span]);
    }
}

static void sort_by_size(Assignment *assignment)
{
    int sizes = assignment->relaxation->sizes->count;
    assignment->by_size = arena_array(assignment->arena, int, assignment->wanted.count + 1);
    assignment->first = arena_array(assignment->arena, int, sizes + 1);
    assignment->last = arena_array(assignment->arena, int, sizes + 1);
    for (int i = 0; i < assignment->wanted.count; i++)
        assignment->first[assignment->wanted.at[i].size + 1]++;
    for (int i = 0; i < sizes; i++) {
        assignment->first[i + 1] += assignment->first[i];
        assignment->last[i] = assignment->first[i];
    }
    for (int i = 0; i < assignment->wanted.count; i++)
        assignment->by_size[assignment->last[assignment->wanted.at[i].size]++] = i;
}

static void lay_whole_runs(const Assignment *assignment)
{
    Placed *pieces = arena_array(assignment->arena, Placed, assignment->wanted.count + 1);
    for (int i = 0; i < assignment->wanted.count;) {
        int run = assignment->wanted.at[i].run, count = 0;
        bool whole = true;
        for (; i < assignment->wanted.count && assignment->wanted.at[i].run == run; i++) {
            const Wanted *wanted = &assignment->wanted.at[i];
            pieces[count++] = (Placed){wanted->left, wanted->right, wanted->span, wanted->wood};
            whole = whole && wanted->span >= 0;
        }
        if (whole)
            solution_set(assignment->solution, run, pieces, count);
    }
}

void assignment_cover(Arena *arena, const Relaxation *relaxation, Solution *solution, const Chosen *chosen,
                      const FixedPatterns *fixed)
{
    Assignment assignment = {
        .arena = arena, .relaxation = relaxation, .solution = solution, .chosen = chosen, .fixed = fixed};
    find_wanted(&assignment);
    sort_by_size(&assignment);
    assignment.left = arena_array(arena, Length, solution->supply->span_count);
    for (int i = 0; i < solution->supply->span_count; i++)
        assignment.left[i] = solution->supply->spans[i].left;
    assignment.next = arena_array(arena, int, solution->supply->kind_count);
    for (int i = 0; i < solution->supply->kind_count; i++)
        assignment.next[i] = solution->supply->kinds[i].first;
    assignment.skip = arena_array(arena, int, solution->supply->kind_count + 1);
    for (int i = 0; i <= solution->supply->kind_count; i++)
        assignment.skip[i] = i;
    give_out_patterns(&assignment);
    give_out_rest(&assignment);
    lay_whole_runs(&assignment);
}
