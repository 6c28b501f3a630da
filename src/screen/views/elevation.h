/*
 * The elevation, the lowest layer wherever there is a document: the face as one looks at it, what is in focus, and what
 * moves it. How the face is drawn is the business of drawn.h and courses.h, which one key swaps.
 */
#ifndef SCREEN_VIEWS_ELEVATION_H
#define SCREEN_VIEWS_ELEVATION_H

#include "screen/app/app.h"

/* Lays it at the bottom. */
void elevation_stand(App *app);

/* The face shown, with its name and its neighbors above it. */
void elevation_draw(App *app, Grid *grid, Rect area);

/* What hangs already belongs to the start, widths and reveal that it was hung with: changing them is asked about, once.
 * True: do it now; else `action` is done when the answer allows it. */
bool elevation_may_move(App *app, ActionId action);

/* Raises the reference course by so many marks, for `action`. */
void elevation_nudge(App *app, ActionId action, int by);

/* Moves the opening in focus by so many marks. */
void elevation_move_opening(App *app, int right, int up);

/* To the face on the left (-1) or on the right (1). */
void elevation_walk_faces(App *app, int by);

/* Through the openings of the face, and between the last and the first the courses. */
void elevation_walk_openings(App *app, int by);

/* Removes what is in focus. */
void elevation_remove_opening(App *app);
void elevation_remove_face(App *app);

/* How it is looked at: elsewhere, at the reference course again, closer, all of it, in the other of two ways. */
void elevation_look(App *app, int right, int up);
void elevation_look_back(App *app);
void elevation_zoom(App *app, int by);
void elevation_show_whole(App *app);
void elevation_swap_view(App *app);

#endif
