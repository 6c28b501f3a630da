#include "unkind/hold.h"

#include "config.h"
#include "fill/fill.h"
#include "proof/prove.h"
#include "sheet/sheets/sheets.h"
#include "sheet/writers/csv.h"
#include "sheet/writers/pdf.h"
#include "sheet/writers/plain.h"
#include "sheet/writers/plan.h"
#include "store/store.h"
#include "support/rules.h"
#include "support/utf8_valid.h"
#include "trade/asbuilt.h"

#include <string.h>

typedef struct Holding {
    Arena *arena;
    const Wall *wall; /* as it was read back */
    const Layout *layout;
    const Job *job;
    Fill *fill; /* where it is not filled to the end */
    Wish wish;
    Held *held;
    Text *why;
} Holding;

#define SAY(condition, ...)                         \
    do {                                            \
        if (!(condition)) {                         \
            text_format(holding->why, __VA_ARGS__); \
            return false;                           \
        }                                           \
    } while (0)

/* ---- the file ---- */

static bool file_holds(Holding *holding, const Wall *wall)
{
    Text text, again;
    text_init(&text);
    text_init(&again);
    Source source = {0};
    Errs errs = {0};
    store_write(wall, NULL, &text);
    const bool read = store_parse(holding->arena, "wall.yaml", text.bytes, text.length, &source, &errs);
    bool same = false;
    if (read) {
        store_write(source.wall, &source, &again);
        same = wall_equal(wall, source.wall) && again.length == text.length &&
               memcmp(again.bytes, text.bytes, text.length) == 0;
    }
    text_finish(&text);
    text_finish(&again);
    SAY(read, "its file is refused: %s: %s", errs.at[0].place, errs.at[0].text);
    SAY(same, "its file reads as another wall, or is written otherwise again");
    holding->wall = source.wall;
    return true;
}

/* ---- the plan ---- */

static bool is_number_of_piece(const Plan *plan, int number)
{
    for (int i = 0; i < plan->piece_count; i++)
        if (plan->pieces[i].number == number)
            return true;
    return false;
}

static bool findings_hold(Holding *holding)
{
    const Findings *findings = &holding->job->findings;
    int told = 0;
    for (int i = 0; i < findings->count; i++) {
        const Finding *finding = &findings->at[i];
        SAY(finding->text != NULL && finding->text[0] != '\0', "a finding `%s` says nothing", rule_word(finding->rule));
        SAY(utf8_valid(finding->text, strlen(finding->text)) == strlen(finding->text), "`%s` is no UTF-8",
            rule_word(finding->rule));
        SAY(strchr(finding->text, '\n') == NULL, "`%s` has two lines", rule_word(finding->rule));
        SAY(i == 0 || finding[-1].rule <= finding->rule, "findings out of order");
        SAY(finding->piece == 0 || is_number_of_piece(holding->job->plan, finding->piece),
            "`%s` is of piece %d, which is not there", rule_word(finding->rule), finding->piece);
        told += finding->rule == RULE_STAGGER || finding->rule == RULE_SHORTEST || finding->rule == RULE_STUD ||
                finding->rule == RULE_STOCK;
    }
    const Plan *plan = holding->job->plan;
    SAY(told == plan->breaks + plan->bare_count, "%d breaks and bare stretches told, of %d and %d", told, plan->breaks,
        plan->bare_count);
    holding->held->faults = findings_of(findings, GRADE_FAULT);
    return true;
}

static bool plan_holds(Holding *holding)
{
    Err err = {0};
    const Plan *plan = NULL;
    if (holding->wish.steps == 0) {
        plan = fill_wall(holding->arena, holding->layout);
    } else {
        holding->fill = fill_begin(holding->layout);
        fill_step(holding->fill, holding->wish.steps);
        plan = fill_plan(holding->fill);
    }
    holding->held->pieces = plan->piece_count;
    holding->held->boards = plan->board_count;
    SAY(rules_hold(holding->layout, plan, &err), "plan: %s", err.text);
    SAY(!plan->bound_known || plan->length_bound <= plan->length_opened, "the bound is above what is opened");
    const Plan *hand = fill_by_hand(holding->arena, holding->layout);
    SAY(rules_hold(holding->layout, hand, &err), "by hand: %s", err.text);
    const Cost cost = rules_cost(holding->layout, plan), by_hand = rules_cost(holding->layout, hand);
    const bool no_worse = rules_happened(holding->wall) || plan->length_least > 0 ? cost.shortfall <= by_hand.shortfall
                                                                                  : cost_compare(&cost, &by_hand) <= 0;
    SAY(holding->wish.steps > 0 || no_worse, "worse than by hand");
    holding->job = job_of_parts(holding->arena, holding->layout, plan, "wall.yaml", "0123456789ab");
    return findings_hold(holding);
}

/* The printed plan, by means of its own. */
static bool proof_holds(Holding *holding)
{
    Text plan;
    text_init(&plan);
    plan_write(holding->job, &plan);
    const bool hold = prove(holding->wall, plan.bytes, plan.length, holding->why);
    text_finish(&plan);
    return hold;
}

/* ---- the sheets ---- */

static const struct {
    const char *name;
    Sheet *(*make)(Arena *arena, const Job *job, const char *date);
} makers[] = {{"rows", sheet_rows},   {"cuts", sheet_cuts}, {"pole", sheet_pole}, {"draw", sheet_draw},
              {"check", sheet_check}, {"bill", sheet_bill}, {"mill", sheet_mill}, {"starts", sheet_starts}};

/* Every start within a run of widths is weighed, again for each width and reveal that the sheet of starts compares: of
 * fine marks too many for a test of thousands of walls. */
enum { MAKERS = sizeof makers / sizeof *makers, MARKS_MOST = 400 };

/* Lines of 76 cells, pages of 54 lines, nothing raw. */
static bool page_holds(Holding *holding, const char *name, Text *text)
{
    SAY(utf8_valid(text->bytes, text->length) == text->length, "%s: no UTF-8", name);
    int line_of_page = 0;
    for (char *line = text->bytes, *end; *line != '\0'; line = end + 1) {
        if (*line == '\f') {
            line_of_page = 0;
            line++;
        }
        end = strchr(line, '\n');
        SAY(end != NULL, "%s: a line without its end", name);
        *end = '\0';
        SAY(utf8_cells(line) <= SHEET_COLUMNS && ++line_of_page <= SHEET_LINES, "%s: beyond the page: %s", name, line);
        for (const char *at = line; *at != '\0'; at++)
            SAY((unsigned char)*at >= ' ' && *at != 127, "%s: a raw byte: %s", name, line);
    }
    return true;
}

static bool drawn_holds(Holding *holding, const char *name, const Sheet *sheet, Text *text)
{
    Err err = {0};
    if (!DATUMROW_PDF)
        return true;
    text_clear(text);
    SAY(pdf_write(sheet, text, &err) && text->length > 0, "%s: no PDF: %s", name, err.text);
    text_clear(text);
    SAY(svg_write(sheet, text, &err) && text->length > 0, "%s: no SVG: %s", name, err.text);
    return true;
}

static bool sheets_hold(Holding *holding)
{
    const bool drawn = holding->wish.drawn;
    const Length marks = wall_run(holding->wall) / holding->wall->round;
    Text text;
    text_init(&text);
    bool hold = true;
    for (int i = 0; i < MAKERS && hold; i++) {
        if (makers[i].make == sheet_starts && (!drawn || marks > MARKS_MOST))
            continue;
        const Sheet *sheet = makers[i].make(holding->arena, holding->job, "");
        text_clear(&text);
        plain_write(sheet, &text);
        hold = page_holds(holding, makers[i].name, &text);
        text_clear(&text);
        csv_write(sheet, &text);
        hold = hold && (!drawn || drawn_holds(holding, makers[i].name, sheet, &text));
    }
    text_finish(&text);
    return hold;
}

bool hold_wall(const Wall *wall, Wish wish, Held *held, Text *why)
{
    Holding holding_all = {.arena = arena_new(), .wish = wish, .held = held, .why = why};
    Holding *holding = &holding_all;
    Err err = {0};
    bool hold = file_holds(holding, wall);
    if (hold) {
        holding->layout = layout_wall(holding->arena, holding->wall, &err);
        hold = holding->layout != NULL;
        if (!hold)
            text_format(why, "layout: %s", err.text);
    }
    hold = hold && plan_holds(holding) && proof_holds(holding);
    if (hold && asbuilt_of(holding->arena, holding->layout, holding->job->plan, &err) == NULL) {
        text_format(why, "as built: %s", err.text);
        hold = false;
    }
    hold = hold && sheets_hold(holding);
    if (holding->fill != NULL)
        fill_free(holding->fill);
    arena_free(holding->arena);
    return hold;
}
