/*
 * A plan as `datumrow plan` prints it, read back by a reader of its own: what the program says of a wall, and nothing
 * of how it came to say so.
 */
#ifndef TESTS_PROOF_SAID_H
#define TESTS_PROOF_SAID_H

#include "base/text.h"
#include "wall/wall.h"

typedef struct SaidPoint {
    Length x, y;
} SaidPoint;

typedef struct SaidCutout {
    const char *opening, *shape;
    Length left, right, bottom, top;
} SaidCutout;

typedef struct SaidPiece {
    int number, board;
    Length offset, left, right;
    SaidPoint *outline;
    int point_count;
    SaidCutout *cutouts;
    int cutout_count;
    Length *studs;
    int stud_count;
} SaidPiece;

typedef struct SaidSegment {
    Length left, right;
    SaidPiece *pieces;
    int piece_count;
    Stretch *missing;
    int missing_count;
} SaidSegment;

typedef struct SaidCourse {
    int64_t number;
    Length bottom, top;
    const char *shape;
    Length rip_left, rip_right, rip_least, rip_most;
    SaidSegment *segments;
    int segment_count;
} SaidCourse;

typedef struct SaidFace {
    const char *name;
    int64_t net_area;
    SaidCourse *courses;
    int course_count;
} SaidFace;

typedef struct SaidBoard {
    int number;
    const char *label;
    Length length;
    int *pieces;
    int piece_count;
    Length left_over;
} SaidBoard;

typedef struct SaidWarning {
    const char *rule, *grade, *text;
    const char *face, *opening; /* NULL where it has none */
    bool has_course, has_at;
    int64_t course;
    Length at;
    int piece, board; /* 0 where it has none */
} SaidWarning;

typedef struct Said {
    Length *pitch;
    int pitch_count;
    SaidFace *faces;
    int face_count;
    SaidBoard *boards;
    int board_count;
    SaidWarning *warnings;
    int warning_count;
    int64_t courses, pieces, joints, boards_opened, length_opened, length_used, missing;
    bool bound_given;
    Length least_opened; /* `length-least` */
    bool least_opened_given;
    Length bound;
} Said;

/* False, with what it stumbled over in `why`, where that is no plan. */
bool said_read(Arena *arena, const char *text, size_t length, Said *said, Text *why);

#endif
