/* What the parts of the proof share. */
#ifndef TESTS_PROOF_PROVING_H
#define TESTS_PROOF_PROVING_H

#include "proof/ground.h"
#include "proof/said.h"

typedef struct Proving {
    Arena *arena;
    const Wall *wall;
    const Said *said;
    Text *why;
    int failed; /* claims that do not hold */
} Proving;

enum { FAILED_MOST = 5 }; /* so many are told */

__attribute__((format(printf, 3, 4))) void claim(Proving *proving, bool holds, const char *format, ...);

/* A record of the wall says that the piece hangs there. */
bool proving_hangs(const Proving *proving, const char *face, int64_t course, const SaidSegment *segment,
                   const SaidPiece *piece);

/* A piece on its board: what the blade takes at its ends, and what is kept over beyond its right end. */
typedef struct SaidCut {
    const SaidPiece *piece;
    const SaidSegment *segment;
    const SaidCourse *course;
    const SaidFace *face;
    int face_index;
    bool hangs;
    Length kerfs[2]; /* at its left and right end; the saw's own where `unclear` */
    bool unclear;    /* an end that more than one line bounds: what the blade takes there is not proved */
    bool closes;     /* its segment */
} SaidCut;

/* Fills in kerfs, unclear and closes; the rest is there. */
void prove_ends(Proving *proving, SaidCut *cut);

/* Whether anything happened to the plan after it was printed: something is recorded, or a board is gone or found. What
 * did not change then keeps its number. */
bool proving_happened(const Proving *proving);

/* The stock line of a board, by its number; NULL where there is none. */
const Stock *proving_stock(const Proving *proving, int board);

/* Bands, segments, outlines, cutouts, areas. */
void prove_faces(Proving *proving);

/* Pieces on segments: joints, rules, breaks; what is told of them. */
void prove_rules(Proving *proving);

/* Pieces on boards: squared ends, kerfs, avoided stretches, widths, left-overs. */
void prove_boards(Proving *proving);

/* Numbers in hanging order, totals. */
void prove_numbers(Proving *proving);

#endif
