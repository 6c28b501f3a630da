#include "store/reading.h"

#include "base/file.h"
#include "base/hash.h"
#include "base/nearest.h"
#include "base/panic.h"
#include "store/field.h"
#include "store/value.h"
#include "wall/check.h"

#include <stdlib.h>
#include <string.h>

/*
 * A record is read key by key as the mapping has them, not as the table has them, so that errors rise with the file. A
 * slip is told once: what could not be read is marked wrong up to the root, and of wall_check's problems only those are
 * told whose own record is whole.
 */

enum { KEYS_MOST = 32, NAMES_MOST = 400 };

typedef struct Reading {
    Arena *arena;
    Report *report;
    Units units;
    Wall *wall;
} Reading;

__attribute__((format(printf, 4, 5))) static void wrong(Reading *reading, TreeNode *node, ErrKind kind,
                                                        const char *format, ...)
{
    Text text;
    va_list list;
    text_init(&text);
    va_start(list, format);
    text_format_list(&text, format, list);
    va_end(list);
    if (!node->wrong) /* what was told of a node already is not told in other words */
        report_error(reading->report, kind, node->line, node->column, "%s", text.bytes);
    node->wrong = true;
    text_finish(&text);
}

static bool is_nothing(const TreeNode *node)
{
    return node->kind == NODE_SCALAR && node->length == 0 && !node->quoted;
}

static const char *kind_found(const TreeNode *node)
{
    switch (node->kind) {
    case NODE_SCALAR: return is_nothing(node) ? "nothing behind it" : "a single value";
    case NODE_MAPPING: return "a mapping";
    case NODE_LIST: return "a list";
    }
    return "";
}

static bool is_scalar(ValueKind kind)
{
    return kind != VALUE_RECORD && kind != VALUE_RECORDS && kind != VALUE_HUNG && kind != VALUE_WIDTHS &&
           kind != VALUE_LENGTHS;
}

static const char *kind_wanted(const FileKey *key)
{
    switch (key->kind) {
    case VALUE_RECORD: return "keys of its own, indented below it or in { }";
    case VALUE_RECORDS:
    case VALUE_HUNG: return "a list, each item behind a `-`, or [] for none";
    case VALUE_WIDTHS: return "a length, or a list of them in [ ]";
    case VALUE_LENGTHS: return "a list of lengths in [ ]";
    case VALUE_TEXT: return "a text on one line";
    case VALUE_WORD:
    case VALUE_ONE_WORD:
    case VALUE_UNITS: return "a single word";
    case VALUE_LENGTH:
    case VALUE_LENGTH_OR_WORD: return "a single length";
    case VALUE_VERSION:
    case VALUE_COUNT:
    case VALUE_WHOLE:
    case VALUE_TEMPERATURE:
    case VALUE_PERCENT:
    case VALUE_PERCENT_OR_WORD:
    case VALUE_NUMBER: return "a single number";
    }
    return "";
}

static void wrong_kind(Reading *reading, const FileKey *key, TreeNode *node)
{
    wrong(reading, node, ERR_INPUT, "`%s` has %s; write %s", key->name, kind_found(node), kind_wanted(key));
}

static void read_record(Reading *reading, const Record *record, TreeNode *mapping, void *into);

static void read_scalar(Reading *reading, const FileKey *key, TreeNode *node, void *into)
{
    Err err;
    if (node->kind != NODE_SCALAR || is_nothing(node))
        wrong_kind(reading, key, node);
    else if (!node->wrong && !value_read(reading->arena, key, node->text, node->length, reading->units, into, &err))
        wrong(reading, node, err.kind, "%s: %s", key->name, err.text);
}

static void read_lengths(Reading *reading, const FileKey *key, TreeNode *node, void *into)
{
    if (node->kind == NODE_SCALAR && key->kind == VALUE_WIDTHS) {
        read_scalar(reading, key, node, into);
        return;
    }
    if (node->kind != NODE_LIST) {
        wrong_kind(reading, key, node);
        return;
    }
    for (TreeNode *item = node->first; item != NULL; item = item->next) {
        if (item->kind == NODE_SCALAR && !is_nothing(item))
            read_scalar(reading, key, item, into);
        else
            wrong(reading, item, ERR_INPUT, "%s stands in the list of `%s`; write a single length there",
                  is_nothing(item) ? "nothing" : kind_found(item), key->name);
        node->wrong |= item->wrong;
    }
}

static void set_id(Reading *reading, const Record *record, void *into)
{
    if (record->id == NO_FLAG)
        return;
    const uint32_t id = reading->wall->next_id++;
    FIELD_PUT(into, record->id, &id);
}

static void read_records(Reading *reading, const FileKey *key, TreeNode *node, void *into)
{
    if (node->kind != NODE_LIST) {
        wrong_kind(reading, key, node);
        return;
    }
    int place = 0;
    for (TreeNode *item = node->first; item != NULL; item = item->next) {
        const ListPart *part = key->kind == VALUE_HUNG ? &key->parts[reading_hung_kind(item)] : NULL;
        const Record *record = part != NULL ? part->record : key->record;
        void *element = array_push(reading->arena, into, part != NULL ? part->at : key->at, record->size);
        set_id(reading, record, element);
        if (part != NULL)
            FIELD_PUT(element, part->place, &place);
        place++;
        read_record(reading, record, item, element);
        node->wrong |= item->wrong;
    }
}

static void read_key(Reading *reading, const FileKey *key, TreeNode *node, void *into)
{
    if (is_scalar(key->kind))
        read_scalar(reading, key, node, into);
    else if (key->kind == VALUE_WIDTHS || key->kind == VALUE_LENGTHS)
        read_lengths(reading, key, node, into);
    else if (key->kind == VALUE_RECORD && node->kind == NODE_MAPPING)
        read_record(reading, key->record, node, value_inner(key, into));
    else if (key->kind == VALUE_RECORD)
        wrong_kind(reading, key, node);
    else
        read_records(reading, key, node, into);
    value_mark_given(key, into);
}

/* ---- a record ---- */

/* A key that is none of the record's; returns the one that was meant, if that can be told, else NULL. */
static const FileKey *wrong_unknown(Reading *reading, const Record *record, TreeNode *name)
{
    const char *known[KEYS_MOST];
    BUG_UNLESS(record->count <= KEYS_MOST);
    for (int i = 0; i < record->count; i++)
        known[i] = record->keys[i].name;
    const char *word = tree_copy(reading->arena, name);
    const char *renamed = keys_renamed(word);
    const FileKey *now = renamed == NULL ? NULL : record_key(record, renamed, strlen(renamed));
    if (now != NULL) {
        wrong(reading, name, ERR_INPUT, "`%s` is written `%s` now; write `%s: ...`", word, renamed, renamed);
        return now;
    }
    const int near = nearest_word(word, known, record->count);
    if (near >= 0) {
        wrong(reading, name, ERR_INPUT, "there is no key \"%.64s\" in %s; did you mean `%s`?", word, record->what,
              known[near]);
        return &record->keys[near];
    }
    const char *colon = strchr(word, ':');
    const FileKey *meant = colon == NULL ? NULL : record_key(record, word, (size_t)(colon - word));
    if (meant != NULL) {
        wrong(reading, name, ERR_INPUT, "\"%.64s\" has no blank behind its colon; write `%.*s: %.40s`", word,
              (int)(colon - word), word, colon + 1);
        return meant;
    }
    Text names;
    text_init(&names);
    for (int i = 0; i < record->count && names.length < NAMES_MOST; i++)
        text_format(&names, "%s%s", i == 0 ? "" : ", ", known[i]);
    wrong(reading, name, ERR_INPUT, "there is no key \"%.64s\" in %s; its keys are: %s", word, record->what,
          names.bytes);
    text_finish(&names);
    return NULL;
}

/* Of a word all that it may be is told, of anything else what it is. */
static void report_missing(Reading *reading, const Record *record, const FileKey *key, const TreeNode *mapping)
{
    Text meant;
    text_init(&meant);
    if (key->kind == VALUE_WORD || key->kind == VALUE_ONE_WORD || key->kind == VALUE_UNITS) {
        text_format(&meant, "`%s: ...` with ", key->name);
        value_list_words(key->words, &meant);
    } else {
        text_format(&meant, "it: %s", key->says);
    }
    report_error(reading->report, ERR_INPUT, mapping->line, mapping->column, "`%s` is missing in %s; write %s",
                 key->name, record->what, meant.bytes);
    text_finish(&meant);
}

/* Keys that are missing, or that stand beside the one they stand in for. */
static void check_presence(Reading *reading, const Record *record, TreeNode *mapping, TreeNode *const seen[],
                           const bool meant[])
{
    for (int i = 0; i < record->count; i++) {
        const FileKey *key = &record->keys[i];
        const FileKey *instead = key->instead == NULL ? NULL : record_key(record, key->instead, strlen(key->instead));
        TreeNode *other = instead == NULL ? NULL : seen[instead - record->keys];
        if (seen[i] != NULL && other != NULL && seen[i]->line >= other->line &&
            (seen[i]->line > other->line || seen[i]->column > other->column))
            wrong(reading, seen[i], ERR_INPUT, "`%s` and `%s` both stand in %s; keep one of the two", instead->name,
                  key->name, record->what);
        if (seen[i] != NULL || other != NULL || meant[i] || !key->required)
            continue;
        report_missing(reading, record, key, mapping);
        mapping->wrong = true;
    }
}

static void read_record(Reading *reading, const Record *record, TreeNode *mapping, void *into)
{
    TreeNode *seen[KEYS_MOST] = {NULL};
    bool meant[KEYS_MOST] = {false}; /* by a key that is misspelt, and told */
    for (int i = 0; i < record->count; i++)
        value_default(reading->arena, &record->keys[i], into);
    if (mapping->kind == NODE_LIST) {
        wrong(reading, mapping, ERR_INPUT,
              "a list stands where %s is wanted; take one `-` or one pair of [ ] away, so that its keys stand there, "
              "like "
              "`%s: ...`",
              record->what, record->keys[0].name);
        return;
    }
    if (mapping->kind != NODE_MAPPING) {
        wrong(reading, mapping, ERR_INPUT, "%s stands where %s is wanted; write its keys, like `%s: ...`",
              kind_found(mapping), record->what, record->keys[0].name);
        return;
    }
    for (TreeNode *name = mapping->first; name != NULL && name->next != NULL; name = name->next->next) {
        TreeNode *value = name->next;
        if (name->kind != NODE_SCALAR) {
            wrong(reading, name, ERR_INPUT, "%s stands where a key is wanted; write a word and a colon",
                  kind_found(name));
            mapping->wrong = true;
            continue;
        }
        const FileKey *key = record_key(record, name->text, name->length);
        if (key == NULL) {
            const FileKey *near = wrong_unknown(reading, record, name);
            if (near != NULL)
                meant[near - record->keys] = true;
        } else if (seen[key - record->keys] != NULL) {
            wrong(reading, name, ERR_INPUT, "`%s` stands in %s twice, first in line %d; keep one", key->name,
                  record->what, seen[key - record->keys]->line);
        } else {
            seen[key - record->keys] = name;
            read_key(reading, key, value, into);
        }
        mapping->wrong |= name->wrong || value->wrong;
        if (report_is_full(reading->report))
            return;
    }
    check_presence(reading, record, mapping, seen, meant);
    for (int i = 0; i < record->count; i++)
        mapping->wrong |= seen[i] != NULL && seen[i]->wrong;
}

int reading_hung_kind(const TreeNode *item)
{
    if (item->kind != NODE_MAPPING)
        return HUNG_PIECE;
    const TreeNode *state = tree_value(item, "state", NULL);
    if (tree_value(item, "top", NULL) != NULL || tree_value(item, "bottom", NULL) != NULL)
        return HUNG_EDGE;
    return state != NULL && tree_is(state, "lost") ? HUNG_LOSS : HUNG_PIECE;
}

/* What bare lengths are in has to be known before the first is read, wherever `units` stands. */
static Units find_units(const TreeNode *root)
{
    const TreeNode *units = root->kind == NODE_MAPPING ? tree_value(root, "units", NULL) : NULL;
    return units != NULL && tree_is(units, "mm") ? UNITS_MM : UNITS_IN;
}

Wall *reading_wall(Arena *arena, Report *report, TreeNode *root, const Units *units)
{
    const Units in_file = find_units(root);
    Wall *wall = wall_new(arena, in_file);
    Reading reading = {.arena = arena, .report = report, .units = units == NULL ? in_file : *units, .wall = wall};
    read_record(&reading, &keys_of_file, root, wall);
    if (!wall->round_given)
        wall->round = wall_default_round(wall->units);
    return wall;
}

/* ---- problems of the whole ---- */

/* The next step of a path: its key and, where it has one, its index (else -1). */
static const char *next_step(const char *path, char *key, size_t size, int *index)
{
    const size_t length = strcspn(path, ".[");
    BUG_UNLESS(length < size);
    memcpy(key, path, length);
    key[length] = '\0';
    path += length;
    *index = -1;
    if (*path == '[') {
        *index = (int)strtol(path + 1, NULL, 10);
        path = strchr(path, ']') + 1;
    }
    return *path == '.' ? path + 1 : path;
}

/* wall_check counts each kind of records of `hung` for itself; the file has them in one list. */
static const TreeNode *hung_item(const TreeNode *list, int kind, int index)
{
    const TreeNode *item = list->kind == NODE_LIST ? list->first : NULL;
    for (; item != NULL; item = item->next)
        if (item->kind == NODE_MAPPING && reading_hung_kind(item) == kind && index-- == 0)
            return item;
    return NULL;
}

/* The node nearest to a field path of wall_check, and in `record` (may be NULL) the mapping that the field is of. */
static const TreeNode *node_of_path(const TreeNode *root, const char *path, const TreeNode **record)
{
    const TreeNode *node = root;
    const TreeNode *within = root;
    bool in_hung = false;
    while (*path != '\0' && node != NULL && node->kind != NODE_SCALAR) {
        char key[64];
        int index;
        path = next_step(path, key, sizeof key, &index);
        const TreeNode *below = NULL;
        if (in_hung) {
            below = hung_item(node,
                              strcmp(key, "edges") == 0    ? HUNG_EDGE
                              : strcmp(key, "losses") == 0 ? HUNG_LOSS
                                                           : HUNG_PIECE,
                              index);
            in_hung = false;
        } else if (node->kind == NODE_MAPPING) {
            within = node;
            below = tree_value(node, key, NULL);
            in_hung = node == root && strcmp(key, "hung") == 0;
            if (below != NULL && index >= 0 && below->kind == NODE_LIST && tree_item(below, index) != NULL)
                below = tree_item(below, index);
        }
        if (below == NULL)
            break;
        node = below;
    }
    if (record != NULL)
        *record = within;
    return node;
}

/* A problem may follow from a slip that was told already: in the same record, or, of a field at the top of the file, in
 * that field. A record of what hangs also needs the faces. */
static bool follows_from_slip(const TreeNode *root, const char *path, const TreeNode *place, const TreeNode *record)
{
    if (!root->wrong)
        return false;
    if (record == root)
        return place == root || place->wrong;
    const TreeNode *faces = strncmp(path, "hung", 4) == 0 ? tree_value(root, "faces", NULL) : record;
    return record->wrong || faces == NULL || faces->wrong;
}

static void check_whole(Arena *arena, Report *report, const TreeNode *root, const Wall *wall)
{
    const TreeNode *units = root->kind == NODE_MAPPING ? tree_value(root, "units", NULL) : NULL;
    if (units == NULL || units->wrong)
        return;
    const Problems problems = wall_check(arena, wall);
    for (int i = 0; i < problems.count && !report_is_full(report); i++) {
        const Problem *problem = &problems.at[i];
        const TreeNode *record;
        const TreeNode *place = node_of_path(root, problem->path, &record);
        if (!follows_from_slip(root, problem->path, place, record))
            report_error(report, ERR_VALUE, place->line, place->column, "%s", problem->text);
    }
}

/* ---- the whole file ---- */

bool store_parse(Arena *arena, const char *name, const char *text, size_t length, Source *out, Errs *errs)
{
    Report report = {.arena = arena, .name = name};
    char *kept = length <= STORE_FILE_MOST ? arena_text(arena, text, length) : NULL;
    TreeNode *root = tree_parse(arena, &report, kept, length);
    Wall *wall = NULL;
    if (root != NULL) {
        if (root->kind == NODE_MAPPING) {
            wall = reading_wall(arena, &report, root, NULL);
            check_whole(arena, &report, root, wall);
        } else {
            report_error(&report, ERR_INPUT, root->line, root->column,
                         "this is no wall file; one begins with the lines datumrow: 1 and units: in");
        }
    }
    if (report.errors.count > 0) {
        report_finish(&report, errs);
        return false;
    }
    BUG_UNLESS(wall != NULL);
    *out = (Source){.wall = wall, .text = kept, .length = length, .hash = hash_bytes(kept, length)};
    return true;
}

void store_locate(const Source *source, const char *name, Err *err)
{
    if (err->place[0] == '\0' || err->line > 0)
        return;
    Arena *arena = arena_new();
    Report report = {.arena = arena, .name = name};
    TreeNode *root = tree_parse(arena, &report, arena_text(arena, source->text, source->length), source->length);
    if (root != NULL) {
        const TreeNode *node = node_of_path(root, err->place, NULL);
        err_at(err, strcmp(name, "-") == 0 ? "standard input" : name, node->line, node->column);
    }
    arena_free(arena);
}

bool store_read(Arena *arena, const char *path, Source *out, Errs *errs)
{
    Text text;
    Err err;
    text_init(&text);
    bool done = file_read(path, STORE_FILE_MOST, &text, &err);
    if (done) {
        done = store_parse(arena, strcmp(path, "-") == 0 ? "standard input" : path, text.bytes, text.length, out, errs);
    } else {
        *errs = (Errs){0};
        *arena_push(arena, errs) = err;
    }
    text_finish(&text);
    return done;
}
