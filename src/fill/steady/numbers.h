/* The numbers that pieces bear after an event: what did not change keeps its own, since it may be cut and marked. */
#ifndef FILL_STEADY_NUMBERS_H
#define FILL_STEADY_NUMBERS_H

#include "fill/steady/same.h"

/* Numbers in use. */
typedef struct Numbers {
    int highest;  /* ever given */
    int *changed; /* given by the last event, rising */
    int changed_count;
} Numbers;

/* Numbers the plan made after the event: pieces that did not change keep their numbers; the others of a course take,
 * from left to right, those that became free there, then the next ones after the highest ever given. Free numbers are
 * not used again. `changed` is in `arena`. */
void numbers_keep(Arena *arena, const Event *event, Plan *plan, Numbers *numbers);

Numbers numbers_copy(Arena *arena, const Numbers *numbers);

/* `plan: anew`: what hangs or is cut keeps its number, all else is numbered afresh, past them. */
void numbers_anew(const Event *event, Plan *plan, Numbers *numbers);

#endif
