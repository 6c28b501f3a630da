#include "job/start_words.h"

#include <inttypes.h>

#include "job/words.h"
#include "trade/say.h"

const char *start_words_why(Arena *arena, const Start *start)
{
    const char *why = "";
    for (int i = 0; i < start->why_count; i++)
        why = words(arena, "%s%s%s", why, i > 0 ? ", " : "", words_name(arena, start->why[i]));
    return why;
}

/* "course 3 of north, at the ceiling" */
const char *start_words_where(Arena *arena, const Wall *wall, const Strip *strip)
{
    if (!strip->found)
        return "no strip anywhere";
    const Face *face = &wall->faces.at[strip->face];
    const char *at = strip->at_floor ? "at the floor" : "at the ceiling";
    if (strip->opening >= 0)
        at = words(arena, "beside %s", words_name(arena, face->openings.at[strip->opening].name));
    return words(arena, "course %" PRId64 " of %s, %s", strip->course, words_name(arena, face->name), at);
}

static const char *edge_words(Arena *arena, const Wall *wall, Length strip, bool reveal)
{
    if (strip >= 0)
        return words_length(arena, wall, strip);
    return reveal ? "a reveal" : "whole courses or nothing";
}

const char *start_words_strips(Arena *arena, const Wall *wall, const Start *start)
{
    const char *least = words_length_unit(arena, wall, wall_least(wall));
    return words(arena, "Narrowest: %s. At ceilings %s, at floors %s; %s.",
                 start_words_where(arena, wall, &start->narrowest), words_length(arena, wall, start->ceiling),
                 words_length(arena, wall, start->floor),
                 start->thin == 0
                     ? words(arena, "no strip is under %s", least)
                     : words(arena, "strips under %s along %s", least, words_length_unit(arena, wall, start->thin)));
}

const char *start_words_opening(Arena *arena, const Wall *wall, const StartOpening *opening)
{
    const Face *face = &wall->faces.at[opening->face];
    return words(arena, "%s (%s): above it %s, below it %s",
                 words_name(arena, face->openings.at[opening->opening].name), words_name(arena, face->name),
                 edge_words(arena, wall, opening->above, opening->reveal_above),
                 edge_words(arena, wall, opening->below, opening->reveal_below));
}

static const char *cutout_words(Arena *arena, const Start *start, int shallow)
{
    if (start->cutouts == 0)
        return "No cutouts";
    const char *count = say_count(arena, start->cutouts, "cutout", "cutouts");
    if (shallow == 0)
        return count;
    return shallow == start->cutouts ? words(arena, "%s, nowhere 1/8 in (3 mm) deep", count)
                                     : words(arena, "%s, %d of them nowhere 1/8 in (3 mm) deep", count, shallow);
}

const char *start_words_work(Arena *arena, const Start *start, const StartWork *work)
{
    const char *cutouts = cutout_words(arena, start, work->shallow);
    if (work->boards == START_BOARDS_UNKNOWN)
        return words(arena, "%s.", cutouts);
    return words(arena, "%s. About %s, before the plan is improved.", cutouts,
                 say_count(arena, work->boards, "board", "boards"));
}
