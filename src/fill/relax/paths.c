/*
 * Two at once: a state (a, b) is how far either has come, place by place. The one behind goes on, to a place that keeps
 * its stagger to where the other stands:
 *
 *     above   |=========|=================| b
 *     run     |==============| a ...........> q
 *
 * Joints of the other further left are left of the last one checked against, so this one check is enough.
 */
#include "fill/relax/paths.h"

enum { TWO_STUDS_MOST = 400 };

typedef struct PathStep {
    int from; /* place; -1: not reached */
    bool above;
} PathStep;

struct Paths {
    const Demand *demand;
    const Sizes *sizes;
    Length longest;
    int width;        /* of a row of `reached` and `steps` */
    int64_t *reached; /* least price; -1 where not reached; one row for paths_cheapest, else by a and b */
    PathStep *steps;
    int64_t *nothing; /* prices of nothing */
    bool two;
    int *found; /* places */
    int end;    /* the right end of the run asked for last */
    bool was_two;
};

Paths *paths_new(Arena *arena, const Demand *demand, const Sizes *sizes, Length longest, int studs)
{
    Paths *paths = arena_one(arena, Paths);
    paths->demand = demand;
    paths->sizes = sizes;
    paths->longest = longest;
    paths->width = studs + 2;
    paths->two = studs <= TWO_STUDS_MOST;
    size_t states = (size_t)paths->width * (size_t)(paths->two ? paths->width : 1);
    paths->reached = arena_array(arena, int64_t, states);
    paths->steps = arena_array(arena, PathStep, states);
    paths->nothing = arena_array(arena, int64_t, sizes->count);
    paths->found = arena_array(arena, int, paths->width);
    return paths;
}

bool paths_allow_pairs(const Paths *paths)
{
    return paths->two;
}

Length paths_place(const Demand *demand, const Run *run, int place)
{
    if (place == 0)
        return run->left;
    return place == run->stud_count + 1 ? run->right : demand_studs(demand, run)->at[run->stud_first + place - 1];
}

/* Price of the piece between two places; -1 where there is no such piece. */
static int64_t price_of(const Paths *paths, const Run *run, const int64_t *duals, Length left, Length right)
{
    Length length = demand_length(run, left, right);
    if (demand_is_short(run, left, right) || length > paths->longest)
        return -1;
    return duals[sizes_index(paths->sizes, length + paths->demand->kerf)];
}

int64_t paths_cheapest(Paths *paths, const Run *run, const int64_t *duals, const bool *closed)
{
    int end = run->stud_count + 1;
    paths->end = end;
    paths->was_two = false;
    paths->reached[0] = 0;
    for (int to = 1; to <= end; to++) {
        Length x = paths_place(paths->demand, run, to);
        int64_t least = -1;
        for (int from = to - 1; from >= 0 && x - paths_place(paths->demand, run, from) <= paths->longest; from--) {
            int64_t price = price_of(paths, run, duals, paths_place(paths->demand, run, from), x);
            if (price < 0 || paths->reached[from] < 0 || (least >= 0 && paths->reached[from] + price >= least))
                continue;
            least = paths->reached[from] + price;
            paths->steps[to].from = from;
        }
        paths->reached[to] = least >= 0 && to < end && closed != NULL && closed[to] ? least + PATHS_CLOSED : least;
    }
    return paths->reached[end];
}

/* Whether a joint at `x` keeps its stagger to where the other of the two stands. */
static bool keeps_stagger(const Paths *paths, const Run *run, Length x, int other)
{
    if (other == 0 || other == run->stud_count + 1)
        return true;
    Length joint = paths_place(paths->demand, run, other);
    return x >= joint + paths->demand->stagger || x <= joint - paths->demand->stagger;
}

/* Goes on with the one that is behind. */
static void go_on(Paths *paths, const Run *run, const int64_t *duals, const bool *closed, int behind, int other,
                  bool above)
{
    int width = paths->width, end = run->stud_count + 1;
    int64_t so_far = paths->reached[above ? other * width + behind : behind * width + other];
    Length left = paths_place(paths->demand, run, behind);
    for (int to = behind + 1; so_far >= 0 && to <= end; to++) {
        Length x = paths_place(paths->demand, run, to);
        if (x - left > paths->longest)
            break;
        int64_t price = price_of(paths, run, duals, left, x);
        if (price < 0 || (to < end && !keeps_stagger(paths, run, x, other)))
            continue;
        price += so_far + (to < end && closed != NULL && closed[to] ? PATHS_CLOSED : 0);
        int state = above ? other * width + to : to * width + other;
        if (paths->reached[state] >= 0 && paths->reached[state] <= price)
            continue;
        paths->reached[state] = price;
        paths->steps[state] = (PathStep){behind, above};
    }
}

static int64_t two(Paths *paths, const Run *run, const int64_t *duals, const bool *closed, const int64_t *prices_above,
                   const bool *closed_above)
{
    int width = paths->width, end = run->stud_count + 1;
    for (int a = 0; a <= end; a++)
        for (int b = 0; b <= end; b++)
            paths->reached[a * width + b] = -1;
    paths->reached[0] = 0;
    paths->end = end;
    paths->was_two = true;
    for (int behind = 0; behind < end; behind++) {
        for (int other = behind; other <= end; other++)
            go_on(paths, run, duals, closed, behind, other, false);
        for (int other = behind + 1; other <= end; other++)
            go_on(paths, run, prices_above, closed_above, behind, other, true);
    }
    return paths->reached[end * width + end];
}

int64_t paths_cheapest_beside(Paths *paths, const Run *run, const int64_t *duals, const bool *closed)
{
    return two(paths, run, duals, closed, paths->nothing, NULL);
}

int64_t paths_cheapest_pair(Paths *paths, const Run *run, const int64_t *duals, const bool *closed,
                            const bool *closed_above)
{
    return two(paths, run, duals, closed, duals, closed_above);
}

const int *paths_found(Paths *paths, bool above, int *count)
{
    int a = paths->end, b = paths->end;
    *count = 0;
    if (!paths->was_two) {
        for (; a > 0; a = paths->steps[a].from)
            paths->found[(*count)++] = a;
        return paths->found;
    }
    while (a > 0 || b > 0) {
        PathStep step = paths->steps[a * paths->width + b];
        int *place = step.above ? &b : &a;
        if (step.above == above)
            paths->found[(*count)++] = *place;
        *place = step.from;
    }
    return paths->found;
}
