#include "sheet/sheets/sheets.h"

#include <inttypes.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "fill/trim.h"
#include "job/measures.h"
#include "job/words.h"
#include "sheet/sheets/details.h"
#include "trade/scribe.h"
#include "trade/trim_runs.h"
#include "wall/straight.h"

/*
 * The cut sheet: a card for each board that is opened, in the order in which its first piece is hung, so that one can
 * cut as one hangs. Every measure on a board is from its first end, the one with the label. A board with nothing to say
 * of it takes half the page's width, and one line where it gives one piece; such cards stand in blocks of two columns,
 * to be read down the left one and then down the right one:
 *
 *     [ ] 124 · 33 5/8 gray ___    1   32 1/4    [ ] 77 · 42 pale      ___
 *     [ ] 16 · 31 1/2 gray  ___    4   30 3/4      [ ] from 1/4           2   16 3/16
 *
 *     [ ] Board 31 (A7)   52 long, gray                         used _______
 *         Do not use 31 to 33.
 *      [ ]  105   1/4 to 46 3/4     46 1/2     course -10
 *
 *     [ ] 25 · 27 3/4 gray   79   1/4 to 27 1/2   27 1/4  course 17   used ___
 */
enum {
    TICK = 0,
    NAME = 4,
    FACTS = 26,
    USED = 60,
    LEFT_OVER = 54,
    ONE_PIECE = 21,
    ONE_FROM = 26,
    ONE_LENGTH = 43,
    ONE_WHERE = 54,
    ONE_USED = 66,
    PIECE_TICK = 4,
    PIECE = 8,
    FROM = 14,
    LENGTH = 37,
    WHERE = 51,
    DETAIL = 14,
    HALF = 38,
    HALF_USED = 20,
    HALF_FROM = 8,
    HALF_PIECE = 24,
    HALF_LENGTH = 28,
    HALF_LENGTH_WIDTH = 9,
    BLOCK = 24 /* lines of both columns that make a block full */
};

enum {
    FIELD_BOARD,
    FIELD_LABEL,
    FIELD_BOARD_LENGTH,
    FIELD_TONE,
    FIELD_PIECE,
    FIELD_FROM,
    FIELD_TO,
    FIELD_LENGTH,
    FIELD_FACE,
    FIELD_COURSE,
    FIELD_RIP,
    FIELD_LEFT_WIDTH,
    FIELD_RIGHT_WIDTH,
    FIELD_CUTOUTS,
    FIELD_LEFT_OVER,
    FIELD_KIND, /* plank, trim, trim missing or strip */
    FIELD_NAME, /* of trim */
    FIELD_BOARD_WIDTH,
    FIELD_AVOID,
    FIELD_HUNG,
    FIELD_RIP_WORDS,
    FIELD_END_WORDS,
    FIELD_MITERS,
    FIELD_LAPS,
    FIELD_SHOWS,
    FIELD_STRAIGHT,
    FIELD_CLOSER,
    FIELD_KEPT_OVER, /* to be cut to fit at the wall */
    FIELD_PIECES,    /* of trim that is missing: how many */
    FIELD_SHORT_POINT,
    FIELD_THICKNESS,
    FIELD_TRIM_WORDS, /* how a strip is ripped and its ends are cut */
    FIELD_COUNT
};
static const char *const field_names[FIELD_COUNT] = {
    "board",        "label",       "board length",   "tone",         "piece",       "from",        "to",
    "length",       "face",        "course",         "rip",          "left width",  "right width", "cutouts",
    "left over",    "kind",        "name",           "board width",  "do not use",  "hung",        "rip in words",
    "slanted ends", "miters",      "cut in the lap", "shows",        "or straight", "closer",      "kept over to fit",
    "pieces",       "short point", "thickness",      "trim in words"};

typedef struct CutSheet {
    Sheet *sheet;
    const Job *job;
    const Wall *wall;
    Arena *arena;
    TrimStrips strips;
    SheetSection *section;
} CutSheet;

static void record_board(CutSheet *cuts, const char **field, int board)
{
    Arena *arena = cuts->arena;
    const Wall *wall = cuts->wall;
    const Stock *stock = wall_board(wall, board);
    field[FIELD_BOARD] = words(arena, "%d", board);
    field[FIELD_LABEL] = stock->label;
    field[FIELD_BOARD_LENGTH] = words_decimal(arena, wall, stock->length);
    field[FIELD_TONE] = stock->tone;
    field[FIELD_LEFT_OVER] = words_decimal(arena, wall, cuts->job->plan->boards[board - 1].left_over);
    field[FIELD_AVOID] = details_stretches(arena, wall, &stock->avoid);
    if (stock->width_given)
        field[FIELD_BOARD_WIDTH] = words_decimal(arena, wall, stock->width);
}

static const Piece *piece_of(const CutSheet *cuts, int board, int number)
{
    const Plan *plan = cuts->job->plan;
    return &plan->pieces[plan->by_board[plan->boards[board - 1].first + number]];
}

/* Of the one straight rip that would do for its course; "" where there is none. */
static const char *straight_words(CutSheet *cuts, const Piece *piece)
{
    const char *straight = scribe_straight_words(cuts->arena, cuts->job->layout, &cuts->strips, piece->face,
                                                 details_course(cuts->job, piece));
    return straight == NULL ? "" : straight;
}

static void record_piece(CutSheet *cuts, const Piece *piece)
{
    Arena *arena = cuts->arena;
    const Wall *wall = cuts->wall;
    const PieceDetails details = details_of(arena, cuts->job, piece);
    const Plank *plank = &details.plank;
    const char **field = sheet_record(cuts->sheet)->at;
    record_board(cuts, field, piece->board);
    field[FIELD_PIECE] = words(arena, "%d", piece->number);
    field[FIELD_FROM] = words_decimal(arena, wall, piece->offset);
    field[FIELD_TO] = words_decimal(arena, wall, piece->offset + piece->right - piece->left);
    field[FIELD_LENGTH] = words_decimal(arena, wall, details.length);
    field[FIELD_FACE] = wall->faces.at[piece->face].name;
    field[FIELD_COURSE] = words(arena, "%" PRId64, details_course(cuts->job, piece)->number);
    field[FIELD_RIP] = words_rip_shape(plank->shape);
    field[FIELD_LEFT_WIDTH] = words_decimal(arena, wall, plank->widths[0].width);
    field[FIELD_RIGHT_WIDTH] = words_decimal(arena, wall, plank->widths[plank->width_count - 1].width);
    field[FIELD_CUTOUTS] = details.cuts;
    field[FIELD_KIND] = "plank";
    field[FIELD_HUNG] = piece->cut ? "cut" : piece->hung ? "yes" : "";
    field[FIELD_RIP_WORDS] = details.rip;
    field[FIELD_END_WORDS] = details.ends;
    field[FIELD_MITERS] = details.miters;
    field[FIELD_LAPS] = details.laps;
    field[FIELD_SHOWS] = details.shows;
    field[FIELD_STRAIGHT] = straight_words(cuts, piece);
    field[FIELD_CLOSER] = details.closer;
    field[FIELD_KEPT_OVER] = words_decimal(arena, wall, piece->closer);
}

/* Under the line of its piece: the rip where that is not the full width of all, and what else there is. */
static void add_notes(CutSheet *cuts, SheetLines *lines, const Piece *piece)
{
    const PieceDetails details = details_of(cuts->arena, cuts->job, piece);
    if (!measures_full(details_course(cuts->job, piece), &details.plank))
        sheet_words(cuts->sheet, lines, DETAIL, WEIGHT_TEXT, words(cuts->arena, "Rip: %s", details.rip));
    const char *straight = straight_words(cuts, piece);
    if (straight[0] != '\0')
        sheet_words(cuts->sheet, lines, DETAIL, WEIGHT_TEXT, straight);
    details_add(cuts->sheet, lines, DETAIL, cuts->job, piece);
    record_piece(cuts, piece);
}

static const char *stretch_words(CutSheet *cuts, Length from, Length to)
{
    return words(cuts->arena, "%s to %s", words_length(cuts->arena, cuts->wall, from),
                 words_length(cuts->arena, cuts->wall, to));
}

/* "full 5 1/2, " where the wall has several widths and the piece is as wide as its course's planks; else "". */
static const char *full_words(CutSheet *cuts, const Piece *piece)
{
    const Course *course = details_course(cuts->job, piece);
    const PieceDetails details = details_of(cuts->arena, cuts->job, piece);
    if (cuts->wall->planks.widths.count == 1 || !measures_full(course, &details.plank))
        return "";
    return words(cuts->arena, "full %s, ", words_length(cuts->arena, cuts->wall, course->width));
}

static const char *where_words(CutSheet *cuts, const Piece *piece)
{
    Arena *arena = cuts->arena;
    const char *where = words(arena, "course %" PRId64, details_course(cuts->job, piece)->number);
    if (cuts->wall->faces.count > 1)
        where = words(arena, "%s, %s", words_name(arena, cuts->wall->faces.at[piece->face].name), where);
    return words(arena, "%s%s%s", full_words(cuts, piece), where, piece->cut ? ", cut" : piece->hung ? ", hung" : "");
}

static void add_piece(CutSheet *cuts, SheetLines *lines, const Piece *piece)
{
    Arena *arena = cuts->arena;
    Sheet *sheet = cuts->sheet;
    const PieceDetails details = details_of(arena, cuts->job, piece);
    SheetLine *line = sheet_line(sheet, lines);
    sheet_tick(sheet, line, PIECE_TICK, piece->hung);
    sheet_number(sheet, line, PIECE, FROM - PIECE - 1, WEIGHT_TEXT, piece->number);
    sheet_cell(sheet, line, FROM, LENGTH - FROM - 1, ALIGN_RIGHT, WEIGHT_TEXT,
               stretch_words(cuts, piece->offset, piece->offset + piece->right - piece->left));
    sheet_cell(sheet, line, LENGTH, WHERE - LENGTH - 2, ALIGN_RIGHT, WEIGHT_STRONG,
               words_length(arena, cuts->wall, details.length));
    sheet_cell(sheet, line, WHERE, SHEET_COLUMNS - WHERE, ALIGN_LEFT, WEIGHT_TEXT, where_words(cuts, piece));
    add_notes(cuts, lines, piece);
}

/* A board that gives one piece and of which there is more to say: still one line. */
static void add_single(CutSheet *cuts, int board, const Piece *piece)
{
    Arena *arena = cuts->arena;
    Sheet *sheet = cuts->sheet;
    const PieceDetails details = details_of(arena, cuts->job, piece);
    SheetLines *lines = &sheet_group(sheet, cuts->section)->lines;
    SheetLine *line = sheet_line(sheet, lines);
    line->rule = true;
    sheet_tick(sheet, line, TICK, piece->hung);
    sheet_cell(sheet, line, NAME, ONE_PIECE - NAME, ALIGN_LEFT, WEIGHT_TEXT, details_board(arena, cuts->wall, board));
    sheet_number(sheet, line, ONE_PIECE, ONE_FROM - ONE_PIECE - 1, WEIGHT_TEXT, piece->number);
    sheet_cell(sheet, line, ONE_FROM, ONE_LENGTH - ONE_FROM, ALIGN_RIGHT, WEIGHT_TEXT,
               stretch_words(cuts, piece->offset, piece->offset + piece->right - piece->left));
    sheet_cell(sheet, line, ONE_LENGTH, ONE_WHERE - ONE_LENGTH - 1, ALIGN_RIGHT, WEIGHT_STRONG,
               words_length(arena, cuts->wall, details.length));
    const char *hung = piece->cut ? ", cut" : piece->hung ? ", hung" : "";
    sheet_cell(sheet, line, ONE_WHERE, ONE_USED - ONE_WHERE - 1, ALIGN_LEFT, WEIGHT_TEXT,
               words(arena, "%scourse %" PRId64 "%s", full_words(cuts, piece), details_course(cuts->job, piece)->number,
                     hung));
    sheet_pencil(sheet, line, ONE_USED, SHEET_COLUMNS - ONE_USED, "used");
    add_notes(cuts, lines, piece);
}

static void add_board(CutSheet *cuts, int board)
{
    if (cuts->job->plan->boards[board - 1].count == 1 && !wall_board(cuts->wall, board)->width_given &&
        wall_board(cuts->wall, board)->avoid.count == 0) {
        add_single(cuts, board, piece_of(cuts, board, 0));
        return;
    }
    Arena *arena = cuts->arena;
    Sheet *sheet = cuts->sheet;
    const Wall *wall = cuts->wall;
    const Plan *plan = cuts->job->plan;
    const BoardUse *use = &plan->boards[board - 1];
    const Stock *stock = wall_board(wall, board);
    SheetLines *lines = &sheet_group(sheet, cuts->section)->lines;

    SheetLine *line = sheet_line(sheet, lines);
    line->rule = true;
    sheet_tick(sheet, line, TICK, false);
    sheet_cell(sheet, line, NAME, FACTS - NAME - 1, ALIGN_LEFT, WEIGHT_WORDS,
               words(arena, "Board %s", words_board(arena, wall, board)));
    const char *facts = words(arena, "%s long", words_length(arena, wall, stock->length));
    if (stock->width_given)
        facts = words(arena, "%s, %s wide", facts, words_length(arena, wall, stock->width));
    if (stock->tone[0] != '\0')
        facts = words(arena, "%s, %s", facts, words_name(arena, stock->tone));
    sheet_cell(sheet, line, FACTS, USED - FACTS - 1, ALIGN_LEFT, WEIGHT_STRONG, facts);
    sheet_pencil(sheet, line, USED, SHEET_COLUMNS - USED, "used");
    for (int i = 0; i < stock->avoid.count; i++)
        sheet_words(sheet, lines, NAME, WEIGHT_TEXT,
                    words(arena, "Do not use %s to %s.", words_length(arena, wall, stock->avoid.at[i].from),
                          words_length(arena, wall, stock->avoid.at[i].to)));
    for (int i = 0; i < use->count; i++)
        add_piece(cuts, lines, &plan->pieces[plan->by_board[use->first + i]]);
}

typedef struct Opened {
    int board, piece;
} Opened;

/* ---- boards with nothing to say of them, in two columns ---- */

static bool is_plain_piece(CutSheet *cuts, const Piece *piece)
{
    const PieceDetails details = details_of(cuts->arena, cuts->job, piece);
    const char *texts[] = {details.laps,
                           details.ends,
                           details.miters,
                           details.shows,
                           details.closer,
                           details.cuts,
                           straight_words(cuts, piece)};
    for (size_t i = 0; i < sizeof texts / sizeof *texts; i++)
        if (texts[i][0] != '\0')
            return false;
    return !piece->hung && measures_full(details_course(cuts->job, piece), &details.plank);
}

static bool is_plain(CutSheet *cuts, int board)
{
    if (cuts->wall->planks.widths.count > 1 || wall_board(cuts->wall, board)->avoid.count > 0)
        return false;
    for (int i = 0; i < cuts->job->plan->boards[board - 1].count; i++)
        if (!is_plain_piece(cuts, piece_of(cuts, board, i)))
            return false;
    return true;
}

/* One line of a column: the board, with its only piece, or one of several pieces. */
typedef struct HalfLine {
    int board;
    int piece; /* -1: the board */
} HalfLine;

typedef struct HalfLines {
    HalfLine *at;
    int count;
    int room;
} HalfLines;

static bool on_one_line(const CutSheet *cuts, int board)
{
    return cuts->job->plan->boards[board - 1].count == 1 && piece_of(cuts, board, 0)->offset == cuts->wall->saw.square;
}

static void push_card(CutSheet *cuts, HalfLines *lines, int board)
{
    *arena_push(cuts->arena, lines) = (HalfLine){board, -1};
    for (int i = 0; i < cuts->job->plan->boards[board - 1].count && !on_one_line(cuts, board); i++)
        *arena_push(cuts->arena, lines) = (HalfLine){board, i};
}

static void add_half_piece(CutSheet *cuts, SheetLine *line, int at, const Piece *piece)
{
    const PieceDetails details = details_of(cuts->arena, cuts->job, piece);
    sheet_number(cuts->sheet, line, at + HALF_PIECE, HALF_LENGTH - HALF_PIECE, WEIGHT_TEXT, piece->number);
    sheet_cell(cuts->sheet, line, at + HALF_LENGTH, HALF_LENGTH_WIDTH, ALIGN_RIGHT, WEIGHT_STRONG,
               words_length(cuts->arena, cuts->wall, details.length));
}

static void add_half_line(CutSheet *cuts, SheetLine *line, int at, const HalfLine *half)
{
    Sheet *sheet = cuts->sheet;
    const Piece *piece = piece_of(cuts, half->board, half->piece < 0 ? 0 : half->piece);
    sheet_tick(sheet, line, at + (half->piece < 0 ? TICK : PIECE_TICK), false);
    if (half->piece < 0) {
        sheet_cell(sheet, line, at + NAME, HALF_USED - NAME, ALIGN_LEFT, WEIGHT_TEXT,
                   details_board(cuts->arena, cuts->wall, half->board));
        sheet_pencil(sheet, line, at + HALF_USED, HALF_PIECE - HALF_USED, "");
    } else {
        sheet_cell(sheet, line, at + HALF_FROM, HALF_PIECE - HALF_FROM, ALIGN_LEFT, WEIGHT_TEXT,
                   words(cuts->arena, "from %s", words_length(cuts->arena, cuts->wall, piece->offset)));
    }
    if (half->piece >= 0 || on_one_line(cuts, half->board))
        add_half_piece(cuts, line, at, piece);
}

/* Ends the block: its cards in two columns of about one height, never a card over both. */
static void add_block(CutSheet *cuts, HalfLines *block)
{
    if (block->count == 0)
        return;
    int left = (block->count + 1) / 2;
    while (left < block->count && block->at[left].piece >= 0)
        left++;
    const int right = block->count - left;
    SheetLines *lines = &sheet_group(cuts->sheet, cuts->section)->lines;
    for (int i = 0; i < left || i < right; i++) {
        SheetLine *line = sheet_line(cuts->sheet, lines);
        line->rule = i == 0;
        if (i < left)
            add_half_line(cuts, line, 0, &block->at[i]);
        if (i < right)
            add_half_line(cuts, line, HALF, &block->at[left + i]);
    }
    *block = (HalfLines){0};
}

static void add_heads(CutSheet *cuts)
{
    Sheet *sheet = cuts->sheet;
    SheetLine *line = sheet_line(sheet, &cuts->section->heads);
    for (int at = 0; at <= HALF; at += HALF) {
        sheet_cell(sheet, line, at + NAME, HALF_USED - NAME - 2, ALIGN_LEFT, WEIGHT_TEXT, "board");
        sheet_cell(sheet, line, at + HALF_USED - 2, HALF_PIECE - HALF_USED + 1, ALIGN_LEFT, WEIGHT_TEXT, "used");
        sheet_cell(sheet, line, at + HALF_PIECE - 1, HALF_LENGTH - HALF_PIECE + 1, ALIGN_RIGHT, WEIGHT_TEXT, "piece");
        sheet_cell(sheet, line, at + HALF_LENGTH, HALF_LENGTH_WIDTH, ALIGN_RIGHT, WEIGHT_TEXT, "length");
    }
}

static void add_boards(CutSheet *cuts, const Opened *opened, int count)
{
    for (int i = 0; i < count; i++)
        if (is_plain(cuts, opened[i].board)) {
            add_heads(cuts);
            break;
        }
    HalfLines block = {0};
    for (int i = 0; i < count; i++) {
        const int board = opened[i].board;
        if (is_plain(cuts, board)) {
            push_card(cuts, &block, board);
            for (int k = 0; k < cuts->job->plan->boards[board - 1].count; k++)
                record_piece(cuts, piece_of(cuts, board, k));
        }
        if (!is_plain(cuts, board) || block.count >= BLOCK)
            add_block(cuts, &block);
        if (!is_plain(cuts, board))
            add_board(cuts, board);
    }
    add_block(cuts, &block);
}

/* "Offcuts long enough for a piece: board 19, 1 1/4; board 31, 20." */
static void add_offcuts(CutSheet *cuts)
{
    Arena *arena = cuts->arena;
    const Plan *plan = cuts->job->plan;
    const char *list = "";
    for (int board = 1; board <= plan->board_count; board++) {
        const BoardUse *use = &plan->boards[board - 1];
        if (use->count > 0 && use->left_over > 0 && use->left_over >= cuts->wall->joints.shortest)
            list = words(arena, "%s%s %s from board %d", list, list[0] == '\0' ? "" : ";",
                         words_length(arena, cuts->wall, use->left_over), board);
    }
    if (list[0] == '\0')
        return;
    SheetLines *lines = &sheet_group(cuts->sheet, cuts->section)->lines;
    sheet_words(cuts->sheet, lines, 0, WEIGHT_TEXT,
                words(arena, "Offcuts long enough for a piece, keep them:%s.", list));
    lines->at[0].rule = true;
}

static void add_introduction(CutSheet *cuts)
{
    Arena *arena = cuts->arena;
    Sheet *sheet = cuts->sheet;
    const Wall *wall = cuts->wall;
    SheetLines *lines = &sheet_group(sheet, cuts->section)->lines;
    sheet_words(
        sheet, lines, 0, WEIGHT_TEXT,
        "Every measure is from the board's first end, the one with its label. Cut in this order, down the left column "
        "of a block and then down the right one, each piece to its length. A board on one line gives one piece, next "
        "to "
        "its squared first end. Where a piece begins and ends is rounded once from the exact sum and may be one mark "
        "off it. If you cut a board other than the one named, pencil its number under \"used\".");
    sheet_words(sheet, lines, 0, WEIGHT_TEXT, SHEET_WAY_ROUND);
    if (wall->planks.widths.count == 1)
        sheet_words(sheet, lines, 0, WEIGHT_TEXT,
                    words(arena, "Rip to the full width, %s, where no other rip is given.",
                          words_length_unit(arena, wall, wall->planks.widths.at[0])));
    if (wall->saw.square > 0 || wall->saw.kerf > 0)
        sheet_words(sheet, lines, 0, WEIGHT_TEXT,
                    words(arena, "Square the first end first: %s is reckoned for each end, %s for each cut between.",
                          words_length_unit(arena, wall, wall->saw.square),
                          words_length_unit(arena, wall, wall->saw.kerf)));
}

/* ---- trim ---- */

static void record_trim(CutSheet *cuts, const TrimBoard *board, int number, const TrimCut *cut)
{
    Arena *arena = cuts->arena;
    const char **field = sheet_record(cuts->sheet)->at;
    field[FIELD_BOARD] = words(arena, "%d", number);
    field[FIELD_BOARD_LENGTH] = words_decimal(arena, cuts->wall, board->length);
    field[FIELD_PIECE] = words(arena, "%d", cut->number);
    field[FIELD_FROM] = words_decimal(arena, cuts->wall, cut->offset);
    field[FIELD_TO] = words_decimal(arena, cuts->wall, cut->offset + cut->length);
    field[FIELD_LENGTH] = words_decimal(arena, cuts->wall, cut->length);
    field[FIELD_LEFT_OVER] = words_decimal(arena, cuts->wall, board->left_over);
    field[FIELD_KIND] = "trim";
    field[FIELD_NAME] = cut->name;
}

static void add_trim_board(CutSheet *cuts, const TrimPlan *trim, int number)
{
    Arena *arena = cuts->arena;
    Sheet *sheet = cuts->sheet;
    const Wall *wall = cuts->wall;
    const TrimBoard *board = &trim->boards[number - 1];
    SheetLines *lines = &sheet_group(sheet, cuts->section)->lines;
    SheetLine *line = sheet_line(sheet, lines);
    line->rule = true;
    sheet_tick(sheet, line, TICK, false);
    sheet_cell(sheet, line, NAME, FACTS - NAME - 1, ALIGN_LEFT, WEIGHT_WORDS, words(arena, "Trim board %d", number));
    sheet_cell(sheet, line, FACTS, LEFT_OVER - FACTS - 1, ALIGN_LEFT, WEIGHT_STRONG,
               words(arena, "%s long", words_length(arena, wall, board->length)));
    sheet_cell(sheet, line, LEFT_OVER, SHEET_COLUMNS - LEFT_OVER, ALIGN_RIGHT, WEIGHT_TEXT,
               words(arena, "left over %s", words_length(arena, wall, board->left_over)));
    for (int i = 0; i < board->count; i++) {
        const TrimCut *cut = &trim->pieces[trim->by_board[board->first + i]];
        line = sheet_line(sheet, lines);
        sheet_tick(sheet, line, PIECE_TICK, false);
        sheet_cell(sheet, line, PIECE, FROM - PIECE - 1, ALIGN_RIGHT, WEIGHT_TEXT, words(arena, "%d", cut->number));
        sheet_cell(sheet, line, FROM, LENGTH - FROM - 1, ALIGN_RIGHT, WEIGHT_TEXT,
                   stretch_words(cuts, cut->offset, cut->offset + cut->length));
        sheet_cell(sheet, line, LENGTH, WHERE - LENGTH - 2, ALIGN_RIGHT, WEIGHT_STRONG,
                   words_length(arena, wall, cut->length));
        sheet_cell(sheet, line, WHERE, SHEET_COLUMNS - WHERE, ALIGN_LEFT, WEIGHT_TEXT, words_name(arena, cut->name));
        record_trim(cuts, board, number, cut);
    }
}

/* "44 1/2 to the long points, 40 to the short ones, 5/8 thick" */
static const char *strip_length(Arena *arena, const Wall *wall, const TrimStrip *strip)
{
    const char *length = words_length(arena, wall, strip->long_point);
    if (!marks_alike(wall, strip->long_point, strip->short_point))
        length = words(arena, "%s to the long points, %s to the short ones", length,
                       words_length(arena, wall, strip->short_point));
    else
        length = words(arena, "%s long", length);
    return words(arena, "%s, %s thick", length, words_length(arena, wall, strip->thickness));
}

/* How each strip that was worked out is ripped and its ends are cut. */
static void add_strips(CutSheet *cuts)
{
    TrimStrips strips = trim_strips(cuts->arena, cuts->job->layout, NULL);
    for (int i = 0; i < strips.count; i++) {
        const TrimStrip *strip = &strips.at[i];
        SheetLines *lines = &sheet_group(cuts->sheet, cuts->section)->lines;
        SheetLine *line = sheet_line(cuts->sheet, lines);
        line->rule = i == 0;
        line->hair = i > 0;
        sheet_tick(cuts->sheet, line, TICK, false);
        sheet_cell(cuts->sheet, line, NAME, SHEET_COLUMNS - NAME, ALIGN_LEFT, WEIGHT_STRONG,
                   words(cuts->arena, "%s: %s", words_name(cuts->arena, strip->name),
                         strip_length(cuts->arena, cuts->wall, strip)));
        sheet_words(cuts->sheet, lines, NAME, WEIGHT_TEXT, words_capital(cuts->arena, strip->text));
        const char **field = sheet_record(cuts->sheet)->at;
        field[FIELD_KIND] = "strip";
        field[FIELD_NAME] = strip->name;
        field[FIELD_LENGTH] = words_decimal(cuts->arena, cuts->wall, strip->long_point);
        field[FIELD_SHORT_POINT] = words_decimal(cuts->arena, cuts->wall, strip->short_point);
        field[FIELD_THICKNESS] = words_decimal(cuts->arena, cuts->wall, strip->thickness);
        field[FIELD_TRIM_WORDS] = strip->text;
    }
}

static void add_missing(CutSheet *cuts, SheetLines *lines, const TrimPiece *missing)
{
    Arena *arena = cuts->arena;
    const char *count = missing->count == 1 ? "" : words(arena, ": %d of them are missing", missing->count);
    sheet_words(cuts->sheet, lines, 0, WEIGHT_STRONG,
                words(arena, "No board is left that is long enough for %s, %s long%s.",
                      words_name(arena, missing->name), words_length_unit(arena, cuts->wall, missing->length), count));
    const char **field = sheet_record(cuts->sheet)->at;
    field[FIELD_KIND] = "trim missing";
    field[FIELD_NAME] = missing->name;
    field[FIELD_LENGTH] = words_decimal(arena, cuts->wall, missing->length);
    field[FIELD_PIECES] = words(arena, "%d", missing->count);
}

static void add_trim(CutSheet *cuts)
{
    Arena *arena = cuts->arena;
    if (!cuts->wall->trim.given)
        return;
    TrimPieces pieces = trim_pieces(arena, cuts->job->layout);
    const TrimPlan *trim = trim_plan(arena, cuts->wall, &pieces);
    if (trim->piece_count + trim->missing.count == 0)
        return;
    cuts->section = sheet_section(cuts->sheet, "Trim", false);
    SheetLine *head = sheet_line(cuts->sheet, &cuts->section->heads);
    head->rule = true;
    sheet_cell(cuts->sheet, head, 0, SHEET_COLUMNS, ALIGN_LEFT, WEIGHT_WORDS, "Trim");
    SheetLines *lines = &sheet_group(cuts->sheet, cuts->section)->lines;
    sheet_words(cuts->sheet, lines, 0, WEIGHT_STRONG,
                words(arena, "Uses %d of %s, %s of them for trim.%s", trim->boards_opened,
                      words_count(arena, trim->board_count, "board", "boards"),
                      words_length_unit(arena, cuts->wall, trim->length_opened),
                      trim->proved ? " No plan uses less." : ""));
    for (int i = 0; i < trim->missing.count; i++)
        add_missing(cuts, lines, &trim->missing.at[i]);
    cuts->section = sheet_section(cuts->sheet, "Trim", false);
    for (int i = 1; i <= trim->board_count; i++)
        if (trim->boards[i - 1].count > 0)
            add_trim_board(cuts, trim, i);
    cuts->section = sheet_section(cuts->sheet, "Trim", false);
    add_strips(cuts);
}

/* "Not used: boards 1-8, 12." */
static void add_not_opened(CutSheet *cuts)
{
    const Plan *plan = cuts->job->plan;
    Text list;
    text_init(&list);
    for (int first = 1, last; first <= plan->board_count; first = last + 1) {
        last = first;
        if (plan->boards[first - 1].count > 0)
            continue;
        while (last < plan->board_count && plan->boards[last].count == 0)
            last++;
        text_format(&list, "%s%d", list.length > 0 ? ", " : "", first);
        if (last > first)
            text_format(&list, "-%d", last);
    }
    if (list.length > 0) {
        SheetLines *lines = &sheet_group(cuts->sheet, cuts->section)->lines;
        sheet_words(cuts->sheet, lines, 0, WEIGHT_TEXT,
                    words(cuts->arena, "Not used: %s %.*s.", strpbrk(list.bytes, ",-") == NULL ? "board" : "boards",
                          (int)list.length, list.bytes));
        lines->at[0].rule = true;
    }
    text_finish(&list);
}

static int by_piece(const void *a, const void *b)
{
    const Opened *x = a, *y = b;
    return (x->piece > y->piece) - (x->piece < y->piece);
}

Sheet *sheet_cuts(Arena *arena, const Job *job, const char *date)
{
    const Plan *plan = job->plan;
    CutSheet cuts = {.job = job, .wall = job->wall, .arena = arena, .strips = trim_strips(arena, job->layout, NULL)};
    Sheet *sheet = cuts.sheet = sheet_of_job(arena, job, "Cut sheet", date);
    sheet_records(sheet, field_names, FIELD_COUNT);
    cuts.section = sheet_section(sheet, "All boards", false);
    add_introduction(&cuts);
    cuts.section = sheet_section(sheet, "All boards", false);

    Opened *opened = arena_array(arena, Opened, plan->board_count);
    int count = 0;
    for (int board = 1; board <= plan->board_count; board++) {
        const BoardUse *use = &plan->boards[board - 1];
        if (use->count == 0)
            continue;
        int first = plan->pieces[plan->by_board[use->first]].number;
        for (int i = 1; i < use->count; i++) {
            int number = plan->pieces[plan->by_board[use->first + i]].number;
            first = number < first ? number : first;
        }
        opened[count++] = (Opened){board, first};
    }
    qsort(opened, (size_t)count, sizeof *opened, by_piece);
    add_boards(&cuts, opened, count);
    add_offcuts(&cuts);
    if (count > 0)
        add_not_opened(&cuts);
    add_trim(&cuts);
    return sheet;
}
