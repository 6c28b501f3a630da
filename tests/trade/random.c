/*
 * The whole trade over random walls of every kind: nothing stops, every sum and order holds, and no text says what it
 * must not. Plans are made by the hand method.
 */
#include "support/test.h"

#include "fill/fill.h"
#include "fill/trim.h"
#include "support/random_wall.h"
#include "trade/asbuilt.h"
#include "trade/bill.h"
#include "trade/corner.h"
#include "trade/mill.h"
#include "trade/season.h"
#include "trade/studs.h"
#include "trade/tally.h"
#include "trade/trade.h"
#include "trade/trim_runs.h"
#include "trade/widths.h"

#include <stdlib.h>
#include <string.h>

enum { WALLS = 150 };

typedef struct Job {
    Arena *arena;
    const Wall *wall;
    const Layout *layout;
    const Plan *plan;
} Job;

/* Of how many names and lengths the trim plan lacks strips. */
static int kinds_missing(Job *job)
{
    if (!job->wall->trim.given)
        return 0;
    TrimPieces pieces = trim_pieces(job->arena, job->layout);
    const TrimPieces *missing = &trim_plan(job->arena, job->wall, &pieces)->missing;
    int kinds = 0;
    for (int i = 0; i < missing->count; i++) {
        int k = 0;
        while (k < i && (missing->at[k].length != missing->at[i].length ||
                         strcmp(missing->at[k].name, missing->at[i].name) != 0))
            k++;
        kinds += k == i;
    }
    return kinds;
}

static void check_findings(Job *job)
{
    Findings findings = {0};
    trade_findings(job->arena, job->wall, job->layout, job->plan, &findings);
    int hot = 0, told = 0, missing = 0, wires = 0, fastened = 0, boxes = 0, boxes_told = 0;
    for (int i = 0; i < job->wall->faces.count; i++) {
        fastened += job->layout->faces[i].course_count > 0;
        for (int j = 0; j < job->wall->faces.at[i].openings.count; j++) {
            const OpeningKind kind = job->wall->faces.at[i].openings.at[j].kind;
            hot += kind == OPENING_STOVE || kind == OPENING_FIREPLACE || kind == OPENING_PIPE;
            boxes += kind == OPENING_BOX && opening_cuts(&job->layout->faces[i], j);
        }
    }
    for (int i = 0; i < findings.count; i++) {
        const Finding *finding = &findings.at[i];
        assert_true(finding->text && finding->text[0]);
        assert_true(rule_grade(finding->rule) != GRADE_FAULT || finding->rule == RULE_MISSING);
        missing += finding->rule == RULE_MISSING;
        wires += finding->rule == RULE_WIRE;
        assert_lacks(finding->text, " safe");
        assert_null(strchr(finding->text, '\n'));
        assert_true(finding->text[0] < 'a' || finding->text[0] > 'z'); /* whole sentences */
        assert_int_equal(finding->text[strlen(finding->text) - 1], '.');
        if (finding->opening >= 0) {
            const Openings *openings = &job->wall->faces.at[finding->face].openings;
            assert_true(finding->opening < openings->count);
            told += finding->rule == RULE_FIRE;
            boxes_told +=
                finding->rule == RULE_BOX && opening_cuts(&job->layout->faces[finding->face], finding->opening);
        }
    }
    assert_int_equal(told, hot); /* each, at any distance, once */
    assert_int_equal(wires, fastened);
    assert_int_equal(boxes_told, boxes);
    assert_int_equal(missing, kinds_missing(job));
}

static void check_bill(Job *job)
{
    BillLines lines = bill_lines(job->arena, job->layout, job->plan);
    for (int i = 0; i < lines.count; i++) {
        assert_true(lines.at[i].amount >= 0);
        assert_true(lines.at[i].what[0] && lines.at[i].unit[0]);
        assert_true(i == 0 || lines.at[i].group >= lines.at[i - 1].group);
        assert_true(strlen(bill_amount(job->arena, &lines.at[i])) > 0);
    }
}

/* Every run there can be, on this wall. */
static void check_trim(Job *job)
{
    Wall *wall = wall_copy(job->arena, job->wall);
    Layout layout = *job->layout;
    Findings findings = {0};
    layout.wall = wall;
    for (int along = ALONG_FLOOR; along <= ALONG_EDGES; along++)
        *arena_push(job->arena, &wall->trim.runs) =
            (TrimRun){.along = (TrimAlong)along, .width = (3 + along) * 10 * LENGTH_MM};
    TrimStrips strips = trim_strips(job->arena, &layout, &findings);
    for (int i = 0; i < strips.count; i++) {
        const TrimStrip *strip = &strips.at[i];
        assert_true(strip->long_point >= strip->short_point);
        assert_true(strip->most >= strip->least);
        assert_true(strip->least >= wall->trim.runs.at[strip->run].width);
        assert_true(strip->name[0] && strip->text[0]);
        assert_true(i == 0 || strip->run >= strips.at[i - 1].run);
    }
    trim_pieces(job->arena, &layout);
}

static void check_mill(Job *job)
{
    Wall *wall = wall_copy(job->arena, job->wall);
    Layout layout = *job->layout;
    layout.wall = wall;
    wall->mill = (Mill){.given = true, .edge = 2 * LENGTH_MM, .plane = LENGTH_MM, .keep = 15 * LENGTH_MM};
    for (int i = 1; i < 5; i++)
        *arena_push(job->arena, &wall->rough) = (Rough){.width = i * 70 * LENGTH_MM,
                                                        .thickness = wall->planks.thickness + i * LENGTH_MM - LENGTH_MM,
                                                        .length = i * LENGTH_METRE,
                                                        .count = i,
                                                        .ends = 30 * LENGTH_MM};
    MillSheet sheet = mill_sheet(job->arena, &layout);
    for (int i = 0; i < sheet.line_count; i++) {
        const MillLine *line = &sheet.lines[i];
        assert_true(line->step_count > 0);
        Length across = 0;
        for (int j = 0; j < line->cut_count; j++)
            across += line->cuts[j].count * line->cuts[j].width;
        assert_true(across <= wall->rough.at[i].width);
    }
    Length needed = 0;
    for (int i = 0; i < sheet.need_count; i++)
        needed += sheet.needs[i].needed;
    assert_int_equal(needed, tally_of(job->arena, &layout).needed);
}

static void check_ends(Job *job)
{
    for (int i = 0; i < job->plan->piece_count; i++) {
        PieceEnd ends[2];
        corner_piece_ends(job->arena, job->layout, &job->plan->pieces[i], &ends[0], &ends[1]);
        for (int j = 0; j < 2; j++) {
            assert_true(ends[j].text[0]);
            assert_int_equal(ends[j].place == AT_CORNER, ends[j].other >= 0);
            assert_int_equal(ends[j].cut == END_MITER || ends[j].cut == END_BEVEL, ends[j].shorter != 0);
        }
    }
}

static void check_wall(uint64_t seed, RandomKind kind)
{
    Job job = {.arena = arena_new()};
    Err err;
    job.wall = random_wall(job.arena, seed, kind);
    job.layout = layout_wall(job.arena, job.wall, &err);
    if (!job.layout)
        FAIL("%s", err.text);
    job.plan = fill_by_hand(job.arena, job.layout);
    check_findings(&job);
    check_bill(&job);
    check_trim(&job);
    check_mill(&job);
    check_ends(&job);
    assert_non_null(asbuilt_of(job.arena, job.layout, job.plan, &err));
    if (seed % 10 == 0) {
        widths_worth(job.arena, job.layout);
        reveals_worth(job.arena, job.layout);
    }
    Seasons seasons = season_of_wall(job.wall);
    if (seasons.given)
        assert_true(seasons.dry.reveal >= 0 && seasons.damp.reveal >= 0 && seasons.hung.closes == 0);
    arena_free(job.arena);
}

START_TEST(figures_of_random_walls_add_up)
{
    for (int kind = 0; kind < RANDOM_KIND_COUNT; kind++)
        for (uint64_t seed = 1; seed <= WALLS / RANDOM_KIND_COUNT; seed++)
            check_wall(seed, (RandomKind)kind);
    for (uint64_t seed = 1000; seed < 1000 + WALLS; seed++)
        check_wall(seed, RANDOM_ANY);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {figures_of_random_walls_add_up};
    return RUN(tests);
}
