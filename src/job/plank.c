#include "job/plank.h"

#include "base/panic.h"
#include "wall/straight.h"
/*
 * A piece between two places x is taken apart into runs: stretches over which its lower and its upper edge are each one
 * straight line. Runs tile the piece from left to right.
 *
 *      plank top ______________________________ .. ............ course->top + lap
 *                |          |          |      \
 *      band top  |.. run 0 .|.. run 1 .| run 2 \ . ............ course->top
 *                |          |       ___|        \
 *                |__________|___----             \
 *                x0         x1         x2  (rake)
 *
 * Runs on the outside of the piece that belong to a rake are its slanted ends; what is left between them is the rip.
 * Runs come from the course's slabs, whose ends are whole nanometres; where a lap goes on above the band, the upper
 * limit is read from its own marks. No run is higher than the course's planks are wide, though a measured edge may have
 * moved the band's edge further out.
 */
typedef struct Trapezoid {
    Length x0, x1;
    Length lower0, lower1, upper0, upper1;
    bool lower_cut, upper_cut; /* by a floor, by a ceiling: below the plank's own edge */
    bool rake;
} Trapezoid;

typedef struct Trapezoids {
    Trapezoid *at;
    int count;
    int room;
} Trapezoids;

enum { SLACK = 4 }; /* SLACK: nanometres that rounded corners of runs can be off one straight line */

/* The straight piece of a limit over [x0, x1], no mark of which lies inside it: its y at both ends; whether it is
 * steeper than 1 in 12. */
static void limit_over(const Points *limit, Length x0, Length x1, Length *y0, Length *y1, bool *rake)
{
    const Point *p = limit->at;
    int count = limit->count;
    int i = 0;
    while (i < count && p[i].x < x1)
        i++;
    if (i == 0 || i == count) { /* level beyond the marks */
        *y0 = *y1 = p[i == 0 ? 0 : count - 1].y;
        *rake = false;
        return;
    }
    const Point *a = &p[i - 1], *b = &p[i];
    *y0 = straight_at(a->x, a->y, b->x, b->y, x0);
    *y1 = straight_at(a->x, a->y, b->x, b->y, x1);
    *rake = straight_is_rake(b->x - a->x, b->y - a->y);
}

static void push_run(Arena *arena, Trapezoids *runs, Trapezoid run)
{
    if (run.x1 > run.x0)
        *arena_push(arena, runs) = run;
}

/* Adds the run with `upper` as the limit above, split where that passes `top`, the plank's own upper edge. */
static void push_under(Arena *arena, Trapezoids *runs, Trapezoid run, Length top)
{
    bool left_over = run.upper0 > top, right_over = run.upper1 > top;
    if (left_over == right_over) {
        if (left_over)
            run.upper0 = run.upper1 = top;
        push_run(arena, runs, run);
        return;
    }
    Length x = straight_at(run.upper0, run.x0, run.upper1, run.x1, top);
    Length lower = straight_at(run.x0, run.lower0, run.x1, run.lower1, x);
    Trapezoid first = run, second = run;
    first.x1 = second.x0 = x;
    first.lower1 = second.lower0 = lower;
    first.upper1 = second.upper0 = top;
    if (left_over)
        first.upper0 = top;
    else
        second.upper1 = top;
    push_run(arena, runs, first);
    push_run(arena, runs, second);
}

/* The part of `slab` within [left, right], with the lap where there is one. */
static void add_slab(Arena *arena, Trapezoids *runs, const FaceLayout *face, const Course *course, Length lap,
                     const Slab *slab, Length left, Length right)
{
    Length x0 = slab->left > left ? slab->left : left;
    Length x1 = slab->right < right ? slab->right : right;
    while (x0 < x1) {
        Length end = x1;
        if (lap > 0)
            for (int i = 0; i < face->upper.count; i++)
                if (face->upper.at[i].x > x0 && face->upper.at[i].x < end)
                    end = face->upper.at[i].x;
        Trapezoid run = {.x0 = x0, .x1 = end};
        run.lower0 = straight_at(slab->left, slab->lower_left, slab->right, slab->lower_right, x0);
        run.lower1 = straight_at(slab->left, slab->lower_left, slab->right, slab->lower_right, end);
        run.rake = slab->lower_edge == EDGE_RAKE;
        if (lap > 0) {
            bool rake;
            limit_over(&face->upper, x0, end, &run.upper0, &run.upper1, &rake);
            Length top = course->top + lap;
            Trapezoids part = {0};
            push_under(arena, &part, run, top);
            for (int i = 0; i < part.count; i++) {
                Trapezoid piece = part.at[i];
                piece.rake = piece.rake || (rake && (piece.upper0 < top || piece.upper1 < top));
                push_run(arena, runs, piece);
            }
        } else {
            run.upper0 = straight_at(slab->left, slab->upper_left, slab->right, slab->upper_right, x0);
            run.upper1 = straight_at(slab->left, slab->upper_left, slab->right, slab->upper_right, end);
            run.rake = run.rake || slab->upper_edge == EDGE_RAKE;
            push_run(arena, runs, run);
        }
        x0 = end;
    }
}

static Trapezoids runs_of(Arena *arena, const FaceLayout *face, const Course *course, Length lap, Length left,
                          Length right)
{
    Trapezoids runs = {0};
    for (int i = 0; i < course->slab_count; i++)
        add_slab(arena, &runs, face, course, lap, &course->slabs[i], left, right);
    for (int i = 0; i < runs.count; i++) {
        Trapezoid *run = &runs.at[i];
        run->lower_cut = run->lower0 > course->bottom || run->lower1 > course->bottom;
        run->upper_cut = run->upper0 < course->top + lap || run->upper1 < course->top + lap;
    }
    return runs;
}

/* The run with its height held to `most`, the plank's own width: the wood is where the edge was measured. */
static void push_held(Arena *arena, Trapezoids *runs, Trapezoid run, Length most, bool at_top)
{
    if (at_top) {
        run.lower0 = run.upper0 - run.lower0 > most ? run.upper0 - most : run.lower0;
        run.lower1 = run.upper1 - run.lower1 > most ? run.upper1 - most : run.lower1;
    } else {
        run.upper0 = run.upper0 - run.lower0 > most ? run.lower0 + most : run.upper0;
        run.upper1 = run.upper1 - run.lower1 > most ? run.lower1 + most : run.upper1;
    }
    push_run(arena, runs, run);
}

/* A measured edge can leave a course more room than its planks fill. */
static Trapezoids runs_held(Arena *arena, const Layout *layout, const Course *course, const Trapezoids *runs)
{
    bool bottom_measured = course->number == 0 && course->bottom != layout->wall->start;
    bool at_top = course->number >= 0 && !bottom_measured;
    Length most = course->width;
    Trapezoids held = {0};
    for (int i = 0; i < runs->count; i++) {
        Trapezoid run = runs->at[i];
        Length height0 = run.upper0 - run.lower0, height1 = run.upper1 - run.lower1;
        Length x = run.x0;
        if ((height0 > most) != (height1 > most))
            x = straight_at(height0, run.x0, height1, run.x1, most);
        if (x > run.x0 && x < run.x1) {
            Trapezoid second = run;
            run.lower1 = second.lower0 = straight_at(run.x0, run.lower0, run.x1, run.lower1, x);
            run.upper1 = second.upper0 = straight_at(run.x0, run.upper0, run.x1, run.upper1, x);
            run.x1 = second.x0 = x;
            push_held(arena, &held, run, most, at_top);
            run = second;
        }
        push_held(arena, &held, run, most, at_top);
    }
    return held;
}

/* ---- ends ---- */

/* How far inside `outer` the side limit stands at height y; 0 where the piece ends within the limit. */
static Length side_inside(const Points *side, Length y, Length outer, int sign)
{
    if (side->count == 0)
        return 0;
    Length inside = (layout_side_at(side, y) - outer) * sign;
    return inside > 0 ? inside : 0;
}

/* How many runs from one end on are a slanted cut: those under a rake that grow wider inward. All of them only where
 * the other end slants too, else the whole piece is a taper with square ends. */
static int slant_runs(const Trapezoids *runs, bool from_right)
{
    int count = 0;
    while (count < runs->count) {
        const Trapezoid *run = &runs->at[from_right ? runs->count - 1 - count : count];
        Length outer = from_right ? run->upper1 - run->lower1 : run->upper0 - run->lower0;
        Length inner = from_right ? run->upper0 - run->lower0 : run->upper1 - run->lower1;
        if (!run->rake || outer >= inner)
            break;
        count++;
    }
    return count;
}

/* The end of a piece whose `count` outermost runs slant. */
static PlankEnd end_of(const Trapezoids *runs, int count, bool from_right, const Points *side, Length outer)
{
    PlankEnd end = {0};
    BUG_UNLESS(runs->count > 0);
    const Trapezoid *last = &runs->at[from_right ? runs->count - 1 : 0];
    Length lower = from_right ? last->lower1 : last->lower0;
    Length upper = from_right ? last->upper1 : last->upper0;
    int sign = from_right ? -1 : 1;
    end.height = upper - lower;
    for (int i = 0; i < count; i++) {
        const Trapezoid *run = &runs->at[from_right ? runs->count - 1 - i : i];
        Length inner = from_right ? runs->at[runs->count - 1].x1 - run->x0 : run->x1 - runs->at[0].x0;
        if (straight_is_rake(run->x1 - run->x0, run->lower1 - run->lower0))
            end.lower = inner;
        if (straight_is_rake(run->x1 - run->x0, run->upper1 - run->upper0))
            end.upper = inner;
    }
    Length lean_lower = side_inside(side, lower, outer, sign);
    Length lean_upper = side_inside(side, upper, outer, sign);
    if (lean_lower > end.lower)
        end.lower = lean_lower;
    if (lean_upper > end.upper)
        end.upper = lean_upper;
    if (lean_lower != lean_upper)
        end.height = 0;
    return end;
}

/* ---- widths ---- */

static void push_width(Plank *plank, Length at, Length width)
{
    PlankWidth *w = plank->widths;
    int count = plank->width_count;
    if (count > 0 && w[count - 1].at == at && w[count - 1].width == width)
        return;
    if (count > 1 && w[count - 2].at < w[count - 1].at && w[count - 1].at < at) {
        Length on_line = straight_at(w[count - 2].at, w[count - 2].width, at, width, w[count - 1].at);
        Length off = on_line > w[count - 1].width ? on_line - w[count - 1].width : w[count - 1].width - on_line;
        if (off <= SLACK)
            count--;
    }
    w[count++] = (PlankWidth){at, width};
    plank->width_count = count;
}

static void set_widths(Arena *arena, Plank *plank, const Trapezoids *runs, int first, int end, Length left,
                       Length whole)
{
    plank->widths = arena_array(arena, PlankWidth, 2 * runs->count + 2);
    for (int i = first; i < end; i++) {
        const Trapezoid *run = &runs->at[i];
        plank->lower_cut = plank->lower_cut || run->lower_cut;
        plank->upper_cut = plank->upper_cut || run->upper_cut;
        push_width(plank, run->x0 - left, run->upper0 - run->lower0);
        push_width(plank, run->x1 - left, run->upper1 - run->lower1);
    }
    if (first == end) { /* two slants meet */
        BUG_UNLESS(runs->count > 0);
        const Trapezoid *run = &runs->at[first < runs->count ? first : runs->count - 1];
        Length width = first < runs->count ? run->upper0 - run->lower0 : run->upper1 - run->lower1;
        Length at = (first < runs->count ? run->x0 : run->x1) - left;
        plank->widths[0] = plank->widths[1] = (PlankWidth){at, width};
        plank->width_count = 2;
    }
    if (plank->width_count == 2 && plank->widths[0].width == plank->widths[1].width)
        plank->shape = plank->widths[0].width == whole ? RIP_FULL : RIP_STRAIGHT;
    else
        plank->shape = plank->width_count == 2 ? RIP_TAPER : RIP_SCRIBE;
}

/* Whether an edge is one level line along the runs. */
static bool level(const Trapezoids *runs, int first, int end, bool upper)
{
    for (int i = first; i < end; i++) {
        const Trapezoid *a = &runs->at[first], *run = &runs->at[i];
        Length y = upper ? a->upper0 : a->lower0;
        if ((upper ? run->upper0 : run->lower0) != y || (upper ? run->upper1 : run->lower1) != y)
            return false;
    }
    return true;
}

/* ---- cutouts ---- */

/* The narrowest strip of face under (or over) the opening's edge within the piece; -1 where nothing is left there. */
static Length strip_beside(const Course *course, int opening, bool above, Length left, Length right)
{
    Length least = -1;
    for (int i = 0; i < course->slab_count; i++) {
        const Slab *slab = &course->slabs[i];
        Length x0 = slab->left > left ? slab->left : left;
        Length x1 = slab->right < right ? slab->right : right;
        if (x0 >= x1)
            continue;
        for (int k = 0; k < slab->part_count; k++) {
            const Part *part = &slab->parts[k];
            if ((above ? part->bottom_opening : part->top_opening) != opening)
                continue;
            Length at0 = straight_at(slab->left, part->top_left - part->bottom_left, slab->right,
                                     part->top_right - part->bottom_right, x0);
            Length at1 = straight_at(slab->left, part->top_left - part->bottom_left, slab->right,
                                     part->top_right - part->bottom_right, x1);
            Length width = at0 < at1 ? at0 : at1;
            if (least < 0 || width < least)
                least = width;
        }
    }
    return least;
}

/* Lowest and highest edge of the plank over [x0, x1]. */
static void plank_over(const Trapezoids *runs, Length x0, Length x1, Length *lowest, Length *highest)
{
    bool any = false;
    for (int i = 0; i < runs->count; i++) {
        const Trapezoid *run = &runs->at[i];
        if (run->x1 <= x0 || run->x0 >= x1)
            continue;
        Length lower = run->lower0 < run->lower1 ? run->lower0 : run->lower1;
        Length upper = run->upper0 > run->upper1 ? run->upper0 : run->upper1;
        if (!any || lower < *lowest)
            *lowest = lower;
        if (!any || upper > *highest)
            *highest = upper;
        any = true;
    }
    if (!any)
        *lowest = *highest = 0;
}

static void add_cut(Plank *plank, const Course *course, const Trapezoids *runs, int opening, const Box *box,
                    CutShape shape, bool lap_only, Length left, Length right, Length edge)
{
    PlankCut cut = {.opening = opening, .shape = shape, .lap_only = lap_only};
    Length x0 = box->left > left ? box->left : left;
    Length x1 = box->right < right ? box->right : right;
    Length lowest, highest;
    plank_over(runs, x0, x1, &lowest, &highest);
    cut.left = x0 - left;
    cut.right = x1 - left;
    cut.opens_lower = box->bottom <= lowest;
    cut.opens_upper = box->top >= highest;
    Length low = cut.opens_lower ? lowest : box->bottom;
    Length high = cut.opens_upper ? highest : box->top;
    cut.near = plank->from == FROM_UPPER ? edge - high : low - edge;
    cut.far = plank->from == FROM_UPPER ? edge - low : high - edge;
    cut.below = lap_only ? -1 : strip_beside(course, opening, false, x0, x1);
    cut.above = lap_only ? -1 : strip_beside(course, opening, true, x0, x1);
    /* strips are of the band: the plank can be narrower where an edge was measured */
    if (!cut.opens_lower && cut.below > low - lowest)
        cut.below = low - lowest;
    if (!cut.opens_upper && cut.above > highest - high)
        cut.above = highest - high;
    plank->cuts[plank->cut_count++] = cut;
}

/* Those of layout, which take something of the face; then those that reach into the lap alone. */
static void set_cuts(Arena *arena, Plank *plank, const FaceLayout *face, int opening_count, const Course *course,
                     Length lap, const Trapezoids *runs, Length left, Length right, Length edge)
{
    Cutouts cutouts = layout_cutouts(arena, face, course, left, right);
    plank->cuts = arena_array(arena, PlankCut, cutouts.count + opening_count);
    for (int i = 0; i < cutouts.count; i++) {
        int opening = cutouts.at[i].opening;
        add_cut(plank, course, runs, opening, &face->openings[opening], cutouts.at[i].shape, false, left, right, edge);
    }
    for (int i = 0; lap > 0 && i < opening_count; i++) {
        const Box *box = &face->openings[i];
        if (box->bottom < course->top || box->bottom >= course->top + lap || box->top <= course->top ||
            box->right <= left || box->left >= right)
            continue;
        Length lowest, highest;
        plank_over(runs, box->left > left ? box->left : left, box->right < right ? box->right : right, &lowest,
                   &highest);
        if (box->bottom < highest)
            add_cut(plank, course, runs, i, box, CUT_TOP, true, left, right, edge);
    }
}

static void set_laps(Arena *arena, Plank *plank, const Course *course, Length lap, const Trapezoids *runs, Length left)
{
    if (lap == 0)
        return;
    plank->laps = arena_array(arena, PlankLap, runs->count);
    for (int i = 0; i < runs->count; i++) {
        const Trapezoid *run = &runs->at[i];
        if (!run->upper_cut || run->upper0 < course->top || run->upper1 < course->top)
            continue;
        if (plank->lap_count > 0 && plank->laps[plank->lap_count - 1].right == run->x0 - left)
            plank->laps[plank->lap_count - 1].right = run->x1 - left;
        else
            plank->laps[plank->lap_count++] = (PlankLap){run->x0 - left, run->x1 - left};
    }
}

Plank plank_measure(Arena *arena, const Layout *layout, int face_index, const Course *course, Length left, Length right)
{
    const FaceLayout *face = &layout->faces[face_index];
    Length lap = layout->wall->planks.lap;
    Plank plank = {.length = right - left};
    Trapezoids runs = runs_of(arena, face, course, lap, left, right);
    if (course->top - course->bottom + lap > course->width)
        runs = runs_held(arena, layout, course, &runs);
    int first = slant_runs(&runs, false);
    int last = slant_runs(&runs, true);
    if (first == runs.count || last == runs.count)
        first = last = 0;
    int end = runs.count - last;
    plank.left = end_of(&runs, first, false, &face->left, left);
    plank.right = end_of(&runs, last, true, &face->right, right);
    set_widths(arena, &plank, &runs, first, end, left, course->width);

    Length edge = course->bottom;
    if (level(&runs, first, end, false)) {
        plank.from = FROM_LOWER;
        edge = first < end ? runs.at[first].lower0 : course->bottom;
    } else if (level(&runs, first, end, true)) {
        plank.from = FROM_UPPER;
        edge = runs.at[first].upper0;
    } else {
        plank.from = FROM_MARK;
    }
    set_cuts(arena, &plank, face, layout->wall->faces.at[face_index].openings.count, course, lap, &runs, left, right,
             edge);
    set_laps(arena, &plank, course, lap, &runs, left);
    while (plank.stud_first < face->studs.count && face->studs.at[plank.stud_first] < left)
        plank.stud_first++;
    while (plank.stud_first + plank.stud_count < face->studs.count &&
           face->studs.at[plank.stud_first + plank.stud_count] <= right)
        plank.stud_count++;
    return plank;
}
