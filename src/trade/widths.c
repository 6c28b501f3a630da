#include "trade/widths.h"

#include <stdlib.h>

/*
 *   wish - 1/2 in        wish         wish + 1/2 in
 *   |----|----|----|----|-*--|----|----|----|----|      multiples of the step; the wish itself may lie between
 */
#define NEAR (LENGTH_INCH / 2)

typedef struct WidthList {
    WidthChoice *at;
    int count;
    int room;
} WidthList;

/* The file's planks with every width and the reveal changed. */
static Planks planks_with(Arena *arena, const Planks *planks, Length wider, Length reveal)
{
    Planks changed = *planks;
    changed.widths = (LengthList){0};
    for (int i = 0; i < planks->widths.count; i++)
        *arena_push(arena, &changed.widths) = planks->widths.at[i] + wider;
    changed.reveal = reveal;
    return changed;
}

/* Boards in stock that are at least so wide; one without a width is as wide as the file's widest plank. */
static void count_boards(const Wall *wall, WidthChoice *choice)
{
    for (int i = 0; i < wall->stock.count; i++) {
        const Stock *stock = &wall->stock.at[i];
        if ((stock->width_given ? stock->width : wall_widest(wall)) < choice->width)
            continue;
        choice->boards += stock->count;
        choice->running += stock->length * stock->count;
    }
}

static void weigh(Arena *arena, const Layout *layout, WidthChoice choice, WidthList *candidates)
{
    const Wall *wall = layout->wall;
    Length wider = choice.width - wall_widest(wall);
    Planks planks = planks_with(arena, &wall->planks, wider, choice.reveal);
    choice.best = starts_best_for(arena, layout, &planks);
    choice.whole = !choice.best.narrowest.found;
    count_boards(wall, &choice);
    *arena_push(arena, candidates) = choice;
}

static int compare(const void *left, const void *right)
{
    const WidthChoice *a = left;
    const WidthChoice *b = right;
    if (a->whole != b->whole)
        return a->whole ? -1 : 1;
    if (!a->whole && a->best.least != b->best.least)
        return a->best.least > b->best.least ? -1 : 1;
    if (a->best.thin != b->best.thin)
        return a->best.thin < b->best.thin ? -1 : 1;
    if (llabs(a->change) != llabs(b->change))
        return llabs(a->change) < llabs(b->change) ? -1 : 1;
    if (a->change != b->change)
        return a->change < b->change ? -1 : 1;
    if (a->spacer.count[0] != b->spacer.count[0])
        return a->spacer.count[0] - b->spacer.count[0];
    return a->spacer.thing[0] - b->spacer.thing[0];
}

/* The best, and the file's own in place of the last where it is not among them. */
static WidthChoices pick(WidthList *candidates)
{
    qsort(candidates->at, (size_t)candidates->count, sizeof *candidates->at, compare);
    WidthChoices choices = {candidates->at, candidates->count < WIDTHS_MOST ? candidates->count : WIDTHS_MOST};
    for (int i = choices.count; i < candidates->count; i++)
        if (candidates->at[i].change == 0)
            choices.at[choices.count - 1] = candidates->at[i];
    return choices;
}

static bool anything_hung(const Wall *wall)
{
    return wall->hung_pieces.count > 0 || wall->hung_edges.count > 0;
}

WidthChoices widths_worth(Arena *arena, const Layout *layout)
{
    const Wall *wall = layout->wall;
    if (anything_hung(wall))
        return (WidthChoices){0};
    Length wish = wall_widest(wall);
    Length narrowest = wish;
    for (int i = 0; i < wall->planks.widths.count; i++)
        if (wall->planks.widths.at[i] < narrowest)
            narrowest = wall->planks.widths.at[i];
    Length step = wall->round; /* finer than 1 mm is no choice that anyone makes by eye */
    while (step < LENGTH_MM)
        step *= 2;
    WidthList candidates = {0};
    weigh(arena, layout, (WidthChoice){.width = wish, .reveal = wall->planks.reveal}, &candidates);
    for (Length width = length_round_up(wish - NEAR, step); width <= wish + NEAR; width += step) {
        Length change = width - wish;
        /* the narrowest face of the list keeps at least half of what it was */
        if (change == 0 || (narrowest + change - wall->planks.lap) * 2 < narrowest - wall->planks.lap)
            continue;
        weigh(arena, layout, (WidthChoice){.change = change, .width = width, .reveal = wall->planks.reveal},
              &candidates);
    }
    return pick(&candidates);
}

/* Whether one thing alone is as thick, to the tenth of a millimetre. */
static bool one_will_do(Length thickness)
{
    for (int i = 0; i < spacer_thing_count(); i++)
        if (llabs(spacer_thing(i)->thickness - thickness) < LENGTH_MM / 10)
            return true;
    return false;
}

WidthChoices reveals_worth(Arena *arena, const Layout *layout)
{
    const Wall *wall = layout->wall;
    if (anything_hung(wall))
        return (WidthChoices){0};
    Length wish = wall->planks.reveal;
    Length width = wall_widest(wall);
    WidthList candidates = {0};
    weigh(arena, layout, (WidthChoice){.width = width, .reveal = wish}, &candidates);
    Spacers spacers = spacer_choices(arena, wish / 2, wish > 0 ? wish * 2 : LENGTH_INCH / 8);
    for (int i = 0; i < spacers.count; i++) {
        const Spacer *spacer = &spacers.at[i];
        if (spacer->kinds > 1 || spacer->count[0] > 2 || (spacer->count[0] == 2 && one_will_do(spacer->thickness)))
            continue;
        if (spacer->thickness == wish) {
            candidates.at[0].by_spacer = true;
            candidates.at[0].spacer = *spacer;
            continue;
        }
        weigh(arena, layout,
              (WidthChoice){.change = spacer->thickness - wish,
                            .width = width,
                            .reveal = spacer->thickness,
                            .by_spacer = true,
                            .spacer = *spacer},
              &candidates);
    }
    return pick(&candidates);
}
