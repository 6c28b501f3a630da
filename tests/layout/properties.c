/*
 * What must hold of every layout, on random walls reckoned again by other means (reckon.h). DATUMROW_WALLS tells how
 * many walls.
 */
#include "support/test.h"

#include "base/random.h"
#include "base/text.h"
#include "layout/layout.h"
#include "layout/reckon.h"
#include "support/random_wall.h"

#include <stdlib.h>
#include <string.h>

enum { WALLS_USUAL = 2000 };

static int walls_count(void)
{
    const char *text = getenv("DATUMROW_WALLS");
    const long count = text != NULL ? strtol(text, NULL, 10) : 0;
    return count > 0 && count < 10000000 ? (int)count : WALLS_USUAL;
}

/* Sides that lean and step as no wall does, across one another too. */
static void lean_hard(Arena *arena, Random *random, Marks *side)
{
    Length at = random_between(random, -1200, -300) * LENGTH_MM;
    *side = (Marks){0};
    for (int i = 0; i < 4; i++) {
        *arena_push(arena, side) = (Mark){at, random_between(random, -200, 300) * LENGTH_MM};
        if (random_below(random, 4) == 0)
            *arena_push(arena, side) = (Mark){at, random_between(random, -200, 300) * LENGTH_MM};
        at += random_between(random, 1, 900) * LENGTH_MM;
    }
}

/* All kinds in turn; every third with sides that lean hard. */
static const Wall *wall_of(Arena *arena, uint64_t seed)
{
    static const RandomKind kinds[] = {RANDOM_ANY, RANDOM_ANY, RANDOM_HUNG, RANDOM_ANY, RANDOM_HOUSE, RANDOM_ANY};
    Random random = {seed};
    Wall *wall = random_wall(arena, seed, kinds[seed % 6]);
    if (seed % 3 == 0)
        for (int i = 0; i < wall->faces.count; i++) {
            lean_hard(arena, &random, &wall->faces.at[i].left);
            lean_hard(arena, &random, &wall->faces.at[i].right);
        }
    return wall;
}

#define SAY(condition, ...)    \
    do {                       \
        if (!(condition))      \
            FAIL(__VA_ARGS__); \
    } while (0)

typedef struct Look {
    uint64_t seed;
    Arena *arena;
    const Wall *wall;
    const Layout *layout;
    Random random;
    /* of the face at hand */
    int index;
    const FaceLayout *face;
    Reckoned reckoned;
    Real outlines, cutouts; /* areas */
    Real perimeter;
    /* of the whole wall */
    Real least;
    bool found;
} Look;

static Real size(Real a)
{
    return a < 0 ? -a : a;
}

static Look look_at(uint64_t seed)
{
    Err err = {0};
    Look look = {.seed = seed, .arena = arena_new(), .random = {seed ^ 77}};
    look.wall = wall_of(look.arena, seed);
    look.layout = layout_wall(look.arena, look.wall, &err);
    SAY(look.layout != NULL, "seed %d: %s", (int)seed, err.text);
    return look;
}

static void look_at_face(Look *look, int index)
{
    look->index = index;
    look->face = &look->layout->faces[index];
    look->reckoned = reckon_face(look->arena, look->wall, index);
    look->outlines = look->cutouts = look->perimeter = 0;
}

/* ---- shape of the result ---- */

static void check_slabs(const Look *look, const Course *course)
{
    SAY(course->bottom < course->top && course->left < course->right, "seed %d", (int)look->seed);
    SAY(course->slab_count > 0, "seed %d: no slab", (int)look->seed);
    assert_int_equal(course->slabs[0].left, course->left);
    assert_int_equal(course->slabs[course->slab_count - 1].right, course->right);
    for (int i = 0; i < course->slab_count; i++) {
        const Slab *slab = &course->slabs[i];
        SAY(slab->left < slab->right, "seed %d: empty slab", (int)look->seed);
        SAY(i == 0 || course->slabs[i - 1].right <= slab->left, "seed %d: slabs overlap", (int)look->seed);
        SAY(slab->lower_left >= course->bottom && slab->lower_right >= course->bottom &&
                slab->upper_left <= course->top && slab->upper_right <= course->top,
            "seed %d: slab leaves the band", (int)look->seed);
        SAY(slab->lower_left <= slab->upper_left && slab->lower_right <= slab->upper_right, "seed %d", (int)look->seed);
        Length left = slab->lower_left, right = slab->lower_right;
        for (int j = 0; j < slab->part_count; j++) {
            const Part *part = &slab->parts[j];
            SAY(part->bottom_left >= left && part->bottom_right >= right, "seed %d: parts overlap", (int)look->seed);
            SAY(part->top_left >= part->bottom_left && part->top_right >= part->bottom_right, "seed %d: turned over",
                (int)look->seed);
            left = part->top_left;
            right = part->top_right;
        }
        SAY(left <= slab->upper_left && right <= slab->upper_right, "seed %d: part beyond", (int)look->seed);
    }
}

static Real at_x(Length y0, Length y1, const Slab *slab, Real x)
{
    return (Real)y0 + (Real)(y1 - y0) * (x - (Real)slab->left) / (Real)(slab->right - slab->left);
}

/* The slab's parts at an x within it against those reckoned. */
static void compare_parts(const Look *look, const Course *course, const Slab *slab, Real x)
{
    Left parts[LEFT_MOST];
    int count = reckon_parts(&look->reckoned, course->bottom, course->top, x, parts);
    int next = 0;
    for (int i = 0; i < count; i++) {
        if (parts[i].top - parts[i].bottom < 20)
            continue;
        while (next < slab->part_count &&
               at_x(slab->parts[next].top_left - slab->parts[next].bottom_left,
                    slab->parts[next].top_right - slab->parts[next].bottom_right, slab, x) < 10)
            next++;
        SAY(next < slab->part_count, "seed %d course %d x %.0Lf: a part is missing", (int)look->seed,
            (int)course->number, x);
        const Part *part = &slab->parts[next++];
        const Real slack = 4 + 4 *
                                   (size((Real)(part->top_right - part->top_left)) +
                                    size((Real)(part->bottom_right - part->bottom_left))) /
                                   (Real)(slab->right - slab->left);
        SAY(size(at_x(part->bottom_left, part->bottom_right, slab, x) - parts[i].bottom) < slack &&
                size(at_x(part->top_left, part->top_right, slab, x) - parts[i].top) < slack,
            "seed %d course %d x %.0Lf: part from %.1Lf to %.1Lf, reckoned %.1Lf to %.1Lf", (int)look->seed,
            (int)course->number, x, at_x(part->bottom_left, part->bottom_right, slab, x),
            at_x(part->top_left, part->top_right, slab, x), parts[i].bottom, parts[i].top);
        const bool whole = part->bottom_edge == EDGE_BAND && part->top_edge == EDGE_BAND;
        const bool rake = part->bottom_edge == EDGE_RAKE || part->top_edge == EDGE_RAKE;
        /* Where a limit only just cuts, the rounded edge may not show it. */
        const bool near =
            size(parts[i].bottom - (Real)course->bottom) < slack || size(parts[i].top - (Real)course->top) < slack;
        SAY(near || (!whole && !rake) == parts[i].strip, "seed %d course %d x %.0Lf: strip or not", (int)look->seed,
            (int)course->number, x);
    }
}

static void weigh_strips(Look *look, const Course *course, Real x)
{
    Left parts[LEFT_MOST];
    if (x < (Real)course->left || x > (Real)course->right)
        return;
    const int count = reckon_parts(&look->reckoned, course->bottom, course->top, x, parts);
    for (int i = 0; i < count; i++) {
        const Real width = parts[i].top - parts[i].bottom;
        if (parts[i].strip && width > 1e-6L && (!look->found || width < look->least)) {
            look->least = width;
            look->found = true;
        }
    }
}

static bool in_segment(const Course *course, Length x)
{
    for (int i = 0; i < course->segment_count; i++)
        if (x > course->segments[i].left && x < course->segments[i].right)
            return true;
    return false;
}

static bool near_segment_end(const Course *course, Length x)
{
    for (int i = 0; i < course->segment_count; i++)
        if (llabs(x - course->segments[i].left) <= 2 || llabs(x - course->segments[i].right) <= 2)
            return true;
    return false;
}

static void check_at(Look *look, const Course *course, Length x)
{
    const Real wood = reckon_wood(&look->reckoned, course->bottom, course->top, (Real)x + 0.25L);
    if (!near_segment_end(course, x)) {
        SAY(wood < 50 || in_segment(course, x), "seed %d face %d course %d x %lld: wood %.1Lf in no segment",
            (int)look->seed, look->index, (int)course->number, (long long)x, wood);
        SAY(wood > 1e-3L || !in_segment(course, x), "seed %d face %d course %d x %lld: a segment without wood",
            (int)look->seed, look->index, (int)course->number, (long long)x);
    }
    for (int i = 0; i < course->slab_count; i++)
        if (x > course->slabs[i].left + 1 && x < course->slabs[i].right - 1)
            compare_parts(look, course, &course->slabs[i], (Real)x);
    weigh_strips(look, course, (Real)x - 1);
    weigh_strips(look, course, (Real)x + 1);
}

static void check_samples(Look *look, const Course *course)
{
    for (int i = 0; i < 12; i++)
        check_at(look, course, random_between(&look->random, course->left - 5, course->right + 5));
    for (int i = 0; i < course->slab_count; i++) {
        check_at(look, course, course->slabs[i].left);
        check_at(look, course, course->slabs[i].right);
        check_at(look, course, course->slabs[i].left + (course->slabs[i].right - course->slabs[i].left) / 2);
    }
    const Face *face = &look->wall->faces.at[look->index];
    for (int i = 0; i < face->floor.count; i++)
        check_at(look, course, face->floor.at[i].at);
    for (int i = 0; i < face->ceiling.count; i++)
        check_at(look, course, face->ceiling.at[i].at);
}

/* ---- pieces ---- */

static Wide turn_of(Point a, Point b, Point c)
{
    return ((Wide)b.x - a.x) * ((Wide)c.y - a.y) - ((Wide)c.x - a.x) * ((Wide)b.y - a.y);
}

static bool cross(Point a, Point b, Point c, Point d)
{
    const Wide p = turn_of(a, b, c), q = turn_of(a, b, d), r = turn_of(c, d, a), s = turn_of(c, d, b);
    return ((p < 0 && q > 0) || (p > 0 && q < 0)) && ((r < 0 && s > 0) || (r > 0 && s < 0));
}

static Real check_outline(Look *look, const Course *course, const Points *outline, Length left, Length right)
{
    SAY(outline->count >= 3, "seed %d course %d: outline of %d points", (int)look->seed, (int)course->number,
        outline->count);
    Real twice = 0;
    Real length = 0;
    const Point *o = outline->at;
    for (int i = 0; i < outline->count; i++) {
        const Point a = o[i], b = o[(i + 1) % outline->count];
        SAY(a.y >= course->bottom && a.y <= course->top && a.x >= left && a.x <= right,
            "seed %d course %d: outline leaves its band or ends", (int)look->seed, (int)course->number);
        twice += (Real)(a.x - o[0].x) * (Real)(b.y - o[0].y) - (Real)(b.x - o[0].x) * (Real)(a.y - o[0].y);
        length += size((Real)(b.x - a.x)) + size((Real)(b.y - a.y));
        for (int j = i + 1; j < outline->count; j++)
            SAY(!cross(a, b, o[j], o[(j + 1) % outline->count]), "seed %d course %d: outline crosses itself",
                (int)look->seed, (int)course->number);
    }
    SAY(twice > 0, "seed %d course %d: outline runs clockwise", (int)look->seed, (int)course->number);
    look->perimeter += length;
    return twice / 2;
}

/* Whether a side that leans or steps hard parts the region into two one above the other somewhere between the ends,
 * openings left aside: the outline is then that of the larger body. */
static bool parted(const Look *look, const Course *course, Length left, Length right)
{
    enum { LOOKS = 4096 };
    const Points *sides[] = {&look->face->left, &look->face->right, &look->face->lower, &look->face->upper};
    bool two = false;
    for (int i = 0; i < LOOKS && !two; i++) {
        const Real x = (Real)left + (Real)(right - left) * ((Real)i + 0.5L) / LOOKS;
        two = reckon_stretches(&look->reckoned, course->bottom, course->top, x) > 1;
    }
    for (int i = 0; i < 4; i++)
        for (int j = 0; j < sides[i]->count && !two; j++)
            for (int k = -1; k <= 1 && !two; k += 2)
                two = reckon_stretches(&look->reckoned, course->bottom, course->top,
                                       (Real)sides[i]->at[j].x + k * 0.5L) > 1;
    return two || reckon_stretches(&look->reckoned, course->bottom, course->top, (Real)left + 0.5L) > 1 ||
           reckon_stretches(&look->reckoned, course->bottom, course->top, (Real)right - 0.5L) > 1;
}

static void check_piece(Look *look, const Course *course, Length left, Length right)
{
    const Points outline = layout_outline(look->arena, look->face, course, left, right);
    const Real area = check_outline(look, course, &outline, left, right);
    const Real wood = (Real)layout_area(look->arena, look->face, course, left, right);
    const Cutouts cutouts = layout_cutouts(look->arena, look->face, course, left, right);
    for (int i = 0; i < cutouts.count; i++) {
        const Cutout *cut = &cutouts.at[i];
        SAY(cut->box.left >= left && cut->box.right <= right && cut->box.bottom >= course->bottom &&
                cut->box.top <= course->top && cut->box.left < cut->box.right && cut->box.bottom < cut->box.top,
            "seed %d: cutout not clipped", (int)look->seed);
    }
    const Real slack = 4 * (Real)(right - left + course->top - course->bottom);
    SAY(wood <= area + slack || parted(look, course, left, right),
        "seed %d face %d course %d: wood %.0Lf, outline %.0Lf", (int)look->seed, look->index, (int)course->number, wood,
        area);
    SAY(cutouts.count > 0 || size(wood - area) < slack || parted(look, course, left, right),
        "seed %d face %d course %d: area %.0Lf, outline %.0Lf", (int)look->seed, look->index, (int)course->number, wood,
        area);
    const Length height = layout_height(course, left, right);
    SAY(height > 0 && height <= course->top - course->bottom, "seed %d: height", (int)look->seed);
    look->outlines += area;
    look->cutouts += wood;
}

static void check_pieces(Look *look, const Course *course)
{
    for (int i = 0; i < course->segment_count; i++) {
        const Segment *segment = &course->segments[i];
        SAY(segment->left < segment->right && segment->left >= course->left && segment->right <= course->right,
            "seed %d: segment", (int)look->seed);
        SAY(i == 0 || course->segments[i - 1].right <= segment->left, "seed %d: segments overlap", (int)look->seed);
        SAY(segment->slab_count > 0 && segment->slab_first + segment->slab_count <= course->slab_count,
            "seed %d: segment's slabs", (int)look->seed);
        Length left = segment->left;
        while (left < segment->right) {
            Length right = left + random_between(&look->random, 50 * LENGTH_MM, 1500 * LENGTH_MM);
            if (right > segment->right || segment->right - right < 20 * LENGTH_MM)
                right = segment->right;
            check_piece(look, course, left, right);
            left = right;
        }
    }
}

/* ---- the whole face ---- */

/* Bands counted one by one from course 0; those with less than 0.001 mm2 are not there. */
static void check_courses(Look *look)
{
    if (look->wall->hung_edges.count > 0 || look->wall->planks.leave > 0)
        return;
    Real area = 0;
    int present = 0;
    for (int direction = 0; direction < 2; direction++) {
        Length edge = look->wall->start;
        if (direction == 1)
            edge -= look->wall->planks.reveal;
        for (int64_t number = -direction;; number += direction == 0 ? 1 : -1) {
            const Length face = wall_course_face(look->wall, number);
            const Length bottom = direction == 0 ? edge : edge - face;
            edge += (direction == 0 ? 1 : -1) * (face + look->wall->planks.reveal);
            if (bottom > 12000 * LENGTH_MM || bottom < -12000 * LENGTH_MM)
                break;
            Real region, wood;
            reckon_area(&look->reckoned, bottom, bottom + face, &region, &wood);
            const int index = layout_course_index(look->face, number);
            if (region > 1.1e9L && index < 0)
                FAIL("seed %d face %d: course %d is missing", (int)look->seed, look->index, (int)number);
            if (region < 0.9e9L && index >= 0)
                FAIL("seed %d face %d: course %d is too many", (int)look->seed, look->index, (int)number);
            if (index < 0)
                continue;
            present++;
            area += wood;
            assert_int_equal(look->face->courses[index].bottom, bottom);
            assert_int_equal(look->face->courses[index].top, bottom + face);
        }
    }
    assert_int_equal(present, look->face->course_count);
    SAY(size(area - (Real)look->face->area) <= 8 * look->perimeter + 4e9L,
        "seed %d face %d: area %.0Lf, reckoned %.0Lf", (int)look->seed, look->index, (Real)look->face->area, area);
}

START_TEST(courses_of_random_walls_cover_their_region_exactly)
{
    const int walls = walls_count();
    for (int seed = 0; seed < walls; seed++) {
        Look look = look_at((uint64_t)seed);
        for (int i = 0; i < look.wall->faces.count; i++) {
            look_at_face(&look, i);
            for (int j = 0; j < look.face->course_count; j++) {
                const Course *course = &look.face->courses[j];
                SAY(j == 0 || (course[-1].number < course->number && course[-1].top <= course->bottom) ||
                        look.wall->hung_edges.count > 0,
                    "seed %d: courses overlap", seed);
                check_slabs(&look, course);
                check_samples(&look, course);
                check_pieces(&look, course);
            }
            /* Pieces from end to end of every segment: their wood is the face's. */
            SAY(size(look.cutouts - (Real)look.face->area) <= 8 * look.perimeter + 1000,
                "seed %d face %d: %.0Lf of %.0Lf", seed, i, look.cutouts, (Real)look.face->area);
            check_courses(&look);
        }
        SAY(look.found == look.layout->least.found || look.least < 5, "seed %d: strip or none", seed);
        if (look.found)
            SAY(size(look.least - (Real)look.layout->least.width) < 4, "seed %d: least %.1Lf, layout %lld", seed,
                look.least, (long long)look.layout->least.width);
        arena_free(look.arena);
    }
}
END_TEST

/* ---- same document, same bytes ---- */

static void put_number(Text *text, int64_t number)
{
    text_put_bytes(text, (const char *)&number, sizeof number);
}

static void put_course(Text *text, const Course *course)
{
    const int64_t numbers[] = {course->number,    course->bottom,        course->top,       course->width,
                               course->left,      course->right,         course->rip.shape, course->rip.left,
                               course->rip.right, course->rip.least,     course->rip.most,  course->rip.lower_cut,
                               course->cut_count, course->rip.upper_cut, course->slab_count};
    text_put_bytes(text, (const char *)numbers, sizeof numbers);
    for (int i = 0; i < course->rip.point_count; i++) {
        put_number(text, course->rip.points[i].x);
        put_number(text, course->rip.points[i].width);
    }
    for (int i = 0; i < course->segment_count; i++) {
        put_number(text, course->segments[i].left);
        put_number(text, course->segments[i].right);
    }
    for (int i = 0; i < course->slab_count; i++) {
        const Slab *slab = &course->slabs[i];
        put_number(text, slab->left);
        put_number(text, slab->right);
        put_number(text, slab->lower_left + slab->upper_right);
        for (int j = 0; j < slab->part_count; j++)
            text_put_bytes(text, (const char *)&slab->parts[j], sizeof slab->parts[j]);
    }
}

static void put_layout(Text *text, const Layout *layout)
{
    put_number(text, layout->least.width);
    put_number(text, layout->least.at);
    for (int i = 0; i < layout->wall->faces.count; i++) {
        text_put_bytes(text, (const char *)&layout->faces[i].area, sizeof layout->faces[i].area);
        for (int j = 0; j < layout->faces[i].course_count; j++)
            put_course(text, &layout->faces[i].courses[j]);
    }
    for (int i = 0; i < layout->findings.count; i++)
        text_put(text, layout->findings.at[i].text);
}

/* Of the wall, of a copy of it elsewhere, and without texts for its own start. */
START_TEST(a_layout_made_twice_is_the_same)
{
    for (uint64_t seed = 0; seed < 200; seed++) {
        Arena *arena = arena_new();
        const Wall *wall = wall_of(arena, seed);
        const Layout *layouts[3] = {layout_wall(arena, wall, NULL), NULL,
                                    layout_wall_at(arena, wall, wall->start, NULL)};
        Arena *other = arena_new();
        layouts[1] = layout_wall(other, wall_copy(other, wall), NULL);
        Text texts[3];
        for (int i = 0; i < 3; i++) {
            text_init(&texts[i]);
            put_layout(&texts[i], layouts[i]);
        }
        assert_int_equal(texts[0].length, texts[1].length);
        assert_memory_equal(texts[0].bytes, texts[1].bytes, texts[0].length);
        assert_true(texts[2].length <= texts[0].length);
        assert_memory_equal(texts[0].bytes, texts[2].bytes, texts[2].length);
        for (int i = 0; i < 3; i++)
            text_finish(&texts[i]);
        arena_free(other);
        arena_free(arena);
    }
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        courses_of_random_walls_cover_their_region_exactly,
        a_layout_made_twice_is_the_same,
    };
    return RUN(tests);
}
