#include "command/check_list.h"

#include <inttypes.h>
#include <string.h>

#include "base/fold.h"
#include "base/utf8.h"
#include "job/words.h"

/*
 *     Boathouse reading wall: 9 hazards, 8 of them on any such job, 0 faults, 4 cautions.
 *
 *     Caution: sliver (4)
 *       course -16               Nothing of the plank is left at the floor, from
 *                                85 13/16 to 141 3/8 in.
 *       course -10, desk outlet  Only 9/16 in of plank ...
 *     |INDENT|<--- place --->|APART|<------------- text ------------->|
 *
 * The place takes what the longest of its kind needs, a third of the line at most; in a narrow window the text goes
 * below it.
 */
#define HARD_SPACE "\xc2\xa0" /* does not break; printed as a plain one */

enum { INDENT = 2, APART = 2, BESIDE_LEAST = 48 };

typedef struct Entry {
    const char *place, *text;
} Entry;

typedef struct Entries {
    Entry *at;
    int count;
    int room;
} Entries;

/* "north, course 3, piece 12, at 46 1/2"; the face only where there are several. */
static const char *place_of(Arena *arena, const Wall *wall, const Finding *finding)
{
    const char *place = "";
    const Face *face = finding->face < 0 ? NULL : &wall->faces.at[finding->face];
    if (face != NULL && wall->faces.count > 1)
        place = words(arena, ", %s", words_name(arena, face->name));
    if (finding->has_course)
        place = words(arena, "%s, course %" PRId64, place, finding->course);
    if (finding->piece > 0)
        place = words(arena, "%s, piece %d", place, finding->piece);
    if (finding->board > 0)
        place = words(arena, "%s, board %s", place, words_board(arena, wall, finding->board));
    if (face != NULL && finding->opening >= 0)
        place = words(arena, "%s, %s", place, words_name(arena, face->openings.at[finding->opening].name));
    if (finding->has_at)
        place = words(arena, "%s, at" HARD_SPACE "%s", place, words_length(arena, wall, finding->at));
    if (place[0] == '\0')
        return finding->rule == RULE_MISSING ? "trim stock" : "the wall";
    return place + 2;
}

/* What the trade warns of on any such job has a head in place of a place: "Old paint: ...". */
static Entry advice(Arena *arena, const Finding *finding)
{
    const char *colon = strstr(finding->text, ": ");
    if (colon == NULL)
        return (Entry){"any such job", finding->text};
    return (Entry){arena_text(arena, finding->text, (size_t)(colon - finding->text)), colon + 2};
}

static bool same_lead(const Finding *a, const Finding *b)
{
    return a->lead != NULL && b->lead != NULL && a->face == b->face && strcmp(a->lead, b->lead) == 0;
}

/* Those with one lead on one face are one entry: what holds for all, then each one's own. */
static Entry several(Arena *arena, const Wall *wall, const Finding *findings, int count)
{
    Text text;
    text_init(&text);
    text_format(&text, "%s ", findings->lead);
    for (int i = 0; i < count; i++)
        text_format(&text, "%s%s", findings[i].item, i + 1 < count ? "; " : ".");
    Entry entry = {wall->faces.count > 1 && findings->face >= 0 ? words_name(arena, wall->faces.at[findings->face].name)
                                                                : words(arena, "%d pieces", count),
                   arena_text(arena, text.bytes, text.length)};
    text_finish(&text);
    return entry;
}

static Entries entries_of(Arena *arena, const Wall *wall, const Finding *findings, int count)
{
    Entries entries = {0};
    for (int i = 0; i < count;) {
        int alike = 1;
        while (i + alike < count && same_lead(&findings[i], &findings[i + alike]))
            alike++;
        Entry entry = findings[i].rule == RULE_CARE ? advice(arena, &findings[i])
                      : alike > 1
                          ? several(arena, wall, &findings[i], alike)
                          : (Entry){place_of(arena, wall, &findings[i]), words_capital(arena, findings[i].text)};
        entry.place = fold_hold(arena, entry.place);
        entry.text = fold_hold(arena, entry.text);
        *arena_push(arena, &entries) = entry;
        i += alike;
    }
    return entries;
}

/* The `number`-th line of the folded text; nothing where there is none. */
static void put_line(Text *out, const char *text, int width, int number)
{
    int begin = 0, bytes = fold_line(text, width, number, &begin);
    if (bytes > 0)
        fold_put(out, text + begin, (size_t)bytes);
}

static void put_entry(Text *out, const Entry *entry, int columns, int place)
{
    bool beside = columns >= BESIDE_LEAST;
    int text_at = beside ? INDENT + place + APART : 2 * INDENT;
    int place_lines = fold_lines(entry->place, place), text_lines = fold_lines(entry->text, columns - text_at);
    int lines = !beside ? place_lines + text_lines : place_lines > text_lines ? place_lines : text_lines;
    for (int i = 0; i < lines; i++) {
        size_t from = out->length;
        int number = beside ? i : i - place_lines;
        if (i < place_lines) {
            text_put_times(out, ' ', INDENT);
            put_line(out, entry->place, place, i);
        }
        if (number >= 0 && number < text_lines) {
            text_pad(out, from, text_at);
            put_line(out, entry->text, columns - text_at, number);
        }
        text_put(out, "\n");
    }
}

static void put_kind(Text *out, Arena *arena, const Wall *wall, const Finding *findings, int count, int columns)
{
    Entries entries = entries_of(arena, wall, findings, count);
    if (findings->rule == RULE_CARE)
        text_put(out, "\nCare, on any such job\n");
    else
        text_format(out, "\n%s: %s (%d)\n", words_capital(arena, grade_word(rule_grade(findings->rule))),
                    rule_word(findings->rule), count);
    int most = columns >= BESIDE_LEAST ? columns / 3 : columns - INDENT, place = 0;
    for (int i = 0; i < entries.count; i++) {
        int cells = utf8_cells(entries.at[i].place);
        place = cells > place ? cells : place;
    }
    for (int i = 0; i < entries.count; i++)
        put_entry(out, &entries.at[i], columns, place > most ? most : place);
}

static void put_folded(Text *out, const char *text, int columns)
{
    for (int i = 0; i < fold_lines(text, columns); i++) {
        put_line(out, text, columns, i);
        text_put(out, "\n");
    }
}

void check_list_write(const Job *job, int columns, Text *out)
{
    Arena *arena = arena_new();
    const Findings *findings = &job->read;
    columns = columns < CHECK_LIST_LEAST ? CHECK_LIST_LEAST : columns > CHECK_LIST_MOST ? CHECK_LIST_MOST : columns;
    int general = 0;
    for (int i = 0; i < findings->count; i++)
        general += findings->at[i].rule == RULE_CARE;
    const char *title = job->wall->title[0] == '\0' ? "This wall" : words_name(arena, job->wall->title);
    put_folded(out, words(arena, "%s: %s", title, words_grades(arena, findings, general)), columns);
    for (int place = 0; place < findings->count;) {
        int count = 1;
        while (place + count < findings->count && findings->at[place + count].rule == findings->at[place].rule)
            count++;
        put_kind(out, arena, job->wall, &findings->at[place], count, columns);
        place += count;
    }
    if (findings->count == 0)
        put_folded(out, "These checks found nothing. They do not cover codes, manuals or licenses.", columns);
    arena_free(arena);
}
