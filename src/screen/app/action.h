/*
 * What a person can do: each action of actions.h with the places where it applies, its keys, and its words. The menu,
 * the hints in sight, the help and the manual page are made of these. How an action is done is the business of
 * screen/do.c.
 */
#ifndef SCREEN_APP_ACTION_H
#define SCREEN_APP_ACTION_H

#include "screen/term/key.h"

typedef enum ActionId {
    ACTION_NONE,
#define ROW(id, ...) ACTION_##id,
#include "screen/app/actions.h"
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

/* A row of actions.h, where its parts are explained. */
typedef struct Action {
    ActionId id;
    ActionGroup group;
    unsigned places;
    unsigned hints;
    Key keys[ACTION_KEYS]; /* PRESS_NONE where there are fewer */
    ActionId with;         /* ACTION_NONE: alone */
    const char *word;
    const char *menu;
    const char *help;
} Action;

const Action *action_of(ActionId id);

/* The action that `key` means in one of `places`, ACTION_NONE where it means none. */
ActionId action_for(unsigned places, Key key);

const char *action_group_name(ActionGroup group);

/* "Ctrl-S", or of all its keys "Up or k"; "" where it has none. */
void action_key_text(const Action *action, bool ascii, bool all, char *out, size_t size);

#endif
