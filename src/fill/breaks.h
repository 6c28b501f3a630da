/*
 * Rules that a plan breaks, found from its pieces alone: pairs of joints nearer than `stagger`, pieces shorter than
 * `shortest`, joints off a stud. Hung pieces count as no break. What pins alone break is told, and weighs nothing: no
 * plan can do without it. It knows nothing of boards.
 */
#ifndef FILL_BREAKS_H
#define FILL_BREAKS_H

#include "fill/plan.h"
#include "layout/layout.h"

typedef struct Break {
    Rule rule;    /* RULE_STAGGER, RULE_SHORTEST or RULE_STUD */
    int face;     /* index */
    int course;   /* index; of a pair of joints the upper course */
    Length at;    /* x of the joint (of a pair the upper one's), or the piece's left end */
    Length other; /* x of the lower joint, or the piece's length */
    int piece;    /* number of the piece that ends or begins at the joint */
    bool pinned;  /* by pins alone, or by them and what hangs */
} Break;

typedef struct Breaks {
    Break *at;
    int count;
    int room;
    int weighed; /* of them, those that are not pinned */
} Breaks;

Breaks breaks_find(Arena *arena, const Layout *layout, const Plan *plan);

#endif
