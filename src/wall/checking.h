/*
 * What the parts of wall_check share: where a field stands, how a problem is noted, and the ranges that return
 * everywhere. Nothing is printed or allocated for a field that is well, since every nudge checks the whole wall. Not
 * for other storeys; they call wall_check.
 */
#ifndef WALL_CHECKING_H
#define WALL_CHECKING_H

#include "wall/problem.h"
#include "wall/ranges.h"
#include "wall/wall.h"

enum { CHECK_PATH_MOST = 128, CHECK_VALUE_MOST = LENGTH_TEXT_MAX + 8, CHECK_OWNER_MOST = 256 };

typedef struct Checking {
    Arena *arena;
    const Wall *wall;
    Problems problems;
} Checking;

/* A field on the way down from the top of the file: faces[1] in the file, openings[0] in that, width in that. */
typedef struct Where {
    const struct Where *in; /* NULL at the top */
    const char *key;
    int index;        /* in a list, from 0; -1 where it is no item */
    const char *kind; /* what messages call it, with its name or number: "face"; NULL where they do not */
    const char *name;
} Where;

/* A field `key` right below `in` (NULL: at the top of the file), and item `index` of the list `key` there. */
#define WHERE(in, key) (&(const Where){(in), (key), -1, NULL, NULL})
#define WHERE_ITEM(in, key, index) (&(const Where){(in), (key), (index), NULL, NULL})

/* Notes a problem; the rest is a format and what goes into it: what is wrong; what to write. */
void check_note(Checking *checking, const Where *where, const char *format, ...) __attribute__((format(printf, 3, 4)));

/* What a field belongs to, for messages: " of opening \"desk outlet\"", or "". */
const char *check_owner(const Where *where, char out[CHECK_OWNER_MOST]);

/* The exact value with its unit, for messages. */
const char *check_say(const Checking *checking, Length value, char out[CHECK_VALUE_MOST]);

/* A length within 1 km either way; one that is also not below 0; one that is also not 0. `what` names it in a message
 * ("the reveal"), its owner is put behind. False where it was noted as a problem. */
bool check_length(Checking *checking, const Where *where, const char *what, Length value);
bool check_not_below(Checking *checking, const Where *where, const char *what, Length value);
bool check_above(Checking *checking, const Where *where, const char *what, Length value);

/* A length that is also within its range (wall/ranges.h), which the message names. */
bool check_range(Checking *checking, const Where *where, const char *what, RangedFigure figure, Length value);

/* Text on one line of at most WALL_NAME_MOST bytes of UTF-8 without control characters; where `required`, not empty. */
bool check_text(Checking *checking, const Where *where, const char *what, const char *text, bool required);

/* Stretches to avoid on a board of that length, whose line is at `line`: within it, rising, apart. */
void check_stretches(Checking *checking, const Where *line, const Stretches *avoid, Length length);

/* A count of 1 or more, added to `total`; and a total within WALL_BOARDS_MOST. */
void check_count(Checking *checking, const Where *where, const char *what, int count, int64_t *total);
void check_total(Checking *checking, const Where *where, const char *what, int64_t total);

/* Trim runs; rough boards, milling and the bill. */
void check_trim_runs(Checking *checking);
void check_shop(Checking *checking);

/* The faces with their marks, corners, studs and openings. */
void check_faces(Checking *checking);

#endif
