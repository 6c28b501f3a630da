#include "sheet/sheets/saw_angles.h"

#include <stdlib.h>
#include <string.h>

#include "job/words.h"
#include "trade/corner.h"
#include "trade/trim_slope.h"
#include "wall/straight.h"

/* Of an end that slants across the width: `inside` tells how far its two edges end inside the outermost point, `whole`
 * is the plank's width where the slant begins. */
static const char *slant_words(Arena *arena, const Wall *wall, const PlankEnd *end, Length whole)
{
    if (marks_alike(wall, end->lower, end->upper))
        return NULL;
    if (end->lower > 0 && end->upper > 0)
        return "slanted from both edges: mark it";
    const Length shift = end->lower > end->upper ? end->lower : end->upper;
    return words(arena, "slanted, about %s degrees off square, %s edge longer",
                 slope_degrees(arena, shift, whole - end->height), end->lower < end->upper ? "lower" : "upper");
}

/* What is cut through the thickness comes first; what also slants across the width is a compound cut. */
static const char *end_words(Arena *arena, const PieceEnd *end, const char *slant)
{
    const bool through = end->cut == END_MITER || end->cut == END_BEVEL;
    if (!through)
        return slant;
    return slant == NULL ? end->text : words(arena, "%s; and %s", end->text, slant);
}

SawAngles saw_angles(Arena *arena, const Job *job, const Piece *piece, const Plank *plank)
{
    PieceEnd left, right;
    corner_piece_ends(arena, job->layout, piece, &left, &right);
    const Length at_left = plank->widths[0].width, at_right = plank->widths[plank->width_count - 1].width;
    return (SawAngles){
        .left = end_words(arena, &left, slant_words(arena, job->wall, &plank->left, at_left)),
        .right = end_words(arena, &right, slant_words(arena, job->wall, &plank->right, at_right)),
    };
}

void saw_settings_add(Arena *arena, SawSettings *settings, int piece, bool right, const char *angle)
{
    if (angle == NULL)
        return;
    int i = 0;
    while (i < settings->count && strcmp(settings->at[i].angle, angle) != 0)
        i++;
    if (i == settings->count)
        *arena_push(arena, settings) = (SawSetting){.angle = angle};
    *arena_push(arena, &settings->at[i]) = (SawEnd){piece, right};
}

static int rising(const void *a, const void *b)
{
    const int *x = a, *y = b;
    return (*x > *y) - (*x < *y);
}

const char *saw_number_list(Arena *arena, const char *before, int *numbers, int count)
{
    if (count > 1)
        qsort(numbers, (size_t)count, sizeof *numbers, rising);
    const char *list = before;
    for (int i = 0; i < count; i++)
        list = words(arena, "%s%s %d", list, i > 0 ? "," : "", numbers[i]);
    return list;
}

const char *saw_setting_ends(Arena *arena, SawSetting *setting)
{
    static const char *const one[] = {"Left end of piece", "Right end of piece"};
    static const char *const many[] = {"Left ends of pieces", "Right ends of pieces"};
    const char *all = "";
    for (int right = 0; right <= 1; right++) {
        int *numbers = arena_array(arena, int, setting->count);
        int count = 0;
        for (int i = 0; i < setting->count; i++)
            if (setting->at[i].right == (right == 1))
                numbers[count++] = setting->at[i].piece;
        if (count > 0)
            all = words(arena, "%s%s%s.", all, all[0] == '\0' ? "" : " ",
                        saw_number_list(arena, count == 1 ? one[right] : many[right], numbers, count));
    }
    return all;
}
