/*
 * The lists of the shop: rough boards with what milling makes of each line, runs of trim with their strips. Both are
 * worked out once for each version of the wall.
 */
#include "screen/forms.h"
#include "screen/lists.h"
#include "sheet/words.h"
#include "trade/mill.h"
#include "trade/say.h"
#include "trade/trim_runs.h"

#include <string.h>

/* What a list keeps; `layout` says what it was worked out from. */
typedef struct Shop {
    const Layout *layout;
    uint64_t version;
    MillSheet mill;
    TrimStrips strips;
} Shop;

/* NULL where the wall cannot be laid out. */
static const Shop *shop_of(App *app, const List *list)
{
    const Work *work = app_work(app);
    Shop *shop = list->held;
    if (work->layout == NULL)
        return NULL;
    if (shop->layout != work->layout || shop->version != work->version) {
        *shop = (Shop){.layout = work->layout, .version = work->version};
        shop->mill = mill_sheet(list->arena, work->layout);
        shop->strips = trim_strips(list->arena, work->layout, NULL);
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

static void tell_removed(App *app, bool done, const Err *err, const char *what)
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
    const Wall *wall = app_wall(app);
    const Rough *rough = &wall->rough.at[index];
    text_format(left, "%4d of  ", rough->count);
    size_t from = left->length;
    text_format(left, "%s by %s, %s long", words_length(list->arena, wall, rough->width),
                words_length(list->arena, wall, rough->thickness), words_length(list->arena, wall, rough->length));
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

/* What to do with each board of the line. */
static const char *rough_whole(App *app, const List *list, int index)
{
    const MillLine *line = mill_line(app, list, index);
    const char *whole = "";
    for (int i = 0; line != NULL && i < line->step_count; i++)
        whole = say(list->arena, "%s%s%s", whole, i > 0 ? "; " : "Each: ", line->steps[i]);
    return whole;
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
    tell_removed(app, done, &err, "The line of rough boards is removed");
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
    const Wall *wall = app_wall(app);
    const TrimRun *run = &wall->trim.runs.at[index];
    size_t from = left->length;
    text_put(left, run->opening[0] != '\0' ? run->opening : along_words(run->along));
    text_pad(left, from, 18);
    text_format(left, "  %s wide", words_length(list->arena, wall, run->width));
    if (run->thickness_given)
        text_format(left, ", %s thick", words_length(list->arena, wall, run->thickness));
    const Shop *shop = shop_of(app, list);
    int strips = 0;
    Length length = 0;
    for (int i = 0; shop != NULL && i < shop->strips.count; i++)
        if (shop->strips.at[i].run == index) {
            strips++;
            length += shop->strips.at[i].long_point;
        }
    if (shop != NULL)
        text_format(right, "%d strip%s, %s", strips, strips == 1 ? "" : "s",
                    words_length_unit(list->arena, wall, length));
}

/* The strips of the run. */
static const char *runs_whole(App *app, const List *list, int index)
{
    const Shop *shop = shop_of(app, list);
    const char *whole = "";
    for (int i = 0; shop != NULL && i < shop->strips.count; i++) {
        const TrimStrip *strip = &shop->strips.at[i];
        if (strip->run == index)
            whole = say(list->arena, "%s%s%s %s", whole, whole[0] != '\0' ? "; " : "", strip->name,
                        words_length(list->arena, app_wall(app), strip->long_point));
    }
    return whole[0] != '\0' ? whole : "Nothing of the wall is along it: no strip.";
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
    tell_removed(app, edit_remove_trim_run(app->document, index, &err), &err, "The run of trim is removed");
}

void lists_trim_runs(App *app)
{
    static const ListKind kind = {
        .title = "Trim runs, whose strips are worked out",
        .nothing = "No runs of trim; a adds one along floor, ceiling, corners, openings or edges.",
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
