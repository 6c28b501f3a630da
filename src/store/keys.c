#include "store/keys.h"

#include <stdio.h>
#include <string.h>

/*
 * Rows stand in the order in which a fresh file has them. AT and FLAG refuse to compile where a field is not of the
 * type that its kind of value wants.
 */

#define AT(Struct, field, Type) .at = _Generic(((Struct *)0)->field, Type : offsetof(Struct, field))
#define FLAG(Struct, field) .flag = _Generic(((Struct *)0)->field, bool : offsetof(Struct, field)), .flag_is = true
#define FLAG_NOT(Struct, field) .flag = _Generic(((Struct *)0)->field, bool : offsetof(Struct, field)), .flag_is = false
#define NONE .flag = NO_FLAG

#define TEXT(Struct, field) .kind = VALUE_TEXT, AT(Struct, field, char *)
#define LENGTH(Struct, field) .kind = VALUE_LENGTH, AT(Struct, field, Length)
#define NUMBER(Struct, field) .kind = VALUE_NUMBER, AT(Struct, field.thousandths, int64_t), FLAG(Struct, field.given)
#define OWN(Struct, field) LENGTH(Struct, field.length), FLAG(Struct, field.given)
#define COUNT(Struct, field) .kind = VALUE_COUNT, AT(Struct, field, int)
#define WORD(Struct, field, Type, list) .kind = VALUE_WORD, AT(Struct, field, Type), .words = (list)
#define RECORD(Struct, field, Type, of) .kind = VALUE_RECORD, AT(Struct, field, Type), .record = &(of)
#define RECORDS(Struct, field, Type, of) .kind = VALUE_RECORDS, AT(Struct, field, Type), .record = &(of)

#define KEYS(list) .keys = (list), .count = (int)(sizeof(list) / sizeof *(list))

/* VALUE_WORD fields are read and written as unsigned int. */
_Static_assert(sizeof(JointLand) == sizeof(unsigned) && sizeof(CornerKind) == sizeof(unsigned) &&
                   sizeof(CornerJoint) == sizeof(unsigned) && sizeof(CornerThrough) == sizeof(unsigned) &&
                   sizeof(OpeningKind) == sizeof(unsigned) && sizeof(Grain) == sizeof(unsigned) &&
                   sizeof(Units) == sizeof(unsigned) && sizeof(TrimAlong) == sizeof(unsigned) &&
                   sizeof(Glue) == sizeof(unsigned) && sizeof(HungPlan) == sizeof(unsigned) &&
                   sizeof(PlanksHang) == sizeof(unsigned) && sizeof(FaceWall) == sizeof(unsigned) &&
                   sizeof(PieceState) == sizeof(unsigned),
               "an enumeration is as large as an unsigned int");

static const char *const hang_words[] = {[HANG_REFERENCE] = "reference", [HANG_UPWARD] = "upward", NULL};
static const char *const land_words[] = {[LAND_ANYWHERE] = "anywhere", [LAND_STUDS] = "studs", NULL};
static const char *const corner_words[] = {
    [CORNER_NONE] = "", [CORNER_INSIDE] = "inside", [CORNER_OUTSIDE] = "outside", NULL};
static const char *const joint_words[] = {
    [CORNER_BUTT] = "butt", [CORNER_TRIM] = "trim", [CORNER_LAP] = "lap", [CORNER_MITER] = "miter", NULL};
static const char *const through_words[] = {[THROUGH_LEFT] = "left", [THROUGH_RIGHT] = "right", NULL};
static const char *const opening_words[] = {[OPENING_BOX] = "box",
                                            [OPENING_WINDOW] = "window",
                                            [OPENING_DOOR] = "door",
                                            [OPENING_FIREPLACE] = "fireplace",
                                            [OPENING_STOVE] = "stove",
                                            [OPENING_PIPE] = "pipe",
                                            [OPENING_VENT] = "vent",
                                            [OPENING_OTHER] = "other",
                                            NULL};
static const char *const wall_words[] = {
    [FACE_STUDS] = "studs", [FACE_MASONRY] = "masonry", [FACE_SOLID_WOOD] = "solid wood", NULL};
static const char *const grain_words[] = {[GRAIN_FLAT] = "flat", [GRAIN_QUARTER] = "quarter", NULL};
static const char *const along_words[] = {[ALONG_FLOOR] = "floor",
                                          [ALONG_CEILING] = "ceiling",
                                          [ALONG_INSIDE] = "inside",
                                          [ALONG_OUTSIDE] = "outside",
                                          [ALONG_OPENINGS] = "openings",
                                          [ALONG_EDGES] = "edges",
                                          NULL};
static const char *const glue_words[] = {[GLUE_NONE] = "none", [GLUE_PIECES] = "pieces", [GLUE_STUDS] = "studs", NULL};
static const char *const units_words[] = {[UNITS_IN] = "in", [UNITS_MM] = "mm", NULL};
static const char *const plan_words[] = {[PLAN_KEPT] = "kept", [PLAN_ANEW] = "anew", NULL};
static const char *const state_words[] = {[PIECE_HUNG] = "hung", [PIECE_CUT] = "cut", [PIECE_LOST] = "lost", NULL};
static const char *const lost_words[] = {"lost", NULL};
static const char *const floor_words[] = {"floor", NULL};
static const char *const all_words[] = {"all", NULL};

/* ---- planks, joints, saw ---- */

static const FileKey planks_keys[] = {
    {"width", .kind = VALUE_WIDTHS, AT(Planks, widths, LengthList), NONE, .required = true, .range = RANGE_ABOVE_ZERO,
     .says = "full width after ripping, lap included; a list is repeated upward and downward from course 0"},
    {"thickness", LENGTH(Planks, thickness), NONE, .required = true, .range = RANGE_ABOVE_ZERO,
     .says = "thickness of the planks"},
    {"reveal", LENGTH(Planks, reveal), NONE, .range = RANGE_FROM_ZERO, .fallback = "0",
     .says = "gap left between courses"},
    {"lap", LENGTH(Planks, lap), NONE, .range = RANGE_FROM_ZERO, .fallback = "0",
     .says = "part of the width that the next course hides (rabbeted or tongued edges); less than the width"},
    {"hang", WORD(Planks, hang, PlanksHang, hang_words), FLAG(Planks, hang_given),
     .says = "reference: course 0, up, then down; upward: from the lowest course up; left out: reference, with a lap "
             "upward"},
    {"least", LENGTH(Planks, least), FLAG(Planks, least_given), .range = RANGE_FROM_ZERO,
     .says = "narrowest strip worth hanging; left out: a third of the narrowest face of a plank"},
    {"leave", LENGTH(Planks, leave), NONE, .range = RANGE_FROM_ZERO, .fallback = "0",
     .says = "a course whose height on a face is nowhere above this is not hung there, and told"},
};
static const Record planks = {"the planks", KEYS(planks_keys), sizeof(Planks), NO_FLAG, .one_line = false};

static const FileKey pin_keys[] = {
    {"face", TEXT(Pin, face), NONE, .required = true, .says = "name of its face"},
    {"course", .kind = VALUE_WHOLE, AT(Pin, course, int), NONE, .required = true,
     .says = "number of its course, 0 for the reference course"},
    {"at", LENGTH(Pin, at), NONE, .required = true, .says = "where the joint must be, from the face's left end"},
};
static const Record pin = {"a pin", KEYS(pin_keys), sizeof(Pin), NO_FLAG, .one_line = true};

static const FileKey bar_keys[] = {
    {"face", TEXT(Bar, face), NONE, .required = true, .says = "name of its face"},
    {"course", .kind = VALUE_WHOLE, AT(Bar, course, int), NONE, .required = true,
     .says = "number of its course, 0 for the reference course"},
    {"from", LENGTH(Bar, from), NONE, .required = true,
     .says = "where the part without a joint begins, from the face's left end"},
    {"to", LENGTH(Bar, to), NONE, .required = true, .says = "where it ends"},
};
static const Record bar = {"a bar", KEYS(bar_keys), sizeof(Bar), NO_FLAG, .one_line = true};

static const FileKey joints_keys[] = {
    {"land", WORD(Joints, land, JointLand, land_words), NONE, .fallback = "anywhere",
     .says = "where butt joints may land: anywhere, or on stud centres alone"},
    {"stagger", LENGTH(Joints, stagger), NONE, .range = RANGE_FROM_ZERO, .fallback = "0",
     .says = "least distance between joints in neighboring courses"},
    {"shortest", LENGTH(Joints, shortest), NONE, .range = RANGE_FROM_ZERO, .fallback = "0", .says = "shortest piece"},
    {"closer", LENGTH(Joints, closer), NONE, .range = RANGE_FROM_ZERO, .fallback = "0",
     .says = "kept over on the board of the piece that closes a section, so that it is cut to fit at the wall"},
    {"spend", .kind = VALUE_PERCENT_OR_WORD, AT(Joints, spend, int64_t), FLAG(Joints, spend_all), .words = all_words,
     .range = RANGE_FROM_ZERO, .fallback = "0",
     .says = "percent more length of boards than the least that may be used for fewer joints and better looks, to "
             "1000; or the word all"},
    {"pins", RECORDS(Joints, pins, Pins, pin), NONE, .fallback = "[]",
     .says = "joints that must be there: each is made whatever it breaks, and told as that break; one that cannot be "
             "made, or "
             "stands in a bar, is told (`pin`)"},
    {"bars", RECORDS(Joints, bars, Bars, bar), NONE, .fallback = "[]",
     .says = "parts of courses without a joint, their ends included"},
};
static const Record joints = {"the joints", KEYS(joints_keys), sizeof(Joints), NO_FLAG, .one_line = false};

static const FileKey saw_keys[] = {
    {"kerf", LENGTH(Saw, kerf), NONE, .range = RANGE_FROM_ZERO, .fallback = "0", .says = "width lost at each cut"},
    {"square", LENGTH(Saw, square), NONE, .range = RANGE_FROM_ZERO, .fallback = "0",
     .says = "lost at each end of a board to square it, its saw cut included"},
};
static const Record saw = {"the saw", KEYS(saw_keys), sizeof(Saw), NO_FLAG, .one_line = false};

/* ---- faces ---- */

static const FileKey floor_keys[] = {
    {"at", LENGTH(Mark, at), NONE, .required = true, .says = "distance from the face's left end"},
    {"down", LENGTH(Mark, off), NONE, .required = true, .says = "how far the floor lies below the level line there"},
};
static const Record floor_mark = {"a mark of the floor", KEYS(floor_keys), sizeof(Mark), NO_FLAG, .one_line = true};

static const FileKey ceiling_keys[] = {
    {"at", LENGTH(Mark, at), NONE, .required = true, .says = "distance from the face's left end"},
    {"up", LENGTH(Mark, off), NONE, .required = true, .says = "how far the ceiling lies above the level line there"},
};
static const Record ceiling_mark = {"a mark of the ceiling", KEYS(ceiling_keys), sizeof(Mark), NO_FLAG,
                                    .one_line = true};

static const FileKey side_keys[] = {
    {"up", LENGTH(Mark, at), NONE, .required = true, .says = "height above the level line"},
    {"in", LENGTH(Mark, off), NONE, .required = true,
     .says = "how far the edge lies inside its plumb line there; negative: outside"},
};
static const Record side_mark = {"a mark of a side", KEYS(side_keys), sizeof(Mark), NO_FLAG, .one_line = true};

static const FileKey margin_keys[] = {
    {"floor", LENGTH(Margin, floor), NONE, .range = RANGE_FROM_ZERO, .fallback = "0",
     .says = "space kept clear along the floor"},
    {"ceiling", LENGTH(Margin, ceiling), NONE, .range = RANGE_FROM_ZERO, .fallback = "0",
     .says = "space kept clear along the ceiling"},
    {"left", LENGTH(Margin, left), NONE, .range = RANGE_FROM_ZERO, .fallback = "0",
     .says = "space kept clear along the left side"},
    {"right", LENGTH(Margin, right), NONE, .range = RANGE_FROM_ZERO, .fallback = "0",
     .says = "space kept clear along the right side"},
};
static const Record margin = {"a margin", KEYS(margin_keys), sizeof(Margin), NO_FLAG, .one_line = true};

static const FileKey corner_keys[] = {
    {"kind", WORD(Corner, kind, CornerKind, corner_words), NONE, .required = true, .says = "inside or outside"},
    {"joint", WORD(Corner, joint, CornerJoint, joint_words), NONE, .required = true,
     .says = "inside: butt or trim; outside: trim, lap or miter"},
    {"through", WORD(Corner, through, CornerThrough, through_words), NONE, .fallback = "left",
     .says = "the face that runs through: left is the one that this is written at, right the next"},
    {"gap", LENGTH(Corner, gap), NONE, .fallback = "0",
     .says = "what a 3-4-5 square stands off by at its 4 ft (1.2 m) arm: positive where the corner is wider than "
             "square, negative where it is narrower"},
};
static const Record corner = {"a corner", KEYS(corner_keys), sizeof(Corner), NO_FLAG, .one_line = true};

static const FileKey studs_keys[] = {
    {"first", LENGTH(Studs, first), FLAG(Studs, regular), .required = true, .instead = "at",
     .says = "centre of the first stud, from the face's left end"},
    {"spacing", LENGTH(Studs, spacing), FLAG(Studs, regular), .required = true, .instead = "at",
     .range = RANGE_ABOVE_ZERO, .says = "from one centre to the next, up to the end of the face"},
    {"at", .kind = VALUE_LENGTHS, AT(Studs, at, LengthList), FLAG_NOT(Studs, regular), .instead = "first",
     .says = "or every centre, from left to right"},
};
static const Record studs = {"the studs", KEYS(studs_keys), sizeof(Studs), NO_FLAG, .one_line = true};

static const FileKey plate_keys[] = {
    {"width", LENGTH(Plate, width), NONE, .required = true, .range = RANGE_ABOVE_ZERO,
     .says = "width of the cover plate, the grown opening's or more"},
    {"height", LENGTH(Plate, height), NONE, .required = true, .range = RANGE_ABOVE_ZERO,
     .says = "height of the cover plate, the grown opening's or more"},
};
static const Record plate = {"a cover plate", KEYS(plate_keys), sizeof(Plate), NO_FLAG, .one_line = true};

static bool bottom_stands(const void *opening)
{
    return !((const Opening *)opening)->above_given;
}

static const FileKey opening_keys[] = {
    {"name", TEXT(Opening, name), NONE, .required = true,
     .says = "what it is called; no other on its face has the name"},
    {"kind", WORD(Opening, kind, OpeningKind, opening_words), NONE, .required = true,
     .says =
         "a fireplace is of masonry; a pipe is a stovepipe or flue; a stove is where an appliance stands before the "
         "wall: it cuts nothing"},
    {"left", LENGTH(Opening, left), NONE, .required = true, .says = "its left edge, from the face's left end"},
    {"bottom", .kind = VALUE_LENGTH_OR_WORD, AT(Opening, bottom, Length), FLAG(Opening, to_floor), .required = true,
     .instead = "above-floor", .stands = bottom_stands, .words = floor_words,
     .says = "its lower edge, from the level line; or the word floor: it goes down to the floor"},
    {"above-floor", LENGTH(Opening, above), FLAG(Opening, above_given), .instead = "bottom",
     .says = "its lower edge, from the floor straight below its left edge, in place of bottom; at a step the floor to "
             "the right counts"},
    {"width", LENGTH(Opening, width), NONE, .required = true, .range = RANGE_ABOVE_ZERO,
     .says = "its width, measured to what the planks butt against"},
    {"height", LENGTH(Opening, height), FLAG_NOT(Opening, top_given), .required = true, .instead = "top",
     .range = RANGE_ABOVE_ZERO,
     .says = "its height; with bottom: floor measured from the floor at the opening's left edge"},
    {"top", LENGTH(Opening, top), FLAG(Opening, top_given), .instead = "height",
     .says = "its upper edge from the level line, in place of the height; with bottom: floor or above-floor"},
    {"clear", LENGTH(Opening, clear), NONE, .range = RANGE_FROM_ZERO, .fallback = "0",
     .says = "cut back all round beyond the size above"},
    {"plate", RECORD(Opening, plate, Plate, plate), .flag = offsetof(Opening, plate.given), .flag_is = true,
     .says = "on a box: its cover plate, centred on the opening"},
    {"front", LENGTH(Opening, front), FLAG(Opening, front_given),
     .says = "on a box: how far its front edge stands out of the bare wall, negative if set back; left out: flush"},
    {"proud", LENGTH(Opening, proud), FLAG(Opening, proud_given), .range = RANGE_FROM_ZERO,
     .says =
         "how far its casing, surround or collar stands out of the bare wall: the sheets say how far the planks end "
         "before or behind it (`flush`)"},
    {"away", LENGTH(Opening, away), FLAG(Opening, away_given), .range = RANGE_FROM_ZERO,
     .says = "on a stove: from the bare wall to its nearest hot face"},
};
static const Record opening = {"an opening", KEYS(opening_keys), sizeof(Opening), offsetof(Opening, id),
                               .one_line = false};

static bool corner_stands(const void *face)
{
    return ((const Face *)face)->corner.kind != CORNER_NONE;
}

static const FileKey face_keys[] = {
    {"name", TEXT(Face, name), NONE, .required = true, .says = "what it is called; no other face has the name"},
    {"width", LENGTH(Face, width), NONE, .required = true, .range = RANGE_ABOVE_ZERO,
     .says = "bare wall from corner to corner, level"},
    {"floor", RECORDS(Face, floor, Marks, floor_mark), NONE, .required = true,
     .says = "the floor below the level line, at one or more places; straight between, level beyond"},
    {"ceiling", RECORDS(Face, ceiling, Marks, ceiling_mark), NONE, .required = true,
     .says = "the ceiling above the level line, at one or more places"},
    {"left", RECORDS(Face, left, Marks, side_mark), NONE, .fallback = "[]",
     .says = "how far the left edge leans into the face, by height; plumb where left out"},
    {"right", RECORDS(Face, right, Marks, side_mark), NONE, .fallback = "[]",
     .says = "how far the right edge leans into the face, by height; plumb where left out"},
    {"margin", RECORD(Face, margin, Margin, margin), NONE, .fallback = "{}",
     .says = "space kept clear along each side"},
    {"corner", RECORD(Face, corner, Corner, corner), NONE, .stands = corner_stands,
     .says = "how the face meets the next one, the last the first; left out: it does not touch it"},
    {"wall", WORD(Face, wall, FaceWall, wall_words), NONE, .fallback = "studs", .says = "what the fasteners go into"},
    {"backing", LENGTH(Face, backing), NONE, .range = RANGE_FROM_ZERO, .fallback = "0",
     .says = "thickness of sheet put up under the planks on this face"},
    {"studs", RECORD(Face, studs, Studs, studs), .flag = offsetof(Face, studs.given), .flag_is = true,
     .says = "centres of the studs"},
    {"openings", RECORDS(Face, openings, Openings, opening), NONE, .fallback = "[]",
     .says = "boxes, windows, doors and what else the planks are cut round"},
};
static const Record face = {"a face",           KEYS(face_keys),   sizeof(Face),
                            offsetof(Face, id), .one_line = false, .apart = true};

/* ---- boards, fasteners, trim ---- */

static const FileKey avoid_keys[] = {
    {"from", LENGTH(Stretch, from), NONE, .required = true, .range = RANGE_FROM_ZERO,
     .says = "where the stretch begins, from the board's first end"},
    {"to", LENGTH(Stretch, to), NONE, .required = true, .says = "where it ends, from the same end"},
};
static const Record stretch = {"a stretch to avoid", KEYS(avoid_keys), sizeof(Stretch), NO_FLAG, .one_line = true};

static const FileKey show_keys[] = {
    {"at", LENGTH(Show, at), NONE, .required = true, .range = RANGE_FROM_ZERO,
     .says = "where it is, from the board's first end"},
    {"what", TEXT(Show, what), NONE, .required = true, .says = "what is to be seen, like knot hole"},
};
static const Record show = {"what a board shows", KEYS(show_keys), sizeof(Show), NO_FLAG, .one_line = true};

static const FileKey stock_keys[] = {
    {"label", TEXT(Stock, label), NONE, .fallback = "", .says = "what is written on the board, at its first end"},
    {"length", LENGTH(Stock, length), NONE, .required = true, .range = RANGE_ABOVE_ZERO,
     .says = "length as it lies there"},
    {"count", COUNT(Stock, count), NONE, .range = RANGE_ABOVE_ZERO, .fallback = "1", .says = "how many alike"},
    {"tone", TEXT(Stock, tone), NONE, .fallback = "",
     .says = "color or character, any word; neighbors of one tone are kept apart"},
    {"width", LENGTH(Stock, width), FLAG(Stock, width_given), .range = RANGE_ABOVE_ZERO,
     .says = "its own width; left out: as wide as the widest plank"},
    {"avoid", RECORDS(Stock, avoid, Stretches, stretch), NONE, .fallback = "[]",
     .says = "parts of the board not to be used, in rising order, apart"},
    {"show", RECORDS(Stock, show, Shows, show), NONE, .fallback = "[]",
     .says = "what is worth seeing: the sheets tell where on the wall it comes to be, and `show` asks to paint behind "
             "it; what "
             "falls into an offcut is on no wall"},
    {"gone", .kind = VALUE_WHOLE, AT(Stock, gone, int), FLAG(Stock, gone_given), .range = RANGE_FROM_ZERO,
     .says = "spoiled or lost after the first so many records of hung; 0: before any"},
    {"found", .kind = VALUE_WHOLE, AT(Stock, found, int), FLAG(Stock, found_given), .range = RANGE_FROM_ZERO,
     .says = "came to hand after the first so many records of hung; 0: after printing, before any"},
};
static const Record stock = {"a line of stock", KEYS(stock_keys), sizeof(Stock), offsetof(Stock, id), .one_line = true};

static const FileKey fasteners_keys[] = {
    {"length", LENGTH(Fasteners, length), FLAG(Fasteners, length_given), .range = RANGE_ABOVE_ZERO,
     .says = "length of the nails or screws; left out: not known"},
    {"drywall", LENGTH(Fasteners, drywall), NONE, .range = RANGE_FROM_ZERO, .fallback = "0",
     .says = "thickness of what lies between backing and studs"},
};
static const Record fasteners = {"the fasteners", KEYS(fasteners_keys), sizeof(Fasteners), NO_FLAG, .one_line = true};

static const FileKey trim_stock_keys[] = {
    {"length", LENGTH(TrimStock, length), NONE, .required = true, .range = RANGE_ABOVE_ZERO,
     .says = "length of a board for trim"},
    {"count", COUNT(TrimStock, count), NONE, .range = RANGE_ABOVE_ZERO, .fallback = "1", .says = "how many alike"},
};
static const Record trim_stock = {"a line of trim stock", KEYS(trim_stock_keys), sizeof(TrimStock), NO_FLAG,
                                  .one_line = true};

static const FileKey trim_piece_keys[] = {
    {"name", TEXT(TrimPiece, name), NONE, .required = true, .says = "where the piece goes"},
    {"length", LENGTH(TrimPiece, length), NONE, .required = true, .range = RANGE_ABOVE_ZERO,
     .says = "its length, taken on the wall"},
    {"count", COUNT(TrimPiece, count), NONE, .range = RANGE_ABOVE_ZERO, .fallback = "1", .says = "how many alike"},
};
static const Record trim_piece = {"a piece of trim", KEYS(trim_piece_keys), sizeof(TrimPiece), NO_FLAG,
                                  .one_line = true};

static const FileKey trim_run_keys[] = {
    {"along", WORD(TrimRun, along, TrimAlong, along_words), NONE, .required = true,
     .says = "floor, ceiling, inside or outside corners, openings (a casing), edges (sides that meet no other face)"},
    {"width", LENGTH(TrimRun, width), NONE, .required = true, .range = RANGE_ABOVE_ZERO,
     .says = "width of the strip; along outside corners, where two are mitered along their length, to the long point"},
    {"thickness", LENGTH(TrimRun, thickness), FLAG(TrimRun, thickness_given), .range = RANGE_ABOVE_ZERO,
     .says = "its thickness; left out: that of the planks"},
    {"opening", TEXT(TrimRun, opening), NONE, .fallback = "",
     .says = "along openings: the one to go round; left out: every window and door"},
};
static const Record trim_run = {"a run of trim", KEYS(trim_run_keys), sizeof(TrimRun), NO_FLAG, .one_line = true};

static const FileKey trim_keys[] = {
    {"stock", RECORDS(Trim, stock, TrimStocks, trim_stock), NONE, .fallback = "[]",
     .says = "boards that trim is cut from"},
    {"pieces", RECORDS(Trim, pieces, TrimPieces, trim_piece), NONE, .fallback = "[]", .says = "pieces of trim to cut"},
    {"runs", RECORDS(Trim, runs, TrimRuns, trim_run), NONE, .fallback = "[]",
     .says = "trim whose strips are worked out from the wall"},
};
static const Record trim = {"the trim", KEYS(trim_keys), sizeof(Trim), NO_FLAG, .one_line = false};

/* ---- wood ---- */

static const FileKey air_keys[] = {
    {"temperature", .kind = VALUE_TEMPERATURE, AT(Air, temperature, int64_t), NONE, .required = true,
     .says = "30 F to 210 F, or -1 C to 99 C"},
    {"humidity", .kind = VALUE_PERCENT, AT(Air, humidity, int64_t), NONE, .required = true,
     .says = "relative humidity, 0 to 98, in percent"},
};
static const Record air = {"the air", KEYS(air_keys), sizeof(Air), NO_FLAG, .one_line = true};

static const FileKey wood_keys[] = {
    {"species", TEXT(Wood, species), NONE, .required = true, .says = "a name out of the table of species"},
    {"grain", WORD(Wood, grain, Grain, grain_words), NONE, .fallback = "flat",
     .says = "flat: the width is tangential; quarter: it is radial"},
    {"hung", RECORD(Wood, hung, Air, air), NONE, .required = true,
     .says = "air that the boards have settled to when they are hung"},
    {"dry", RECORD(Wood, dry, Air, air), NONE, .required = true, .says = "driest that the room gets"},
    {"damp", RECORD(Wood, damp, Air, air), NONE, .required = true, .says = "dampest that the room gets"},
};
static const Record wood = {"the wood", KEYS(wood_keys), sizeof(Wood), NO_FLAG, .one_line = false};

/* ---- rough boards, milling, the bill ---- */

static const FileKey rough_keys[] = {
    {"label", TEXT(Rough, label), NONE, .fallback = "", .says = "what is written on the board, at its first end"},
    {"width", LENGTH(Rough, width), NONE, .required = true, .range = RANGE_ABOVE_ZERO,
     .says = "width as it lies there"},
    {"thickness", LENGTH(Rough, thickness), NONE, .required = true, .range = RANGE_ABOVE_ZERO,
     .says = "thickness as it lies there"},
    {"length", LENGTH(Rough, length), NONE, .required = true, .range = RANGE_ABOVE_ZERO,
     .says = "length as it lies there"},
    {"count", COUNT(Rough, count), NONE, .range = RANGE_ABOVE_ZERO, .fallback = "1", .says = "how many alike"},
    {"ends", LENGTH(Rough, ends), NONE, .range = RANGE_FROM_ZERO, .fallback = "0", .says = "cut off at each end"},
    {"tone", TEXT(Rough, tone), NONE, .fallback = "", .says = "color or character, any word"},
    {"avoid", RECORDS(Rough, avoid, Stretches, stretch), NONE, .fallback = "[]",
     .says = "parts along the board not to be used, nails or rot, in rising order, apart"},
};
static const Record rough = {"a line of rough boards", KEYS(rough_keys), sizeof(Rough), offsetof(Rough, id),
                             .one_line = true};

static const FileKey mill_keys[] = {
    {"edge", LENGTH(Mill, edge), NONE, .range = RANGE_FROM_ZERO, .fallback = "0",
     .says = "taken off each edge of a rough board to make it straight"},
    {"kerf", OWN(Mill, kerf), .range = RANGE_FROM_ZERO, .says = "lost at each rip; left out: saw.kerf"},
    {"plane", LENGTH(Mill, plane), NONE, .range = RANGE_FROM_ZERO, .fallback = "0",
     .says = "least that planing takes off the thickness, both sides together"},
    {"keep", LENGTH(Mill, keep), NONE, .range = RANGE_FROM_ZERO, .fallback = "0",
     .says = "width of the trim strips ripped out of what is left of a board; 0: none"},
};
static const Record mill = {"the milling", KEYS(mill_keys), sizeof(Mill), NO_FLAG, .one_line = true};

static const FileKey sheet_keys[] = {
    {"width", LENGTH(BackingSheet, width), NONE, .required = true, .range = RANGE_ABOVE_ZERO,
     .says = "width of a sheet"},
    {"length", LENGTH(BackingSheet, length), NONE, .required = true, .range = RANGE_ABOVE_ZERO,
     .says = "length of a sheet"},
};
static const Record backing_sheet = {"a sheet of backing", KEYS(sheet_keys), sizeof(BackingSheet), NO_FLAG,
                                     .one_line = true};

static const FileKey bill_keys[] = {
    {"spare", .kind = VALUE_PERCENT, AT(Bill, spare.thousandths, int64_t), FLAG(Bill, spare.given),
     .range = RANGE_FROM_ZERO, .says = "percent more than is cut, counted once over all boards; left out: 10"},
    {"fasteners", NUMBER(Bill, fasteners), .range = RANGE_ABOVE_ZERO,
     .says = "in each plank on each stud; left out: 1, or 2 where planks are wider than 4 in"},
    {"glue", WORD(Bill, glue, Glue, glue_words), FLAG(Bill, glue_given),
     .says = "where adhesive runs: pieces, studs or none; left out: pieces"},
    {"bead", OWN(Bill, bead), .range = RANGE_ABOVE_ZERO, .says = "diameter of the bead; left out: 1/4 in or 6 mm"},
    {"cartridge", NUMBER(Bill, cartridge), .range = RANGE_ABOVE_ZERO,
     .says = "fluid ounces (units: in) or millilitres (units: mm) of a cartridge; left out: 10 or 300"},
    {"coats", NUMBER(Bill, coats), .range = RANGE_FROM_ZERO, .says = "coats of finish; left out: 2"},
    {"coverage", NUMBER(Bill, coverage), .range = RANGE_ABOVE_ZERO,
     .says = "square feet a gallon (units: in) or square metres a litre (units: mm); left out: 400 or 10"},
    {"thinning", .kind = VALUE_PERCENT, AT(Bill, thinning.thousandths, int64_t), FLAG(Bill, thinning.given),
     .range = RANGE_FROM_ZERO, .says = "percent of thinner added to the finish; left out: 0"},
    {"sheet", RECORD(Bill, sheet, BackingSheet, backing_sheet), FLAG(Bill, sheet.given),
     .says = "size of a sheet of backing; left out: 48 by 96 in, or 1220 by 2440 mm"},
    {"nominal", OWN(Bill, nominal), .range = RANGE_ABOVE_ZERO,
     .says = "thickness that board feet are counted in; left out: that of the planks, 1 in at the least"},
};
static const Record bill = {"the bill", KEYS(bill_keys), sizeof(Bill), NO_FLAG, .one_line = false};

/* ---- as built ---- */

#define PLAN_SAYS "anew: after this the best plan of all that is left is made; kept: as few pieces as can be change"

static const FileKey piece_keys[] = {
    {"face", TEXT(HungPiece, face), NONE, .required = true, .says = "name of the face it hangs on"},
    {"course", .kind = VALUE_WHOLE, AT(HungPiece, course, int), NONE, .required = true,
     .says = "number of its course, 0 for the reference course"},
    {"left", LENGTH(HungPiece, left), NONE, .required = true, .says = "its left end, from the face's left end"},
    {"right", LENGTH(HungPiece, right), NONE, .required = true, .says = "its right end"},
    {"board", .kind = VALUE_WHOLE, AT(HungPiece, board, int), NONE, .required = true, .range = RANGE_ABOVE_ZERO,
     .says = "number of the board it was cut from, counted from 1 in the order of the stock"},
    {"offset", LENGTH(HungPiece, offset), FLAG(HungPiece, offset_given), .range = RANGE_FROM_ZERO,
     .says =
         "from the board's first end to the piece's; left out: as in the plan before; where that has no such piece, "
         "at `square`, or behind the piece before by what the two ends take"},
    {"state", WORD(HungPiece, state, PieceState, state_words), NONE, .fallback = "hung",
     .says = "cut: it is cut, but does not hang yet"},
    {"plan", WORD(HungPiece, plan, HungPlan, plan_words), NONE, .fallback = "kept", .says = PLAN_SAYS},
};
static const Record hung_piece = {"a hung piece", KEYS(piece_keys), sizeof(HungPiece), NO_FLAG, .one_line = true};

static const FileKey loss_keys[] = {
    {"board", .kind = VALUE_WHOLE, AT(HungLoss, board, int), NONE, .required = true, .range = RANGE_ABOVE_ZERO,
     .says = "number of the board that wood was lost of"},
    {"offset", LENGTH(HungLoss, offset), NONE, .required = true, .range = RANGE_FROM_ZERO,
     .says = "where the lost part begins, from the board's first end"},
    {"length", LENGTH(HungLoss, length), NONE, .required = true, .range = RANGE_ABOVE_ZERO, .says = "how long it is"},
    {"state", .kind = VALUE_ONE_WORD, NONE, .required = true, .words = lost_words,
     .says = "that part of the board is used up"},
    {"plan", WORD(HungLoss, plan, HungPlan, plan_words), NONE, .fallback = "kept", .says = PLAN_SAYS},
};
static const Record hung_loss = {"a lost part of a board", KEYS(loss_keys), sizeof(HungLoss), NO_FLAG,
                                 .one_line = true};

static const FileKey edge_keys[] = {
    {"face", TEXT(HungEdge, face), NONE, .required = true, .says = "name of the face it was measured on"},
    {"course", .kind = VALUE_WHOLE, AT(HungEdge, course, int), NONE, .required = true,
     .says = "number of its course, 0 for the reference course"},
    {"top", LENGTH(HungEdge, height), FLAG(HungEdge, is_top), .required = true, .instead = "bottom",
     .says = "upper edge of the face as measured from the level line, for courses from 0 up; hung upward, for all"},
    {"bottom", LENGTH(HungEdge, height), FLAG_NOT(HungEdge, is_top), .instead = "top",
     .says = "lower edge as measured from the level line, for courses from 0 down; not hung upward"},
    {"plan", WORD(HungEdge, plan, HungPlan, plan_words), NONE, .fallback = "kept", .says = PLAN_SAYS},
};
static const Record hung_edge = {"a measured edge", KEYS(edge_keys), sizeof(HungEdge), NO_FLAG, .one_line = true};

static const ListPart hung_parts[HUNG_KINDS] = {
    [HUNG_PIECE] = {&hung_piece, offsetof(Wall, hung_pieces), offsetof(HungPiece, place)},
    [HUNG_LOSS] = {&hung_loss, offsetof(Wall, hung_losses), offsetof(HungLoss, place)},
    [HUNG_EDGE] = {&hung_edge, offsetof(Wall, hung_edges), offsetof(HungEdge, place)},
};

/* ---- the file ---- */

static bool round_stands(const void *file)
{
    const Wall *wall = file;
    return wall->round_given || wall->round != wall_default_round(wall->units);
}

static const FileKey file_keys[] = {
    {"datumrow", .kind = VALUE_VERSION, NONE, .required = true, .says = "version of the format: 1"},
    {"title", TEXT(Wall, title), NONE, .fallback = "", .says = "what the sheets are headed with"},
    {"units", .kind = VALUE_UNITS, AT(Wall, units, Units), NONE, .required = true, .words = units_words,
     .says = "what a bare number is: inches or millimetres"},
    {"round", LENGTH(Wall, round), FLAG(Wall, round_given), .stands = round_stands,
     .says = "marking resolution: 1/8, 1/16, 1/32 or 1/64 in, left out 1/16; or 1, 0.5 or 0.1 mm, left out 1"},
    {"planks", RECORD(Wall, planks, Planks, planks), NONE, .required = true,
     .says = "the planks as they will be ripped"},
    {"start", LENGTH(Wall, start), NONE, .required = true,
     .says = "lower edge of course 0, the reference course, above the level line"},
    {"joints", RECORD(Wall, joints, Joints, joints), NONE, .fallback = "{}", .says = "rules for butt joints"},
    {"saw", RECORD(Wall, saw, Saw, saw), NONE, .fallback = "{}", .says = "what sawing takes"},
    {"faces", RECORDS(Wall, faces, Faces, face), NONE, .required = true,
     .says = "the faces from left to right, as one walks the wall; one at the least"},
    {"stock", RECORDS(Wall, stock, Stocks, stock), NONE, .fallback = "[]",
     .says = "boards at hand, already planed; they are numbered in this order"},
    {"fasteners", RECORD(Wall, fasteners, Fasteners, fasteners), .flag = offsetof(Wall, fasteners.given),
     .flag_is = true, .says = "what the planks are fastened with"},
    {"trim", RECORD(Wall, trim, Trim, trim), .flag = offsetof(Wall, trim.given), .flag_is = true,
     .says = "trim to cut, with its own stock"},
    {"wood", RECORD(Wall, wood, Wood, wood), .flag = offsetof(Wall, wood.given), .flag_is = true,
     .says = "how the planks will move with the seasons"},
    {"rough", RECORDS(Wall, rough, Roughs, rough), NONE, .fallback = "[]",
     .says = "boards at hand that are still to be milled; the mill sheet goes by them, the plan does not"},
    {"mill", RECORD(Wall, mill, Mill, mill), FLAG(Wall, mill.given), .says = "how rough boards are milled"},
    {"bill", RECORD(Wall, bill, Bill, bill), FLAG(Wall, bill.given), .says = "what the bill of materials assumes"},
    {"hung", .kind = VALUE_HUNG, AT(Wall, hung_pieces, HungPieces), NONE, .fallback = "[]", .parts = hung_parts,
     .says = "what hangs on the wall or is cut already, what was cut wrong, and edges measured after hanging"},
};
const Record keys_of_file = {"a wall file", KEYS(file_keys), sizeof(Wall), NO_FLAG, .one_line = false, .apart = true};

/* ---- looking keys up ---- */

const char *keys_renamed(const char *word)
{
    static const char *const renamed[][2] = {
        {"underlay", "backing"}, {"wallboard", "drywall"}, {"mitre", "miter"}, {"hearth", "fireplace"}};
    for (size_t i = 0; i < sizeof renamed / sizeof *renamed; i++)
        if (strcmp(word, renamed[i][0]) == 0)
            return renamed[i][1];
    return NULL;
}

const char *keys_meant(const char *word)
{
    static const char *const meant[][2] = {
        {"outlet", "box"},       {"receptacle", "box"}, {"socket", "box"},       {"switch", "box"},
        {"insert", "fireplace"}, {"flue", "pipe"},      {"stovepipe", "pipe"},   {"heater", "stove"},
        {"range", "stove"},      {"register", "vent"},  {"grille", "vent"},      {"cabinet", "other"},
        {"cupboard", "other"},   {"brick", "masonry"},  {"concrete", "masonry"}, {"stone", "masonry"},
        {"frame", "studs"},      {"log", "solid wood"}, {"timber", "solid wood"}};
    for (size_t i = 0; i < sizeof meant / sizeof *meant; i++)
        if (strcmp(word, meant[i][0]) == 0)
            return meant[i][1];
    return NULL;
}

const FileKey *record_key(const Record *record, const char *name, size_t length)
{
    for (int i = 0; i < record->count; i++)
        if (strlen(record->keys[i].name) == length && memcmp(record->keys[i].name, name, length) == 0)
            return &record->keys[i];
    return NULL;
}

enum { PATH_MOST = 128 };

static void walk(const Record *record, const char *path,
                 void (*each)(const char *path, const FileKey *key, void *context), void *context)
{
    for (int i = 0; i < record->count; i++) {
        const FileKey *key = &record->keys[i];
        char below[PATH_MOST];
        const bool list = key->kind == VALUE_RECORDS || key->kind == VALUE_HUNG;
        snprintf(below, sizeof below, "%.60s%s%s", path, path[0] == '\0' ? "" : ".", key->name);
        each(below, key, context);
        if (list)
            snprintf(below + strlen(below), sizeof below - strlen(below), "[]");
        if (key->record != NULL)
            walk(key->record, below, each, context);
        for (int part = 0; key->parts != NULL && part < HUNG_KINDS; part++)
            walk(key->parts[part].record, below, each, context);
    }
}

void keys_walk(void (*each)(const char *path, const FileKey *key, void *context), void *context)
{
    walk(&keys_of_file, "", each, context);
}
