/* What is said of senseless files: cases.h. `senseless CASE` prints the file of that number. */
#include "senseless/cases.h"

#include "job/job.h"
#include "store/store.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { SHOWN_MOST = 6 };

/* A wall with nothing wrong: what it is warned of, any wall is. */
static const char plain_wall[] = "datumrow: 1\n"
                                 "title: Boathouse porch\n"
                                 "units: in\n"
                                 "round: 1/16\n"
                                 "planks: {width: 3, thickness: 1/2, reveal: 1/16, lap: 0, least: 3/4, leave: 0}\n"
                                 "start: 0\n"
                                 "joints: {land: anywhere, stagger: 6, shortest: 8, closer: 0}\n"
                                 "saw: {kerf: 1/8, square: 1/4}\n"
                                 "faces:\n"
                                 "- name: north\n"
                                 "  width: 80\n"
                                 "  floor: [{at: 0, down: 12}]  # north\n"
                                 "  ceiling: [{at: 0, up: 12 3/16}]  # north\n"
                                 "  left: []\n"
                                 "  margin: {floor: 0}\n"
                                 "  corner: {kind: inside, joint: butt, through: left, gap: 0}\n"
                                 "  wall: studs\n"
                                 "  backing: 0\n"
                                 "  studs: {first: 8, spacing: 16}  # north\n"
                                 "  openings:\n"
                                 "  - {name: outlet, kind: box, left: 20, bottom: -5, width: 2 1/4, height: 3 3/4, "
                                 "clear: 1/16, plate: {width: 2 3/4, "
                                 "height: 4 1/2}, front: 1/2}  # more\n"
                                 "- name: east\n"
                                 "  width: 40\n"
                                 "  floor: [{at: 0, down: 12}]\n"
                                 "  ceiling: [{at: 0, up: 12 3/16}]\n"
                                 "  studs: {first: 8, spacing: 16}  # east\n"
                                 "stock:\n"
                                 "- {length: 60, count: 24}\n"
                                 "- {label: A7, length: 48, count: 4}\n"
                                 "fasteners: {length: 1 3/4, drywall: 1/2}\n"
                                 "trim:\n"
                                 "  stock: [{length: 96, count: 4}]\n"
                                 "  pieces: [{name: left corner, length: 24, count: 1}]\n"
                                 "  runs: []\n"
                                 "wood:\n"
                                 "  species: \"pine, eastern white\"\n"
                                 "  hung: {temperature: 68 F, humidity: 45}\n"
                                 "  dry: {temperature: 70 F, humidity: 25}\n"
                                 "  damp: {temperature: 75 F, humidity: 65}\n"
                                 "\nhung: []\n";

/* The plain wall with the changes of a case; NULL where one finds nothing to change. */
static char *changed(Arena *arena, const Case *one)
{
    Text text;
    text_init(&text);
    text_put(&text, plain_wall);
    char *made = arena_text(arena, text.bytes, text.length);
    for (int i = 0; i < 3 && one->changes[i].from != NULL && made != NULL; i++) {
        const Change *change = &one->changes[i];
        const char *at = strstr(made, change->from);
        if (at == NULL) {
            made = NULL;
            break;
        }
        text_clear(&text);
        text_put_bytes(&text, made, (size_t)(at - made));
        text_put(&text, change->to);
        text_put(&text, at + strlen(change->from));
        made = arena_text(arena, text.bytes, text.length);
    }
    text_finish(&text);
    return made;
}

/* ---- what is said ---- */

typedef struct Said {
    Errs errors;
    const Job *job; /* NULL where the file is refused */
} Said;

static Said said_of(Arena *arena, const char *text)
{
    Said said = {0};
    Source source = {0};
    if (!store_parse(arena, "wall.yaml", text, strlen(text), &source, &said.errors))
        return said;
    Err err = {0};
    said.job = job_of_wall(arena, source.wall, "wall.yaml", "", &err);
    if (said.job == NULL)
        *arena_push(arena, &said.errors) = err;
    return said;
}

static bool finds(const Said *said, const char *rule, const char *says)
{
    if (strcmp(rule, ERROR) == 0) {
        for (int i = 0; i < said->errors.count; i++)
            if (strstr(said->errors.at[i].text, says) != NULL)
                return true;
        return false;
    }
    for (int i = 0; said->job != NULL && i < said->job->findings.count; i++) {
        const Finding *finding = &said->job->findings.at[i];
        if (strcmp(rule_word(finding->rule), rule) == 0 && strstr(finding->text, says) != NULL)
            return true;
    }
    return false;
}

static void show(const Said *said)
{
    for (int i = 0; i < said->errors.count; i++)
        printf("#     error: %s\n", said->errors.at[i].text);
    for (int i = 0, shown = 0; said->job != NULL && i < said->job->findings.count && shown < SHOWN_MOST; i++) {
        const Finding *finding = &said->job->findings.at[i];
        if (finding->rule != RULE_CARE) { /* what any job is told */
            printf("#     %s: %s\n", rule_word(finding->rule), finding->text);
            shown++;
        }
    }
}

/* What the plain wall is told of counts for nothing, unless the case asks for those very words. */
static bool is_said(const Said *said, const Said *plain, const Case *one)
{
    return finds(said, one->rule, one->says) && (one->says[0] != '\0' || !finds(plain, one->rule, ""));
}

static bool look_at(const Case *one, int number, const Said *plain)
{
    Arena *arena = arena_new();
    const char *text = changed(arena, one);
    bool holds = text != NULL;
    if (!holds) {
        printf("# %s: its change finds nothing to change\n", one->what);
    } else {
        const Said said = said_of(arena, text);
        const bool is = is_said(&said, plain, one);
        holds = is != one->open;
        if (!holds && is) {
            printf("# %s: said now; take its mark away\n", one->what);
        } else if (!holds) {
            printf("# case %d, %s: nobody says `%s` \"%s\"\n", number, one->what, one->rule, one->says);
            show(&said);
        }
    }
    printf("%s %d - %s%s\n", holds ? "ok" : "not ok", number, one->what,
           one->open && holds ? " # SKIP not said yet" : "");
    arena_free(arena);
    return holds;
}

int main(int count, char **words)
{
    Arena *arena = arena_new();
    if (count == 2) {
        const long number = strtol(words[1], NULL, 10);
        const char *text = number >= 1 && number <= CASES ? changed(arena, &cases[number - 1]) : NULL;
        if (text != NULL)
            fputs(text, stdout);
        return text == NULL;
    }
    const Said plain = said_of(arena, plain_wall);
    int failed = plain.job == NULL || findings_of(&plain.job->findings, GRADE_FAULT) > 0;
    printf("1..%d\n%s 1 - the plain wall has no fault\n", CASES + 1, failed == 0 ? "ok" : "not ok");
    if (failed > 0)
        show(&plain);
    for (int i = 0; i < CASES; i++)
        failed += !look_at(&cases[i], i + 2, &plain);
    arena_free(arena);
    return failed > 0;
}
