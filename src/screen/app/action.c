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

/* clang-format off */
static const Action actions[] = {
    {ACTION_RAISE, GROUP_MOVE, COURSES, COURSES, {PRESS_UP, 'k'}, ACTION_LOWER, "move courses",
     "Raise the courses one mark", "raise the reference course by one marking step; all courses go with it"},
    {ACTION_LOWER, GROUP_MOVE, COURSES, 0, {PRESS_DOWN, 'j'}, ACTION_NONE, "",
     "Lower the courses one mark", "lower the reference course by one marking step"},
    {ACTION_RAISE_MORE, GROUP_MOVE, COURSES, 0, {SHIFT(PRESS_UP), ']'}, ACTION_LOWER_MORE, "more",
     "Raise the courses a good step", "raise the reference course by eight marks (ten in millimetres)"},
    {ACTION_LOWER_MORE, GROUP_MOVE, COURSES, 0, {SHIFT(PRESS_DOWN), '['}, ACTION_NONE, "",
     "Lower the courses a good step", "lower the reference course by eight marks (ten in millimetres)"},
    {ACTION_FACE_LEFT, GROUP_MOVE, COURSES | TRIAL, COURSES | TRIAL, {PRESS_LEFT, 'h'}, ACTION_FACE_RIGHT, "face",
     "Go to the face on the left", "go to the face on the left"},
    {ACTION_FACE_RIGHT, GROUP_MOVE, COURSES | TRIAL, 0, {PRESS_RIGHT, 'l'}, ACTION_NONE, "",
     "Go to the face on the right", "go to the face on the right"},

    {ACTION_OPENING_UP, GROUP_OPENINGS, OPENING, OPENING, {PRESS_UP, 'k'}, ACTION_OPENING_DOWN, "move it",
     "Move the opening up", "move the opening up by one marking step"},
    {ACTION_OPENING_DOWN, GROUP_OPENINGS, OPENING, 0, {PRESS_DOWN, 'j'}, ACTION_OPENING_LEFT, "",
     "Move the opening down", "move the opening down by one marking step"},
    {ACTION_OPENING_LEFT, GROUP_OPENINGS, OPENING, 0, {PRESS_LEFT, 'h'}, ACTION_OPENING_RIGHT, "",
     "Move the opening left", "move the opening left by one marking step"},
    {ACTION_OPENING_RIGHT, GROUP_OPENINGS, OPENING, 0, {PRESS_RIGHT, 'l'}, ACTION_NONE, "",
     "Move the opening right", "move the opening right by one marking step"},
    {ACTION_OPENING_UP_MORE, GROUP_OPENINGS, OPENING, 0, {SHIFT(PRESS_UP), ']'}, ACTION_NONE, "",
     "Move the opening up a good step", "move the opening up by eight marks (ten in millimetres)"},
    {ACTION_OPENING_DOWN_MORE, GROUP_OPENINGS, OPENING, 0, {SHIFT(PRESS_DOWN), '['}, ACTION_NONE, "",
     "Move the opening down a good step", "move the opening down by eight marks"},
    {ACTION_OPENING_LEFT_MORE, GROUP_OPENINGS, OPENING, 0, {SHIFT(PRESS_LEFT), '{'}, ACTION_NONE, "",
     "Move the opening left a good step", "move the opening left by eight marks"},
    {ACTION_OPENING_RIGHT_MORE, GROUP_OPENINGS, OPENING, 0, {SHIFT(PRESS_RIGHT), '}'}, ACTION_NONE, "",
     "Move the opening right a good step", "move the opening right by eight marks"},
    {ACTION_OPENING_EDIT, GROUP_OPENINGS, OPENING, OPENING, {PRESS_ENTER, 'e'}, ACTION_NONE, "sizes",
     "Change the opening's sizes", "change the sizes of the opening in focus"},
    {ACTION_OPENING_NEXT, GROUP_OPENINGS, WALL, WALL, {PRESS_TAB, 'n'}, ACTION_NONE, "openings",
     "Go to the next opening", "go to the next opening of the face; behind the last, back to the courses"},
    {ACTION_OPENING_PREVIOUS, GROUP_OPENINGS, WALL, 0, {SHIFT(PRESS_TAB), 'b'}, ACTION_NONE, "",
     "Go to the opening before", "go to the opening before; before the first, back to the courses"},
    {ACTION_OPENING_ADD, GROUP_OPENINGS, WALL, 0, {'a', PRESS_INSERT}, ACTION_NONE, "add",
     "Add an opening", "add an opening to this face: box, window, door, hearth, stove, vent"},
    {ACTION_OPENING_REMOVE, GROUP_OPENINGS, OPENING, OPENING, {'x', PRESS_DELETE}, ACTION_NONE, "remove",
     "Remove the opening", "remove the opening in focus"},
    {ACTION_OPENING_LIST, GROUP_OPENINGS, WALL, 0, {'o'}, ACTION_NONE, "list",
     "List the openings of this face", "list the openings of this face and choose one"},

    {ACTION_SWAP_VIEW, GROUP_LOOK, WALL | TRIAL, COURSES | TRIAL, {'v', F(6)}, ACTION_NONE, "view",
     "Swap the view: in proportion, row by row", "swap the two views of the face: in true proportion, and one line a course"},
    {ACTION_LOOK_UP, GROUP_LOOK, WALL, 0, {PRESS_PAGE_UP, 'u'}, ACTION_NONE, "",
     "Look higher up the wall", "look higher up the wall"},
    {ACTION_LOOK_DOWN, GROUP_LOOK, WALL, 0, {PRESS_PAGE_DOWN, 'd'}, ACTION_NONE, "",
     "Look lower down the wall", "look lower down the wall"},
    {ACTION_LOOK_LEFT, GROUP_LOOK, DRAWN, 0, {',', '<'}, ACTION_NONE, "",
     "Look to the left", "look further to the left"},
    {ACTION_LOOK_RIGHT, GROUP_LOOK, DRAWN, 0, {'.', '>'}, ACTION_NONE, "",
     "Look to the right", "look further to the right"},
    {ACTION_LOOK_BACK, GROUP_LOOK, WALL, 0, {'g', PRESS_HOME}, ACTION_NONE, "",
     "Look at the reference course again", "look at the reference course again, at the usual scale"},
    {ACTION_CLOSER, GROUP_LOOK, DRAWN, 0, {'+', '='}, ACTION_NONE, "",
     "Go closer", "go closer: a larger scale"},
    {ACTION_FARTHER, GROUP_LOOK, DRAWN, 0, {'-'}, ACTION_NONE, "",
     "Step back", "step back: a smaller scale"},
    {ACTION_WHOLE, GROUP_LOOK, DRAWN, 0, {'0'}, ACTION_NONE, "",
     "See the whole face", "see the whole face at once"},

    {ACTION_STARTS, GROUP_WRITE, WALL, 0, {'s'}, ACTION_NONE, "",
     "Start heights worth considering", "list the start heights worth considering; each is tried on the wall as one moves over it"},
    {ACTION_WIDTHS, GROUP_WRITE, WALL, 0, {'w'}, ACTION_NONE, "",
     "Widths and reveals worth considering", "list rip widths and reveals near yours that end in better strips, each tried on the wall"},
    {ACTION_SPACERS, GROUP_WRITE, WALL, 0, {'r'}, ACTION_NONE, "",
     "Reveal by a spacer: things at hand", "choose the reveal from things at hand, coins and sheet steel, each tried on the wall"},
    {ACTION_START_FORM, GROUP_WRITE, WALL, 0, {'1'}, ACTION_NONE, "",
     "Start: height of the reference course", "type the height of the reference course"},
    {ACTION_PLANKS_FORM, GROUP_WRITE, WALL, 0, {'2'}, ACTION_NONE, "",
     "Planks: width, thickness, reveal", "planks: width, thickness, reveal, lap, narrowest strip"},
    {ACTION_JOINTS_FORM, GROUP_WRITE, WALL, 0, {'3'}, ACTION_NONE, "",
     "Joints: where they may be", "joints: where they may land, how far apart, shortest piece"},
    {ACTION_SAW_FORM, GROUP_WRITE, WALL, 0, {'4'}, ACTION_NONE, "",
     "Saw: what a cut takes", "saw: kerf, and what squaring an end takes"},
    {ACTION_FACE_FORM, GROUP_WRITE, WALL, 0, {'5'}, ACTION_NONE, "",
     "This face: width, floor, ceiling, studs", "this face: width, floor and ceiling marks, sides, margins, corner, studs"},
    {ACTION_STOCK_LIST, GROUP_WRITE, WALL, 0, {'6'}, ACTION_NONE, "",
     "Boards at hand", "boards at hand: lengths, counts, tones, stretches to avoid"},
    {ACTION_FASTENERS_FORM, GROUP_WRITE, WALL, 0, {'7'}, ACTION_NONE, "",
     "Fasteners", "fasteners: length, and the wallboard behind"},
    {ACTION_TRIM_FORM, GROUP_WRITE, WALL, 0, {'8'}, ACTION_NONE, "",
     "Trim: stock and pieces", "trim: stock at hand, and pieces measured on the wall"},
    {ACTION_WALL_FORM, GROUP_WRITE, WALL, 0, {'9'}, ACTION_NONE, "",
     "Wall: title, units, marks", "wall: title, inches or millimetres, marking resolution"},
    {ACTION_WOOD_FORM, GROUP_WRITE, WALL, 0, {'W'}, ACTION_NONE, "",
     "Wood: species, grain, seasons", "wood: species, grain, and the air when it is hung, at its driest and its dampest"},
    {ACTION_TRIM_RUN_LIST, GROUP_WRITE, WALL, 0, {'T'}, ACTION_NONE, "",
     "Trim runs: strips worked out", "trim runs along floor, ceiling, corners, openings and edges, whose strips are worked out"},
    {ACTION_ROUGH_LIST, GROUP_WRITE, WALL, 0, {'R'}, ACTION_NONE, "",
     "Rough boards, still to be milled", "rough boards: their sizes, what is cut off, and what milling makes of each"},
    {ACTION_MILL_FORM, GROUP_WRITE, WALL, 0, {'M'}, ACTION_NONE, "",
     "Milling: edges, kerf, planing", "milling of rough boards: edges, kerf of the rip, planing, strips kept for trim"},
    {ACTION_BILL_FORM, GROUP_WRITE, WALL, 0, {'B'}, ACTION_NONE, "",
     "Bill: what it assumes", "what the bill of materials assumes: spare, fasteners, adhesive, finish, underlay"},
    {ACTION_FACE_ADD, GROUP_WRITE, WALL, 0, {'A'}, ACTION_NONE, "",
     "Add a face behind this one", "add a face to the right of this one"},
    {ACTION_FACE_REMOVE, GROUP_WRITE, WALL, 0, {'X'}, ACTION_NONE, "",
     "Remove this face", "remove this face"},

    {ACTION_TALLY, GROUP_WRITE, WALL, 0, {'t'}, ACTION_NONE, "",
     "Tally: count boards at the pile", "count boards at the pile: type a length, Enter, the next length, Enter"},
    {ACTION_TALLY_BOARD, GROUP_WRITE, TALLY, TALLY, {PRESS_ENTER}, ACTION_NONE, "next board",
     "Put the board on the pile", "at the pile: put the board that is typed on the pile, and go on to the next"},
    {ACTION_TALLY_MORE, GROUP_WRITE, TALLY, TALLY, {PRESS_TAB, PRESS_DOWN, PRESS_UP}, ACTION_NONE, "tone, avoid",
     "Tone and what to avoid", "at the pile: go on to the tone, to what is not to be used, and back to the length"},

    {ACTION_HANGING, GROUP_HANG, WALL, 0, {'H', F(5)}, ACTION_NONE, "",
     "Hang the planks, piece after piece", "hang the planks piece after piece, in hanging order"},
    {ACTION_HUNG, GROUP_HANG, HANG, HANG, {PRESS_ENTER, ' '}, ACTION_NONE, "it hangs",
     "This piece hangs", "record that the piece shown hangs, and go on to the next"},
    {ACTION_MEASURE, GROUP_HANG, HANG, HANG, {'e'}, ACTION_NONE, "edge",
     "Type in a measured edge", "type in the edge of a course as it hangs; the rest is laid out anew from it"},
    {ACTION_BOARD_OUT, GROUP_HANG, HANG, HANG, {'x', PRESS_DELETE}, ACTION_NONE, "spoiled",
     "This board is spoiled", "take the board of the piece shown out; other boards keep their numbers"},
    {ACTION_BOARD_IN, GROUP_HANG, HANG, HANG, {'a', PRESS_INSERT}, ACTION_NONE, "found",
     "A board was found", "put a board that was found on the pile, behind all others"},
    {ACTION_PIECE_BEFORE, GROUP_HANG, HANG, HANG, {PRESS_LEFT, PRESS_UP, 'h'}, ACTION_PIECE_NEXT, "look",
     "Look at the piece before", "look at the piece before this one"},
    {ACTION_PIECE_NEXT, GROUP_HANG, HANG, 0, {PRESS_RIGHT, PRESS_DOWN, 'l'}, ACTION_NONE, "",
     "Look at the piece after", "look at the piece after this one; Home goes back to the next one to hang"},
    {ACTION_TAKE_DOWN, GROUP_HANG, HANG, HANG, {PRESS_BACKSPACE, 't'}, ACTION_NONE, "take back",
     "Take back the piece hung last", "take back the record of the piece hung last"},

    {ACTION_GLANCE, GROUP_FILE, WALL, 0, {'y', 'i'}, ACTION_NONE, "",
     "Seasons, looks, materials", "read how the planks move through the year, how joints and tones lie, and what the wall takes"},
    {ACTION_CAUTIONS, GROUP_FILE, WALL, 0, {'c'}, ACTION_NONE, "",
     "Faults and cautions in full", "read all faults and cautions in full, with what every such job has to look out for"},
    {ACTION_FINDINGS, GROUP_FILE, WALL, 0, {'f', F(7)}, ACTION_NONE, "faults",
     "Faults and cautions", "list faults and cautions; choosing one shows its place"},
    {ACTION_PRINT, GROUP_FILE, WALL, 0, {'p', F(9)}, ACTION_NONE, "print",
     "Print a sheet", "print the row sheet, or another, to a file or the printer"},
    {ACTION_UNDO, GROUP_FILE, WALL | LISTS | HANG | TALLY, TALLY, {CTRL('z'), F(3)}, ACTION_NONE, "undo",
     "Undo", "undo the last step"},
    {ACTION_REDO, GROUP_FILE, WALL | LISTS | HANG | TALLY, 0, {CTRL('y'), F(4)}, ACTION_NONE, "",
     "Redo", "do again what was undone"},
    {ACTION_SAVE, GROUP_FILE, WALL | FORM | LISTS | HANG | TALLY, COURSES | FORM, {CTRL('s'), F(2)}, ACTION_NONE, "save",
     "Save", "save at once; in a form, take what it says first"},
    {ACTION_SAVE_AS, GROUP_FILE, WALL, 0, {'S'}, ACTION_NONE, "",
     "Save under another name", "save under another name and go on with that file"},
    {ACTION_OPEN, GROUP_FILE, WALL, 0, {'O'}, ACTION_NONE, "",
     "Open another wall", "leave this wall for another one: a new one, the sample, a recent file"},

    {ACTION_NEXT, GROUP_LISTS, LISTS | TRIAL | MENU | HELPED | ASKED | FORM, 0, {PRESS_DOWN, PRESS_TAB}, ACTION_NONE, "",
     "Next line", "go to the next line or field; in a field what is typed replaces the value, an arrow edits it"},
    {ACTION_PREVIOUS, GROUP_LISTS, LISTS | TRIAL | MENU | HELPED | ASKED | FORM, LISTS | TRIAL | MENU | HELPED | ASKED | FORM,
     {PRESS_UP, SHIFT(PRESS_TAB)}, ACTION_NEXT, "go",
     "Line before", "go to the line or field before"},
    {ACTION_CHOOSE, GROUP_LISTS, LISTS | TRIAL | MENU | ASKED, LISTS | TRIAL | MENU | ASKED, {PRESS_ENTER}, ACTION_NONE, "choose",
     "Choose", "take the line in focus"},
    {ACTION_LINE_ADD, GROUP_LISTS, STOCK, STOCK, {'a', PRESS_INSERT}, ACTION_NONE, "add",
     "Add a line", "add a line behind the one in focus"},
    {ACTION_LINE_REMOVE, GROUP_LISTS, STOCK, STOCK, {'x', PRESS_DELETE}, ACTION_NONE, "remove",
     "Remove the line", "remove the line in focus"},
    {ACTION_WORD_BEFORE, GROUP_LISTS, WORDS, WORDS, {PRESS_LEFT, '-'}, ACTION_WORD_NEXT, "change",
     "Word before", "in a field of some words, between two points: take the word before; a first letter takes its word"},
    {ACTION_WORD_NEXT, GROUP_LISTS, WORDS, 0, {PRESS_RIGHT, ' '}, ACTION_NONE, "",
     "Next word", "in a field of some words: take the next one"},
    {ACTION_NAME_NEXT, GROUP_LISTS, NAMES, NAMES, {CTRL('n')}, ACTION_NONE, "name",
     "Nearest name", "in a field of a known name (species, openings): take the nearest to what is typed, then the next"},
    {ACTION_FORM_DONE, GROUP_LISTS, FORM, FORM, {CTRL('d'), F(8)}, ACTION_NONE, "take it",
     "Take the form", "take what the form says (Enter on its last line does the same)"},

    {ACTION_MENU, GROUP_PROGRAM, WALL | HANG, WALL, {'m', F(10)}, ACTION_NONE, "menu",
     "Menu", "everything that can be done, to choose from or type into"},
    {ACTION_HELP, GROUP_PROGRAM, WALL | LISTS | TRIAL | HANG | ASKED, WALL, {'?', F(1)}, ACTION_NONE, "help",
     "Help", "all keys"},
    {ACTION_PLAIN_SIGNS, GROUP_PROGRAM, WALL, 0, {'P'}, ACTION_NONE, "",
     "Draw with plain signs, or with fine ones", "draw with plain ASCII signs, or with the fine ones again"},
    {ACTION_REDRAW, GROUP_PROGRAM, ANYWHERE, 0, {CTRL('l')}, ACTION_NONE, "",
     "Draw the screen again", "draw the whole screen again"},
    {ACTION_SUSPEND, GROUP_PROGRAM, WALL, 0, {'Z'}, ACTION_NONE, "",
     "Back to the shell for a while", "stop and go back to the shell; fg brings it back"},
    {ACTION_BACK, GROUP_PROGRAM, ANYWHERE, OPENING | LISTS | TRIAL | HANG | TALLY | MENU | ASKED | FORM | HELPED, {PRESS_ESCAPE, CTRL('g')}, ACTION_NONE, "back",
     "Back one level", "back one level; it never leaves the program"},
    {ACTION_LEAVE, GROUP_PROGRAM, ANYWHERE, 0, {CTRL('q'), CTRL('c'), 'q'}, ACTION_NONE, "leave",
     "Leave", "leave; asks first when there are changes"},
};
/* clang-format on */

enum { TABLE_COUNT = sizeof actions / sizeof *actions };

const Action *action_of(ActionId id)
{
    for (int i = 0; i < TABLE_COUNT; i++)
        if (actions[i].id == id)
            return &actions[i];
    panic(__FILE__, __LINE__, "an action is not in the table");
}

ActionId action_for(unsigned places, Key key)
{
    if (key == PRESS_NONE)
        return ACTION_NONE;
    for (int i = 0; i < TABLE_COUNT; i++)
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

/* In mdoc a word may not begin with a mark that mdoc reads as its own. */
static void put_mdoc_word(Text *out, const char *word)
{
    if (strlen(word) == 1 && strchr("?[](),.:;!|", word[0]) != NULL)
        text_put(out, "\\&");
    for (; *word != '\0'; word++) {
        if (*word == '-')
            text_put(out, "\\-");
        else if (*word == '\\')
            text_put(out, "\\e");
        else
            text_put_bytes(out, word, 1);
    }
}

void action_write_mdoc(Text *out)
{
    for (int group = 0; group < GROUP_COUNT; group++) {
        text_format(out, ".Ss %s\n.Bl -tag -width Ds\n", action_group_name((ActionGroup)group));
        for (int i = 0; i < TABLE_COUNT; i++) {
            if ((int)actions[i].group != group)
                continue;
            text_put(out, ".It");
            for (int k = 0; k < ACTION_KEYS && actions[i].keys[k] != PRESS_NONE; k++) {
                char label[24];
                key_label(actions[i].keys[k], true, label, sizeof label);
                text_put(out, k > 0 ? " , Ic " : " Ic ");
                put_mdoc_word(out, label);
            }
            char first = actions[i].help[0];
            if (first >= 'a' && first <= 'z')
                first = (char)(first - 'a' + 'A');
            text_format(out, "\n%c%s.\n", first, actions[i].help + 1);
        }
        text_put(out, ".El\n");
    }
}
