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
 * The row sheet: a section for each face, a card for each course. A card is never split:
 *
 *     [ ] Course 3      lower  10 11/16 up      upper  13 7/16 up
 *         full width, 2 3/4                            measured ________
 *         from 0 to 141 3/8 along the face, 141 3/8 long
 *      [ ]   12  31 (A7)        46 1/2     46 1/2   studs 1-3
 *                Hole, desk outlet: ...
 *
 * Lengths of a stretch are differences of marks that were rounded once each, from its left end, so that those of its
 * pieces add up to its own.
 */
enum {
    TICK = 0,
    NAME = 4,
    LOWER = 18,
    UPPER = 48,
    MARK_WORD = 6,
    MARK = 21,
    RIP = 4,
    RIP_APART = 4, /* cells between the rip and the word before the pencil room */
    MEASURED = 55,
    PIECE_TICK = 4,
    PIECE = 8,
    BOARD = 14,
    LENGTH = 32,
    END = 43,
    STUDS = 56,
    DETAIL = 14,
    RIP_MOST = 200 /* bytes of a rip that stands beside the pencil room */
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
                                                     "kept over to fit",
                                                     "bare because",
                                                     "course rip",
                                                     "or straight",
                                                     "course height",
                                                     "lower mark where",
                                                     "upper mark where"};

typedef struct RowSheet {
    Sheet *sheet;
    const Job *job;
    const Wall *wall;
    Arena *arena;
    Places places;
    TrimStrips strips;
    const AsBuilt *built; /* NULL where no edge was measured */
    SheetSection *section;
    bool course_full; /* the course at hand has its whole width all along */
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
    field[FIELD_HUNG] = piece->hung ? "yes" : "";
    field[FIELD_CUTOUTS] = details.cuts;
    field[FIELD_RIP_WORDS] = details.rip;
    field[FIELD_END_WORDS] = details.ends;
    field[FIELD_MITERS] = details.miters;
    field[FIELD_LAPS] = details.laps;
    field[FIELD_SHOWS] = details.shows;
    field[FIELD_KEPT_OVER] = words_decimal(arena, wall, piece->closer);
}

/* ---- one piece ---- */

static void add_piece(RowSheet *rows, SheetLines *lines, const Course *course, const Segment *segment,
                      const Piece *piece)
{
    Arena *arena = rows->arena;
    Sheet *sheet = rows->sheet;
    const Wall *wall = rows->wall;
    Plank plank = plank_measure(arena, rows->job->layout, piece->face, course, piece->left, piece->right);
    Length begins = piece->left - segment->left, ends = piece->right - segment->left;

    const char *studs = measures_studs(arena, &rows->job->layout->faces[piece->face], &plank);

    SheetLine *line = sheet_line(sheet, lines);
    sheet_tick(sheet, line, PIECE_TICK, piece->hung);
    sheet_cell(sheet, line, PIECE, BOARD - PIECE - 2, ALIGN_RIGHT, WEIGHT_TEXT, words(arena, "%d", piece->number));
    sheet_cell(sheet, line, BOARD, LENGTH - BOARD, ALIGN_LEFT, WEIGHT_TEXT, words_board(arena, wall, piece->board));
    sheet_cell(sheet, line, LENGTH, END - LENGTH, ALIGN_RIGHT, WEIGHT_STRONG,
               words_length(arena, wall, length_between(begins, ends, wall->round)));
    sheet_cell(sheet, line, END, STUDS - END - 2, ALIGN_RIGHT, WEIGHT_TEXT, words_length(arena, wall, ends));
    sheet_cell(sheet, line, STUDS, SHEET_COLUMNS - STUDS, ALIGN_LEFT, WEIGHT_TEXT,
               words(arena, "%s%s%s", studs, piece->hung && studs[0] != '\0' ? ", " : "", piece->hung ? "hung" : ""));
    if (!measures_full(course, &plank) || !rows->course_full)
        sheet_words(sheet, lines, DETAIL, WEIGHT_TEXT, words(arena, "Rip: %s", measures_rip(arena, wall, &plank)));
    details_add(sheet, lines, DETAIL, rows->job, piece);
    record_piece(rows, piece);
}

static void add_bare(RowSheet *rows, SheetLines *lines, const Course *course, const Bare *bare)
{
    Arena *arena = rows->arena;
    const Segment *segment = &course->segments[bare->segment];
    const char *why = bare->too_few ? "no board left" : "the rules let none stand";
    Length begins = bare->left - segment->left, ends = bare->right - segment->left;
    SheetLine *line = sheet_line(rows->sheet, lines);
    sheet_cell(rows->sheet, line, BOARD, LENGTH - BOARD, ALIGN_LEFT, WEIGHT_STRONG, "BARE");
    sheet_cell(rows->sheet, line, LENGTH, END - LENGTH, ALIGN_RIGHT, WEIGHT_STRONG,
               words_length(arena, rows->wall, length_between(begins, ends, rows->wall->round)));
    sheet_cell(rows->sheet, line, END, STUDS - END - 2, ALIGN_RIGHT, WEIGHT_TEXT,
               words_length(arena, rows->wall, ends));
    sheet_cell(rows->sheet, line, STUDS, SHEET_COLUMNS - STUDS, ALIGN_LEFT, WEIGHT_TEXT, why);
    const char **field = record_segment(rows, bare->face, course, bare->segment, "bare");
    record_stretch(rows, field, begins, ends);
    field[FIELD_BARE] = why;
}

/* ---- one course ---- */

static void add_segment(RowSheet *rows, SheetLines *lines, const Course *course, int number, Place place)
{
    Arena *arena = rows->arena;
    const Wall *wall = rows->wall;
    const Plan *plan = rows->job->plan;
    const Segment *segment = &course->segments[number];
    const char *which =
        course->segment_count == 1 ? "From" : words(arena, "Stretch %d of %d, from", number + 1, course->segment_count);
    sheet_words(rows->sheet, lines, RIP, WEIGHT_TEXT,
                words(arena, "%s %s on the face, %s long:", which, words_length(arena, wall, segment->left),
                      words_length(arena, wall, segment->right - segment->left)));
    int piece = place.piece_first, bare = place.bare_first;
    int piece_end = piece + place.piece_count, bare_end = bare + place.bare_count;
    while (piece < piece_end && plan->pieces[piece].segment != number)
        piece++;
    while (bare < bare_end && plan->bare[bare].segment != number)
        bare++;
    for (;;) {
        bool has_piece = piece < piece_end && plan->pieces[piece].segment == number;
        bool has_bare = bare < bare_end && plan->bare[bare].segment == number;
        if (has_piece && (!has_bare || plan->pieces[piece].left < plan->bare[bare].left))
            add_piece(rows, lines, course, segment, &plan->pieces[piece++]);
        else if (has_bare)
            add_bare(rows, lines, course, &plan->bare[bare++]);
        else
            break;
    }
}

static void add_mark(RowSheet *rows, SheetLine *line, int at, const char *word, const char *mark)
{
    sheet_cell(rows->sheet, line, at, MARK_WORD, ALIGN_LEFT, WEIGHT_TEXT, word);
    sheet_cell(rows->sheet, line, at + MARK_WORD, MARK, ALIGN_RIGHT, WEIGHT_MARK, mark);
}

static bool all_hung(const Plan *plan, Place place)
{
    for (int i = place.piece_first; i < place.piece_first + place.piece_count; i++)
        if (!plan->pieces[i].hung)
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
    add_mark(rows, line, LOWER, "lower", edge_mark_words(arena, wall, course, false));
    add_mark(rows, line, UPPER, "upper", edge_mark_words(arena, wall, course, true));

    Plank whole = plank_measure(arena, rows->job->layout, face_index, course, course->left, course->right);
    line = sheet_line(rows->sheet, lines);
    const char *rip = measures_rip(arena, wall, &whole);
    rows->course_full = measures_full(course, &whole);
    if (measures_ends(arena, wall, &whole) != NULL)
        rip = words(arena, "%s; ends cut to the slant", rip);
    if (course->number == 0)
        rip = words(arena, "%s; the reference course", rip);
    bool long_rip = strlen(rip) > RIP_MOST;
    sheet_cell(rows->sheet, line, RIP, MEASURED - RIP - RIP_APART, ALIGN_LEFT, WEIGHT_STRONG,
               long_rip ? "scribe, with these breaks:" : rip);
    sheet_pencil(rows->sheet, line, MEASURED, SHEET_COLUMNS - MEASURED, "measured");
    if (long_rip)
        sheet_words(rows->sheet, lines, RIP, WEIGHT_TEXT, rip);
    add_course_notes(rows, lines, face_index, course);
    if (course->segment_count == 0) {
        sheet_words(rows->sheet, lines, RIP, WEIGHT_TEXT, "Nothing is hung here: openings take the whole of it.");
        record_course(rows, face_index, course, "course");
    }
    for (int i = 0; i < course->segment_count; i++)
        add_segment(rows, lines, course, i, place);
}

/* ---- one face ---- */

static void add_heads(RowSheet *rows)
{
    Sheet *sheet = rows->sheet;
    SheetLine *line = sheet_line(sheet, &rows->section->heads);
    sheet_cell(sheet, line, TICK, BOARD - 2, ALIGN_RIGHT, WEIGHT_TEXT, "piece");
    sheet_cell(sheet, line, BOARD, LENGTH - BOARD, ALIGN_LEFT, WEIGHT_TEXT, "board");
    sheet_cell(sheet, line, LENGTH, END - LENGTH, ALIGN_RIGHT, WEIGHT_TEXT, "length");
    sheet_cell(sheet, line, END, STUDS - END - 2, ALIGN_RIGHT, WEIGHT_TEXT, "ends at");
    sheet_cell(sheet, line, STUDS, SHEET_COLUMNS - STUDS, ALIGN_LEFT, WEIGHT_TEXT, "crosses");
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

static void add_introduction(RowSheet *rows, int face_index, const char *turn)
{
    Arena *arena = rows->arena;
    const FaceLayout *face = &rows->job->layout->faces[face_index];
    SheetLines *lines = &sheet_group(rows->sheet, rows->section)->lines;
    if (rows->wall->faces.count > 1)
        sheet_words(rows->sheet, lines, 0, WEIGHT_TEXT, words(arena, "Hang this face %s.", turn));
    sheet_words(rows->sheet, lines, 0, WEIGHT_TEXT,
                "Marks are from the level line. Measure each one from it, never from the row before. "
                "\"Ends at\" is from the left end of the row's stretch.");
    const char *off = off_words(rows, face_index);
    if (off != NULL)
        sheet_words(rows->sheet, lines, 0, WEIGHT_TEXT, off);
    if (face->studs.count > 0)
        sheet_words(rows->sheet, lines, 0, WEIGHT_TEXT,
                    words(arena, "Stud centres from the face's left end: %s.", stud_list(rows, &face->studs)));
    else
        sheet_words(rows->sheet, lines, 0, WEIGHT_TEXT, "No studs are written down for this face.");
    add_corner_ends(rows, lines, face_index);
    add_flush(rows, lines, face_index);
    const AsBuiltFace *built = rows->built == NULL ? NULL : &rows->built->faces[face_index];
    for (int down = 0; built != NULL && down < 2; down++) {
        const char *measured = down ? built->down.text : built->up.text;
        if (measured[0] != '\0')
            sheet_words(rows->sheet, lines, 0, WEIGHT_TEXT, words(arena, "As measured on %s.", measured));
    }
    const char *scribe = scribe_words(rows->job->layout, face_index);
    if (scribe != NULL)
        sheet_words(rows->sheet, lines, 0, WEIGHT_TEXT, scribe);
    const char *rakes = rake_words(arena, rows->job->layout, face_index);
    if (rakes != NULL)
        sheet_words(rows->sheet, lines, 0, WEIGHT_TEXT, rakes);
    const char *year = year_words(arena, rows->job, face_index);
    if (year != NULL)
        sheet_words(rows->sheet, lines, 0, WEIGHT_TEXT, year);
    if (rows->job->findings.count > 0)
        sheet_words(rows->sheet, lines, 0, WEIGHT_STRONG,
                    "Hazards, faults and cautions stand on the last page: read them first.");
}

Sheet *sheet_rows(Arena *arena, const Job *job, const char *date)
{
    RowSheet rows = {.job = job, .wall = job->wall, .arena = arena};
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
        add_introduction(&rows, turns[i].face, turns[i].text);
        rows.section = sheet_section(rows.sheet, place, false);
        add_heads(&rows);
        const int *courses = places_course_order(arena, job->wall, face);
        for (int k = 0; k < face->course_count; k++)
            add_course(&rows, turns[i].face, courses[k]);
    }
    sheet_add_findings(rows.sheet, job);
    return rows.sheet;
}
