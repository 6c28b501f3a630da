/* A strip of trim as data: where it lies, what it is ripped to, how its ends are cut. */
#ifndef TRADE_TRIM_STRIP_H
#define TRADE_TRIM_STRIP_H

#include "length/length.h"

#include <stdbool.h>

typedef enum StripEnd {
    STRIP_SQUARE,
    STRIP_ACROSS, /* 45 degrees across the width: the corner of a casing */
    STRIP_BEVEL,  /* 45 degrees through the thickness: round an outside corner */
    STRIP_PLUMB,  /* of a sloped strip: cut along a plumb line */
    STRIP_MITER,  /* halves the angle to the strip of another slope that goes on there */
    STRIP_FIT     /* of one that stands: cut to what slopes below or above it */
} StripEnd;

typedef enum StripShape {
    STRIP_STRAIGHT,
    STRIP_TAPER, /* ripped along one straight slanted line, from `least` to `most` */
    STRIP_SCRIBE /* ripped to `most`, one edge scribed to what it meets; `least` is left at the narrowest */
} StripShape;

typedef struct TrimStrip {
    int run;     /* index into wall->trim.runs */
    int face;    /* index */
    int other;   /* the face round the corner, or -1 */
    int opening; /* index on the face, or -1 */
    const char *name;
    Length thickness;
    Length least, most; /* width; to the long point where `bevelled` */
    StripShape shape;
    bool stands;                    /* upright: its ends are a lower and an upper one */
    bool at_left;                   /* of one that stands at a side of the face: the left side */
    bool bevelled;                  /* one long edge at 45 degrees, its front edge the wider */
    StripEnd start, end;            /* left and right, or lower and upper end */
    Length start_shift, end_shift;  /* how far along the strip its inner edge (free; on a strip that stands the one away
                                       from the side) begins and ends beyond the other: the slant of its ends */
    Length long_point, short_point; /* the blank it is cut from; its shorter edge. Equal where both ends are square */
    Length from,
        to; /* along the wall: x of a strip along floor or ceiling, heights of one that stands; at the long points */
    Length edge_from, edge_to; /* along floor or ceiling: height of its free edge at both */
    const char *text;          /* in words: "rip 1 1/2 to 1 11/16 in (taper); left end square, right end ..." */
} TrimStrip;

typedef struct TrimStrips {
    TrimStrip *at;
    int count;
    int room;
} TrimStrips;

#endif
