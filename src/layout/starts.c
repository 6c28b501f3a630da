#include "layout/starts.h"

#include "layout/starts_weigh.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/*
 * All faces are made ready once; then each mark is weighed on each:
 *
 *      start - run/2  <  mark  <=  start + run/2        mark a whole multiple of wall->round
 *
 * Beyond half a run the same courses come again, counted one list further.
 */

/*
 * A run of dozens of widths marked in 64ths has some ten thousand marks. So that no file makes the list wait for
 * minutes, no more than this are weighed, and fewer where the faces fall into very many columns: those nearest to the
 * file's start.
 */
enum { MARKS_MOST = 65536, MARKS_LEAST = 1024, COLUMNS_MOST = 8000000 /* weighed in all */ };

typedef struct Scale {
    const Layout *layout;
    const Wall *wall;
    Arena *scratch;
    Bands bands;
    Length narrowest; /* face of the list */
    WeighFace **faces;
    StartWeight *weights; /* of the start at hand, one for each face */
    bool ceiling, floor;  /* some face has a gentle one */
    int64_t columns;      /* of all faces */
} Scale;

static Scale scale_new(Arena *arena, const Layout *layout, const Planks *planks)
{
    const Wall *wall = layout->wall;
    Scale scale = {.layout = layout, .wall = wall, .scratch = arena_new(), .bands = bands_of(arena, planks)};
    scale.narrowest = scale.bands.height[0];
    for (int i = 1; i < scale.bands.count; i++)
        if (scale.bands.height[i] < scale.narrowest)
            scale.narrowest = scale.bands.height[i];
    scale.faces = arena_array(arena, WeighFace *, wall->faces.count);
    scale.weights = arena_array(arena, StartWeight, wall->faces.count);
    for (int i = 0; i < wall->faces.count; i++) {
        int openings = wall->faces.at[i].openings.count;
        scale.faces[i] = weigh_face_new(arena, layout, i);
        scale.weights[i].above = arena_array(arena, Length, openings + 1);
        scale.weights[i].below = arena_array(arena, Length, openings + 1);
        scale.columns += scale.faces[i]->columns.count;
        scale.ceiling |= scale.faces[i]->has_ceiling;
        scale.floor |= scale.faces[i]->has_floor;
    }
    return scale;
}

/* What is kept of a mark until the few worth considering are chosen. */
typedef struct MarkWeight {
    Length start, least, thin, balance, ceiling, floor;
    Strip narrowest;
    bool full_top, full_bottom, gap_at_edge;
    int cutouts;
    unsigned reasons;
} MarkWeight;

static void narrow(Length *kept, Length width)
{
    if (width >= 0 && width < *kept)
        *kept = width;
}

/* Whether an edge of the opening that shows lies in a gap between courses. */
static bool gap_above(const Scale *scale, int face, int opening)
{
    return scale->faces[face]->shows_top[opening] &&
           bands_gap_at(&scale->bands, scale->layout->faces[face].openings[opening].top);
}

static bool gap_below(const Scale *scale, int face, int opening)
{
    return scale->faces[face]->shows_bottom[opening] &&
           bands_gap_at(&scale->bands, scale->layout->faces[face].openings[opening].bottom);
}

static MarkWeight weigh(Scale *scale, Length start)
{
    MarkWeight mark = {.start = start,
                       .ceiling = scale->narrowest,
                       .floor = scale->narrowest,
                       .full_top = scale->ceiling,
                       .full_bottom = scale->floor};
    scale->bands.start = start;
    Fine thin = 0;
    for (int i = 0; i < scale->wall->faces.count; i++) {
        const WeighFace *face = scale->faces[i];
        StartWeight *weight = &scale->weights[i];
        weigh_face(scale->scratch, face, &scale->bands, weight);
        thin += weight->thin;
        mark.cutouts += weight->cutouts;
        narrow(&mark.ceiling, weight->ceiling);
        narrow(&mark.floor, weight->floor);
        mark.full_top &= weight->ceiling_cut <= face->ceiling_out;
        mark.full_bottom &= weight->floor_cut <= face->floor_out;
        if (weight->least.found && (!mark.narrowest.found || weight->least.width < mark.narrowest.width))
            mark.narrowest = weight->least;
        for (int j = 0; j < face->opening_count; j++)
            mark.gap_at_edge |= gap_above(scale, i, j) || gap_below(scale, i, j);
    }
    mark.least = mark.narrowest.found ? mark.narrowest.width : scale->narrowest;
    mark.thin = fine_round(thin);
    mark.balance = llabs(mark.ceiling - mark.floor);
    return mark;
}

/* ---- rank ---- */

typedef struct RankedStart {
    MarkWeight mark;
    Length away; /* from the file's start */
} RankedStart;

static int compare(const void *left, const void *right)
{
    const RankedStart *a = left;
    const RankedStart *b = right;
    if (a->mark.least != b->mark.least)
        return a->mark.least > b->mark.least ? -1 : 1;
    if (a->mark.thin != b->mark.thin)
        return a->mark.thin < b->mark.thin ? -1 : 1;
    if (a->mark.balance != b->mark.balance)
        return a->mark.balance < b->mark.balance ? -1 : 1;
    if (a->away != b->away)
        return a->away < b->away ? -1 : 1;
    return (a->mark.start > b->mark.start) - (a->mark.start < b->mark.start);
}

/* Every mark within half a run of `written`, and `written` itself, best first. */
static RankedStart *rank_marks(Arena *arena, Scale *scale, Length written, int *count)
{
    Length round = scale->wall->round;
    Length run = scale->bands.run;
    Length first = wide_narrow(wide_floor((Wide)written * 2 - run, (Wide)round * 2) + 1);
    Length last = wide_narrow(wide_floor((Wide)written * 2 + run, (Wide)round * 2));
    Length most = COLUMNS_MOST / (scale->columns + 1);
    most = most < MARKS_LEAST ? MARKS_LEAST : most > MARKS_MOST ? MARKS_MOST : most;
    if (last - first >= most) {
        Length middle = wide_narrow(wide_floor(written, round));
        first = middle - most / 2 > first ? middle - most / 2 : first;
        last = first + most - 1 < last ? first + most - 1 : last;
    }
    RankedStart *ranked = arena_array(arena, RankedStart, last - first + 2);
    *count = 0;
    bool on_grid = false;
    for (Length number = first; number <= last; number++) {
        Length start = number * round;
        on_grid |= start == written;
        ranked[(*count)++] = (RankedStart){weigh(scale, start), llabs(start - written)};
    }
    if (!on_grid)
        ranked[(*count)++] = (RankedStart){weigh(scale, written), 0};
    qsort(ranked, (size_t)*count, sizeof *ranked, compare);
    return ranked;
}

/* ---- reasons ---- */

/* The most equal marks there are may leave two slivers, and half a course further two wide ones: of the marks within
 * one step of the most equal, those whose lesser end is widest. */
static void note_balanced(const Scale *scale, RankedStart *ranked, int count)
{
    if (!scale->ceiling || !scale->floor)
        return;
    Length least = LENGTH_MOST;
    for (int i = 0; i < count; i++)
        least = ranked[i].mark.balance < least ? ranked[i].mark.balance : least;
    Length widest = -1;
    for (int pass = 0; pass < 2; pass++)
        for (int i = 0; i < count; i++) {
            MarkWeight *mark = &ranked[i].mark;
            Length lesser = mark->ceiling < mark->floor ? mark->ceiling : mark->floor;
            if (mark->balance > least + scale->wall->round)
                continue;
            if (pass == 0)
                widest = lesser > widest ? lesser : widest;
            else if (lesser == widest)
                mark->reasons |= START_BALANCED;
        }
}

/* The marks with the fewest cutouts; where no mark has any there is nothing to tell. */
static void note_fewest(RankedStart *ranked, int count)
{
    int fewest = ranked[0].mark.cutouts, most = 0;
    for (int i = 0; i < count; i++) {
        fewest = ranked[i].mark.cutouts < fewest ? ranked[i].mark.cutouts : fewest;
        most = ranked[i].mark.cutouts > most ? ranked[i].mark.cutouts : most;
    }
    for (int i = 0; i < count; i++)
        ranked[i].mark.reasons |= ranked[i].mark.cutouts == fewest && most > 0 ? START_CUTOUTS : 0u;
}

static void note_reasons(const Scale *scale, RankedStart *ranked, int count, Length written)
{
    for (int i = 0; i < count; i++) {
        MarkWeight *mark = &ranked[i].mark;
        mark->reasons = (mark->least == ranked[0].mark.least ? START_WIDEST : 0u) |
                        (mark->full_top ? START_FULL_TOP : 0u) | (mark->full_bottom ? START_FULL_BOTTOM : 0u) |
                        (mark->gap_at_edge ? START_REVEAL : 0u) | (mark->start == written ? START_WRITTEN : 0u);
    }
    note_balanced(scale, ranked, count);
    note_fewest(ranked, count);
}

/* One thing that a start may be taken for: a reason, and for a reveal the edge it lies at. */
typedef struct Merit {
    unsigned reason;
    int face, opening;
    bool above;
} Merit;

static bool has_merit(Scale *scale, const MarkWeight *mark, const Merit *merit)
{
    if (merit->reason != START_REVEAL)
        return mark->reasons & merit->reason;
    scale->bands.start = mark->start;
    return mark->gap_at_edge && (merit->above ? gap_above(scale, merit->face, merit->opening)
                                              : gap_below(scale, merit->face, merit->opening));
}

typedef struct Picks {
    bool *picked;
    int total;
} Picks;

static void pick_best(Scale *scale, const RankedStart *ranked, int count, const Merit *merit, Picks *choice)
{
    for (int i = 0; i < count; i++)
        if (has_merit(scale, &ranked[i].mark, merit)) {
            choice->total += !choice->picked[i];
            choice->picked[i] = true;
            return;
        }
}

/* Picks those worth considering: the best for each reason and for each edge of an opening; then, by rank, others with a
 * reason that leave no strip narrower than what is worth hanging. */
static int choose(Arena *arena, Scale *scale, const RankedStart *ranked, int count, int *chosen)
{
    Picks choice = {arena_array(arena, bool, count), 0};
    static const StartReason plain[] = {START_WIDEST,      START_BALANCED, START_FULL_TOP,
                                        START_FULL_BOTTOM, START_CUTOUTS,  START_WRITTEN};
    for (size_t i = 0; i < sizeof plain / sizeof *plain; i++)
        pick_best(scale, ranked, count, &(Merit){.reason = (unsigned)plain[i]}, &choice);
    for (int i = 0; i < scale->wall->faces.count; i++)
        for (int j = 0; j < scale->faces[i]->opening_count * 2 && choice.total < STARTS_MOST; j++)
            pick_best(scale, ranked, count, &(Merit){START_REVEAL, i, j / 2, j % 2 == 0}, &choice);
    for (int i = 0; i < count && choice.total < STARTS_MOST; i++)
        if (ranked[i].mark.reasons != 0 && ranked[i].mark.least >= scale->bands.least && !choice.picked[i]) {
            choice.picked[i] = true;
            choice.total++;
        }
    int total = 0;
    for (int i = 0; i < count; i++)
        if (choice.picked[i])
            chosen[total++] = i;
    return total;
}

/* ---- the result ---- */

static void put_words(Arena *arena, const Scale *scale, Start *start)
{
    static const struct {
        StartReason reason;
        const char *words;
    } plain[] = {{START_WIDEST, "widest least strip"},
                 {START_BALANCED, "balanced"},
                 {START_FULL_TOP, "full at the top"},
                 {START_FULL_BOTTOM, "full at the bottom"}};
    start->why = arena_array(arena, char *, start->opening_count + 6);
    for (size_t i = 0; i < sizeof plain / sizeof *plain; i++)
        if (start->reasons & (unsigned)plain[i].reason)
            start->why[start->why_count++] = arena_text(arena, plain[i].words, strlen(plain[i].words));
    for (int i = 0; i < start->opening_count; i++) {
        const StartOpening *opening = &start->openings[i];
        if (!opening->reveal_above && !opening->reveal_below)
            continue;
        char words[WALL_NAME_MOST + 32];
        snprintf(words, sizeof words, "reveal at %.*s", WALL_NAME_MOST,
                 scale->wall->faces.at[opening->face].openings.at[opening->opening].name);
        start->why[start->why_count++] = arena_text(arena, words, strlen(words));
    }
    if (start->reasons & START_CUTOUTS)
        start->why[start->why_count++] = arena_text(arena, "fewest cutouts", strlen("fewest cutouts"));
    if (start->reasons & START_WRITTEN)
        start->why[start->why_count++] = arena_text(arena, "as written", strlen("as written"));
}

/* The whole of a start whose mark is the one just weighed. */
static Start start_of(Arena *arena, const Scale *scale, const MarkWeight *mark)
{
    Start start = {.start = mark->start,
                   .least = mark->least,
                   .thin = mark->thin,
                   .balance = mark->balance,
                   .ceiling = mark->ceiling,
                   .floor = mark->floor,
                   .narrowest = mark->narrowest,
                   .cutouts = mark->cutouts,
                   .reasons = mark->reasons};
    int most = 0;
    for (int i = 0; i < scale->wall->faces.count; i++)
        most += scale->faces[i]->opening_count;
    start.openings = arena_array(arena, StartOpening, most);
    for (int i = 0; i < scale->wall->faces.count; i++) {
        const WeighFace *face = scale->faces[i];
        for (int j = 0; j < face->opening_count; j++) {
            if (!face->shows_top[j] && !face->shows_bottom[j])
                continue;
            start.openings[start.opening_count++] = (StartOpening){.face = i,
                                                                   .opening = j,
                                                                   .above = scale->weights[i].above[j],
                                                                   .below = scale->weights[i].below[j],
                                                                   .reveal_above = gap_above(scale, i, j),
                                                                   .reveal_below = gap_below(scale, i, j)};
        }
    }
    put_words(arena, scale, &start);
    return start;
}

Starts starts_of_layout(Arena *arena, const Layout *layout)
{
    const Wall *wall = layout->wall;
    Starts starts = {0};
    if (wall->hung_pieces.count > 0 || wall->hung_edges.count > 0)
        return starts;
    Scale scale = scale_new(arena, layout, &wall->planks);
    Arena *ranks = arena_new();
    RankedStart *ranked = rank_marks(ranks, &scale, wall->start, &starts.weighed);
    note_reasons(&scale, ranked, starts.weighed, wall->start);
    int chosen[STARTS_MOST];
    starts.count = choose(ranks, &scale, ranked, starts.weighed, chosen);
    starts.at = arena_array(arena, Start, starts.count);
    for (int i = 0; i < starts.count; i++) {
        const MarkWeight *mark = &ranked[chosen[i]].mark;
        weigh(&scale, mark->start); /* for the strips along the openings */
        starts.at[i] = start_of(arena, &scale, mark);
    }
    arena_free(ranks);
    arena_free(scale.scratch);
    return starts;
}

Start starts_weigh(Arena *arena, const Layout *layout, Length at)
{
    Scale scale = scale_new(arena, layout, &layout->wall->planks);
    MarkWeight mark = weigh(&scale, at);
    Start start = start_of(arena, &scale, &mark);
    arena_free(scale.scratch);
    return start;
}

Start starts_best_for(Arena *arena, const Layout *layout, const Planks *planks)
{
    Scale scale = scale_new(arena, layout, planks);
    Arena *ranks = arena_new();
    int count;
    RankedStart *ranked = rank_marks(ranks, &scale, layout->wall->start, &count);
    note_reasons(&scale, ranked, count, layout->wall->start);
    MarkWeight mark = ranked[0].mark;
    weigh(&scale, mark.start);
    Start start = start_of(arena, &scale, &mark);
    arena_free(ranks);
    arena_free(scale.scratch);
    return start;
}
