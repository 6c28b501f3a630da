/*
 * The lists of the shop: rough boards with what milling makes of each line, runs of trim with their strips. Both are
 * worked out once for each version of the wall.
 */
#include "job/words.h"
#include "screen/forms/forms.h"
#include "screen/lists/lists.h"
#include "trade/mill.h"
#include "trade/trim_runs.h"

/* What all strips of a run come to. */
typedef struct RunSum {
    int strips;
    Length length;     /* at their long points, together */
    const char *whole; /* each strip with its length */
} RunSum;

/* What a list keeps; `layout` and `version` say what it was worked out from. */
typedef struct Shop {
    const Layout *layout;
    uint64_t version;
    MillSheet mill;
    const char **steps; /* for each line of rough boards what to do with each board */
    RunSum *runs;       /* for each run of trim */
} Shop;

static const char *join_steps(Arena *arena, const MillLine *line)
{
    Text text;
    text_init(&text);
    for (int i = 0; i < line->step_count; i++)
        text_format(&text, "%s%s", i > 0 ? "; " : "Each: ", line->steps[i]);
    const char *whole = arena_text(arena, text.bytes, text.length);
    text_finish(&text);
    return whole;
}

static RunSum sum_run(Arena *arena, const Wall *wall, const TrimStrips *strips, int run)
{
    RunSum sum = {0};
    Text text;
    text_init(&text);
    for (int i = 0; i < strips->count; i++) {
        const TrimStrip *strip = &strips->at[i];
        if (strip->run != run)
            continue;
        text_format(&text, "%s%s %s", sum.strips > 0 ? "; " : "", strip->name,
                    words_length(arena, wall, strip->long_point));
        sum.strips++;
        sum.length += strip->long_point;
    }
    if (sum.strips == 0)
        text_put(&text, "Nothing of the wall is along it: no strip.");
    sum.whole = arena_text(arena, text.bytes, text.length);
    text_finish(&text);
    return sum;
}

static void work_out(Arena *arena, const Layout *layout, Shop *shop)
{
    const Wall *wall = layout->wall;
    shop->mill = mill_sheet(arena, layout);
    shop->steps = arena_array(arena, const char *, shop->mill.line_count);
    for (int i = 0; i < shop->mill.line_count; i++)
        shop->steps[i] = join_steps(arena, &shop->mill.lines[i]);
    TrimStrips strips = trim_strips(arena, layout, NULL);
    shop->runs = arena_array(arena, RunSum, wall->trim.runs.count);
    for (int i = 0; i < wall->trim.runs.count; i++)
        shop->runs[i] = sum_run(arena, wall, &strips, i);
}

/* NULL where the wall cannot be laid out. */
static const Shop *shop_of(App *app, const List *list)
{
    const Work *work = app_work(app);
    Shop *shop = list->held;
    if (work->layout == NULL)
        return NULL;
    if (shop->layout != work->layout || shop->version != work->version) {
        *shop = (Shop){.layout = work->layout, .version = work->version};
        work_out(list->arena, work->layout, shop);
    }
    return shop;
}

static void shop_open(App *app, const ListKind *kind)
{
    List *list = list_open(app, kind);
    Shop *shop = arena_array(list->arena, Shop, 1);
    *shop = (Shop){.layout = NULL};
    list->held = shop;
}

static void say_removed(App *app, bool done, const Err *err, const char *what)
{
    if (done)
        app_say(app, STYLE_ACCENT, "%s; Ctrl-Z brings it back.", what);
    else
        app_tell(app, err);
}

/* ---- rough boards ---- */

static int rough_count(App *app, const List *list)
{
    (void)list;
    return app_wall(app)->rough.count;
}

static const MillLine *mill_line(App *app, const List *list, int index)
{
    const Shop *shop = shop_of(app, list);
    return shop != NULL && index < shop->mill.line_count ? &shop->mill.lines[index] : NULL;
}

static void put_yield(const MillLine *line, Text *out)
{
    int planks = 0;
    for (int i = 0; i < line->cut_count; i++)
        planks += line->cuts[i].count;
    if (planks == 0) {
        text_put(out, line->too_thin     ? "too thin"
                      : line->too_narrow ? "too narrow"
                      : line->too_short  ? "too short"
                                         : "no plank");
    } else {
        text_format(out, "%d plank%s each", planks, planks == 1 ? "" : "s");
    }
}

static void rough_line(App *app, const List *list, int index, Text *left, Text *right)
{
    const Rough *rough = &app_wall(app)->rough.at[index];
    text_format(left, "%4d of  ", rough->count);
    size_t from = left->length;
    char width[LENGTH_TEXT_MAX], thickness[LENGTH_TEXT_MAX], length[LENGTH_TEXT_MAX];
    text_format(left, "%s by %s, %s long", app_length(app, rough->width, width),
                app_length(app, rough->thickness, thickness), app_length(app, rough->length, length));
    text_pad(left, from, 22);
    if (rough->label[0] != '\0')
        text_format(left, "  %s", rough->label);
    if (rough->tone[0] != '\0')
        text_format(left, "  %s", rough->tone);
    if (rough->avoid.count > 0)
        text_format(left, "  %d to avoid", rough->avoid.count);
    const MillLine *line = mill_line(app, list, index);
    if (line != NULL)
        put_yield(line, right);
}

static void rough_whole(App *app, const List *list, int index, Text *out)
{
    const Shop *shop = shop_of(app, list);
    if (shop != NULL && index < shop->mill.line_count)
        text_put(out, shop->steps[index]);
}

static void rough_choose(App *app, List *list, int index)
{
    (void)list;
    forms_rough(app, app_wall(app)->rough.at[index].id, 0);
}

static void rough_add(App *app, List *list, int index)
{
    (void)list;
    forms_rough(app, 0, index < 0 ? 0 : app_wall(app)->rough.at[index].id);
}

static void rough_remove(App *app, List *list, int index)
{
    (void)list;
    Err err;
    bool done = edit_remove_rough(app->document, app_wall(app)->rough.at[index].id, &err);
    say_removed(app, done, &err, "The line of rough boards is removed");
}

void lists_rough(App *app)
{
    static const ListKind kind = {
        .title = "Rough boards, still to be milled",
        .nothing = "No rough boards yet; a adds some.",
        .places = PLACE_LIST | PLACE_STOCK,
        .count = rough_count,
        .line = rough_line,
        .whole = rough_whole,
        .choose = rough_choose,
        .add = rough_add,
        .remove = rough_remove,
    };
    shop_open(app, &kind);
}

/* ---- runs of trim ---- */

static int runs_count(App *app, const List *list)
{
    (void)list;
    return app_wall(app)->trim.runs.count;
}

static const char *along_words(TrimAlong along)
{
    switch (along) {
    case ALONG_FLOOR: return "floor";
    case ALONG_CEILING: return "ceiling";
    case ALONG_INSIDE: return "inside corners";
    case ALONG_OUTSIDE: return "outside corners";
    case ALONG_OPENINGS: return "windows and doors";
    case ALONG_EDGES: return "edges";
    }
    return "";
}

static void runs_line(App *app, const List *list, int index, Text *left, Text *right)
{
    const TrimRun *run = &app_wall(app)->trim.runs.at[index];
    char length[LENGTH_TEXT_MAX];
    size_t from = left->length;
    text_put(left, run->opening[0] != '\0' ? run->opening : along_words(run->along));
    text_pad(left, from, 18);
    text_format(left, "  %s wide", app_length(app, run->width, length));
    if (run->thickness_given)
        text_format(left, ", %s thick", app_length(app, run->thickness, length));
    const Shop *shop = shop_of(app, list);
    if (shop == NULL)
        return;
    const RunSum *sum = &shop->runs[index];
    text_format(right, "%d strip%s, %s %s", sum->strips, sum->strips == 1 ? "" : "s",
                app_length(app, sum->length, length), app_wall(app)->units == UNITS_IN ? "in" : "mm");
}

static void runs_whole(App *app, const List *list, int index, Text *out)
{
    const Shop *shop = shop_of(app, list);
    if (shop != NULL)
        text_put(out, shop->runs[index].whole);
}

static void runs_choose(App *app, List *list, int index)
{
    (void)list;
    forms_trim_run(app, index);
}

static void runs_add(App *app, List *list, int index)
{
    (void)list;
    forms_new_trim_run(app, index + 1);
}

static void runs_remove(App *app, List *list, int index)
{
    (void)list;
    Err err;
    say_removed(app, edit_remove_trim_run(app->document, index, &err), &err, "The run of trim is removed");
}

void lists_trim_runs(App *app)
{
    static const ListKind kind = {
        .title = "Trim runs, whose strips are worked out",
        .nothing = "No runs of trim; a adds one: floor, ceiling, corner, opening or edge.",
        .places = PLACE_LIST | PLACE_STOCK,
        .count = runs_count,
        .line = runs_line,
        .whole = runs_whole,
        .choose = runs_choose,
        .add = runs_add,
        .remove = runs_remove,
    };
    shop_open(app, &kind);
}
