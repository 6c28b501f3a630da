#include "trade/assume.h"

#include "base/panic.h"

/* One row for each; the default in inch files and in millimetre files. */
static const struct {
    const char *key;
    bool is_length;
    int64_t inch, mm;
    const char *source;
} rows[ASSUME_COUNT] = {
    [ASSUME_SPARE] = {"bill.spare", false, 10 * ASSUME_ONE, 10 * ASSUME_ONE, "WWPA, Table 4: 10 % for trim and waste"},
    [ASSUME_FASTENERS] = {"bill.fasteners", false, 0, 0,
                          "NAVEDTRA 14044, p. 4-5: one or two on each stud by width; two over 4 in is common practice"},
    [ASSUME_STUDS] = {"", true, 16 * LENGTH_INCH, 400 * LENGTH_MM, "common practice, where no studs are written down"},
    [ASSUME_GLUE] = {"bill.glue", false, GLUE_PIECES *ASSUME_ONE, GLUE_PIECES *ASSUME_ONE,
                     "common practice: one bead along each piece"},
    [ASSUME_BEAD] = {"bill.bead", true, LENGTH_INCH / 4, 6 * LENGTH_MM, "common practice"},
    [ASSUME_CARTRIDGE] = {"bill.cartridge", false, 10 * ASSUME_ONE, 300 * ASSUME_ONE,
                          "common practice: cartridges of 10 and 28 fl oz, 300 ml"},
    [ASSUME_COATS] = {"bill.coats", false, 2 * ASSUME_ONE, 2 * ASSUME_ONE, "common practice"},
    [ASSUME_COVERAGE] = {"bill.coverage", false, 400 * ASSUME_ONE, 10 * ASSUME_ONE,
                         "common practice: makers state 450 sq ft a gallon, plan on 400"},
    [ASSUME_THINNING] = {"bill.thinning", false, 0, 0, "as the finish's label says"},
    [ASSUME_SHEET_WIDTH] = {"bill.sheet", true, 48 * LENGTH_INCH, 1220 * LENGTH_MM,
                            "common practice: 4 by 8 ft sheets"},
    [ASSUME_SHEET_LENGTH] = {"bill.sheet", true, 96 * LENGTH_INCH, 2440 * LENGTH_MM,
                             "common practice: 4 by 8 ft sheets"},
    [ASSUME_NOMINAL] = {"bill.nominal", true, LENGTH_INCH, LENGTH_INCH,
                        "NAVEDTRA 14044; stock under 1 in counts as 1 in"},
};

/* Wider planks take two fasteners on each stud. */
#define ONE_FASTENER (4 * LENGTH_INCH)

static void take_number(Assumption *assumption, const Number *number)
{
    assumption->given = number->given;
    if (number->given)
        assumption->value = number->thousandths * (ASSUME_ONE / 1000);
}

static void take_length(Assumption *assumption, const OwnLength *length)
{
    assumption->given = length->given;
    if (length->given)
        assumption->value = length->length;
}

Assumption assume(const Wall *wall, Assumed which)
{
    BUG_UNLESS(which < ASSUME_COUNT);
    const Bill *bill = &wall->bill;
    Assumption assumption = {.is_length = rows[which].is_length,
                             .value = wall->units == UNITS_IN ? rows[which].inch : rows[which].mm,
                             .key = rows[which].key,
                             .source = rows[which].source};
    switch (which) {
    case ASSUME_SPARE: take_number(&assumption, &bill->spare); break;
    case ASSUME_FASTENERS:
        assumption.value = (wall_widest(wall) > ONE_FASTENER ? 2 : 1) * ASSUME_ONE;
        take_number(&assumption, &bill->fasteners);
        break;
    case ASSUME_STUDS: break;
    case ASSUME_GLUE: take_number(&assumption, &(Number){bill->glue_given, (int64_t)bill->glue * 1000}); break;
    case ASSUME_BEAD: take_length(&assumption, &bill->bead); break;
    case ASSUME_CARTRIDGE: take_number(&assumption, &bill->cartridge); break;
    case ASSUME_COATS: take_number(&assumption, &bill->coats); break;
    case ASSUME_COVERAGE: take_number(&assumption, &bill->coverage); break;
    case ASSUME_THINNING: take_number(&assumption, &bill->thinning); break;
    case ASSUME_SHEET_WIDTH: take_length(&assumption, &(OwnLength){bill->sheet.given, bill->sheet.width}); break;
    case ASSUME_SHEET_LENGTH: take_length(&assumption, &(OwnLength){bill->sheet.given, bill->sheet.length}); break;
    case ASSUME_NOMINAL:
        if (wall->planks.thickness > assumption.value)
            assumption.value = wall->planks.thickness;
        take_length(&assumption, &bill->nominal);
        break;
    case ASSUME_COUNT: break;
    }
    if (assumption.given)
        assumption.source = "the wall file";
    return assumption;
}

int64_t assume_fit(Wide value)
{
    return value > INT64_MAX ? INT64_MAX : value < INT64_MIN ? INT64_MIN : (int64_t)value;
}

int64_t assume_more(int64_t value, int64_t percent)
{
    return assume_fit(wide_ceiling((Wide)value * (100 * ASSUME_ONE + percent), 100 * ASSUME_ONE));
}
