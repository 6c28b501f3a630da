/*
 * The bill's groups behind the planks: fastening, finish, what goes behind them, spacers. For bill*.c alone.
 */
#ifndef TRADE_BILL_PARTS_H
#define TRADE_BILL_PARTS_H

#include "trade/bill_line.h"

void bill_put_fastening(Bills *bills);
void bill_put_finish(Bills *bills, Wide area);
void bill_put_behind(Bills *bills);
void bill_put_spacers(Bills *bills);

/* What may be left out. `area`: of the planks' faces. */
void bill_put_more(Bills *bills, Wide area);

#endif
