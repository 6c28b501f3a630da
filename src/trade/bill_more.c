#include "layout/hold.h"
#include "trade/backing.h"
#include "trade/bill.h"
#include "trade/bill_parts.h"
#include "trade/say.h"
#include "trade/trim_runs.h"

/*
 * What some jobs take and others do not, and how planks are held. All of it is common practice.
 */
#define TRIM_NAIL_EVERY (16 * LENGTH_INCH)
#define EDGE_DISTANCE (LENGTH_INCH / 2)
#define PREDRILL_WITHIN (2 * LENGTH_INCH)

static void put_trim_nails(Bills *bills)
{
    const TrimPieces pieces = trim_pieces(bills->arena, bills->layout);
    int64_t count = 0;
    for (int i = 0; i < pieces.count; i++)
        count += 2 * (pieces.at[i].length / TRIM_NAIL_EVERY + 2) * pieces.at[i].count;
    if (count == 0)
        return;
    BillLine *line = bill_put(bills, BILL_MORE, count * ASSUME_ONE, 0, "piece|s", "finish nails for trim");
    line->assumes =
        say(bills->arena, "two at each end and every %s", say_length(bills->arena, bills->wall, TRIM_NAIL_EVERY));
    line->source = "common practice";
}

/* Through open reveals one sees what is behind the planks. */
static void put_paint(Bills *bills)
{
    const Wall *wall = bills->wall;
    const bool inch = wall->units == UNITS_IN;
    const int64_t coverage = assume(wall, ASSUME_COVERAGE).value;
    if (wall->planks.reveal <= 0 || wall->planks.lap > 0 || coverage <= 0)
        return;
    Wide area = 0;
    for (int i = 0; i < wall->faces.count; i++)
        area += bare_area(bills->arena, bills->layout, i);
    if (area <= 0)
        return;
    const int64_t paint = assume_fit(wide_divide((Wide)bill_area(bills, area) * ASSUME_ONE, coverage));
    BillLine *line =
        bill_put(bills, BILL_MORE, paint, 1, inch ? "gal" : "l", "dark paint behind open reveals, one coat");
    bill_assumes(bills, line, ASSUME_COVERAGE,
                 say(bills->arena, "the bare wall, %s %s", bill_number(bills->arena, coverage),
                     inch ? "sq ft a gallon" : "m2 a liter"));
}

void bill_put_more(Bills *bills, Wide area)
{
    if (bills->plan->piece_count == 0 || area <= 0)
        return;
    put_trim_nails(bills);
    put_paint(bills);
    BillLine *line = bill_put(bills, BILL_MORE, ASSUME_ONE, 0, "blade|s", "saw blade for wood that hides nails");
    line->assumes = "carbide; one to spare for each that nails may spoil";
    line->source = "common practice";
    line = bill_put(bills, BILL_MORE, 2 * bills->plan->piece_count * ASSUME_ONE, 0, "end|s", "end sealer, brushed on");
    line->assumes = "both ends of each piece, in damp rooms";
    line->source = "common practice";
}

/* Ends of pieces that reach further than OVERHANG_MOST beyond the last stud behind them. */
static int long_overhangs(const Layout *layout, const Plan *plan)
{
    int count = 0;
    for (int i = 0; i < plan->piece_count; i++) {
        const Piece *piece = &plan->pieces[i];
        const LengthList *studs = &layout->faces[piece->face].studs;
        int first = 0;
        while (first < studs->count && studs->at[first] < piece->left)
            first++;
        int last = studs->count - 1;
        while (last >= 0 && studs->at[last] > piece->right)
            last--;
        if (!layout->wall->faces.at[piece->face].studs.given || first > last)
            continue;
        count += studs->at[first] - piece->left > OVERHANG_MOST;
        count += piece->right - studs->at[last] > OVERHANG_MOST;
    }
    return count;
}

static void hold(BillHolding *holding, const char *text)
{
    holding->at[holding->count++] = text;
}

BillHolding bill_holding(Arena *arena, const Layout *layout, const Plan *plan)
{
    const Wall *wall = layout->wall;
    BillHolding holding = {0};
    if (plan->piece_count == 0)
        return holding;
    hold(&holding, say(arena, "On each stud %s in each plank, in each piece two at the least.",
                       bill_number(arena, assume(wall, ASSUME_FASTENERS).value)));
    hold(&holding, say(arena, "Not nearer than %s to an edge.", say_length(arena, wall, EDGE_DISTANCE)));
    hold(&holding, say(arena, "Predrill within %s of an end.", say_length(arena, wall, PREDRILL_WITHIN)));
    const int ends = long_overhangs(layout, plan);
    const char *far = "";
    if (ends > 0)
        far =
            say(arena, " Here %s %s further.", say_count(arena, ends, "end", "ends"), ends == 1 ? "reaches" : "reach");
    hold(&holding,
         say(arena, "An end that reaches further than %s past its last stud gets adhesive or a backing strip.%s",
             say_length(arena, wall, OVERHANG_MOST), far));
    return holding;
}
