#include "store/splice.h"

#include "base/panic.h"

#include <stdlib.h>
#include <string.h>

/*
 *      # about the first two          <- above(a): heads a and b, since a blank line comes before c
 *      - {length: 52}   # note        <- line(a) = start(a); behind(a) is the start of the next line
 *      - {length: 60}
 *
 *      - {length: 72}                 <- c
 *
 * New lines go in at `behind` of a child or `above` of the first, removed ones go from `line` or `above` to `behind`:
 * whole lines, so that changes beside each other never overlap. In a flow the commas take the place of the lines.
 */

Splice splice_begin(Arena *arena, const char *text, size_t length)
{
    const char *first = memchr(text, '\n', length);
    const bool crlf = first != NULL && first > text && first[-1] == '\r';
    return (Splice){.arena = arena, .text = text, .length = length, .line_end = crlf ? "\r\n" : "\n"};
}

/* ---- lines ---- */

static size_t line_start(const Splice *splice, size_t at)
{
    while (at > 0 && splice->text[at - 1] != '\n')
        at--;
    return at;
}

/* Start of the line behind the one that `at` is in, or the end of the text. */
static size_t next_line(const Splice *splice, size_t at)
{
    while (at < splice->length && splice->text[at] != '\n')
        at++;
    return at < splice->length ? at + 1 : at;
}

static size_t skip_blanks(const Splice *splice, size_t at)
{
    while (at < splice->length && splice->text[at] == ' ')
        at++;
    return at;
}

static bool is_blank_line(const Splice *splice, size_t start)
{
    const size_t at = skip_blanks(splice, start);
    return at >= splice->length || splice->text[at] == '\n' || splice->text[at] == '\r';
}

/* The start of the comment lines right above the line at `line` that are indented as far. */
static size_t comment_above(const Splice *splice, size_t line, size_t indent)
{
    while (line > 0) {
        const size_t before = line_start(splice, line - 1);
        const size_t at = skip_blanks(splice, before);
        if (at - before != indent || at >= splice->length || splice->text[at] != '#')
            break;
        line = before;
    }
    return line;
}

/* ---- children ---- */

/* The dash of an item of a block list: at the list's column, in the item's line or one above. */
static size_t find_dash(Splice *splice, const TreeNode *list, const TreeNode *item)
{
    const size_t column = (size_t)list->column - 1;
    for (size_t line = line_start(splice, item->start);; line = line_start(splice, line - 1)) {
        const size_t at = line + column;
        bool leads = at < splice->length && splice->text[at] == '-';
        for (size_t i = line; i < at && leads; i++)
            leads = splice->text[i] == ' ' || splice->text[i] == '-';
        if (leads)
            return at;
        if (line == 0) {
            splice->failed = true;
            return item->start;
        }
    }
}

Children splice_children(Splice *splice, const TreeNode *collection)
{
    const bool mapping = collection->kind == NODE_MAPPING;
    Children children = {
        .of = collection, .at = arena_array(splice->arena, Child, collection->count), .indent = collection->column - 1};
    for (TreeNode *head = collection->first; head != NULL;) {
        Child *child = &children.at[children.count++];
        child->head = head;
        child->value = mapping ? head->next : head;
        head = child->value->next;
        child->start = mapping || collection->flow ? child->head->start : find_dash(splice, collection, child->head);
        child->line = line_start(splice, child->start);
        child->first_in_line = skip_blanks(splice, child->line) == child->start;
        child->above =
            child->first_in_line ? comment_above(splice, child->line, child->start - child->line) : child->line;
        child->behind = next_line(splice, child->value->end);
    }
    return children;
}

/* ---- edits ---- */

void splice_replace(Splice *splice, size_t start, size_t end, const char *text)
{
    const size_t length = strlen(text);
    *arena_push(splice->arena, &splice->edits) =
        (Edit){.start = start, .end = end, .text = arena_text(splice->arena, text, length), .length = length};
}

/* Puts whole lines (text without the last line's end) in at the start of a line. */
static void insert_lines(Splice *splice, size_t at, const char *text)
{
    const bool at_unfinished_end = at == splice->length && at > 0 && splice->text[at - 1] != '\n';
    Text lines;
    text_init(&lines);
    text_format(&lines, "%s%s%s", at_unfinished_end ? splice->line_end : "", text,
                at_unfinished_end ? "" : splice->line_end);
    splice_replace(splice, at, at, lines.bytes);
    text_finish(&lines);
}

static size_t behind_colon(const Splice *splice, const Child *child)
{
    size_t at = child->head->end;
    while (at < splice->length && splice->text[at] != ':')
        at++;
    return at < splice->length ? at + 1 : at;
}

/* A value on one line in place of another. A comment that stands apart behind it, in a column, stays there where there
 * is room. */
static void replace_in_line(Splice *splice, const TreeNode *value, const char *in_line)
{
    const size_t comment = skip_blanks(splice, value->end);
    const size_t blanks = comment - value->end;
    const size_t before = value->end - value->start;
    const size_t now = strlen(in_line);
    if (blanks < 2 || comment >= splice->length || splice->text[comment] != '#') {
        splice_replace(splice, value->start, value->end, in_line);
        return;
    }
    Text text;
    text_init(&text);
    text_put(&text, in_line);
    text_put_times(&text, ' ', before + blanks > now ? (int)(before + blanks - now) : 1);
    splice_replace(splice, value->start, comment, text.bytes);
    text_finish(&text);
}

void splice_value(Splice *splice, const Child *child, const char *in_line, const char *block)
{
    const TreeNode *value = child->value;
    const bool was_block = value->kind != NODE_SCALAR && !value->flow;
    const size_t colon = behind_colon(splice, child);
    Text text;
    text_init(&text);
    text_format(&text, "%s%s", in_line[0] == '\0' ? "" : " ", in_line);
    if (was_block) {
        /* the lines of the old value go, from the one behind the key to its last */
        splice_replace(splice, colon, colon, text.bytes);
        if (block[0] != '\0')
            insert_lines(splice, next_line(splice, colon), block);
        splice_replace(splice, next_line(splice, colon), child->behind, "");
    } else if (in_line[0] != '\0') {
        replace_in_line(splice, value, in_line);
    } else {
        splice_replace(splice, colon, value->end, "");
        insert_lines(splice, child->behind, block);
    }
    text_finish(&text);
}

/* ---- taking out ---- */

static int first_kept(const Children *children)
{
    for (int i = 0; i < children->count; i++)
        if (!children->at[i].removed)
            return i;
    panic(__FILE__, __LINE__, "a collection of which nothing stays is replaced as a whole");
}

static void remove_from_flow(Splice *splice, const Children *children)
{
    const int kept = first_kept(children);
    for (int i = 0; i < children->count; i++) {
        const Child *child = &children->at[i];
        if (!child->removed)
            continue;
        if (i < kept)
            splice_replace(splice, child->start, child[1].start, "");
        else
            splice_replace(splice, child[-1].value->end, child->value->end, "");
    }
}

/* A child that begins a group: a comment or a blank line stands above it. */
static bool begins_group(const Splice *splice, const Child *child)
{
    return child->above != child->line ||
           (child->line > 0 && is_blank_line(splice, line_start(splice, child->line - 1)));
}

/* The child and all that the comment above it heads are removed. */
static bool group_goes(const Splice *splice, const Children *children, int first)
{
    for (int i = first; i < children->count && (i == first || !begins_group(splice, &children->at[i])); i++)
        if (!children->at[i].removed)
            return false;
    return true;
}

static void remove_lines(Splice *splice, const Children *children, int index)
{
    const Child *child = &children->at[index];
    size_t start = group_goes(splice, children, index) ? child->above : child->line;
    const size_t end = child->behind;
    /* not two blank lines where one was on either side */
    const size_t before = start == 0 ? 0 : line_start(splice, start - 1);
    if (start > 0 && is_blank_line(splice, before) && is_blank_line(splice, end) &&
        (index == 0 || before >= children->at[index - 1].behind))
        start = before;
    splice_replace(splice, start, end, "");
}

static void remove_from_block(Splice *splice, const Children *children)
{
    const int kept = first_kept(children);
    for (int i = 0; i < children->count; i++) {
        const Child *child = &children->at[i];
        if (!child->removed)
            continue;
        if (child->first_in_line) {
            remove_lines(splice, children, i);
        } else if (i == 0) {
            /* the first key behind a dash: what stays moves up to the dash */
            splice_replace(splice, child->start, children->at[kept].start, "");
            i = kept;
        } else {
            splice->failed = true;
        }
    }
}

void splice_remove(Splice *splice, const Children *children)
{
    bool any = false;
    for (int i = 0; i < children->count; i++)
        any |= children->at[i].removed;
    if (!any)
        return;
    if (children->of->flow)
        remove_from_flow(splice, children);
    else
        remove_from_block(splice, children);
}

/* ---- putting in ---- */

void splice_insert(Splice *splice, const Children *children, int after, const char *text, bool apart)
{
    const Child *child = &children->at[after < 0 ? first_kept(children) : after];
    Text in;
    text_init(&in);
    if (children->of->flow) {
        text_format(&in, after < 0 ? "%s, " : ", %s", text);
        const size_t at = after < 0 ? child->start : child->value->end;
        splice_replace(splice, at, at, in.bytes);
    } else if (after >= 0 || child->first_in_line) {
        if (apart && after >= 0)
            text_put(&in, splice->line_end);
        text_put_times(&in, ' ', children->indent);
        text_put(&in, text);
        if (apart && after < 0)
            text_put(&in, splice->line_end);
        insert_lines(splice, after < 0 ? child->above : child->behind, in.bytes);
    } else {
        text_format(&in, "%s%s", text, splice->line_end);
        text_put_times(&in, ' ', children->indent);
        splice_replace(splice, child->start, child->start, in.bytes);
    }
    text_finish(&in);
}

/* ---- all together ---- */

typedef struct Sorted {
    const Edit *edit;
    int order;
} Sorted;

/* By place; at one place what only puts something in comes first, in the order in which it was asked for. */
static int compare(const void *a, const void *b)
{
    const Sorted *p = a;
    const Sorted *q = b;
    if (p->edit->start != q->edit->start)
        return p->edit->start < q->edit->start ? -1 : 1;
    const bool p_puts = p->edit->end == p->edit->start;
    const bool q_puts = q->edit->end == q->edit->start;
    return p_puts != q_puts ? (p_puts ? -1 : 1) : p->order - q->order;
}

bool splice_finish(const Splice *splice, Text *out)
{
    const int count = splice->edits.count;
    Sorted *sorted = arena_array(splice->arena, Sorted, count);
    if (splice->failed)
        return false;
    for (int i = 0; i < count; i++)
        sorted[i] = (Sorted){&splice->edits.at[i], i};
    if (count > 1)
        qsort(sorted, (size_t)count, sizeof *sorted, compare);
    size_t at = 0;
    text_clear(out);
    for (int i = 0; i < count; i++) {
        const Edit *edit = sorted[i].edit;
        if (edit->start < at || edit->end < edit->start || edit->end > splice->length)
            return false;
        text_put_bytes(out, splice->text + at, edit->start - at);
        text_put_bytes(out, edit->text, edit->length);
        at = edit->end;
    }
    text_put_bytes(out, splice->text + at, splice->length - at);
    return true;
}
