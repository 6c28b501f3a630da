/*
 * One thing that the user must know about their wall: a rule that could not be kept (fault), a way to be hurt (hazard)
 * or something to look at (caution). Layout, fill and trade each add their own; the list is sorted once into the order
 * of the plan: by rule, then face, course, place. Findings are data in a result, never errors. The texts are whole
 * sentences in plain words with lengths already printed.
 */
#ifndef WALL_FINDING_H
#define WALL_FINDING_H

#include "base/arena.h"
#include "length/length.h"

/* In the order in which the plan lists them: faults, then hazards, then cautions, of which those from RULE_ANEW on
 * stand by their words in byte order. A new rule needs a row in finding.c's table. */
typedef enum Rule {
    RULE_STAGGER,
    RULE_SHORTEST,
    RULE_STUD,
    RULE_STOCK,
    RULE_CROSSING,
    RULE_HUNG,
    RULE_CORNER,
    RULE_MISSING, /* strips of trim that the trim stock does not give */
    RULE_FIRE,    /* wood near a fireplace, a stove or a pipe */
    RULE_BOX,     /* a box behind the planks' face */
    RULE_WIRE,    /* fasteners that may reach a wire or a pipe */
    RULE_CARE,    /* what the trade warns of on any such job: old paint, dust, narrow rips, rags, ... */
    RULE_SLIVER,
    RULE_STUB,    /* a piece too short to hold at the saw */
    RULE_SHALLOW, /* a notch nowhere deep enough to cut */
    RULE_KERF,    /* no kerf given while boards are cut in two */
    RULE_PLATE,
    RULE_NAIL,
    RULE_SEASON,
    RULE_ANCHOR,    /* a piece, or a face, with no stud known behind it to nail into */
    RULE_RANGE,     /* a figure that may be a slip of the hand */
    RULE_BOUND,     /* the lower limit that was worked out failed its own check: the plan does without it */
    RULE_ANEW,      /* pieces changed after the last event that changed any */
    RULE_CLOSER,    /* what is to be kept over on closing pieces, which no board gave */
    RULE_EDGE,      /* an edge measured after hanging that is far from where the planks end */
    RULE_FLUSH,     /* planks that end before or behind what is around an opening */
    RULE_LEAVE,     /* a course is left away because nowhere above planks.leave */
    RULE_PIN,       /* a pinned joint that is not made, or stands in a bar */
    RULE_REFERENCE, /* the reference course is nowhere on the wall */
    RULE_SHOW,      /* what is worth seeing on a board, and where on the wall it comes to be */
    RULE_TRIM,      /* a strip of trim that does not fit, or does not hide what it should */
    RULE_COUNT
} Rule;

/* A rule broken; someone may be hurt; worth a look. */
typedef enum Grade { GRADE_FAULT, GRADE_HAZARD, GRADE_CAUTION } Grade;

/* What does not apply: face -1, has_course false, has_at false, piece 0, board 0, opening -1. */
typedef struct Finding {
    Rule rule;
    int face; /* index into wall->faces */
    bool has_course;
    int64_t course;
    bool has_at;
    Length at;   /* x of a joint or of a stretch's left end */
    int piece;   /* number, from 1 */
    int board;   /* number, from 1 */
    int opening; /* index into the face's openings */
    const char *text;
    const char *lead; /* where several of its like make one list: what holds for all of them; NULL: nothing does */
    const char *item; /* and what this one adds to it: "piece 17 (course 5)"; NULL as `lead` is */
} Finding;

typedef struct Findings {
    Finding *at;
    int count;
    int room;
} Findings;

/* A finding of `rule` with nothing else set. */
Finding finding_of(Rule rule);

const char *rule_word(Rule rule); /* the word in the plan: "stagger", "sliver", ... */
Grade rule_grade(Rule rule);
const char *grade_word(Grade grade); /* "fault", "hazard", "caution" */

/* Sorts into the plan's order: rule, then what is of no face, faces, courses from the bottom, at, opening, board,
 * piece, then as added. */
void findings_sort(Findings *findings);

/* How many of sorted or unsorted findings are of the grade. */
int findings_of(const Findings *findings, Grade grade);

/* Sorted findings in the order in which people read them, in `arena`: hazards first, then faults, then cautions; of one
 * rule and face those that share a lead stand together. */
Findings findings_read(Arena *arena, const Findings *findings);

#endif
