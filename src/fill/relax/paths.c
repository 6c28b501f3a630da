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

#include <string.h>

enum { TWO_STUDS_MOST = 400, PAIR_WORK_MOST = 2000000 };

typedef struct PathStep {
    int from; /* place; -1: not reached */
    bool above;
} PathStep;

/* What the run in hand is like: its places, the pieces between them, and where joints are too near. */
typedef struct Graph {
    Length *x;   /* of each place */
    int *last;   /* of each place: the farthest that a piece from there could reach */
    int *first;  /* of each place: the first of its pieces, to the place behind it */
    int *size;   /* of each piece, -1 where there is none such */
    int room;    /* pieces */
    int *near;   /* of each place: the first of those at which a joint is too near to one here */
    int *beyond; /* and the first behind them that is not */
    int end;     /* the right end */
} Graph;

struct Paths {
    Arena *arena;
    const Demand *demand;
    const Sizes *sizes;
    Length longest;
    Graph graph;
    int width;        /* of a row of `reached` and `steps` */
    int64_t *reached; /* least price; -1 where not reached; one row for paths_cheapest, else by a and b */
    PathStep *steps;
    int64_t *nothing; /* prices of nothing */
    int *found;       /* places */
    bool was_two;     /* of what was found last */
    int64_t work;
};

Paths *paths_new(Arena *arena, const Demand *demand, const Sizes *sizes, Length longest, int studs)
{
    Paths *paths = arena_one(arena, Paths);
    Graph *graph = &paths->graph;
    int places = studs + 2;
    paths->arena = arena;
    paths->demand = demand;
    paths->sizes = sizes;
    paths->longest = longest;
    graph->x = arena_array(arena, Length, places);
    graph->last = arena_array(arena, int, places);
    graph->first = arena_array(arena, int, places);
    graph->near = arena_array(arena, int, places);
    graph->beyond = arena_array(arena, int, places);
    paths->width = (studs < TWO_STUDS_MOST ? studs : TWO_STUDS_MOST) + 2;
    size_t states = (size_t)paths->width * (size_t)paths->width;
    states = states > (size_t)places ? states : (size_t)places;
    paths->reached = arena_array(arena, int64_t, states);
    paths->steps = arena_array(arena, PathStep, states);
    paths->nothing = arena_array(arena, int64_t, sizes->count);
    paths->found = arena_array(arena, int, places);
    return paths;
}

Length paths_place(const Run *run, int place)
{
    if (place == 0)
        return run->left;
    return place == run->stud_count + 1 ? run->right : run->studs->at[run->stud_first + place - 1];
}

/* ---- the graph ---- */

static void find_places(Paths *paths, const Run *run)
{
    Graph *graph = &paths->graph;
    graph->end = run->stud_count + 1;
    for (int i = 0; i <= graph->end; i++)
        graph->x[i] = paths_place(run, i);
    for (int i = 0, last = 0; i <= graph->end; i++) {
        while (last < graph->end && graph->x[last + 1] - graph->x[i] <= paths->longest)
            last++;
        last = last > i ? last : i;
        graph->last[i] = last;
    }
}

/* Joints stand at studs alone: what is at an end is near to nothing. */
static void find_near(Paths *paths)
{
    Graph *graph = &paths->graph;
    Length stagger = paths->demand->stagger;
    int near = 1, beyond = 1;
    for (int i = 1; i < graph->end; i++) {
        while (near < graph->end && graph->x[near] <= graph->x[i] - stagger)
            near++;
        while (beyond < graph->end && graph->x[beyond] < graph->x[i] + stagger)
            beyond++;
        graph->near[i] = near;
        graph->beyond[i] = beyond;
    }
    graph->near[0] = graph->beyond[0] = graph->near[graph->end] = graph->beyond[graph->end] = graph->end + 1;
}

static void find_pieces(Paths *paths, const Run *run)
{
    Graph *graph = &paths->graph;
    int pieces = 0;
    for (int i = 0; i < graph->end; i++)
        pieces += graph->last[i] - i;
    if (graph->room < pieces) {
        graph->room = 2 * pieces;
        graph->size = arena_array(paths->arena, int, graph->room);
    }
    pieces = 0;
    for (int from = 0; from < graph->end; from++) {
        graph->first[from] = pieces;
        for (int to = from + 1; to <= graph->last[from]; to++) {
            Length left = graph->x[from], right = graph->x[to], length = demand_length(run, left, right);
            bool is_piece = !demand_is_short(run, left, right) && length <= paths->longest;
            graph->size[pieces++] = is_piece ? sizes_index(paths->sizes, length + paths->demand->kerf) : -1;
        }
    }
    paths->work += pieces;
}

/* A pair's work: for each place behind, as many steps as it reaches places for each place that the other may stand at.
 */
static int64_t pair_work(const Graph *graph)
{
    int64_t work = 0;
    for (int i = 0; i < graph->end; i++)
        work += 2 * (int64_t)(graph->last[i] - i) * (graph->last[i] - i + 1);
    return work;
}

int64_t paths_work_of_pair(Paths *paths, const Run *run)
{
    if (run->stud_count > TWO_STUDS_MOST)
        return -1;
    find_places(paths, run);
    int64_t work = pair_work(&paths->graph);
    return work <= PAIR_WORK_MOST ? work : -1;
}

int64_t paths_take_work(Paths *paths)
{
    int64_t work = paths->work;
    paths->work = 0;
    return work;
}

/* ---- one ---- */

int64_t paths_cheapest(Paths *paths, const Run *run, const int64_t *duals, const bool *closed)
{
    const Graph *graph = &paths->graph;
    int64_t *reached = paths->reached;
    find_places(paths, run);
    find_pieces(paths, run);
    paths->was_two = false;
    for (int to = 1; to <= graph->end; to++)
        reached[to] = -1;
    reached[0] = 0;
    for (int from = 0; from < graph->end; from++) {
        if (reached[from] < 0)
            continue;
        if (from > 0 && closed != NULL && closed[from])
            reached[from] += PATHS_CLOSED;
        const int first = graph->first[from] - (from + 1);
        for (int to = from + 1; to <= graph->last[from]; to++) {
            const int size = graph->size[first + to];
            if (size < 0)
                continue;
            int64_t price = reached[from] + duals[size];
            if (reached[to] >= 0 && reached[to] < price)
                continue;
            reached[to] = price;
            paths->steps[to].from = from;
        }
    }
    return reached[graph->end];
}

/* ---- two ---- */

/* Goes on with the one that is behind. */
static void go_on(Paths *paths, const int64_t *duals, const bool *closed, int behind, int other, bool above)
{
    const Graph *graph = &paths->graph;
    const int first = graph->first[behind] - (behind + 1); /* the size of the piece to a place is that much further */
    size_t row = (size_t)(above ? other * paths->width : other), step = (size_t)(above ? 1 : paths->width);
    int64_t *reached = paths->reached + row;
    PathStep *steps = paths->steps + row;
    int64_t so_far = reached[step * (size_t)behind];
    if (so_far < 0)
        return;
    paths->work += graph->last[behind] - behind;
    for (int to = behind + 1; to <= graph->last[behind]; to++) {
        if (to >= graph->near[other] && to < graph->beyond[other]) {
            to = graph->beyond[other] - 1;
            continue;
        }
        const int size = graph->size[first + to];
        if (size < 0)
            continue;
        int64_t price = so_far + duals[size];
        if (closed != NULL && to < graph->end && closed[to])
            price += PATHS_CLOSED;
        size_t state = step * (size_t)to;
        if (reached[state] >= 0 && reached[state] <= price)
            continue;
        reached[state] = price;
        steps[state] = (PathStep){behind, above};
    }
}

static int64_t two(Paths *paths, const Run *run, const int64_t *duals, const bool *closed, const int64_t *duals_above,
                   const bool *closed_above)
{
    const Graph *graph = &paths->graph;
    int width = paths->width;
    find_places(paths, run);
    find_near(paths);
    find_pieces(paths, run);
    for (int a = 0; a <= graph->end; a++)
        memset(paths->reached + a * width, -1, (size_t)(graph->end + 1) * sizeof *paths->reached);
    paths->reached[0] = 0;
    paths->was_two = true;
    for (int behind = 0; behind < graph->end; behind++) {
        for (int other = behind; other <= graph->last[behind]; other++)
            go_on(paths, duals, closed, behind, other, false);
        for (int other = behind + 1; other <= graph->last[behind]; other++)
            go_on(paths, duals_above, closed_above, behind, other, true);
    }
    return paths->reached[graph->end * width + graph->end];
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
    int a = paths->graph.end, b = a;
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
