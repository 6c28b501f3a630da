/*
 * The forms of the editor: for each part of the wall the fields that it has, filled from the document, and the one
 * named change that takes them back into it.
 */
#ifndef SCREEN_FORMS_FORMS_H
#define SCREEN_FORMS_FORMS_H

#include "screen/forms/form.h"

/* For a form that is being taken: says what was done, or that nothing was; returns `done`. */
bool forms_changed(App *app, const Form *form, bool done);

void forms_start(App *app);
void forms_planks(App *app);
void forms_joints(App *app);
void forms_saw(App *app);
void forms_fasteners(App *app);
void forms_trim(App *app);
void forms_wall(App *app);
void forms_wood(App *app);
void forms_mill(App *app);
void forms_bill(App *app);

void forms_face(App *app, uint32_t id);                  /* 0: a new one behind the face shown */
void forms_opening(App *app, uint32_t id);               /* 0: a new one on the face shown */
void forms_stock(App *app, uint32_t id, uint32_t after); /* 0: a new line behind `after` (0: at the end) */

void forms_rough(App *app, uint32_t id, uint32_t after); /* likewise */
void forms_trim_run(App *app, int index);                /* of trim.runs */
void forms_new_trim_run(App *app, int index);            /* in front of that one; their count: at the end */

/* The few sizes that a wall cannot do without; then stands on it. `path`: where it is saved at once, and outlives the
 * form; NULL: nowhere yet. */
void forms_new(App *app, const char *path);

#endif
