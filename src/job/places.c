#include "job/places.h"

Places places_of_plan(Arena *arena, const Layout *layout, const Plan *plan)
{
    int faces = layout->wall->faces.count;
    int *first = arena_array(arena, int, faces + 1);
    for (int i = 0; i < faces; i++)
        first[i + 1] = first[i] + layout->faces[i].course_count;
    Places places = {.face_first = first, .at = arena_array(arena, Place, first[faces])};
    for (int i = 0; i < plan->piece_count; i++) {
        Place *place = &places.at[first[plan->pieces[i].face] + plan->pieces[i].course];
        if (place->piece_count++ == 0)
            place->piece_first = i;
    }
    for (int i = 0; i < plan->bare_count; i++) {
        Place *place = &places.at[first[plan->bare[i].face] + plan->bare[i].course];
        if (place->bare_count++ == 0)
            place->bare_first = i;
    }
    return places;
}

Place places_get(const Places *places, int face, int course)
{
    return places->at[places->face_first[face] + course];
}

int *places_course_order(Arena *arena, const Wall *wall, const FaceLayout *face)
{
    int *order = arena_array(arena, int, face->course_count);
    int count = 0;
    for (int i = 0; i < face->course_count; i++)
        if (face->courses[i].number >= 0 || wall_hangs_upward(wall))
            order[count++] = i;
    for (int i = face->course_count - 1; i >= 0; i--)
        if (face->courses[i].number < 0 && !wall_hangs_upward(wall))
            order[count++] = i;
    return order;
}
