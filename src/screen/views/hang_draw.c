/*
 *     north, course 3: piece 12 of 161                 11 hung, 149 to go
 *     board                   cut to
 *     ### #                   # # ###     large
 *     from the board   ...                words, folded, scrolled where they are many
 *     measured         ...                the edge that is typed in, or what the last one comes to
 */
#include "screen/views/hang.h"

#include "job/edge_mark.h"
#include "job/measures.h"
#include "job/words.h"
#include "screen/views/facts.h"
#include "screen/views/large.h"
#include "trade/corner.h"
#include "trade/say.h"
#include "trade/scribe.h"
#include "trade/trim_runs.h"

#include <inttypes.h>
#include <string.h>

enum { LABEL_CELLS = 10, LARGE_APART = 26 };

/* Centres of the studs behind the plank, from its own left end. */
static const char *stud_words(Arena *arena, const Wall *wall, const FaceLayout *face, const Piece *piece,
                              const Plank *plank)
{
    const char *text = measures_studs(arena, face, plank);
    for (int i = 0; i < plank->stud_count; i++)
        text = words(arena, "%s%s %s", text, i == 0 ? ": at" : ",",
                     words_length(arena, wall, face->studs.at[plank->stud_first + i] - piece->left));
    return plank->stud_count > 0 ? words(arena, "%s from its left end", text) : text;
}

static const char *from_words(PlankFrom from)
{
    return from == FROM_LOWER ? "lower" : from == FROM_UPPER ? "upper" : "marked";
}

static void add_rip(Arena *arena, Facts *facts, const Layout *layout, const Piece *piece, const Plank *plank)
{
    const Wall *wall = layout->wall;
    const Course *course = &layout->faces[piece->face].courses[piece->course];
    facts_add(arena, facts, "rip", measures_full(course, plank) ? STYLE_PLAIN : STYLE_STRONG,
              measures_rip(arena, wall, plank));
    const TrimStrips strips = trim_strips(arena, layout, NULL);
    facts_add(arena, facts, "", STYLE_PLAIN, scribe_straight_words(arena, layout, &strips, piece->face, course));
    facts_add(arena, facts, "", STYLE_PLAIN,
              course->rip.shape == RIP_SCRIBE ? scribe_words(layout, piece->face) : NULL);
    facts_add(arena, facts, "", STYLE_PLAIN, measures_laps(arena, wall, plank));
}

static void add_ends(Arena *arena, Facts *facts, const Layout *layout, const Piece *piece, const Plank *plank)
{
    PieceEnd left, right;
    corner_piece_ends(arena, layout, piece, &left, &right);
    facts_add(arena, facts, "ends", STYLE_PLAIN, measures_ends(arena, layout->wall, plank));
    if (strcmp(left.text, right.text) == 0) {
        facts_add(arena, facts, "both ends", STYLE_PLAIN, left.text);
        facts_add(arena, facts, "", STYLE_PLAIN, left.why != NULL ? left.why : right.why);
    } else {
        facts_add(arena, facts, "left end", STYLE_PLAIN, left.text);
        facts_add(arena, facts, "", STYLE_PLAIN, left.why);
        facts_add(arena, facts, "right end", STYLE_PLAIN, right.text);
        facts_add(arena, facts, "", STYLE_PLAIN, right.why);
    }
}

static void add_piece(App *app, Arena *arena, Facts *facts, const Piece *piece)
{
    const Layout *layout = app_work(app)->layout;
    const Wall *wall = layout->wall;
    const FaceLayout *face = &layout->faces[piece->face];
    const Course *course = &face->courses[piece->course];
    const Stock *stock = wall_board(wall, piece->board);
    Plank plank = plank_measure(arena, layout, piece->face, course, piece->left, piece->right);
    Length end = piece->offset + piece->right - piece->left;
    facts_add(arena, facts, "board", STYLE_PLAIN,
              words(arena, "%s long%s%s; this piece from %s to %s off its first end",
                    words_length_unit(arena, wall, stock->length), stock->tone[0] != '\0' ? ", " : "",
                    words_name(arena, stock->tone), words_length(arena, wall, piece->offset),
                    words_length_unit(arena, wall, end)));
    facts_add(arena, facts, "marks", STYLE_STRONG,
              words(arena, "lower edge %s, upper edge %s", edge_mark_words(arena, wall, course, false),
                    edge_mark_words(arena, wall, course, true)));
    Length own;
    if (edge_mark_own(layout, piece->face, course, &own))
        facts_add(arena, facts, "", STYLE_PLAIN,
                  words(arena, "the board's own upper edge %s", words_mark(arena, wall, own)));
    facts_add(arena, facts, "stands", STYLE_PLAIN,
              words(arena, "from %s to %s on the face", words_length(arena, wall, piece->left),
                    words_length(arena, wall, piece->right)));
    add_rip(arena, facts, layout, piece, &plank);
    for (int i = 0; i < plank.cut_count; i++)
        facts_add(arena, facts, "cut out", STYLE_STRONG,
                  measures_cut(arena, wall, &wall->faces.at[piece->face], &plank, &plank.cuts[i]));
    if (plank.cut_count > 0 && plank.from != FROM_LOWER)
        facts_add(arena, facts, "", STYLE_CAUTION, words(arena, "measured from the %s edge", from_words(plank.from)));
    facts_add(arena, facts, "to see", STYLE_ACCENT, measures_shows(arena, layout, piece));
    add_ends(arena, facts, layout, piece, &plank);
    facts_add(arena, facts, "studs", STYLE_PLAIN, stud_words(arena, wall, face, piece, &plank));
}

/* What hangs and no longer fits the wall as it is written. */
static void add_faults(App *app, Arena *arena, Facts *facts)
{
    const Job *job = work_job(app_work(app));
    for (int i = 0; i < job->findings.count; i++)
        if (job->findings.at[i].rule == RULE_HUNG)
            facts_add(arena, facts, "fault", STYLE_FAULT, job->findings.at[i].text);
}

static void add_measured(App *app, Arena *arena, Facts *facts, const AsBuilt *built, const Piece *piece)
{
    const Layout *layout = app_work(app)->layout;
    for (int i = 0; i < layout->wall->faces.count; i++) {
        if (piece != NULL && i != piece->face)
            continue;
        facts_add(arena, facts, "measured", STYLE_ACCENT, built->faces[i].up.text);
        facts_add(arena, facts, "measured", STYLE_ACCENT, built->faces[i].down.text);
    }
    if (built->course_done && piece != NULL && piece->number - 1 == built->next)
        facts_add(arena, facts, "now", STYLE_CAUTION, "a course is up: a good time to measure its outer edge (e)");
}

static void head_draw(App *app, Arena *arena, Grid *grid, Rect row, const AsBuilt *built, const Piece *piece)
{
    const Layout *layout = app_work(app)->layout;
    const char *count = words(arena, "%d hung, %d to go", built->hung, built->left);
    int cells = (int)strlen(count);
    grid_text_right(grid, row.x + row.columns, row.y, cells, STYLE_LABEL, count);
    if (piece == NULL)
        return;
    const Course *course = &layout->faces[piece->face].courses[piece->course];
    const bool next = built->next >= 0 && piece->number == fill_plan(app_work(app)->fill)->pieces[built->next].number;
    const char *turn = piece_is_up(piece) ? "Hangs already"
                       : piece->cut       ? (next ? "Next, cut" : "Cut, later")
                       : next             ? "Next"
                                          : "Later";
    grid_format(grid, row.x, row.y, row.columns - cells - 2, STYLE_STRONG, "%s: %s, course %" PRId64 ", piece %d", turn,
                layout->wall->faces.at[piece->face].name, course->number, piece->number);
}

static void large_piece(App *app, Arena *arena, Grid *grid, Rect area, const Piece *piece)
{
    const Wall *wall = app_work(app)->layout->wall;
    const Stock *stock = wall_board(wall, piece->board);
    int apart = area.columns > 2 * LARGE_APART ? LARGE_APART : area.columns / 2;
    grid_format(grid, area.x, area.y, apart - 1, STYLE_LABEL, "board%s%s", stock->label[0] != '\0' ? ", labelled " : "",
                stock->label);
    grid_text(grid, area.x + apart, area.y, area.columns - apart, STYLE_LABEL,
              wall->units == UNITS_IN ? "length, in" : "length, mm");
    large_draw(grid, area.x, area.y + 1, STYLE_FIGURE, words(arena, "%d", piece->board));
    large_draw(grid, area.x + apart, area.y + 1, STYLE_FIGURE, words_length(arena, wall, piece->right - piece->left));
}

/* Where the edge was planned, or measured before, counted from the level line in its own direction. */
static Length edge_now(App *app, const Hang *hang)
{
    const FaceLayout *face = &app_work(app)->layout->faces[wall_face_index(app_wall(app), hang->face)];
    const Course *course = &face->courses[layout_course_index(face, hang->course)];
    return hang->is_top ? course->top + hang_beyond(app, hang) : -course->bottom;
}

static void edge_draw(App *app, Arena *arena, Grid *grid, Rect area, const Hang *hang)
{
    const Wall *wall = app_wall(app);
    grid_panel(grid, area, "An edge as it hangs");
    Rect inside = {area.x + 2, area.y + 1, area.columns - 4, area.rows - 2};
    grid_format(grid, inside.x, inside.y, inside.columns, STYLE_STRONG, "%s edge of %scourse %" PRId64 " on %s",
                hang->is_top ? "Upper" : "Lower", hang_beyond(app, hang) > 0 ? "the boards of " : "", hang->course,
                wall->faces.at[wall_face_index(wall, hang->face)].name);
    grid_format(grid, inside.x, inside.y + 1, inside.columns, STYLE_LABEL, "%s the level line; as laid out %s",
                hang->is_top ? "Above" : "Below", words_length_unit(arena, wall, edge_now(app, hang)));
    int cells = inside.columns < 20 ? inside.columns : 20;
    field_draw(&hang->field, grid, inside.x, inside.y + 2, cells, true);
    grid_text(grid, inside.x + cells + 1, inside.y + 2, inside.columns - cells - 1,
              hang->field.bad ? STYLE_FAULT : STYLE_DIM, hang->field.says);
}

static void all_hung(Arena *arena, Facts *facts, const Plan *plan)
{
    facts_add(arena, facts, "done", STYLE_GOOD, "Every piece of the plan hangs.");
    if (plan->bare_count > 0)
        facts_add(arena, facts, "bare", STYLE_CAUTION,
                  words(arena, "%s of wall still bare: a board found (a) may cover it.",
                        say_count(arena, plan->bare_count, "stretch", "stretches")));
}

static void body_draw(App *app, Arena *arena, Hang *hang, Grid *grid, Rect area)
{
    Work *work = app_work(app);
    const Plan *plan = fill_plan(work->fill);
    const Piece *piece = hang_piece(app, hang);
    Err err;
    const AsBuilt *built = asbuilt_of(arena, work->layout, plan, &err);
    if (built == NULL) {
        grid_text(grid, area.x, area.y, area.columns, STYLE_FAULT, err.text);
        return;
    }
    Facts facts = {.label_cells = LABEL_CELLS};
    int large = 0;
    head_draw(app, arena, grid, (Rect){area.x, area.y, area.columns, 1}, built, piece);
    if (piece != NULL) {
        large = area.rows > 8 ? 1 + large_rows(grid) : 0;
        if (large > 0)
            large_piece(app, arena, grid, (Rect){area.x, area.y + 1, area.columns, large}, piece);
        else
            facts_add(arena, &facts, "piece", STYLE_FIGURE,
                      words(arena, "board %s, %s", words_board(arena, work->wall, piece->board),
                            words_length_unit(arena, work->wall, piece->right - piece->left)));
        if (!work->filled)
            facts_add(arena, &facts, "wait", STYLE_CAUTION, "the plan is not final yet; this piece may change");
        if (hang_replanned(app, hang))
            facts_add(arena, &facts, "anew", STYLE_CAUTION,
                      "some pieces changed since this view was opened: read the cautions for which, and print the "
                      "sheets again");
        add_faults(app, arena, &facts);
        add_measured(app, arena, &facts, built, piece);
        add_piece(app, arena, &facts, piece);
    } else {
        all_hung(arena, &facts, plan);
        add_faults(app, arena, &facts);
        add_measured(app, arena, &facts, built, NULL);
    }
    Rect words_area = {area.x, area.y + 1 + large, area.columns, area.rows - 1 - large};
    grid_cursor(grid, area.x, area.y);
    int count = facts_draw(grid, words_area, &facts, &hang->top);
    if (count > words_area.rows + hang->top)
        grid_text_right(grid, area.x + area.columns, area.y + area.rows - 1, 18, STYLE_CAUTION, " PgDn shows more ");
}

void hang_draw(App *app, void *state, Grid *grid, Rect area)
{
    Hang *hang = state;
    grid_fill(grid, area, ' ', STYLE_PLAIN);
    Rect inside = {area.x + 1, area.y, area.columns - 2, area.rows};
    if (app_work(app)->layout == NULL) {
        grid_text(grid, inside.x, inside.y, inside.columns, STYLE_FAULT, app->work.err.text);
        return;
    }
    Arena *arena = arena_new();
    body_draw(app, arena, hang, grid, inside);
    if (hang->measuring) {
        int rows = area.rows < 5 ? area.rows : 5;
        edge_draw(app, arena, grid, (Rect){area.x, area.y + area.rows - rows, area.columns, rows}, hang);
    }
    arena_free(arena);
}
