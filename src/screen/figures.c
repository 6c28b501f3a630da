/*
 * Three lines, each as long as there is room for; the words before a figure go first where there is little.
 *
 *     Start 2 1/4     Top rip 1 7/16 > 1 3/8, taper     Bottom rip 2 1/8
 *     Least strip 9/16 at desk outlet, course -10 on north: too narrow
 *     34 courses   124 pieces   88 of 97 boards (no plan can do with fewer than 86)   no faults   3 cautions
 */
#include "base/utf8.h"
#include "screen/frame.h"

#include <inttypes.h>
#include <stdio.h>
#include <string.h>

/* A run of words across one line; without a grid it only measures. */
typedef struct Run {
    Grid *grid;
    int x, y, right;
} Run;

static void run_text(Run *run, int style, const char *text)
{
    run->x +=
        run->grid == NULL ? utf8_cells(text) : grid_text(run->grid, run->x, run->y, run->right - run->x, style, text);
}

static void run_gap(Run *run, int cells)
{
    run->x += cells;
}

static void run_figure(Run *run, const char *label, int style, const char *figure, const char *unit)
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

void figures_rip(const App *app, const Course *course, bool words, char *out, size_t size)
{
    const Rip *rip = &course->rip;
    char left[LENGTH_TEXT_MAX], right[LENGTH_TEXT_MAX];
    app_length(app, rip->left, left);
    app_length(app, rip->right, right);
    const char *to = app->grid->ascii ? ">" : "\u2192";
    if (only_raked(course)) {
        snprintf(out, size, "%s", words ? "raked, not ripped" : "raked");
        return;
    }
    switch (rip->shape) {
    case RIP_FULL: snprintf(out, size, "%s", "full"); return;
    case RIP_STRAIGHT: snprintf(out, size, "%s", left); return;
    case RIP_TAPER: snprintf(out, size, "%s %s %s%s", left, to, right, words ? ", taper" : ""); return;
    case RIP_SCRIBE: break;
    }
    snprintf(out, size, "%s %s %s%s", left, to, right, words ? ", scribe" : " ~");
}

static void rip_figure(App *app, Run *run, const char *label, const Course *course)
{
    char text[128];
    figures_rip(app, course, true, text, sizeof text);
    bool narrow = course->rip.shape != RIP_FULL && course->rip.least < wall_least(app_wall(app));
    run_figure(run, label, narrow ? STYLE_FAULT : STYLE_FIGURE, text, "");
}

static void rips_line(App *app, Run run, bool roomy)
{
    const Wall *wall = app_wall(app);
    char text[LENGTH_TEXT_MAX];
    run_figure(&run, "Start ", STYLE_FIGURE, app_length(app, wall->start, text), "");
    const Layout *layout = app_work(app)->layout;
    const FaceLayout *face = &layout->faces[app_face_index(app)];
    run_gap(&run, roomy ? 4 : 2);
    if (face->course_count == 0) {
        run_text(&run, STYLE_FAULT, "no course is on this face");
        return;
    }
    rip_figure(app, &run, roomy ? "Top rip " : "Top ", &face->courses[face->course_count - 1]);
    run_gap(&run, roomy ? 4 : 2);
    rip_figure(app, &run, roomy ? "Bottom rip " : "Bottom ", &face->courses[0]);
}

static void strip_line(App *app, Run run)
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
    run_text(&run, STYLE_PLAIN, place);
    if (narrow)
        run_text(&run, STYLE_FAULT, ": too narrow");
}

/* How the line of counts is worded, longest first; the first that fits is taken. */
typedef struct Wording {
    int gap;
    const char *of;    /* between boards opened and boards at hand */
    const char *bound; /* before the number that no plan can go below; NULL: left out */
    const char *best;  /* where that number is reached */
} Wording;

static const Wording wordings[] = {
    {3, " of ", ", no plan can do with fewer than ", ", and no plan can do with fewer"},
    {3, " of ", ", at least ", ", none fewer"},
    {2, " of ", ", at least ", ", none fewer"},
    {1, "/", ", at least ", ", the least"},
    {1, "/", NULL, NULL},
};
enum { WORDINGS = sizeof wordings / sizeof *wordings };

static void counted(Run *run, int count, const char *one, const char *many, int style)
{
    char text[32];
    snprintf(text, sizeof text, "%d", count);
    run_text(run, style, text);
    run_text(run, STYLE_LABEL, count == 1 ? one : many);
}

static void bound_words(Run *run, const Plan *plan, const Wording *wording)
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

static void counts(const Job *job, Run *run, const Wording *wording)
{
    const Plan *plan = job->plan;
    char text[32];
    counted(run, job->layout->course_total, " course", " courses", STYLE_FIGURE);
    run->x += wording->gap;
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
    int faults = findings_faults(&job->findings);
    int cautions = job->findings.count - faults;
    if (faults == 0)
        run_text(run, STYLE_GOOD, "no faults");
    else
        counted(run, faults, " fault", " faults", STYLE_FAULT);
    if (cautions > 0) {
        run->x += wording->gap;
        counted(run, cautions, " caution", " cautions", STYLE_CAUTION);
    }
}

static void counts_line(App *app, Run run)
{
    const Job *job = work_job(app_work(app));
    int take = 0;
    for (; take + 1 < WORDINGS; take++) {
        Run dry = {.grid = NULL, .x = run.x};
        counts(job, &dry, &wordings[take]);
        if (dry.x <= run.right)
            break;
    }
    counts(job, &run, &wordings[take]);
}

void figures_draw(App *app, Grid *grid, Rect area)
{
    const Work *work = app_work(app);
    Run run = {grid, area.x, area.y, area.x + area.columns};
    bool roomy = area.columns >= 76;
    if (work->layout == NULL) {
        run_text(&run, STYLE_FAULT, work->err.text);
        return;
    }
    rips_line(app, run, roomy);
    if (area.rows < 2)
        return;
    run.y++;
    strip_line(app, run);
    if (area.rows < 3)
        return;
    run.y++;
    counts_line(app, run);
}
