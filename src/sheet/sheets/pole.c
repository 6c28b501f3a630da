#include "sheet/sheets/sheets.h"

#include <inttypes.h>
#include <stdlib.h>
#include <string.h>

#include "job/edge_mark.h"
#include "job/words.h"

/*
 * The story pole: every height that is marked, highest first, in blocks of two columns, each read down the left one
 * first. Courses that stand at one height on every face are one mark; one whose measured edge differs on a face is a
 * mark of that face. An edge that floor or ceiling cuts off on every face has no mark: its line says so in its place.
 * Openings are marked at the edges that are cut.
 */
enum {
    TICK = 0,
    MARK = 3,
    MARK_WIDTH = 19,
    WHAT = 23,
    HALF = 38,
    BLOCK = 20 /* lines of a block of two columns: one fills most of a page */
};

enum { FIELD_MARK, FIELD_WHAT, FIELD_FACE, FIELD_COUNT };
static const char *const field_names[FIELD_COUNT] = {"mark", "what", "face"};

/* `face` is -1 where the mark holds for all of them. `rank` orders marks of one height. */
typedef struct PoleMark {
    Length height;
    int rank, face;
    int64_t course;
    bool strong;
    const char *off; /* "at the floor": it is on no face's wall; else NULL */
    const char *what;
} PoleMark;

typedef struct PoleMarks {
    PoleMark *at;
    int count;
    int room;
} PoleMarks;

static int higher_first(const void *a, const void *b)
{
    const PoleMark *x = a, *y = b;
    if (x->height != y->height)
        return x->height < y->height ? 1 : -1;
    if (x->rank != y->rank)
        return x->rank - y->rank;
    if (x->course != y->course)
        return x->course < y->course ? 1 : -1;
    return (x->face > y->face) - (x->face < y->face);
}

/* The first face that has the course stands for all of them, unless one has it at another height: then each is marked.
 */
static bool known(const Layout *layout, int face, const Course *course, bool *differs)
{
    *differs = false;
    bool before = false;
    for (int i = 0; i < layout->wall->faces.count; i++) {
        if (i == face)
            continue;
        int at = layout_course_index(&layout->faces[i], course->number);
        if (at < 0)
            continue;
        const Course *other = &layout->faces[i].courses[at];
        if (other->bottom != course->bottom || other->top != course->top)
            *differs = true;
        else if (i < face)
            before = true;
    }
    return before && !*differs;
}

/* One edge of a course, as `face` has it: on that face alone where `alone`, else on all that have the course. */
static void add_edge(Arena *arena, PoleMarks *marks, const Layout *layout, const Course *course, int face, bool alone,
                     bool upper)
{
    const Wall *wall = layout->wall;
    int with = 0, off = 0;
    const char *names = "";
    for (int i = 0; i < wall->faces.count; i++) {
        int at = layout_course_index(&layout->faces[i], course->number);
        if (at < 0 || (alone && i != face))
            continue;
        with++;
        if (!edge_mark_off(wall, &layout->faces[i].courses[at], upper))
            continue;
        names = words(arena, "%s%s%s", names, off > 0 ? ", " : "", words_name(arena, wall->faces.at[i].name));
        off++;
    }
    const char *what = words(arena, "%s, %s edge", words_course(arena, course->number), upper ? "upper" : "lower");
    if (off > 0 && off < with)
        what = words(arena, "%s; %s on %s", what, edge_mark_limit(upper), names);
    *arena_push(arena, marks) = (PoleMark){.height = upper ? course->top : course->bottom,
                                           .rank = upper ? 1 : 0,
                                           .face = alone ? face : -1,
                                           .course = course->number,
                                           .strong = course->number == 0 && !upper,
                                           .off = off == with ? edge_mark_limit(upper) : NULL,
                                           .what = what};
}

/* The board's own upper edge, where a lap carries it behind the next course. */
static void add_own_edge(Arena *arena, PoleMarks *marks, const Layout *layout, const Course *course, int face,
                         bool alone)
{
    const Wall *wall = layout->wall;
    Length height = 0, own;
    bool any = false;
    const char *names = "";
    for (int i = 0; i < wall->faces.count; i++) {
        const int at = layout_course_index(&layout->faces[i], course->number);
        if (at < 0 || (alone && i != face))
            continue;
        if (edge_mark_own(layout, i, &layout->faces[i].courses[at], &own)) {
            height = own;
            any = true;
        } else {
            names =
                words(arena, "%s%s%s", names, names[0] != '\0' ? ", " : "", words_name(arena, wall->faces.at[i].name));
        }
    }
    if (!any)
        return;
    const char *what = words(arena, "%s, the board's own upper edge", words_course(arena, course->number));
    if (names[0] != '\0')
        what = words(arena, "%s; not on %s", what, names);
    *arena_push(arena, marks) =
        (PoleMark){.height = height, .rank = 1, .face = alone ? face : -1, .course = course->number, .what = what};
}

static PoleMarks marks_of(Arena *arena, const Job *job)
{
    PoleMarks marks = {0};
    const Layout *layout = job->layout;
    for (int i = 0; i < job->wall->faces.count; i++) {
        const FaceLayout *face = &layout->faces[i];
        for (int k = 0; k < face->course_count; k++) {
            bool differs;
            if (known(layout, i, &face->courses[k], &differs))
                continue;
            add_edge(arena, &marks, layout, &face->courses[k], i, differs, true);
            add_edge(arena, &marks, layout, &face->courses[k], i, differs, false);
            add_own_edge(arena, &marks, layout, &face->courses[k], i, differs);
        }
        const Openings *openings = &job->wall->faces.at[i].openings;
        for (int k = 0; k < openings->count; k++) {
            if (openings->at[k].kind == OPENING_STOVE)
                continue; /* it stands before the wall and cuts nothing */
            const char *name = words_name(arena, openings->at[k].name);
            *arena_push(arena, &marks) =
                (PoleMark){face->openings[k].top, 2, i, k, true, NULL, words(arena, "%s, top of the cut", name)};
            if (!openings->at[k].to_floor && openings->at[k].kind != OPENING_DOOR)
                *arena_push(arena, &marks) = (PoleMark){
                    face->openings[k].bottom, 2, i, k, true, NULL, words(arena, "%s, bottom of the cut", name)};
        }
    }
    *arena_push(arena, &marks) = (PoleMark){0, 3, -1, 0, true, NULL, "the level line"};
    if (marks.count > 1)
        qsort(marks.at, (size_t)marks.count, sizeof *marks.at, higher_first);
    return marks;
}

static const char *face_words(Arena *arena, const Wall *wall, const PoleMark *mark)
{
    return mark->face < 0 || wall->faces.count == 1 ? "" : words_name(arena, wall->faces.at[mark->face].name);
}

/* "3, upper" for "Course 3, upper edge": the column is narrow, and its head says what stands in it. */
static const char *brief_words(Arena *arena, const char *what)
{
    static const char course[] = "Course ", edge[] = " edge";
    const size_t head = sizeof course - 1, tail = sizeof edge - 1;
    if (strncmp(what, course, head) == 0)
        what += head;
    const size_t length = strlen(what);
    const bool ends = length > tail && strcmp(what + length - tail, edge) == 0;
    return arena_text(arena, what, length - (ends ? tail : 0));
}

static void add_mark(Sheet *sheet, SheetLine *line, int at, const Job *job, const PoleMark *mark)
{
    Arena *arena = sheet->arena;
    const char *face = face_words(arena, job->wall, mark);
    if (mark->off == NULL)
        sheet_tick(sheet, line, at + TICK, false);
    sheet_cell(sheet, line, at + MARK, MARK_WIDTH, ALIGN_RIGHT, mark->off == NULL ? WEIGHT_MARK : WEIGHT_TEXT,
               mark->off == NULL ? words_mark(arena, job->wall, mark->height) : mark->off);
    sheet_cell(sheet, line, at + WHAT, HALF - WHAT, ALIGN_LEFT, mark->strong ? WEIGHT_STRONG : WEIGHT_TEXT,
               face[0] == '\0' ? brief_words(arena, mark->what)
                               : words(arena, "%s (%s)", brief_words(arena, mark->what), face));
}

/* Up to twice BLOCK marks from `first` on, down the left column and then down the right one. */
static void add_block(Sheet *sheet, SheetSection *section, const Job *job, const PoleMarks *marks, int first)
{
    const int count = marks->count - first < 2 * BLOCK ? marks->count - first : 2 * BLOCK;
    const int left = (count + 1) / 2;
    SheetLines *lines = &sheet_group(sheet, section)->lines;
    for (int i = 0; i < left; i++) {
        SheetLine *line = sheet_line(sheet, lines);
        line->rule = i == 0;
        line->hair = i > 0;
        add_mark(sheet, line, 0, job, &marks->at[first + i]);
        if (left + i < count)
            add_mark(sheet, line, HALF, job, &marks->at[first + left + i]);
    }
}

static void add_column_heads(Sheet *sheet, SheetSection *section)
{
    SheetLine *line = sheet_line(sheet, &section->heads);
    for (int at = 0; at <= HALF; at += HALF) {
        sheet_cell(sheet, line, at + MARK, MARK_WIDTH, ALIGN_RIGHT, WEIGHT_TEXT, "mark");
        sheet_cell(sheet, line, at + WHAT, HALF - WHAT, ALIGN_LEFT, WEIGHT_TEXT, "course, edge");
    }
}

static void record_mark(Sheet *sheet, const Job *job, const PoleMark *mark)
{
    const char **field = sheet_record(sheet)->at;
    field[FIELD_MARK] = mark->off == NULL ? words_decimal(sheet->arena, job->wall, mark->height) : mark->off;
    field[FIELD_WHAT] = mark->what;
    field[FIELD_FACE] = face_words(sheet->arena, job->wall, mark);
}

Sheet *sheet_pole(Arena *arena, const Job *job, const char *date)
{
    Sheet *sheet = sheet_of_job(arena, job, "Story pole", date);
    sheet_records(sheet, field_names, FIELD_COUNT);
    SheetSection *section = sheet_section(sheet, "All faces", false);
    sheet_words(
        sheet, &section->heads, 0, WEIGHT_TEXT,
        "Hold the pole at the level line. Every mark is from that line, up or down; none is from the mark before. "
        "Read down the left column, then down the right one.");
    add_column_heads(sheet, section);
    PoleMarks marks = marks_of(arena, job);
    for (int i = 0; i < marks.count; i++)
        if (marks.at[i].off != NULL) {
            sheet_words(sheet, &sheet_group(sheet, section)->lines, 0, WEIGHT_TEXT,
                        "An edge at the floor or at the ceiling has no mark: it lies off the wall.");
            break;
        }
    for (int first = 0; first < marks.count; first += 2 * BLOCK)
        add_block(sheet, section, job, &marks, first);
    for (int i = 0; i < marks.count; i++)
        record_mark(sheet, job, &marks.at[i]);
    return sheet;
}
