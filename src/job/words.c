#include "job/words.h"

#include <inttypes.h>
#include <stdarg.h>
#include <stdio.h>
#include <string.h>

#include "base/panic.h"
#include "base/utf8.h"

enum { NAME_CELLS = 60 };

char *words(Arena *arena, const char *format, ...)
{
    va_list list;
    va_start(list, format);
    char *out = text_in_list(arena, format, list);
    va_end(list);
    return out;
}

char *words_name(Arena *arena, const char *name)
{
    char safe[NAME_CELLS * 4 + 1];
    utf8_safe(safe, sizeof safe, name, NAME_CELLS, false);
    return arena_text(arena, safe, strlen(safe));
}

char *words_capital(Arena *arena, const char *text)
{
    char *out = arena_text(arena, text, strlen(text));
    if (out[0] >= 'a' && out[0] <= 'z')
        out[0] = (char)(out[0] - 'a' + 'A');
    return out;
}

void words_put_finding(Text *out, const Finding *finding)
{
    bool small = finding->text[0] >= 'a' && finding->text[0] <= 'z';
    size_t from = out->length;
    if (small && finding->has_course) {
        text_format(out, "Course %" PRId64, finding->course);
        if (finding->piece > 0)
            text_format(out, ", piece %d", finding->piece);
        text_put(out, ": ");
        small = false;
    }
    text_put(out, finding->text);
    if (small)
        out->bytes[from] = (char)(out->bytes[from] - 'a' + 'A');
}

char *words_finding(Arena *arena, const Finding *finding)
{
    Text text;
    text_init(&text);
    words_put_finding(&text, finding);
    char *out = arena_text(arena, text.bytes, text.length);
    text_finish(&text);
    return out;
}

char *words_length(Arena *arena, const Wall *wall, Length length)
{
    char text[LENGTH_TEXT_MAX];
    length_show(length, wall->units, wall->round, text);
    return arena_text(arena, text, strlen(text));
}

char *words_length_unit(Arena *arena, const Wall *wall, Length length)
{
    char text[LENGTH_TEXT_MAX];
    length_show_unit(length, wall->units, wall->round, text);
    return arena_text(arena, text, strlen(text));
}

/* 1/64 in is 15625 millionths; millimetres have at most one digit behind the point in any marking resolution. */
char *words_decimal(Arena *arena, const Wall *wall, Length length)
{
    if (wall->units == UNITS_MM)
        return words_length(arena, wall, length);
    Length rounded = length_round(length, wall->round);
    Length size = rounded < 0 ? -rounded : rounded;
    char *out = words(arena, "%s%" PRId64 ".%06" PRId64, rounded < 0 ? "-" : "", size / LENGTH_INCH,
                      size % LENGTH_INCH / (LENGTH_INCH / 64) * 15625);
    size_t end = strlen(out);
    while (out[end - 1] == '0')
        end--;
    out[out[end - 1] == '.' ? end - 1 : end] = '\0';
    return out;
}

char *words_mark(Arena *arena, const Wall *wall, Length height)
{
    Length rounded = length_round(height, wall->round);
    if (rounded == 0)
        return words(arena, "0, level");
    if (rounded > 0)
        return words(arena, "%s up", words_length(arena, wall, height));
    return words(arena, "%s down", words_length(arena, wall, -height));
}

char *words_board(Arena *arena, const Wall *wall, int number)
{
    const Stock *stock = wall_board(wall, number);
    if (stock == NULL || stock->label[0] == '\0')
        return words(arena, "%d", number);
    return words(arena, "%d (%s)", number, words_name(arena, stock->label));
}

char *words_course(Arena *arena, int64_t number)
{
    return words(arena, "Course %" PRId64 "%s", number, number == 0 ? ", the reference" : "");
}

const char *words_rip_shape(RipShape shape)
{
    switch (shape) {
    case RIP_FULL: return "full";
    case RIP_STRAIGHT: return "straight";
    case RIP_TAPER: return "taper";
    case RIP_SCRIBE: return "scribe";
    }
    return "";
}

char *words_count(Arena *arena, int count, const char *one, const char *many)
{
    return words(arena, "%d %s", count, count == 1 ? one : many);
}

char *words_grades(Arena *arena, const Findings *findings, int general)
{
    return words(arena, "%s%s, %s, %s.", words_count(arena, findings_of(findings, GRADE_HAZARD), "hazard", "hazards"),
                 general == 0 ? "" : words(arena, ", %d of them on any such job", general),
                 words_count(arena, findings_of(findings, GRADE_FAULT), "fault", "faults"),
                 words_count(arena, findings_of(findings, GRADE_CAUTION), "caution", "cautions"));
}

char *words_units(Arena *arena, const Wall *wall)
{
    return words(arena, "%s, marked to %s", wall->units == UNITS_IN ? "inches" : "millimetres",
                 words_length(arena, wall, wall->round));
}

char *words_tones(Arena *arena, const Looks *looks)
{
    if (looks->touching == 0)
        return NULL;
    return words(arena, "%d of %s match in color; random order would give about %d", looks->equal,
                 words_count(arena, looks->touching, "touching pair", "touching pairs"), looks->chance);
}

char *words_joints(Arena *arena, const Looks *looks)
{
    const struct {
        int count;
        const char *one, *many;
    } kinds[] = {
        {looks->stacked, "joint over a joint one or two courses below", "joints over a joint one or two courses below"},
        {looks->stairs, "stair of three joints", "stairs of three joints"},
        {looks->short_pairs, "pair of short pieces end to end", "pairs of short pieces end to end"},
        {looks->near_sides, "joint beside the side or corner of an opening",
         "joints beside the side or corner of an opening"},
    };
    char *text = NULL;
    for (size_t i = 0; i < sizeof kinds / sizeof *kinds; i++) {
        if (kinds[i].count == 0)
            continue;
        const char *count = words_count(arena, kinds[i].count, kinds[i].one, kinds[i].many);
        text = text == NULL ? words(arena, "%s", count) : words(arena, "%s, %s", text, count);
    }
    return text;
}
