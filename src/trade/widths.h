/*
 * Other planks on the same wall: since they are ripped on the job, a width or a reveal near the one wished for may end
 * in whole courses or in better strips. Each choice is weighed with the best start of all marks. It knows which boards
 * in stock could give a width; it cuts nothing.
 */
#ifndef TRADE_WIDTHS_H
#define TRADE_WIDTHS_H

#include "layout/starts.h"
#include "trade/spacer.h"

enum { WIDTHS_MOST = 12 };

typedef struct WidthChoice {
    Length change; /* added to every width of the list (widths) or to the reveal (reveals); 0 is the file's own */
    Length width;  /* widest plank of the list then */
    Length reveal;
    bool by_spacer;
    Spacer spacer;  /* where by_spacer: what the reveal is kept by */
    Start best;     /* of all marks */
    bool whole;     /* no strip anywhere: whole courses only */
    int boards;     /* in stock wide enough for the widest plank */
    Length running; /* their lengths together */
} WidthChoice;

typedef struct WidthChoices {
    WidthChoice *at; /* best first: whole courses, then the widest least strip, then the least thin wall, then nearest
                        to the wish */
    int count;       /* at most WIDTHS_MOST; the file's own is among them */
} WidthChoices;

/* Rip widths on the marking grid within half an inch of the file's; a list of widths is changed throughout. None while
 * anything is hung. */
WidthChoices widths_worth(Arena *arena, const Layout *layout);

/* Reveals from half to twice the file's (from nothing to 1/8 in where it has none) that a thing at hand, or two of
 * them, would keep. None while anything is hung. */
WidthChoices reveals_worth(Arena *arena, const Layout *layout);

#endif
