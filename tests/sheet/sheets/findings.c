/* The check sheet of a wall whose findings are made up: what stands in one item, in which order, in which words. */
#include "fill/fill.h"
#include "layout/made.h"

#include "job/words.h"
#include "sheet/sheets/sheets.h"
#include "sheet/writers/plain.h"

#include <string.h>

typedef struct Bench {
    Made made;
    Job *job;
    Text text;
} Bench;

static Bench bench_new(void)
{
    Bench bench = {.made = made_new(UNITS_IN, IN(2.75), IN(0.0625), 0)};
    made_face(&bench.made, "north", IN(100), 0, IN(20));
    made_face(&bench.made, "east", IN(100), 0, IN(20));
    const Layout *layout = made_layout(&bench.made);
    bench.job = job_of_parts(bench.made.arena, layout, fill_by_hand(bench.made.arena, layout), "wall.yaml", "");
    bench.job->findings = bench.job->read = (Findings){0};
    text_init(&bench.text);
    return bench;
}

static void bench_free(Bench *bench)
{
    text_finish(&bench->text);
    arena_free(bench->made.arena);
}

static Finding *add(Bench *bench, Rule rule, int face, const char *text)
{
    Finding *finding = arena_push(bench->made.arena, &bench->job->findings);
    *finding = finding_of(rule);
    finding->face = face;
    finding->text = text;
    return finding;
}

static void add_in_course(Bench *bench, Rule rule, int64_t course, int piece, const char *text)
{
    Finding *finding = add(bench, rule, 0, text);
    finding->has_course = true;
    finding->course = course;
    finding->piece = piece;
}

static const char *shown(Bench *bench)
{
    findings_sort(&bench->job->findings);
    bench->job->read = findings_read(bench->made.arena, &bench->job->findings);
    text_finish(&bench->text);
    text_init(&bench->text);
    plain_write(sheet_check(bench->made.arena, bench->job, ""), &bench->text);
    return bench->text.bytes;
}

static int times(const char *text, const char *part)
{
    int count = 0;
    for (const char *at = text; (at = strstr(at, part)) != NULL; at++)
        count++;
    return count;
}

/* 40 pieces on one face are one item with their sentence once and each piece in its list; the data has a row each. */
START_TEST(one_sentence_for_many)
{
    Bench bench = bench_new();
    for (int i = 1; i <= 40; i++) {
        Finding *finding = add(&bench, RULE_WIRE, i <= 39 ? 0 : 1, "No stud stands behind the piece. Glue it.");
        finding->lead = "No stud stands behind these. Glue them:";
        finding->item = words(bench.made.arena, "piece #%d", i);
    }
    const char *text = shown(&bench);
    assert_holds(text, "40 hazards, 0 faults, 0 cautions.");
    assert_holds(text, "[ ] 39 hazards, wire: face north\n");
    assert_int_equal(times(text, "No stud stands behind these. Glue them:"), 1);
    assert_int_equal(times(text, "#"), 39);
    assert_holds(text, "#39.\n");
    assert_holds(text, "[ ] Hazard, wire: face east\n    No stud stands behind the piece. Glue it.\n");
    assert_int_equal(sheet_check(bench.made.arena, bench.job, "")->records.count, 40);
    bench_free(&bench);
}
END_TEST

/* Without a sentence for all of them each has a line; one that begins small is told its course and piece first. */
START_TEST(a_line_for_each)
{
    Bench bench = bench_new();
    add_in_course(&bench, RULE_STAGGER, 3, 12, "the joint at 20 in stands 2 in from the one below");
    add_in_course(&bench, RULE_STAGGER, -4, 31, "the joint at 50 in stands 3 in from the one below");
    add_in_course(&bench, RULE_SLIVER, 5, 0, "Course 5: only 1/4 in is left.");
    add_in_course(&bench, RULE_SLIVER, 6, 0, "Course 6: only 1/8 in is left.");
    const char *text = shown(&bench);
    assert_holds(text, "0 hazards, 2 faults, 2 cautions.");
    assert_holds(text, "[ ] 2 faults, stagger: face north\n"
                       "    Course -4, piece 31: the joint at 50 in stands 3 in from the one below\n"
                       "    Course 3, piece 12: the joint at 20 in stands 2 in from the one below\n");
    assert_holds(text, "[ ] 2 cautions, sliver: face north\n"
                       "    Course 5: only 1/4 in is left.\n"
                       "    Course 6: only 1/8 in is left.\n");
    bench_free(&bench);
}
END_TEST

/* Like rules with other sentences do not mix. */
START_TEST(other_sentences_stand_alone)
{
    Bench bench = bench_new();
    add(&bench, RULE_WIRE, 0, "Fasteners reach far into the studs.");
    Finding *finding = add(&bench, RULE_WIRE, 0, "No stud stands behind piece 7.");
    finding->lead = "No stud stands behind these:";
    finding->item = "piece 7";
    const char *text = shown(&bench);
    assert_int_equal(times(text, "[ ] Hazard, wire: face north\n"), 2);
    assert_lacks(text, "these");
    bench_free(&bench);
}
END_TEST

START_TEST(general_care_leads_faults_and_cautions)
{
    Bench bench = bench_new();
    add(&bench, RULE_TRIM, 0, "A strip covers nothing.");
    add(&bench, RULE_CARE, -1, "Dust: collect it.");
    add(&bench, RULE_CARE, -1, "Old paint: have it tested.");
    const char *text = shown(&bench);
    assert_holds(text, "2 hazards, 2 of them on any such job, 0 faults, 1 caution.");
    assert_holds(text, "Care, on any such job\n    Dust: collect it.\n    Old paint: have it tested.\n");
    assert_int_equal(times(text, "[ ]"), 1);
    assert_true(strstr(text, "Care, on") < strstr(text, "A strip"));
    bench_free(&bench);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        one_sentence_for_many,
        a_line_for_each,
        other_sentences_stand_alone,
        general_care_leads_faults_and_cautions,
    };
    return RUN(tests);
}
