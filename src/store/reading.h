/*
 * From the tree of a file to a wall, by the table of keys. What store_parse and the writer share; not for other
 * storeys.
 */
#ifndef STORE_READING_H
#define STORE_READING_H

#include "store/keys.h"
#include "store/tree.h"

/* The wall that `root` tells, in `arena`, with every slip noted in `report`. Faces, openings and lines of stock get
 * their ids in the order of the file. Bare lengths are read in `*units` where that is given, else in the file's own.
 * What could not be read is left at its default; the nodes of it, and those around it, are marked wrong. */
Wall *reading_wall(Arena *arena, Report *report, TreeNode *root, const Units *units);

/* Of which kind a record of `hung` is: HUNG_PIECE, HUNG_LOSS or HUNG_EDGE. What is no mapping counts as a piece. */
int reading_hung_kind(const TreeNode *item);

#endif
