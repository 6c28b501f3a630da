/*
 * Changes to the text of a file that somebody wrote: a value replaced, an item or key put in or taken out, all else
 * left byte for byte. It knows how YAML lays out collections, whose comment a comment is, and nothing of keys.
 */
#ifndef STORE_SPLICE_H
#define STORE_SPLICE_H

#include "base/text.h"
#include "store/tree.h"

typedef struct Edit {
    size_t start, end; /* bytes of the source that go */
    char *text;        /* what comes in their place */
    size_t length;
} Edit;

typedef struct Edits {
    Edit *at;
    int count;
    int room;
} Edits;

typedef struct Splice {
    Arena *arena;
    const char *text;
    size_t length;
    const char *line_end; /* of the source: "\n" or "\r\n" */
    Edits edits;
    bool failed; /* the text is laid out in a way that cannot be edited here */
} Splice;

Splice splice_begin(Arena *arena, const char *text, size_t length);

/* Every change made, in the order of the text. False where two of them overlap or one failed; `out` is then of no use.
 */
bool splice_finish(const Splice *splice, Text *out);

/* One key with its value, or one item. */
typedef struct Child {
    TreeNode *head;  /* key or item */
    TreeNode *value; /* of a key its value; of an item the item itself */
    size_t start;    /* of the key, or of the item's dash; in a flow of the item */
    size_t line;     /* where its line starts */
    size_t above;    /* where the comment right above it starts; `line` where there is none */
    size_t behind;   /* where the line behind its last one starts; the end of the text where there is none */
    bool first_in_line;
    bool removed; /* to be taken out */
} Child;

typedef struct Children {
    const TreeNode *of;
    Child *at;
    int count;
    int indent; /* blanks before a key or dash of a block */
} Children;

Children splice_children(Splice *splice, const TreeNode *collection);

/* Puts `text` in place of bytes. */
void splice_replace(Splice *splice, size_t start, size_t end, const char *text);

/* Puts another value behind a key, which stays: what stood on the key's line behind the value stays there too. `block`
 * (may be "") are lines that follow the key's line, `in_line` what stands on it behind the colon. */
void splice_value(Splice *splice, const Child *child, const char *in_line, const char *block);

/* Takes out the children that are marked removed, of which not all are. A comment above a child heads all down to the
 * next comment or blank line, and goes when the last of them goes. */
void splice_remove(Splice *splice, const Children *children);

/* Puts a new key or item behind child `after` that stays, or with -1 before the first that stays. In a block `text` may
 * have several lines, all but the first indented; `apart` puts a blank line between it and its neighbour. */
void splice_insert(Splice *splice, const Children *children, int after, const char *text, bool apart);

#endif
