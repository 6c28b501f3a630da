/*
 * The boards of the bill: how many of each kind the plan opens, and how many in all with the spare. Knows the lines of
 * the stock and the plan; refuses to know prices and where boards are bought. For bill*.c alone.
 */
#ifndef TRADE_BILL_BOARDS_H
#define TRADE_BILL_BOARDS_H

#include "trade/bill_parts.h"

/* A line for each kind of board that the plan opens, in the order of the file, and one for all of them with the spare;
 * none where nothing is opened. */
void bill_put_boards(Bills *bills);

#endif
