#include "proof/said.h"

#include <stdlib.h>
#include <string.h>
#include <yaml.h>

/* The first thing that is not as it should be is kept; what is read after it is worth nothing. */
typedef struct Reading {
    Arena *arena;
    yaml_document_t document;
    Text *why;
    bool failed;
} Reading;

static void stumble(Reading *reading, const char *key, const char *what)
{
    if (!reading->failed)
        text_format(reading->why, "the plan: `%s` %s", key, what);
    reading->failed = true;
}

/* The value of `key`, NULL where the mapping has none. */
static yaml_node_t *maybe(Reading *reading, const yaml_node_t *map, const char *key)
{
    if (map == NULL || map->type != YAML_MAPPING_NODE)
        return NULL;
    for (yaml_node_pair_t *pair = map->data.mapping.pairs.start; pair < map->data.mapping.pairs.top; pair++) {
        const yaml_node_t *name = yaml_document_get_node(&reading->document, pair->key);
        if (name->type == YAML_SCALAR_NODE && strcmp((const char *)name->data.scalar.value, key) == 0)
            return yaml_document_get_node(&reading->document, pair->value);
    }
    return NULL;
}

static yaml_node_t *must(Reading *reading, const yaml_node_t *map, const char *key)
{
    yaml_node_t *node = maybe(reading, map, key);
    if (node == NULL)
        stumble(reading, key, "is missing");
    return node;
}

static const char *text_of_node(Reading *reading, const yaml_node_t *node, const char *key)
{
    if (node == NULL || node->type != YAML_SCALAR_NODE) {
        stumble(reading, key, "is no scalar");
        return "";
    }
    return arena_text(reading->arena, (const char *)node->data.scalar.value, node->data.scalar.length);
}

static const char *text_at(Reading *reading, const yaml_node_t *map, const char *key)
{
    return text_of_node(reading, must(reading, map, key), key);
}

static const char *maybe_text(Reading *reading, const yaml_node_t *map, const char *key)
{
    const yaml_node_t *node = maybe(reading, map, key);
    return node == NULL ? NULL : text_of_node(reading, node, key);
}

static int64_t whole_of_node(Reading *reading, const yaml_node_t *node, const char *key)
{
    const char *text = text_of_node(reading, node, key);
    char *end = NULL;
    const long long value = strtoll(text, &end, 10);
    if (end == text || *end != '\0')
        stumble(reading, key, "is no whole number");
    return value;
}

static int64_t whole_at(Reading *reading, const yaml_node_t *map, const char *key)
{
    return whole_of_node(reading, must(reading, map, key), key);
}

static int64_t maybe_whole(Reading *reading, const yaml_node_t *map, const char *key, bool *has)
{
    const yaml_node_t *node = maybe(reading, map, key);
    *has = node != NULL;
    return node == NULL ? 0 : whole_of_node(reading, node, key);
}

static int count_of(Reading *reading, const yaml_node_t *list, const char *key)
{
    if (list == NULL || list->type != YAML_SEQUENCE_NODE) {
        stumble(reading, key, "is no list");
        return 0;
    }
    return (int)(list->data.sequence.items.top - list->data.sequence.items.start);
}

static yaml_node_t *item(Reading *reading, const yaml_node_t *list, int index)
{
    return yaml_document_get_node(&reading->document, list->data.sequence.items.start[index]);
}

/* ---- from the inside out ---- */

static void read_outline(Reading *reading, const yaml_node_t *list, SaidPiece *piece)
{
    piece->point_count = count_of(reading, list, "outline");
    piece->outline = arena_array(reading->arena, SaidPoint, piece->point_count);
    for (int i = 0; i < piece->point_count; i++) {
        const yaml_node_t *pair = item(reading, list, i);
        if (count_of(reading, pair, "outline") != 2) {
            stumble(reading, "outline", "holds no points");
            return;
        }
        piece->outline[i].x = whole_of_node(reading, item(reading, pair, 0), "outline");
        piece->outline[i].y = whole_of_node(reading, item(reading, pair, 1), "outline");
    }
}

static void read_cutouts(Reading *reading, const yaml_node_t *list, SaidPiece *piece)
{
    piece->cutout_count = count_of(reading, list, "cutouts");
    piece->cutouts = arena_array(reading->arena, SaidCutout, piece->cutout_count);
    for (int i = 0; i < piece->cutout_count; i++) {
        const yaml_node_t *node = item(reading, list, i);
        piece->cutouts[i] = (SaidCutout){.opening = text_at(reading, node, "opening"),
                                         .shape = text_at(reading, node, "shape"),
                                         .left = whole_at(reading, node, "left"),
                                         .right = whole_at(reading, node, "right"),
                                         .bottom = whole_at(reading, node, "bottom"),
                                         .top = whole_at(reading, node, "top")};
    }
}

static Length *read_lengths(Reading *reading, const yaml_node_t *list, const char *key, int *count)
{
    *count = count_of(reading, list, key);
    Length *lengths = arena_array(reading->arena, Length, *count);
    for (int i = 0; i < *count; i++)
        lengths[i] = whole_of_node(reading, item(reading, list, i), key);
    return lengths;
}

static void read_piece(Reading *reading, const yaml_node_t *node, SaidPiece *piece)
{
    piece->number = (int)whole_at(reading, node, "piece");
    piece->board = (int)whole_at(reading, node, "board");
    piece->offset = whole_at(reading, node, "offset");
    piece->left = whole_at(reading, node, "left");
    piece->right = whole_at(reading, node, "right");
    read_outline(reading, must(reading, node, "outline"), piece);
    read_cutouts(reading, must(reading, node, "cutouts"), piece);
    piece->studs = read_lengths(reading, must(reading, node, "studs"), "studs", &piece->stud_count);
}

static void read_segment(Reading *reading, const yaml_node_t *node, SaidSegment *segment)
{
    segment->left = whole_at(reading, node, "left");
    segment->right = whole_at(reading, node, "right");
    const yaml_node_t *pieces = must(reading, node, "pieces"), *missing = must(reading, node, "missing");
    segment->piece_count = count_of(reading, pieces, "pieces");
    segment->pieces = arena_array(reading->arena, SaidPiece, segment->piece_count);
    for (int i = 0; i < segment->piece_count; i++)
        read_piece(reading, item(reading, pieces, i), &segment->pieces[i]);
    segment->missing_count = count_of(reading, missing, "missing");
    segment->missing = arena_array(reading->arena, Stretch, segment->missing_count);
    for (int i = 0; i < segment->missing_count; i++) {
        const yaml_node_t *stretch = item(reading, missing, i);
        segment->missing[i] = (Stretch){whole_at(reading, stretch, "left"), whole_at(reading, stretch, "right")};
    }
}

static void read_course(Reading *reading, const yaml_node_t *node, SaidCourse *course)
{
    const yaml_node_t *rip = must(reading, node, "rip"), *segments = must(reading, node, "segments");
    course->number = whole_at(reading, node, "course");
    course->bottom = whole_at(reading, node, "bottom");
    course->top = whole_at(reading, node, "top");
    course->shape = text_at(reading, rip, "shape");
    course->rip_left = whole_at(reading, rip, "left");
    course->rip_right = whole_at(reading, rip, "right");
    course->rip_least = whole_at(reading, rip, "least");
    course->rip_most = whole_at(reading, rip, "most");
    course->segment_count = count_of(reading, segments, "segments");
    course->segments = arena_array(reading->arena, SaidSegment, course->segment_count);
    for (int i = 0; i < course->segment_count; i++)
        read_segment(reading, item(reading, segments, i), &course->segments[i]);
}

static void read_face(Reading *reading, const yaml_node_t *node, SaidFace *face)
{
    const yaml_node_t *courses = must(reading, node, "courses");
    face->name = text_at(reading, node, "name");
    face->net_area = whole_at(reading, node, "net-area");
    face->course_count = count_of(reading, courses, "courses");
    face->courses = arena_array(reading->arena, SaidCourse, face->course_count);
    for (int i = 0; i < face->course_count; i++)
        read_course(reading, item(reading, courses, i), &face->courses[i]);
}

static void read_board(Reading *reading, const yaml_node_t *node, SaidBoard *board)
{
    int count = 0;
    const Length *pieces = read_lengths(reading, must(reading, node, "pieces"), "pieces", &count);
    *board = (SaidBoard){.number = (int)whole_at(reading, node, "board"),
                         .label = text_at(reading, node, "label"),
                         .length = whole_at(reading, node, "length"),
                         .pieces = arena_array(reading->arena, int, count),
                         .piece_count = count,
                         .left_over = whole_at(reading, node, "left-over")};
    for (int i = 0; i < count; i++)
        board->pieces[i] = (int)pieces[i];
}

static void read_warning(Reading *reading, const yaml_node_t *node, SaidWarning *warning)
{
    bool has;
    warning->rule = text_at(reading, node, "rule");
    warning->grade = text_at(reading, node, "grade");
    warning->text = text_at(reading, node, "text");
    warning->face = maybe_text(reading, node, "face");
    warning->opening = maybe_text(reading, node, "opening");
    warning->course = maybe_whole(reading, node, "course", &warning->has_course);
    warning->at = maybe_whole(reading, node, "at", &warning->has_at);
    warning->piece = (int)maybe_whole(reading, node, "piece", &has);
    warning->board = (int)maybe_whole(reading, node, "board", &has);
}

static void read_totals(Reading *reading, const yaml_node_t *totals, Said *said)
{
    said->courses = whole_at(reading, totals, "courses");
    said->pieces = whole_at(reading, totals, "pieces");
    said->joints = whole_at(reading, totals, "joints");
    said->boards_opened = whole_at(reading, totals, "boards-opened");
    said->length_opened = whole_at(reading, totals, "length-opened");
    said->length_used = whole_at(reading, totals, "length-used");
    said->missing = whole_at(reading, totals, "missing");
    said->bound = maybe_whole(reading, totals, "length-bound", &said->bound_given);
    said->least_opened = maybe_whole(reading, totals, "length-least", &said->least_opened_given);
}

static void read_plan(Reading *reading, const yaml_node_t *root, Said *said)
{
    const yaml_node_t *faces = must(reading, root, "faces"), *boards = must(reading, root, "boards");
    const yaml_node_t *warnings = must(reading, root, "warnings");
    said->pitch = read_lengths(reading, must(reading, root, "pitch"), "pitch", &said->pitch_count);
    said->face_count = count_of(reading, faces, "faces");
    said->faces = arena_array(reading->arena, SaidFace, said->face_count);
    for (int i = 0; i < said->face_count; i++)
        read_face(reading, item(reading, faces, i), &said->faces[i]);
    said->board_count = count_of(reading, boards, "boards");
    said->boards = arena_array(reading->arena, SaidBoard, said->board_count);
    for (int i = 0; i < said->board_count; i++)
        read_board(reading, item(reading, boards, i), &said->boards[i]);
    said->warning_count = count_of(reading, warnings, "warnings");
    said->warnings = arena_array(reading->arena, SaidWarning, said->warning_count);
    for (int i = 0; i < said->warning_count; i++)
        read_warning(reading, item(reading, warnings, i), &said->warnings[i]);
    read_totals(reading, must(reading, root, "totals"), said);
}

bool said_read(Arena *arena, const char *text, size_t length, Said *said, Text *why)
{
    yaml_parser_t parser;
    Reading reading = {.arena = arena, .why = why};
    *said = (Said){0};
    if (!yaml_parser_initialize(&parser))
        return false;
    yaml_parser_set_input_string(&parser, (const unsigned char *)text, length);
    if (yaml_parser_load(&parser, &reading.document)) {
        read_plan(&reading, yaml_document_get_root_node(&reading.document), said);
        yaml_document_delete(&reading.document);
    } else {
        stumble(&reading, parser.problem != NULL ? parser.problem : "?", "is what the reader of YAML says of it");
    }
    yaml_parser_delete(&parser);
    return !reading.failed;
}
