#include "store/tree.h"

#include "base/panic.h"
#include "base/utf8.h"

#include <limits.h>
#include <stdarg.h>
#include <string.h>
#include <yaml.h>

/*
 * libyaml counts characters, the tree bytes: every STRIDE characters the byte is noted, the rest of the way is walked.
 * A byte order mark in front counts as nothing for either line or column.
 */

enum { STRIDE = 256, NODES_MOST = 2000000, BOM = 3 };

typedef struct Builder {
    Arena *arena;
    Report *report;
    const char *text; /* behind the byte order mark */
    size_t length;
    size_t before; /* bytes of the byte order mark */
    size_t *strides;
    size_t stride_count;
    yaml_parser_t parser;
    int nodes;
    bool stopped; /* an error after which nothing can be built */
} Builder;

/* ---- the text as such ---- */

static void report_at_byte(Report *report, const char *text, size_t byte, const char *what)
{
    int line = 1;
    size_t line_start = 0;
    for (size_t i = 0; i < byte; i++)
        if (text[i] == '\n' && line < INT_MAX) {
            line++;
            line_start = i + 1;
        }
    int column = 1;
    for (size_t i = line_start; i < byte && column < INT_MAX; column++) {
        uint32_t code;
        const int bytes = utf8_decode(text + i, byte - i, &code);
        i += bytes > 0 ? (size_t)bytes : 1;
    }
    report_error(report, ERR_INPUT, line, column, "%s", what);
}

/* What YAML takes for a character that may stand in a file. */
static bool is_printable(uint32_t code)
{
    return code == '\t' || code == '\n' || code == '\r' || (code >= 0x20 && code < 0x7f) || code == 0x85 ||
           (code >= 0xa0 && code < 0xd800) || (code >= 0xe000 && code < 0xfffe) || code >= 0x10000;
}

static bool check_text(Report *report, const char *text, size_t length)
{
    if (length > STORE_FILE_MOST) {
        report_error(report, ERR_LIMIT, 0, 0, "the file is larger than %d MiB; a wall file is far smaller",
                     STORE_FILE_MOST / (1024 * 1024));
        return false;
    }
    for (size_t at = 0; at < length;) {
        uint32_t code;
        const int bytes = utf8_decode(text + at, length - at, &code);
        if (bytes > 0 && is_printable(code)) {
            at += (size_t)bytes;
            continue;
        }
        report_at_byte(report, text, at,
                       bytes > 0 && code == 0 ? "this is no text: it holds a NUL byte; name a wall file"
                       : bytes > 0
                           ? "this is no text: a control character stands here; name a wall file, or take it out"
                           : "this byte is not UTF-8; save the file as UTF-8");
        return false;
    }
    return true;
}

/* ---- places ---- */

static void note_strides(Builder *builder)
{
    builder->strides = arena_array(builder->arena, size_t, builder->length / STRIDE + 1);
    size_t characters = 0;
    for (size_t at = 0; at < builder->length; characters++) {
        uint32_t code;
        if (characters % STRIDE == 0)
            builder->strides[builder->stride_count++] = at;
        at += (size_t)utf8_decode(builder->text + at, builder->length - at, &code);
    }
}

static size_t byte_of(const Builder *builder, const yaml_mark_t *mark)
{
    const size_t stride = mark->index / STRIDE;
    if (stride >= builder->stride_count)
        return builder->before + builder->length;
    size_t at = builder->strides[stride];
    for (size_t left = mark->index % STRIDE; left > 0 && at < builder->length; left--) {
        uint32_t code;
        at += (size_t)utf8_decode(builder->text + at, builder->length - at, &code);
    }
    return builder->before + at;
}

static int line_of(const yaml_mark_t *mark)
{
    return (int)mark->line + 1; /* below 8 Mi */
}

static int column_of(const yaml_mark_t *mark)
{
    return (int)mark->column + 1;
}

__attribute__((format(printf, 4, 5))) static void stop(Builder *builder, ErrKind kind, const yaml_mark_t *mark,
                                                       const char *format, ...)
{
    Text text;
    va_list list;
    text_init(&text);
    va_start(list, format);
    text_format_list(&text, format, list);
    va_end(list);
    report_error(builder->report, kind, line_of(mark), column_of(mark), "%s", text.bytes);
    text_finish(&text);
    builder->stopped = true;
}

/* ---- what libyaml says, in the words of someone who writes a wall file ---- */

#define NO_TAGS "tags (!) are not taken here; write the value alone, or put text that begins with ! in quotes"
#define NO_ESCAPE "this is no escape that YAML knows; use single quotes, or write the \\ twice"
#define NO_BLOCK "a text over several lines is not taken; write it on one line, in quotes"
#define NO_DIRECTIVES "lines that begin with % are not taken; take the line out"

static const struct {
    const char *said;
    const char *meant;
    bool opened; /* it helps to know where the bracket or quote opens */
} slips[] = {
    {"found character that cannot start any token",
     "a value cannot begin with this; indent with blanks, not tabs, and put text that begins with @ ` or % in quotes",
     false},
    {"found a tab character that violates indentation", "a tab stands here; indent with blanks", false},
    {"found a tab character where an indentation space is expected", "a tab stands here; indent with blanks", false},
    {"mapping values are not allowed in this context",
     "a colon is not expected here; put a text with a colon in quotes, or mend the indentation", false},
    {"block sequence entries are not allowed in this context",
     "a `-` is not expected here; begin the list on a line of its own", false},
    {"did not find expected key",
     "this fits neither the line before nor its indentation; mend the indentation or the quotes", false},
    {"did not find expected '-' indicator", "a list has a line without `-` here; mend the indentation", false},
    {"did not find expected ',' or '}'", "a { is not closed, or a comma is missing; write {key: value, key: value}",
     true},
    {"did not find expected ',' or ']'", "a [ is not closed, or a comma is missing; write [value, value]", true},
    {"did not find expected node content", "a value is missing here, or the bracket that closes a list; write it",
     false},
    {"could not find expected ':'", "a colon is missing in this line; write key: value, with a blank behind the colon",
     false},
    {"found unexpected end of stream", "the file ends within quotes; close them", true},
    {"found unexpected document indicator", "the document ends within quotes; close them", true},
    {"found unknown escape character", NO_ESCAPE, false},
    {"found undefined tag handle", NO_TAGS, false},
    {"did not find expected tag URI", NO_TAGS, false},
    {"did not find expected '!'", NO_TAGS, false},
    {"did not find the expected '>'", NO_TAGS, false},
    {"did not find URI escaped octet", NO_TAGS, false},
    {"found an incorrect leading UTF-8 octet", NO_TAGS, false},
    {"found an incorrect trailing UTF-8 octet", NO_TAGS, false},
    {"did not find expected whitespace or line break", NO_TAGS, false},
    {"did not find expected alphabetic or numeric character",
     "anchors (&) and aliases (*) are not taken here; write the value out, or put text that begins so in quotes",
     false},
    {"did not find expected hexdecimal number", NO_ESCAPE, false},
    {"found invalid Unicode character escape code", NO_ESCAPE, false},
    {"mapping keys are not allowed in this context",
     "a ? is not expected here; write key: value, and put text that begins with ? in quotes", false},
    {"found unexpected ':'", "a colon is not expected here; put a text with a colon in quotes", false},
    {"found an indentation indicator equal to 0", NO_BLOCK, false},
    {"did not find expected comment or line break",
     "something stands behind a | or >; write the text on one line, in quotes", false},
    {"did not find expected <document start>",
     "a second document begins here; keep one wall in a file, and all keys at the left edge", false},
    {"could not find expected directive name", NO_DIRECTIVES, false},
    {"found unexpected non-alphabetical character", NO_DIRECTIVES, false},
    {"found unknown directive name", NO_DIRECTIVES, false},
    {"found duplicate %YAML directive", NO_DIRECTIVES, false},
    {"found duplicate %TAG directive", NO_DIRECTIVES, false},
    {"found incompatible YAML document", NO_DIRECTIVES, false},
    {"found extremely long version number", NO_DIRECTIVES, false},
    {"did not find expected version number", NO_DIRECTIVES, false},
    {"did not find expected digit or '.' character", NO_DIRECTIVES, false},
    {"did not find expected whitespace", NO_DIRECTIVES, false},
};

static void stop_where_parser_did(Builder *builder)
{
    const yaml_parser_t *parser = &builder->parser;
    const char *problem = parser->problem == NULL ? "" : parser->problem;
    for (size_t i = 0; i < sizeof slips / sizeof *slips; i++) {
        if (strcmp(problem, slips[i].said) != 0)
            continue;
        char opened[64] = "";
        if (slips[i].opened && parser->context != NULL)
            snprintf(opened, sizeof opened, " (opened in line %d)", line_of(&parser->context_mark));
        stop(builder, ERR_INPUT, &parser->problem_mark, "%s%s", slips[i].meant, opened);
        return;
    }
    stop(builder, ERR_INPUT, &parser->problem_mark,
         "this cannot be read as YAML; fix the indentation, the quotes or the brackets here or in the line before");
}

static bool next_event(Builder *builder, yaml_event_t *event)
{
    if (yaml_parser_parse(&builder->parser, event))
        return true;
    if (builder->parser.error == YAML_MEMORY_ERROR)
        panic_no_memory();
    stop_where_parser_did(builder);
    return false;
}

/* ---- nodes ---- */

static TreeNode *add_node(Builder *builder, NodeKind kind, const yaml_event_t *event)
{
    if (++builder->nodes > NODES_MOST) {
        stop(builder, ERR_LIMIT, &event->start_mark,
             "the file holds more than 2,000,000 values; a wall file is far smaller");
        return NULL;
    }
    TreeNode *node = arena_one(builder->arena, TreeNode);
    node->kind = kind;
    node->line = line_of(&event->start_mark);
    node->column = column_of(&event->start_mark);
    node->start = byte_of(builder, &event->start_mark);
    node->end = byte_of(builder, &event->end_mark);
    return node;
}

/* The tag as it is written, at the node's start or behind its anchor: libyaml has the long form alone. */
static int tag_written(const Builder *builder, const TreeNode *node, const char **tag)
{
    const char *at = builder->text - builder->before + node->start;
    const char *end = builder->text + builder->length;
    while (at < end && *at != '!' && *at != '\n')
        at++;
    *tag = at;
    const char *behind = at;
    while (behind < end && strchr(" \t\r\n,]}", *behind) == NULL)
        behind++;
    return behind - at < 40 ? (int)(behind - at) : 40;
}

/* Anchors and tags are told, and the value read all the same. */
static void refuse_properties(Builder *builder, TreeNode *node, const yaml_char_t *anchor, const yaml_char_t *tag)
{
    if (anchor != NULL)
        report_error(builder->report, ERR_INPUT, node->line, node->column,
                     "anchors (&%.40s) are not taken here; write the value out where it is needed",
                     (const char *)anchor);
    if (tag != NULL) {
        const char *written;
        const int length = tag_written(builder, node, &written);
        report_error(builder->report, ERR_INPUT, node->line, node->column,
                     "tags (%.*s) are not taken here; write the value alone", length, written);
    }
    node->wrong |= anchor != NULL || tag != NULL;
}

static TreeNode *add_scalar(Builder *builder, const yaml_event_t *event)
{
    TreeNode *node = add_node(builder, NODE_SCALAR, event);
    if (node == NULL)
        return NULL;
    const char *source = builder->text - builder->before;
    const char *value = (const char *)event->data.scalar.value;
    node->length = event->data.scalar.length;
    node->quoted = event->data.scalar.style != YAML_PLAIN_SCALAR_STYLE;
    /* a block of text ends behind its last line break */
    while (node->end > node->start && strchr(" \t\r\n", source[node->end - 1]) != NULL)
        node->end--;
    if (node->length == node->end - node->start && memcmp(value, source + node->start, node->length) == 0)
        node->text = source + node->start;
    else
        node->text = arena_text(builder->arena, value, node->length);
    refuse_properties(builder, node, event->data.scalar.anchor, event->data.scalar.tag);
    return node;
}

static TreeNode *build(Builder *builder, yaml_event_t *event, int depth);

/* The children of a mapping or list up to the event that ends it. */
static void build_children(Builder *builder, TreeNode *parent, yaml_event_type_t end, int depth)
{
    TreeNode **link = &parent->first;
    int children = 0;
    for (;;) {
        yaml_event_t event;
        if (!next_event(builder, &event))
            return;
        if (event.type == end) {
            if (parent->flow)
                parent->end = byte_of(builder, &event.end_mark);
            yaml_event_delete(&event);
            break;
        }
        TreeNode *child = build(builder, &event, depth + 1);
        if (child == NULL)
            return;
        *link = child;
        link = &child->next;
        children++;
        if (!parent->flow) {
            if (children == 1 && parent->kind == NODE_MAPPING)
                parent->start = child->start;
            parent->end = child->end > parent->start ? child->end : parent->start;
        }
    }
    parent->count = parent->kind == NODE_MAPPING ? children / 2 : children;
}

static TreeNode *build_collection(Builder *builder, yaml_event_t *event, int depth)
{
    const bool mapping = event->type == YAML_MAPPING_START_EVENT;
    if (depth > STORE_NESTING_MOST) {
        stop(builder, ERR_LIMIT, &event->start_mark,
             "lists and mappings stand in each other more than 16 deep; a wall file needs fewer");
        return NULL;
    }
    TreeNode *node = add_node(builder, mapping ? NODE_MAPPING : NODE_LIST, event);
    if (node == NULL)
        return NULL;
    if (mapping) {
        node->flow = event->data.mapping_start.style == YAML_FLOW_MAPPING_STYLE;
        refuse_properties(builder, node, event->data.mapping_start.anchor, event->data.mapping_start.tag);
    } else {
        node->flow = event->data.sequence_start.style == YAML_FLOW_SEQUENCE_STYLE;
        refuse_properties(builder, node, event->data.sequence_start.anchor, event->data.sequence_start.tag);
    }
    build_children(builder, node, mapping ? YAML_MAPPING_END_EVENT : YAML_SEQUENCE_END_EVENT, depth);
    return builder->stopped ? NULL : node;
}

/* The node that begins with `event`, which is deleted here; NULL where the builder stopped. */
static TreeNode *build(Builder *builder, yaml_event_t *event, int depth)
{
    TreeNode *node = NULL;
    if (event->type == YAML_SCALAR_EVENT) {
        node = add_scalar(builder, event);
    } else if (event->type == YAML_ALIAS_EVENT) {
        node = add_node(builder, NODE_SCALAR, event);
        if (node != NULL) {
            node->text = "";
            node->wrong = true;
            report_error(builder->report, ERR_INPUT, node->line, node->column,
                         "aliases (*%.40s) are not taken here; write the value out",
                         (const char *)event->data.alias.anchor);
        }
    } else {
        node = build_collection(builder, event, depth);
    }
    yaml_event_delete(event);
    return node;
}

static TreeNode *build_document(Builder *builder)
{
    TreeNode *root = NULL;
    int documents = 0;
    for (;;) {
        yaml_event_t event;
        if (!next_event(builder, &event))
            return NULL;
        const yaml_event_type_t type = event.type;
        if (type == YAML_DOCUMENT_START_EVENT && ++documents > 1)
            stop(builder, ERR_INPUT, &event.start_mark, "a second document begins here; keep one wall in a file");
        if (type == YAML_DOCUMENT_START_EVENT &&
            event.data.document_start.tag_directives.start != event.data.document_start.tag_directives.end)
            stop(builder, ERR_INPUT, &event.start_mark, "tags are not taken here; take the %%TAG line out");
        if (type == YAML_SCALAR_EVENT || type == YAML_ALIAS_EVENT || type == YAML_MAPPING_START_EVENT ||
            type == YAML_SEQUENCE_START_EVENT)
            root = build(builder, &event, 1);
        else
            yaml_event_delete(&event);
        if (builder->stopped)
            return NULL;
        if (type == YAML_STREAM_END_EVENT)
            break;
    }
    if (root == NULL)
        report_error(
            builder->report, ERR_INPUT, 0, 0,
            "the file holds nothing; begin it with datumrow: 1 and units: in, or let `datumrow new` write one");
    return root;
}

TreeNode *tree_parse(Arena *arena, Report *report, const char *text, size_t length)
{
    if (!check_text(report, text, length))
        return NULL;
    const size_t before = length >= BOM && memcmp(text, "\xef\xbb\xbf", BOM) == 0 ? BOM : 0;
    Builder builder = {
        .arena = arena, .report = report, .text = text + before, .length = length - before, .before = before};
    note_strides(&builder);
    if (!yaml_parser_initialize(&builder.parser))
        panic_no_memory(); /* nothing else fails there */
    yaml_parser_set_encoding(&builder.parser, YAML_UTF8_ENCODING);
    yaml_parser_set_input_string(&builder.parser, (const unsigned char *)builder.text, builder.length);
    TreeNode *root = build_document(&builder);
    yaml_parser_delete(&builder.parser);
    return root;
}

/* ---- looking things up ---- */

TreeNode *tree_value(const TreeNode *mapping, const char *key, TreeNode **key_node)
{
    BUG_UNLESS(mapping->kind == NODE_MAPPING);
    for (TreeNode *node = mapping->first; node != NULL && node->next != NULL; node = node->next->next)
        if (node->kind == NODE_SCALAR && tree_is(node, key)) {
            if (key_node != NULL)
                *key_node = node;
            return node->next;
        }
    return NULL;
}

TreeNode *tree_item(const TreeNode *list, int index)
{
    TreeNode *node = list->kind == NODE_LIST && index >= 0 ? list->first : NULL;
    while (node != NULL && index-- > 0)
        node = node->next;
    return node;
}

bool tree_is(const TreeNode *scalar, const char *word)
{
    return scalar->kind == NODE_SCALAR && scalar->length == strlen(word) &&
           memcmp(scalar->text, word, scalar->length) == 0;
}

char *tree_copy(Arena *arena, const TreeNode *scalar)
{
    return arena_text(arena, scalar->text, scalar->length);
}
