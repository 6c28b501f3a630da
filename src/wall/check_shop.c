#include "wall/checking.h"

/*
 * What the wall file says of the shop: trim runs, rough boards, milling, what the bill assumes.
 */

/* A length that must not be 0 and is within its range; one that may be 0. */
static bool above(Checking *checking, const Where *where, const char *what, RangedFigure figure, Length value)
{
    return check_above(checking, where, what, value) && check_range(checking, where, what, figure, value);
}

static bool from_zero(Checking *checking, const Where *where, const char *what, RangedFigure figure, Length value)
{
    return check_not_below(checking, where, what, value) && check_range(checking, where, what, figure, value);
}

void check_trim_runs(Checking *checking)
{
    const TrimRuns *runs = &checking->wall->trim.runs;
    for (int i = 0; i < runs->count; i++) {
        const TrimRun *run = &runs->at[i];
        const Where *where = WHERE_ITEM(WHERE(NULL, "trim"), "runs", i);
        above(checking, WHERE(where, "width"), "the width of a run of trim", RANGED_TRIM_WIDTH, run->width);
        if (run->thickness_given)
            above(checking, WHERE(where, "thickness"), "the thickness of a run of trim", RANGED_THICKNESS,
                  run->thickness);
        check_text(checking, WHERE(where, "opening"), "the opening that a casing goes round", run->opening, false);
        if (run->opening && run->opening[0] && run->along != ALONG_OPENINGS)
            check_note(checking, WHERE(where, "opening"),
                       "only a run along openings names one; write `along: openings`, or leave the name out");
    }
}

static void check_rough(Checking *checking)
{
    const Roughs *roughs = &checking->wall->rough;
    char said[CHECK_VALUE_MOST];
    int64_t total = 0;
    for (int i = 0; i < roughs->count; i++) {
        const Rough *rough = &roughs->at[i];
        const Where *where = WHERE_ITEM(NULL, "rough", i);
        check_text(checking, WHERE(where, "label"), "the label of a rough board", rough->label, false);
        above(checking, WHERE(where, "width"), "the width of a rough board", RANGED_BOARD_WIDTH, rough->width);
        above(checking, WHERE(where, "thickness"), "the thickness of a rough board", RANGED_THICKNESS,
              rough->thickness);
        const bool length_holds =
            above(checking, WHERE(where, "length"), "the length of a rough board", RANGED_LENGTH, rough->length);
        check_count(checking, WHERE(where, "count"), "rough boards", rough->count, &total);
        if (check_not_below(checking, WHERE(where, "ends"), "what is cut off at each end", rough->ends) &&
            length_holds && rough->ends * 2 >= rough->length)
            check_note(checking, WHERE(where, "ends"),
                       "cutting %s off each end leaves nothing of the board; write less than half its length",
                       check_say(checking, rough->ends, said));
        check_text(checking, WHERE(where, "tone"), "the tone of a rough board", rough->tone, false);
        if (length_holds)
            check_stretches(checking, where, &rough->avoid, rough->length);
    }
    check_total(checking, WHERE(NULL, "rough"), "rough boards", total);
}

static void check_mill(Checking *checking)
{
    const Mill *mill = &checking->wall->mill;
    const Where *where = WHERE(NULL, "mill");
    from_zero(checking, WHERE(where, "edge"), "what straightening an edge takes", RANGED_EDGE, mill->edge);
    if (mill->kerf.given)
        from_zero(checking, WHERE(where, "kerf"), "the kerf of a rip", RANGED_KERF, mill->kerf.length);
    from_zero(checking, WHERE(where, "plane"), "what planing takes", RANGED_PLANE, mill->plane);
    from_zero(checking, WHERE(where, "keep"), "the width of kept strips", RANGED_KEEP, mill->keep);
}

/* A number of the bill within its range. */
static void check_number(Checking *checking, const char *key, const char *what, RangedFigure figure, Number number)
{
    const FigureRange range = range_of(figure, checking->wall->units);
    if (!number.given || (number.thousandths >= range.least && number.thousandths <= range.most))
        return;
    check_note(checking, WHERE(WHERE(NULL, "bill"), key), "%s is out of its range; write a number from %d to %d", what,
               (int)(range.least / 1000), (int)(range.most / 1000));
}

static void check_bill(Checking *checking)
{
    const Bill *bill = &checking->wall->bill;
    const Where *where = WHERE(NULL, "bill");
    check_number(checking, "spare", "the spare", RANGED_SPARE, bill->spare);
    check_number(checking, "fasteners", "the number of fasteners on a stud", RANGED_FASTENERS, bill->fasteners);
    if (bill->bead.given)
        above(checking, WHERE(where, "bead"), "the bead", RANGED_BEAD, bill->bead.length);
    check_number(checking, "cartridge", "the size of a cartridge", RANGED_CARTRIDGE, bill->cartridge);
    check_number(checking, "coats", "the number of coats", RANGED_COATS, bill->coats);
    check_number(checking, "coverage", "what the finish covers", RANGED_COVERAGE, bill->coverage);
    check_number(checking, "thinning", "the thinning", RANGED_THINNING, bill->thinning);
    if (bill->sheet.given) {
        const Where *sheet = WHERE(where, "sheet");
        above(checking, WHERE(sheet, "width"), "the width of a sheet", RANGED_SHEET_WIDTH, bill->sheet.width);
        above(checking, WHERE(sheet, "length"), "the length of a sheet", RANGED_SHEET_LENGTH, bill->sheet.length);
    }
    if (bill->nominal.given)
        above(checking, WHERE(where, "nominal"), "the nominal thickness", RANGED_NOMINAL, bill->nominal.length);
}

void check_shop(Checking *checking)
{
    check_rough(checking);
    check_mill(checking);
    check_bill(checking);
}
