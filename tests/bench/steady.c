/*
 * Steadiness measured: over seeded rooms with three pieces in ten hung, how many pieces one event changes, and by how
 * much the shortfall grows. Targets are printed beside, not judged: a spoiled board changes at most 4 pieces at the
 * median. Argument: rooms (200).
 */
#include "fill/fill.h"
#include "support/hanging.h"
#include "support/random_wall.h"

#include <stdio.h>
#include <stdlib.h>

enum { ROOMS = 200 };

typedef enum Event { SPOILED, FOUND, SHORT, EDGE, EVENT_COUNT } Event;

static const char *const event_words[] = {[SPOILED] = "a board spoiled",
                                          [FOUND] = "a board found",
                                          [SHORT] = "a piece cut 1/2 in too short",
                                          [EDGE] = "an edge 1/16 in high"};

typedef struct Tally {
    int changed[ROOMS];
    int count;
    int pieces;
    int shorter;      /* rooms whose shortfall grew */
    Length shortfall; /* the most that it grew by */
} Tally;

static const Layout *lay_out(Arena *arena, const Wall *wall)
{
    Err err;
    const Layout *layout = layout_wall(arena, wall, &err);
    if (layout == NULL) {
        fprintf(stderr, "%s\n", err.text);
        exit(1);
    }
    return layout;
}

static void find_board(Arena *arena, Wall *wall)
{
    Stock line = wall->stock.at[0];
    line.count = 1;
    line.found_given = true;
    line.found = hung_count(wall);
    *arena_push(arena, &wall->stock) = line;
}

/* The course of the last piece that hangs came out a sixteenth high. */
static void measure_edge(Arena *arena, Wall *wall, const Layout *layout, const Piece *piece)
{
    const Course *course = &layout->faces[piece->face].courses[piece->course];
    *arena_push(arena, &wall->hung_edges) =
        (HungEdge){.face = wall->faces.at[piece->face].name,
                   .course = (int)course->number,
                   .is_top = course->number >= 0,
                   .height = (course->number >= 0 ? course->top : course->bottom) + LENGTH_INCH / 16,
                   .place = hung_next_place(wall)};
}

/* False where the event cannot happen there. */
static bool happen(Arena *arena, Wall *wall, const Layout *layout, const Plan *plan, Event event)
{
    const int hung = wall->hung_pieces.count;
    if (event == SPOILED) {
        const int board = board_to_spoil(plan, hung);
        if (board > 0)
            spoil_board(arena, wall, board);
        return board > 0;
    }
    if (event == FOUND)
        find_board(arena, wall);
    else if (event == SHORT)
        wall->hung_pieces.at[hung - 1].right -= LENGTH_INCH / 2;
    else
        measure_edge(arena, wall, layout, &plan->pieces[hung - 1]);
    return true;
}

static Fill *filled(Fill *before, const Layout *layout)
{
    Fill *fill = fill_begin_after(before, layout);
    while (!fill_step(fill, 1 << 20))
        continue;
    return fill;
}

static void count(Tally *tally, const Plan *plan, const Plan *now)
{
    const Length grown = now->shortfall - plan->shortfall;
    tally->changed[tally->count++] = now->changed_count;
    tally->pieces += plan->piece_count;
    tally->shorter += grown > 0;
    tally->shortfall = grown > tally->shortfall ? grown : tally->shortfall;
}

/* Each event on a wall of its own, hung from the same plan. */
static void measure_room(RandomKind kind, uint64_t seed, Tally *tallies)
{
    Arena *arena = arena_new();
    const Wall *bare = random_wall(arena, seed, kind);
    const Layout *layout = lay_out(arena, bare);
    Fill *fill = filled(NULL, layout);
    const Plan *plan = fill_plan(fill);
    const int hung = plan->piece_count * 3 / 10;
    for (Event event = 0; event < EVENT_COUNT && hung > 0; event++) {
        Wall *wall = wall_copy(arena, bare);
        for (int i = 0; i < hung; i++)
            hang_piece(arena, wall, layout, &plan->pieces[i]);
        if (!happen(arena, wall, layout, plan, event))
            continue;
        Fill *after = filled(fill, lay_out(arena, wall));
        count(&tallies[event], plan, fill_plan(after));
        fill_free(after);
    }
    fill_free(fill);
    arena_free(arena);
}

static int by_size(const void *a, const void *b)
{
    return *(const int *)a - *(const int *)b;
}

static void tell(RandomKind kind, Event event, Tally *tally)
{
    if (tally->count == 0)
        return;
    qsort(tally->changed, (size_t)tally->count, sizeof *tally->changed, by_size);
    printf("# %s, %s, %d rooms of %d pieces: pieces changed median %d, 9 of 10 at most %d, worst %d; shortfall grew in "
           "%d, by %.0f mm at most\n",
           random_kind_word(kind), event_words[event], tally->count, tally->pieces / tally->count,
           tally->changed[tally->count / 2], tally->changed[tally->count * 9 / 10], tally->changed[tally->count - 1],
           tally->shorter, (double)tally->shortfall / LENGTH_MM);
    fflush(stdout);
}

int main(int count, char **arguments)
{
    int rooms = count > 1 ? (int)strtol(arguments[1], NULL, 10) : ROOMS;
    if (rooms < 1 || rooms > ROOMS)
        rooms = ROOMS;
    printf("# three pieces in ten hung; to reach for a spoiled board: median at most 4\n");
    for (RandomKind kind = RANDOM_HOUSE; kind < RANDOM_KIND_COUNT; kind++) {
        Tally tallies[EVENT_COUNT] = {{.count = 0}};
        for (int seed = 0; seed < rooms; seed++)
            measure_room(kind, (uint64_t)seed, tallies);
        for (Event event = 0; event < EVENT_COUNT; event++)
            tell(kind, event, &tallies[event]);
    }
    return 0;
}
