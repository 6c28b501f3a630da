#include "sheet/sheets/sheets.h"

#include <inttypes.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "fill/trim.h"
#include "job/measures.h"
#include "job/words.h"
#include "sheet/sheets/details.h"
#include "sheet/sheets/saw_angles.h"
#include "trade/trim_runs.h"
#include "wall/straight.h"

/*
 * The batch sheet: the pieces of the cut sheet in the order of the saw's settings. First the crosscuts, boards of one
 * length together, the first cut of each before the second, equal lengths on one line; then rips by the fence; then
 * angles:
 *
 *     Boards 42 long, first cut: 3 pieces
 *     [ ]   25 3/8  36 of 71                  [ ]   16 3/16  2 of 77, 11 of 78
 *
 * What hangs or is cut already is not on it.
 */
enum { HALF = 39, LENGTH = 3, LENGTH_WIDTH = 11, LIST = 16, LIST_WIDTH = 21, TEXT = 4 };

enum {
    FIELD_STOCK_LENGTH,
    FIELD_CUT,
    FIELD_LENGTH,
    FIELD_PIECE,
    FIELD_BOARD,
    FIELD_LABEL,
    FIELD_FROM,
    FIELD_KEPT_OVER,
    FIELD_RIP,
    FIELD_FENCE,
    FIELD_RIP_WORDS,
    FIELD_LEFT_END,
    FIELD_RIGHT_END,
    FIELD_END_WORDS,
    FIELD_CUTOUTS,
    FIELD_KIND, /* plank or trim */
    FIELD_NAME, /* of trim */
    FIELD_COUNT
};
static const char *const field_names[FIELD_COUNT] = {
    "board length",     "cut",  "length", "piece",        "board",    "label",     "from",
    "kept over to fit", "rip",  "fence",  "rip in words", "left end", "right end", "slanted ends",
    "cutouts",          "kind", "name"};

/* One piece that is still to be cut. */
typedef struct BatchCut {
    const Piece *piece; /* NULL: trim */
    const TrimCut *trim;
    int number;
    Length stock_length;
    int turn;      /* which cut of its board it is, from 1 */
    bool off;      /* it does not follow the cut before: begin at its own place */
    Length length; /* to set the stop to, what is kept over counted; a mark */
    Length fence;  /* to set the fence to; 0 for a taper or a scribe */
    PieceDetails details;
    SawAngles angles;
} BatchCut;

typedef struct BatchSheet {
    Sheet *sheet;
    const Job *job;
    const Wall *wall;
    Arena *arena;
    BatchCut *cuts; /* in the order of the crosscuts */
    int count;
    SheetSection *section;
} BatchSheet;

/* ---- what is to be cut ---- */

/* The width that the plank keeps from end to end, as a mark; 0 where it does not. */
static Length fence_of(const Wall *wall, const Plank *plank)
{
    for (int i = 1; i < plank->width_count; i++)
        if (!marks_alike(wall, plank->widths[0].width, plank->widths[i].width))
            return 0;
    return length_round(plank->widths[0].width, wall->round);
}

static void push_piece(BatchSheet *batch, const Piece *piece, int turn, bool off)
{
    const Wall *wall = batch->wall;
    BatchCut *cut = &batch->cuts[batch->count++];
    *cut = (BatchCut){.piece = piece, .number = piece->number, .turn = turn, .off = off};
    cut->stock_length = wall_board(wall, piece->board)->length;
    cut->details = details_of(batch->arena, batch->job, piece);
    cut->length = length_round(cut->details.length + piece->closer, wall->round);
    cut->fence = fence_of(wall, &cut->details.plank);
    cut->angles = saw_angles(batch->arena, batch->job, piece, &cut->details.plank);
}

static void take_board(BatchSheet *batch, int board)
{
    const Plan *plan = batch->job->plan;
    const BoardUse *use = &plan->boards[board - 1];
    Length next = batch->wall->saw.square, kerf = 0;
    for (int i = 0, turn = 0; i < use->count; i++) {
        const Piece *piece = &plan->pieces[plan->by_board[use->first + i]];
        const Length blade = i == 0 ? 0 : kerf > piece->left_kerf ? kerf : piece->left_kerf;
        if (!piece->hung)
            push_piece(batch, piece, ++turn, piece->offset != next + blade);
        next = piece->offset + piece->right - piece->left + piece->closer;
        kerf = piece->right_kerf;
    }
}

static int descending(Length x, Length y)
{
    return (x < y) - (x > y);
}

static int by_setting(const void *a, const void *b)
{
    const BatchCut *x = a, *y = b;
    if (x->stock_length != y->stock_length)
        return descending(x->stock_length, y->stock_length);
    if (x->turn != y->turn)
        return x->turn - y->turn;
    if (x->length != y->length)
        return descending(x->length, y->length);
    return x->number - y->number;
}

static void sort_cuts(BatchSheet *batch)
{
    if (batch->count > 1)
        qsort(batch->cuts, (size_t)batch->count, sizeof *batch->cuts, by_setting);
}

/* ---- crosscuts ---- */

static const char *turn_word(Arena *arena, int turn)
{
    static const char *const named[] = {"first", "second", "third", "fourth"};
    return turn <= 4 ? named[turn - 1] : words(arena, "%dth", turn);
}

/* "12 of 57 (A2) from 34 1/2, closer". */
static const char *cut_words(const BatchSheet *batch, const BatchCut *cut)
{
    Arena *arena = batch->arena;
    if (cut->trim != NULL)
        return words(arena, "%d %s, of %d", cut->number, words_name(arena, cut->trim->name), cut->trim->board);
    const char *angle = cut->angles.left != NULL || cut->angles.right != NULL ? "*" : "";
    const char *from = cut->off ? words(arena, " from %s", words_length(arena, batch->wall, cut->piece->offset)) : "";
    return words(arena, "%d%s of %s%s%s", cut->number, angle, words_board(arena, batch->wall, cut->piece->board), from,
                 cut->piece->closer > 0 ? " (closer)" : "");
}

static bool one_heading(const BatchCut *x, const BatchCut *y)
{
    return x->stock_length == y->stock_length && x->turn == y->turn;
}

/* How many from `first` on stand together: under one heading, or on one line. */
static int count_together(const BatchSheet *batch, int first, bool line)
{
    int count = 1;
    while (first + count < batch->count && one_heading(&batch->cuts[first], &batch->cuts[first + count]) &&
           (!line || batch->cuts[first].length == batch->cuts[first + count].length))
        count++;
    return count;
}

static void add_setting(BatchSheet *batch, SheetLine *line, int at, int first, int count)
{
    const char *list = "";
    for (int i = 0; i < count; i++)
        list = words(batch->arena, "%s%s%s", list, i > 0 ? "; " : "", cut_words(batch, &batch->cuts[first + i]));
    sheet_tick(batch->sheet, line, at, false);
    sheet_cell(batch->sheet, line, at + LENGTH, LENGTH_WIDTH, ALIGN_RIGHT, WEIGHT_STRONG,
               words_length(batch->arena, batch->wall, batch->cuts[first].length));
    sheet_cell(batch->sheet, line, at + LIST, LIST_WIDTH, ALIGN_LEFT, WEIGHT_TEXT, list);
}

static void add_settings(BatchSheet *batch, int first, int count)
{
    SheetLine *line = NULL;
    bool left = true;
    for (int i = first, together; i < first + count; i += together, left = !left) {
        together = count_together(batch, i, true);
        if (left)
            line = sheet_line(batch->sheet, &sheet_group(batch->sheet, batch->section)->lines);
        add_setting(batch, line, left ? 0 : HALF, i, together);
    }
}

static void add_crosscuts(BatchSheet *batch)
{
    Arena *arena = batch->arena;
    for (int first = 0, count; first < batch->count; first += count) {
        const BatchCut *cut = &batch->cuts[first];
        count = count_together(batch, first, false);
        SheetGroup *group = sheet_group(batch->sheet, batch->section);
        group->with_next = true;
        SheetLine *line = sheet_line(batch->sheet, &group->lines);
        line->rule = true;
        sheet_cell(batch->sheet, line, 0, SHEET_COLUMNS, ALIGN_LEFT, WEIGHT_STRONG,
                   words(arena, "%s %s long, %s cut: %s", cut->trim != NULL ? "Trim boards" : "Boards",
                         words_length(arena, batch->wall, cut->stock_length), turn_word(arena, cut->turn),
                         words_count(arena, count, "piece", "pieces")));
        add_settings(batch, first, count);
    }
}

/* ---- rips and angles ---- */

/* A heading and, under it, pieces in hanging order. */
static void add_list(BatchSheet *batch, const char *head, const char *list)
{
    SheetLines *lines = &sheet_group(batch->sheet, batch->section)->lines;
    SheetLine *line = sheet_line(batch->sheet, lines);
    sheet_tick(batch->sheet, line, 0, false);
    sheet_cell(batch->sheet, line, TEXT, SHEET_COLUMNS - TEXT, ALIGN_LEFT, WEIGHT_STRONG, head);
    sheet_words(batch->sheet, lines, TEXT, WEIGHT_TEXT, list);
}

static void begin_part(BatchSheet *batch, const char *head)
{
    batch->section = sheet_section(batch->sheet, "All boards", false);
    SheetLine *line = sheet_line(batch->sheet, &batch->section->heads);
    line->rule = true;
    sheet_cell(batch->sheet, line, 0, SHEET_COLUMNS, ALIGN_LEFT, WEIGHT_WORDS, head);
}

static bool is_full(const BatchSheet *batch, const BatchCut *cut)
{
    return measures_full(details_course(batch->job, cut->piece), &cut->details.plank);
}

static int by_fence(const void *a, const void *b)
{
    const BatchCut *x = a, *y = b;
    return x->fence != y->fence ? descending(x->fence, y->fence) : x->number - y->number;
}

/* The pieces of one fence setting; those of the only full width are counted, not listed. */
static void add_fence(BatchSheet *batch, const BatchCut *cuts, int count)
{
    Arena *arena = batch->arena;
    const char *list = "";
    int full = 0, listed = 0;
    for (int i = 0; i < count; i++) {
        if (is_full(batch, &cuts[i]) && batch->wall->planks.widths.count == 1)
            full++;
        else
            list = words(arena, "%s%s%d", list, listed++ > 0 ? ", " : "", cuts[i].number);
    }
    const char *fence = words_length_unit(arena, batch->wall, cuts->fence);
    if (listed > 0)
        add_list(batch, words(arena, "Fence at %s: %s", fence, words_count(arena, listed, "piece", "pieces")),
                 words(arena, "%s %s.", listed == 1 ? "Piece" : "Pieces", list));
    if (full > 0)
        sheet_words(batch->sheet, &sheet_group(batch->sheet, batch->section)->lines, TEXT, WEIGHT_TEXT,
                    words(arena, "%s %s the full width, %s.", words_count(arena, full, "piece", "pieces"),
                          full == 1 ? "has" : "have", fence));
}

static void add_rips(BatchSheet *batch)
{
    BatchCut *cuts = arena_array(batch->arena, BatchCut, batch->count);
    memcpy(cuts, batch->cuts, (size_t)batch->count * sizeof *cuts);
    qsort(cuts, (size_t)batch->count, sizeof *cuts, by_fence);
    begin_part(batch, "Rips, by the fence");
    sheet_words(batch->sheet, &sheet_group(batch->sheet, batch->section)->lines, 0, WEIGHT_TEXT,
                "Where the saw's manual says that a piece is too short to rip, rip that stretch of its board first, "
                "then cut the piece off.");
    int first = 0;
    for (int count; first < batch->count && cuts[first].fence > 0; first += count) {
        for (count = 1; first + count < batch->count && cuts[first + count].fence == cuts[first].fence;)
            count++;
        add_fence(batch, &cuts[first], count);
    }
    if (first == batch->count)
        return;
    begin_part(batch, "Tapers and scribes, each by its own line");
    for (; first < batch->count; first++)
        add_list(batch, words(batch->arena, "Piece %d", cuts[first].number), cuts[first].details.rip);
}

/* Every angle once, with the ends that are cut at it, in the order in which they hang. */
static void add_angles(BatchSheet *batch)
{
    SawSettings settings = {0};
    for (int i = 0; i < batch->count; i++)
        for (int right = 0; right <= 1; right++)
            saw_settings_add(batch->arena, &settings, batch->cuts[i].number, right == 1,
                             right == 1 ? batch->cuts[i].angles.right : batch->cuts[i].angles.left);
    if (settings.count == 0)
        return;
    begin_part(batch, "Saw angles");
    for (int i = 0; i < settings.count; i++)
        add_list(batch, words_capital(batch->arena, settings.at[i].angle),
                 saw_setting_ends(batch->arena, &settings.at[i]));
}

static void add_cutouts(BatchSheet *batch)
{
    int *numbers = arena_array(batch->arena, int, batch->count);
    int count = 0;
    for (int i = 0; i < batch->count; i++)
        if (batch->cuts[i].details.cuts[0] != '\0')
            numbers[count++] = batch->cuts[i].number;
    if (count == 0)
        return;
    begin_part(batch, "Cutouts");
    add_list(batch, words_count(batch->arena, count, "piece", "pieces"),
             words(batch->arena, "%s. The cut sheet gives the measures.",
                   saw_number_list(batch->arena, count == 1 ? "Piece" : "Pieces", numbers, count)));
}

/* ---- the data ---- */

static void record_cut(BatchSheet *batch, const BatchCut *cut)
{
    Arena *arena = batch->arena;
    const Wall *wall = batch->wall;
    const char **field = sheet_record(batch->sheet)->at;
    field[FIELD_STOCK_LENGTH] = words_decimal(arena, wall, cut->stock_length);
    field[FIELD_CUT] = words(arena, "%d", cut->turn);
    field[FIELD_LENGTH] = words_decimal(arena, wall, cut->length);
    field[FIELD_PIECE] = words(arena, "%d", cut->number);
    field[FIELD_KIND] = cut->trim != NULL ? "trim" : "plank";
    if (cut->trim != NULL) {
        field[FIELD_BOARD] = words(arena, "%d", cut->trim->board);
        field[FIELD_NAME] = cut->trim->name;
        return;
    }
    field[FIELD_BOARD] = words(arena, "%d", cut->piece->board);
    field[FIELD_LABEL] = wall_board(wall, cut->piece->board)->label;
    field[FIELD_FROM] = words_decimal(arena, wall, cut->piece->offset);
    field[FIELD_KEPT_OVER] = words_decimal(arena, wall, cut->piece->closer);
    field[FIELD_RIP] = words_rip_shape(cut->details.plank.shape);
    field[FIELD_FENCE] = cut->fence > 0 ? words_decimal(arena, wall, cut->fence) : "";
    field[FIELD_RIP_WORDS] = cut->details.rip;
    field[FIELD_LEFT_END] = cut->angles.left == NULL ? "" : cut->angles.left;
    field[FIELD_RIGHT_END] = cut->angles.right == NULL ? "" : cut->angles.right;
    field[FIELD_END_WORDS] = cut->details.ends;
    field[FIELD_CUTOUTS] = cut->details.cuts;
}

/* ---- the whole ---- */

static void add_introduction(BatchSheet *batch)
{
    Arena *arena = batch->arena;
    SheetLines *lines = &sheet_group(batch->sheet, batch->section)->lines;
    const int cut = batch->job->plan->piece_count - batch->count;
    sheet_words(batch->sheet, lines, 0, WEIGHT_STRONG,
                words(arena, "%s to cut%s.", words_count(arena, batch->count, "piece", "pieces"),
                      cut == 0 ? "" : words(arena, "; %d more hang or are cut, and are not on this sheet", cut)));
    sheet_words(batch->sheet, lines, 0, WEIGHT_TEXT,
                "Set the stop block once for each length and cut all of its pieces: \"36 of 71\" is piece 36, from "
                "board 71. Square the labeled end first. The first cut of a board is the one next to that end, the "
                "second follows it. \"From\": begin there, measured from the labeled end.");
    sheet_words(batch->sheet, lines, 0, WEIGHT_TEXT,
                "* An end is cut at an angle, see Saw angles; the length is to the long points.");
    for (int i = 0; i < batch->count; i++)
        if (batch->cuts[i].piece->closer > 0) {
            sheet_words(batch->sheet, lines, 0, WEIGHT_TEXT,
                        words(arena, "(closer): cut to fit at the wall; its length here holds %s to spare.",
                              words_length_unit(arena, batch->wall, batch->wall->joints.closer)));
            break;
        }
    sheet_words(batch->sheet, lines, 0, WEIGHT_TEXT, SHEET_WAY_ROUND);
    sheet_words(batch->sheet, lines, 0, WEIGHT_TEXT,
                "Leave the offcut free: never hold it between stop and blade (common practice). The saw's manual says "
                "how to use a stop and a fence.");
}

static void add_trim(BatchSheet *batch)
{
    if (!batch->wall->trim.given)
        return;
    TrimPieces pieces = trim_pieces(batch->arena, batch->job->layout);
    const TrimPlan *trim = trim_plan(batch->arena, batch->wall, &pieces);
    if (trim->piece_count == 0)
        return;
    batch->cuts = arena_array(batch->arena, BatchCut, trim->piece_count);
    batch->count = 0;
    for (int i = 0; i < trim->board_count; i++)
        for (int k = 0; k < trim->boards[i].count; k++) {
            const TrimCut *cut = &trim->pieces[trim->by_board[trim->boards[i].first + k]];
            batch->cuts[batch->count++] = (BatchCut){.trim = cut,
                                                     .number = cut->number,
                                                     .stock_length = trim->boards[i].length,
                                                     .turn = k + 1,
                                                     .length = length_round(cut->length, batch->wall->round)};
        }
    sort_cuts(batch);
    begin_part(batch, "Trim");
    add_crosscuts(batch);
    for (int i = 0; i < batch->count; i++)
        record_cut(batch, &batch->cuts[i]);
}

Sheet *sheet_batch(Arena *arena, const Job *job, const char *date)
{
    BatchSheet batch = {.job = job, .wall = job->wall, .arena = arena};
    batch.sheet = sheet_of_job(arena, job, "Batch sheet", date);
    sheet_records(batch.sheet, field_names, FIELD_COUNT);
    batch.cuts = arena_array(arena, BatchCut, job->plan->piece_count);
    for (int board = 1; board <= job->plan->board_count; board++)
        take_board(&batch, board);
    sort_cuts(&batch);
    batch.section = sheet_section(batch.sheet, "All boards", false);
    add_introduction(&batch);
    if (batch.count > 0) {
        begin_part(&batch, "Crosscuts, with a stop block");
        add_crosscuts(&batch);
        add_rips(&batch);
        add_angles(&batch);
        add_cutouts(&batch);
    }
    for (int i = 0; i < batch.count; i++)
        record_cut(&batch, &batch.cuts[i]);
    add_trim(&batch);
    return batch.sheet;
}
