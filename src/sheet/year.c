#include "sheet/year.h"

#include "job/words.h"
#include "trade/say.h"
#include "trade/season.h"

/* "the reveal of 1/16 in is 5/64 in when driest, 3/64 in when dampest". */
static const char *reveal_words(Arena *arena, const Wall *wall, const Seasons *seasons)
{
    if (wall->planks.reveal <= 0)
        return "there is no reveal for them to move into";
    const char *damp = seasons->damp.closes > 0 ? "nothing" : say_fine(arena, wall, seasons->damp.reveal);
    const char *dry = seasons->dry.closes > 0 ? "nothing" : say_fine(arena, wall, seasons->dry.reveal);
    return words(arena, "the reveal of %s is %s when driest, %s when dampest",
                 say_fine(arena, wall, wall->planks.reveal), dry, damp);
}

/* "shrink 1/2 in", "grow 3/8 in" */
static const char *change_words(Arena *arena, const Wall *wall, Length change)
{
    return words(arena, "%s %s", change < 0 ? "shrink" : "grow", say_fine(arena, wall, change < 0 ? -change : change));
}

const char *year_words(Arena *arena, const Job *job, int face)
{
    Seasons seasons = season_of_wall(job->wall);
    const SeasonFace *faces = seasons.given ? season_faces(arena, job->layout) : NULL;
    if (faces == NULL || faces[face].wood == 0)
        return NULL;
    return words(arena,
                 "Through the year %s; all planks of this face together %s when driest, %s when dampest. These are "
                 "means (FPL-GTR-282, ch. 4 and 13): single boards scatter round them.",
                 reveal_words(arena, job->wall, &seasons), change_words(arena, job->wall, faces[face].dry),
                 change_words(arena, job->wall, faces[face].damp));
}
