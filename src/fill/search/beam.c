/*
 *     run.left      x                    y                              run.right
 *        |===piece===|=======piece========|........... rest ............|
 *     node i ------>node j ------------>node k
 *
 * Invariants: a node's x is greater than its parent's; what its row takes from a span is known from its ancestors
 * alone, the supply is untouched while nodes are compared. Rows longer than WINDOW pieces are cut in parts: the best
 * node's pieces are cut, and the search goes on from there.
 */
#include "fill/search/beam.h"

#include "base/panic.h"
#include "fill/search/candidates.h"

enum {
    WIDTH_MOST = 24,
    WINDOW = 40,
    LONG = 4,        /* boards */
    EASE_LEVELS = 1, /* more, after a dead end */
    TAILS_MOST = 4,
    NOISE = 400000 /* nm, up to 2^(NOISES-1) times as much */,
    NOISES = 7,
    WORK_OF_RUN = 16,
    WORK_OF_REACH = 64,  /* pieces looked at for one unit */
    KEPT_MOST = 2000000, /* prices of places */
    WORK_OF_NODE = 10
};

typedef struct Cuts {
    Placed *at;
    int count, room;
} Cuts;

struct Beam {
    Arena *arena;
    Solution *solution;
    const Sizes *sizes;
    const int64_t *prices;
    int *like;            /* of each run: the first one with the same places */
    int64_t **reached_of; /* of each run that is such a first one, once it was asked for */
    int64_t *scratch;     /* for one run, where too much is kept already */
    int64_t kept;

    /* of the run in hand */
    const Run *run;
    int index;
    int width;
    bool closes; /* the last piece keeps something over where the run has a closer */
    bool breaks; /* rules may be broken, wood left bare */
    Random *random;
    uint64_t noise;
    LengthList near;
    const int64_t *reached; /* price of the run from its left end to each of its places; NULL before prices are used */
    Length tails[TAILS_MOST];
    int tail_count;
    Nodes nodes;
    int level[WIDTH_MOST], level_count;
    int next[WIDTH_MOST], next_count;
    int best; /* node that ends the run, -1 where none */
    Cuts done;
    int work;
    Length piece_cost;
};

Beam *beam_new(Arena *arena, Solution *solution)
{
    Beam *beam = arena_one(arena, Beam);
    beam->arena = arena;
    beam->solution = solution;
    return beam;
}

static bool same_places(const Run *one, const Run *other)
{
    return one->left == other->left && one->right == other->right && one->studs == other->studs &&
           one->stud_first == other->stud_first && one->stud_count == other->stud_count && one->closer == other->closer;
}

void beam_use_piece_cost(Beam *beam, Length cost)
{
    beam->piece_cost = cost;
}

void beam_use_prices(Beam *beam, const Sizes *sizes, const int64_t *prices)
{
    const Demand *demand = beam->solution->demand;
    int places = 0;
    beam->sizes = sizes;
    beam->prices = prices;
    beam->like = arena_array(beam->arena, int, demand->run_count);
    beam->reached_of = arena_array(beam->arena, int64_t *, demand->run_count);
    beam->kept = 0;
    for (int i = 0; i < demand->run_count; i++) {
        const Run *run = &demand->runs[i];
        int below = demand->rows[run->row].below;
        beam->like[i] = i;
        for (int j = 0; below >= 0 && j < demand->rows[below].run_count; j++)
            if (same_places(run, &demand->runs[demand->rows[below].run_first + j]))
                beam->like[i] = beam->like[demand->rows[below].run_first + j];
        places = run->stud_count + 1 > places ? run->stud_count + 1 : places;
    }
    beam->scratch = arena_array(beam->arena, int64_t, places);
}

/* ---- the value of the run up to x ---- */

static int64_t price_between(const Beam *beam, Length from, Length to)
{
    Length length = demand_length(beam->run, from, to);
    if (beam->prices == NULL)
        return length;
    int64_t cell = (length + beam->solution->demand->kerf) / beam->sizes->width;
    if (cell >= beam->sizes->cell_count || beam->sizes->index[cell] < 0)
        return INT64_MAX / 4;
    return beam->prices[beam->sizes->index[cell]];
}

/* Least price from the left end to each stud and the right end, into `reached`. */
static void find_reached(Beam *beam, int64_t *reached)
{
    const Run *run = beam->run;
    const LengthList *studs = run->studs;
    int looked = 0;
    for (int j = 0; j <= run->stud_count; j++) {
        Length to = j == run->stud_count ? run->right : studs->at[run->stud_first + j];
        int64_t least = price_between(beam, run->left, to);
        for (int i = j - 1; i >= 0; i--, looked++) {
            Length from = studs->at[run->stud_first + i];
            if (to - from > beam->solution->supply->longest)
                break;
            int64_t price = reached[i] + price_between(beam, from, to);
            if (price < least)
                least = price;
        }
        if (least >= INT64_MAX / 4) /* no path by the rules: by its length */
            least = to - run->left;
        reached[j] = least;
    }
    beam->work += looked / WORK_OF_REACH;
}

static void reach_places(Beam *beam)
{
    if (beam->prices == NULL)
        return;
    int like = beam->like[beam->index], places = beam->run->stud_count + 1;
    beam->reached = beam->reached_of[like];
    if (beam->reached != NULL)
        return;
    int64_t *reached = beam->scratch;
    if (beam->kept + places <= KEPT_MOST) {
        reached = arena_array(beam->arena, int64_t, places);
        beam->reached_of[like] = reached;
        beam->kept += places;
    }
    find_reached(beam, reached);
    beam->reached = reached;
}

static int64_t value_to(const Beam *beam, Length x)
{
    const Run *run = beam->run;
    if (beam->reached == NULL || x == run->left)
        return x - run->left;
    if (x == run->right)
        return beam->reached[run->stud_count];
    const LengthList *studs = run->studs;
    int place = demand_first_from(studs, x + 1) - run->stud_first;
    return place == 0 ? x - run->left : beam->reached[place - 1] + (x - studs->at[run->stud_first + place - 1]);
}

/* ---- where joints may stand ---- */

static int joint_breaks(const Beam *beam, Length x)
{
    const Demand *demand = beam->solution->demand;
    if (x == beam->run->right)
        return 0;
    int breaks = demand_near(&beam->near, x, demand->stagger);
    if (demand->on_studs && !demand_at_stud(beam->run, x))
        breaks++;
    return breaks;
}

/* The last mark at or before x that keeps its stagger. */
static Length retreat(const Beam *beam, Length x)
{
    const Demand *demand = beam->solution->demand;
    x = demand_mark_down(demand, beam->run, x);
    for (int i = demand_first_from(&beam->near, x + demand->stagger) - 1;
         i >= 0 && beam->near.at[i] > x - demand->stagger; i--)
        x = demand_mark_down(demand, beam->run, beam->near.at[i] - demand->stagger);
    return x;
}

/* The first at or after it that keeps its stagger. */
static Length advance(const Beam *beam, Length x)
{
    const Demand *demand = beam->solution->demand;
    x = demand_mark_up(demand, beam->run, x);
    for (int i = demand_first_from(&beam->near, x - demand->stagger + 1);
         i < beam->near.count && beam->near.at[i] < x + demand->stagger; i++)
        x = demand_mark_up(demand, beam->run, beam->near.at[i] + demand->stagger);
    return x;
}

/* ---- nodes ---- */

static bool better(const Node *one, const Node *other)
{
    if (one->shortfall != other->shortfall)
        return one->shortfall < other->shortfall;
    return one->rank < other->rank;
}

/* Keeps the node among the best of its level; of those that end at one place no more than two. */
static void keep_node(Beam *beam, const Node *node)
{
    if (node->x == beam->run->right) {
        if (beam->best < 0 || better(node, &beam->nodes.at[beam->best])) {
            *arena_push(beam->arena, &beam->nodes) = *node;
            beam->best = beam->nodes.count - 1;
        }
        return;
    }
    if (beam->best >= 0 && node->shortfall > beam->nodes.at[beam->best].shortfall)
        return;
    int alike = 0, at = beam->next_count, drop = beam->next_count;
    for (int i = 0; i < beam->next_count; i++) {
        const Node *other = &beam->nodes.at[beam->next[i]];
        if (at == beam->next_count && better(node, other))
            at = i;
        if (other->x == node->x && ++alike == 2)
            drop = i;
    }
    if (alike < 2)
        drop = beam->next_count < beam->width ? beam->next_count : beam->width - 1;
    if (at > drop || at >= beam->width)
        return;
    if (drop == beam->next_count)
        beam->next_count++;
    for (int i = drop; i > at; i--)
        beam->next[i] = beam->next[i - 1];
    *arena_push(beam->arena, &beam->nodes) = *node;
    beam->next[at] = beam->nodes.count - 1;
}

/* Whether a piece after the node is one too many: a run too short for two has one. */
static bool is_second(const Beam *beam, const Node *node)
{
    if (!beam->solution->supply->single[beam->index] || node->parent < 0)
        return false;
    return !node->bare || beam->nodes.at[node->parent].parent >= 0;
}

static void try_piece(Beam *beam, int parent, const Candidate *candidate, Length right)
{
    const Demand *demand = beam->solution->demand;
    const Supply *supply = beam->solution->supply;
    const Node *from = &beam->nodes.at[parent];
    Length length = beam->closes ? demand_length(beam->run, from->x, right) : right - from->x;
    beam->work++;
    Length wood = demand_wood(demand, beam->run, from->x, right, beam->closes);
    Length needed = candidate->source == SOURCE_NEW ? length : wood;
    if (right <= from->x || needed > candidate->left || is_second(beam, from))
        return;
    int breaks = joint_breaks(beam, right) + demand_is_short(beam->run, from->x, right);
    if (breaks > 0 && !beam->breaks)
        return;
    if (!demand_whole(demand, beam->run, from->x, right))
        return;
    if (supply->narrow && demand_need(demand, beam->run, from->x, right) > candidate->width)
        return;
    Node node = {.parent = parent, .source = candidate->source, .id = candidate->id, .x = right};
    node.left = candidate->left - wood - demand->kerf;
    node.shortfall = from->shortfall + breaks * BREAK_COST;
    node.cost = from->cost + candidate->price - salvage_of(supply->salvage, node.left) + beam->piece_cost;
    node.rank = node.cost - value_to(beam, right);
    if (beam->random != NULL)
        node.rank += (int64_t)random_below(beam->random, beam->noise);
    keep_node(beam, &node);
}

static void try_bare(Beam *beam, int parent, Length to)
{
    const Node *from = &beam->nodes.at[parent];
    if (from->bare || to <= from->x || to > beam->run->right)
        return;
    Node node = {.parent = parent, .x = to, .cost = from->cost, .bare = true};
    node.shortfall = from->shortfall + (to - from->x) + joint_breaks(beam, to) * BREAK_COST;
    node.rank = node.cost - value_to(beam, to);
    keep_node(beam, &node);
}

/* ---- the next piece ---- */

/* How many studs of the run stand at x or further left. */
static int studs_to(const Beam *beam, Length x)
{
    const Run *run = beam->run;
    int count = demand_first_from(run->studs, x + 1) - run->stud_first;
    return count < run->stud_count ? count : run->stud_count;
}

static void to_studs(Beam *beam, int parent, const Candidate *candidate, Length reach)
{
    const Run *run = beam->run;
    const LengthList *studs = run->studs;
    int tried = 0;
    for (int i = studs_to(beam, reach) - 1; i >= 0 && tried < 3; i--) {
        Length stud = studs->at[run->stud_first + i];
        if (stud <= beam->nodes.at[parent].x)
            break;
        if (beam->breaks || joint_breaks(beam, stud) == 0) {
            try_piece(beam, parent, candidate, stud);
            tried++;
        }
    }
}

static void to_marks(Beam *beam, int parent, const Candidate *candidate, Length reach)
{
    const Demand *demand = beam->solution->demand;
    const Run *run = beam->run;
    Length x = beam->nodes.at[parent].x;
    Length last = demand_mark_down(demand, run, run->right - (run->shortest > 0 ? run->shortest : 1));
    Length whole = retreat(beam, reach < last ? reach : last);
    try_piece(beam, parent, candidate, whole);
    if (x + candidate->left - whole >= demand->round && x + candidate->left - whole < demand->kerf + demand->least)
        try_piece(beam, parent, candidate, retreat(beam, x + candidate->left - demand->kerf - demand->least));
    for (int i = 0; i < beam->tail_count; i++) {
        Length tail = advance(beam, run->right - beam->tails[i]);
        if (tail < whole)
            try_piece(beam, parent, candidate, tail);
    }
    for (int i = 0; i < run->forks.count; i++)
        if (run->forks.at[i].left < whole && whole < run->forks.at[i].right)
            try_piece(beam, parent, candidate, retreat(beam, run->forks.at[i].left));
    if (beam->random != NULL && whole > x && random_below(beam->random, 4) == 0)
        try_piece(beam, parent, candidate,
                  retreat(beam, x + (Length)random_below(beam->random, (uint64_t)(whole - x))));
}

static void bare_on(Beam *beam, int parent)
{
    const Demand *demand = beam->solution->demand;
    const Run *run = beam->run;
    const LengthList *studs = run->studs;
    Length x = beam->nodes.at[parent].x;
    try_bare(beam, parent, run->right);
    int behind = studs_to(beam, x);
    for (int i = behind; demand->on_studs && i < run->stud_count && i < behind + 6; i++)
        try_bare(beam, parent, studs->at[run->stud_first + i]);
    for (int i = 0; i < run->forks.count; i++)
        try_bare(beam, parent, demand_mark_up(demand, run, run->forks.at[i].right));
    for (int i = 0; !demand->on_studs && i < beam->tail_count; i++) {
        try_bare(beam, parent, demand_mark_up(demand, run, run->right - beam->tails[i]));
        try_bare(beam, parent, advance(beam, run->right - beam->tails[i]));
    }
    for (int i = demand_first_from(&beam->near, x - demand->stagger + 1); i < beam->near.count && beam->near.at[i] < x;
         i++) /* just clear of a joint beside */
        try_bare(beam, parent, advance(beam, x));
}

static void expand(Beam *beam, int parent)
{
    const Demand *demand = beam->solution->demand;
    const Run *run = beam->run;
    Length x = beam->nodes.at[parent].x;
    Candidates candidates;
    beam->work += WORK_OF_NODE;
    Front front = {beam->solution->supply, &beam->nodes, parent, run->right - x, demand->least};
    candidates_gather(&front, beam->random, &candidates);
    for (int i = 0; i < candidates.count; i++) {
        const Candidate *candidate = &candidates.at[i];
        if (candidate->left >= (beam->closes ? demand_length(run, x, run->right) : run->right - x))
            try_piece(beam, parent, candidate, run->right);
        Length reach = demand_mark_down(demand, run, x + candidate->left);
        if (reach >= run->right)
            reach = demand_mark_down(demand, run, run->right - 1);
        if (demand->on_studs)
            to_studs(beam, parent, candidate, x + candidate->left);
        else
            to_marks(beam, parent, candidate, reach);
        if (beam->breaks) {
            if (demand->on_studs)
                to_marks(beam, parent, candidate, reach);
            try_piece(beam, parent, candidate, reach);
        }
    }
    if (beam->breaks)
        bare_on(beam, parent);
}

/* ---- a whole run ---- */

/* Lengths of wood that could stand at the right end. */
static void find_tails(Beam *beam)
{
    const Supply *supply = beam->solution->supply;
    Length length = beam->run->right - beam->run->left;
    Length most = length < supply->longest ? length : supply->longest;
    beam->tail_count = 0;
    Length drawn = beam->random != NULL ? (Length)random_below(beam->random, (uint64_t)most + 1) : most;
    int thing = buckets_to(&supply->open, drawn);
    for (int i = 0; thing != BUCKETS_NONE && i < 2; i++, thing = buckets_down(&supply->open, thing))
        beam->tails[beam->tail_count++] = supply->spans[thing].left;
    drawn = beam->random != NULL ? (Length)random_below(beam->random, (uint64_t)supply->longest + 1) : supply->longest;
    thing = buckets_to(&supply->unopened, drawn);
    if (thing == BUCKETS_NONE)
        thing = buckets_from(&supply->unopened, drawn);
    if (thing != BUCKETS_NONE)
        beam->tails[beam->tail_count++] = supply->slots[thing].left;
}

/* Cuts the pieces of the row that ends at `node`. */
static void cut_row(Beam *beam, int node)
{
    Supply *supply = beam->solution->supply;
    int row[2 * WINDOW + 4];
    int span_of[2 * WINDOW + 4];
    int count = 0;
    for (; beam->nodes.at[node].parent >= 0; node = beam->nodes.at[node].parent)
        row[count++] = node;
    for (int i = count - 1; i >= 0; i--) {
        const Node *cut = &beam->nodes.at[row[i]];
        Length left = beam->nodes.at[cut->parent].x;
        span_of[i] = cut->id;
        if (cut->source == SOURCE_NONE)
            continue;
        if (cut->source == SOURCE_NEW)
            span_of[i] = supply->boards[supply_open(supply, supply->slots[cut->id].kind)].span_first +
                         supply->slots[cut->id].span;
        for (int j = i + 1; cut->source == SOURCE_OWN && j < count; j++)
            if (row[j] == cut->id)
                span_of[i] = span_of[j];
        Length wood = demand_wood(beam->solution->demand, beam->run, left, cut->x, beam->closes);
        supply_cut(supply, span_of[i], wood, beam->index);
        *arena_push(beam->arena, &beam->done) = (Placed){left, cut->x, span_of[i], wood};
    }
}

static void start_at(Beam *beam, Length x, bool bare)
{
    beam->nodes.count = 0;
    *arena_push(beam->arena, &beam->nodes) = (Node){.parent = -1, .x = x, .bare = bare};
    beam->level[0] = 0;
    beam->level_count = 1;
    beam->best = -1;
}

/* Takes back what was cut. */
static void undo(Beam *beam)
{
    for (int i = 0; i < beam->done.count; i++)
        supply_uncut(beam->solution->supply, beam->done.at[i].span, beam->done.at[i].wood, beam->index);
}

static void expand_level(Beam *beam)
{
    for (int i = 0; i < beam->level_count; i++)
        expand(beam, beam->level[i]);
}

/* Searches through to the right end; true where it got there. What it cut stands in `done`. A long run that comes to a
 * dead end breaks rules there, and keeps them again after it. */
static bool search(Beam *beam, int width, bool breaks)
{
    bool eases = !breaks && beam->run->right - beam->run->left > LONG * beam->solution->supply->longest;
    beam->width = width < WIDTH_MOST ? width : WIDTH_MOST;
    beam->breaks = breaks;
    beam->done.count = 0;
    start_at(beam, beam->run->left, false);
    for (int depth = 1, eased = 0; beam->level_count > 0; depth++) {
        beam->next_count = 0;
        beam->breaks = breaks || (eased > 0 && depth <= eased + EASE_LEVELS);
        expand_level(beam);
        if (eases && !beam->breaks && beam->next_count == 0 && beam->best < 0) {
            eased = depth;
            beam->breaks = true;
            expand_level(beam);
        }
        for (int i = 0; i < beam->next_count; i++)
            beam->level[i] = beam->next[i];
        beam->level_count = beam->next_count;
        if (depth % WINDOW == 0 && beam->level_count > 0) {
            Node front = beam->nodes.at[beam->level[0]];
            cut_row(beam, beam->level[0]);
            start_at(beam, front.x, front.bare);
        }
    }
    if (beam->best >= 0)
        cut_row(beam, beam->best);
    return beam->best >= 0;
}

int beam_cover(Beam *beam, int index, int width, Random *random)
{
    beam->index = index;
    beam->run = &beam->solution->demand->runs[index];
    beam->random = random;
    beam->work = WORK_OF_RUN;
    if (random != NULL)
        beam->noise = (uint64_t)NOISE << random_below(random, NOISES);
    solution_joints_beside(beam->solution, index, &beam->near);
    reach_places(beam);
    find_tails(beam);
    beam->closes = true;
    bool found = search(beam, width, false);
    if (!found && beam->run->closer > 0) {
        undo(beam);
        beam->closes = false;
        found = search(beam, width, false);
    }
    if (!found) {
        undo(beam);
        found = search(beam, 2 * width, true);
    }
    undo(beam);
    if (found)
        solution_set(beam->solution, index, beam->done.at, beam->done.count);
    return beam->work;
}
