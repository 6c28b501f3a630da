/*
 * Two at once: a state (a, b) is how far either has come, place by place. The one behind goes on, to a place that keeps
 * its stagger to where the other stands:
 *
 *     above   |=========|=================| b
 *     run     |==============| a ...........> q
 *
 * Joints of the other further left are behind the last one checked against, so this one check is enough.
 */
#include "fill/relax/ways.h"

enum { TWO_STUDS_MOST = 400 };

typedef struct Step {
    int from; /* place; -1: not reached */
    bool above;
} Step;

struct Ways {
    const Demand *demand;
    const Sizes *sizes;
    Length longest;
    int width;        /* of a row of `reached` and `steps` */
    int64_t *reached; /* least price; -1 where not reached; one row for ways_one, else by a and b */
    Step *steps;
    int64_t *nothing; /* prices of nothing */
    bool two;
    int *found; /* places */
    int end;    /* the right end of the run asked for last */
    bool was_two;
};

Ways *ways_new(Arena *arena, const Demand *demand, const Sizes *sizes, Length longest, int studs)
{
    Ways *ways = arena_one(arena, Ways);
    ways->demand = demand;
    ways->sizes = sizes;
    ways->longest = longest;
    ways->width = studs + 2;
    ways->two = studs <= TWO_STUDS_MOST;
    size_t states = (size_t)ways->width * (size_t)(ways->two ? ways->width : 1);
    ways->reached = arena_array(arena, int64_t, states);
    ways->steps = arena_array(arena, Step, states);
    ways->nothing = arena_array(arena, int64_t, sizes->count);
    ways->found = arena_array(arena, int, ways->width);
    return ways;
}

bool ways_has_two(const Ways *ways)
{
    return ways->two;
}

Length ways_place(const Demand *demand, const Run *run, int place)
{
    if (place == 0)
        return run->left;
    return place == run->stud_count + 1 ? run->right : demand_studs(demand, run)->at[run->stud_first + place - 1];
}

/* Price of the piece between two places; -1 where there is no such piece. */
static int64_t price_of(const Ways *ways, const Run *run, const int64_t *prices, Length length)
{
    if (length < run->shortest || length > ways->longest)
        return -1;
    return prices[worth_size(ways->sizes, length + ways->demand->kerf)];
}

int64_t ways_one(Ways *ways, const Run *run, const int64_t *prices, const bool *closed)
{
    int end = run->stud_count + 1;
    ways->end = end;
    ways->was_two = false;
    ways->reached[0] = 0;
    for (int to = 1; to <= end; to++) {
        Length x = ways_place(ways->demand, run, to);
        int64_t least = -1;
        for (int from = to - 1; from >= 0 && x - ways_place(ways->demand, run, from) <= ways->longest; from--) {
            int64_t price = price_of(ways, run, prices, x - ways_place(ways->demand, run, from));
            if (price < 0 || ways->reached[from] < 0 || (least >= 0 && ways->reached[from] + price >= least))
                continue;
            least = ways->reached[from] + price;
            ways->steps[to].from = from;
        }
        ways->reached[to] = least >= 0 && to < end && closed != NULL && closed[to] ? least + WAYS_CLOSED : least;
    }
    return ways->reached[end];
}

/* Whether a joint at `x` keeps its stagger to where the other of the two stands. */
static bool keeps_stagger(const Ways *ways, const Run *run, Length x, int other)
{
    if (other == 0 || other == run->stud_count + 1)
        return true;
    Length joint = ways_place(ways->demand, run, other);
    return x >= joint + ways->demand->stagger || x <= joint - ways->demand->stagger;
}

/* Goes on with the one that is behind. */
static void go_on(Ways *ways, const Run *run, const int64_t *prices, const bool *closed, int behind, int other,
                  bool above)
{
    int width = ways->width, end = run->stud_count + 1;
    int64_t so_far = ways->reached[above ? other * width + behind : behind * width + other];
    Length left = ways_place(ways->demand, run, behind);
    for (int to = behind + 1; so_far >= 0 && to <= end; to++) {
        Length x = ways_place(ways->demand, run, to);
        if (x - left > ways->longest)
            break;
        int64_t price = price_of(ways, run, prices, x - left);
        if (price < 0 || (to < end && !keeps_stagger(ways, run, x, other)))
            continue;
        price += so_far + (to < end && closed != NULL && closed[to] ? WAYS_CLOSED : 0);
        int state = above ? other * width + to : to * width + other;
        if (ways->reached[state] >= 0 && ways->reached[state] <= price)
            continue;
        ways->reached[state] = price;
        ways->steps[state] = (Step){behind, above};
    }
}

static int64_t two(Ways *ways, const Run *run, const int64_t *prices, const bool *closed, const int64_t *prices_above,
                   const bool *closed_above)
{
    int width = ways->width, end = run->stud_count + 1;
    for (int a = 0; a <= end; a++)
        for (int b = 0; b <= end; b++)
            ways->reached[a * width + b] = -1;
    ways->reached[0] = 0;
    ways->end = end;
    ways->was_two = true;
    for (int behind = 0; behind < end; behind++) {
        for (int other = behind; other <= end; other++)
            go_on(ways, run, prices, closed, behind, other, false);
        for (int other = behind + 1; other <= end; other++)
            go_on(ways, run, prices_above, closed_above, behind, other, true);
    }
    return ways->reached[end * width + end];
}

int64_t ways_beside(Ways *ways, const Run *run, const int64_t *prices, const bool *closed)
{
    return two(ways, run, prices, closed, ways->nothing, NULL);
}

int64_t ways_two(Ways *ways, const Run *run, const int64_t *prices, const bool *closed, const bool *closed_above)
{
    return two(ways, run, prices, closed, prices, closed_above);
}

const int *ways_found(Ways *ways, bool above, int *count)
{
    int a = ways->end, b = ways->end;
    *count = 0;
    if (!ways->was_two) {
        for (; a > 0; a = ways->steps[a].from)
            ways->found[(*count)++] = a;
        return ways->found;
    }
    while (a > 0 || b > 0) {
        Step step = ways->steps[a * ways->width + b];
        int *place = step.above ? &b : &a;
        if (step.above == above)
            ways->found[(*count)++] = *place;
        *place = step.from;
    }
    return ways->found;
}
