/*
 * One field of a form: what was typed, and what it comes to. It reads the tape's notation, echoes the reading in both
 * systems while one types, keeps a bad entry as it stands and says beside it what would be good. Numbers
 * that are no lengths are read as the wall file reads them. It knows nothing of the wall.
 */
#ifndef SCREEN_FORMS_FIELD_H
#define SCREEN_FORMS_FIELD_H

#include "base/arena.h"
#include "length/length.h"
#include "screen/term/grid.h"
#include "screen/term/key.h"
#include "wall/wall.h"

typedef enum FieldKind {
    FIELD_LENGTH,
    FIELD_LENGTHS,   /* several, with commas between */
    FIELD_STRETCHES, /* "31 to 34 1/2, 50 to 52" */
    FIELD_COUNT,     /* whole number from 0 */
    FIELD_NUMBER,    /* to three digits behind the point, held in thousandths */
    FIELD_PERCENT,
    FIELD_TEMPERATURE, /* "68 F", "20 C" */
    FIELD_TEXT,
    FIELD_NAME,  /* typed, one of some names; those nearest to what is typed are told */
    FIELD_CHOICE /* one of some words */
} FieldKind;

enum { FIELD_BYTES = 4000, FIELD_SAYS = 240 };

typedef struct Field {
    FieldKind kind;
    const char *label;
    const char *path;           /* how wall_check names it, from the thing that the form is about: "margin.floor" */
    const char *empty;          /* said beside it while it is empty: what that means */
    bool needed;                /* may not be empty */
    const char *const *choices; /* of a choice its words, of a name the names */
    const char *const *notes;   /* what is said beside each of them; NULL: nothing */
    int choice_count;
    const char *usual[2]; /* by Units: what is filled in unless something else was typed; NULL: nothing */
    int group;            /* of lines that grow, -1: none; see form.h */
    int line, column;

    char text[FIELD_BYTES]; /* as typed; of a choice the word */
    size_t cursor;          /* byte index into text */
    bool cut;               /* it was to hold more than there is room for: bad until it is emptied */
    bool bad;
    char says[FIELD_SAYS]; /* the reading, or what would be good */
} Field;

/* Sets what is in it and judges it. */
void field_set(Field *field, const char *text, Units units);
void field_set_length(Field *field, Length value, Units units);
void field_set_lengths(Field *field, const LengthList *lengths, Units units); /* what does not fit is left out */
void field_set_stretches(Field *field, const Stretches *stretches, Units units);
void field_set_count(Field *field, int count);
void field_set_thousandths(Field *field, int64_t thousandths);
void field_set_temperature(Field *field, const Air *air);
void field_set_choice(Field *field, int choice);

/* Judges what is typed: `bad` and `says`. */
void field_judge(Field *field, Units units);

/* Takes an editing key: characters, Backspace, Delete, Left, Right, Home, End, and Left, Right, Space or a first letter
 * in a choice. False where it is none of them. */
bool field_key(Field *field, Key key, Units units);

/* Whether the key is the first letter of a word of the choice, or goes through its words. */
bool field_chooses(const Field *field, Key key);

/* Puts pasted text in, its line ends and controls left out; false where it did not fit whole. */
bool field_paste(Field *field, const char *text, Units units);

/* Puts the known name in that is nearest to what is typed; where that is one of them, the next in their order. */
void field_next_name(Field *field, Units units);

/* What a judged good field comes to. Empty: 0, no lengths, no stretches. */
bool field_empty(const Field *field);
Length field_length(const Field *field, Units units);
int field_count(const Field *field);
int64_t field_thousandths(const Field *field);
Air field_temperature(const Field *field); /* its humidity is 0 */
int field_choice(const Field *field);
int field_name(const Field *field); /* index of the name, -1 where it is empty or none of them */
LengthList field_lengths(const Field *field, Arena *arena, Units units);
Stretches field_stretches(const Field *field, Arena *arena, Units units);

/* Draws what is typed into `cells` cells; with the focus the cursor is put there. */
void field_draw(const Field *field, Grid *grid, int x, int y, int cells, bool focus);

#endif
