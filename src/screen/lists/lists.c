#include "screen/lists/lists.h"

#include "job/words.h"
#include "screen/forms/forms.h"

#include <inttypes.h>
#include <string.h>

/* ---- findings ---- */

static int findings_count(App *app, const List *list)
{
    (void)list;
    const Job *job = work_job(app_work(app));
    return job == NULL ? 0 : job->findings.count;
}

static const Finding *finding_at(App *app, int index)
{
    return &work_job(app_work(app))->read.at[index];
}

static void findings_line(App *app, const List *list, int index, Text *left, Text *right)
{
    (void)list;
    const Finding *finding = finding_at(app, index);
    const Wall *wall = app_wall(app);
    text_format(left, "%-9s", grade_word(rule_grade(finding->rule)));
    if (app->grid->columns < 100) { /* where it is stands in front, and the whole below */
        words_put_finding(left, finding);
        return;
    }
    text_put(left, finding->text);
    if (finding->face >= 0 && wall->faces.count > 1)
        text_put(right, wall->faces.at[finding->face].name);
    if (finding->has_course)
        text_format(right, "%scourse %" PRId64, right->length > 0 ? ", " : "", finding->course);
}

/* On a wall of several faces it is said which. */
static void findings_whole(App *app, const List *list, int index, Text *out)
{
    (void)list;
    const Finding *finding = finding_at(app, index);
    const Wall *wall = app_wall(app);
    if (finding->face >= 0 && wall->faces.count > 1)
        text_format(out, "%s: ", wall->faces.at[finding->face].name);
    words_put_finding(out, finding);
}

static int findings_style(App *app, const List *list, int index)
{
    (void)list;
    return rule_grade(finding_at(app, index)->rule) == GRADE_CAUTION ? STYLE_CAUTION : STYLE_FAULT;
}

/* The elevation behind the list shows the place. */
static void findings_show(App *app, List *list, int index)
{
    (void)list;
    const Finding *finding = finding_at(app, index);
    const Wall *wall = app_wall(app);
    if (finding->face < 0)
        return;
    const Face *face = &wall->faces.at[finding->face];
    app->focus.face = face->id;
    app->focus.opening = finding->opening >= 0 ? face->openings.at[finding->opening].id : 0;
    const FaceLayout *layout = &app_work(app)->layout->faces[finding->face];
    int course = finding->has_course ? layout_course_index(layout, finding->course) : -1;
    app->focus.sight.away = course >= 0;
    if (course < 0)
        return;
    app->focus.sight.y = layout->courses[course].bottom;
    app->focus.sight.x = finding->has_at ? finding->at : face->width / 2;
}

static void findings_choose(App *app, List *list, int index)
{
    findings_show(app, list, index);
    layers_pop(&app->layers);
}

void lists_findings(App *app)
{
    static const ListKind kind = {
        .title = "Hazards, faults and cautions",
        .nothing = "These checks found nothing. They do not cover codes, manuals or licenses.",
        .places = PLACE_LIST,
        .count = findings_count,
        .line = findings_line,
        .whole = findings_whole,
        .style = findings_style,
        .choose = findings_choose,
        .moved = findings_show,
        .low = true,
    };
    list_open(app, &kind);
    if (findings_count(app, NULL) > 0)
        findings_show(app, NULL, 0);
}

/* ---- openings ---- */

static const Openings *openings_of(App *app)
{
    return &app_wall(app)->faces.at[app_face_index(app)].openings;
}

static int openings_count(App *app, const List *list)
{
    (void)list;
    return openings_of(app)->count;
}

static void openings_line(App *app, const List *list, int index, Text *left, Text *right)
{
    (void)list;
    const Opening *opening = &openings_of(app)->at[index];
    char x[LENGTH_TEXT_MAX], width[LENGTH_TEXT_MAX];
    text_format(left, "%s (%s)", opening->name, opening_kind_word(opening->kind));
    text_format(right, "left %s, width %s", app_length(app, opening->left, x), app_length(app, opening->width, width));
}

static void openings_show(App *app, List *list, int index)
{
    (void)list;
    app->focus.opening = openings_of(app)->at[index].id;
    app->focus.sight.away = false;
}

static void openings_choose(App *app, List *list, int index)
{
    openings_show(app, list, index);
    layers_pop(&app->layers);
}

static void openings_add(App *app, List *list, int index)
{
    (void)list;
    (void)index;
    forms_opening(app, 0);
}

static void openings_remove(App *app, List *list, int index)
{
    (void)list;
    Err err;
    uint32_t id = openings_of(app)->at[index].id;
    if (!edit_remove_opening(app->document, id, &err))
        app_tell(app, &err);
    else
        app_say(app, STYLE_ACCENT, "The opening is removed; Ctrl-Z brings it back.");
    app->focus.opening = 0;
}

void lists_openings(App *app)
{
    static const ListKind kind = {
        .title = "Openings of this face",
        .nothing = "This face has no opening; a adds one.",
        .places = PLACE_LIST | PLACE_STOCK,
        .count = openings_count,
        .line = openings_line,
        .choose = openings_choose,
        .moved = openings_show,
        .add = openings_add,
        .remove = openings_remove,
        .low = true,
    };
    List *list = list_open(app, &kind);
    int focus = app_opening_index(app);
    list->focus = focus >= 0 ? focus : 0;
}

/* ---- boards at hand ---- */

static int stock_count(App *app, const List *list)
{
    (void)list;
    return app_wall(app)->stock.count;
}

/* How many boards of a line are opened. */
static int opened_of(App *app, int index)
{
    const Job *job = work_job(app_work(app));
    if (job == NULL)
        return 0;
    const Wall *wall = app_wall(app);
    int first = wall_stock_first(wall, index), opened = 0;
    for (int i = 0; i < wall->stock.at[index].count; i++)
        if (job->plan->boards[first - 1 + i].count > 0)
            opened++;
    return opened;
}

static void stock_line(App *app, const List *list, int index, Text *left, Text *right)
{
    (void)list;
    const Stock *stock = &app_wall(app)->stock.at[index];
    char length[LENGTH_TEXT_MAX], width[LENGTH_TEXT_MAX];
    text_format(left, "%4d of  ", stock->count);
    size_t from = left->length;
    text_put(left, app_length(app, stock->length, length));
    text_pad(left, from, 10);
    if (stock->label[0] != '\0')
        text_format(left, "  %s", stock->label);
    if (stock->tone[0] != '\0')
        text_format(left, "  %s", stock->tone);
    if (stock->width_given)
        text_format(left, "  %s wide", app_length(app, stock->width, width));
    if (stock->avoid.count > 0)
        text_format(left, "  %d to avoid", stock->avoid.count);
    text_format(right, "%d used", opened_of(app, index));
}

static void stock_choose(App *app, List *list, int index)
{
    (void)list;
    forms_stock(app, app_wall(app)->stock.at[index].id, 0);
}

static void stock_add(App *app, List *list, int index)
{
    (void)list;
    forms_stock(app, 0, index < 0 ? 0 : app_wall(app)->stock.at[index].id);
}

static void stock_remove(App *app, List *list, int index)
{
    (void)list;
    Err err;
    if (!edit_remove_stock(app->document, app_wall(app)->stock.at[index].id, &err))
        app_tell(app, &err);
    else
        app_say(app, STYLE_ACCENT, "The boards are taken off the pile; Ctrl-Z puts them back.");
}

void lists_stock(App *app)
{
    static const ListKind kind = {
        .title = "Boards at hand",
        .nothing = "No boards yet; a adds some.",
        .places = PLACE_LIST | PLACE_STOCK,
        .count = stock_count,
        .line = stock_line,
        .choose = stock_choose,
        .add = stock_add,
        .remove = stock_remove,
    };
    list_open(app, &kind);
}
