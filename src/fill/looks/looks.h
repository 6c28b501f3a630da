/*
 * The measure of looks, the last thing that "What is best" of datumrow(5) asks: blemishes that catch the eye, counted
 * over a whole wall or around a few planks. Habits of the trade are common practice where no source is named:
 *
 * - Neighbours of one tone: pieces end to end, or over one another, whose boards have the same tone. Boards that are
 *   alike read as one patch. Beside it what chance would give: were the pieces hung as they came, each two of them
 *   would be as likely to be neighbours as any other two.
 * - A joint over a joint ("stacked"): nearer than LOOKS_NEAR to a joint two courses further, which with the course
 *   between makes an H, whatever the stagger; or to one in the next course, where there is no stagger to forbid it.
 * - A staircase: three joints in three courses that follow on each other, which go the same way by about the same step:
 *   both steps LOOKS_NEAR or more, no more than LOOKS_STEP, and nearer to each other than LOOKS_NEAR. A stair of four
 *   joints counts two, and one between scraps shorter than LOOKS_NEAR none. Longer steps do not read as one; LOOKS_STEP
 *   is the wider of the two usual stud spacings, so that joints that go from stud to stud are found.
 * - Two short pieces end to end: both shorter than looks_short, LOOKS_SHORT (they do not reach from stud to stud) or
 *   half as long again as `shortest`, whichever is more: a cluster of ends.
 * - A joint nearer than FACADE_SIDE to the side of an opening that cuts into its course: two lines that all but meet;
 *   or nearer than FACADE_CORNER to a corner of any opening.
 * - A piece that the studs entered hold badly (layout/hold.h): it may turn or move, and then its joints open.
 *
 * One number orders them, looks_weight: a pair of neighbours of one tone counts one, each of the others two, for there
 * are several times as many neighbours as joints; a piece badly held eight, for what moves is worse than what shows. It
 * knows nothing of boards and rules.
 */
#ifndef FILL_LOOKS_LOOKS_H
#define FILL_LOOKS_LOOKS_H

#include "fill/looks/facade.h"

#define LOOKS_NEAR (2 * LENGTH_INCH)
#define LOOKS_STEP (24 * LENGTH_INCH)
#define LOOKS_SHORT (16 * LENGTH_INCH)

enum { LOOKS_WEIGHT_TONE = 1, LOOKS_WEIGHT_JOINT = 2, LOOKS_WEIGHT_LOOSE = 8 };

/* Pieces shorter than this are short. */
Length looks_short(const Wall *wall);

/* Counts the whole wall. */
Looks looks_measure(const Facade *rows, Length short_below);

/* Blemishes in one number; less looks better. */
int64_t looks_weight(const Looks *looks);

/* The weight of the blemishes that depend on planks first .. first+count-1 of the row and on the joints at their ends,
 * of which the outermost two are taken to stay where they are; `work` grows by the planks looked at. */
int64_t looks_around(const Facade *rows, Length short_below, int row, int first, int count, int64_t *work);

/* Neighbours of one plank that have `tone`, which is not 0. */
int looks_like(const Facade *rows, int row, int plank, int tone, int64_t *work);

#endif
