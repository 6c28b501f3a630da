/*
 * What a person can do, a row each. A row is all that there is to say of an action: the list of ids, the words in
 * menu, hints, help and manual, and the function behind the key are made of it, so that they cannot disagree. Whoever
 * includes this file says before what a ROW becomes; it has no guard, since it is included more than once.
 *
 *     ROW(id, call, group, places, hints, keys, with, word, menu, help)
 *
 *     call    what is done, as screen/do.c calls it; `app` is the App
 *     places  where its keys count, and its line in the menu
 *     hints   where it is hinted at, in the order of the rows
 *     keys    the first is the one shown; at most ACTION_KEYS
 *     with    the action that is hinted at together with this one, and that with its own; NONE: alone
 *     word    in a hint: one or two words
 *     menu    in the menu
 *     help    in the help and the manual: a sentence without its full stop
 *
 * To add an action: a row here, and the function that it calls, declared in a header that do.c includes. The test
 * screen-manual asks for its line in datumrow(1), which DATUMROW_RENEW=1 writes.
 */
/* clang-format off */
ROW(RAISE, elevation_nudge(app, ACTION_RAISE, 1),
    GROUP_MOVE, COURSES, COURSES, KEYS(PRESS_UP, 'k'), LOWER, "move courses",
    "Raise the courses one mark", "raise the reference course by one marking step; all courses go with it")
ROW(LOWER, elevation_nudge(app, ACTION_LOWER, -1),
    GROUP_MOVE, COURSES, 0, KEYS(PRESS_DOWN, 'j'), NONE, "",
    "Lower the courses one mark", "lower the reference course by one marking step")
ROW(RAISE_MORE, elevation_nudge(app, ACTION_RAISE_MORE, good_step(app)),
    GROUP_MOVE, COURSES, 0, KEYS(SHIFT(PRESS_UP), ']'), LOWER_MORE, "more",
    "Raise the courses a good step", "raise the reference course by eight marks (ten in millimetres)")
ROW(LOWER_MORE, elevation_nudge(app, ACTION_LOWER_MORE, -good_step(app)),
    GROUP_MOVE, COURSES, 0, KEYS(SHIFT(PRESS_DOWN), '['), NONE, "",
    "Lower the courses a good step", "lower the reference course by eight marks (ten in millimetres)")
ROW(FACE_LEFT, elevation_walk_faces(app, -1),
    GROUP_MOVE, COURSES | TRIAL, COURSES | TRIAL, KEYS(PRESS_LEFT, 'h'), FACE_RIGHT, "face",
    "Go to the face on the left", "go to the face on the left")
ROW(FACE_RIGHT, elevation_walk_faces(app, 1),
    GROUP_MOVE, COURSES | TRIAL, 0, KEYS(PRESS_RIGHT, 'l'), NONE, "",
    "Go to the face on the right", "go to the face on the right")

ROW(OPENING_UP, elevation_move_opening(app, 0, 1),
    GROUP_OPENINGS, OPENING, OPENING, KEYS(PRESS_UP, 'k'), OPENING_DOWN, "move it",
    "Move the opening up", "move the opening up by one marking step")
ROW(OPENING_DOWN, elevation_move_opening(app, 0, -1),
    GROUP_OPENINGS, OPENING, 0, KEYS(PRESS_DOWN, 'j'), OPENING_LEFT, "",
    "Move the opening down", "move the opening down by one marking step")
ROW(OPENING_LEFT, elevation_move_opening(app, -1, 0),
    GROUP_OPENINGS, OPENING, 0, KEYS(PRESS_LEFT, 'h'), OPENING_RIGHT, "",
    "Move the opening left", "move the opening left by one marking step")
ROW(OPENING_RIGHT, elevation_move_opening(app, 1, 0),
    GROUP_OPENINGS, OPENING, 0, KEYS(PRESS_RIGHT, 'l'), NONE, "",
    "Move the opening right", "move the opening right by one marking step")
ROW(OPENING_UP_MORE, elevation_move_opening(app, 0, good_step(app)),
    GROUP_OPENINGS, OPENING, 0, KEYS(SHIFT(PRESS_UP), ']'), NONE, "",
    "Move the opening up a good step", "move the opening up by eight marks (ten in millimetres)")
ROW(OPENING_DOWN_MORE, elevation_move_opening(app, 0, -good_step(app)),
    GROUP_OPENINGS, OPENING, 0, KEYS(SHIFT(PRESS_DOWN), '['), NONE, "",
    "Move the opening down a good step", "move the opening down by eight marks")
ROW(OPENING_LEFT_MORE, elevation_move_opening(app, -good_step(app), 0),
    GROUP_OPENINGS, OPENING, 0, KEYS(SHIFT(PRESS_LEFT), '{'), NONE, "",
    "Move the opening left a good step", "move the opening left by eight marks")
ROW(OPENING_RIGHT_MORE, elevation_move_opening(app, good_step(app), 0),
    GROUP_OPENINGS, OPENING, 0, KEYS(SHIFT(PRESS_RIGHT), '}'), NONE, "",
    "Move the opening right a good step", "move the opening right by eight marks")
ROW(OPENING_EDIT, forms_opening(app, app->focus.opening),
    GROUP_OPENINGS, OPENING, OPENING, KEYS(PRESS_ENTER, 'e'), NONE, "sizes",
    "Change the opening's sizes", "change the sizes of the opening in focus")
ROW(OPENING_NEXT, elevation_walk_openings(app, 1),
    GROUP_OPENINGS, WALL, WALL, KEYS(PRESS_TAB, 'n'), NONE, "openings",
    "Go to the next opening", "go to the next opening of the face; behind the last, back to the courses")
ROW(OPENING_PREVIOUS, elevation_walk_openings(app, -1),
    GROUP_OPENINGS, WALL, 0, KEYS(SHIFT(PRESS_TAB), 'b'), NONE, "",
    "Go to the opening before", "go to the opening before; before the first, back to the courses")
ROW(OPENING_ADD, forms_opening(app, 0),
    GROUP_OPENINGS, WALL, 0, KEYS('a', PRESS_INSERT), NONE, "add",
    "Add an opening", "add an opening to this face: box, window, door, fireplace, stove, vent")
ROW(OPENING_REMOVE, elevation_remove_opening(app),
    GROUP_OPENINGS, OPENING, OPENING, KEYS('x', PRESS_DELETE), NONE, "remove",
    "Remove the opening", "remove the opening in focus")
ROW(OPENING_LIST, lists_openings(app),
    GROUP_OPENINGS, WALL, 0, KEYS('o'), NONE, "list",
    "List the openings of this face", "list the openings of this face and choose one")

ROW(SWAP_VIEW, elevation_swap_view(app),
    GROUP_LOOK, WALL | TRIAL, COURSES | TRIAL, KEYS('v', F(6)), NONE, "view",
    "Swap the view: in proportion, row by row", "swap the two views of the face: in true proportion, and one line a course")
ROW(LOOK_UP, elevation_look(app, 0, 1),
    GROUP_LOOK, WALL, 0, KEYS(PRESS_PAGE_UP, 'u'), NONE, "",
    "Look higher up the wall", "look higher up the wall")
ROW(LOOK_DOWN, elevation_look(app, 0, -1),
    GROUP_LOOK, WALL, 0, KEYS(PRESS_PAGE_DOWN, 'd'), NONE, "",
    "Look lower down the wall", "look lower down the wall")
ROW(LOOK_LEFT, elevation_look(app, -1, 0),
    GROUP_LOOK, DRAWN, 0, KEYS(',', '<'), NONE, "",
    "Look to the left", "look further to the left")
ROW(LOOK_RIGHT, elevation_look(app, 1, 0),
    GROUP_LOOK, DRAWN, 0, KEYS('.', '>'), NONE, "",
    "Look to the right", "look further to the right")
ROW(LOOK_BACK, elevation_look_back(app),
    GROUP_LOOK, WALL, 0, KEYS('g', PRESS_HOME), NONE, "",
    "Look at the reference course again", "look at the reference course again, at the usual scale")
ROW(CLOSER, elevation_zoom(app, 1),
    GROUP_LOOK, DRAWN, 0, KEYS('+', '='), NONE, "",
    "Go closer", "go closer: a larger scale")
ROW(FARTHER, elevation_zoom(app, -1),
    GROUP_LOOK, DRAWN, 0, KEYS('-'), NONE, "",
    "Step back", "step back: a smaller scale")
ROW(WHOLE, elevation_show_whole(app),
    GROUP_LOOK, DRAWN, 0, KEYS('0'), NONE, "",
    "See the whole face", "see the whole face at once")

ROW(STARTS, trials_starts(app),
    GROUP_WRITE, WALL, 0, KEYS('s'), NONE, "",
    "Start heights worth considering", "list the start heights worth considering; each is tried on the wall as one moves over it")
ROW(WIDTHS, trials_widths(app),
    GROUP_WRITE, WALL, 0, KEYS('w'), NONE, "",
    "Widths and reveals worth considering", "list rip widths and reveals near yours that end in better strips, each tried on the wall")
ROW(SPACERS, trials_spacers(app),
    GROUP_WRITE, WALL, 0, KEYS('r'), NONE, "",
    "Reveal by a spacer: things at hand", "choose the reveal from things at hand, coins and sheet steel, each tried on the wall")
ROW(SPENDING, trials_spending(app),
    GROUP_WRITE, WALL, 0, KEYS('J'), NONE, "",
    "Fewer joints for more wood", "list what more wood would buy: fewer joints, stacked ones, stairs; each is tried on the wall")
ROW(START_FORM, start_form(app),
    GROUP_WRITE, WALL, 0, KEYS('1'), NONE, "",
    "Start: height of the reference course", "type the height of the reference course")
ROW(PLANKS_FORM, planks_form(app),
    GROUP_WRITE, WALL, 0, KEYS('2'), NONE, "",
    "Planks: width, thickness, reveal", "planks: width, thickness, reveal, lap, narrowest strip")
ROW(JOINTS_FORM, forms_joints(app),
    GROUP_WRITE, WALL, 0, KEYS('3'), NONE, "",
    "Joints: where they may be", "joints: where they may land, how far apart, shortest piece")
ROW(SAW_FORM, forms_saw(app),
    GROUP_WRITE, WALL, 0, KEYS('4'), NONE, "",
    "Saw: what a cut takes", "saw: kerf, and what squaring an end takes")
ROW(FACE_FORM, forms_face(app, app->focus.face),
    GROUP_WRITE, WALL, 0, KEYS('5'), NONE, "",
    "This face: width, floor, ceiling, studs", "this face: width, floor and ceiling marks, sides, margins, corner, studs")
ROW(STOCK_LIST, lists_stock(app),
    GROUP_WRITE, WALL, 0, KEYS('6'), NONE, "",
    "Boards at hand", "boards at hand: lengths, counts, tones, stretches to avoid")
ROW(FASTENERS_FORM, forms_fasteners(app),
    GROUP_WRITE, WALL, 0, KEYS('7'), NONE, "",
    "Fasteners", "fasteners: length, and the drywall behind")
ROW(TRIM_FORM, forms_trim(app),
    GROUP_WRITE, WALL, 0, KEYS('8'), NONE, "",
    "Trim: stock and pieces", "trim: stock at hand, and pieces measured on the wall")
ROW(WALL_FORM, forms_wall(app),
    GROUP_WRITE, WALL, 0, KEYS('9'), NONE, "",
    "Wall: title, units, marks", "wall: title, inches or millimetres, marking resolution")
ROW(WOOD_FORM, forms_wood(app),
    GROUP_WRITE, WALL, 0, KEYS('W'), NONE, "",
    "Wood: species, grain, seasons", "wood: species, grain, and the air when it is hung, at its driest and its dampest")
ROW(TRIM_RUN_LIST, lists_trim_runs(app),
    GROUP_WRITE, WALL, 0, KEYS('T'), NONE, "",
    "Trim runs: strips worked out", "trim runs along floor, ceiling, corners, openings and edges, whose strips are worked out")
ROW(ROUGH_LIST, lists_rough(app),
    GROUP_WRITE, WALL, 0, KEYS('R'), NONE, "",
    "Rough boards, still to be milled", "rough boards: their sizes, what is cut off, and what milling makes of each")
ROW(MILL_FORM, forms_mill(app),
    GROUP_WRITE, WALL, 0, KEYS('M'), NONE, "",
    "Milling: edges, kerf, planing", "milling of rough boards: edges, kerf of the rip, planing, strips kept for trim")
ROW(BILL_FORM, forms_bill(app),
    GROUP_WRITE, WALL, 0, KEYS('B'), NONE, "",
    "Bill: what it assumes", "what the bill of materials assumes: spare, fasteners, adhesive, finish, backing")
ROW(FACE_ADD, forms_face(app, 0),
    GROUP_WRITE, WALL, 0, KEYS('A'), NONE, "",
    "Add a face behind this one", "add a face to the right of this one")
ROW(FACE_REMOVE, elevation_remove_face(app),
    GROUP_WRITE, WALL, 0, KEYS('X'), NONE, "",
    "Remove this face", "remove this face")
ROW(TALLY, tally_open(app),
    GROUP_WRITE, WALL, 0, KEYS('t'), NONE, "",
    "Tally: count boards at the pile", "count boards at the pile: type a length, Enter, the next length, Enter")
ROW(TALLY_BOARD, tally_put_down(app),
    GROUP_WRITE, TALLY, TALLY, KEYS(PRESS_ENTER), NONE, "next board",
    "Put the board on the pile", "at the pile: put the board that is typed on the pile, and go on to the next")
ROW(TALLY_MORE, tally_next_field(app),
    GROUP_WRITE, TALLY, TALLY, KEYS(PRESS_TAB, PRESS_DOWN, PRESS_UP), NONE, "tone, avoid",
    "Tone and what to avoid", "at the pile: go on to the tone, to what is not to be used, and back to the length")

ROW(NEXT, step(app, 1),
    GROUP_LISTS, LISTS | TRIAL | MENU | HELPED | ASKED | FORM, 0, KEYS(PRESS_DOWN, PRESS_TAB), NONE, "",
    "Next line", "go to the next line or field; in a field what is typed replaces the value, an arrow edits it")
ROW(PREVIOUS, step(app, -1),
    GROUP_LISTS, LISTS | TRIAL | MENU | HELPED | ASKED | FORM, LISTS | TRIAL | MENU | HELPED | ASKED | FORM, KEYS(PRESS_UP, SHIFT(PRESS_TAB)), NEXT, "go",
    "Line before", "go to the line or field before")
ROW(CHOOSE, choose(app),
    GROUP_LISTS, LISTS | TRIAL | MENU | ASKED, LISTS | TRIAL | MENU | ASKED, KEYS(PRESS_ENTER), NONE, "choose",
    "Choose", "take the line in focus")
ROW(LINE_ADD, list_add_line(app),
    GROUP_LISTS, STOCK, STOCK, KEYS('a', PRESS_INSERT), NONE, "add",
    "Add a line", "add a line behind the one in focus")
ROW(LINE_REMOVE, list_remove_line(app),
    GROUP_LISTS, STOCK, STOCK, KEYS('x', PRESS_DELETE), NONE, "remove",
    "Remove the line", "remove the line in focus")
ROW(WORD_BEFORE, form_type(app, PRESS_LEFT),
    GROUP_LISTS, WORDS, WORDS, KEYS(PRESS_LEFT, '-'), WORD_NEXT, "change",
    "Word before", "in a field of some words, between two points: take the word before; a first letter takes its word")
ROW(WORD_NEXT, form_type(app, PRESS_RIGHT),
    GROUP_LISTS, WORDS, 0, KEYS(PRESS_RIGHT, ' '), NONE, "",
    "Next word", "in a field of some words: take the next one")
ROW(NAME_NEXT, form_next_name(app),
    GROUP_LISTS, NAMES, NAMES, KEYS(CTRL('n')), NONE, "name",
    "Nearest name", "in a field of a known name (species, openings): take the nearest to what is typed, then the next")
ROW(FORM_DONE, form_take_top(app),
    GROUP_LISTS, FORM, FORM, KEYS(CTRL('d'), F(8)), NONE, "take it",
    "Take the form", "take what the form says (Enter on its last line does the same)")

ROW(HANGING, hang_open(app),
    GROUP_HANG, WALL, 0, KEYS('H', F(5)), NONE, "",
    "Hang the planks, piece after piece", "hang the planks piece after piece, in hanging order")
ROW(HUNG, hang_record(app),
    GROUP_HANG, HANG, HANG, KEYS(PRESS_ENTER, ' '), NONE, "it hangs",
    "This piece hangs", "record that the piece shown hangs, and go on to the next")
ROW(CUT_PIECE, hang_cut(app, CUT_THIS),
    GROUP_HANG, HANG, HANG, KEYS('c'), NONE, "cut",
    "This piece is cut", "tick the piece shown as cut, to hang later; again: it is not cut after all")
ROW(CUT_BOARD, hang_cut(app, CUT_THIS_BOARD),
    GROUP_HANG, HANG, 0, KEYS('b'), NONE, "",
    "All pieces of this board are cut", "tick all pieces of the board shown as cut")
ROW(CUT_FACE, hang_cut(app, CUT_THIS_FACE),
    GROUP_HANG, HANG, 0, KEYS('C'), NONE, "",
    "All pieces of this face are cut", "tick all pieces of the face shown as cut")
ROW(MEASURE, hang_measure(app),
    GROUP_HANG, HANG, HANG, KEYS('e'), NONE, "edge",
    "Type in a measured edge", "type in the edge of a course as it hangs; the rest follows from it")
ROW(BOARD_OUT, hang_board_out(app),
    GROUP_HANG, HANG, HANG, KEYS('x', PRESS_DELETE), NONE, "spoiled",
    "This board is spoiled", "take the board of the piece shown out; other boards keep their numbers")
ROW(BOARD_IN, forms_stock(app, 0, 0),
    GROUP_HANG, HANG, HANG, KEYS('a', PRESS_INSERT), NONE, "found",
    "A board was found", "put a board that was found on the pile, behind all others")
ROW(TAKE_DOWN, hang_take_down(app),
    GROUP_HANG, HANG, HANG, KEYS(PRESS_BACKSPACE, 't'), NONE, "take back",
    "Take back the piece hung last", "take back the record of the piece hung last")
ROW(PIECE_NEXT, hang_look(app, 1),
    GROUP_HANG, HANG, 0, KEYS(PRESS_RIGHT, PRESS_DOWN, 'l'), NONE, "",
    "Look at the piece after", "look at the piece after this one; Home goes back to the next one to hang")
ROW(PIECE_BEFORE, hang_look(app, -1),
    GROUP_HANG, HANG, HANG, KEYS(PRESS_LEFT, PRESS_UP, 'h'), PIECE_NEXT, "look",
    "Look at the piece before", "look at the piece before this one")

ROW(GLANCE, glance_seasons_and_bill(app),
    GROUP_FILE, WALL, 0, KEYS('y', 'i'), NONE, "",
    "Seasons, looks, materials", "read how the planks move through the year, how joints and tones lie, and what the wall takes")
ROW(CAUTIONS, glance_cautions(app),
    GROUP_FILE, WALL, 0, KEYS('c'), NONE, "",
    "Hazards, faults and cautions in full", "read all hazards, faults and cautions in full, with what every such job has to look out for")
ROW(FINDINGS, lists_findings(app),
    GROUP_FILE, WALL, 0, KEYS('f', F(7)), NONE, "faults",
    "Hazards, faults and cautions", "list hazards, faults and cautions; choosing one shows its place")
ROW(PRINT, print_open(app),
    GROUP_FILE, WALL, 0, KEYS('p', F(9)), NONE, "print",
    "Print a sheet", "print the row sheet, or another, to a file or the printer")
ROW(UNDO, undo(app),
    GROUP_FILE, WALL | LISTS | HANG | TALLY, TALLY, KEYS(CTRL('z'), F(3)), NONE, "undo",
    "Undo", "undo the last step")
ROW(REDO, redo(app),
    GROUP_FILE, WALL | LISTS | HANG | TALLY, 0, KEYS(CTRL('y'), F(4)), NONE, "",
    "Redo", "do again what was undone")
ROW(SAVE, save(app),
    GROUP_FILE, WALL | FORM | LISTS | HANG | TALLY, COURSES | FORM, KEYS(CTRL('s'), F(2)), NONE, "save",
    "Save", "save at once; in a form, take what it says first")
ROW(SAVE_AS, file_save_as(app),
    GROUP_FILE, WALL, 0, KEYS('S'), NONE, "",
    "Save under another name", "save under another name and go on with that file")
ROW(OPEN, file_leave(app, lists_first),
    GROUP_FILE, WALL, 0, KEYS('O'), NONE, "",
    "Open another wall", "leave this wall for another one: a new one, the sample, a recent file")

ROW(MENU, menu_open(app),
    GROUP_PROGRAM, WALL | HANG, WALL, KEYS('m', F(10)), NONE, "menu",
    "Menu", "everything that can be done, to choose from or type into")
ROW(HELP, help_open(app),
    GROUP_PROGRAM, WALL | LISTS | TRIAL | HANG | ASKED, WALL, KEYS('?', F(1)), NONE, "help",
    "Help", "all keys")
ROW(PLAIN_SIGNS, app->plain_signs = !app->plain_signs,
    GROUP_PROGRAM, WALL, 0, KEYS('P'), NONE, "",
    "Draw with plain signs, or with fine ones", "draw with plain ASCII signs, or with the fine ones again")
ROW(REDRAW, app->term->redraw(app->term),
    GROUP_PROGRAM, ANYWHERE, 0, KEYS(CTRL('l')), NONE, "",
    "Draw the screen again", "draw the whole screen again")
ROW(SUSPEND, suspend(app),
    GROUP_PROGRAM, WALL, 0, KEYS('Z'), NONE, "",
    "Back to the shell for a while", "stop and go back to the shell; fg brings it back")
ROW(BACK, go_back(app),
    GROUP_PROGRAM, ANYWHERE, OPENING | LISTS | TRIAL | HANG | TALLY | MENU | ASKED | FORM | HELPED, KEYS(PRESS_ESCAPE, CTRL('g')), NONE, "back",
    "Back one level", "back one level; it never leaves the program")
ROW(LEAVE, leave(app),
    GROUP_PROGRAM, ANYWHERE, 0, KEYS(CTRL('q'), CTRL('c'), 'q'), NONE, "leave",
    "Leave", "leave; asks first when there are changes")
/* clang-format on */
#undef ROW
