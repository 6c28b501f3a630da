#include "wall/edit.h"

#include "wall/change.h"

#include <stdio.h>
#include <string.h>

/*
 * Changes of the boards at hand and of what hangs already. Boards are known by their number, which is the place of
 * their line and their place in it; hung pieces name it, so it is carried along wherever lines come, go or change their
 * count.
 */

static int stock_index(const Wall *wall, uint32_t id)
{
    for (int i = 0; i < wall->stock.count; i++)
        if (wall->stock.at[i].id == id)
            return i;
    return -1;
}

/* ---- stock ---- */

/* The number that board `number` has now; false where it would be gone. */
static bool renumber(const Wall *before, const Wall *wall, int *number, const char *what, Err *err)
{
    const Stock *line = wall_board(before, *number);
    if (line == NULL)
        return true; /* no board there is; told elsewhere */
    const int place = *number - wall_stock_first(before, (int)(line - before->stock.at));
    const int index = stock_index(wall, line->id);
    if (index < 0 || place >= wall->stock.at[index].count) {
        char text[160];
        snprintf(text, sizeof text, "a piece of board %d %s already; take its record out first", *number, what);
        return document_refuse(err, "hung", text);
    }
    *number = wall_stock_first(wall, index) + place;
    return true;
}

/* Boards are numbered through the lines, so that a change of the lines gives those behind it other numbers: each record
 * keeps its board. False where there is a record of a board that would be gone. */
static bool renumber_hung(const Wall *before, Wall *wall, Err *err)
{
    for (int i = 0; i < wall->hung_pieces.count; i++) {
        HungPiece *piece = &wall->hung_pieces.at[i];
        const char *what = piece->state == PIECE_CUT ? "is cut" : "hangs on the wall";
        if (!renumber(before, wall, &piece->board, what, err))
            return false;
    }
    for (int i = 0; i < wall->hung_losses.count; i++)
        if (!renumber(before, wall, &wall->hung_losses.at[i].board, "was cut", err))
            return false;
    return true;
}

bool edit_add_stock(Document *document, uint32_t after, const Stock *added, uint32_t *id, Err *err)
{
    Wall *wall = document_begin(document);
    const int index = after == 0 ? wall->stock.count : stock_index(wall, after) + 1;
    if (after != 0 && index == 0)
        return document_refuse(err, "", "there is no such line of stock any more; choose one that is there");
    Stock stock = *added;
    stock.id = wall->next_id++;
    PUT_IN(document, &wall->stock, index, stock);
    const bool done = renumber_hung(document_wall(document), wall, err) &&
                      document_step(document, err, "add %d board%s", stock.count, stock.count == 1 ? "" : "s");
    if (done && id != NULL)
        *id = stock.id;
    return done;
}

bool edit_stock(Document *document, const Stock *changed, Err *err)
{
    Wall *wall = document_begin(document);
    const int index = stock_index(wall, changed->id);
    if (index < 0)
        return document_refuse(err, "", "there is no such line of stock any more; choose one that is there");
    wall->stock.at[index] = *changed;
    return renumber_hung(document_wall(document), wall, err) &&
           document_step(document, err, "change line %d of stock", index + 1);
}

bool edit_remove_stock(Document *document, uint32_t id, Err *err)
{
    Wall *wall = document_begin(document);
    const int index = stock_index(wall, id);
    if (index < 0)
        return document_refuse(err, "", "there is no such line of stock any more; choose one that is there");
    const int count = wall->stock.at[index].count;
    TAKE_OUT(&wall->stock, index);
    return renumber_hung(document_wall(document), wall, err) &&
           document_step(document, err, "remove %d board%s", count, count == 1 ? "" : "s");
}

/* ---- as built ---- */

bool edit_hang(Document *document, const HungPiece *piece, Err *err)
{
    Wall *wall = document_begin(document);
    HungPiece added = *piece;
    added.place = hung_next_place(wall);
    PUT_IN(document, &wall->hung_pieces, wall->hung_pieces.count, added);
    return document_step(document, err, "hang a piece of board %d in course %d", piece->board, piece->course);
}

bool edit_cut(Document *document, const HungPieces *pieces, Err *err)
{
    Wall *wall = document_begin(document);
    for (int i = 0; i < pieces->count; i++) {
        HungPiece added = pieces->at[i];
        added.state = PIECE_CUT;
        added.place = hung_next_place(wall);
        PUT_IN(document, &wall->hung_pieces, wall->hung_pieces.count, added);
    }
    return document_step(document, err, "tick %d piece%s as cut", pieces->count, pieces->count == 1 ? "" : "s");
}

bool edit_hang_cut(Document *document, int index, Err *err)
{
    Wall *wall = document_begin(document);
    if (index < 0 || index >= wall->hung_pieces.count)
        return document_refuse(err, "hung", "there is no such record any more; choose one that is there");
    HungPiece *piece = &wall->hung_pieces.at[index];
    piece->state = PIECE_HUNG;
    return document_step(document, err, "hang a piece of board %d in course %d", piece->board, piece->course);
}

/* The record at `place` is taken out: what came after it comes after one record less. */
static void count_down(Wall *wall, int place)
{
    int before = 0;
    for (int i = 0; i < wall->hung_pieces.count; i++)
        before += wall->hung_pieces.at[i].place < place;
    for (int i = 0; i < wall->hung_losses.count; i++)
        before += wall->hung_losses.at[i].place < place;
    for (int i = 0; i < wall->hung_edges.count; i++)
        before += wall->hung_edges.at[i].place < place;
    for (int i = 0; i < wall->stock.count; i++) {
        Stock *stock = &wall->stock.at[i];
        if (stock->gone_given && stock->gone > before)
            stock->gone--;
        if (stock->found_given && stock->found > before)
            stock->found--;
    }
}

/* Where a piece lies on its board: as recorded, else at `square`, or a kerf behind the piece recorded before it. */
static Length offset_of(const Wall *wall, int index)
{
    const HungPieces *pieces = &wall->hung_pieces;
    const HungPiece *piece = &pieces->at[index];
    Length offset = wall->saw.square;
    for (int i = 0; i <= index; i++) {
        if (pieces->at[i].board != piece->board)
            continue;
        if (pieces->at[i].offset_given)
            offset = pieces->at[i].offset;
        if (i < index)
            offset += pieces->at[i].right - pieces->at[i].left + wall->saw.kerf;
    }
    return offset;
}

bool edit_take_down(Document *document, int index, Err *err)
{
    Wall *wall = document_begin(document);
    HungPieces *pieces = &wall->hung_pieces;
    if (index < 0 || index >= pieces->count)
        return document_refuse(err, "hung", "there is no such record any more; choose one that is there");
    const HungPiece piece = pieces->at[index];
    /* The next of its board was counted on from it: it stays where it was cut. */
    for (int i = index + 1; i < pieces->count; i++)
        if (pieces->at[i].board == piece.board) {
            if (!pieces->at[i].offset_given) {
                pieces->at[i].offset = offset_of(wall, i);
                pieces->at[i].offset_given = true;
            }
            break;
        }
    if (piece.plan == PLAN_ANEW && index + 1 < pieces->count)
        pieces->at[index + 1].plan = PLAN_ANEW; /* it was hung from the same plan */
    count_down(wall, piece.place);
    TAKE_OUT(pieces, index);
    return document_step(document, err, "take down a piece of board %d in course %d", piece.board, piece.course);
}

bool edit_measure(Document *document, const HungEdge *edge, Err *err)
{
    Wall *wall = document_begin(document);
    bool replaced = false;
    for (int i = 0; i < wall->hung_edges.count; i++) {
        HungEdge *there = &wall->hung_edges.at[i];
        if (edge->face != NULL && strcmp(there->face, edge->face) == 0 && there->course == edge->course &&
            there->is_top == edge->is_top) {
            there->height = edge->height;
            replaced = true;
        }
    }
    if (!replaced) {
        HungEdge added = *edge;
        added.place = hung_next_place(wall);
        PUT_IN(document, &wall->hung_edges, wall->hung_edges.count, added);
    }
    return document_step(document, err, "measure the %s of course %d", edge->is_top ? "top" : "bottom", edge->course);
}

bool edit_forget_measure(Document *document, int index, Err *err)
{
    Wall *wall = document_begin(document);
    if (index < 0 || index >= wall->hung_edges.count)
        return document_refuse(err, "hung", "there is no such record any more; choose one that is there");
    const HungEdge edge = wall->hung_edges.at[index];
    count_down(wall, edge.place);
    TAKE_OUT(&wall->hung_edges, index);
    return document_step(document, err, "forget the measured %s of course %d", edge.is_top ? "top" : "bottom",
                         edge.course);
}
