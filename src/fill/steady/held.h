/*
 * Which pieces of the plan in force can stay where they are after an event, and which of them are let go of all the
 * same so that the wall can be covered again. What stays is written into the wall as records of planned pieces, so that
 * a solve works around it as around what hangs.
 */
#ifndef FILL_STEADY_HELD_H
#define FILL_STEADY_HELD_H

#include "fill/steady/same.h"

#include <limits.h>

/* What is let go of beyond what cannot stay: courses in trouble and those up to `distance` courses from one. */
typedef struct LetGo {
    bool **trouble; /* by face and course of the layout after the event */
    int distance;   /* LET_NOTHING: none; LET_ALL: everything but what hangs */
} LetGo;

enum { LET_NOTHING = -1, LET_ALL = INT_MAX };

LetGo let_go_nothing(Arena *arena, const Event *event);

/* The next wider one: none, those in trouble, those beside them, three times as far each time; at last all. */
void let_go_more(const Event *event, LetGo *let_go);

/* Adds to what is in trouble: where `mended`, a plan made after the event, leaves wall bare or breaks a rule, and with
 * `changed` where it has other pieces than the plan before. */
void let_go_trouble(Arena *arena, const Event *event, const Plan *mended, bool changed, LetGo *let_go);

/* Whether a planned piece lies on a board that gives no more pieces after `records` records, or on wood that one of the
 * wall's first `losses` losses took. */
bool held_lost(const Wall *wall, int losses, int records, const Piece *piece);

/* Adds records of the pieces that are held on to, to `wall`, a copy of the event's; returns how many. */
int held_add(Arena *arena, const Event *event, const LetGo *let_go, Wall *wall);

#endif
