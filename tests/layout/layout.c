/*
 * Layouts small enough to be worked by hand.
 */
#include "layout/made.h"

#include <string.h>

static void assert_outline(Points outline, int count, const Length *pairs)
{
    assert_int_equal(outline.count, count);
    for (int i = 0; i < count; i++) {
        assert_int_equal(outline.at[i].x, pairs[2 * i]);
        assert_int_equal(outline.at[i].y, pairs[2 * i + 1]);
    }
}

#define OUTLINE(outline, ...) \
    assert_outline((outline), (int)(sizeof((Length[]){__VA_ARGS__}) / sizeof(Length) / 2), (Length[]){__VA_ARGS__})

/* The example of the plan's description: planks of 2 3/4 in, reveal 1/16, start 2 1/4; the left side leans in 1/8 in
 * over 93 in. */
static Made reading_wall(void)
{
    Made made = made_new(UNITS_IN, IN(2.75), IN(0.0625), IN(2.25));
    Face *face = made_face(&made, "north", IN(141.375), 0, 0);
    made_marks(&made, &face->floor, 2, (Length[]){0, IN(40.5), IN(141.375), IN(39.9375)});
    made_marks(&made, &face->ceiling, 3, (Length[]){0, IN(53), IN(70), IN(53.1875), IN(141.375), IN(52.875)});
    made_marks(&made, &face->left, 2, (Length[]){IN(-40), 0, IN(53), IN(0.125)});
    made_marks(&made, &face->right, 1, (Length[]){IN(-40), 0});
    face->margin = (Margin){.floor = IN(0.25), .ceiling = IN(0.125)};
    Opening *outlet = made_opening(&made, face, "desk outlet", IN(37), IN(-27.5), IN(2.25), IN(3.75));
    outlet->kind = OPENING_BOX;
    outlet->clear = IN(0.0625);
    return made;
}

static void leaning_side(void **state)
{
    (void)state;
    Made made = reading_wall();
    const Layout *layout = made_layout(&made);
    const FaceLayout *face = &layout->faces[0];
    const Course *course = made_course(layout, 0, -10);
    assert_int_equal(course->bottom, -657225000);
    assert_int_equal(course->top, -587375000);
    assert_int_equal(course->rip.shape, RIP_FULL);
    assert_int_equal(course->rip.least, 69850000);
    assert_int_equal(course->left, 482224);
    assert_int_equal(course->segment_count, 1);
    assert_int_equal(course->segments[0].left, 482224);
    assert_int_equal(course->segments[0].right, 3590925000);
    OUTLINE(layout_outline(made.arena, face, course, 482224, 1168882224), 482224, -657225000, 1168882224, -657225000,
            1168882224, -587375000, 576109, -587375000);
    const Cutouts cutouts = layout_cutouts(made.arena, face, course, 482224, 1168882224);
    assert_int_equal(cutouts.count, 1);
    assert_int_equal(cutouts.at[0].shape, CUT_BOTTOM);
    assert_int_equal(cutouts.at[0].box.left, 938212500);
    assert_int_equal(cutouts.at[0].box.right, 998537500);
    assert_int_equal(cutouts.at[0].box.bottom, -657225000);
    assert_int_equal(cutouts.at[0].box.top, -601662500);
    arena_free(made.arena);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(leaning_side),
    };
    return RUN(tests);
}
