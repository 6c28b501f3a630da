/*
 * Where each action goes. What belongs to the view on top goes there first (moves, lines of a list); what opens
 * something, or concerns the whole program, is done here.
 */
#include "screen/app/app.h"

#include "screen/forms/file.h"
#include "screen/forms/forms.h"
#include "screen/forms/print.h"
#include "screen/lists/lists.h"
#include "screen/lists/menu.h"
#include "screen/lists/trials.h"
#include "screen/views/elevation.h"
#include "screen/views/glance.h"
#include "screen/views/hang.h"
#include "screen/views/tally.h"

#include <stdio.h>

static void undo(App *app, bool back)
{
    Document *document = app->document;
    char name[MESSAGE_MOST];
    const char *step = back ? document_undo_name(document) : document_redo_name(document);
    if (step == NULL) {
        app_say(app, STYLE_DIM, back ? "Nothing to undo." : "Nothing to do again.");
        return;
    }
    snprintf(name, sizeof name, "%s", step);
    if (back ? document_undo(document) : document_redo(document))
        app_say(app, STYLE_ACCENT, "%s: %s.", back ? "Undone" : "Done again", name);
}

static void go_back(App *app)
{
    Layer *layer = app_top(app);
    if (layer->view->back == NULL || layer->view->back(app, layer))
        app_pop(app);
}

/* Out of a form its entries are taken first; what they do not allow is not saved. */
static void save(App *app)
{
    if (!form_take_top(app))
        return;
    if (app->document != NULL)
        file_save(app);
}

static void remove_opening(App *app)
{
    Err err;
    if (!edit_remove_opening(app->document, app->opening, &err))
        app_tell(app, &err);
    else
        app_say(app, STYLE_ACCENT, "The opening is removed; Ctrl-Z brings it back.");
    app->opening = 0;
}

static void remove_face(App *app)
{
    Err err;
    if (!edit_remove_face(app->document, app->face, &err))
        app_tell(app, &err);
    else
        app_say(app, STYLE_ACCENT, "The face is removed; Ctrl-Z brings it back.");
}

static void end_program(App *app)
{
    app->over = true;
}

static void suspend(App *app)
{
    app->term->suspend(app->term);
    app_say(app, STYLE_DIM, "Back again.");
    app->look_at_file = 0;
}

void app_do(App *app, ActionId action)
{
    app->dirty = true;
    Layer *layer = app_top(app);
    if (layer->view->act != NULL && layer->view->act(app, layer, action))
        return;
    switch (action) {
    case ACTION_OPENING_ADD: forms_opening(app, 0); break;
    case ACTION_OPENING_EDIT: forms_opening(app, app->opening); break;
    case ACTION_OPENING_REMOVE: remove_opening(app); break;
    case ACTION_OPENING_LIST: lists_openings(app); break;
    case ACTION_STARTS: trials_starts(app); break;
    case ACTION_WIDTHS: trials_widths(app); break;
    case ACTION_SPACERS: trials_spacers(app); break;
    case ACTION_START_FORM:
        if (elevation_may_move(app, action))
            forms_start(app);
        break;
    case ACTION_PLANKS_FORM:
        if (elevation_may_move(app, action))
            forms_planks(app);
        break;
    case ACTION_JOINTS_FORM: forms_joints(app); break;
    case ACTION_SAW_FORM: forms_saw(app); break;
    case ACTION_FACE_FORM: forms_face(app, app->face); break;
    case ACTION_FACE_ADD: forms_face(app, 0); break;
    case ACTION_FACE_REMOVE: remove_face(app); break;
    case ACTION_STOCK_LIST: lists_stock(app); break;
    case ACTION_FASTENERS_FORM: forms_fasteners(app); break;
    case ACTION_TRIM_FORM: forms_trim(app); break;
    case ACTION_WALL_FORM: forms_wall(app); break;
    case ACTION_WOOD_FORM: forms_wood(app); break;
    case ACTION_TRIM_RUN_LIST: lists_trim_runs(app); break;
    case ACTION_ROUGH_LIST: lists_rough(app); break;
    case ACTION_MILL_FORM: forms_mill(app); break;
    case ACTION_BILL_FORM: forms_bill(app); break;
    case ACTION_HANGING: hang_open(app); break;
    case ACTION_TALLY: tally_open(app); break;
    case ACTION_GLANCE: glance_seasons_and_bill(app); break;
    case ACTION_CAUTIONS: glance_cautions(app); break;
    case ACTION_FINDINGS: lists_findings(app); break;
    case ACTION_PRINT: print_open(app); break;
    case ACTION_UNDO: undo(app, true); break;
    case ACTION_REDO: undo(app, false); break;
    case ACTION_SAVE: save(app); break;
    case ACTION_SAVE_AS: file_save_as(app); break;
    case ACTION_OPEN: file_leave(app, lists_first); break;
    case ACTION_MENU: menu_open(app); break;
    case ACTION_HELP: help_open(app); break;
    case ACTION_PLAIN_SIGNS: app->plain_signs = !app->plain_signs; break;
    case ACTION_REDRAW: app->term->redraw(app->term); break;
    case ACTION_SUSPEND: suspend(app); break;
    case ACTION_BACK: go_back(app); break;
    case ACTION_LEAVE: file_leave(app, end_program); break;
    case ACTION_NONE:
    case ACTION_RAISE:
    case ACTION_LOWER:
    case ACTION_RAISE_MORE:
    case ACTION_LOWER_MORE:
    case ACTION_FACE_LEFT:
    case ACTION_FACE_RIGHT:
    case ACTION_OPENING_UP:
    case ACTION_OPENING_DOWN:
    case ACTION_OPENING_LEFT:
    case ACTION_OPENING_RIGHT:
    case ACTION_OPENING_UP_MORE:
    case ACTION_OPENING_DOWN_MORE:
    case ACTION_OPENING_LEFT_MORE:
    case ACTION_OPENING_RIGHT_MORE:
    case ACTION_OPENING_NEXT:
    case ACTION_OPENING_PREVIOUS:
    case ACTION_SWAP_VIEW:
    case ACTION_LOOK_UP:
    case ACTION_LOOK_DOWN:
    case ACTION_LOOK_LEFT:
    case ACTION_LOOK_RIGHT:
    case ACTION_LOOK_BACK:
    case ACTION_CLOSER:
    case ACTION_FARTHER:
    case ACTION_WHOLE:
    case ACTION_NEXT:
    case ACTION_PREVIOUS:
    case ACTION_CHOOSE:
    case ACTION_LINE_ADD:
    case ACTION_LINE_REMOVE:
    case ACTION_WORD_BEFORE:
    case ACTION_WORD_NEXT:
    case ACTION_NAME_NEXT:
    case ACTION_FORM_DONE:
    case ACTION_TALLY_BOARD:
    case ACTION_TALLY_MORE:
    case ACTION_HUNG:
    case ACTION_MEASURE:
    case ACTION_BOARD_OUT:
    case ACTION_BOARD_IN:
    case ACTION_TAKE_DOWN:
    case ACTION_PIECE_NEXT:
    case ACTION_PIECE_BEFORE:
    case ACTION_COUNT: break; /* the view on top had no use for it */
    }
}
