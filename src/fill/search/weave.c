/*
 *     run.left      x                    y                              run.right
 *        |===piece===|=======piece========|........... rest ............|
 *     label i ------>label j ------------>label k
 *
 * Invariants: a label's x is greater than its parent's; what its row takes from a span is known from its ancestors
 * alone, the pile is untouched while labels are weighed. Rows longer than WINDOW pieces are settled in parts: the best
 * label's pieces are cut, and the search goes on from there.
 */
#include "fill/search/weave.h"

#include "base/panic.h"
#include "fill/search/wood.h"

enum {
    BEAM_MOST = 24,
    WINDOW = 40,
    LONG = 4,        /* boards */
    EASE_LEVELS = 1, /* more, after a dead end */
    TAILS_MOST = 4,
    NOISE = 400000 /* nm, up to 2^(NOISES-1) times as much */,
    NOISES = 7,
    WORK_OF_RUN = 16,
    WORK_OF_LABEL = 10
};

typedef struct Done {
    Placed *at;
    int count, room;
} Done;

struct Weave {
    Arena *arena;
    Laid *laid;
    const Sizes *sizes;
    const int64_t *prices;

    /* of the run in hand */
    const Run *run;
    int index;
    int beam;
    bool breaks; /* rules may be broken, wood left bare */
    Random *random;
    uint64_t noise;
    LengthList near;
    LengthList reached; /* price of the run from its left end to each of its places */
    Length tails[TAILS_MOST];
    int tail_count;
    Labels labels;
    int level[BEAM_MOST], level_count;
    int next[BEAM_MOST], next_count;
    int best; /* label that ends the run, -1 where none */
    Done done;
    int work;
};

Weave *weave_new(Arena *arena, Laid *laid)
{
    Weave *weave = arena_one(arena, Weave);
    weave->arena = arena;
    weave->laid = laid;
    return weave;
}

void weave_price(Weave *weave, const Sizes *sizes, const int64_t *prices)
{
    weave->sizes = sizes;
    weave->prices = prices;
}

/* ---- what the run is worth up to x ---- */

static int64_t price_between(const Weave *weave, Length from, Length to)
{
    Length length = to - from;
    if (weave->prices == NULL)
        return length;
    int64_t cell = (length + weave->laid->demand->kerf) / weave->sizes->width;
    if (cell >= weave->sizes->cell_count || weave->sizes->index[cell] < 0)
        return INT64_MAX / 4;
    return weave->prices[weave->sizes->index[cell]];
}

/* Least price from the left end to each stud and the right end. */
static void reach_places(Weave *weave)
{
    const Run *run = weave->run;
    const LengthList *studs = demand_studs(weave->laid->demand, run);
    weave->reached.count = 0;
    if (weave->prices == NULL)
        return;
    for (int j = 0; j <= run->stud_count; j++) {
        Length to = j == run->stud_count ? run->right : studs->at[run->stud_first + j];
        int64_t least = price_between(weave, run->left, to);
        for (int i = j - 1; i >= 0; i--) {
            Length from = studs->at[run->stud_first + i];
            if (to - from > weave->laid->pile->longest)
                break;
            int64_t price = weave->reached.at[i] + price_between(weave, from, to);
            if (price < least)
                least = price;
        }
        if (least >= INT64_MAX / 4) /* no way by the rules: by its length */
            least = to - run->left;
        *arena_push(weave->arena, &weave->reached) = least;
    }
}

static int64_t worth_to(const Weave *weave, Length x)
{
    const Run *run = weave->run;
    if (weave->reached.count == 0 || x == run->left)
        return x - run->left;
    if (x == run->right)
        return weave->reached.at[run->stud_count];
    const LengthList *studs = demand_studs(weave->laid->demand, run);
    int place = demand_first_from(studs, x + 1) - run->stud_first;
    return place == 0 ? x - run->left : weave->reached.at[place - 1] + (x - studs->at[run->stud_first + place - 1]);
}

/* ---- where joints may stand ---- */

static int joint_breaks(const Weave *weave, Length x)
{
    const Demand *demand = weave->laid->demand;
    if (x == weave->run->right)
        return 0;
    int breaks = demand_near(&weave->near, x, demand->stagger);
    if (demand->on_studs && !demand_at_stud(demand, weave->run, x))
        breaks++;
    return breaks;
}

/* The last mark at or before x that keeps its stagger. */
static Length retreat(const Weave *weave, Length x)
{
    const Demand *demand = weave->laid->demand;
    x = demand_mark_down(demand, weave->run, x);
    for (int i = demand_first_from(&weave->near, x + demand->stagger) - 1;
         i >= 0 && weave->near.at[i] > x - demand->stagger; i--)
        x = demand_mark_down(demand, weave->run, weave->near.at[i] - demand->stagger);
    return x;
}

/* The first at or behind it. */
static Length advance(const Weave *weave, Length x)
{
    const Demand *demand = weave->laid->demand;
    x = demand_mark_up(demand, weave->run, x);
    for (int i = demand_first_from(&weave->near, x - demand->stagger + 1);
         i < weave->near.count && weave->near.at[i] < x + demand->stagger; i++)
        x = demand_mark_up(demand, weave->run, weave->near.at[i] + demand->stagger);
    return x;
}

/* ---- labels ---- */

static bool better(const Label *one, const Label *other)
{
    if (one->shortfall != other->shortfall)
        return one->shortfall < other->shortfall;
    return one->rank < other->rank;
}

/* Keeps the label among the best of its level; of those that end at one place no more than two. */
static void keep(Weave *weave, const Label *label)
{
    if (label->x == weave->run->right) {
        if (weave->best < 0 || better(label, &weave->labels.at[weave->best])) {
            *arena_push(weave->arena, &weave->labels) = *label;
            weave->best = weave->labels.count - 1;
        }
        return;
    }
    if (weave->best >= 0 && label->shortfall > weave->labels.at[weave->best].shortfall)
        return;
    int alike = 0, at = weave->next_count, drop = weave->next_count;
    for (int i = 0; i < weave->next_count; i++) {
        const Label *other = &weave->labels.at[weave->next[i]];
        if (at == weave->next_count && better(label, other))
            at = i;
        if (other->x == label->x && ++alike == 2)
            drop = i;
    }
    if (alike < 2)
        drop = weave->next_count < weave->beam ? weave->next_count : weave->beam - 1;
    if (at > drop || at >= weave->beam)
        return;
    if (drop == weave->next_count)
        weave->next_count++;
    for (int i = drop; i > at; i--)
        weave->next[i] = weave->next[i - 1];
    *arena_push(weave->arena, &weave->labels) = *label;
    weave->next[at] = weave->labels.count - 1;
}

static void try_piece(Weave *weave, int parent, const Candidate *candidate, Length right)
{
    const Demand *demand = weave->laid->demand;
    const Pile *pile = weave->laid->pile;
    const Label *from = &weave->labels.at[parent];
    Length length = right - from->x;
    weave->work++;
    if (length <= 0 || length > candidate->left)
        return;
    int breaks = joint_breaks(weave, right) + (length < weave->run->shortest ? 1 : 0);
    if (breaks > 0 && !weave->breaks)
        return;
    if (!demand_whole(demand, weave->run, from->x, right))
        return;
    if (pile->narrow && demand_need(demand, weave->run, from->x, right) > candidate->width)
        return;
    Label label = {.parent = parent, .source = candidate->source, .id = candidate->id, .x = right};
    label.left = candidate->left - length - demand->kerf;
    label.shortfall = from->shortfall + breaks * BREAK_COST;
    label.cost = from->cost + candidate->price - worth_of(pile->worth, label.left);
    label.rank = label.cost - worth_to(weave, right);
    if (weave->random != NULL)
        label.rank += (int64_t)random_below(weave->random, weave->noise);
    keep(weave, &label);
}

static void try_bare(Weave *weave, int parent, Length to)
{
    const Label *from = &weave->labels.at[parent];
    if (from->bare || to <= from->x || to > weave->run->right)
        return;
    Label label = {.parent = parent, .x = to, .cost = from->cost, .bare = true};
    label.shortfall = from->shortfall + (to - from->x) + joint_breaks(weave, to) * BREAK_COST;
    label.rank = label.cost - worth_to(weave, to);
    keep(weave, &label);
}

/* ---- the next piece ---- */

/* How many studs of the run stand at x or further left. */
static int studs_to(const Weave *weave, Length x)
{
    const Run *run = weave->run;
    int count = demand_first_from(demand_studs(weave->laid->demand, run), x + 1) - run->stud_first;
    return count < run->stud_count ? count : run->stud_count;
}

static void to_studs(Weave *weave, int parent, const Candidate *candidate, Length reach)
{
    const Run *run = weave->run;
    const LengthList *studs = demand_studs(weave->laid->demand, run);
    int tried = 0;
    for (int i = studs_to(weave, reach) - 1; i >= 0 && tried < 3; i--) {
        Length stud = studs->at[run->stud_first + i];
        if (stud <= weave->labels.at[parent].x)
            break;
        if (weave->breaks || joint_breaks(weave, stud) == 0) {
            try_piece(weave, parent, candidate, stud);
            tried++;
        }
    }
}

static void to_marks(Weave *weave, int parent, const Candidate *candidate, Length reach)
{
    const Demand *demand = weave->laid->demand;
    const Run *run = weave->run;
    Length x = weave->labels.at[parent].x;
    Length last = demand_mark_down(demand, run, run->right - (run->shortest > 0 ? run->shortest : 1));
    Length whole = retreat(weave, reach < last ? reach : last);
    try_piece(weave, parent, candidate, whole);
    if (x + candidate->left - whole >= demand->round && x + candidate->left - whole < demand->kerf + demand->least)
        try_piece(weave, parent, candidate, retreat(weave, x + candidate->left - demand->kerf - demand->least));
    for (int i = 0; i < weave->tail_count; i++) {
        Length tail = advance(weave, run->right - weave->tails[i]);
        if (tail < whole)
            try_piece(weave, parent, candidate, tail);
    }
    for (int i = 0; i < run->forks.count; i++)
        if (run->forks.at[i].left < whole && whole < run->forks.at[i].right)
            try_piece(weave, parent, candidate, retreat(weave, run->forks.at[i].left));
    if (weave->random != NULL && whole > x && random_below(weave->random, 4) == 0)
        try_piece(weave, parent, candidate,
                  retreat(weave, x + (Length)random_below(weave->random, (uint64_t)(whole - x))));
}

static void bare_on(Weave *weave, int parent)
{
    const Demand *demand = weave->laid->demand;
    const Run *run = weave->run;
    const LengthList *studs = demand_studs(demand, run);
    Length x = weave->labels.at[parent].x;
    try_bare(weave, parent, run->right);
    int behind = studs_to(weave, x);
    for (int i = behind; demand->on_studs && i < run->stud_count && i < behind + 6; i++)
        try_bare(weave, parent, studs->at[run->stud_first + i]);
    for (int i = 0; i < run->forks.count; i++)
        try_bare(weave, parent, demand_mark_up(demand, run, run->forks.at[i].right));
    for (int i = 0; !demand->on_studs && i < weave->tail_count; i++) {
        try_bare(weave, parent, demand_mark_up(demand, run, run->right - weave->tails[i]));
        try_bare(weave, parent, advance(weave, run->right - weave->tails[i]));
    }
    for (int i = demand_first_from(&weave->near, x - demand->stagger + 1);
         i < weave->near.count && weave->near.at[i] < x; i++) /* just clear of a joint beside */
        try_bare(weave, parent, advance(weave, x));
}

static void expand(Weave *weave, int parent)
{
    const Demand *demand = weave->laid->demand;
    const Run *run = weave->run;
    Length x = weave->labels.at[parent].x;
    Candidates wood;
    weave->work += WORK_OF_LABEL;
    Front front = {weave->laid->pile, &weave->labels, parent, run->right - x, demand->least};
    wood_gather(&front, weave->random, &wood);
    for (int i = 0; i < wood.count; i++) {
        const Candidate *candidate = &wood.at[i];
        if (candidate->left >= run->right - x)
            try_piece(weave, parent, candidate, run->right);
        Length reach = demand_mark_down(demand, run, x + candidate->left);
        if (reach >= run->right)
            reach = demand_mark_down(demand, run, run->right - 1);
        if (demand->on_studs)
            to_studs(weave, parent, candidate, x + candidate->left);
        else
            to_marks(weave, parent, candidate, reach);
        if (weave->breaks) {
            if (demand->on_studs)
                to_marks(weave, parent, candidate, reach);
            try_piece(weave, parent, candidate, reach);
        }
    }
    if (weave->breaks)
        bare_on(weave, parent);
}

/* ---- a whole run ---- */

/* Lengths of wood that could stand at the right end. */
static void find_tails(Weave *weave)
{
    const Pile *pile = weave->laid->pile;
    Length length = weave->run->right - weave->run->left;
    Length most = length < pile->longest ? length : pile->longest;
    weave->tail_count = 0;
    Length drawn = weave->random != NULL ? (Length)random_below(weave->random, (uint64_t)most + 1) : most;
    int thing = rack_to(&pile->open, drawn);
    for (int i = 0; thing != RACK_NONE && i < 2; i++, thing = rack_down(&pile->open, thing))
        weave->tails[weave->tail_count++] = pile->spans[thing].left;
    drawn = weave->random != NULL ? (Length)random_below(weave->random, (uint64_t)pile->longest + 1) : pile->longest;
    thing = rack_to(&pile->unopened, drawn);
    if (thing == RACK_NONE)
        thing = rack_from(&pile->unopened, drawn);
    if (thing != RACK_NONE)
        weave->tails[weave->tail_count++] = pile->slots[thing].left;
}

/* Cuts the pieces of the row that ends at `label`. */
static void settle(Weave *weave, int label)
{
    Pile *pile = weave->laid->pile;
    int row[2 * WINDOW + 4];
    int span_of[2 * WINDOW + 4];
    int count = 0;
    for (; weave->labels.at[label].parent >= 0; label = weave->labels.at[label].parent)
        row[count++] = label;
    for (int i = count - 1; i >= 0; i--) {
        const Label *cut = &weave->labels.at[row[i]];
        Length left = weave->labels.at[cut->parent].x;
        span_of[i] = cut->id;
        if (cut->source == SOURCE_NONE)
            continue;
        if (cut->source == SOURCE_NEW)
            span_of[i] =
                pile->boards[pile_open(pile, pile->slots[cut->id].kind)].span_first + pile->slots[cut->id].span;
        for (int j = i + 1; cut->source == SOURCE_OWN && j < count; j++)
            if (row[j] == cut->id)
                span_of[i] = span_of[j];
        pile_cut(pile, span_of[i], cut->x - left, weave->index);
        *arena_push(weave->arena, &weave->done) = (Placed){left, cut->x, span_of[i]};
    }
}

static void start_at(Weave *weave, Length x, bool bare)
{
    weave->labels.count = 0;
    *arena_push(weave->arena, &weave->labels) = (Label){.parent = -1, .x = x, .bare = bare};
    weave->level[0] = 0;
    weave->level_count = 1;
    weave->best = -1;
}

/* Takes back what was cut. */
static void undo(Weave *weave)
{
    for (int i = 0; i < weave->done.count; i++)
        pile_mend(weave->laid->pile, weave->done.at[i].span, weave->done.at[i].right - weave->done.at[i].left,
                  weave->index);
}

static void expand_level(Weave *weave)
{
    for (int i = 0; i < weave->level_count; i++)
        expand(weave, weave->level[i]);
}

/* Searches through to the right end; true where it got there. What it cut stands in `done`. A long run that comes to a
 * dead end breaks rules there, and keeps them again behind it. */
static bool search(Weave *weave, int beam, bool breaks)
{
    bool eases = !breaks && weave->run->right - weave->run->left > LONG * weave->laid->pile->longest;
    weave->beam = beam < BEAM_MOST ? beam : BEAM_MOST;
    weave->breaks = breaks;
    weave->done.count = 0;
    start_at(weave, weave->run->left, false);
    for (int depth = 1, eased = 0; weave->level_count > 0; depth++) {
        weave->next_count = 0;
        weave->breaks = breaks || (eased > 0 && depth <= eased + EASE_LEVELS);
        expand_level(weave);
        if (eases && !weave->breaks && weave->next_count == 0 && weave->best < 0) {
            eased = depth;
            weave->breaks = true;
            expand_level(weave);
        }
        for (int i = 0; i < weave->next_count; i++)
            weave->level[i] = weave->next[i];
        weave->level_count = weave->next_count;
        if (depth % WINDOW == 0 && weave->level_count > 0) {
            Label front = weave->labels.at[weave->level[0]];
            settle(weave, weave->level[0]);
            start_at(weave, front.x, front.bare);
        }
    }
    if (weave->best >= 0)
        settle(weave, weave->best);
    return weave->best >= 0;
}

int weave_run(Weave *weave, int index, int beam, Random *random)
{
    weave->index = index;
    weave->run = &weave->laid->demand->runs[index];
    weave->random = random;
    weave->work = WORK_OF_RUN;
    if (random != NULL)
        weave->noise = (uint64_t)NOISE << random_below(random, NOISES);
    laid_near(weave->laid, index, &weave->near);
    reach_places(weave);
    find_tails(weave);
    bool found = search(weave, beam, false);
    if (!found) {
        undo(weave);
        found = search(weave, 2 * beam, true);
    }
    undo(weave);
    if (found)
        laid_set(weave->laid, index, weave->done.at, weave->done.count);
    return weave->work;
}
