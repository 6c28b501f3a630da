/*
 * A wall file made into a sheet or a plan, and that brought to where it is wanted: standard output, a file, the
 * printer.
 */
#ifndef COMMAND_PRODUCE_H
#define COMMAND_PRODUCE_H

#include "base/text.h"
#include "command/call.h"

/* Carries out a call whose command makes something of a wall. The exit status: 0 done; 1 done, and the wall has faults;
 * 2, 3 with the reason on standard error. */
int produce(const Call *call);

/* Brings `text` to standard output, and not only into its buffer. */
bool produce_on_standard_output(const Text *text, Err *err);

/* Tells of an error on standard error; the exit status that belongs to it. */
int produce_tell(const Err *err);

#endif
