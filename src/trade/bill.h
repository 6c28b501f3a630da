/*
 * The bill of materials: what the wall as planned takes, line by line, each with what it assumes and where that comes
 * from. Every assumption can be changed in the wall file (`bill:`). It knows no prices and no paper.
 */
#ifndef TRADE_BILL_H
#define TRADE_BILL_H

#include "trade/bill_line.h"

/* In the order of the groups. Each line says in its words whether spare is in it. */
BillLines bill_lines(Arena *arena, const Layout *layout, const Plan *plan);

/* How planks are held, a sentence each: what the bill counts fasteners by. */
typedef struct BillHolding {
    const char *at[8];
    int count;
} BillHolding;

BillHolding bill_holding(Arena *arena, const Layout *layout, const Plan *plan);

#endif
