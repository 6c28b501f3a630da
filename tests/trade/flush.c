/*
 * How far planks end before or behind a casing: backing and thickness less what the casing stands out of the bare wall.
 * Each case is worked by hand.
 */
#include "layout/made.h"

#include "trade/flush.h"

#include <string.h>

/* A face of 60 in with planks 1/2 in thick, and a window that planks are cut for. */
static Made bench_new(Length backing, Length proud)
{
    Made made = made_new(UNITS_IN, IN(3), 0, 0);
    made.wall->planks.thickness = IN(0.5);
    Face *face = made_face(&made, "north", IN(60), 0, IN(9));
    face->backing = backing;
    Opening *window = made_opening(&made, face, "port", IN(20), IN(2), IN(10), IN(5));
    window->kind = OPENING_WINDOW;
    window->proud_given = true;
    window->proud = proud;
    return made;
}

static const struct {
    Length backing, proud, beyond;
    const char *text; /* after "At port the planks " */
} cases[] = {
    {0, IN(0.75), -IN(0.25),
     "end 1/4 in behind its casing. A backing of 1/4 in on north, or planks 3/4 in thick, would make"},
    {IN(0.25), IN(1), -IN(0.25), "end 1/4 in behind its casing. A backing of 1/2 in on north, or planks 3/4 in thick,"},
    {IN(0.75), IN(1), IN(0.25),
     "stand out 1/4 in beyond its casing. A backing of 1/2 in on north, or planks 1/4 in thick"},
    {IN(0.25), IN(0.5), IN(0.25),
     "stand out 1/4 in beyond its casing. No backing on north, or planks 1/4 in thick, would"},
    {0, IN(0.25), IN(0.25), "stand out 1/4 in beyond its casing. Planks 1/4 in thick would make them flush."},
    {IN(1), IN(0.75), IN(0.75),
     "stand out 3/4 in beyond its casing. A backing of 1/4 in on north would make them flush."},
    {0, 0, IN(0.5), "stand out 1/2 in beyond its casing. No planks are that thin: "},
    {IN(0.25), IN(0.75), 0, "are flush with its casing."},
    {IN(0.25), IN(0.75) + 1000, -1000, "are flush with its casing."},
};

START_TEST(planks_end_before_or_behind_a_casing)
{
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        Made made = bench_new(cases[i].backing, cases[i].proud);
        const Layout *layout = made_layout(&made);
        Findings findings = {0};
        Length beyond;
        assert_true(flush_beyond(layout, 0, 0, &beyond));
        assert_int_equal(beyond, cases[i].beyond);
        assert_holds(flush_words(made.arena, layout, 0, 0), cases[i].text);
        flush_findings(made.arena, layout, &findings);
        const bool flush = i + 2 >= sizeof cases / sizeof *cases;
        assert_int_equal(findings.count, !flush);
        if (!flush) {
            assert_int_equal(findings.at[0].rule, RULE_FLUSH);
            assert_int_equal(findings.at[0].opening, 0);
        }
        arena_free(made.arena);
    }
}
END_TEST

START_TEST(what_was_not_measured_is_not_told)
{
    Made made = bench_new(0, IN(1));
    made.wall->faces.at[0].openings.at[0].proud_given = false;
    assert_null(flush_words(made.arena, made_layout(&made), 0, 0));
    made.wall->faces.at[0].openings.at[0].proud_given = true;
    made.wall->faces.at[0].openings.at[0].left = IN(200); /* off the wall: no plank ends there */
    assert_null(flush_words(made.arena, made_layout(&made), 0, 0));
    arena_free(made.arena);
}
END_TEST

START_TEST(each_kind_has_its_own_around_it)
{
    static const struct {
        OpeningKind kind;
        const char *around;
    } kinds[] = {
        {OPENING_DOOR, "casing"}, {OPENING_FIREPLACE, "surround"}, {OPENING_PIPE, "collar"}, {OPENING_VENT, "front"}};
    for (size_t i = 0; i < sizeof kinds / sizeof *kinds; i++) {
        Made made = bench_new(0, IN(1));
        made.wall->faces.at[0].openings.at[0].kind = kinds[i].kind;
        const char *words = flush_words(made.arena, made_layout(&made), 0, 0);
        assert_holds(words, kinds[i].around);
        const bool hot = kinds[i].kind == OPENING_FIREPLACE || kinds[i].kind == OPENING_PIPE;
        assert_int_equal(strstr(words, "First heed what is said of fire.") != NULL, hot);
        arena_free(made.arena);
    }
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {planks_end_before_or_behind_a_casing, what_was_not_measured_is_not_told,
                                  each_kind_has_its_own_around_it};
    return RUN(tests);
}
