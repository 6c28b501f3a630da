/*
 * Start heights worth considering. Every height that can be marked within one run of widths is weighed exactly, over
 * all faces together: a height between two marks is no use, since rounded to a mark an edge that just missed a reveal
 * becomes a sliver. Best first: widest least strip; then least length of wall along which a strip is below
 * `planks.least`; then balance of ceiling and floor; then nearest to the file's start. A pure function like layout. It
 * knows nothing of boards.
 *
 * Balance is the half-unit rule of the trade (NAVEDTRA 14044, p. 7-23; ANSI A108.02 sec. 4.3): end pieces as wide and
 * as equal as can be.
 */
#ifndef LAYOUT_STARTS_H
#define LAYOUT_STARTS_H

#include "layout/layout.h"

enum { STARTS_MOST = 24 };

/* Why one would take it; a start has at least one reason, the first of all marks has START_WIDEST. */
typedef enum StartReason {
    START_WIDEST = 1,   /* "widest least strip": no mark has a wider one */
    START_BALANCED = 2, /* "balanced": the narrowest strips at ceiling and floor are as equal as any mark makes them */
    START_FULL_TOP =
        4, /* "full at the top": a whole course under every ceiling, cut by no more than the ceiling is out of level */
    START_FULL_BOTTOM = 8, /* "full at the bottom": likewise over every floor */
    START_REVEAL = 16,     /* "reveal at NAME": an edge of a grown opening lies in the gap between two courses */
    START_CUTOUTS = 32,    /* "fewest cutouts": no mark has fewer; not said where no mark has any */
    START_WRITTEN = 64     /* "as written": the file's own */
} StartReason;

/* The strips along one opening's two level edges; -1 where there is none, because a whole course or a reveal lies there
 * or nothing is hung. */
typedef struct StartOpening {
    int face, opening;
    Length above, below;
    bool reveal_above, reveal_below; /* that edge lies in the gap between two courses, ends included */
} StartOpening;

typedef struct Start {
    Length start;
    Length least;     /* narrowest strip of all; the narrowest face of the list where there is no strip */
    Length thin;      /* length of wall along which a strip is below planks.least */
    Length balance;   /* difference of `ceiling` and `floor` */
    Length ceiling;   /* narrowest strip cut by a ceiling alone; the narrowest face where there is none */
    Length floor;     /* likewise by a floor */
    Strip narrowest;  /* where `least` is */
    int cutouts;      /* pairs of a course on a face and an opening that takes some of it but not all */
    unsigned reasons; /* StartReason, or-ed */
    char **why;       /* the words of the plan, in the order of StartReason; each opening named once */
    int why_count;
    StartOpening *openings; /* of every face, those that cut something, in the order of the file */
    int opening_count;
} Start;

typedef struct Starts {
    Start *at; /* best first, at most STARTS_MOST; none while anything is hung */
    int count;
    int weighed; /* marks weighed */
} Starts;

/* Weighs every mark for `layout->wall`. */
Starts starts_of_layout(Arena *arena, const Layout *layout);

/* One height weighed, on the grid or not; its reasons are not worked out. */
Start starts_weigh(Arena *arena, const Layout *layout, Length start);

/* The best start of all marks for other planks on the same wall: what a change of width or reveal would come to. */
Start starts_best_for(Arena *arena, const Layout *layout, const Planks *planks);

#endif
