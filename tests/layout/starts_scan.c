/*
 * The list of starts against an independent scan: each mark laid out as a whole by layout_wall_at, its strips added up
 * from the slabs. On a thousand random walls every mark is weighed alike (to the nanometre that each roundings of slabs
 * may take), and no mark beats the first of the list.
 *
 * DATUMROW_WALLS sets another number of walls.
 */
#include "support/test.h"

#include "layout/starts.h"
#include "support/random_wall.h"

#include <stdlib.h>

enum { WALLS = 1000 };

typedef struct Scan {
    Length least, thin, ceiling, floor;
    Length slack; /* that `thin` may be off by: the slabs' heights are rounded, which moves where a gentle slope turns
                     thin */
    int cutouts;
} Scan;

typedef struct Span {
    Length left, right;
} Span;

static void narrow(Length *kept, Length width)
{
    *kept = width < *kept ? width : *kept;
}

/* Where the part of a slab is thinner than least; empty where nowhere. */
static Span thin_of(const Slab *slab, Length left, Length right, Length least)
{
    if (left >= least && right >= least)
        return (Span){slab->left, slab->left};
    if (left < least && right < least)
        return (Span){slab->left, slab->right};
    Length turn = slab->left + (Length)((Wide)(slab->right - slab->left) * (least - left) / (right - left));
    return left < least ? (Span){slab->left, turn} : (Span){turn, slab->right};
}

/* Length of what the spans cover together, by sweeping: they are few. */
static Length covered(Span *spans, int count)
{
    Length sum = 0;
    Length end = INT64_MIN;
    for (int done = 0; done < count; done++) {
        int next = -1;
        for (int i = 0; i < count; i++)
            if (spans[i].right > spans[i].left && spans[i].right > end &&
                (next < 0 || spans[i].left < spans[next].left))
                next = i;
        if (next < 0)
            break;
        Length from = spans[next].left > end ? spans[next].left : end;
        sum += spans[next].right - from;
        end = spans[next].right;
    }
    return sum;
}

static void scan_slab(const Slab *slab, Length least, Scan *scan)
{
    Span spans[64];
    int count = 0;
    for (int i = 0; i < slab->part_count; i++) {
        const Part *part = &slab->parts[i];
        if (part->bottom_edge == EDGE_RAKE || part->top_edge == EDGE_RAKE ||
            (part->bottom_edge == EDGE_BAND && part->top_edge == EDGE_BAND))
            continue;
        Length left = part->top_left - part->bottom_left;
        Length right = part->top_right - part->bottom_right;
        Length width = left < right ? left : right;
        narrow(&scan->least, width);
        if (part->bottom_opening < 0 && part->top_opening < 0)
            narrow(part->bottom_edge == EDGE_FLOOR ? &scan->floor : &scan->ceiling, width);
        assert_true(count < 64);
        spans[count++] = thin_of(slab, left, right, least);
        if (left != right)
            scan->slack += 2 * (slab->right - slab->left) / llabs(right - left);
        scan->slack += 2;
    }
    scan->thin += covered(spans, count);
}

/* Whether the box covers every slab of the course. */
static bool takes_all(const Course *course, const Box *box)
{
    for (int i = 0; i < course->slab_count; i++) {
        const Slab *slab = &course->slabs[i];
        Length low = slab->lower_left < slab->lower_right ? slab->lower_left : slab->lower_right;
        Length high = slab->upper_left > slab->upper_right ? slab->upper_left : slab->upper_right;
        if (box->left > slab->left || box->right < slab->right || box->bottom > low || box->top < high)
            return false;
    }
    return true;
}

static void scan_course(const Course *course, Length least, Scan *scan)
{
    for (int i = 0; i < course->slab_count; i++)
        scan_slab(&course->slabs[i], least, scan);
    for (int i = 0; i < course->cut_count; i++)
        scan->cutouts += !takes_all(course, &course->cuts[i].box);
}

static Scan scan_of(Arena *arena, const Wall *wall, Length start)
{
    Length face = wall_course_face(wall, 0);
    for (int i = 1; i < wall->planks.widths.count; i++)
        narrow(&face, wall_course_face(wall, i));
    Scan scan = {.least = face, .ceiling = face, .floor = face};
    Err err;
    const Layout *layout = layout_wall_at(arena, wall, start, &err);
    if (!layout)
        FAIL("%s", err.text);
    bool any = false;
    scan.least = LENGTH_MOST;
    for (int i = 0; i < wall->faces.count; i++)
        for (int j = 0; j < layout->faces[i].course_count; j++)
            scan_course(&layout->faces[i].courses[j], wall_least(wall), &scan);
    any = scan.least < LENGTH_MOST;
    if (!any)
        scan.least = face;
    return scan;
}

static void assert_same(uint64_t seed, Length start, const char *what, Length scanned, Length weighed, Length within)
{
    if (llabs(scanned - weighed) > within)
        FAIL("wall %llu, start %lld: %s is %lld by the scan, %lld as weighed", (unsigned long long)seed,
             (long long)start, what, (long long)scanned, (long long)weighed);
}

/* The fewest cutouts of the list, which no mark may go below. */
static int fewest_of(const Starts *starts)
{
    int fewest = starts->at[0].cutouts;
    for (int i = 0; i < starts->count; i++)
        fewest = starts->at[i].cutouts < fewest ? starts->at[i].cutouts : fewest;
    return fewest;
}

static void assert_cutouts(uint64_t seed, const Start *weighed, int scanned, int fewest)
{
    if (weighed->cutouts != scanned)
        FAIL("wall %llu, start %lld: %d cutouts by the scan, %d as weighed", (unsigned long long)seed,
             (long long)weighed->start, scanned, weighed->cutouts);
    if (scanned < fewest)
        FAIL("wall %llu: start %lld asks for %d cutouts, the fewest of the list are %d", (unsigned long long)seed,
             (long long)weighed->start, scanned, fewest);
}

/* Every mark, and those of the list, of which the file's own may lie between marks. */
static int check_wall(uint64_t seed)
{
    Arena *arena = arena_new();
    Arena *scratch = arena_new();
    const Wall *wall = random_wall(arena, seed, RANDOM_ANY);
    Err err;
    const Layout *layout = layout_wall(arena, wall, &err);
    if (!layout)
        FAIL("%s", err.text);
    Starts starts = starts_of_layout(arena, layout);
    assert_true(starts.count > 0);
    Length run = wall_run(wall);
    Length first = length_round_up(2 * wall->start - run + 1, 2 * wall->round) / 2;
    int marks = 0;
    for (int i = -starts.count;; i++) {
        Length start = i < 0 ? starts.at[i + starts.count].start : first + i * wall->round;
        if (i >= 0 && 2 * start > 2 * wall->start + run)
            break;
        arena_reset(scratch);
        Scan scan = scan_of(scratch, wall, start);
        Start weighed = starts_weigh(scratch, layout, start);
        assert_same(seed, start, "the least strip", scan.least, weighed.least, 1);
        assert_same(seed, start, "the thin length", scan.thin, weighed.thin, scan.slack + 1);
        assert_same(seed, start, "the ceiling's strip", scan.ceiling, weighed.ceiling, 1);
        assert_same(seed, start, "the floor's strip", scan.floor, weighed.floor, 1);
        assert_cutouts(seed, &weighed, scan.cutouts, i < 0 ? 0 : fewest_of(&starts));
        if (scan.least > starts.at[0].least + 1)
            FAIL("wall %llu: start %lld leaves %lld, the best of the list %lld", (unsigned long long)seed,
                 (long long)start, (long long)scan.least, (long long)starts.at[0].least);
        if (scan.least >= starts.at[0].least && scan.thin + scan.slack + 1 < starts.at[0].thin)
            FAIL("wall %llu: start %lld has less thin wall than the best of the list", (unsigned long long)seed,
                 (long long)start);
        if (scan.least >= starts.at[0].least && scan.thin <= starts.at[0].thin &&
            llabs(scan.ceiling - scan.floor) + 2 < starts.at[0].balance)
            FAIL("wall %llu: start %lld is better balanced than the best of the list", (unsigned long long)seed,
                 (long long)start);
        marks++;
    }
    arena_free(scratch);
    arena_free(arena);
    return marks;
}

START_TEST(agrees_with_a_scan)
{
    const char *asked = getenv("DATUMROW_WALLS");
    const uint64_t walls = asked ? strtoull(asked, NULL, 10) : WALLS;
    int marks = 0;
    for (uint64_t seed = 1; seed <= walls; seed++)
        marks += check_wall(seed);
    printf("# %d marks on %llu walls\n", marks, (unsigned long long)walls);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {agrees_with_a_scan};
    return RUN(tests);
}
