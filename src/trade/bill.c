#include "trade/bill.h"

#include "base/panic.h"
#include "trade/assume.h"
#include "trade/bill_boards.h"
#include "trade/bill_parts.h"
#include "trade/nominal.h"
#include "trade/say.h"
#include "trade/trim_runs.h"

#include <inttypes.h>
#include <string.h>

/* ---- wall and planks ---- */

static Wide whole_area(const Layout *layout)
{
    Wide area = 0;
    for (int i = 0; i < layout->wall->faces.count; i++)
        area += layout->faces[i].area;
    return area;
}

static void put_wall(Bills *bills)
{
    const Layout *layout = bills->layout;
    bill_put(bills, BILL_WALL, bill_area(bills, whole_area(layout)), 1, bills->square,
             "net area: faces of planks, reveals and openings taken out");
    bill_put(bills, BILL_WALL, layout->course_total * ASSUME_ONE, 0, "course|s", "courses on all faces");
}

typedef int64_t (*Volume)(Length thickness, Length width, Length length);

/* Volume of the boards that the plan uses, by nominal or by dressed widths. */
static int64_t volume_used(const Bills *bills, Volume volume_of, Length thickness, bool nominal)
{
    const Wall *wall = bills->wall;
    Wide volume = 0;
    for (int i = 0; i < bills->plan->board_count; i++) {
        if (bills->plan->boards[i].count == 0)
            continue;
        const Stock *stock = wall_board(wall, i + 1);
        const Length width = stock->width_given ? stock->width : wall_widest(wall);
        volume += volume_of(thickness, nominal ? nominal_width(width) : width, stock->length);
    }
    return assume_fit(volume);
}

static void put_volumes(Bills *bills)
{
    const Wall *wall = bills->wall;
    Arena *arena = bills->arena;
    const int64_t spare = assume(wall, ASSUME_SPARE).value;
    if (wall->units == UNITS_MM) {
        BillLine *line =
            bill_put(bills, BILL_PLANKS,
                     assume_more(volume_used(bills, bill_cubic_metres, wall->planks.thickness, false), spare), 3, "m3",
                     bill_with_spare(bills, "boards used, as volume"));
        bill_spare(bills, line);
        return;
    }
    const Length thickness = assume(wall, ASSUME_NOMINAL).value;
    BillLine *line =
        bill_put(bills, BILL_PLANKS, assume_more(volume_used(bills, bill_board_feet, thickness, false), spare), 1,
                 "board feet", bill_with_spare(bills, "boards used, by dressed width"));
    bill_assumes(bills, line, ASSUME_NOMINAL, say(arena, "%s thick for the count", say_length(arena, wall, thickness)));
    bill_spare(bills, line);
    Length sold = nominal_thickness(wall->planks.thickness);
    if (wall->bill.nominal.given)
        sold = wall->bill.nominal.length;
    const Length counted = sold < LENGTH_INCH ? LENGTH_INCH : sold;
    line = bill_put(bills, BILL_PLANKS, assume_more(volume_used(bills, bill_board_feet, counted, true), spare), 1,
                    "board feet", bill_with_spare(bills, "boards used, by nominal size"));
    line->assumes = say(arena, "planks of %s by %s are sold as %s by %s",
                        say_length(arena, wall, wall->planks.thickness), say_length(arena, wall, wall_widest(wall)),
                        say_length(arena, wall, sold), say_length(arena, wall, nominal_width(wall_widest(wall))));
    line->source = "PS 20-20, dry boards; NAVEDTRA 14044: stock under 1 in counts as 1 in";
    bill_spare(bills, line);
}

static void put_planks(Bills *bills)
{
    const Wall *wall = bills->wall;
    Arena *arena = bills->arena;
    const int64_t spare = assume(wall, ASSUME_SPARE).value;
    bill_put_boards(bills);
    BillLine *line = bill_put(bills, BILL_PLANKS, assume_more(bill_running(bills, bills->plan->length_used), spare), 1,
                              bills->running, bill_with_spare(bills, "running length of the pieces"));
    bill_spare(bills, line);
    if (wall->units == UNITS_IN && wall->planks.widths.count == 1) {
        const int64_t factor = bill_running_factor(wall_course_face(wall, 0));
        const Wide feet = wide_divide((Wide)bill_area(bills, whole_area(bills->layout)) * factor, ASSUME_ONE);
        line = bill_put(bills, BILL_PLANKS, assume_more(assume_fit(feet), spare), 1, bills->running,
                        bill_with_spare(bills, "the same by area and coverage factor, to compare"));
        const BillLine shown = {.amount = factor, .decimals = 2};
        line->assumes = say(arena, "%s ft for each sq ft", bill_amount(arena, &shown));
        line->source = "WWPA, Table 4: 12 / exposed face";
        bill_spare(bills, line);
    }
    put_volumes(bills);
}

static void put_trim(Bills *bills)
{
    const Wall *wall = bills->wall;
    TrimPieces pieces = trim_pieces(bills->arena, bills->layout);
    if (pieces.count == 0)
        return;
    Length length = 0;
    int64_t count = 0;
    for (int i = 0; i < pieces.count; i++) {
        length += pieces.at[i].length * pieces.at[i].count;
        count += pieces.at[i].count;
    }
    BillLine *line = bill_put(
        bills, BILL_TRIM, assume_more(bill_running(bills, length), assume(wall, ASSUME_SPARE).value), 1, bills->running,
        bill_with_spare(bills, say(bills->arena, "trim in %s, to the long points",
                                   say_count(bills->arena, count, "piece", "pieces"))));
    bill_spare(bills, line);
    Length at_hand = 0;
    for (int i = 0; i < wall->trim.stock.count; i++)
        at_hand += wall->trim.stock.at[i].length * wall->trim.stock.at[i].count;
    bill_put(bills, BILL_TRIM, bill_running(bills, at_hand), 1, bills->running, "trim stock on hand");
}

BillLines bill_lines(Arena *arena, const Layout *layout, const Plan *plan)
{
    bool inch = layout->wall->units == UNITS_IN;
    Bills bills = {.arena = arena,
                   .wall = layout->wall,
                   .layout = layout,
                   .plan = plan,
                   .square = inch ? "sq ft" : "m2",
                   .running = inch ? "ft" : "m"};
    put_wall(&bills);
    put_planks(&bills);
    put_trim(&bills);
    bill_put_fastening(&bills);
    bill_put_finish(&bills, whole_area(layout));
    bill_put_behind(&bills);
    bill_put_spacers(&bills);
    bill_put_more(&bills, whole_area(layout));
    return bills.lines;
}
