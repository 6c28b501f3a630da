#include "sheet/sheets/sheets.h"

/* Every sheet that work is done by, in the order in which it is done; hazards, faults and cautions stand on the first
 * page alone. The starts are for planning and are not among them. */
static void append(Sheet *all, const Sheet *part)
{
    for (int i = 0; i < part->sections.count; i++) {
        SheetSection section = part->sections.at[i];
        section.kind = part->kind;
        section.new_page = section.new_page || i == 0;
        *arena_push(all->arena, &all->sections) = section;
    }
}

Sheet *sheet_all(Arena *arena, const Job *job, const char *date)
{
    Sheet *all = sheet_first(arena, job, date);
    for (int i = 0; i < all->sections.count; i++)
        all->sections.at[i].kind = all->kind;
    all->kind = "All sheets";
    append(all, sheet_draw(arena, job, date));
    append(all, sheet_rows_of_all(arena, job, date));
    append(all, sheet_cuts(arena, job, date));
    append(all, sheet_batch(arena, job, date));
    append(all, sheet_pole(arena, job, date));
    append(all, sheet_nails(arena, job, date));
    append(all, sheet_bill(arena, job, date));
    if (job->wall->rough.count > 0)
        append(all, sheet_mill(arena, job, date));
    return all;
}
