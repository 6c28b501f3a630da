/*
 * One line of the bill of materials, how lines are put together, and the arithmetic of boards, areas and beads. It
 * knows nothing of what a wall takes.
 */
#ifndef TRADE_BILL_LINE_H
#define TRADE_BILL_LINE_H

#include "fill/plan.h"
#include "layout/layout.h"
#include "trade/assume.h"

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

/* ---- a bill in the making ---- */

typedef struct Bills {
    Arena *arena;
    const Wall *wall;
    const Layout *layout;
    const Plan *plan;
    const char *square, *running; /* units of areas and running lengths */
    BillLines lines;
} Bills;

/* A new line; the pointer lives until the next. "board|s" is a unit that counts: one board, two boards. */
BillLine *bill_put(Bills *bills, BillGroup group, int64_t amount, int decimals, const char *unit, const char *what);

/* Adds "words (key)" to what the line assumes, and the source where it has none yet. */
void bill_assumes(Bills *bills, BillLine *line, Assumed which, const char *words);
void bill_spare(Bills *bills, BillLine *line);

/* "running length, with spare"; without these words where none is asked for. */
const char *bill_with_spare(const Bills *bills, const char *what);

/* "12.5": as many decimals as it takes. */
const char *bill_number(Arena *arena, int64_t millionths);

/* Feet or metres; square feet or square metres: in millionths. */
int64_t bill_running(const Bills *bills, Length length);
int64_t bill_area(const Bills *bills, Wide area);

#endif
