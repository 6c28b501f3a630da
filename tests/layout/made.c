#include "layout/made.h"

#include <string.h>

Made made_new(Units units, Length plank, Length reveal, Length start)
{
    Arena *arena = arena_new();
    Made made = {arena, wall_new(arena, units)};
    *arena_push(arena, &made.wall->planks.widths) = plank;
    made.wall->planks.reveal = reveal;
    made.wall->planks.thickness = 12 * LENGTH_MM;
    made.wall->start = start;
    return made;
}

void made_marks(Made *made, Marks *marks, int count, const Length *pairs)
{
    *marks = (Marks){0};
    for (int i = 0; i < count; i++)
        *arena_push(made->arena, marks) = (Mark){pairs[2 * i], pairs[2 * i + 1]};
}

Face *made_face(Made *made, const char *name, Length width, Length lower, Length upper)
{
    Face *face = arena_push(made->arena, &made->wall->faces);
    face->id = made->wall->next_id++;
    face->name = arena_text(made->arena, name, strlen(name));
    face->width = width;
    made_marks(made, &face->floor, 1, (Length[]){0, -lower});
    made_marks(made, &face->ceiling, 1, (Length[]){0, upper});
    return face;
}

Opening *made_opening(Made *made, Face *face, const char *name, Length left, Length bottom, Length width, Length height)
{
    Opening *opening = arena_push(made->arena, &face->openings);
    opening->id = made->wall->next_id++;
    opening->name = arena_text(made->arena, name, strlen(name));
    opening->kind = OPENING_WINDOW;
    opening->left = left;
    opening->bottom = bottom;
    opening->width = width;
    opening->height = height;
    return opening;
}

const Layout *made_layout(Made *made)
{
    Err err = {0};
    const Layout *layout = layout_wall(made->arena, made->wall, &err);
    if (layout == NULL)
        FAIL("refused: %s", err.text);
    return layout;
}

const Course *made_course(const Layout *layout, int face, int64_t number)
{
    const int index = layout_course_index(&layout->faces[face], number);
    if (index < 0)
        FAIL("no course %d", (int)number);
    return &layout->faces[face].courses[index];
}

int made_findings(const Layout *layout, Rule rule, const char **text)
{
    int count = 0;
    for (int i = 0; i < layout->findings.count; i++)
        if (layout->findings.at[i].rule == rule && count++ == 0 && text != NULL)
            *text = layout->findings.at[i].text;
    return count;
}
