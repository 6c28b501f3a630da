/*
 * Rough boards to planks and trim strips: how each line of the pile is cut off, cleaned, ripped and planed, what that
 * gives, and whether it is enough. Which rip width makes the most of the pile. It knows nothing of single pieces: what
 * a wall needs is told by the running length of its courses.
 *
 *      |<-edge->|<--- w --->|k|<--- w --->|k|<- off-rip ->|     across a rough board
 *
 * Where the off-rip allows it, planks are ripped full, let rest and finished to width. Both edges of every plank are
 * sawn: n planks take n w + (n-1) kerf and one `edge` at each side. The off-rip keeps its
 * rough edge.
 */
#ifndef TRADE_MILL_H
#define TRADE_MILL_H

#include "layout/layout.h"

/* Planks or strips of one width out of one board. */
typedef struct MillCut {
    Length width; /* the fence is set to this */
    int count;
} MillCut;

/* One line of rough boards, each milled alike. */
typedef struct MillLine {
    int rough; /* index into wall->rough */
    bool too_thin, too_narrow, too_short;
    MillCut *cuts; /* planks of one board, widest first; none where it is too thin, narrow or short */
    int cut_count;
    Length full;        /* each plank is ripped by so much wider, let rest and finished to width; 0: no room for it */
    int strips;         /* trim strips of `mill.keep` out of the off-rip of one board */
    Length off_rip;     /* what is left across one board when planks are off, its rough edge on it */
    Length length;      /* of each plank, ends cut off */
    Length usable;      /* of that, avoided stretches and what is too short for a piece not counted */
    Length plane;       /* to be planed off, both sides together */
    const char **steps; /* what to do with each board of the line, in order */
    int step_count;
} MillLine;

/* Running lengths of one width of the list. */
typedef struct MillNeed {
    Length width;
    Length needed;  /* courses of that width on the wall */
    Length spare;   /* asked for beyond that (bill.spare) */
    Length at_hand; /* stock already milled, avoided stretches and squared ends not counted */
    Length milled;  /* out of the rough boards */
    Length over;    /* at_hand + milled - needed - spare: below 0 it is short */
    int64_t givers; /* rough boards of the pile that give this width */
    int64_t boards; /* short (below 0): so many more like the average of those; else how many of them, whichever they
                       are, need not be milled */
} MillNeed;

typedef struct MillSheet {
    MillLine *lines; /* one for each line of wall->rough */
    int line_count;
    MillNeed *needs; /* one for each different width, widest first */
    int need_count;
    int64_t strips;      /* trim strips of all off-rips */
    Length strip_length; /* their lengths together */
} MillSheet;

/* count 0 lines where the wall has no rough boards. */
MillSheet mill_sheet(Arena *arena, const Layout *layout);

enum { MILL_WIDTHS_MOST = 12 };

/* What one rip width would make of the pile. */
typedef struct MillWidth {
    Length width;
    int64_t planks;
    Length running; /* avoided stretches not counted */
    int used;       /* share of the pile's face that becomes planks, hundredths of a percent */
} MillWidth;

typedef struct MillWidths {
    MillWidth *at; /* best share first; of equal ones the nearest to the file's, then the narrower. The file's widest is
                      among them where some board gives it; none that no board gives */
    int count;
} MillWidths;

/* Every rip width that some board of the pile could give, on the marking grid: for each number of planks across each
 * board the widest; between two of those no width uses more. Down to 2 in, or half the file's widest where that
 * is less. */
MillWidths mill_widths(Arena *arena, const Wall *wall);

#endif
