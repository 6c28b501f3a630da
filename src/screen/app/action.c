#include "screen/app/action.h"

#include "base/panic.h"

#include <stdio.h>
#include <string.h>

#define SHIFT(key) (PRESS_SHIFT | (key))
#define CTRL(letter) (PRESS_CTRL | (letter))
#define F(number) (PRESS_F1 + (number)-1)

enum {
    COURSES = PLACE_COURSES,
    OPENING = PLACE_OPENING,
    WALL = PLACE_WALL,
    DRAWN = PLACE_DRAWN,
    LISTS = PLACE_LIST,
    STOCK = PLACE_STOCK,
    FORM = PLACE_FORM,
    MENU = PLACE_MENU,
    ASKED = PLACE_QUESTION,
    WORDS = PLACE_CHOICE,
    NAMES = PLACE_NAME,
    HELPED = PLACE_HELP,
    TRIAL = PLACE_TRIAL,
    HANG = PLACE_HANG,
    TALLY = PLACE_TALLY,
    ANYWHERE = PLACE_ANYWHERE
};

#define KEYS(...) __VA_ARGS__

static const Action actions[ACTION_COUNT] = {
#define ROW(id, call, group, places, hints, keys, with, word, menu, help) \
    [ACTION_##id] = {ACTION_##id, group, places, hints, {keys}, ACTION_##with, word, menu, help},
#include "screen/app/actions.h"
};

const Action *action_of(ActionId id)
{
    BUG_UNLESS(id > ACTION_NONE && id < ACTION_COUNT);
    return &actions[id];
}

ActionId action_for(unsigned places, Key key)
{
    if (key == PRESS_NONE)
        return ACTION_NONE;
    for (int i = 1; i < ACTION_COUNT; i++)
        for (int k = 0; k < ACTION_KEYS; k++)
            if (actions[i].keys[k] == key && (actions[i].places & places) != 0)
                return actions[i].id;
    return ACTION_NONE;
}

const char *action_group_name(ActionGroup group)
{
    static const char *const names[GROUP_COUNT] = {
        [GROUP_MOVE] = "Courses and faces", [GROUP_OPENINGS] = "Openings",
        [GROUP_LOOK] = "Looking round",     [GROUP_WRITE] = "What was measured and chosen",
        [GROUP_HANG] = "Hanging",           [GROUP_FILE] = "File, sheets, going back",
        [GROUP_LISTS] = "Lists and forms",  [GROUP_PROGRAM] = "The program",
    };
    return names[group];
}

void action_key_text(const Action *action, bool ascii, bool all, char *out, size_t size)
{
    size_t used = 0;
    out[0] = '\0';
    for (int k = 0; k < ACTION_KEYS && action->keys[k] != PRESS_NONE; k++) {
        char label[24];
        key_label(action->keys[k], ascii, label, sizeof label);
        int length = snprintf(out + used, size - used, "%s%s", k > 0 ? " or " : "", label);
        if (length < 0 || (size_t)length >= size - used || !all)
            return;
        used += (size_t)length;
    }
}
