/*
 * Every figure on the bill of the boathouse reading wall, worked out again from the wall file's own numbers and the
 * pieces of the plan, in plain arithmetic: inches, feet, percent. Sources: 12 / exposed face and 10 % (WWPA, Table
 * 4); stock under 1 in counts as 1 in, 144 cubic inches a board foot (NAVEDTRA 14044); a dressed width of 3 1/2 in is
 * nominal 4 in (PS 20-20); 231 cubic inches and 128 fluid ounces a gallon; 400 sq ft a gallon, two coats, two fasteners
 * a piece at least, trim nails every 16 in (common practice).
 */
#include "support/test.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "sheet/sheets/sheets.h"
#include "store/store.h"

#define PI 3.14159265358979
#define SPARE 1.1

typedef struct Bench {
    Arena *arena;
    const Job *job;
    const Sheet *bill;
    bool *checked; /* of each record */
} Bench;

static double inches(Length length)
{
    return (double)length / (double)LENGTH_INCH;
}

static Bench bench_new(void)
{
    Bench bench = {.arena = arena_new()};
    char path[1000];
    Source source = {0};
    Errs errs = {0};
    Err err = {0};
    snprintf(path, sizeof path, "%s/samples/reading-wall.yaml", getenv("DATUMROW_SOURCE"));
    assert_true(store_read(bench.arena, path, &source, &errs));
    bench.job = job_of_wall(bench.arena, source.wall, "reading-wall.yaml", "", &err);
    assert_non_null(bench.job);
    bench.bill = sheet_bill(bench.arena, bench.job, "");
    bench.checked = arena_array(bench.arena, bool, bench.bill->records.count);
    return bench;
}

/* The amount of the one line that begins with `what`, which is shown in `unit` and with so many decimals, is `expected`
 * when that is rounded to them. */
static void assert_line(Bench *bench, const char *what, double expected, int decimals, const char *unit)
{
    enum { WHAT = 1, AMOUNT = 2, UNIT = 3 };
    const SheetRecords *records = &bench->bill->records;
    assert_string_equal(records->names[WHAT], "what");
    assert_string_equal(records->names[AMOUNT], "amount");
    assert_string_equal(records->names[UNIT], "unit");
    for (int i = 0; i < records->count; i++) {
        const char **field = records->at[i].at;
        if (strncmp(field[WHAT], what, strlen(what)) != 0)
            continue;
        char shown[64];
        snprintf(shown, sizeof shown, "%.*f", decimals, expected);
        if (strcmp(field[AMOUNT], shown) != 0 || strcmp(field[UNIT], unit) != 0)
            FAIL("%s: %s %s, worked out as %s %s", what, field[AMOUNT], field[UNIT], shown, unit);
        assert_false(bench->checked[i]);
        bench->checked[i] = true;
        return;
    }
    FAIL("no line begins with \"%s\"", what);
}

/* Square inches of wood: each piece's outline by its corners, less the rectangles cut out of it. */
static double net_area(const Bench *bench)
{
    double area = 0;
    for (int i = 0; i < bench->job->plan->piece_count; i++) {
        const Piece *piece = &bench->job->plan->pieces[i];
        const FaceLayout *face = &bench->job->layout->faces[piece->face];
        const Course *course = &face->courses[piece->course];
        Points corners = layout_outline(bench->arena, face, course, piece->left, piece->right);
        Cutouts cutouts = layout_cutouts(bench->arena, face, course, piece->left, piece->right);
        for (int k = 0; k < corners.count; k++) {
            const Point *a = &corners.at[k], *b = &corners.at[(k + 1) % corners.count];
            area += (inches(a->x) * inches(b->y) - inches(b->x) * inches(a->y)) / 2;
        }
        for (int k = 0; k < cutouts.count; k++) {
            const Box *box = &cutouts.at[k].box;
            area -= inches(box->right - box->left) * inches(box->top - box->bottom);
        }
    }
    return area;
}

static double running_length(const Bench *bench)
{
    double length = 0;
    for (int i = 0; i < bench->job->plan->piece_count; i++)
        length += inches(bench->job->plan->pieces[i].right - bench->job->plan->pieces[i].left);
    return length;
}

/* One line of the file's stock: its boards are numbered from `first` on; the length as the file has it. */
static const struct {
    const char *length;
    double inches;
    int first, count;
} stock[] = {
    {"31 1/2", 31.5, 1, 22},     {"27 3/4", 27.75, 23, 18}, {"24", 24, 41, 16},       {"35", 35, 57, 14},
    {"42", 42, 71, 10},          {"38 1/4", 38.25, 81, 12}, {"29", 29, 93, 15},       {"19 3/4", 19.75, 108, 12},
    {"33 5/8", 33.625, 120, 11}, {"26 1/2", 26.5, 131, 12}, {"58 1/2", 58.5, 143, 1}, {"62 1/4", 62.25, 144, 1},
    {"54", 54, 145, 1},          {"49 3/4", 49.75, 146, 1}, {"66", 66, 147, 1},       {"71 3/8", 71.375, 148, 1},
    {"70 1/4", 70.25, 149, 1},   {"47", 47, 150, 1},
};
enum { STOCK = sizeof stock / sizeof *stock };

static int opened_of(const Bench *bench, int line)
{
    bool cut[151] = {false};
    int opened = 0;
    for (int i = 0; i < bench->job->plan->piece_count; i++)
        cut[bench->job->plan->pieces[i].board] = true;
    for (int board = stock[line].first; board < stock[line].first + stock[line].count; board++)
        opened += cut[board];
    return opened;
}

/* The last eight lines of the stock are single boards of odd lengths: one line of the bill. */
static void planks(Bench *bench)
{
    double feet = 0;
    int all = 0, odd = 0;
    for (int i = 0; i < STOCK; i++) {
        int opened = opened_of(bench, i);
        char what[100];
        feet += opened * 1 * 2.75 * stock[i].inches / 144;
        all += opened;
        if (stock[i].count == 1)
            odd += opened;
        if (opened == 0 || stock[i].count == 1)
            continue;
        snprintf(what, sizeof what, "boards %s in long, 2 3/4 in wide (%d on hand)", stock[i].length, stock[i].count);
        assert_line(bench, what, opened, 0, "boards");
    }
    assert_true(odd >= 4);
    assert_line(bench, "boards of odd lengths, 47 in to 71 3/8 in long, 2 3/4 in wide (8 on hand)", odd, 0, "boards");
    assert_line(bench, "boards in all, with spare (150 on hand)", (all * 11 + 9) / 10, 0, "boards");
    assert_line(bench, "boards used, by dressed width, with spare", feet * SPARE, 1, "board feet");
    assert_line(bench, "boards used, by nominal size, with spare", feet * 4 / 2.75 * SPARE, 1, "board feet");
    assert_line(bench, "running length of the pieces", running_length(bench) / 12 * SPARE, 1, "ft");
    assert_line(bench, "the same by area and coverage factor", net_area(bench) / 144 * (12 / 2.75) * SPARE, 1, "ft");
}

/* One in each plank on each stud, two in each piece at least: centres at 14 1/4, 30 1/4, ... 126 1/4 in; the next would
 * stand beyond the wall. */
static int fasteners(const Bench *bench)
{
    int count = 0;
    for (int i = 0; i < bench->job->plan->piece_count; i++) {
        int on_studs = 0;
        for (int k = 0; k < 8; k++) {
            double stud = 14.25 + 16 * k;
            on_studs +=
                inches(bench->job->plan->pieces[i].left) <= stud && inches(bench->job->plan->pieces[i].right) >= stud;
        }
        count += on_studs > 2 ? on_studs : 2;
    }
    return count;
}

/* Square inches under (over) one straight stretch, from the level line. */
static double stretch(double width, double left, double right)
{
    return width * (left + right) / 2;
}

/* What may be left out. The bare wall by the marks of the file, less the window and two boxes with their clear. */
static void more(Bench *bench)
{
    const double floor = stretch(58, 39.9375, 40.125) + stretch(83.375, 40.125, 40.5);
    const double ceiling = stretch(46, 53, 52.6875) + stretch(52, 52.6875, 53.0625) + stretch(43.375, 53.0625, 52.875);
    const double bare = floor + ceiling - 44 * 38.5 - 2 * 2.375 * 3.875;
    assert_line(bench, "dark paint behind open reveals", bare / 144 / 400, 1, "gal");
    /* two at each end and every 16 in: of 92 3/4, 93 1/4, 44 and four times 70 11/16 in */
    assert_line(bench, "finish nails for trim", 2 * (7 + 7 + 4 + 4 * 6), 0, "pieces");
    assert_line(bench, "saw blade", 1, 0, "blade");
    assert_line(bench, "end sealer", 2 * bench->job->plan->piece_count, 0, "ends");
}

static int most_pieces_in_a_course(const Bench *bench)
{
    int most = 0;
    for (int course = 0; course < 35; course++) {
        int count = 0;
        for (int i = 0; i < bench->job->plan->piece_count; i++)
            count += bench->job->plan->pieces[i].course == course;
        most = count > most ? count : most;
    }
    return most;
}

START_TEST(every_figure_of_the_bill_follows_from_the_plan)
{
    Bench bench = bench_new();
    /* 2 1/4 + 18 x 2 13/16 = 52 7/8 in, just under the ceiling at most 52 15/16; 2 1/4 - 16 x 2 13/16 + 2 3/4 = -40 in,
     * just over the floor at most 40 1/4 down: courses -16 to 18 */
    assert_line(&bench, "courses on all faces", 35, 0, "courses");
    assert_line(&bench, "net area", net_area(&bench) / 144, 1, "sq ft");
    planks(&bench);
    /* 92 3/4 + 93 1/4 + 44 + 4 x 70 11/16 in; at hand 3 of 96 in, 4 of 72 in */
    assert_line(&bench, "trim in 7 pieces", 512.75 / 12 * SPARE, 1, "ft");
    assert_line(&bench, "trim stock on hand", 576 / 12.0, 1, "ft");
    assert_line(&bench, "fasteners, 1 3/4 in", ceil(fasteners(&bench) * 11 / 10.0), 0, "pieces");
    assert_line(&bench, "adhesive bead, 1/4 in across", running_length(&bench) / 12 * SPARE, 1, "ft");
    double bead = 10 * 231 / 128.0 / (PI / 4 * 0.25 * 0.25); /* 368 in, 30 ft 8 in, out of one cartridge */
    assert_line(&bench, "adhesive, cartridges of 10 fl oz", ceil(running_length(&bench) * SPARE / bead), 0,
                "cartridges");
    assert_line(&bench, "finish, all coats", net_area(&bench) / 144 * 2 / 400, 1, "gal");
    /* the desk outlet is flush with the bare wall, the lamp outlet 1/2 in out of it, as thick as the planks */
    assert_line(&bench, "box extender, 1/2 in", 1, 0, "piece");
    assert_line(&bench, "spacers for the reveal of 1/16 in", 2 * most_pieces_in_a_course(&bench), 0, "places");
    more(&bench);
    for (int i = 0; i < bench.bill->records.count; i++)
        if (!bench.checked[i])
            FAIL("not worked out here: %s", bench.bill->records.at[i].at[1]);
    arena_free(bench.arena);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {every_figure_of_the_bill_follows_from_the_plan};
    return RUN(tests);
}
