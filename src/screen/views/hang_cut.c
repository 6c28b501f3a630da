#include "screen/views/hang_cut.h"

#include "screen/views/hang.h"
#include "trade/asbuilt.h"
#include "trade/say.h"

static bool in_scope(const Piece *piece, const Piece *shown, CutScope scope)
{
    switch (scope) {
    case CUT_THIS: return piece->number == shown->number;
    case CUT_THIS_BOARD: return piece->board == shown->board;
    case CUT_THIS_FACE: return piece->face == shown->face;
    }
    return false;
}

/* Records of the pieces to tick, in hanging order. */
static HungPieces to_tick(Arena *arena, App *app, const Piece *shown, CutScope scope)
{
    const Work *work = app_work(app);
    const Plan *plan = fill_plan(work->fill);
    HungPieces records = {0};
    for (int i = 0; i < plan->piece_count; i++) {
        const Piece *piece = &plan->pieces[i];
        if (piece->hung || !in_scope(piece, shown, scope))
            continue;
        HungPiece record = asbuilt_record(work->layout, piece);
        record.state = PIECE_CUT;
        *arena_push(arena, &records) = record;
    }
    return records;
}

static void take_back(App *app, const Piece *piece)
{
    const int index = hang_record_of(app, piece);
    Err err;
    if (index < 0)
        app_say(app, STYLE_CAUTION, "Piece %d has no record in the file; Ctrl-Z takes back the last step.",
                piece->number);
    else if (!edit_take_down(app->document, index, &err))
        app_tell(app, &err);
    else
        app_say(app, STYLE_ACCENT, "Piece %d counts as not cut.", piece->number);
}

void hang_cut(App *app, CutScope scope)
{
    Piece shown;
    if (!hang_final_piece(app, &shown))
        return;
    if (scope == CUT_THIS && shown.cut) {
        take_back(app, &shown);
        return;
    }
    Arena *arena = arena_new();
    const HungPieces records = to_tick(arena, app, &shown, scope);
    Err err;
    hang_know(app);
    if (records.count == 0)
        app_say(app, STYLE_DIM, "Nothing is left to cut there.");
    else if (!edit_cut(app->document, &records, &err))
        app_tell(app, &err);
    else
        app_say(app, STYLE_GOOD, "Ticked as cut: %s. They keep their board and place from now on.",
                say_count(arena, records.count, "piece", "pieces"));
    arena_free(arena);
}
