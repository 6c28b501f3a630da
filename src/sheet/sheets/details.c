#include "sheet/sheets/details.h"

#include "job/measures.h"
#include "job/words.h"
#include "wall/straight.h"

const Course *details_course(const Job *job, const Piece *piece)
{
    return &job->layout->faces[piece->face].courses[piece->course];
}

static const char *or_nothing(const char *text)
{
    return text == NULL ? "" : text;
}

/* What closes a section is cut to fit: where its board has something to spare, the gap is measured with it in hand. */
static const char *closer_words(Arena *arena, const Wall *wall, const Piece *piece, Length length)
{
    if (piece->closer > 0)
        return words(arena, "Closer: cut it %s long, then to fit",
                     words_length(arena, wall, length_round(length + piece->closer, wall->round)));
    return piece->closer_off ? "Closer, nothing to spare: measure the gap first" : "";
}

PieceDetails details_of(Arena *arena, const Job *job, const Piece *piece)
{
    const Wall *wall = job->wall;
    const Course *course = details_course(job, piece);
    const Segment *segment = &course->segments[piece->segment];
    PieceDetails details = {.plank = plank_measure(arena, job->layout, piece->face, course, piece->left, piece->right)};
    details.length = length_between(piece->left - segment->left, piece->right - segment->left, wall->round);
    details.rip = measures_rip(arena, wall, &details.plank);
    details.laps = or_nothing(measures_laps(arena, wall, &details.plank));
    details.ends = or_nothing(measures_ends(arena, wall, &details.plank));
    details.miters = or_nothing(measures_miters(arena, job->layout, piece));
    details.closer = closer_words(arena, wall, piece, details.length);
    details.shows = or_nothing(measures_shows(arena, job->layout, piece));
    details.cuts = measures_cuts(arena, wall, &wall->faces.at[piece->face], &details.plank);
    return details;
}

static void add_closer(Sheet *sheet, SheetLines *lines, int at, const char *closer)
{
    enum { FOUND = 60 };
    SheetLine *line = sheet_line(sheet, lines);
    sheet_cell(sheet, line, at, FOUND - at - 1, ALIGN_LEFT, WEIGHT_STRONG, closer);
    sheet_pencil(sheet, line, FOUND, SHEET_COLUMNS - FOUND, "found");
}

void details_add(Sheet *sheet, SheetLines *lines, int at, const Job *job, const Piece *piece)
{
    Arena *arena = sheet->arena;
    const PieceDetails details = details_of(arena, job, piece);
    const char *texts[] = {details.laps, details.ends, details.miters};
    for (size_t i = 0; i < sizeof texts / sizeof *texts; i++)
        if (texts[i][0] != '\0')
            sheet_words(sheet, lines, at, WEIGHT_TEXT, texts[i]);
    for (int i = 0; i < details.plank.cut_count; i++)
        sheet_words(
            sheet, lines, at, WEIGHT_TEXT,
            measures_cut(arena, job->wall, &job->wall->faces.at[piece->face], &details.plank, &details.plank.cuts[i]));
    if (details.closer[0] != '\0')
        add_closer(sheet, lines, at, details.closer);
    if (details.shows[0] != '\0')
        sheet_words(sheet, lines, at, WEIGHT_TEXT, details.shows);
}

const char *details_stretches(Arena *arena, const Wall *wall, const Stretches *stretches)
{
    const char *all = "";
    for (int i = 0; i < stretches->count; i++)
        all = words(arena, "%s%s%s to %s", all, i > 0 ? "; " : "", words_decimal(arena, wall, stretches->at[i].from),
                    words_decimal(arena, wall, stretches->at[i].to));
    return all;
}

const char *details_board(Arena *arena, const Wall *wall, int number)
{
    const Stock *stock = wall_board(wall, number);
    if (stock == NULL || stock->label[0] != '\0')
        return words_board(arena, wall, number);
    const char *tone = stock->tone[0] == '\0' ? "" : words(arena, " %s", words_name(arena, stock->tone));
    return words(arena, "%d \u00b7 %s%s", number, words_length(arena, wall, stock->length), tone);
}
