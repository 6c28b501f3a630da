/*
 * The bill of materials: what the wall as planned takes, line by line, each with what it assumes and where that comes
 * from. Every assumption can be changed in the wall file (`bill:`). It knows no prices and no paper.
 */
#ifndef TRADE_BILL_H
#define TRADE_BILL_H

#include "fill/plan.h"
#include "layout/layout.h"

typedef enum BillGroup {
    BILL_WALL,   /* areas, courses */
    BILL_PLANKS, /* boards, running length, board feet or volume */
    BILL_TRIM,
    BILL_FASTENING, /* fasteners, adhesive */
    BILL_FINISH,
    BILL_BEHIND, /* backing, box extenders */
    BILL_SPACERS,
    BILL_MORE, /* what may be left out: trim nails, paint behind reveals, blades, end sealer */
    BILL_GROUPS
} BillGroup;

typedef struct BillLine {
    BillGroup group;
    const char *what;    /* "boards 52 in long, 2 3/4 in wide" */
    int64_t amount;      /* in millionths of `unit` */
    int decimals;        /* that the amount is worth showing with: 0 for what is counted */
    const char *unit;    /* "sq ft", "boards", "fl oz cartridges" */
    const char *assumes; /* "10 % spare (bill.spare)", "" where nothing is */
    const char *source;  /* a publication, "common practice", "the wall file"; "" where nothing is assumed */
} BillLine;

typedef struct BillLines {
    BillLine *at;
    int count;
    int room;
} BillLines;

/* In the order of the groups. Each line says in its words whether spare is in it. */
BillLines bill_lines(Arena *arena, const Layout *layout, const Plan *plan);

/* How planks are held, a sentence each: what the bill counts fasteners by. */
typedef struct BillHolding {
    const char *at[8];
    int count;
} BillHolding;

BillHolding bill_holding(Arena *arena, const Layout *layout, const Plan *plan);

/* "Planks", "Trim", ... */
const char *bill_group_words(BillGroup group);

/* The amount rounded to its decimals, half away from zero: "37.3". */
const char *bill_amount(Arena *arena, const BillLine *line);

/* ---- the arithmetic, held against published examples ---- */

/* Board feet in millionths: thickness x width x length over 144 cubic inches. */
int64_t bill_board_feet(Length thickness, Length width, Length length);

/* Cubic metres in millionths. */
int64_t bill_cubic_metres(Length thickness, Length width, Length length);

/* Running feet for each square foot, in millionths: 12 / exposed face in inches (WWPA, Table 4). */
int64_t bill_running_factor(Length face);

/* How far a cartridge of `volume` (millionths of a fluid ounce, or of a millilitre) lays a round bead. */
Length bill_bead_length(int64_t volume, bool fluid_ounces, Length diameter);

#endif
