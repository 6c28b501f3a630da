#include "wall/checking.h"

/*
 * What the wall file says of the shop: trim runs, rough boards, milling, what the bill assumes.
 */

/* More percent than this is a slip of the pen; so are more fasteners, coats, and so on. */
enum { PERCENT_MOST = 1000, FEW_MOST = 100, NUMBER_MOST = 1000000 };

#define SHEET_LEAST (100 * LENGTH_MM)

void check_trim_runs(Checking *checking)
{
    const TrimRuns *runs = &checking->wall->trim.runs;
    for (int i = 0; i < runs->count; i++) {
        const TrimRun *run = &runs->at[i];
        const Where *where = WHERE_ITEM(WHERE(NULL, "trim"), "runs", i);
        check_above(checking, WHERE(where, "width"), "the width of a run of trim", run->width);
        if (run->thickness_given)
            check_above(checking, WHERE(where, "thickness"), "the thickness of a run of trim", run->thickness);
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
        check_above(checking, WHERE(where, "width"), "the width of a rough board", rough->width);
        check_above(checking, WHERE(where, "thickness"), "the thickness of a rough board", rough->thickness);
        const bool length_holds =
            check_above(checking, WHERE(where, "length"), "the length of a rough board", rough->length);
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
    check_not_below(checking, WHERE(where, "edge"), "what straightening an edge takes", mill->edge);
    if (mill->kerf.given)
        check_not_below(checking, WHERE(where, "kerf"), "the kerf of a rip", mill->kerf.length);
    check_not_below(checking, WHERE(where, "plane"), "what planing takes", mill->plane);
    check_not_below(checking, WHERE(where, "keep"), "the width of kept strips", mill->keep);
}

/* A number of the bill within its range. */
static void check_number(Checking *checking, const char *key, const char *what, Number number, int least, int most)
{
    if (!number.given || (number.thousandths >= (int64_t)least * 1000 && number.thousandths <= (int64_t)most * 1000))
        return;
    check_note(checking, WHERE(WHERE(NULL, "bill"), key), "%s is out of its range; write a number from %d to %d", what,
               least, most);
}

static void check_bill(Checking *checking)
{
    const Bill *bill = &checking->wall->bill;
    const Where *where = WHERE(NULL, "bill");
    check_number(checking, "spare", "the spare", bill->spare, 0, PERCENT_MOST);
    check_number(checking, "fasteners", "the number of fasteners on a stud", bill->fasteners, 1, FEW_MOST);
    if (bill->bead.given)
        check_above(checking, WHERE(where, "bead"), "the bead", bill->bead.length);
    check_number(checking, "cartridge", "the size of a cartridge", bill->cartridge, 1, NUMBER_MOST);
    check_number(checking, "coats", "the number of coats", bill->coats, 0, FEW_MOST);
    check_number(checking, "coverage", "what the finish covers", bill->coverage, 1, NUMBER_MOST);
    check_number(checking, "thinning", "the thinning", bill->thinning, 0, PERCENT_MOST);
    if (bill->sheet.given) {
        const Where *sheet = WHERE(where, "sheet");
        if (check_above(checking, WHERE(sheet, "width"), "the width of a sheet", bill->sheet.width) &&
            check_above(checking, WHERE(sheet, "length"), "the length of a sheet", bill->sheet.length) &&
            (bill->sheet.width < SHEET_LEAST || bill->sheet.length < SHEET_LEAST))
            check_note(checking, sheet, "a sheet of backing under 4 in (100 mm) wide is none; write its whole size");
    }
    if (bill->nominal.given)
        check_above(checking, WHERE(where, "nominal"), "the nominal thickness", bill->nominal.length);
}

void check_shop(Checking *checking)
{
    check_rough(checking);
    check_mill(checking);
    check_bill(checking);
}
