/*
 * What a person can do, once: each action with the places where it applies, its keys, and its words. The menu, the
 * hints in sight, the help and the manual page are drawn from this table, so that they cannot disagree. It does not
 * know how anything is done.
 */
#ifndef SCREEN_APP_ACTION_H
#define SCREEN_APP_ACTION_H

#include "base/text.h"
#include "screen/term/key.h"

typedef enum ActionId {
    ACTION_NONE,
    ACTION_RAISE,
    ACTION_LOWER,
    ACTION_RAISE_MORE,
    ACTION_LOWER_MORE,
    ACTION_FACE_LEFT,
    ACTION_FACE_RIGHT,
    ACTION_OPENING_UP,
    ACTION_OPENING_DOWN,
    ACTION_OPENING_LEFT,
    ACTION_OPENING_RIGHT,
    ACTION_OPENING_UP_MORE,
    ACTION_OPENING_DOWN_MORE,
    ACTION_OPENING_LEFT_MORE,
    ACTION_OPENING_RIGHT_MORE,
    ACTION_OPENING_EDIT,
    ACTION_OPENING_NEXT,
    ACTION_OPENING_PREVIOUS,
    ACTION_OPENING_ADD,
    ACTION_OPENING_REMOVE,
    ACTION_OPENING_LIST,
    ACTION_SWAP_VIEW,
    ACTION_LOOK_UP,
    ACTION_LOOK_DOWN,
    ACTION_LOOK_LEFT,
    ACTION_LOOK_RIGHT,
    ACTION_LOOK_BACK,
    ACTION_CLOSER,
    ACTION_FARTHER,
    ACTION_WHOLE,
    ACTION_STARTS,
    ACTION_WIDTHS,
    ACTION_SPACERS,
    ACTION_START_FORM,
    ACTION_PLANKS_FORM,
    ACTION_JOINTS_FORM,
    ACTION_SAW_FORM,
    ACTION_FACE_FORM,
    ACTION_STOCK_LIST,
    ACTION_FASTENERS_FORM,
    ACTION_TRIM_FORM,
    ACTION_WALL_FORM,
    ACTION_WOOD_FORM,
    ACTION_TRIM_RUN_LIST,
    ACTION_ROUGH_LIST,
    ACTION_MILL_FORM,
    ACTION_BILL_FORM,
    ACTION_FACE_ADD,
    ACTION_FACE_REMOVE,
    ACTION_NEXT,
    ACTION_PREVIOUS,
    ACTION_CHOOSE,
    ACTION_LINE_ADD,
    ACTION_LINE_REMOVE,
    ACTION_WORD_BEFORE,
    ACTION_WORD_NEXT,
    ACTION_NAME_NEXT,
    ACTION_FORM_DONE,
    ACTION_HANGING,
    ACTION_HUNG,
    ACTION_MEASURE,
    ACTION_BOARD_OUT,
    ACTION_BOARD_IN,
    ACTION_TAKE_DOWN,
    ACTION_PIECE_NEXT,
    ACTION_PIECE_BEFORE,
    ACTION_TALLY,
    ACTION_TALLY_BOARD,
    ACTION_TALLY_MORE,
    ACTION_GLANCE,
    ACTION_CAUTIONS,
    ACTION_FINDINGS,
    ACTION_PRINT,
    ACTION_UNDO,
    ACTION_REDO,
    ACTION_SAVE,
    ACTION_SAVE_AS,
    ACTION_OPEN,
    ACTION_MENU,
    ACTION_HELP,
    ACTION_PLAIN_SIGNS,
    ACTION_REDRAW,
    ACTION_SUSPEND,
    ACTION_BACK,
    ACTION_LEAVE,
    ACTION_COUNT
} ActionId;

/* Where one is; a set of bits. */
enum {
    PLACE_COURSES = 1 << 0, /* the elevation with the reference course in focus */
    PLACE_OPENING = 1 << 1, /* the elevation with an opening in focus */
    PLACE_DRAWN = 1 << 2,   /* besides: the view in true proportion */
    PLACE_FORM = 1 << 3,
    PLACE_LIST = 1 << 4,  /* a list to choose from */
    PLACE_STOCK = 1 << 5, /* besides: its lines can be added and removed */
    PLACE_MENU = 1 << 6,
    PLACE_QUESTION = 1 << 7,
    PLACE_HELP = 1 << 8,
    PLACE_TRIAL = 1 << 9,   /* choices that are tried on the wall as one moves over them */
    PLACE_CHOICE = 1 << 10, /* besides, in a form: a choice of some words is in focus */
    PLACE_HANG = 1 << 11,   /* piece after piece */
    PLACE_TALLY = 1 << 12,  /* at the pile: what is typed is a board */
    PLACE_NAME = 1 << 13,   /* besides, in a form: a name that is typed is in focus */
    PLACE_WALL = PLACE_COURSES | PLACE_OPENING,
    PLACE_ANYWHERE = 0x3fff
};

typedef enum ActionGroup {
    GROUP_MOVE,
    GROUP_LOOK,
    GROUP_OPENINGS,
    GROUP_WRITE,
    GROUP_HANG,
    GROUP_FILE,
    GROUP_LISTS,
    GROUP_PROGRAM,
    GROUP_COUNT
} ActionGroup;

enum { ACTION_KEYS = 3 };

typedef struct Action {
    ActionId id;
    ActionGroup group;
    unsigned places;       /* where its keys count */
    unsigned hints;        /* where it is hinted at, in the order of the table */
    Key keys[ACTION_KEYS]; /* the first is the one shown; PRESS_NONE where there are fewer */
    ActionId with;         /* hinted at together with this one, and that with its own; ACTION_NONE: alone */
    const char *word;      /* in a hint: one or two words */
    const char *menu;      /* in the menu */
    const char *help;      /* in the help and the manual: a sentence without its full stop */
} Action;

const Action *action_of(ActionId id);

/* The action that `key` means in one of `places`, ACTION_NONE where it means none. */
ActionId action_for(unsigned places, Key key);

const char *action_group_name(ActionGroup group);

/* "Ctrl-S", or of all its keys "Up or k"; "" where it has none. */
void action_key_text(const Action *action, bool ascii, bool all, char *out, size_t size);

/* The whole table as the list of keys in datumrow(1), in mdoc. */
void action_write_mdoc(Text *out);

#endif
