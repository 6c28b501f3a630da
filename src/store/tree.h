/*
 * A YAML file as a tree of scalars, mappings and lists, each with its place and its bytes in the source. The ground
 * rules of datumrow(5) that concern no key are held here: text in UTF-8, one document, no anchors, aliases or tags, so
 * much nesting. It knows no key and no value; it alone includes yaml.h.
 */
#ifndef STORE_TREE_H
#define STORE_TREE_H

#include "store/report.h"

typedef enum NodeKind { NODE_SCALAR, NODE_MAPPING, NODE_LIST } NodeKind;

typedef struct TreeNode TreeNode;

struct TreeNode {
    NodeKind kind;
    bool flow;   /* a mapping in { } or a list in [ ] */
    bool quoted; /* a scalar in quotes, or a block of text */
    bool wrong;  /* an error was told of it or of something in it */
    int line;    /* from 1 */
    int column;  /* from 1, in characters */
    /* Bytes of the source, `end` behind the last: of a scalar with its quotes, of a flow collection with its brackets;
     * of a block collection from its first key or item to the end of its last. */
    size_t start, end;
    const char *text; /* of a scalar, its value; `length` bytes, which may hold NUL; no NUL behind */
    size_t length;
    int count;       /* of a mapping its keys, of a list its items */
    TreeNode *first; /* of a mapping key, value, key, value, ...; of a list the items */
    TreeNode *next;  /* behind this one in its parent */
};

/* The tree of text[0..length), which has to outlive it. NULL where there is none to be had; then, and for each slip
 * that the tree could be built in spite of, there is an error in `report`. */
TreeNode *tree_parse(Arena *arena, Report *report, const char *text, size_t length);

/* The value of a mapping's key, or NULL; with `key_node` (may be NULL) the node of the key. */
TreeNode *tree_value(const TreeNode *mapping, const char *key, TreeNode **key_node);

/* Item `index` of a list, or NULL. */
TreeNode *tree_item(const TreeNode *list, int index);

/* A scalar's value is this word. */
bool tree_is(const TreeNode *scalar, const char *word);

/* A scalar's value with a NUL behind; bytes after a NUL within it are lost. */
char *tree_copy(Arena *arena, const TreeNode *scalar);

#endif
