#include "screen/views/glance.h"

#include "job/words.h"
#include "screen/views/reader.h"
#include "trade/bill.h"
#include "trade/say.h"
#include "trade/season.h"

#include <inttypes.h>
#include <stdlib.h>
#include <string.h>

enum { FIGURE_CELLS = 7, AMOUNT_CELLS = 20, CAUTION_CELLS = 9 };

static const char *key_of(Arena *arena, ActionId action)
{
    char key[32];
    action_key_text(action_of(action), true, false, key, sizeof key);
    return words(arena, "%s", key);
}

/* ---- seasons ---- */

static const char *grown(Arena *arena, const Wall *wall, Length change)
{
    if (change == 0)
        return "as hung";
    return words(arena, "%s %s", say_fine(arena, wall, (Length)llabs(change)), change > 0 ? "wider" : "narrower");
}

static void add_season(Arena *arena, Facts *facts, const Wall *wall, const char *when, const Season *season)
{
    const char *reveal = season->closes > 0
                             ? words(arena, "reveal closed, %s short", say_fine(arena, wall, season->closes))
                         : season->reveal == 0 ? "reveal closed"
                                               : words(arena, "reveal %s", say_fine(arena, wall, season->reveal));
    facts_add(arena, facts, when, season->closes > 0 ? STYLE_CAUTION : STYLE_PLAIN,
              words(arena, "moisture %" PRId64 ".%02" PRId64 " %%; widest plank %s; %s", season->moisture / 100,
                    season->moisture % 100, grown(arena, wall, season->change), reveal));
}

static void add_seasons(Arena *arena, Facts *facts, const Layout *layout)
{
    const Wall *wall = layout->wall;
    Seasons seasons = season_of_wall(wall);
    facts_add(arena, facts, "Seasons", STYLE_STRONG, seasons.given ? wall->wood.species : "not known");
    if (!seasons.given) {
        facts_add(arena, facts, "", STYLE_DIM,
                  words(arena,
                        "The wall does not say what wood the planks are of: write it down (%s on the wall), and "
                        "moisture and reveal are worked out for the dry and the damp season.",
                        key_of(arena, ACTION_WOOD_FORM)));
        return;
    }
    add_season(arena, facts, wall, "as hung", &seasons.hung);
    add_season(arena, facts, wall, "dry", &seasons.dry);
    add_season(arena, facts, wall, "damp", &seasons.damp);
    const SeasonFace *faces = season_faces(arena, layout);
    for (int i = 0; i < wall->faces.count; i++)
        facts_add(arena, facts, i == 0 ? "faces" : "", STYLE_PLAIN,
                  words(arena, "%s, %s of wood one above the other: dry %s, damp %s",
                        words_name(arena, wall->faces.at[i].name), say_length(arena, wall, faces[i].wood),
                        grown(arena, wall, faces[i].dry), grown(arena, wall, faces[i].damp)));
}

/* ---- looks ---- */

/* Nothing is said of a wall without joints whose boards have no tones. */
static void add_looks(Arena *arena, Facts *facts, const Plan *plan, bool final)
{
    const char *tones = words_tones(arena, &plan->looks), *joints = words_joints(arena, &plan->looks);
    if (tones == NULL && plan->joints == 0)
        return;
    facts_gap(arena, facts);
    facts_add(arena, facts, "Looks", STYLE_DIM, final ? "what catches the eye" : "not final: still worked out");
    facts_add(arena, facts, "tones", STYLE_PLAIN, tones);
    if (plan->joints > 0)
        facts_add(arena, facts, "joints", STYLE_PLAIN,
                  joints != NULL ? joints : "none over one another, in a stair, close together or beside a cutout");
}

/* ---- materials ---- */

static void add_bill(Arena *arena, Facts *facts, const Layout *layout, const Plan *plan, bool final)
{
    facts_gap(arena, facts);
    facts_add(arena, facts, "Materials", STYLE_DIM,
              final ? words(arena, "what is assumed stands on the printed sheet, and under %s on the wall",
                            key_of(arena, ACTION_BILL_FORM))
                    : "not final: the boards are still worked out");
    BillLines lines = bill_lines(arena, layout, plan);
    for (int i = 0; i < lines.count; i++) {
        const BillLine *line = &lines.at[i];
        if (i == 0 || lines.at[i - 1].group != line->group)
            facts_add(arena, facts, "", STYLE_STRONG, bill_group_words(line->group));
        facts_add(arena, facts, words(arena, "%*s %s", FIGURE_CELLS, bill_amount(arena, line), line->unit), STYLE_PLAIN,
                  line->what);
    }
}

static void fill_glance(App *app, Arena *arena, Facts *facts)
{
    Work *work = app_work(app);
    facts->label_cells = AMOUNT_CELLS;
    if (work->layout == NULL) {
        facts_add(arena, facts, "fault", STYLE_FAULT, work->err.text);
        return;
    }
    add_seasons(arena, facts, work->layout);
    add_looks(arena, facts, fill_plan(work->fill), work->filled);
    add_bill(arena, facts, work->layout, fill_plan(work->fill), work->filled);
}

void glance_seasons_and_bill(App *app)
{
    reader_open(app, "Seasons, looks, materials", fill_glance);
}

/* ---- cautions ---- */

/* How many from `first` on say the same of several places. */
static int count_alike(const Findings *findings, int first)
{
    const Finding *one = &findings->at[first];
    int count = 1;
    while (one->lead != NULL && first + count < findings->count) {
        const Finding *next = &findings->at[first + count];
        if (next->rule != one->rule || next->face != one->face || next->lead == NULL ||
            strcmp(next->lead, one->lead) != 0)
            break;
        count++;
    }
    return count;
}

/* Of several faces it is said which. */
static const char *alike_words(Arena *arena, const Wall *wall, const Finding *findings, int count)
{
    const char *face = "";
    if (findings->face >= 0 && wall->faces.count > 1)
        face = words(arena, "%s: ", words_name(arena, wall->faces.at[findings->face].name));
    if (count == 1)
        return words(arena, "%s%s", face, words_finding(arena, findings));
    Text text;
    text_init(&text);
    text_format(&text, "%s%s ", face, findings->lead);
    for (int i = 0; i < count; i++)
        text_format(&text, "%s%s", findings[i].item, i + 1 < count ? "; " : ".");
    const char *copy = arena_text(arena, text.bytes, text.length);
    text_finish(&text);
    return copy;
}

static void fill_cautions(App *app, Arena *arena, Facts *facts)
{
    Work *work = app_work(app);
    facts->label_cells = CAUTION_CELLS;
    if (work->layout == NULL) {
        facts_add(arena, facts, "fault", STYLE_FAULT, work->err.text);
        return;
    }
    const Findings *findings = &work_job(work)->read;
    for (int place = 0, count; place < findings->count; place += count) {
        count = count_alike(findings, place);
        Rule rule = findings->at[place].rule;
        if (place > 0)
            facts_gap(arena, facts);
        facts_add(arena, facts, rule == RULE_CARE ? "care" : grade_word(rule_grade(rule)),
                  rule_grade(rule) == GRADE_CAUTION ? STYLE_PLAIN : STYLE_FAULT,
                  alike_words(arena, work->wall, &findings->at[place], count));
    }
    facts_gap(arena, facts);
    facts_add(arena, facts, "", STYLE_DIM,
              "No warning does not mean it is safe. Local codes, the appliance's manual and licensed trades decide.");
}

void glance_cautions(App *app)
{
    reader_open(app, "Hazards, faults and cautions in full", fill_cautions);
}
