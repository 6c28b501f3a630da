/* The nailing page: a face 1000 mm wide, planks of 100 mm in one course. */
#include "layout/made.h"

#include "sheet/shown.h"

static Made wall_of(Length first, Length spacing, int boards, Length length)
{
    Made made = made_new(UNITS_MM, MM(100), MM(10), 0);
    Face *face = made_face(&made, "north", MM(1000), 0, MM(100));
    face->studs = (Studs){.given = true, .regular = true, .first = first, .spacing = spacing};
    made.wall->joints.shortest = MM(100);
    Stock *stock = arena_push(made.arena, &made.wall->stock);
    *stock = (Stock){.length = length, .count = boards};
    stock->label = stock->tone = arena_text(made.arena, "", 0);
    return made;
}

/* Studs at 250 and 750: one plank over both, and 250 beyond each of them. */
START_TEST(a_plank_on_two_studs_is_on_no_list)
{
    Made made = wall_of(MM(250), MM(500), 1, MM(1000));
    Sheet *nails = sheet_nails(made.arena, shown_job(made.arena, made_layout(&made)), "");
    const char *text = shown(nails);
    assert_holds(text, "Predrill within ");
    assert_holds(text, "1 at 250; 2 at 750.");
    assert_holds(text, "No joint stands on a stud; 0 joints stand between studs.");
    assert_lacks(text, "1 piece:");
    assert_string_equal(shown_field(nails, 0, "studs that hold"), "2");
    assert_string_equal(shown_field(nails, 0, "left end beyond"), "250");
    assert_string_equal(shown_field(nails, 0, "right end beyond"), "250");
    assert_string_equal(shown_field(nails, 0, "left end on stud"), "");
    arena_free(made.arena);
}
END_TEST

/* Two planks of 500 that meet on the stud at 500; each has one more. */
START_TEST(a_joint_on_a_stud_is_named)
{
    Made made = wall_of(MM(100), MM(400), 2, MM(500));
    made.wall->planks.thickness = MM(12);
    made.wall->fasteners = (Fasteners){.given = true, .length_given = true, .length = MM(40), .drywall = MM(13)};
    Sheet *nails = sheet_nails(made.arena, shown_job(made.arena, made_layout(&made)), "");
    const char *text = shown(nails);
    assert_holds(text, "Joints on a stud, between pieces 1 and 2; 0 joints stand between studs.");
    assert_holds(text, "Fasteners of 40 mm go through 25 mm and reach 15 mm into the stud.");
    assert_string_equal(shown_field(nails, 0, "right end on stud"), "yes");
    assert_string_equal(shown_field(nails, 1, "left end on stud"), "yes");
    arena_free(made.arena);
}
END_TEST

/* One stud for the whole plank: it can turn on it. Stated as a count, and by its number. */
START_TEST(a_plank_on_one_stud_is_listed)
{
    Made made = wall_of(MM(450), MM(5000), 1, MM(1000));
    const char *text = shown(sheet_nails(made.arena, shown_job(made.arena, made_layout(&made)), ""));
    assert_holds(text, "1 piece: one stud alone holds each.");
    assert_holds(text, "\n1.\n");
    arena_free(made.arena);
}
END_TEST

START_TEST(short_fasteners_are_told)
{
    Made made = wall_of(MM(250), MM(500), 1, MM(1000));
    made.wall->planks.thickness = MM(12);
    made.wall->fasteners = (Fasteners){.given = true, .length_given = true, .length = MM(20), .drywall = MM(13)};
    assert_holds(shown(sheet_nails(made.arena, shown_job(made.arena, made_layout(&made)), "")),
                 "do not reach a stud: 25 mm lies before it. Take longer");
    made.wall->faces.at[0].studs = (Studs){0};
    assert_holds(shown(sheet_nails(made.arena, shown_job(made.arena, made_layout(&made)), "")),
                 "No studs are written down for this face.");
    arena_free(made.arena);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        a_plank_on_two_studs_is_on_no_list,
        a_joint_on_a_stud_is_named,
        a_plank_on_one_stud_is_listed,
        short_fasteners_are_told,
    };
    return RUN(tests);
}
