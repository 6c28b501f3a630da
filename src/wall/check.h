/*
 * What makes a wall impossible, as against merely unwise: values out of range, marks out of order, names used twice,
 * corners that no rule allows. Each problem is told with its field path ("faces[1].openings[0].width"), so that the
 * store can add line and column and a form can show it beside its field. What is only unwise (slivers, openings that
 * overlap) is not found here: layout and trade tell it as a warning.
 */
#ifndef WALL_CHECK_H
#define WALL_CHECK_H

#include "wall/problem.h"
#include "wall/wall.h"

/* Every problem of `wall`, in the order of the file's keys; count 0 where it is a wall that can be laid out. */
Problems wall_check(Arena *arena, const Wall *wall);

#endif
