/*
 * The system's printer command, run without a shell and in silence: what is said about it is said by who called.
 */
#ifndef SHEET_PRINTER_H
#define SHEET_PRINTER_H

#include "base/err.h"

#include <stddef.h>

/* Hands the file at `path` to lp, at its own size. False, with ERR_SYSTEM, where there is no lp or it refuses. */
bool printer_send(const char *path, const char *title, Err *err);

/* Writes `bytes` to a file of this name in a new folder for passing files, whose path goes to path[size]. */
bool printer_keep(const char *name, const char *bytes, size_t length, char *path, size_t size, Err *err);

/* Takes away what printer_keep made. */
void printer_drop(const char *path);

#endif
