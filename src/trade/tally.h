/*
 * Boards counted at the pile: how much is there, how much the wall needs, what share of it that covers. Quick enough
 * for every keypress: it counts lengths and lays no board on the wall; what the rules leave bare is the plan's to tell.
 */
#ifndef TRADE_TALLY_H
#define TRADE_TALLY_H

#include "layout/layout.h"

/* Boards of one tone, or of none. */
typedef struct TallyTone {
    const char *tone;
    int boards;
    Length running;
} TallyTone;

typedef struct Tally {
    int boards;
    Length running; /* their lengths together */
    Length usable;  /* less squared ends and avoided stretches; stretches too short for a piece do not count */
    Length shortest, longest; /* board; 0 where there is none */
    TallyTone *tones;         /* in the order in which they are first met */
    int tone_count;
    Length needed;   /* segments of all courses */
    Length hung;     /* of those, already on the wall */
    Length too_wide; /* of those needed, in courses for which no board is wide enough */
    Length missing;  /* needed - usable, a spare asked for (bill.spare) counted; 0 where there is enough */
    int share;       /* what the usable length covers of what is needed, hundredths of a percent, at most 10000 */
    int more_boards; /* like the average of those counted, that would make up what is missing; 0 where none is counted
                      */
    const char *text;
} Tally;

/* What there is between two places of a board that pieces could be cut from: the stretches between those to be avoided,
 * those too short for a piece not counted. */
Length tally_usable(const Wall *wall, Length from, Length to, const Stretches *avoid);

Tally tally_of(Arena *arena, const Layout *layout);

#endif
