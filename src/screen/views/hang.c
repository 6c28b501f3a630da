#include "screen/views/hang.h"

#include "base/hash.h"
#include "base/panic.h"
#include "base/text.h"
#include "job/edge_mark.h"
#include "job/words.h"
#include "screen/forms/forms.h"
#include "trade/say.h"

#include <inttypes.h>
#include <stdlib.h>
#include <string.h>

static const View hang_view;

/* Of the layer on top. */
static Hang *hang_of(App *app)
{
    return layers_state(&app->layers, &hang_view);
}

static const Plan *plan_of(App *app)
{
    Work *work = app_work(app);
    return work->layout == NULL ? NULL : fill_plan(work->fill);
}

static int next_to_hang(const Plan *plan)
{
    for (int i = 0; i < plan->piece_count; i++)
        if (!piece_is_up(&plan->pieces[i]))
            return i;
    return -1;
}

const Piece *hang_piece(App *app, Hang *hang)
{
    const Plan *plan = plan_of(app);
    if (hang->version !=
        document_version(app->document)) { /* whatever plan there is now, its next piece is looked at */
        hang->version = document_version(app->document);
        hang->shown = -1;
        hang->top = 0;
    }
    if (plan == NULL)
        return NULL;
    int index = hang->shown >= 0 && hang->shown < plan->piece_count ? hang->shown : next_to_hang(plan);
    return index < 0 ? NULL : &plan->pieces[index];
}

/* ---- pieces ---- */

static bool same_piece(const Piece *a, const Piece *b)
{
    return a->face == b->face && a->course == b->course && a->left == b->left && a->right == b->right &&
           a->board == b->board && a->offset == b->offset;
}

/* Of every piece where it is cut and where it hangs; whether it hangs already does not matter. */
static uint64_t hash_of(const Layout *layout, const Plan *plan)
{
    Text text;
    text_init(&text);
    for (int i = 0; i < plan->piece_count; i++) {
        const Piece *piece = &plan->pieces[i];
        text_format(&text, "%d %" PRId64 " %" PRId64 " %" PRId64 " %d %" PRId64 "\n", piece->face,
                    layout->faces[piece->face].courses[piece->course].number, piece->left, piece->right, piece->board,
                    piece->offset);
    }
    uint64_t hash = hash_bytes(text.bytes, text.length);
    text_finish(&text);
    return hash;
}

/* What is planned otherwise is told from now on by this plan. */
static void know(App *app, Hang *hang)
{
    hang->knows = true;
    hang->known = hash_of(app_work(app)->layout, plan_of(app));
}

bool hang_replanned(App *app, Hang *hang)
{
    const Plan *plan = plan_of(app);
    if (plan == NULL || !app_work(app)->filled)
        return false;
    if (!hang->knows)
        know(app, hang);
    return hang->known != hash_of(app_work(app)->layout, plan);
}

/* False, and told, where the plan in sight was not the final one and the piece is another in that. */
static bool final_piece(App *app, Hang *hang, Piece *piece)
{
    const Piece *seen = hang_piece(app, hang);
    if (seen == NULL) {
        app_say(app, STYLE_DIM, "There is nothing left to hang.");
        return false;
    }
    *piece = *seen;
    Work *work = app_work(app);
    bool filled = work->filled;
    work_complete(work);
    if (app_work(app)->layout == NULL) {
        app_tell(app, &work->err);
        return false;
    }
    if (!hang->knows)
        know(app, hang);
    if (filled)
        return true;
    seen = hang_piece(app, hang);
    if (seen != NULL && same_piece(seen, piece))
        return true;
    app_say(app, STYLE_CAUTION,
            "The plan was not final yet; now it is, and this piece is another one. Look once more.");
    return false;
}

bool hang_final_piece(App *app, Piece *piece)
{
    return final_piece(app, hang_of(app), piece);
}

void hang_know(App *app)
{
    know(app, hang_of(app));
}

/* No two records of a course have anything in common. */
int hang_record_of(App *app, const Piece *piece)
{
    const Wall *wall = app_wall(app);
    const Layout *layout = app_work(app)->layout;
    const char *face = wall->faces.at[piece->face].name;
    const int64_t course = layout->faces[piece->face].courses[piece->course].number;
    for (int i = 0; i < wall->hung_pieces.count; i++) {
        const HungPiece *record = &wall->hung_pieces.at[i];
        if (strcmp(record->face, face) == 0 && record->course == course && record->board == piece->board &&
            record->left < piece->right && record->right > piece->left)
            return i;
    }
    return -1;
}

/* The piece, which is cut, hangs now. */
static void record_cut(App *app, const Piece *piece)
{
    const int index = hang_record_of(app, piece);
    Err err;
    know(app, hang_of(app));
    if (index < 0 || !edit_hang_cut(app->document, index, &err))
        app_say(app, STYLE_CAUTION, "Piece %d has no record in the file; take it back, then hang it.", piece->number);
    else
        app_say(app, STYLE_GOOD, "Hung: piece %d, board %d. Ctrl-Z takes it back.", piece->number, piece->board);
}

void hang_record(App *app)
{
    Hang *hang = hang_of(app);
    Piece piece;
    if (!final_piece(app, hang, &piece))
        return;
    if (piece_is_up(&piece)) {
        app_say(app, STYLE_DIM, "This piece hangs already.");
        return;
    }
    if (piece.cut) {
        record_cut(app, &piece);
        return;
    }
    HungPiece record = asbuilt_record(app_work(app)->layout, &piece);
    know(app, hang);
    Err err;
    if (!edit_hang(app->document, &record, &err)) {
        app_tell(app, &err);
        return;
    }
    app_say(app, STYLE_GOOD, "Hung: board %d in course %d. Backspace takes it back.", record.board, record.course);
}

void hang_take_down(App *app)
{
    int count = app_wall(app)->hung_pieces.count;
    HungPiece last = count > 0 ? app_wall(app)->hung_pieces.at[count - 1] : (HungPiece){.board = 0};
    const char *state = last.state == PIECE_CUT ? "cut" : "hung";
    Err err;
    if (count == 0)
        app_say(app, STYLE_DIM, "No piece is recorded as hung or cut.");
    else if (!edit_take_down(app->document, count - 1, &err))
        app_tell(app, &err);
    else
        app_say(app, STYLE_ACCENT, "Taken back: board %d in course %d counts as not %s.", last.board, last.course,
                state);
}

void hang_look(App *app, int by)
{
    Hang *hang = hang_of(app);
    const Plan *plan = plan_of(app);
    const Piece *piece = hang_piece(app, hang);
    if (plan == NULL || plan->piece_count == 0)
        return;
    int index = piece == NULL ? plan->piece_count - 1 : (int)(piece - plan->pieces) + by;
    if (index < 0 || index >= plan->piece_count) {
        app_say(app, STYLE_DIM, index < 0 ? "This is the first piece." : "This is the last piece.");
        return;
    }
    hang->shown = index == next_to_hang(plan) ? -1 : index;
    hang->top = 0;
}

/* ---- boards ---- */

/* The board becomes a line of its own that is gone from now on: all other boards keep their numbers, which are written
 * on them. */
static Wall *without_board(Arena *arena, const Wall *before, int board)
{
    Wall *wall = wall_copy(arena, before);
    Stocks stock = {0};
    for (int i = 0; i < wall->stock.count; i++) {
        Stock line = wall->stock.at[i];
        int place = board - wall_stock_first(wall, i);
        if (place < 0 || place >= line.count) {
            *arena_push(arena, &stock) = line;
            continue;
        }
        Stock spoiled = line, behind = line;
        behind.count = line.count - place - 1;
        line.count = place;
        spoiled.count = 1;
        spoiled.gone_given = true;
        spoiled.gone = hung_count(wall);
        if (line.count > 0) {
            *arena_push(arena, &stock) = line;
            spoiled.id = wall->next_id++;
        }
        *arena_push(arena, &stock) = spoiled;
        if (behind.count > 0) {
            behind.id = wall->next_id++;
            *arena_push(arena, &stock) = behind;
        }
    }
    wall->stock = stock;
    return wall;
}

void hang_board_out(App *app)
{
    Hang *hang = hang_of(app);
    Piece piece;
    if (!final_piece(app, hang, &piece))
        return;
    if (piece.hung) {
        app_say(app, STYLE_CAUTION,
                "This piece hangs or is cut; take it back first, or look at one that does not hang.");
        return;
    }
    Arena *arena = arena_new();
    Err err;
    const char *name = words(arena, "take board %d off the pile", piece.board);
    const Wall *wall = without_board(arena, app_wall(app), piece.board);
    if (!edit_whole(app->document, wall, name, &err))
        app_tell(app, &err);
    else
        app_say(app, STYLE_ACCENT,
                "Board %d is out. As few pieces as possible change; other boards and pieces keep their numbers.",
                piece.board);
    arena_free(arena);
}

/* ---- edges ---- */

static int face_of(App *app, const Hang *hang)
{
    return wall_face_index(app_wall(app), hang->face);
}

static const HungEdge *recorded_edge(App *app, const Hang *hang, int *index)
{
    const Wall *wall = app_wall(app);
    const char *face = wall->faces.at[face_of(app, hang)].name;
    for (int i = 0; i < wall->hung_edges.count; i++) {
        const HungEdge *edge = &wall->hung_edges.at[i];
        if (edge->course == hang->course && edge->is_top == hang->is_top && strcmp(edge->face, face) == 0) {
            *index = i;
            return edge;
        }
    }
    return NULL;
}

Length hang_beyond(App *app, const Hang *hang)
{
    const Layout *layout = app_work(app)->layout;
    const int face = face_of(app, hang);
    const int index = layout_course_index(&layout->faces[face], hang->course);
    Length own;
    if (!hang->is_top || index < 0 || !edge_mark_own(layout, face, &layout->faces[face].courses[index], &own))
        return 0;
    return layout->wall->planks.lap;
}

static void set_edge(App *app, Hang *hang, int64_t course, bool is_top)
{
    hang->course = course;
    hang->is_top = is_top;
    int index;
    const HungEdge *edge = recorded_edge(app, hang, &index);
    Units units = app_wall(app)->units;
    hang->field = (Field){.kind = FIELD_LENGTH, .label = "edge", .path = "", .empty = "not measured"};
    if (edge != NULL)
        field_set_length(&hang->field, is_top ? edge->height + hang_beyond(app, hang) : -edge->height, units);
    else
        field_set(&hang->field, "", units);
}

/* A course is up where something of it hangs on the face and nothing of it is left to hang: before that, its measured
 * edge would stretch the planks still to come. */
static bool is_up(App *app, int face, int64_t course)
{
    const Plan *plan = plan_of(app);
    int index = layout_course_index(&app_work(app)->layout->faces[face], course);
    bool any = false;
    for (int i = 0; i < plan->piece_count; i++) {
        const Piece *piece = &plan->pieces[i];
        if (piece->face != face || piece->course != index)
            continue;
        if (!piece_is_up(piece))
            return false;
        any = true;
    }
    return any;
}

/* The course before the piece looked at, in hanging order, that is up; NULL where none is. */
static const Piece *last_up(App *app, const Piece *from)
{
    const Plan *plan = plan_of(app);
    int index = from == NULL ? plan->piece_count - 1 : (int)(from - plan->pieces);
    for (; index >= 0; index--) {
        const Piece *piece = &plan->pieces[index];
        if (piece_is_up(piece) &&
            is_up(app, piece->face, app_work(app)->layout->faces[piece->face].courses[piece->course].number))
            return piece;
    }
    return NULL;
}

/* Begins with the outer edge of the course that was hung last before the piece looked at. */
void hang_measure(App *app)
{
    Hang *hang = hang_of(app);
    const Plan *plan = plan_of(app);
    if (plan == NULL || plan->piece_count == 0)
        return;
    const Piece *piece = hang_piece(app, hang);
    const Piece *last = last_up(app, piece);
    if (last == NULL) {
        app_say(app, STYLE_CAUTION, "No course is all up yet: an edge is measured when its whole course hangs.");
        return;
    }
    hang->face = app_wall(app)->faces.at[last->face].id;
    int64_t course = app_work(app)->layout->faces[last->face].courses[last->course].number;
    bool downward = course < 0;
    if (course == 0 && piece != NULL && piece->face == last->face)
        downward = app_work(app)->layout->faces[piece->face].courses[piece->course].number < 0;
    set_edge(app, hang, course, !downward || wall_hangs_upward(app_wall(app)));
    hang->measuring = true;
}

/* The next course upward or downward that is up; both edges of course 0 lie on the way. */
static void other_edge(App *app, Hang *hang, int by)
{
    int64_t course = hang->course;
    bool is_top = hang->is_top;
    const bool upward = wall_hangs_upward(app_wall(app)); /* then every edge is a top */
    if (course == 0 && is_top == (by < 0) && !upward)
        is_top = !is_top;
    else
        course += by;
    if (course != 0)
        is_top = course > 0 || upward;
    if (!is_up(app, face_of(app, hang), course))
        app_say(app, STYLE_DIM, "The course beyond is not all up yet.");
    else
        set_edge(app, hang, course, is_top);
}

static void take_edge(App *app, Hang *hang)
{
    const Wall *wall = app_wall(app);
    Err err;
    int index;
    field_judge(&hang->field, wall->units);
    if (hang->field.bad) {
        app_say(app, STYLE_FAULT, "%s", hang->field.says);
        return;
    }
    const HungEdge *there = recorded_edge(app, hang, &index);
    hang->measuring = false;
    if (field_empty(&hang->field)) {
        if (there == NULL)
            return;
        if (!edit_forget_measure(app->document, index, &err))
            app_tell(app, &err);
        else
            app_say(app, STYLE_ACCENT, "The measured edge is forgotten.");
        return;
    }
    Length typed = field_length(&hang->field, wall->units);
    HungEdge edge = {.face = wall->faces.at[face_of(app, hang)].name,
                     .course = (int)hang->course,
                     .is_top = hang->is_top,
                     .height = hang->is_top ? typed - hang_beyond(app, hang) : -typed};
    if (!edit_measure(app->document, &edge, &err)) {
        app_tell(app, &err);
        hang->measuring = true;
        return;
    }
    app_say(app, STYLE_GOOD, "Recorded. The rest follows from it.");
}

/* ---- the view ---- */

static unsigned hang_place(const App *app, const void *state)
{
    (void)app;
    return ((const Hang *)state)->measuring ? PLACE_QUESTION : PLACE_HANG;
}

static bool hang_key(App *app, void *state, Key key)
{
    Hang *hang = state;
    if (hang->measuring)
        return field_key(&hang->field, key, app_wall(app)->units);
    if (key == PRESS_PAGE_DOWN || key == PRESS_PAGE_UP) {
        hang->top += key == PRESS_PAGE_DOWN ? 4 : hang->top > 4 ? -4 : -hang->top;
        return true;
    }
    if (key == PRESS_HOME) {
        hang->shown = -1;
        hang->top = 0;
        return true;
    }
    return false;
}

/* Through the edges that can be measured: upward the one before. */
static void hang_step(App *app, void *state, int by)
{
    Hang *hang = state;
    if (hang->measuring)
        other_edge(app, hang, -by);
}

static void hang_choose(App *app, void *state)
{
    Hang *hang = state;
    if (hang->measuring)
        take_edge(app, hang);
}

static bool hang_back(App *app, void *state)
{
    (void)app;
    Hang *hang = state;
    bool leave = !hang->measuring;
    hang->measuring = false;
    return leave;
}

static void hang_paste(App *app, void *state, const char *text)
{
    Hang *hang = state;
    if (!hang->measuring || !field_paste(&hang->field, text, app_wall(app)->units))
        app_say(app, STYLE_CAUTION, "What was pasted does not belong here.");
}

static const View hang_view = {
    .place = hang_place,
    .draw = hang_draw,
    .key = hang_key,
    .step = hang_step,
    .choose = hang_choose,
    .paste = hang_paste,
    .back = hang_back,
    .finish = free,
};

void hang_open(App *app)
{
    Hang *hang = calloc(1, sizeof *hang);
    if (hang == NULL)
        panic_no_memory();
    hang->shown = -1;
    layers_push(&app->layers, &hang_view, hang);
}
