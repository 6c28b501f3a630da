/*
 * Where the program keeps what outlives a run and belongs to no wall file: recovery copies, locks, the list of files
 * opened lately. XDG_STATE_HOME/datumrow, or ~/.local/state/datumrow where that is not set (XDG Base Directory
 * Specification 0.8: a path that is not absolute counts as not set).
 */
#ifndef STORE_STATE_H
#define STORE_STATE_H

#include "base/err.h"

#include <limits.h>

/* The path of `name` in `folder` ("" for the top) there; the folders are made. */
bool state_path(const char *folder, const char *name, char out[PATH_MAX], Err *err);

#endif
