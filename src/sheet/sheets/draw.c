#include "sheet/sheets/sheets.h"

#include <inttypes.h>

#include "job/edge_mark.h"
#include "job/words.h"
#include "sheet/face.h"

/* The elevation: on drawn pages to scale, on text pages one line a course, to scale along it. */
enum { NUMBER = 0, NUMBER_WIDTH = 5, MARK = 6, MARK_WIDTH = 11, PICTURE = 18, COLUMNS = SHEET_COLUMNS - PICTURE };

enum { FIELD_FACE, FIELD_COURSE, FIELD_PIECE, FIELD_LEFT, FIELD_RIGHT, FIELD_LOWER, FIELD_UPPER, FIELD_COUNT };
static const char *const field_names[FIELD_COUNT] = {"face",  "course",     "piece",     "left",
                                                     "right", "lower mark", "upper mark"};

static void add_heads(Sheet *sheet, SheetSection *section, const Wall *wall, const Face *face)
{
    Arena *arena = sheet->arena;
    Length column = face->width / COLUMNS;
    sheet_words(sheet, &section->heads, 0, WEIGHT_TEXT,
                words(arena,
                      "One line a course, %s a column along it, from 0 to %s. Use the numbers, do not measure the "
                      "drawing.",
                      words_length_unit(arena, wall, column), words_length_unit(arena, wall, face->width)));
    sheet_words(sheet, &section->heads, 0, WEIGHT_TEXT,
                "| a piece ends   - plank   = reference course   _ lower part left   \" upper part left   : hole   . "
                "bare");
    SheetLine *line = sheet_line(sheet, &section->heads);
    sheet_cell(sheet, line, NUMBER, NUMBER_WIDTH + 1, ALIGN_LEFT, WEIGHT_TEXT, "course");
    sheet_cell(sheet, line, MARK + 1, MARK_WIDTH - 1, ALIGN_RIGHT, WEIGHT_TEXT, "lower");
}

static void add_rows(Sheet *sheet, SheetSection *section, const Job *job, const Places *places, int face_index)
{
    const FaceLayout *face = &job->layout->faces[face_index];
    for (int i = face->course_count - 1; i >= 0; i--) {
        const Course *course = &face->courses[i];
        SheetLine *line = sheet_line(sheet, &sheet_group(sheet, section)->lines);
        sheet_cell(sheet, line, NUMBER, NUMBER_WIDTH, ALIGN_RIGHT, WEIGHT_TEXT,
                   words(sheet->arena, "%" PRId64, course->number));
        sheet_cell(sheet, line, MARK, MARK_WIDTH, ALIGN_RIGHT, WEIGHT_TEXT,
                   edge_mark_off(job->wall, course, false) ? "at floor"
                                                           : words_length(sheet->arena, job->wall, course->bottom));
        line->at[1].cut = true;
        sheet_cell(sheet, line, PICTURE, COLUMNS, ALIGN_LEFT, WEIGHT_TEXT,
                   drawing_row(sheet->arena, job, places, face_index, i, COLUMNS));
        line->at[2].cut = true;
    }
}

static void add_records(Sheet *sheet, const Job *job)
{
    const Wall *wall = job->wall;
    for (int i = 0; i < job->plan->piece_count; i++) {
        const Piece *piece = &job->plan->pieces[i];
        const Course *course = &job->layout->faces[piece->face].courses[piece->course];
        const char **field = sheet_record(sheet)->at;
        field[FIELD_FACE] = wall->faces.at[piece->face].name;
        field[FIELD_COURSE] = words(sheet->arena, "%" PRId64, course->number);
        field[FIELD_PIECE] = words(sheet->arena, "%d", piece->number);
        field[FIELD_LEFT] = words_decimal(sheet->arena, wall, piece->left);
        field[FIELD_RIGHT] = words_decimal(sheet->arena, wall, piece->right);
        field[FIELD_LOWER] = edge_mark_decimal(sheet->arena, wall, course, false);
        field[FIELD_UPPER] = edge_mark_decimal(sheet->arena, wall, course, true);
    }
}

Sheet *sheet_draw(Arena *arena, const Job *job, const char *date)
{
    Sheet *sheet = sheet_of_job(arena, job, "Elevation", date);
    sheet_records(sheet, field_names, FIELD_COUNT);
    Places places = places_of_plan(arena, job->layout, job->plan);
    for (int i = 0; i < job->wall->faces.count; i++) {
        const Face *face = &job->wall->faces.at[i];
        SheetSection *section = sheet_section(sheet, words(arena, "Face %s", words_name(arena, face->name)), true);
        section->drawing = drawing_of_face(arena, job, &places, i);
        add_heads(sheet, section, job->wall, face);
        add_rows(sheet, section, job, &places, i);
    }
    add_records(sheet, job);
    return sheet;
}
