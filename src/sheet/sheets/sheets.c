#include "sheet/sheets/sheets.h"

#include "job/words.h"
#include "sheet/plan_number.h"

Sheet *sheet_of_job(Arena *arena, const Job *job, const char *kind, const char *date)
{
    const Wall *wall = job->wall;
    Sheet *sheet = arena_one(arena, Sheet);
    sheet->arena = arena;
    sheet->kind = kind;
    sheet->title = words_name(arena, wall->title[0] == '\0' ? "A wall without a title" : wall->title);
    sheet->facts = words(arena, "%s; start %s", words_units(arena, wall), words_mark(arena, wall, wall->start));
    sheet->file = words_name(arena, job->file);
    sheet->hash = job->hash;
    sheet->plan = plan_number(arena, job);
    sheet->date = date;
    return sheet;
}
