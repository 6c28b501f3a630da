/*
 * The document: one wall as it was measured and chosen, and what has been hung. It holds what the wall file holds and
 * nothing computed. Every length is in nanometres, x runs right from a face's left end, y up from the level line. A
 * Wall is a value in one arena: outside `wall/` it is only ever `const`; it is changed through the named functions of
 * `wall/edit.h`, which build a new one. It knows nothing of files, courses or boards cut.
 */
#ifndef WALL_WALL_H
#define WALL_WALL_H

#include "base/arena.h"
#include "base/wide.h"
#include "length/length.h"

#include <stdbool.h>
#include <stdint.h>

/* Sizes a wall may reach (datumrow(5), "Limits"). */
enum {
    WALL_FACES_MOST = 64,
    WALL_OPENINGS_MOST = 4096,  /* over all faces */
    WALL_BOARDS_MOST = 100000,  /* counts included */
    WALL_COURSES_MOST = 100000, /* over all faces; checked by layout */
    WALL_NAME_MOST = 256        /* bytes of any name, label, tone */
};

/* One place where a limit was measured: `at` along the limit (x for floor and ceiling, y for a side) and `off`, its
 * distance as the tape gave it (down for a floor, up for a ceiling, in for a side). Marks stand in rising order of
 * `at`; two at one place make a step, the first for the left (lower) side. Straight between marks, level (plumb)
 * beyond. */
typedef struct Mark {
    Length at;
    Length off;
} Mark;

typedef struct Marks {
    Mark *at;
    int count;
    int room;
} Marks;

typedef struct LengthList {
    Length *at;
    int count;
    int room;
} LengthList;

/* The order in which the courses of a face are hung. */
typedef enum PlanksHang {
    HANG_REFERENCE, /* course 0, up, then down */
    HANG_UPWARD     /* from the lowest course up */
} PlanksHang;

typedef struct Planks {
    LengthList widths; /* at least one; course k has widths[k mod count], -1 the last */
    Length thickness;
    Length reveal;
    Length lap;
    bool hang_given;
    PlanksHang hang; /* as given; wall_hangs_upward() tells the one in force */
    bool least_given;
    Length least; /* as given; wall_least() gives the one in force */
    Length leave;
} Planks;

typedef enum JointLand { LAND_ANYWHERE, LAND_STUDS } JointLand;

/* A joint that must be there. */
typedef struct Pin {
    char *face;
    int course;
    Length at;
} Pin;

typedef struct Pins {
    Pin *at;
    int count;
    int room;
} Pins;

/* A part of a course where no joint may be. */
typedef struct Bar {
    char *face;
    int course;
    Length from, to;
} Bar;

typedef struct Bars {
    Bar *at;
    int count;
    int room;
} Bars;

typedef struct Joints {
    JointLand land;
    Length stagger;
    Length shortest;
    Length closer;
    int64_t spend;  /* thousandths of a percent more length than the least; 0 where spend_all */
    bool spend_all; /* as much as there is */
    Pins pins;
    Bars bars;
} Joints;

typedef struct Saw {
    Length kerf;
    Length square;
} Saw;

typedef enum CornerKind { CORNER_NONE, CORNER_INSIDE, CORNER_OUTSIDE } CornerKind;
typedef enum CornerJoint { CORNER_BUTT, CORNER_TRIM, CORNER_LAP, CORNER_MITER } CornerJoint;
typedef enum CornerThrough { THROUGH_LEFT, THROUGH_RIGHT } CornerThrough;

/* How a face meets the NEXT one (the last: the first). */
typedef struct Corner {
    CornerKind kind;
    CornerJoint joint;
    CornerThrough through; /* the face that runs through: the one this is written at, or the next */
    Length gap;            /* what a 3-4-5 square stands off by at its arm: wider (+) or narrower (-) than square */
} Corner;

typedef struct Margin {
    Length floor, ceiling, left, right;
} Margin;

typedef struct Studs {
    bool given;
    bool regular; /* first + k spacing, k = 0, 1, ... up to the face's width; else `at` */
    Length first, spacing;
    LengthList at;
} Studs;

typedef enum OpeningKind {
    OPENING_BOX,
    OPENING_WINDOW,
    OPENING_DOOR,
    OPENING_FIREPLACE,
    OPENING_STOVE,
    OPENING_PIPE,
    OPENING_VENT,
    OPENING_OTHER
} OpeningKind;

typedef struct Plate {
    bool given;
    Length width, height;
} Plate;

typedef struct Opening {
    uint32_t id; /* unique in the document, kept through every edit */
    char *name;
    OpeningKind kind;
    Length left;
    bool to_floor;    /* `bottom: floor` was written */
    bool above_given; /* `above-floor` was written in place of `bottom`; never with to_floor */
    Length above;     /* from the floor straight below its left edge, where above_given */
    Length bottom;    /* from the level line; 0 where to_floor or above_given: opening_foot() tells it */
    Length width;
    bool top_given; /* `top` was written instead of `height` */
    Length top;     /* from the level line, where top_given */
    Length height;  /* where not top_given */
    Length clear;
    Plate plate;
    bool front_given;
    Length front; /* how far a box's front edge stands out of the bare wall */
    bool proud_given;
    Length proud; /* how far casing, surround or collar stands out of the bare wall */
    bool away_given;
    Length away;
} Opening;

typedef struct Openings {
    Opening *at;
    int count;
    int room;
} Openings;

/* What the fasteners go into. */
typedef enum FaceWall { FACE_STUDS, FACE_MASONRY, FACE_SOLID_WOOD } FaceWall;

typedef struct Face {
    uint32_t id;
    char *name;
    Length width;
    Marks floor, ceiling, left, right;
    Margin margin;
    Corner corner;
    FaceWall wall;
    Length backing; /* thickness of sheet under the planks */
    Studs studs;
    Openings openings;
} Face;

typedef struct Faces {
    Face *at;
    int count;
    int room;
} Faces;

/* A stretch of a board not to be used, from its first end. */
typedef struct Stretch {
    Length from, to;
} Stretch;

typedef struct Stretches {
    Stretch *at;
    int count;
    int room;
} Stretches;

/* Something on a board that is worth seeing. */
typedef struct Show {
    Length at; /* from the board's first end */
    char *what;
} Show;

typedef struct Shows {
    Show *at;
    int count;
    int room;
} Shows;

/* One line of stock: `count` boards alike. Boards are numbered from 1 through the lines in order. */
typedef struct Stock {
    uint32_t id;
    char *label; /* "" where none */
    Length length;
    int count;  /* >= 1 */
    char *tone; /* "" where none */
    bool width_given;
    Length width;
    Stretches avoid; /* rising, apart */
    Shows show;
    bool gone_given;
    int gone; /* spoiled or lost after the first so many records of `hung`; 0: before any */
    bool found_given;
    int found; /* came to hand after the first so many */
} Stock;

typedef struct Stocks {
    Stock *at;
    int count;
    int room;
} Stocks;

typedef struct Fasteners {
    bool given;
    bool length_given;
    Length length;
    Length drywall; /* between backing and studs */
} Fasteners;

typedef struct TrimStock {
    Length length;
    int count;
} TrimStock;

typedef struct TrimStocks {
    TrimStock *at;
    int count;
    int room;
} TrimStocks;

typedef struct TrimPiece {
    char *name;
    Length length;
    int count;
} TrimPiece;

typedef struct TrimPieces {
    TrimPiece *at;
    int count;
    int room;
} TrimPieces;

/* Where a run of trim goes; the trade works out its strips. */
typedef enum TrimAlong {
    ALONG_FLOOR,
    ALONG_CEILING,
    ALONG_INSIDE,   /* inside corners: one strip in the corner */
    ALONG_OUTSIDE,  /* outside corners: two strips, mitered along their length */
    ALONG_OPENINGS, /* casing round windows and doors, or round the one opening named */
    ALONG_EDGES     /* sides of faces that meet no other: the planks' ends */
} TrimAlong;

typedef struct TrimRun {
    TrimAlong along;
    Length width; /* to the long point where it is mitered along its length */
    bool thickness_given;
    Length thickness; /* else that of the planks */
    char *opening;    /* ALONG_OPENINGS: "" is every window and door */
} TrimRun;

typedef struct TrimRuns {
    TrimRun *at;
    int count;
    int room;
} TrimRuns;

typedef struct Trim {
    bool given;
    TrimStocks stock;
    TrimPieces pieces;
    TrimRuns runs;
} Trim;

/* A plain number in thousandths; where it is not given the trade's default holds. */
typedef struct Number {
    bool given;
    int64_t thousandths;
} Number;

typedef struct OwnLength {
    bool given;
    Length length;
} OwnLength;

/* One line of boards that are not milled yet. */
typedef struct Rough {
    uint32_t id;
    char *label; /* "" where none */
    Length width, thickness, length;
    int count;       /* >= 1 */
    Length ends;     /* cut off at each end */
    char *tone;      /* "" where none */
    Stretches avoid; /* along the board, nails or rot, from its first end; rising, apart */
} Rough;

typedef struct Roughs {
    Rough *at;
    int count;
    int room;
} Roughs;

/* How rough boards are milled. */
typedef struct Mill {
    bool given;
    Length edge;    /* taken off an edge to make it straight */
    OwnLength kerf; /* of the rip saw; else saw.kerf */
    Length plane;   /* taken off the thickness, both sides together */
    Length keep;    /* narrowest off-rip kept as a trim strip; 0: none */
} Mill;

/* A sheet of backing as it is bought. */
typedef struct BackingSheet {
    bool given;
    Length width, length;
} BackingSheet;

typedef enum Glue { GLUE_NONE, GLUE_PIECES, GLUE_STUDS } Glue;

/* What the bill of materials assumes; each has a default in the trade. */
typedef struct Bill {
    bool given;
    Number spare;     /* percent more boards and trim than is cut */
    Number fasteners; /* for each plank on each stud */
    bool glue_given;
    Glue glue;        /* where adhesive is run: behind each piece, along each stud, nowhere */
    OwnLength bead;   /* diameter of the bead */
    Number cartridge; /* fluid ounces (units: in), millilitres (units: mm) */
    Number coats;     /* 0: no finish */
    Number coverage;  /* square feet a gallon, square metres a litre */
    Number thinning;  /* percent of thinner added to the finish */
    BackingSheet sheet;
    OwnLength nominal; /* thickness that board feet are counted in; else the planks', at least 1 in */
} Bill;

typedef enum Grain { GRAIN_FLAT, GRAIN_QUARTER } Grain;

/* Air: temperature in thousandths of a degree of the unit it is written in, relative humidity in thousandths of a
 * percent. */
typedef struct Air {
    int64_t temperature;
    bool celsius;
    int64_t humidity;
} Air;

typedef struct Wood {
    bool given;
    char *species;
    Grain grain;
    Air hung, dry, damp;
} Wood;

/* After the event that a record of `hung` tells: the plan changes in as few pieces as can be, or the best plan of all
 * that is left is made. */
typedef enum HungPlan { PLAN_KEPT, PLAN_ANEW } HungPlan;

typedef enum PieceState {
    PIECE_HUNG,
    PIECE_CUT,    /* cut, not yet hung: it counts as hung for every rule */
    PIECE_LOST,   /* the word of a HungLoss; no piece has it */
    PIECE_PLANNED /* neither: a piece that a plan holds on to while the rest is planned; in no file */
} PieceState;

/* The records of `hung`, a kind an array, each in file order. `place` rises over all of them: it orders one kind among
 * the others (hung_walk). It may have gaps; of equal ones pieces come first, then losses, then edges. */
typedef struct HungPiece {
    char *face;
    int course;
    Length left, right;
    int board; /* number, from 1 */
    bool offset_given;
    Length offset;
    PieceState state;
    Length closer; /* kept over beyond its right end, as a plan has it; 0 where that is not known, and in every file */
    bool exact;    /* its figures are a plan's own: its ends are not taken as those of its segment */
    HungPlan plan;
    int place;
} HungPiece;

typedef struct HungPieces {
    HungPiece *at;
    int count;
    int room;
} HungPieces;

/* Wood cut wrong: that part of the board is used up. */
typedef struct HungLoss {
    int board; /* number, from 1 */
    Length offset, length;
    HungPlan plan;
    int place;
} HungLoss;

typedef struct HungLosses {
    HungLoss *at;
    int count;
    int room;
} HungLosses;

/* An edge measured after hanging, from the level line. */
typedef struct HungEdge {
    char *face;
    int course;
    bool is_top; /* else the bottom edge */
    Length height;
    HungPlan plan;
    int place;
} HungEdge;

typedef struct HungEdges {
    HungEdge *at;
    int count;
    int room;
} HungEdges;

typedef struct Wall {
    char *title; /* "" where none */
    Units units;
    bool round_given;
    Length round; /* the marking resolution in force */
    Planks planks;
    Length start; /* lower edge of course 0 */
    Joints joints;
    Saw saw;
    Faces faces;
    Stocks stock;
    Fasteners fasteners;
    Trim trim;
    Wood wood;
    Roughs rough;
    Mill mill;
    Bill bill;
    HungPieces hung_pieces;
    HungLosses hung_losses;
    HungEdges hung_edges;
    uint32_t next_id; /* the id that the next face, opening, stock or rough line gets */
} Wall;

/* A deep copy in `arena`; ids are kept. */
Wall *wall_copy(Arena *arena, const Wall *wall);

/* Equal in every value that the file holds; ids do not count. */
bool wall_equal(const Wall *a, const Wall *b);

/* An empty wall of these units with the defaults of datumrow(5); no face, no width: not valid yet. */
Wall *wall_new(Arena *arena, Units units);

/* The default marking resolution: 1/16 in, 1 mm. */
Length wall_default_round(Units units);

/* Plank width of course `number`, any sign. */
Length wall_course_width(const Wall *wall, int64_t number);

/* Face of the plank of course `number`: width - lap. */
Length wall_course_face(const Wall *wall, int64_t number);

/* Lower edge of course `number` above the level line, nothing measured counted; beyond 64 bits for numbers that no wall
 * has. */
Wide wall_course_bottom(const Wall *wall, int64_t number);

/* Sum of the pitches (width - lap + reveal) of one whole list of widths. */
Length wall_run(const Wall *wall);

/* The narrowest strip worth hanging in force: as given, else a third of the narrowest face (rounded to the nanometre).
 */
Length wall_least(const Wall *wall);

/* Widest plank of the list. */
Length wall_widest(const Wall *wall);

/* Whether the courses of a face are hung from the lowest up: as given, else with a lap. */
bool wall_hangs_upward(const Wall *wall);

/* Number of boards in stock, gone and found ones too. */
int wall_board_count(const Wall *wall);

/* The stock line of board `number` (from 1), or NULL; and the first board number of a stock line. */
const Stock *wall_board(const Wall *wall, int number);
int wall_stock_first(const Wall *wall, int stock_index);

/* Index of the face of that name or id, -1 where there is none; likewise openings. */
int wall_face_named(const Wall *wall, const char *name);
int wall_face_index(const Wall *wall, uint32_t id);
int wall_opening_index(const Face *face, uint32_t id);

/* Stud centres of a face with 0 <= x <= width, rising; a new list in `arena`. */
LengthList wall_studs(Arena *arena, const Face *face);

/* The joint of the corner at each side of a face: the corner written at this face for its right side, the one before
 * for its left; `kind` is CORNER_NONE where it meets nothing. `runs_through` tells whether this face is the one that
 * runs through. */
Corner wall_corner_right(const Wall *wall, int face_index, bool *runs_through);
Corner wall_corner_left(const Wall *wall, int face_index, bool *runs_through);

/* What the corners take from (positive) or give to (negative) each side of a face, from backing and thickness
 * (datumrow(5), "Corner"). */
Length wall_corner_loss_left(const Wall *wall, int face_index);
Length wall_corner_loss_right(const Wall *wall, int face_index);

/* Faces joined by outside miters, directly or through others, hang as one group: group[face] gets the first face, in
 * the file's order, of the one that it belongs to. */
void wall_face_groups(const Wall *wall, int *group);

/* Faces in hanging order (plan-file "Hanging order"), those of a group together in the file's order:
 * order[0..faces.count) gets face indices. */
void wall_face_order(const Wall *wall, int *order);

/* Going through all records of `hung` in list order, from (HungWalk){0} on. */
/* Kinds of records in the list `hung`. */
typedef enum HungKind { HUNG_PIECE, HUNG_LOSS, HUNG_EDGE, HUNG_KINDS } HungKind;

typedef struct HungWalk {
    HungKind kind; /* of the record that was reached */
    int index;     /* in the array of its kind */
    int next[HUNG_KINDS];
} HungWalk;

/* The next record, into kind and index; false behind the last. */
bool hung_walk(const Wall *wall, HungWalk *walk);

/* Whether new pieces may be cut from the boards of the line after `records` records: they came to hand by then, and are
 * not gone. */
bool wall_stock_usable(const Stock *stock, int records);

/* Number of records, and the place that a record put behind all of them gets. */
int hung_count(const Wall *wall);
int hung_next_place(const Wall *wall);

/* Words of the file for the enumerations, and back (false where the word is none of them). */
const char *opening_kind_word(OpeningKind kind);
bool opening_kind_from(const char *word, OpeningKind *kind);

#endif
