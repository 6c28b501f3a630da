#include "layout/rip.h"

#include "base/panic.h"

/*
 *      upper   ----------.                        width(x) = upper(x) - lower(x). Neighbouring tiles over which it
 *                         `----.____              runs on along one straight line are one run:
 *      lower   ---------------------
 *              run 0     | run 1   |              no run at all: full or straight; one that changes: taper;
 *                                                 more than one: scribe.
 */

/* A stretch over which the width is one straight line. */
typedef struct WidthLine {
    Length left, right;
    Length width_left, width_right;
    Wide rise, over; /* its slope, exactly: rise / over, over > 0 */
} WidthLine;

typedef struct Slopes {
    WidthLine *at;
    int count;
    int room;
} Slopes;

typedef struct RipPoints {
    RipPoint *at;
    int count;
    int room;
} RipPoints;

static WidthLine run_over(const Tile *tile)
{
    const Wide upper_run = tile->upper->x1 - tile->upper->x0;
    const Wide lower_run = tile->lower->x1 - tile->lower->x0;
    const Length upper_rise = tile->upper->y1 - tile->upper->y0;
    const Length lower_rise = tile->lower->y1 - tile->lower->y0;
    WidthLine run = {.left = tile->left.x,
                     .right = tile->right.x,
                     .width_left = tile->upper_left - tile->lower_left,
                     .width_right = tile->upper_right - tile->lower_right,
                     .rise = upper_rise * lower_run - lower_rise * upper_run,
                     .over = upper_run * lower_run};
    return run;
}

static bool runs_on(const WidthLine *run, const WidthLine *next)
{
    return run->right == next->left && run->width_right == next->width_left &&
           wide_compare_ratio(run->rise, run->over, next->rise, next->over) == 0;
}

static Slopes find_runs(Arena *arena, const Tiles *tiles)
{
    Slopes runs = {0};
    for (int i = 0; i < tiles->count; i++) {
        const WidthLine run = run_over(&tiles->at[i]);
        WidthLine *last = runs.count > 0 ? &runs.at[runs.count - 1] : NULL;
        if (last != NULL && runs_on(last, &run)) {
            last->right = run.right;
            last->width_right = run.width_right;
        } else {
            *arena_push(arena, &runs) = run;
        }
    }
    return runs;
}

static void add_point(Arena *arena, RipPoints *points, Length x, Length width)
{
    if (points->count == 0 || points->at[points->count - 1].x != x || points->at[points->count - 1].width != width)
        *arena_push(arena, points) = (RipPoint){x, width};
}

/* Where the course is interrupted its width is nothing. */
static RipPoints find_points(Arena *arena, const Slopes *runs)
{
    RipPoints points = {0};
    for (int i = 0; i < runs->count; i++) {
        const WidthLine *run = &runs->at[i];
        if (i > 0 && runs->at[i - 1].right < run->left) {
            add_point(arena, &points, runs->at[i - 1].right, 0);
            add_point(arena, &points, run->left, 0);
        }
        add_point(arena, &points, run->left, run->width_left);
        add_point(arena, &points, run->right, run->width_right);
    }
    return points;
}

static bool under_rake(const Tile *tile)
{
    return tile->lower->edge == EDGE_RAKE || tile->upper->edge == EDGE_RAKE;
}

static void find_extremes(Rip *rip, const Tiles *tiles)
{
    bool all_rake = true;
    for (int i = 0; i < tiles->count; i++)
        all_rake &= under_rake(&tiles->at[i]);
    bool any = false;
    for (int i = 0; i < tiles->count; i++) {
        if (!all_rake && under_rake(&tiles->at[i]))
            continue;
        const WidthLine run = run_over(&tiles->at[i]);
        const Length low = run.width_left < run.width_right ? run.width_left : run.width_right;
        const Length high = run.width_left < run.width_right ? run.width_right : run.width_left;
        rip->least = any && rip->least < low ? rip->least : low;
        rip->most = any && rip->most > high ? rip->most : high;
        any = true;
    }
}

static RipShape shape_of(const Slopes *runs, Length face)
{
    if (runs->count > 1)
        return RIP_SCRIBE;
    if (runs->at[0].width_left != runs->at[0].width_right)
        return RIP_TAPER;
    return runs->at[0].width_left == face ? RIP_FULL : RIP_STRAIGHT;
}

Rip rip_of(Arena *arena, Arena *scratch, const Tiles *tiles, Length face)
{
    const Slopes runs = find_runs(scratch, tiles);
    BUG_UNLESS(runs.count > 0 && runs.at != NULL);
    const RipPoints points = find_points(scratch, &runs);
    Rip rip = {.shape = shape_of(&runs, face),
               .left = runs.at[0].width_left,
               .right = runs.at[runs.count - 1].width_right,
               .points = arena_array(arena, RipPoint, points.count),
               .point_count = points.count};
    for (int i = 0; i < points.count; i++)
        rip.points[i] = points.at[i];
    find_extremes(&rip, tiles);
    for (int i = 0; i < tiles->count; i++) {
        rip.lower_cut |= tiles->at[i].lower->edge != EDGE_BAND;
        rip.upper_cut |= tiles->at[i].upper->edge != EDGE_BAND;
    }
    return rip;
}
