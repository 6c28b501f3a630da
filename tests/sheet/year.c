/*
 * The seasons in a sentence. White pine, flat, 2 3/4 in wide, hung at 68 F and 45 %, driest 70 F and 25 %, dampest 75 F
 * and 65 %: by eq. 4-5 and 13-2 of the Wood Handbook (FPL-GTR-282) the reveal of 1.5875 mm becomes 2.05189 and 1.087942
 * mm, one plank shrinks 0.46439 and grows 0.499558 mm; four of them 1.858 and 1.998 mm, 5/64 in both.
 */
#include "layout/made.h"

#include "sheet/shown.h"
#include "sheet/year.h"

static Air air(int temperature, int humidity)
{
    return (Air){.temperature = temperature * 1000, .humidity = humidity * 1000};
}

static Made bench_new(void)
{
    Made made = made_new(UNITS_IN, IN(2.75), IN(0.0625), 0);
    made_face(&made, "north", IN(100), 0, IN(11.1875));
    static char species[] = "pine, eastern white";
    made.wall->wood = (Wood){.given = true,
                             .species = species,
                             .grain = GRAIN_FLAT,
                             .hung = air(68, 45),
                             .dry = air(70, 25),
                             .damp = air(75, 65)};
    return made;
}

static const char *sentence(Made *made)
{
    return year_words(made->arena, shown_job(made->arena, made_layout(made)), 0);
}

START_TEST(the_chart_follows_the_year)
{
    Made made = bench_new();
    assert_holds(sentence(&made),
                 "Through the year the reveal of 1/16 in is 5/64 in when driest, 3/64 in when dampest; "
                 "all planks of this face together shrink 5/64 in when driest, grow 5/64 in when "
                 "dampest.");
    arena_free(made.arena);
}
END_TEST

/* The damp season takes 0.499558 mm: a reveal of 0.4 mm closes. */
START_TEST(a_reveal_that_closes_is_drawn_closed)
{
    Made made = bench_new();
    made.wall->planks.reveal = 400000;
    assert_holds(sentence(&made), "is 1/32 in when driest, nothing when dampest;");
    made.wall->planks.reveal = 0;
    assert_holds(sentence(&made), "Through the year there is no reveal for them to move into; all planks");
    arena_free(made.arena);
}
END_TEST

START_TEST(on_the_row_sheet)
{
    Made made = bench_new();
    assert_holds(shown(sheet_rows(made.arena, shown_job(made.arena, made_layout(&made)), "")), "Through the year");
    made.wall->wood.given = false;
    assert_null(sentence(&made));
    assert_null(
        strstr(shown(sheet_rows(made.arena, shown_job(made.arena, made_layout(&made)), "")), "Through the year"));
    arena_free(made.arena);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        the_chart_follows_the_year,
        a_reveal_that_closes_is_drawn_closed,
        on_the_row_sheet,
    };
    return RUN(tests);
}
