/*
 * The wall as one sees it: row over row the planks that hang or shall hang, with the tone of each and the joints
 * between them. Made from a plan, read by the measure of looks, changed by the search for better looks. It knows
 * nothing of boards beyond the tone, nor of rules.
 */
#ifndef FILL_LOOKS_FACADE_H
#define FILL_LOOKS_FACADE_H

#include "fill/demand.h"
#include "fill/plan.h"
#include "layout/layout.h"

/* A joint nearer than this to the side of an opening that cuts into its course all but meets it; and a corner of any
 * opening draws the eye from further off (common practice). */
#define FACADE_SIDE LENGTH_INCH
#define FACADE_CORNER (2 * LENGTH_INCH)

typedef struct FacadePlank {
    Length left, right;
    int piece;   /* index into the plan's pieces that it was made from */
    int run;     /* index into the demand's; -1: it hangs or is held on to */
    int tone;    /* of its board, by number; 0: none */
    bool joined; /* the plank before it meets it end to end: a joint stands at `left` */
    bool starts; /* `left` is no end of its segment: a joint, or one to be */
    bool ends;   /* `right` is no end of its segment and no plank goes on there: a joint to be */
} FacadePlank;

/* From `left` to `right`, ends included. */
typedef struct FacadeZone {
    Length left, right;
} FacadeZone;

typedef struct FacadeZones {
    FacadeZone *at;
    int count, room;
} FacadeZones;

/* The planks of one row of the demand, left to right. */
typedef struct FacadeRow {
    FacadePlank *at;
    int count, room;
    int below, above;        /* rows of the courses beside it; -1 where there is none */
    FacadeZones close;       /* where a joint is too near to an opening's side or corner; rising, apart */
    const LengthList *studs; /* centers that hold its planks; NULL where none are entered */
} FacadeRow;

typedef struct Facade {
    FacadeRow *at; /* one for each of the demand's */
    int count;
    int tone_count; /* different tones of the boards in stock */
    int *tones;     /* of each board, number - 1; 0: none */
    Arena *arena;
} Facade;

/* The planks of a plan's pieces, in `arena`. */
Facade *facade_new(Arena *arena, const Demand *demand, const Plan *plan);

/* Whether a joint at x is too near to an opening. */
bool facade_is_close(const FacadeRow *row, Length x);

/* Whether the plank may turn or move on the studs that are entered. */
bool facade_is_loose(const FacadeRow *row, int plank);

/* The first plank of the row that ends right of x; the row's count where there is none. */
int facade_first_right_of(const FacadeRow *row, Length x);

/* Puts `count` planks in the place of the `old` that begin at `first`. */
void facade_put(Facade *rows, int row, int first, int old, const FacadePlank *put, int count);

#endif
