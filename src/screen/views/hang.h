/*
 * While the planks go up: the next piece large, one key that says it hangs, an edge measured and typed in, a board
 * spoiled or found. What is recorded goes into the wall file. A piece is taken down as hung only from the final plan,
 * so that what hangs is what the sheets say, and the plan stays; only an edge or a board can change what is left of it.
 */
#ifndef SCREEN_VIEWS_HANG_H
#define SCREEN_VIEWS_HANG_H

#include "screen/app/app.h"
#include "screen/forms/field.h"
#include "trade/asbuilt.h"

typedef struct Hang {
    uint64_t version; /* of the document whose plan is looked at */
    int shown;        /* index of the piece looked at; -1: the next one to be hung */
    int top;          /* first line of its words in sight */
    bool knows;       /* a final plan has been seen, or a piece was hung from it */
    uint64_t known;   /* a hash of that plan's pieces */
    bool measuring;   /* an edge is typed in */
    Field field;
    uint32_t face; /* of the edge: id, course, which edge */
    int64_t course;
    bool is_top;
} Hang;

void hang_open(App *app);

/* In the view on top: records that the piece shown hangs; takes back the record of the last; shows the piece after (1)
 * or before (-1); asks for a measured edge; takes the board of the piece shown out of use. */
void hang_record(App *app);
void hang_take_down(App *app);
void hang_look(App *app, int by);
void hang_measure(App *app);
void hang_board_out(App *app);

/* The piece looked at as the final plan has it; false, and told, where that is another one. */
bool hang_final_piece(App *app, Piece *piece);

/* Index of the record of a piece that hangs or is cut; -1 where it has none. */
int hang_record_of(App *app, const Piece *piece);

/* What is planned otherwise is told from now on by the plan as it is. */
void hang_know(App *app);

/* The piece looked at, NULL where the plan has none left to hang. */
const Piece *hang_piece(App *app, Hang *hang);

/* Whether the plan is final and another one than the plan that the last piece was hung from, or, where none was yet,
 * that was there when the view was opened: what was printed or cut by that no longer holds. */
bool hang_replanned(App *app, Hang *hang);

/* What lies between the edge that is asked for and the one that the tape reaches: the lap of the board's own edge. */
Length hang_beyond(App *app, const Hang *hang);

/* Draws the piece looked at, what was measured, and what is typed. */
void hang_draw(App *app, void *state, Grid *grid, Rect area);

#endif
