/*
 * Three lines, each as long as there is room for; the words before a figure go first where there is little.
 *
 *     Start 2 1/4     Top rip 1 7/16 > 1 3/8, taper     Bottom rip 2 1/8
 *     Least strip 9/16 at desk outlet, course -10 on north: too narrow
 *     34 courses   124 pieces   88 of 97 boards (no plan can do with fewer than 86)   no faults   3 cautions
 */
#include "screen/views/figures.h"

#include "base/utf8.h"

#include <inttypes.h>
#include <stdio.h>
#include <string.h>

/* A run of words across one line; without a grid it only measures. */
typedef struct FigureLine {
    Grid *grid;
    int x, y, right;
} FigureLine;

static void run_text(FigureLine *run, int style, const char *text)
{
    run->x +=
        run->grid == NULL ? utf8_cells(text) : grid_text(run->grid, run->x, run->y, run->right - run->x, style, text);
}

static void run_gap(FigureLine *run, int cells)
{
    run->x += cells;
}

static void run_figure(FigureLine *run, const char *label, int style, const char *figure, const char *unit)
{
    run_text(run, STYLE_LABEL, label);
    run_text(run, style, figure);
    run_text(run, STYLE_LABEL, unit);
}

/* Whether what cuts the course is rakes and nothing else. */
static bool only_raked(const Course *course)
{
    bool raked = false;
    for (int i = 0; i < course->slab_count; i++) {
        const Slab *slab = &course->slabs[i];
        raked = raked || slab->lower_edge == EDGE_RAKE || slab->upper_edge == EDGE_RAKE;
        if (slab->lower_edge == EDGE_FLOOR || slab->upper_edge == EDGE_CEILING)
            return false;
    }
    return raked;
}

/* How much a rip is told in: "1 7/8 > 1 3/4, scribe", "1 7/8 > 1 3/4 ~", "1 7/8~1 3/4". A taper has the arrow alone. */
typedef enum RipWords { RIP_WORDS, RIP_SIGNS, RIP_TIGHT } RipWords;

/* "1 7/8", "full", "1 7/8 > 1 3/4, taper", "raked": a course's rip. A course that only rakes cut is not ripped. */
static void write_rip(const App *app, const Course *course, RipWords words, char *out, size_t size)
{
    const Rip *rip = &course->rip;
    char left[LENGTH_TEXT_MAX], right[LENGTH_TEXT_MAX];
    app_length(app, rip->left, left);
    app_length(app, rip->right, right);
    const char *to = app->grid->ascii ? ">" : "\u2192";
    if (only_raked(course)) {
        snprintf(out, size, "%s", words == RIP_WORDS ? "raked, not ripped" : "raked");
        return;
    }
    switch (rip->shape) {
    case RIP_FULL: snprintf(out, size, "%s", "full"); return;
    case RIP_STRAIGHT: snprintf(out, size, "%s", left); return;
    case RIP_TAPER:
    case RIP_SCRIBE: break;
    }
    bool taper = rip->shape == RIP_TAPER;
    switch (words) {
    case RIP_WORDS: snprintf(out, size, "%s %s %s, %s", left, to, right, taper ? "taper" : "scribe"); return;
    case RIP_SIGNS: snprintf(out, size, "%s %s %s%s", left, to, right, taper ? "" : " ~"); return;
    case RIP_TIGHT: snprintf(out, size, "%s%s%s", left, taper ? to : "~", right); return;
    }
}

void figures_rip_within(const App *app, const Course *course, int cells, char *out, size_t size)
{
    write_rip(app, course, RIP_SIGNS, out, size);
    if (utf8_cells(out) > cells)
        write_rip(app, course, RIP_TIGHT, out, size);
}

/* The wordings of the line of rips, longest first; the first that fits is taken. */
static const struct RipWording {
    int gap;
    const char *top, *bottom;
    RipWords words;
} rip_wordings[] = {
    {4, "Top rip ", "Bottom rip ", RIP_WORDS}, {2, "Top rip ", "Bottom rip ", RIP_WORDS},
    {2, "Top ", "Bottom ", RIP_WORDS},         {2, "Top ", "Bottom ", RIP_SIGNS},
    {2, "Top ", "Bottom ", RIP_TIGHT},         {1, "Top ", "Bottom ", RIP_TIGHT},
};
enum { RIP_WORDINGS = sizeof rip_wordings / sizeof *rip_wordings };

static void rip_figure(App *app, FigureLine *run, const char *label, const Course *course, RipWords words)
{
    char text[128];
    write_rip(app, course, words, text, sizeof text);
    bool narrow = course->rip.shape != RIP_FULL && course->rip.least < wall_least(app_wall(app));
    run_figure(run, label, narrow ? STYLE_FAULT : STYLE_FIGURE, text, "");
}

static void rips(App *app, FigureLine *run, const struct RipWording *wording)
{
    char text[LENGTH_TEXT_MAX];
    run_figure(run, "Start ", STYLE_FIGURE, app_length(app, app_wall(app)->start, text), "");
    const FaceLayout *face = &app_work(app)->layout->faces[app_face_index(app)];
    run_gap(run, wording->gap);
    if (face->course_count == 0) {
        run_text(run, STYLE_FAULT, "no course is on this face");
        return;
    }
    rip_figure(app, run, wording->top, &face->courses[face->course_count - 1], wording->words);
    run_gap(run, wording->gap);
    rip_figure(app, run, wording->bottom, &face->courses[0], wording->words);
}

static void rips_line(App *app, FigureLine run)
{
    int take = 0;
    for (; take + 1 < RIP_WORDINGS; take++) {
        FigureLine dry = {.grid = NULL, .x = run.x};
        rips(app, &dry, &rip_wordings[take]);
        if (dry.x <= run.right)
            break;
    }
    rips(app, &run, &rip_wordings[take]);
}

static void strip_line(App *app, FigureLine run)
{
    const Wall *wall = app_wall(app);
    const Strip *strip = &app_work(app)->layout->least;
    if (!strip->found) {
        run_figure(&run, "Least strip ", STYLE_FIGURE, "none: every course is whole", "");
        return;
    }
    char text[LENGTH_TEXT_MAX], place[700];
    bool narrow = strip->width < wall_least(wall);
    const Face *face = &wall->faces.at[strip->face];
    const char *bound = strip->opening >= 0 ? face->openings.at[strip->opening].name
                        : strip->at_floor   ? "floor"
                                            : "ceiling";
    run_figure(&run, "Least strip ", narrow ? STYLE_FAULT : STYLE_FIGURE, app_length(app, strip->width, text), "");
    snprintf(place, sizeof place, " at %s, course %" PRId64 "%s%s", bound, strip->course,
             wall->faces.count > 1 ? ", " : "", wall->faces.count > 1 ? face->name : "");
    static const char too_narrow[] = ": too narrow";
    bool fits = run.x + utf8_cells(place) + (int)sizeof too_narrow - 1 <= run.right;
    if (narrow && !fits) /* the place may be cut, this not */
        run_text(&run, STYLE_FAULT, ", too narrow,");
    run_text(&run, STYLE_PLAIN, place);
    if (narrow && fits)
        run_text(&run, STYLE_FAULT, too_narrow);
}

/* How the line of counts is worded, longest first; the first that fits is taken. */
typedef struct Wording {
    int gap;
    const char *of;    /* between boards opened and boards at hand */
    const char *bound; /* before the number that no plan can go below; NULL: left out */
    const char *best;  /* where that number is reached */
    bool courses, key; /* whether the courses are counted, and the key that lists the faults is named */
} Wording;

static const Wording wordings[] = {
    {3, " of ", ", no plan can do with fewer than ", ", and no plan can do with fewer", true, true},
    {3, " of ", ", at least ", ", the fewest", true, true},
    {2, " of ", ", at least ", ", the fewest", true, true},
    {1, " of ", ", at least ", ", the fewest", true, true},
    {1, "/", ", at least ", ", the least", true, true},
    {1, "/", NULL, NULL, true, true},
    {1, "/", NULL, NULL, true, false}, /* where there is no fault to be looked at */
    {1, "/", NULL, NULL, false, true},
};
enum { WORDINGS = sizeof wordings / sizeof *wordings };

static void counted(FigureLine *run, int count, const char *one, const char *many, int style)
{
    char text[32];
    snprintf(text, sizeof text, "%d", count);
    run_text(run, style, text);
    run_text(run, STYLE_LABEL, count == 1 ? one : many);
}

static void bound_words(FigureLine *run, const Plan *plan, const Wording *wording)
{
    char text[96];
    if (!plan->bound_known || plan->boards_bound <= 0 || wording->bound == NULL)
        return;
    bool best = plan->boards_bound >= plan->boards_opened;
    run_text(run, best ? STYLE_GOOD : STYLE_LABEL, best ? wording->best : wording->bound);
    snprintf(text, sizeof text, "%d", plan->boards_bound);
    if (!best)
        run_text(run, STYLE_LABEL, text);
}

/* " (f)": what shows them. */
static void list_key_named(FigureLine *run, bool ascii)
{
    char key[32];
    action_key_text(action_of(ACTION_FINDINGS), ascii, false, key, sizeof key);
    run_text(run, STYLE_LABEL, " (");
    run_text(run, STYLE_KEY, key);
    run_text(run, STYLE_LABEL, ")");
}

static void counts(const Job *job, FigureLine *run, const Wording *wording, bool ascii)
{
    const Plan *plan = job->plan;
    char text[32];
    if (wording->courses) {
        counted(run, job->layout->course_total, " course", " courses", STYLE_FIGURE);
        run->x += wording->gap;
    }
    counted(run, plan->piece_count, " piece", " pieces", STYLE_FIGURE);
    run->x += wording->gap;
    snprintf(text, sizeof text, "%d", plan->boards_opened);
    run_text(run, STYLE_FIGURE, text);
    run_text(run, STYLE_LABEL, wording->of);
    snprintf(text, sizeof text, "%d", plan->board_count);
    run_text(run, STYLE_LABEL, text);
    run_text(run, STYLE_LABEL, " boards");
    bound_words(run, plan, wording);
    run->x += wording->gap;
    int hazards = findings_of(&job->findings, GRADE_HAZARD);
    int faults = findings_of(&job->findings, GRADE_FAULT);
    int cautions = findings_of(&job->findings, GRADE_CAUTION);
    bool key = wording->key;
    if (hazards > 0) {
        counted(run, hazards, " hazard", " hazards", STYLE_FAULT);
        if (key)
            list_key_named(run, ascii);
        key = false;
    }
    /* beside hazards nothing is green, and in a narrow window nothing is said of faults that there are not */
    const bool told = faults > 0 || hazards == 0 || wording->bound != NULL;
    if (hazards > 0 && told)
        run->x += wording->gap;
    if (faults > 0)
        counted(run, faults, " fault", " faults", STYLE_FAULT);
    else if (told)
        run_text(run, hazards > 0 ? STYLE_LABEL : STYLE_GOOD, "no faults");
    if (faults > 0 && key)
        list_key_named(run, ascii);
    if (cautions > 0) {
        run->x += wording->gap;
        counted(run, cautions, " caution", " cautions", STYLE_CAUTION);
    }
    if (faults == 0 && cautions > 0 && key)
        list_key_named(run, ascii);
}

static void counts_line(App *app, FigureLine run)
{
    const Job *job = work_job(app_work(app));
    bool faulty = findings_of(&job->findings, GRADE_FAULT) > 0;
    int take = 0;
    for (; take + 1 < WORDINGS; take++) {
        FigureLine dry = {.grid = NULL, .x = run.x};
        counts(job, &dry, &wordings[take], false);
        if (dry.x <= run.right && (wordings[take].key || !faulty))
            break;
    }
    counts(job, &run, &wordings[take], app->grid->ascii);
}

void figures_draw(App *app, Grid *grid, Rect area)
{
    const Work *work = app_work(app);
    FigureLine run = {grid, area.x, area.y, area.x + area.columns};
    if (work->layout == NULL) {
        run_text(&run, STYLE_FAULT, work->err.text);
        return;
    }
    rips_line(app, run);
    if (area.rows < 2)
        return;
    run.y++;
    strip_line(app, run);
    if (area.rows < 3)
        return;
    run.y++;
    counts_line(app, run);
}
