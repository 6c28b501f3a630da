#include "sheet/sheets/sheets.h"

#include <inttypes.h>
#include <string.h>

#include "base/text.h"
#include "job/edge_mark.h"
#include "job/measures.h"
#include "job/places.h"
#include "job/words.h"
#include "sheet/sheets/details.h"
#include "sheet/year.h"
#include "trade/asbuilt.h"
#include "trade/corner.h"
#include "trade/flush.h"
#include "trade/rakes.h"
#include "trade/scribe.h"
#include "trade/trim_runs.h"
#include "wall/straight.h"

/*
 * The row sheet: a section for each face, a card for each course. A card is never split, and its pieces stand two on a
 * line, as they hang:
 *
 *                       lower mark           upper mark          measured
 *     [ ] Course 3      10 11/16 up          13 7/16 up          top ________
 *         taper off the upper edge, 2 1/2 at the left to 1 7/8 at the right
 *         From 0 on the face, 141 3/8 long; joints at 46 1/2, 78:
 *     [ ] 12 31 · 52 gray       46 1/2 1-3  [ ] 13 33 (A7)        31 1/2 4-5
 *          13 Hole, desk outlet: ...
 *
 * A course of two short sections has one in either half, its pieces under one another:
 *
 *       1: from 1/16, 48 7/16 long:               2: from 92 1/2, 48 7/8 long:
 *     [ ]  1 77 · 42 pale          25 1     [ ]  3 148 (A6)        48 7/8 6-8
 *     [ ]  2 43 · 24 gray     23 7/16 2-3
 *
 * Lengths of a section are differences of marks that were rounded once each, from its left end, so that those of its
 * pieces add up to its own, and the joints are where they add up to.
 */
enum {
    TICK = 0,
    NAME = 4,
    LOWER = 16,
    UPPER = 37,
    MARK = 20,
    MEASURED = 60,
    RIP = 4,
    HALF = 38, /* from a piece to the one beside it */
    PIECE = 3,
    PIECE_WIDTH = 4,
    BOARD = 7,
    LENGTH = 23,
    LENGTH_WIDTH = 9,
    STUDS = 33,
    STUDS_WIDTH = 5,
    HALF_WORDS = 2, /* where the words of a section begin that has half the page */
    DETAIL_PIECE = 4,
    DETAIL = 9
};

enum {
    FIELD_FACE,
    FIELD_COURSE,
    FIELD_LOWER,
    FIELD_UPPER,
    FIELD_RIP,
    FIELD_PIECE,
    FIELD_BOARD,
    FIELD_LABEL,
    FIELD_LENGTH,
    FIELD_BEGINS,
    FIELD_ENDS,
    FIELD_LEFT_WIDTH,
    FIELD_RIGHT_WIDTH,
    FIELD_LOWER_EDGE,
    FIELD_UPPER_EDGE,
    FIELD_STUDS,
    FIELD_CUTOUTS,
    FIELD_HUNG,
    FIELD_OWN,
    FIELD_KIND, /* piece, bare, or course where openings take the whole of it */
    FIELD_BOARD_LENGTH,
    FIELD_TONE,
    FIELD_SECTION, /* from 1, left to right */
    FIELD_SECTION_LEFT,
    FIELD_SECTION_LENGTH,
    FIELD_RIP_WORDS,
    FIELD_END_WORDS,
    FIELD_MITERS,
    FIELD_LAPS,
    FIELD_SHOWS,
    FIELD_CLOSER,
    FIELD_KEPT_OVER, /* to be cut to fit at the wall */
    FIELD_BARE,      /* why it is */
    FIELD_COURSE_RIP,
    FIELD_STRAIGHT,
    FIELD_COURSE_HEIGHT,
    FIELD_LOWER_PART,
    FIELD_UPPER_PART,
    FIELD_COUNT
};
static const char *const field_names[FIELD_COUNT] = {"face",
                                                     "course",
                                                     "lower mark",
                                                     "upper mark",
                                                     "rip",
                                                     "piece",
                                                     "board",
                                                     "label",
                                                     "length",
                                                     "begins",
                                                     "ends",
                                                     "left width",
                                                     "right width",
                                                     "lower edge",
                                                     "upper edge",
                                                     "studs",
                                                     "cutouts",
                                                     "hung",
                                                     "board's upper edge",
                                                     "kind",
                                                     "board length",
                                                     "tone",
                                                     "section",
                                                     "section left",
                                                     "section length",
                                                     "rip in words",
                                                     "slanted ends",
                                                     "miters",
                                                     "cut in the lap",
                                                     "shows",
                                                     "closer",
                                                     "kept over to fit",
                                                     "bare because",
                                                     "course rip",
                                                     "or straight",
                                                     "course height",
                                                     "lower mark where",
                                                     "upper mark where"};

typedef struct PieceNumbers {
    int *at;
    int count;
    int room;
} PieceNumbers;

typedef struct RowSheet {
    Sheet *sheet;
    const Job *job;
    const Wall *wall;
    Arena *arena;
    Places places;
    TrimStrips strips;
    const AsBuilt *built; /* NULL where no edge was measured */
    SheetSection *section;
    const char *read;  /* where the hazards are to be read */
    PieceNumbers full; /* pieces of the course at hand that have the full width where others have not */
    bool course_full;  /* the course at hand has its whole width all along */
} RowSheet;

/* ---- the data ---- */

static const char *text_or_nothing(const char *text)
{
    return text == NULL ? "" : text;
}

/* What an edge measured after hanging makes of the course's height. */
static const char *room_words(Arena *arena, const Wall *wall, const Course *course)
{
    Length own = course->width - wall->planks.lap, height = course->top - course->bottom;
    if (marks_alike(wall, height, own))
        return NULL;
    Length off = height > own ? height - own : own - height;
    return words(arena, "As measured it is %s high on the wall, %s %s than its planks show.",
                 words_length(arena, wall, height), words_length(arena, wall, off), height > own ? "more" : "less");
}

/* A row of data with what holds for the whole course. */
static const char **record_course(RowSheet *rows, int face, const Course *course, const char *kind)
{
    Arena *arena = rows->arena;
    const Wall *wall = rows->wall;
    const char **field = sheet_record(rows->sheet)->at;
    Plank whole = plank_measure(arena, rows->job->layout, face, course, course->left, course->right);
    field[FIELD_KIND] = kind;
    field[FIELD_FACE] = wall->faces.at[face].name;
    field[FIELD_COURSE] = words(arena, "%" PRId64, course->number);
    field[FIELD_LOWER] = edge_mark_decimal(arena, wall, course, false);
    field[FIELD_UPPER] = edge_mark_decimal(arena, wall, course, true);
    Length own;
    if (edge_mark_own(rows->job->layout, face, course, &own))
        field[FIELD_OWN] = words_decimal(arena, wall, own);
    field[FIELD_STRAIGHT] =
        text_or_nothing(scribe_straight_words(arena, rows->job->layout, &rows->strips, face, course));
    field[FIELD_COURSE_RIP] = measures_rip(arena, wall, &whole);
    field[FIELD_COURSE_HEIGHT] = text_or_nothing(room_words(arena, wall, course));
    field[FIELD_LOWER_PART] = text_or_nothing(edge_mark_part(arena, wall, course, false));
    field[FIELD_UPPER_PART] = text_or_nothing(edge_mark_part(arena, wall, course, true));
    return field;
}

static const char **record_segment(RowSheet *rows, int face, const Course *course, int number, const char *kind)
{
    Arena *arena = rows->arena;
    const Segment *segment = &course->segments[number];
    const char **field = record_course(rows, face, course, kind);
    field[FIELD_SECTION] = words(arena, "%d", number + 1);
    field[FIELD_SECTION_LEFT] = words_decimal(arena, rows->wall, segment->left);
    field[FIELD_SECTION_LENGTH] = words_decimal(arena, rows->wall, segment->right - segment->left);
    return field;
}

/* From `left` to `right` along its segment. */
static void record_stretch(RowSheet *rows, const char **field, Length left, Length right)
{
    Arena *arena = rows->arena;
    const Wall *wall = rows->wall;
    field[FIELD_LENGTH] = words_decimal(arena, wall, length_between(left, right, wall->round));
    field[FIELD_BEGINS] = words_decimal(arena, wall, left);
    field[FIELD_ENDS] = words_decimal(arena, wall, right);
}

static void record_board(RowSheet *rows, const char **field, int board)
{
    const Stock *stock = wall_board(rows->wall, board);
    field[FIELD_BOARD] = words(rows->arena, "%d", board);
    if (stock == NULL)
        return;
    field[FIELD_LABEL] = stock->label;
    field[FIELD_BOARD_LENGTH] = words_decimal(rows->arena, rows->wall, stock->length);
    field[FIELD_TONE] = stock->tone;
}

static void record_piece(RowSheet *rows, const Piece *piece)
{
    Arena *arena = rows->arena;
    const Wall *wall = rows->wall;
    const Course *course = details_course(rows->job, piece);
    const Length from = course->segments[piece->segment].left;
    const PieceDetails details = details_of(arena, rows->job, piece);
    const Plank *plank = &details.plank;
    const char **field = record_segment(rows, piece->face, course, piece->segment, "piece");
    record_stretch(rows, field, piece->left - from, piece->right - from);
    record_board(rows, field, piece->board);
    field[FIELD_RIP] = words_rip_shape(plank->shape);
    field[FIELD_PIECE] = words(arena, "%d", piece->number);
    field[FIELD_LEFT_WIDTH] = words_decimal(arena, wall, plank->widths[0].width);
    field[FIELD_RIGHT_WIDTH] = words_decimal(arena, wall, plank->widths[plank->width_count - 1].width);
    field[FIELD_LOWER_EDGE] = words_decimal(arena, wall, plank->length - plank->left.lower - plank->right.lower);
    field[FIELD_UPPER_EDGE] = words_decimal(arena, wall, plank->length - plank->left.upper - plank->right.upper);
    field[FIELD_STUDS] = measures_studs(arena, &rows->job->layout->faces[piece->face], plank);
    field[FIELD_HUNG] = piece->cut ? "cut" : piece->hung ? "yes" : "";
    field[FIELD_CUTOUTS] = details.cuts;
    field[FIELD_RIP_WORDS] = details.rip;
    field[FIELD_END_WORDS] = details.ends;
    field[FIELD_MITERS] = details.miters;
    field[FIELD_LAPS] = details.laps;
    field[FIELD_SHOWS] = details.shows;
    field[FIELD_CLOSER] = details.closer;
    field[FIELD_KEPT_OVER] = words_decimal(arena, wall, piece->closer);
}

/* ---- the pieces of one section ---- */

/* A piece, or a stretch that stays bare. */
typedef struct RowEntry {
    const Piece *piece; /* NULL: bare */
    const Bare *bare;
    Length right; /* where it ends on the face */
} RowEntry;

typedef struct RowEntries {
    RowEntry *at;
    int count;
    int room;
} RowEntries;

/* What stands in segment `number` of a course, from left to right. */
static RowEntries entries_of(RowSheet *rows, int number, Place place)
{
    const Plan *plan = rows->job->plan;
    RowEntries entries = {0};
    int piece = place.piece_first, bare = place.bare_first;
    int piece_end = piece + place.piece_count, bare_end = bare + place.bare_count;
    while (piece < piece_end && plan->pieces[piece].segment != number)
        piece++;
    while (bare < bare_end && plan->bare[bare].segment != number)
        bare++;
    for (;;) {
        bool has_piece = piece < piece_end && plan->pieces[piece].segment == number;
        bool has_bare = bare < bare_end && plan->bare[bare].segment == number;
        RowEntry entry = {0};
        if (has_piece && (!has_bare || plan->pieces[piece].left < plan->bare[bare].left)) {
            entry.piece = &plan->pieces[piece++];
            entry.right = entry.piece->right;
        } else if (has_bare) {
            entry.bare = &plan->bare[bare++];
            entry.right = entry.bare->right;
        } else {
            return entries;
        }
        *arena_push(rows->arena, &entries) = entry;
    }
}

/* "1-3", "2", "none": the studs that a piece crosses. */
static const char *stud_words(RowSheet *rows, const Piece *piece)
{
    Plank plank = plank_measure(rows->arena, rows->job->layout, piece->face, details_course(rows->job, piece),
                                piece->left, piece->right);
    if (rows->job->layout->faces[piece->face].studs.count == 0)
        return "";
    if (plank.stud_count == 0)
        return "none";
    const int first = plank.stud_first + 1, last = plank.stud_first + plank.stud_count;
    return first == last ? words(rows->arena, "%d", first) : words(rows->arena, "%d-%d", first, last);
}

static void add_piece(RowSheet *rows, SheetLine *line, int at, const Piece *piece)
{
    Sheet *sheet = rows->sheet;
    sheet_tick(sheet, line, at + TICK, piece_is_up(piece));
    sheet_number(sheet, line, at + PIECE, PIECE_WIDTH, WEIGHT_STRONG, piece->number);
    /* a space in front: its cell touches that of the number */
    sheet_cell(sheet, line, at + BOARD, LENGTH - BOARD, ALIGN_LEFT, WEIGHT_TEXT,
               words(rows->arena, " %s", details_board(rows->arena, rows->wall, piece->board)));
}

/* An entry of a line: `left` and `right` from the segment's left end. */
static void add_entry(RowSheet *rows, SheetLine *line, int at, const RowEntry *entry, Length left, Length right)
{
    const char *length = words_length(rows->arena, rows->wall, length_between(left, right, rows->wall->round));
    if (entry->piece != NULL)
        add_piece(rows, line, at, entry->piece);
    else
        sheet_cell(rows->sheet, line, at + BOARD, LENGTH - BOARD, ALIGN_LEFT, WEIGHT_STRONG, "BARE");
    sheet_cell(rows->sheet, line, at + LENGTH, LENGTH_WIDTH, ALIGN_RIGHT, WEIGHT_STRONG, length);
    if (entry->piece != NULL)
        sheet_cell(rows->sheet, line, at + STUDS, STUDS_WIDTH, ALIGN_LEFT, WEIGHT_TEXT, stud_words(rows, entry->piece));
}

static const char *bare_words(const Bare *bare)
{
    return bare->too_few ? "no board left" : "the rules let none stand";
}

/* What else is to be known of it, each in a paragraph that begins with the piece's number. */
static void add_notes(RowSheet *rows, SheetLines *lines, const Course *course, const RowEntry *entry)
{
    Sheet *sheet = rows->sheet;
    SheetLines notes = {0};
    if (entry->piece == NULL) {
        sheet_words(sheet, lines, DETAIL, WEIGHT_TEXT, words_capital(rows->arena, bare_words(entry->bare)));
        return;
    }
    const Plank plank = plank_measure(rows->arena, rows->job->layout, entry->piece->face, course, entry->piece->left,
                                      entry->piece->right);
    if (!measures_full(course, &plank))
        sheet_words(sheet, &notes, DETAIL, WEIGHT_TEXT,
                    words(rows->arena, "Rip: %s", measures_rip(rows->arena, rows->wall, &plank)));
    else if (!rows->course_full)
        *arena_push(rows->arena, &rows->full) = entry->piece->number;
    details_add(sheet, &notes, DETAIL, rows->job, entry->piece);
    for (int i = 0; i < notes.count; i++) {
        SheetLine *line = sheet_line(sheet, lines);
        sheet_cell(sheet, line, DETAIL_PIECE, DETAIL - DETAIL_PIECE - 1, ALIGN_RIGHT, WEIGHT_TEXT,
                   words(rows->arena, "%d", entry->piece->number));
        for (int k = 0; k < notes.at[i].count; k++)
            *arena_push(rows->arena, line) = notes.at[i].at[k];
    }
}

static void record_bare(RowSheet *rows, const Course *course, const Bare *bare)
{
    const Length from = course->segments[bare->segment].left;
    const char **field = record_segment(rows, bare->face, course, bare->segment, "bare");
    record_stretch(rows, field, bare->left - from, bare->right - from);
    field[FIELD_BARE] = bare_words(bare);
}

/* "Section 1 of 2, from 1/16 on the face, 48 7/16 long; joints at 32 1/4:" */
static const char *segment_words(RowSheet *rows, const Course *course, int number, const RowEntries *entries)
{
    Arena *arena = rows->arena;
    const Wall *wall = rows->wall;
    const Segment *segment = &course->segments[number];
    const char *which =
        course->segment_count == 1 ? "From" : words(arena, "Section %d of %d, from", number + 1, course->segment_count);
    const char *joints = "";
    for (int i = 0; i + 1 < entries->count; i++)
        joints = words(arena, "%s%s%s", joints, i == 0 ? entries->count > 2 ? "; joints at " : "; joint at " : ", ",
                       words_length(arena, wall, entries->at[i].right - segment->left));
    return words(arena, "%s %s on the face, %s long%s:", which, words_length(arena, wall, segment->left),
                 words_length(arena, wall, segment->right - segment->left), joints);
}

static void record_entries(RowSheet *rows, const Course *course, const RowEntries *entries)
{
    for (int i = 0; i < entries->count; i++)
        if (entries->at[i].piece != NULL)
            record_piece(rows, entries->at[i].piece);
        else
            record_bare(rows, course, entries->at[i].bare);
}

static void add_segment(RowSheet *rows, SheetLines *lines, const Course *course, int number, const RowEntries *entries)
{
    const Segment *segment = &course->segments[number];
    sheet_words(rows->sheet, lines, RIP, WEIGHT_TEXT, segment_words(rows, course, number, entries));
    Length left = 0;
    for (int first = 0; first < entries->count; first += 2) {
        const int count = first + 1 < entries->count ? 2 : 1;
        SheetLine *line = sheet_line(rows->sheet, lines);
        for (int i = 0; i < count; i++) {
            const Length right = entries->at[first + i].right - segment->left;
            add_entry(rows, line, i * HALF, &entries->at[first + i], left, right);
            left = right;
        }
        for (int i = 0; i < count; i++)
            add_notes(rows, lines, course, &entries->at[first + i]);
    }
    record_entries(rows, course, entries);
}

/* "1: from 1/16, 48 7/16 long:" over the half of the page that the section has for itself. Its joint is
 * where its first piece ends, so that needs no words. */
static const char *half_words(RowSheet *rows, const Course *course, int number)
{
    Arena *arena = rows->arena;
    const Segment *segment = &course->segments[number];
    return words(arena, "%d: from %s, %s long:", number + 1, words_length(arena, rows->wall, segment->left),
                 words_length(arena, rows->wall, segment->right - segment->left));
}

/* Two sections of at most two pieces each, one in either half of the page. */
static void add_both(RowSheet *rows, SheetLines *lines, const Course *course, const RowEntries *both)
{
    SheetLine *line = sheet_line(rows->sheet, lines);
    for (int k = 0; k < 2; k++)
        sheet_cell(rows->sheet, line, k * HALF + HALF_WORDS, HALF - HALF_WORDS - 1, ALIGN_LEFT, WEIGHT_TEXT,
                   half_words(rows, course, k));
    for (int i = 0; i < both[0].count || i < both[1].count; i++) {
        line = sheet_line(rows->sheet, lines);
        for (int k = 0; k < 2; k++) {
            const Length from = course->segments[k].left;
            if (i < both[k].count)
                add_entry(rows, line, k * HALF, &both[k].at[i], i == 0 ? 0 : both[k].at[i - 1].right - from,
                          both[k].at[i].right - from);
        }
        for (int k = 0; k < 2; k++)
            if (i < both[k].count)
                add_notes(rows, lines, course, &both[k].at[i]);
    }
    for (int k = 0; k < 2; k++)
        record_entries(rows, course, &both[k]);
}

static void add_segments(RowSheet *rows, SheetLines *lines, const Course *course, Place place)
{
    RowEntries *entries = arena_array(rows->arena, RowEntries, course->segment_count);
    int most = 0;
    for (int i = 0; i < course->segment_count; i++) {
        entries[i] = entries_of(rows, i, place);
        most = entries[i].count > most ? entries[i].count : most;
    }
    if (course->segment_count == 2 && most <= 2) {
        add_both(rows, lines, course, entries);
        return;
    }
    for (int i = 0; i < course->segment_count; i++)
        add_segment(rows, lines, course, i, &entries[i]);
}

/* ---- one course ---- */

static bool all_hung(const Plan *plan, Place place)
{
    for (int i = place.piece_first; i < place.piece_first + place.piece_count; i++)
        if (!piece_is_up(&plan->pieces[i]))
            return false;
    return place.piece_count > 0 && place.bare_count == 0;
}

/* What is to be known of a course beside its rip. */
static void add_course_notes(RowSheet *rows, SheetLines *lines, int face_index, const Course *course)
{
    Arena *arena = rows->arena;
    const Wall *wall = rows->wall;
    const char *straight = scribe_straight_words(arena, rows->job->layout, &rows->strips, face_index, course);
    if (straight != NULL)
        sheet_words(rows->sheet, lines, RIP, WEIGHT_TEXT, straight);
    const char *room = room_words(arena, wall, course);
    if (room != NULL)
        sheet_words(rows->sheet, lines, RIP, WEIGHT_TEXT, room);
    for (int upper = 0; upper <= 1; upper++) {
        const char *part = edge_mark_part(arena, wall, course, upper == 1);
        if (part != NULL)
            sheet_words(rows->sheet, lines, RIP, WEIGHT_TEXT, part);
    }
    Length own;
    if (edge_mark_own(rows->job->layout, face_index, course, &own))
        sheet_words(rows->sheet, lines, RIP, WEIGHT_TEXT,
                    words(arena,
                          "The upper %s of that lies behind the next course: the board's own upper edge is at %s.",
                          words_length(arena, wall, wall->planks.lap), words_mark(arena, wall, own)));
}

/* Its rip, where that is not the full width that all courses have. */
static void add_course_rip(RowSheet *rows, SheetLines *lines, int face_index, const Course *course)
{
    Arena *arena = rows->arena;
    Plank whole = plank_measure(arena, rows->job->layout, face_index, course, course->left, course->right);
    const char *rip = measures_rip(arena, rows->wall, &whole);
    rows->course_full = measures_full(course, &whole);
    const char *ends = measures_ends(arena, rows->wall, &whole) != NULL ? "; ends cut to the slant" : "";
    const char *reference = course->number == 0 ? "; the reference course" : "";
    const bool told = rows->course_full && rows->wall->planks.widths.count == 1;
    if (!told || ends[0] != '\0' || reference[0] != '\0')
        sheet_words(rows->sheet, lines, RIP, WEIGHT_STRONG, words(arena, "%s%s%s", rip, ends, reference));
}

/* Which pieces of a course that is cut somewhere keep the full width. */
static void add_full(RowSheet *rows, SheetLines *lines)
{
    const char *list = rows->full.count == 1 ? "Full width: piece" : "Full width: pieces";
    for (int i = 0; i < rows->full.count; i++)
        list = words(rows->arena, "%s%s %d", list, i > 0 ? "," : "", rows->full.at[i]);
    if (rows->full.count > 0)
        sheet_words(rows->sheet, lines, RIP, WEIGHT_TEXT, words(rows->arena, "%s.", list));
}

static void add_course(RowSheet *rows, int face_index, int course_index)
{
    Arena *arena = rows->arena;
    const Wall *wall = rows->wall;
    const Course *course = &rows->job->layout->faces[face_index].courses[course_index];
    Place place = places_get(&rows->places, face_index, course_index);
    SheetLines *lines = &sheet_group(rows->sheet, rows->section)->lines;

    SheetLine *line = sheet_line(rows->sheet, lines);
    line->rule = true;
    sheet_tick(rows->sheet, line, TICK, all_hung(rows->job->plan, place));
    sheet_cell(rows->sheet, line, NAME, LOWER - NAME, ALIGN_LEFT, WEIGHT_WORDS,
               words(arena, "Course %" PRId64, course->number));
    for (int upper = 0; upper <= 1; upper++)
        sheet_cell(rows->sheet, line, upper ? UPPER : LOWER, MARK, ALIGN_RIGHT, WEIGHT_MARK,
                   edge_mark_words(arena, wall, course, upper == 1));
    const bool top = course->number >= 0 || wall_hangs_upward(wall);
    sheet_pencil(rows->sheet, line, MEASURED, SHEET_COLUMNS - MEASURED, top ? "top" : "bottom");
    add_course_rip(rows, lines, face_index, course);
    add_course_notes(rows, lines, face_index, course);
    if (course->segment_count == 0) {
        sheet_words(rows->sheet, lines, RIP, WEIGHT_TEXT, "Nothing is hung here: openings take the whole of it.");
        record_course(rows, face_index, course, "course");
    }
    rows->full = (PieceNumbers){0};
    add_segments(rows, lines, course, place);
    add_full(rows, lines);
}

/* ---- one face ---- */

static void add_heads(RowSheet *rows)
{
    Sheet *sheet = rows->sheet;
    SheetLine *line = sheet_line(sheet, &rows->section->heads);
    sheet_cell(sheet, line, LOWER, MARK, ALIGN_RIGHT, WEIGHT_TEXT, "lower mark");
    sheet_cell(sheet, line, UPPER, MARK, ALIGN_RIGHT, WEIGHT_TEXT, "upper mark");
    sheet_cell(sheet, line, MEASURED, SHEET_COLUMNS - MEASURED, ALIGN_LEFT, WEIGHT_TEXT, "measured");
    line = sheet_line(sheet, &rows->section->heads);
    for (int at = 0; at <= HALF; at += HALF) {
        sheet_cell(sheet, line, at, BOARD - 1, ALIGN_RIGHT, WEIGHT_TEXT, "piece");
        sheet_cell(sheet, line, at + BOARD, LENGTH - BOARD, ALIGN_LEFT, WEIGHT_TEXT, "board");
        sheet_cell(sheet, line, at + LENGTH, LENGTH_WIDTH, ALIGN_RIGHT, WEIGHT_TEXT, "length");
        sheet_cell(sheet, line, at + STUDS, STUDS_WIDTH, ALIGN_LEFT, WEIGHT_TEXT, "studs");
    }
}

static const char *stud_list(RowSheet *rows, const LengthList *studs)
{
    Text text;
    text_init(&text);
    for (int i = 0; i < studs->count; i++) {
        char length[LENGTH_TEXT_MAX];
        length_show(studs->at[i], rows->wall->units, rows->wall->round, length);
        text_format(&text, "%s%d at %s", i > 0 ? "; " : "", i + 1, length);
    }
    char *list = arena_text(rows->arena, text.bytes, text.length);
    text_finish(&text);
    return list;
}

/* Where a mark is off the wall: why, and how far from floor and ceiling the wood stops. */
static const char *off_words(RowSheet *rows, int face_index)
{
    Arena *arena = rows->arena;
    const Wall *wall = rows->wall;
    const FaceLayout *face = &rows->job->layout->faces[face_index];
    const Face *measured = &wall->faces.at[face_index];
    bool lower = false, upper = false;
    for (int i = 0; i < face->course_count; i++) {
        lower = lower || edge_mark_off(wall, &face->courses[i], false);
        upper = upper || edge_mark_off(wall, &face->courses[i], true);
    }
    if (!lower && !upper)
        return NULL;
    const char *which = lower && upper ? "\"At the floor\" and \"at the ceiling\" stand"
                                       : words(arena, "\"%s\" stands", words_capital(arena, edge_mark_limit(upper)));
    const char *floor = words_length_unit(arena, wall, measured->margin.floor);
    const char *ceiling = words_length_unit(arena, wall, measured->margin.ceiling);
    bool clear_floor = lower && measured->margin.floor > 0, clear_ceiling = upper && measured->margin.ceiling > 0;
    const char *clear = "";
    if (clear_floor && clear_ceiling)
        clear = words(arena, " The planks stop %s clear of the floor and %s clear of the ceiling.", floor, ceiling);
    else if (clear_floor || clear_ceiling)
        clear = words(arena, " The planks stop %s clear of the %s.", clear_floor ? floor : ceiling,
                      clear_floor ? "floor" : "ceiling");
    return words(arena, "%s where a course is cut there all along, and its own edge lies off the wall.%s", which,
                 clear);
}

/* What the ends need that stand at a corner, once for the face: cuts that are square on every course, and what other
 * cuts would leave. */
static void add_corner_ends(RowSheet *rows, SheetLines *lines, int face_index)
{
    const Plan *plan = rows->job->plan;
    bool told[2] = {false, false};
    for (int i = 0; i < plan->piece_count && !(told[0] && told[1]); i++) {
        if (plan->pieces[i].face != face_index)
            continue;
        PieceEnd ends[2];
        corner_piece_ends(rows->arena, rows->job->layout, &plan->pieces[i], &ends[0], &ends[1]);
        for (int k = 0; k < 2; k++) {
            if (told[k] || ends[k].place != AT_CORNER || (ends[k].cut != END_SQUARE && ends[k].why == NULL))
                continue;
            told[k] = true;
            sheet_words(rows->sheet, lines, 0, WEIGHT_TEXT,
                        words(rows->arena, "Ends at the %s corner: %s%s%s.", k == 0 ? "left" : "right", ends[k].text,
                              ends[k].why != NULL ? "; " : "", ends[k].why != NULL ? ends[k].why : ""));
        }
    }
}

/* How far the planks end before or behind what each opening has around it, as far as that was measured. */
static void add_flush(RowSheet *rows, SheetLines *lines, int face_index)
{
    for (int i = 0; i < rows->wall->faces.at[face_index].openings.count; i++) {
        const char *flush = flush_words(rows->arena, rows->job->layout, face_index, i);
        if (flush != NULL)
            sheet_words(rows->sheet, lines, 0, WEIGHT_TEXT, flush);
    }
}

static void put_words(RowSheet *rows, SheetLines *lines, const char *text)
{
    if (text != NULL && text[0] != '\0')
        sheet_words(rows->sheet, lines, 0, WEIGHT_TEXT, text);
}

/* What holds for every face: told on the first. */
static void add_manner(RowSheet *rows, SheetLines *lines)
{
    Arena *arena = rows->arena;
    const Wall *wall = rows->wall;
    if (rows->job->findings.count > 0)
        sheet_words(rows->sheet, lines, 0, WEIGHT_STRONG, rows->read);
    const char *width = wall->planks.widths.count > 1
                            ? ""
                            : words(arena, " Full width, %s, where no rip is given.",
                                    words_length_unit(arena, wall, wall->planks.widths.at[0]));
    put_words(rows, lines,
              words(arena,
                    "Marks are from the level line. Measure each one from it, never from the row before; once a course "
                    "hangs, pencil beside it where its top edge%s is. Joints are from the left end of their section.%s",
                    wall_hangs_upward(wall) ? "" : ", below course 0 its bottom edge,", width));
    put_words(rows, lines, SHEET_WAY_ROUND);
}

static void add_as_measured(RowSheet *rows, SheetLines *lines, int face_index)
{
    const AsBuiltFace *built = rows->built == NULL ? NULL : &rows->built->faces[face_index];
    for (int down = 0; built != NULL && down < 2; down++) {
        const char *measured = down ? built->down.text : built->up.text;
        if (measured[0] != '\0')
            put_words(rows, lines, words(rows->arena, "As measured on %s.", measured));
    }
}

static void add_introduction(RowSheet *rows, int face_index, const char *turn, bool first)
{
    Arena *arena = rows->arena;
    const FaceLayout *face = &rows->job->layout->faces[face_index];
    SheetLines *lines = &sheet_group(rows->sheet, rows->section)->lines;
    if (rows->wall->faces.count > 1)
        put_words(rows, lines, words(arena, "Hang this face %s.", turn));
    if (first)
        add_manner(rows, lines);
    put_words(rows, lines, off_words(rows, face_index));
    if (face->studs.count > 0)
        put_words(rows, lines,
                  words(arena, "Stud centers from the face's left end: %s.", stud_list(rows, &face->studs)));
    else
        put_words(rows, lines, "No studs are written down for this face.");
    add_corner_ends(rows, lines, face_index);
    add_flush(rows, lines, face_index);
    add_as_measured(rows, lines, face_index);
    put_words(rows, lines, scribe_words(rows->job->layout, face_index));
    put_words(rows, lines, rake_words(arena, rows->job->layout, face_index));
    put_words(rows, lines, year_words(arena, rows->job, face_index));
}

static Sheet *make(Arena *arena, const Job *job, const char *date, const char *read)
{
    RowSheet rows = {.job = job, .wall = job->wall, .arena = arena, .read = read};
    rows.sheet = sheet_of_job(arena, job, "Row sheet", date);
    rows.places = places_of_plan(arena, job->layout, job->plan);
    rows.strips = trim_strips(arena, job->layout, NULL);
    Err err;
    if (job->wall->hung_edges.count > 0)
        rows.built = asbuilt_of(arena, job->layout, job->plan, &err);
    sheet_records(rows.sheet, field_names, FIELD_COUNT);
    const CornerTurn *turns = corner_turns(arena, job->wall);
    for (int i = 0; i < job->wall->faces.count; i++) {
        const FaceLayout *face = &job->layout->faces[turns[i].face];
        const char *place = words(arena, "Face %s", words_name(arena, job->wall->faces.at[turns[i].face].name));
        rows.section = sheet_section(rows.sheet, place, true);
        add_introduction(&rows, turns[i].face, turns[i].text, i == 0);
        rows.section = sheet_section(rows.sheet, place, false);
        add_heads(&rows);
        const int *courses = places_course_order(arena, job->wall, face);
        for (int k = 0; k < face->course_count; k++)
            add_course(&rows, turns[i].face, courses[k]);
    }
    return rows.sheet;
}

Sheet *sheet_rows(Arena *arena, const Job *job, const char *date)
{
    Sheet *sheet = make(arena, job, date, "Read the hazards first: they stand on the last page.");
    sheet_add_findings(sheet, job);
    return sheet;
}

Sheet *sheet_rows_of_all(Arena *arena, const Job *job, const char *date)
{
    return make(arena, job, date, "Read the hazards first: they stand on the first page.");
}
