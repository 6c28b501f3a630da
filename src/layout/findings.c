#include "layout/findings.h"

#include "base/text.h"
#include "base/utf8.h"
#include "layout/limits.h"
#include "wall/ranges.h"
#include "wall/straight.h"

#include <inttypes.h>
#include <stdarg.h>
#include <stdio.h>
#include <string.h>

enum { NAME_MAX = 4 * WALL_NAME_MOST };

static void safe_name(char name[NAME_MAX], const char *text)
{
    utf8_safe(name, NAME_MAX, text, WALL_NAME_MOST, false);
}

static void show(const Wall *wall, Length length, char out[LENGTH_TEXT_MAX])
{
    length_show_unit(length, wall->units, wall->round, out);
}

__attribute__((format(printf, 4, 5))) static void add_finding(Arena *arena, Layout *layout, Finding finding,
                                                              const char *format, ...)
{
    va_list list;
    va_start(list, format);
    finding.text = text_in_list(arena, format, list);
    va_end(list);
    *arena_push(arena, &layout->findings) = finding;
}

/* ---- slivers ---- */

/* "under desk outlet", "at the floor", "between desk outlet and the ceiling". */
static void where_words(const Face *face, const Sliver *sliver, char *out, size_t size)
{
    char below[NAME_MAX] = "the floor";
    char above[NAME_MAX] = "the ceiling";
    if (sliver->bottom_opening >= 0)
        safe_name(below, face->openings.at[sliver->bottom_opening].name);
    if (sliver->top_opening >= 0)
        safe_name(above, face->openings.at[sliver->top_opening].name);
    if (sliver->bottom_edge != EDGE_BAND && sliver->top_edge != EDGE_BAND)
        snprintf(out, size, "between %s and %s", below, above);
    else if (sliver->bottom_edge == EDGE_OPENING)
        snprintf(out, size, "above %s", below);
    else if (sliver->top_edge == EDGE_OPENING)
        snprintf(out, size, "under %s", above);
    else
        snprintf(out, size, "at %s", sliver->bottom_edge != EDGE_BAND ? below : above);
}

/* "only 7/16 in of plank is", finer than the marks where it would else look wide enough. */
static void width_words(const Wall *wall, Length width, char *out, size_t size)
{
    if (width == 0) {
        snprintf(out, size, "nothing of the plank is");
        return;
    }
    char shown[LENGTH_TEXT_MAX];
    Length step = wall->round;
    if (length_round(width, step) == 0 || length_round(width, step) >= length_round(wall_least(wall), step))
        step = wall->units == UNITS_IN ? LENGTH_INCH / 64 : LENGTH_MM / 10;
    if (length_round(width, step) == 0)
        snprintf(shown, sizeof shown, "a hair");
    else
        length_show_unit(width, wall->units, step, shown);
    snprintf(out, size, "only %s of plank is", shown);
}

void report_slivers(Arena *arena, Layout *layout, int face, const Course *course)
{
    const Wall *wall = layout->wall;
    const Slivers slivers = strips_thin(arena, course, wall_least(wall));
    for (int i = 0; i < slivers.count; i++) {
        const Sliver *sliver = &slivers.at[i];
        char where[2 * NAME_MAX + 32], width[LENGTH_TEXT_MAX + 32];
        char from[LENGTH_TEXT_MAX], to[LENGTH_TEXT_MAX];
        where_words(&wall->faces.at[face], sliver, where, sizeof where);
        width_words(wall, sliver->least, width, sizeof width);
        length_show(sliver->left, wall->units, wall->round, from);
        show(wall, sliver->right, to);
        Finding finding = finding_of(RULE_SLIVER);
        finding.face = face;
        finding.has_course = true;
        finding.course = course->number;
        finding.has_at = true;
        finding.at = sliver->left;
        finding.opening = sliver->bottom_opening >= 0 ? sliver->bottom_opening : sliver->top_opening;
        add_finding(arena, layout, finding, "Course %" PRId64 ": %s left %s, from %s to %s.", course->number, width,
                    where, from, to);
    }
}

void report_left_away(Arena *arena, Layout *layout, int face, int64_t number, Length height)
{
    const Wall *wall = layout->wall;
    char shown[LENGTH_TEXT_MAX];
    length_show_unit(height, wall->units, wall->units == UNITS_IN ? LENGTH_INCH / 64 : LENGTH_MM / 10, shown);
    Finding finding = finding_of(RULE_LEAVE);
    finding.face = face;
    finding.has_course = true;
    finding.course = number;
    add_finding(arena, layout, finding,
                "Course %" PRId64
                " is left away: it is nowhere higher than %s here. Close the gap with trim or a wider plank.",
                number, shown);
}

void report_misfit(Arena *arena, Layout *layout, int face, const HungEdge *edge)
{
    char at[LENGTH_TEXT_MAX];
    show(layout->wall, edge->height, at);
    Finding finding = finding_of(RULE_HUNG);
    finding.face = face;
    finding.has_course = true;
    finding.course = edge->course;
    add_finding(
        arena, layout, finding,
        "the measured %s of course %d, at %s, is not %s its %s; measure it again from the level line; it is left out "
        "of the plan.",
        edge->is_top ? "top" : "bottom", edge->course, at, edge->is_top ? "above" : "below",
        edge->is_top ? "bottom" : "top");
}

static bool is_among(const HungEdges *edges, const HungEdge *edge)
{
    for (int i = 0; i < edges->count; i++)
        if (edges->at[i].course == edge->course && edges->at[i].is_top == edge->is_top)
            return true;
    return false;
}

static const CourseBand *band_of(const CourseBands *bands, int64_t number)
{
    int low = 0, high = bands->count;
    while (low < high) {
        const int middle = low + (high - low) / 2;
        if (bands->at[middle].number < number)
            low = middle + 1;
        else
            high = middle;
    }
    return low < bands->count && bands->at[low].number == number ? &bands->at[low] : NULL;
}

static void report_nowhere(Arena *arena, Layout *layout, int face, const HungEdge *edge)
{
    Finding finding = finding_of(RULE_HUNG);
    finding.face = face;
    finding.has_course = true;
    finding.course = edge->course;
    add_finding(arena, layout, finding,
                "the %s of course %d is measured, but no such course is on %s; correct its number or its face",
                edge->is_top ? "top" : "bottom", edge->course, layout->wall->faces.at[face].name);
}

/* Planks do not grow: what is measured more or less than their face is a gap, and more than a quarter of it a slip. */
static void report_far(Arena *arena, Layout *layout, int face, const HungEdge *edge, const CourseBand *band)
{
    const Wall *wall = layout->wall;
    const Length height = band->top - band->bottom;
    const Length own = wall_course_face(wall, band->number);
    const Length off = height > own ? height - own : own - height;
    if (off <= own / 4)
        return;
    char high[LENGTH_TEXT_MAX], away[LENGTH_TEXT_MAX];
    show(wall, height, high);
    show(wall, off, away);
    Finding finding = finding_of(RULE_EDGE);
    finding.face = face;
    finding.has_course = true;
    finding.course = edge->course;
    add_finding(
        arena, layout, finding,
        "Course %d is %s high as its %s is measured, %s %s than its planks show: measure that edge again from the "
        "level line.",
        edge->course, high, edge->is_top ? "top" : "bottom", away, height > own ? "more" : "less");
}

void report_measured(Arena *arena, Layout *layout, int face, const CourseBands *bands)
{
    const Wall *wall = layout->wall;
    for (int i = 0; i < wall->hung_edges.count; i++) {
        const HungEdge *edge = &wall->hung_edges.at[i];
        if (strcmp(edge->face, wall->faces.at[face].name) != 0 || is_among(&bands->misfits, edge))
            continue;
        const CourseBand *band = band_of(bands, edge->course);
        if (band == NULL)
            report_nowhere(arena, layout, face, edge);
        else
            report_far(arena, layout, face, edge, band);
    }
}

/* ---- openings ---- */

/* Where an opening's own size, `clear` not counted, passes the face it is in. */
static const char *way_out(const FaceLayout *laid, const Face *face, const Opening *opening, const Box *grown)
{
    const Length left = opening->left;
    const Length right = opening->left + opening->width;
    const Length top = grown->top - opening->clear;
    Length lowest, highest;
    if (left < 0)
        return "past the left end of the face";
    if (right > face->width)
        return "past the right end of the face";
    if (left >= right)
        return NULL;
    limit_range(&laid->upper, false, left, right, &lowest, &highest);
    if (top > lowest + face->margin.ceiling)
        return "above the ceiling";
    limit_range(&laid->lower, false, left, right, &lowest, &highest);
    return top <= lowest - face->margin.floor ? "below the floor" : NULL;
}

static bool overlap(const Box *a, const Box *b)
{
    return a->left < b->right && b->left < a->right && a->bottom < b->top && b->bottom < a->top;
}

static void report_openings(Arena *arena, Layout *layout, int index)
{
    const Face *face = &layout->wall->faces.at[index];
    const FaceLayout *laid = &layout->faces[index];
    for (int i = 0; i < face->openings.count; i++) {
        const Opening *opening = &face->openings.at[i];
        if (opening->kind == OPENING_STOVE)
            continue;
        char name[NAME_MAX];
        safe_name(name, opening->name);
        Finding finding = finding_of(RULE_CROSSING);
        finding.face = index;
        finding.has_at = true;
        finding.at = laid->openings[i].left;
        finding.opening = i;
        const char *out = way_out(laid, face, opening, &laid->openings[i]);
        if (out != NULL)
            add_finding(arena, layout, finding, "%s reaches %s: measure it again.", name, out);
        for (int j = i + 1; j < face->openings.count; j++) {
            if (face->openings.at[j].kind == OPENING_STOVE || !overlap(&laid->openings[i], &laid->openings[j]))
                continue;
            char other[NAME_MAX];
            safe_name(other, face->openings.at[j].name);
            add_finding(arena, layout, finding, "%s and %s overlap: measure both again, `clear` counted.", name, other);
        }
    }
}

/* ---- limits ---- */

/* Takes x, on one side of a step there, as `*worst` where the bare wall is lower there than `*least`, below nothing; of
 * equal places the leftmost. */
static void look_at(const Face *face, Length x, bool after, Length *least, Length *worst)
{
    const Length height = marks_off(&face->ceiling, x, after) + marks_off(&face->floor, x, after);
    if (height > *least || (height == *least && (height == 0 || x >= *worst)))
        return;
    *least = height;
    *worst = x;
}

/* Straight between marks: a ceiling is furthest below its floor at a mark, or at an end. One that is nowhere above it
 * is refused before it comes here (wall/check). */
static void report_room(Arena *arena, Layout *layout, int index)
{
    const Wall *wall = layout->wall;
    const Face *face = &wall->faces.at[index];
    const Marks *both[] = {&face->floor, &face->ceiling};
    Length least = 0, worst = 0;
    look_at(face, 0, true, &least, &worst);
    look_at(face, face->width, false, &least, &worst);
    for (int i = 0; i < 2; i++)
        for (int k = 0; k < both[i]->count; k++) {
            const Length x = both[i]->at[k].at;
            if (x > 0 && x <= face->width)
                look_at(face, x, false, &least, &worst);
            if (x >= 0 && x < face->width)
                look_at(face, x, true, &least, &worst);
        }
    if (length_round(least, wall->round) >= 0)
        return;
    char below[LENGTH_TEXT_MAX], at[LENGTH_TEXT_MAX];
    length_show_unit(-least, wall->units, wall->round, below);
    length_show_unit(worst, wall->units, wall->round, at);
    Finding finding = finding_of(RULE_CROSSING);
    finding.face = index;
    finding.has_at = true;
    finding.at = worst;
    add_finding(
        arena, layout, finding,
        "The ceiling lies %s below the floor at %s from the left end, and nothing is hung there: measure both again, "
        "`down` and `up` from the level line.",
        below, at);
}

/* ---- corners ---- */

static void report_corner(Arena *arena, Layout *layout, int index)
{
    const Wall *wall = layout->wall;
    const int next = (index + 1) % wall->faces.count;
    bool through;
    if (next == index || wall_corner_right(wall, index, &through).kind == CORNER_NONE)
        return;
    const FaceLayout *here = &layout->faces[index];
    const FaceLayout *there = &layout->faces[next];
    for (int i = 0, j = 0; i < here->course_count && j < there->course_count;) {
        const Course *a = &here->courses[i];
        const Course *b = &there->courses[j];
        if (a->number != b->number) {
            i += a->number < b->number;
            j += b->number < a->number;
            continue;
        }
        if (a->bottom != b->bottom || a->top != b->top) {
            char name[NAME_MAX], other[NAME_MAX], y[LENGTH_TEXT_MAX], z[LENGTH_TEXT_MAX];
            const bool top = a->top != b->top;
            safe_name(name, wall->faces.at[index].name);
            safe_name(other, wall->faces.at[next].name);
            length_show_unit(top ? a->top : a->bottom, wall->units, wall->round, y);
            length_show_unit(top ? b->top : b->bottom, wall->units, wall->round, z);
            Finding finding = finding_of(RULE_CORNER);
            finding.face = index;
            finding.has_course = true;
            finding.course = a->number;
            add_finding(arena, layout, finding,
                        "Course %" PRId64
                        " does not meet round the corner: its %s edge is at %s on %s and at %s on %s. Ease the "
                        "reveals on one of them before the corner.",
                        a->number, top ? "upper" : "lower", y, name, z, other);
            return;
        }
        i++;
        j++;
    }
}

/* No segment is as long as the shortest piece may be: each is one piece, whatever its length. */
static void ask_shortest(Arena *arena, Layout *layout)
{
    const Wall *wall = layout->wall;
    Length longest = 0;
    char shortest[LENGTH_TEXT_MAX];
    char most[LENGTH_TEXT_MAX];
    for (int i = 0; i < wall->faces.count; i++)
        for (int k = 0; k < layout->faces[i].course_count; k++) {
            const Course *course = &layout->faces[i].courses[k];
            for (int j = 0; j < course->segment_count; j++) {
                const Length length = course->segments[j].right - course->segments[j].left;
                longest = length > longest ? length : longest;
            }
        }
    if (longest == 0 || wall->joints.shortest <= longest)
        return;
    show(wall, wall->joints.shortest, shortest);
    show(wall, longest, most);
    add_finding(arena, layout, finding_of(RULE_RANGE),
                "The shortest piece is to be %s, but no section is longer than %s. Check it.", shortest, most);
}

void report_wall(Arena *arena, Layout *layout)
{
    bool reference = false;
    ranges_ask(arena, layout->wall, &layout->findings);
    ask_shortest(arena, layout);
    for (int i = 0; i < layout->wall->faces.count; i++) {
        report_room(arena, layout, i);
        report_openings(arena, layout, i);
        report_corner(arena, layout, i);
        reference |= layout_course_index(&layout->faces[i], 0) >= 0;
    }
    if (!reference)
        add_finding(
            arena, layout, finding_of(RULE_REFERENCE),
            "The reference course is nowhere on the wall; courses are still counted from it. Move the start nearer.");
}
