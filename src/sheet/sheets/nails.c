#include "sheet/sheets/sheets.h"

#include <inttypes.h>
#include <stdlib.h>

#include "job/measures.h"
#include "job/words.h"
#include "sheet/sheets/details.h"
#include "trade/bill.h"
#include "trade/studs.h"

/*
 * The nailing page: how planks are held, once for the job, and on each face where its studs are, which joints stand on
 * one, and which pieces fasteners alone do not hold. What counts as held is layout/hold.h's.
 */
enum {
    FIELD_FACE,
    FIELD_COURSE,
    FIELD_PIECE,
    FIELD_STUDS,
    FIELD_HELD_BY,
    FIELD_LEFT,
    FIELD_RIGHT,
    FIELD_LEFT_JOINT,
    FIELD_RIGHT_JOINT,
    FIELD_COUNT
};
static const char *const field_names[FIELD_COUNT] = {"face",
                                                     "course",
                                                     "piece",
                                                     "studs",
                                                     "studs that hold",
                                                     "left end beyond",
                                                     "right end beyond",
                                                     "left end on stud",
                                                     "right end on stud"};

typedef struct NailPage {
    Sheet *sheet;
    const Job *job;
    const Wall *wall;
    Arena *arena;
    SheetSection *section;
} NailPage;

static void put(NailPage *nails, Weight weight, const char *text)
{
    sheet_words(nails->sheet, &sheet_group(nails->sheet, nails->section)->lines, 0, weight, text);
}

static void begin_part(NailPage *nails, const char *place, const char *head)
{
    nails->section = sheet_section(nails->sheet, place, false);
    SheetLine *line = sheet_line(nails->sheet, &nails->section->heads);
    line->rule = true;
    sheet_cell(nails->sheet, line, 0, SHEET_COLUMNS, ALIGN_LEFT, WEIGHT_WORDS, head);
}

/* ---- for the whole job ---- */

/* What is left of a fastener behind plank, backing and drywall. */
static void add_reach(NailPage *nails, int face)
{
    const Wall *wall = nails->wall;
    Arena *arena = nails->arena;
    if (!wall->fasteners.length_given || wall->faces.at[face].wall != FACE_STUDS)
        return;
    const Length stack = fastener_stack(wall, face), left = wall->fasteners.length - stack;
    const char *length = words_length_unit(arena, wall, wall->fasteners.length);
    put(nails, WEIGHT_TEXT,
        left > 0 ? words(arena, "Fasteners of %s go through %s and reach %s into the stud.", length,
                         words_length_unit(arena, wall, stack), words_length_unit(arena, wall, left))
                 : words(arena, "Fasteners of %s do not reach a stud: %s lies before it. Take longer ones.", length,
                         words_length_unit(arena, wall, stack)));
}

static void add_schedule(NailPage *nails)
{
    begin_part(nails, "All faces", "How planks are held (common practice)");
    put(nails, WEIGHT_STRONG,
        "Find what runs behind the planks before you fasten anything; the hazards on the first page say whom to ask.");
    const BillHolding holding = bill_holding(nails->arena, nails->job->layout, nails->job->plan);
    for (int i = 0; i < holding.count; i++)
        put(nails, WEIGHT_TEXT, holding.at[i]);
    put(nails, WEIGHT_TEXT,
        "Where a joint stands on a stud, each of its two ends gets a fastener of its own, halfway to the stud's edge, "
        "predrilled and slanted toward the middle of the stud. Where it stands between studs, glue it or back it with "
        "a "
        "strip.");
}

/* ---- one face ---- */

static bool on_stud(const LengthList *studs, Length x)
{
    for (int i = 0; i < studs->count; i++)
        if (llabs(studs->at[i] - x) < STUD_END_LEAST)
            return true;
    return false;
}

static const LengthList *studs_of(const NailPage *nails, const Piece *piece)
{
    return &nails->job->layout->faces[piece->face].studs;
}

/* Whether the next piece of the plan goes on where this one ends. */
static bool joins_next(const NailPage *nails, int index)
{
    const Plan *plan = nails->job->plan;
    if (index + 1 >= plan->piece_count)
        return false;
    const Piece *piece = &plan->pieces[index], *next = piece + 1;
    return next->face == piece->face && next->course == piece->course && next->segment == piece->segment &&
           next->left == piece->right;
}

/* "Joints on a stud: between pieces 3 and 4, 7 and 8." Where there is none it says so. */
static void add_joints(NailPage *nails, int face)
{
    Arena *arena = nails->arena;
    const Plan *plan = nails->job->plan;
    const char *list = "";
    int between = 0;
    for (int i = 0; i < plan->piece_count; i++) {
        const Piece *piece = &plan->pieces[i];
        if (piece->face != face || !joins_next(nails, i))
            continue;
        if (on_stud(studs_of(nails, piece), piece->right))
            list = words(arena, "%s%s %d and %d", list, list[0] == '\0' ? "" : ",", piece->number, piece[1].number);
        else
            between++;
    }
    const char *off = words_count(arena, between, "joint stands", "joints stand");
    put(nails, WEIGHT_TEXT,
        list[0] == '\0' ? words(arena, "No joint stands on a stud; %s between studs.", off)
                        : words(arena, "Joints on a stud, between pieces%s; %s between studs.", list, off));
}

/* How a piece is held, as the lists below tell it. */
typedef enum HeldBy { HELD_BY_NONE, HELD_BY_ONE, HELD_END_OUT, HELD_WELL } HeldBy;

static HeldBy held_by(const NailPage *nails, const Piece *piece)
{
    const Hold hold = studs_holding(nails->job->layout, piece);
    if (hold.studs < 2)
        return hold.studs == 0 ? HELD_BY_NONE : HELD_BY_ONE;
    return hold_is_loose(&hold) ? HELD_END_OUT : HELD_WELL;
}

static void add_held(NailPage *nails, int face, HeldBy how, const char *what)
{
    const Plan *plan = nails->job->plan;
    const char *list = "";
    int count = 0;
    for (int i = 0; i < plan->piece_count; i++)
        if (plan->pieces[i].face == face && held_by(nails, &plan->pieces[i]) == how)
            list = words(nails->arena, "%s%s%d", list, count++ > 0 ? ", " : "", plan->pieces[i].number);
    if (count == 0)
        return;
    put(nails, WEIGHT_STRONG, words(nails->arena, "%s: %s", words_count(nails->arena, count, "piece", "pieces"), what));
    put(nails, WEIGHT_TEXT, words(nails->arena, "%s.", list));
}

static const char *stud_list(NailPage *nails, const LengthList *studs)
{
    const char *list = "";
    for (int i = 0; i < studs->count; i++)
        list = words(nails->arena, "%s%s%d at %s", list, i > 0 ? "; " : "", i + 1,
                     words_length(nails->arena, nails->wall, studs->at[i]));
    return list;
}

static void add_face(NailPage *nails, int face)
{
    Arena *arena = nails->arena;
    const Face *measured = &nails->wall->faces.at[face];
    const LengthList *studs = &nails->job->layout->faces[face].studs;
    const char *name = words_name(arena, measured->name);
    begin_part(nails, words(arena, "Face %s", name), words(arena, "Face %s", name));
    if (measured->wall == FACE_MASONRY)
        put(nails, WEIGHT_TEXT, "Masonry: the makers of anchors and adhesive say what holds in it.");
    if (studs->count == 0) {
        put(nails, WEIGHT_TEXT, "No studs are written down for this face.");
        return;
    }
    add_reach(nails, face);
    put(nails, WEIGHT_TEXT,
        words(arena, "Stud centers from the face's left end: %s.%s", stud_list(nails, studs),
              measured->studs.regular ? " Evenly spaced studs are assumed. Find each one before you fasten." : ""));
    add_joints(nails, face);
    add_held(nails, face, HELD_BY_NONE, "no stud holds them. Give them a backing strip, or move the joints.");
    add_held(nails, face, HELD_BY_ONE, "one stud alone holds each. Glue them too, or give them a backing strip.");
    add_held(nails, face, HELD_END_OUT,
             words(arena, "an end stands out more than %s. Glue that end, or give it a backing strip.",
                   words_length_unit(arena, nails->wall, OVERHANG_MOST)));
}

static void record_piece(NailPage *nails, const Piece *piece)
{
    Arena *arena = nails->arena;
    const Course *course = details_course(nails->job, piece);
    const Plank plank = plank_measure(arena, nails->job->layout, piece->face, course, piece->left, piece->right);
    const LengthList *studs = studs_of(nails, piece);
    const char **field = sheet_record(nails->sheet)->at;
    field[FIELD_FACE] = nails->wall->faces.at[piece->face].name;
    field[FIELD_COURSE] = words(arena, "%" PRId64, course->number);
    field[FIELD_PIECE] = words(arena, "%d", piece->number);
    if (studs->count == 0)
        return;
    const Hold hold = studs_holding(nails->job->layout, piece);
    field[FIELD_STUDS] = measures_studs(arena, &nails->job->layout->faces[piece->face], &plank);
    field[FIELD_HELD_BY] = words(arena, "%d", hold.studs);
    field[FIELD_LEFT] = words_decimal(arena, nails->wall, hold.left);
    field[FIELD_RIGHT] = words_decimal(arena, nails->wall, hold.right);
    field[FIELD_LEFT_JOINT] = on_stud(studs, piece->left) ? "yes" : "";
    field[FIELD_RIGHT_JOINT] = on_stud(studs, piece->right) ? "yes" : "";
}

Sheet *sheet_nails(Arena *arena, const Job *job, const char *date)
{
    NailPage nails = {.job = job, .wall = job->wall, .arena = arena};
    nails.sheet = sheet_of_job(arena, job, "Nailing page", date);
    sheet_records(nails.sheet, field_names, FIELD_COUNT);
    add_schedule(&nails);
    for (int i = 0; i < job->wall->faces.count; i++)
        add_face(&nails, i);
    for (int i = 0; i < job->plan->piece_count; i++)
        record_piece(&nails, &job->plan->pieces[i]);
    return nails.sheet;
}
