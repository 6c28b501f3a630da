#include "store/keep.h"

#include "base/hash.h"
#include "base/panic.h"
#include "store/align.h"
#include "store/field.h"
#include "store/print.h"
#include "store/reading.h"
#include "store/splice.h"
#include "store/value.h"

#include <string.h>

/*
 * The tree of the old text, the wall as that text reads in the new wall's units, and the new wall are walked side by
 * side, by the table of keys. A value whose text would read as the new value is left as it stands; so a file whose
 * units are changed keeps what says its own unit and gets all else anew.
 */

typedef struct Keep {
    Arena *arena;
    Splice splice;
    Print print;
    Text text; /* of what is being put in */
} Keep;

/* ---- values ---- */

static char *printed(Keep *keep, const FileKey *key, const void *record)
{
    text_clear(&keep->text);
    print_in_line(&keep->print, key, record, &keep->text);
    return arena_text(keep->arena, keep->text.bytes, keep->text.length);
}

static bool says_same(Keep *keep, const FileKey *key, const TreeNode *value, const void *was, const void *now)
{
    return !value->wrong && strcmp(printed(keep, key, was), printed(keep, key, now)) == 0;
}

static bool is_list(const FileKey *key)
{
    return key->kind == VALUE_RECORDS || key->kind == VALUE_HUNG;
}

/* The value anew, in the layout of its surroundings: on lines below its key only in a block, and only where it was so
 * or was nothing. */
static void replace(Keep *keep, const Children *in, const Child *child, const FileKey *key, const void *now)
{
    const TreeNode *value = child->value;
    const bool on_one_line = in->of->flow || value->kind == NODE_SCALAR || (value->flow && value->count > 0);
    if (on_one_line) {
        splice_value(&keep->splice, child, printed(keep, key, now), "");
        return;
    }
    text_clear(&keep->text);
    print_key(&keep->print, key, now, in->indent, &keep->text);
    char *line_end = strstr(keep->text.bytes, keep->print.line_end);
    const char *block = "";
    if (line_end != NULL) {
        *line_end = '\0';
        block = line_end + strlen(keep->print.line_end);
    }
    const char *in_line = keep->text.bytes + strlen(key->name) + 1; /* behind "key:" */
    char *line = arena_text(keep->arena, in_line, strlen(in_line));
    char *lines = arena_text(keep->arena, block, strlen(block));
    splice_value(&keep->splice, child, line[0] == ' ' ? line + 1 : line, lines);
}

/* ---- lists ---- */

static bool keep_record(Keep *keep, const Record *of, TreeNode *mapping, const void *was, const void *now);

static uint64_t name_of(const Record *of, const void *item)
{
    const FileKey *name = record_key(of, "name", 4);
    const char *text = NULL;
    if (name == NULL)
        return 0;
    FIELD_GET(item, name->at, &text);
    return text == NULL ? 1 : hash_bytes(text, strlen(text)) | 1;
}

static uint64_t id_of(const Record *of, const void *item)
{
    uint32_t id = 0;
    if (of->id != NO_FLAG)
        FIELD_GET(item, of->id, &id);
    return id;
}

static uint64_t text_hash(const Text *text)
{
    return hash_bytes(text->bytes, text->length) | 1;
}

static AlignItem align_item(Keep *keep, const Record *of, const void *item)
{
    text_clear(&keep->text);
    print_record_in_line(&keep->print, of, item, &keep->text);
    AlignItem mark = {.text = text_hash(&keep->text), .id = id_of(of, item), .name = name_of(of, item)};
    if (mark.id != 0 || mark.name != 0)
        return mark;
    text_clear(&keep->text);
    for (int i = 0; i < of->count; i++) {
        if (!of->keys[i].required || !value_stands(&of->keys[i], item))
            continue;
        print_in_line(&keep->print, &of->keys[i], item, &keep->text);
        text_put(&keep->text, ",");
        mark.core = text_hash(&keep->text);
        if (mark.first == 0)
            mark.first = mark.core;
    }
    return mark;
}

/* The items of one array of the key, which child of the list each of them as it was is, and from which of them each
 * item now comes (-1: none). */
typedef struct Items {
    const Record *of;
    Array was;
    Array now;
    int *child;
    int *partner;
} Items;

/* In `hung` records of several kinds stand mixed; each kind is counted for itself. */
static Items items_of(Keep *keep, const FileKey *key, const Children *children, int kind, const void *was,
                      const void *now)
{
    const bool hung = key->kind == VALUE_HUNG;
    const size_t at = hung ? key->parts[kind].at : key->at;
    Items items = {
        .of = hung ? key->parts[kind].record : key->record, .was = array_of(was, at), .now = array_of(now, at)};
    items.child = arena_array(keep->arena, int, items.was.count);
    int count = 0;
    for (int i = 0; i < children->count; i++)
        if ((!hung || reading_hung_kind(children->at[i].head) == kind) && count < items.was.count)
            items.child[count++] = i;
    if (count != items.was.count)
        keep->splice.failed = true;
    return items;
}

static const char *item_text(Keep *keep, const Children *children, const Record *of, const void *item)
{
    text_clear(&keep->text);
    if (children->of->flow)
        print_record_in_line(&keep->print, of, item, &keep->text);
    else
        print_item(&keep->print, of, item, children->indent, &keep->text);
    return arena_text(keep->arena, keep->text.bytes, keep->text.length);
}

/* Item `index` now goes on where its partner stood. */
static void keep_item(Keep *keep, const Children *children, const Items *items, int index)
{
    const int partner = items->partner[index];
    const void *now = array_item(&items->now, items->of, index);
    TreeNode *node = children->at[items->child[partner]].head;
    if (node->kind == NODE_MAPPING &&
        keep_record(keep, items->of, node, array_item(&items->was, items->of, partner), now))
        return;
    /* nothing of it stays: the whole of it anew, on one line */
    text_clear(&keep->text);
    print_record_in_line(&keep->print, items->of, now, &keep->text);
    char *text = arena_text(keep->arena, keep->text.bytes, keep->text.length);
    splice_replace(&keep->splice, node->start, node->end, text);
}

static void find_partners(Keep *keep, Children *children, Items *items, int *kept)
{
    AlignItem *was = arena_array(keep->arena, AlignItem, items->was.count);
    AlignItem *now = arena_array(keep->arena, AlignItem, items->now.count);
    items->partner = arena_array(keep->arena, int, items->now.count);
    for (int i = 0; i < items->was.count; i++) {
        was[i] = align_item(keep, items->of, array_item(&items->was, items->of, i));
        children->at[items->child[i]].removed = true;
    }
    for (int i = 0; i < items->now.count; i++)
        now[i] = align_item(keep, items->of, array_item(&items->now, items->of, i));
    align_lists(keep->arena, was, items->was.count, now, items->now.count, items->partner);
    for (int i = 0; i < items->now.count; i++)
        if (items->partner[i] >= 0) {
            children->at[items->child[items->partner[i]]].removed = false;
            (*kept)++;
        }
}

/* Each kind of records of `hung` found its partners for itself; one that would cross those of another kind is taken out
 * and put in anew. */
static void part_crossed(Children *children, Items *items, const void *wall, int *kept)
{
    HungWalk walk = {0};
    int last = -1;
    while (hung_walk(wall, &walk)) {
        int *partner = &items[walk.kind].partner[walk.index];
        if (*partner < 0)
            continue;
        const int child = items[walk.kind].child[*partner];
        if (child > last) {
            last = child;
            continue;
        }
        children->at[child].removed = true;
        *partner = -1;
        (*kept)--;
    }
}

/* False where nothing of the list stays. */
static bool keep_list(Keep *keep, const FileKey *key, TreeNode *list, const void *was, const void *now)
{
    Children children = splice_children(&keep->splice, list);
    const bool hung = key->kind == VALUE_HUNG;
    Items items[HUNG_KINDS] = {0};
    int kept = 0;
    for (int kind = 0; kind < (hung ? HUNG_KINDS : 1); kind++)
        items[kind] = items_of(keep, key, &children, kind, was, now);
    if (keep->splice.failed)
        return true;
    for (int kind = 0; kind < (hung ? HUNG_KINDS : 1); kind++)
        find_partners(keep, &children, &items[kind], &kept);
    if (hung)
        part_crossed(&children, items, now, &kept);
    if (kept == 0)
        return false;
    for (int kind = 0; kind < (hung ? HUNG_KINDS : 1); kind++)
        for (int i = 0; i < items[kind].now.count; i++)
            if (items[kind].partner[i] >= 0)
                keep_item(keep, &children, &items[kind], i);
    /* the rest goes in, each behind the one before it */
    PrintWalk walk = {0};
    const Record *of;
    int last = -1;
    for (const void *item; (item = print_next(key, now, &walk, &of)) != NULL;) {
        const Items *its = &items[hung ? (int)walk.hung.kind : 0];
        const int partner = its->partner[hung ? walk.hung.index : walk.next - 1];
        if (partner >= 0)
            last = its->child[partner];
        else
            splice_insert(&keep->splice, &children, last, item_text(keep, &children, of, item), of->apart);
    }
    splice_remove(&keep->splice, &children);
    return true;
}

/* ---- records ---- */

static void keep_value(Keep *keep, const Children *in, const Child *child, const FileKey *key, const void *was,
                       const void *now)
{
    TreeNode *value = child->value;
    bool stays = false;
    if (key->kind == VALUE_RECORD && value->kind == NODE_MAPPING)
        stays = keep_record(keep, key->record, value, value_inner_const(key, was), value_inner_const(key, now));
    else if (is_list(key) && value->kind == NODE_LIST)
        stays = says_same(keep, key, value, was, now) || keep_list(keep, key, value, was, now);
    else
        stays = says_same(keep, key, value, was, now);
    if (!stays)
        replace(keep, in, child, key, now);
}

/* The child that a new key goes behind: that of the nearest key before it in the table that stays, or -1. */
static int place_for(const Record *of, const Children *children, const FileKey *key)
{
    for (const FileKey *before = key - 1; before >= of->keys; before--)
        for (int i = 0; i < children->count; i++)
            if (!children->at[i].removed && tree_is(children->at[i].head, before->name))
                return i;
    return -1;
}

static const char *key_text(Keep *keep, const Children *children, const FileKey *key, const void *now)
{
    text_clear(&keep->text);
    if (children->of->flow) {
        text_format(&keep->text, "%s: ", key->name);
        print_in_line(&keep->print, key, now, &keep->text);
    } else {
        print_key(&keep->print, key, now, children->indent, &keep->text);
    }
    return arena_text(keep->arena, keep->text.bytes, keep->text.length);
}

/* False where no key of it stays. */
static bool keep_record(Keep *keep, const Record *of, TreeNode *mapping, const void *was, const void *now)
{
    Children children = splice_children(&keep->splice, mapping);
    int kept = 0;
    for (int i = 0; i < children.count; i++) {
        const TreeNode *head = children.at[i].head;
        const FileKey *key = head->kind == NODE_SCALAR ? record_key(of, head->text, head->length) : NULL;
        if (key == NULL) {
            keep->splice.failed = true;
            return true;
        }
        children.at[i].removed = !value_stands(key, now);
        kept += !children.at[i].removed;
    }
    if (kept == 0)
        return children.count == 0 && !print_has_keys(of, now);
    for (int i = 0; i < children.count; i++)
        if (!children.at[i].removed)
            keep_value(keep, &children, &children.at[i],
                       record_key(of, children.at[i].head->text, children.at[i].head->length), was, now);
    for (int i = 0; i < of->count; i++)
        if (print_wants(&of->keys[i], now) && tree_value(mapping, of->keys[i].name, NULL) == NULL)
            splice_insert(&keep->splice, &children, place_for(of, &children, &of->keys[i]),
                          key_text(keep, &children, &of->keys[i], now), false);
    splice_remove(&keep->splice, &children);
    return true;
}

/* ---- the file ---- */

/* What was read anew is what `from` is, whose ids have been in use since. */
static void take_ids(const Record *of, void *record, const void *from)
{
    if (of->id != NO_FLAG)
        memcpy((char *)record + of->id, (const char *)from + of->id, sizeof(uint32_t));
    for (int i = 0; i < of->count; i++) {
        const FileKey *key = &of->keys[i];
        if (key->kind == VALUE_RECORD)
            take_ids(key->record, value_inner(key, record), value_inner_const(key, from));
        if (key->kind != VALUE_RECORDS)
            continue;
        const Array items = array_of(record, key->at);
        const Array from_items = array_of(from, key->at);
        for (int k = 0; k < items.count && k < from_items.count; k++)
            take_ids(key->record, array_item(&items, key->record, k), array_item(&from_items, key->record, k));
    }
}

bool keep_text(const Wall *wall, const Source *source, Text *out)
{
    Arena *arena = arena_new();
    Report report = {.arena = arena, .name = ""};
    bool done = false;
    TreeNode *root = tree_parse(arena, &report, source->text, source->length);
    if (root != NULL && root->kind == NODE_MAPPING && report.errors.count == 0) {
        Keep keep = {.arena = arena, .splice = splice_begin(arena, source->text, source->length)};
        keep.print = (Print){wall->units, keep.splice.line_end};
        Wall *was = reading_wall(arena, &report, root, &wall->units);
        take_ids(&keys_of_file, was, source->wall);
        text_init(&keep.text);
        done = keep_record(&keep, &keys_of_file, root, was, wall) && splice_finish(&keep.splice, out);
        text_finish(&keep.text);
    }
    arena_free(arena);
    return done;
}

bool keep_reads_as(const Wall *wall, const char *text, size_t length)
{
    Arena *arena = arena_new();
    Report report = {.arena = arena, .name = ""};
    TreeNode *root = tree_parse(arena, &report, text, length);
    const bool same = root != NULL && root->kind == NODE_MAPPING &&
                      wall_equal(wall, reading_wall(arena, &report, root, NULL)) && report.errors.count == 0;
    arena_free(arena);
    return same;
}
