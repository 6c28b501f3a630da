/*
 * Saw settings for planks under rakes. Roof pitches in degrees: arc tangent of rise over run, 12 in 12 is 45 degrees,
 * 8 in 12 is 33.7, 4 in 12 is 18.4 (from memory: framing square tables).
 */
#include "support/test.h"

#include "support/plain.h"
#include "trade/rakes.h"

/* A gable 96 in wide, its ceiling rising `left` in 12 to the middle and falling `right` in 12. */
static const char *gable(Bench *bench, Length left, Length right)
{
    *bench = bench_new(INCHES(96), 0, INCHES(40), INCHES(4), 0);
    Face *face = &bench->wall->faces.at[0];
    *arena_push(bench->arena, &face->floor) = (Mark){0, INCHES(10)};
    *arena_push(bench->arena, &face->ceiling) = (Mark){0, INCHES(10)};
    *arena_push(bench->arena, &face->ceiling) = (Mark){INCHES(48), INCHES(10) + 4 * left};
    *arena_push(bench->arena, &face->ceiling) = (Mark){INCHES(96), INCHES(10) + 4 * (left - right)};
    bench->layout = layout_wall(bench->arena, bench->wall, NULL);
    assert_non_null(bench->layout);
    return rake_words(bench->arena, bench->layout, 0);
}

START_TEST(angles_under_a_rake_are_told_in_degrees)
{
    Bench bench;
    const char *text = gable(&bench, INCHES(12), INCHES(8));
    assert_holds(text, "Under the ceiling from 0 in to 48 in: 45 degrees off square (45 to the plank's edge).");
    assert_holds(text, "Under the ceiling from 48 in to 96 in: 56.3 degrees off square (33.7 to the plank's edge).");
    arena_free(bench.arena);
    text = gable(&bench, INCHES(4), INCHES(4));
    assert_holds(text, "from 0 in to 48 in: 71.6 degrees off square (18.4 to the plank's edge).");
    arena_free(bench.arena);
    assert_null(gable(&bench, INCHES(1), INCHES(1))); /* 1 in 12: a taper, no rake */
    arena_free(bench.arena);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        angles_under_a_rake_are_told_in_degrees,
    };
    return RUN(tests);
}
