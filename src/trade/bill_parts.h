/*
 * The bill's groups behind the planks: fastening, finish, what goes behind them, spacers; and how lines are put
 * together. For bill*.c alone.
 */
#ifndef TRADE_BILL_PARTS_H
#define TRADE_BILL_PARTS_H

#include "trade/assume.h"
#include "trade/bill.h"

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

/* The word for one or for several of what is counted in millionths. */
const char *bill_many(int64_t count, const char *one, const char *many);

/* "12.5": as many decimals as it takes. */
const char *bill_number(Arena *arena, int64_t millionths);

/* Feet or metres; square feet or square metres: in millionths. */
int64_t bill_running(const Bills *bills, Length length);
int64_t bill_area(const Bills *bills, Wide area);

void bill_put_fastening(Bills *bills);
void bill_put_finish(Bills *bills, Wide area);
void bill_put_behind(Bills *bills);
void bill_put_spacers(Bills *bills);

/* What may be left out. `area`: of the planks' faces. */
void bill_put_more(Bills *bills, Wide area);

#endif
