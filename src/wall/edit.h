/*
 * Every change a user can make, each a named function and one undo step. A change that would make the wall impossible
 * is refused with the problem found by wall_check and changes nothing.
 */
#ifndef WALL_EDIT_H
#define WALL_EDIT_H

#include "base/err.h"
#include "wall/document.h"

/* ---- changes; each false on refusal with `err` filled (place = field path) ---- */

/* Nudges: steps of one kind that follow each other without another change or document_end_run become one undo step. */
bool edit_nudge_start(Document *document, Length by, Err *err);
bool edit_nudge_opening(Document *document, uint32_t opening, Length dx, Length dy, Err *err);

/* Another wall in place of this one, as one step named `name` ("read the file anew"). */
bool edit_whole(Document *document, const Wall *wall, const char *name, Err *err);

bool edit_start(Document *document, Length start, Err *err);
bool edit_head(Document *document, const char *title, Units units, Length round, Err *err);
bool edit_planks(Document *document, const Planks *planks, Err *err);
bool edit_joints(Document *document, const Joints *joints, Err *err);
bool edit_saw(Document *document, const Saw *saw, Err *err);
bool edit_fasteners(Document *document, const Fasteners *fasteners, Err *err);
bool edit_wood(Document *document, const Wood *wood, Err *err);
bool edit_trim(Document *document, const Trim *trim, Err *err); /* stock, pieces and runs */
bool edit_mill(Document *document, const Mill *mill, Err *err);
bool edit_bill(Document *document, const Bill *bill, Err *err);

/* The face's `id` names it; openings are left as they are. */
bool edit_face(Document *document, const Face *face, Err *err);
/* Behind the face `after` (0: in front of the first); `id` gets the new face's id where not NULL. */
bool edit_add_face(Document *document, uint32_t after, const Face *face, uint32_t *id, Err *err);
bool edit_remove_face(Document *document, uint32_t face, Err *err);

bool edit_add_opening(Document *document, uint32_t face, const Opening *opening, uint32_t *id, Err *err);
bool edit_opening(Document *document, const Opening *opening, Err *err); /* its `id` names it */
bool edit_remove_opening(Document *document, uint32_t opening, Err *err);

bool edit_add_stock(Document *document, uint32_t after, const Stock *stock, uint32_t *id, Err *err); /* 0: at the end */
bool edit_stock(Document *document, const Stock *stock, Err *err);
bool edit_remove_stock(Document *document, uint32_t stock, Err *err);

bool edit_add_rough(Document *document, uint32_t after, const Rough *rough, uint32_t *id, Err *err); /* 0: at the end */
bool edit_rough(Document *document, const Rough *rough, Err *err);                                   /* by its `id` */
bool edit_remove_rough(Document *document, uint32_t rough, Err *err);

/* A run of trim is named by its index in trim.runs; a new one goes in front of run `index` (their count: at the end).
 */
bool edit_add_trim_run(Document *document, int index, const TrimRun *run, Err *err);
bool edit_trim_run(Document *document, int index, const TrimRun *run, Err *err);
bool edit_remove_trim_run(Document *document, int index, Err *err);

/* As-built: a piece is hung, the record of it taken back, an edge measured (a later measure of the same edge replaces
 * it). */
bool edit_hang(Document *document, const HungPiece *piece, Err *err);
bool edit_cut(Document *document, const HungPieces *pieces, Err *err); /* all as one step */
bool edit_hang_cut(Document *document, int index, Err *err);           /* a piece that is cut hangs; its index */
bool edit_take_down(Document *document, int index, Err *err);          /* index into hung_pieces */
bool edit_measure(Document *document, const HungEdge *edge, Err *err);
bool edit_forget_measure(Document *document, int index, Err *err);

#endif
