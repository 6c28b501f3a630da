/*
 * Walls made by hand for the tests of layout, a few lines each.
 */
#ifndef TESTS_LAYOUT_MADE_H
#define TESTS_LAYOUT_MADE_H

#include "support/test.h"

#include "layout/layout.h"
#include "support/measures.h"

#define IN(n) ((Length)((n)*64) * (LENGTH_INCH / 64)) /* n: whole 64ths of an inch */

typedef struct Made {
    Arena *arena;
    Wall *wall;
} Made;

/* A wall of one plank width without a face. */
Made made_new(Units units, Length plank, Length reveal, Length start);

/* A face with level floor at `lower` and level ceiling at `upper`, sides plumb; add marks to change that. */
Face *made_face(Made *made, const char *name, Length width, Length lower, Length upper);

/* Marks of a limit, from scratch: pairs at, off. */
void made_marks(Made *made, Marks *marks, int count, const Length *pairs);

Opening *made_opening(Made *made, Face *face, const char *name, Length left, Length bottom, Length width,
                      Length height);

const Layout *made_layout(Made *made);

/* The course of that number on the face; fails where there is none. */
const Course *made_course(const Layout *layout, int face, int64_t number);

/* How many findings of the rule there are; the text of the first. */
int made_findings(const Layout *layout, Rule rule, const char **text);

#endif
