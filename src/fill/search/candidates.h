/*
 * Candidates for the next piece of a row: a few spans of opened boards, a few boards to open, and what is left of the
 * boards that the row opened itself, chosen by length. For beam.c alone.
 */
#ifndef FILL_SEARCH_CANDIDATES_H
#define FILL_SEARCH_CANDIDATES_H

#include "base/random.h"
#include "fill/supply.h"

typedef enum WoodSource {
    SOURCE_NONE, /* the root, or a bare stretch */
    SOURCE_OPEN, /* span of an opened board */
    SOURCE_NEW,  /* opens a board */
    SOURCE_OWN   /* what is left of a board that this row opened */
} WoodSource;

/* A row of pieces, known by its last one. */
typedef struct Node {
    int parent;
    WoodSource source;
    int id;      /* span, slot, or for SOURCE_OWN the node that opened the board */
    Length left; /* of the span, after the cut */
    Length x;
    Length shortfall;
    int64_t cost;
    int64_t rank;
    bool bare;
} Node;

typedef struct Nodes {
    Node *at;
    int count, room;
} Nodes;

typedef struct Candidate {
    WoodSource source;
    int id;
    Length left, width;
    int64_t price;
} Candidate;

enum { CANDIDATES_MOST = 48 };

typedef struct Candidates {
    Candidate at[CANDIDATES_MOST];
    int count;
} Candidates;

/* The end of a row so far. */
typedef struct Front {
    const Supply *supply;
    const Nodes *nodes;
    int node;     /* the row's last */
    Length rest;  /* from there to the right end of the run */
    Length least; /* length that is worth keeping */
} Front;

/* `random` (may be NULL) draws a few more. */
void candidates_gather(const Front *front, Random *random, Candidates *out);

#endif
