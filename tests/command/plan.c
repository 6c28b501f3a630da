/* The plan as other programs read it: parsed back by libyaml, held to itself and to the layout it came from. */
#include "support/test.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>
#include <yaml.h>

#include "fill/fill.h"
#include "sheet/writers/plan.h"
#include "support/random_wall.h"

enum { WALLS = 200, CORNERS_MOST = 512, EDGES_MOST = 64 };

typedef struct Read {
    Arena *arena;
    const Job *job;
    yaml_document_t document;
    uint64_t seed;
} Read;

/* ---- nodes ---- */

static yaml_node_t *node_at(Read *read, int index)
{
    return yaml_document_get_node(&read->document, index);
}

static yaml_node_t *find(Read *read, const yaml_node_t *map, const char *key)
{
    assert_int_equal(map->type, YAML_MAPPING_NODE);
    for (yaml_node_pair_t *pair = map->data.mapping.pairs.start; pair < map->data.mapping.pairs.top; pair++)
        if (strcmp((const char *)node_at(read, pair->key)->data.scalar.value, key) == 0)
            return node_at(read, pair->value);
    return NULL;
}

static yaml_node_t *get(Read *read, const yaml_node_t *map, const char *key)
{
    yaml_node_t *node = find(read, map, key);
    if (node == NULL)
        FAIL("wall %d: there is no %s", (int)read->seed, key);
    return node;
}

static const char *text_of(const yaml_node_t *node)
{
    assert_int_equal(node->type, YAML_SCALAR_NODE);
    return (const char *)node->data.scalar.value;
}

static Length number_of(const yaml_node_t *node)
{
    char *end;
    const char *text = text_of(node);
    long long value = strtoll(text, &end, 10);
    assert_true(*text != '\0' && *end == '\0');
    return value;
}

static Length number(Read *read, const yaml_node_t *map, const char *key)
{
    return number_of(get(read, map, key));
}

static int count_of(const yaml_node_t *list)
{
    assert_int_equal(list->type, YAML_SEQUENCE_NODE);
    return (int)(list->data.sequence.items.top - list->data.sequence.items.start);
}

static yaml_node_t *entry(Read *read, const yaml_node_t *list, int index)
{
    return node_at(read, list->data.sequence.items.start[index]);
}

/* The keys of a mapping are these, in this order; a key with a question mark may be missing. */
static void assert_keys(Read *read, const yaml_node_t *map, const char *keys)
{
    yaml_node_pair_t *pair = map->data.mapping.pairs.start;
    char key[32];
    while (*keys != '\0') {
        size_t length = strcspn(keys, " ");
        snprintf(key, sizeof key, "%.*s", (int)length, keys);
        keys += length + (keys[length] == ' ' ? 1 : 0);
        bool optional = key[strlen(key) - 1] == '?';
        if (optional)
            key[strlen(key) - 1] = '\0';
        bool there = pair < map->data.mapping.pairs.top && strcmp(text_of(node_at(read, pair->key)), key) == 0;
        if (there)
            pair++;
        else if (!optional)
            FAIL("wall %d: %s is not where it should be", (int)read->seed, key);
    }
    if (pair != map->data.mapping.pairs.top)
        FAIL("wall %d: there is also %s", (int)read->seed, text_of(node_at(read, pair->key)));
}

/* ---- areas, in mm2 ---- */

typedef struct Spot {
    double x, y;
} Spot;

/* Keeps what lies on one side of a line along x (axis 0) or y (axis 1). Sutherland and Hodgman, 1974. */
static int clip(Spot *spots, int count, int axis, double limit, bool below)
{
    Spot out[CORNERS_MOST];
    int made = 0;
    for (int i = 0; i < count; i++) {
        Spot a = spots[i], b = spots[(i + 1) % count];
        double from = (axis == 0 ? a.x : a.y) - limit, to = (axis == 0 ? b.x : b.y) - limit;
        if (!below) {
            from = -from;
            to = -to;
        }
        assert_true(made + 2 < CORNERS_MOST);
        if (from <= 0)
            out[made++] = a;
        if ((from < 0 && to > 0) || (from > 0 && to < 0)) {
            double part = from / (from - to);
            out[made++] = (Spot){a.x + part * (b.x - a.x), a.y + part * (b.y - a.y)};
        }
    }
    memcpy(spots, out, (size_t)made * sizeof *out);
    return made;
}

static double area_of(const Spot *spots, int count)
{
    double twice = 0;
    for (int i = 0; i < count; i++) {
        Spot a = spots[i], b = spots[(i + 1) % count];
        twice += (a.x - spots[0].x) * (b.y - spots[0].y) - (b.x - spots[0].x) * (a.y - spots[0].y);
    }
    return twice / 2;
}

static int by_value(const void *a, const void *b)
{
    double x = *(const double *)a, y = *(const double *)b;
    return (x > y) - (x < y);
}

static bool covered(const double (*boxes)[4], int count, double x, double y)
{
    for (int i = 0; i < count; i++)
        if (x > boxes[i][0] && x < boxes[i][1] && y > boxes[i][2] && y < boxes[i][3])
            return true;
    return false;
}

/* The outline less the union of its cutouts: cut along all their edges, what no cutout covers is counted. */
static double net_area(Read *read, const yaml_node_t *piece)
{
    static const char *const sides[] = {"left", "right", "bottom", "top"};
    yaml_node_t *outline = get(read, piece, "outline"), *cutouts = get(read, piece, "cutouts");
    int corners = count_of(outline), count = count_of(cutouts);
    assert_in_range(corners, 3, CORNERS_MOST / 2);
    assert_in_range(count, 0, EDGES_MOST / 2);
    Spot spots[CORNERS_MOST];
    double boxes[EDGES_MOST / 2][4], xs[EDGES_MOST], ys[EDGES_MOST];
    for (int i = 0; i < corners; i++) {
        yaml_node_t *corner = entry(read, outline, i);
        spots[i] =
            (Spot){(double)number_of(entry(read, corner, 0)) / 1e6, (double)number_of(entry(read, corner, 1)) / 1e6};
    }
    double area = area_of(spots, corners);
    assert_true(area > 0); /* anticlockwise */
    for (int i = 0; i < count; i++) {
        for (int k = 0; k < 4; k++)
            boxes[i][k] = (double)number(read, entry(read, cutouts, i), sides[k]) / 1e6;
        assert_true(boxes[i][0] < boxes[i][1] && boxes[i][2] < boxes[i][3]);
        xs[2 * i] = boxes[i][0];
        xs[2 * i + 1] = boxes[i][1];
        ys[2 * i] = boxes[i][2];
        ys[2 * i + 1] = boxes[i][3];
    }
    qsort(xs, (size_t)count * 2, sizeof *xs, by_value);
    qsort(ys, (size_t)count * 2, sizeof *ys, by_value);
    for (int i = 0; i + 1 < 2 * count; i++)
        for (int k = 0; k + 1 < 2 * count; k++) {
            if (!covered((const double(*)[4])boxes, count, (xs[i] + xs[i + 1]) / 2, (ys[k] + ys[k + 1]) / 2))
                continue;
            Spot cell[CORNERS_MOST];
            memcpy(cell, spots, (size_t)corners * sizeof *cell);
            int left = clip(cell, corners, 0, xs[i], false);
            left = clip(cell, left, 0, xs[i + 1], true);
            left = clip(cell, left, 1, ys[k], false);
            left = clip(cell, left, 1, ys[k + 1], true);
            area -= area_of(cell, left);
        }
    return area;
}

/* ---- the parts of the plan ---- */

typedef struct Sums {
    int courses, pieces;
    Length used, missing;
    const yaml_node_t **by_number; /* pieces, from 1 */
} Sums;

static void read_piece(Read *read, const yaml_node_t *piece, Length band[2], Sums *sums)
{
    assert_keys(read, piece, "piece board offset left right outline cutouts studs shows?");
    Length left = number(read, piece, "left"), right = number(read, piece, "right"), n = number(read, piece, "piece");
    assert_true(left < right);
    assert_in_range(n, 1, read->job->plan->piece_count);
    assert_null(sums->by_number[n]);
    sums->by_number[n] = piece;
    sums->pieces++;
    sums->used += right - left;
    yaml_node_t *cutouts = get(read, piece, "cutouts"), *studs = get(read, piece, "studs");
    for (int i = 0; i < count_of(cutouts); i++) {
        yaml_node_t *cutout = entry(read, cutouts, i);
        assert_keys(read, cutout, "opening shape left right bottom top");
        assert_true(number(read, cutout, "left") >= left && number(read, cutout, "right") <= right);
        assert_true(number(read, cutout, "bottom") >= band[0] && number(read, cutout, "top") <= band[1]);
    }
    for (int i = 0; i < count_of(studs); i++) {
        Length centre = number_of(entry(read, studs, i));
        assert_true(centre >= left && centre <= right);
    }
}

static double read_course(Read *read, const yaml_node_t *course, Sums *sums)
{
    assert_keys(read, course, "course bottom top rip segments");
    assert_keys(read, get(read, course, "rip"), "shape left right least most");
    Length band[2] = {number(read, course, "bottom"), number(read, course, "top")};
    yaml_node_t *segments = get(read, course, "segments");
    double area = 0;
    sums->courses++;
    for (int i = 0; i < count_of(segments); i++) {
        yaml_node_t *segment = entry(read, segments, i);
        assert_keys(read, segment, "left right pieces missing");
        yaml_node_t *pieces = get(read, segment, "pieces"), *missing = get(read, segment, "missing");
        Length covered_length = 0;
        for (int k = 0; k < count_of(pieces); k++) {
            yaml_node_t *piece = entry(read, pieces, k);
            read_piece(read, piece, band, sums);
            covered_length += number(read, piece, "right") - number(read, piece, "left");
            area += net_area(read, piece);
        }
        for (int k = 0; k < count_of(missing); k++) {
            yaml_node_t *bare = entry(read, missing, k);
            Length length = number(read, bare, "right") - number(read, bare, "left");
            sums->missing += length;
            covered_length += length;
        }
        assert_true(covered_length == number(read, segment, "right") - number(read, segment, "left"));
    }
    return area;
}

/* Outlines less cutouts, and what is left bare, are the courses' region less the openings. */
static void check_areas(Read *read, int face_index, double area, double written)
{
    const Job *job = read->job;
    const FaceLayout *face = &job->layout->faces[face_index];
    double bare = 0;
    for (int i = 0; i < job->plan->bare_count; i++) {
        const Bare *stretch = &job->plan->bare[i];
        if (stretch->face == face_index)
            bare +=
                (double)layout_area(read->arena, face, &face->courses[stretch->course], stretch->left, stretch->right);
    }
    double slack = 1 + 1e-9 * area;
    if (fabs(area - written) > slack)
        FAIL("wall %d, face %d: outlines less cutouts are %.1f mm2, net-area says %.1f", (int)read->seed, face_index,
             area, written);
    if (fabs(area + bare / 1e12 - (double)face->area / 1e12) > slack)
        FAIL("wall %d, face %d: %.1f mm2 hung and %.1f bare are not the %.1f of the courses", (int)read->seed,
             face_index, area, bare / 1e12, (double)face->area / 1e12);
}

/* A board that spoiled was sawn, even where none of it hangs. */
static bool is_recorded_lost(const Wall *wall, int board)
{
    for (int i = 0; i < wall->hung_losses.count; i++)
        if (wall->hung_losses.at[i].board == board)
            return true;
    return false;
}

static void check_boards(Read *read, const yaml_node_t *boards, const Sums *sums, const yaml_node_t *totals)
{
    int opened = 0, named = 0;
    Length length = 0;
    assert_int_equal(count_of(boards), wall_board_count(read->job->wall));
    for (int i = 0; i < count_of(boards); i++) {
        yaml_node_t *board = entry(read, boards, i);
        assert_keys(read, board, "board label length pieces left-over");
        assert_int_equal(number(read, board, "board"), i + 1);
        assert_string_equal(text_of(get(read, board, "label")), wall_board(read->job->wall, i + 1)->label);
        yaml_node_t *pieces = get(read, board, "pieces");
        Length behind = 0;
        for (int k = 0; k < count_of(pieces); k++, named++) {
            const yaml_node_t *piece = sums->by_number[number_of(entry(read, pieces, k))];
            assert_int_equal(number(read, piece, "board"), i + 1);
            Length offset = number(read, piece, "offset");
            assert_true(offset >= behind);
            behind = offset + number(read, piece, "right") - number(read, piece, "left");
        }
        assert_true(behind <= number(read, board, "length"));
        if (count_of(pieces) > 0 || is_recorded_lost(read->job->wall, i + 1)) {
            opened++;
            length += number(read, board, "length");
        }
    }
    assert_int_equal(named, sums->pieces);
    assert_int_equal(number(read, totals, "boards-opened"), opened);
    assert_true(number(read, totals, "length-opened") == length);
}

/* Tones are told where neighbours have any, the rest where there is a joint. */
static void check_looks(Read *read, const yaml_node_t *totals)
{
    const Plan *plan = read->job->plan;
    const char *keys =
        "courses pieces joints boards-opened length-opened length-used length-bound? length-least? missing neighbours? "
        "one-tone? by-chance? stacked? stairs? short-pairs? beside-cutouts? loose?";
    assert_keys(read, totals, keys);
    assert_int_equal(find(read, totals, "neighbours") != NULL, plan->looks.touching > 0);
    assert_int_equal(find(read, totals, "stacked") != NULL, plan->joints > 0);
    if (plan->looks.touching > 0) {
        assert_int_equal(number(read, totals, "neighbours"), plan->looks.touching);
        assert_int_equal(number(read, totals, "one-tone"), plan->looks.equal);
        assert_int_equal(number(read, totals, "by-chance"), plan->looks.chance);
    }
    if (plan->joints > 0) {
        assert_int_equal(number(read, totals, "stacked"), plan->looks.stacked);
        assert_int_equal(number(read, totals, "stairs"), plan->looks.stairs);
        assert_int_equal(number(read, totals, "short-pairs"), plan->looks.short_pairs);
        assert_int_equal(number(read, totals, "beside-cutouts"), plan->looks.near_sides);
    }
    assert_int_equal(find(read, totals, "loose") != NULL, plan->looks.loose > 0);
    if (plan->looks.loose > 0)
        assert_int_equal(number(read, totals, "loose"), plan->looks.loose);
}

static void check_plan(Read *read)
{
    const Job *job = read->job;
    const yaml_node_t *root = yaml_document_get_root_node(&read->document);
    assert_keys(read, root, "datumrow-plan title pitch faces boards trim? least? starts? seasons? warnings totals");
    assert_int_equal(number(read, root, "datumrow-plan"), 1);
    assert_string_equal(text_of(get(read, root, "title")), job->wall->title);
    assert_int_equal(count_of(get(read, root, "pitch")), job->wall->planks.widths.count);
    Sums sums = {.by_number = arena_array(read->arena, const yaml_node_t *, job->plan->piece_count + 1)};
    yaml_node_t *faces = get(read, root, "faces");
    assert_int_equal(count_of(faces), job->wall->faces.count);
    for (int i = 0; i < count_of(faces); i++) {
        yaml_node_t *face = entry(read, faces, i), *courses = get(read, face, "courses");
        assert_keys(read, face, "name net-area courses");
        assert_string_equal(text_of(get(read, face, "name")), job->wall->faces.at[i].name);
        double area = 0;
        Length last = INT64_MIN;
        for (int k = 0; k < count_of(courses); k++) {
            Length course = number(read, entry(read, courses, k), "course");
            assert_true(course > last); /* bottom to top */
            last = course;
            area += read_course(read, entry(read, courses, k), &sums);
        }
        check_areas(read, i, area, (double)number(read, face, "net-area"));
    }
    const yaml_node_t *totals = get(read, root, "totals");
    assert_int_equal(number(read, totals, "courses"), sums.courses);
    assert_int_equal(number(read, totals, "pieces"), sums.pieces);
    assert_int_equal(sums.pieces, job->plan->piece_count);
    assert_true(number(read, totals, "length-used") == sums.used);
    assert_true(number(read, totals, "missing") == sums.missing);
    check_looks(read, totals);
    check_boards(read, get(read, root, "boards"), &sums, totals);
    yaml_node_t *warnings = get(read, root, "warnings");
    assert_int_equal(count_of(warnings), job->findings.count);
    for (int i = 0; i < count_of(warnings); i++) {
        assert_keys(read, entry(read, warnings, i), "rule grade face? course? at? piece? board? opening? text");
        assert_string_equal(text_of(get(read, entry(read, warnings, i), "text")), job->findings.at[i].text);
    }
}

static void read_back(Read *read, const Text *text)
{
    yaml_parser_t parser;
    assert_true(yaml_parser_initialize(&parser));
    yaml_parser_set_input_string(&parser, (const unsigned char *)text->bytes, text->length);
    if (!yaml_parser_load(&parser, &read->document))
        FAIL("wall %d: line %d: %s", (int)read->seed, (int)parser.problem_mark.line + 1, parser.problem);
    assert_non_null(yaml_document_get_root_node(&read->document));
    yaml_parser_delete(&parser);
}

START_TEST(a_plan_is_yaml_that_adds_up)
{
    for (uint64_t seed = 1; seed <= WALLS; seed++) {
        Read read = {.arena = arena_new(), .seed = seed};
        Err err = {0};
        const Wall *wall = random_wall(read.arena, seed, seed % 4 == 0 ? RANDOM_HUNG : RANDOM_ANY);
        const Layout *layout = layout_wall(read.arena, wall, &err);
        if (layout == NULL)
            FAIL("wall %d: %s", (int)seed, err.text);
        read.job = job_of_parts(read.arena, layout, fill_by_hand(read.arena, layout), "wall.yaml", "0123456789ab");
        Text text;
        text_init(&text);
        plan_write(read.job, &text);
        read_back(&read, &text);
        check_plan(&read);
        yaml_document_delete(&read.document);
        text_finish(&text);
        arena_free(read.arena);
    }
}
END_TEST

/* Names that other readers would take for something else come back as they were. */
START_TEST(odd_names_read_back_as_written)
{
    static const char *const names[] = {"",
                                        "no",
                                        "~",
                                        "1",
                                        "1.5",
                                        "- a",
                                        "a: b",
                                        "a #b",
                                        "\"q\"",
                                        "it's",
                                        "null",
                                        "Off",
                                        "a\\b",
                                        " a ",
                                        "[x]",
                                        "{y}",
                                        "&z",
                                        "*z",
                                        "!t",
                                        "|",
                                        ">",
                                        "%",
                                        "@",
                                        "`",
                                        "0x1f",
                                        "y",
                                        "-",
                                        "?",
                                        "e\xcc\x81",
                                        "\xe6\x9d\xbf",
                                        "a\tb",
                                        "\xc2\x85",
                                        "\xe2\x80\xa8",
                                        "\xef\xbb\xbf",
                                        "\xf0\x9f\xaa\xb5"};
    for (size_t i = 0; i < sizeof names / sizeof *names; i++) {
        Read read = {.arena = arena_new(), .seed = i};
        Err err = {0};
        Wall *wall = random_wall(read.arena, 1, RANDOM_PLAIN);
        wall->title = arena_text(read.arena, names[i], strlen(names[i]));
        wall->faces.at[0].name = wall->title;
        const Layout *layout = layout_wall(read.arena, wall, &err);
        assert_non_null(layout);
        read.job = job_of_parts(read.arena, layout, fill_by_hand(read.arena, layout), "", "");
        Text text;
        text_init(&text);
        plan_write(read.job, &text);
        read_back(&read, &text);
        check_plan(&read);
        yaml_document_delete(&read.document);
        text_finish(&text);
        arena_free(read.arena);
    }
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        a_plan_is_yaml_that_adds_up,
        odd_names_read_back_as_written,
    };
    return RUN(tests);
}
