/*
 * What the bill and the mill sheet assume: each figure as the wall file gives it (`bill:`), else the trade's default
 * with its source. Plain numbers are in millionths.
 */
#ifndef TRADE_ASSUME_H
#define TRADE_ASSUME_H

#include "base/wide.h"
#include "wall/wall.h"

#define ASSUME_ONE INT64_C(1000000)

typedef enum Assumed {
    ASSUME_SPARE,     /* percent more than is cut */
    ASSUME_FASTENERS, /* for each plank on each stud */
    ASSUME_STUDS,     /* spacing on faces without studs (length) */
    ASSUME_GLUE,      /* Glue, as a number of ones */
    ASSUME_BEAD,      /* diameter (length) */
    ASSUME_CARTRIDGE, /* volume: fluid ounces, millilitres */
    ASSUME_COATS,
    ASSUME_COVERAGE, /* square feet a gallon, square metres a litre */
    ASSUME_THINNING, /* percent */
    ASSUME_SHEET_WIDTH,
    ASSUME_SHEET_LENGTH,
    ASSUME_NOMINAL, /* thickness for board feet (length) */
    ASSUME_COUNT
} Assumed;

typedef struct Assumption {
    bool is_length;
    int64_t value;      /* nanometres, or millionths */
    bool given;         /* by the file */
    const char *key;    /* "bill.spare"; "" where the file has no key for it */
    const char *source; /* the publication, "common practice", or "the wall file" */
} Assumption;

Assumption assume(const Wall *wall, Assumed which);

/* The value, or the largest (smallest) that 64 bits hold: the sums of absurd walls end there. */
int64_t assume_fit(Wide value);

/* value of `percent` millionths of a percent more, rounded up. */
int64_t assume_more(int64_t value, int64_t percent);

#endif
