#include "sheet/sheets/sheets.h"

#include <string.h>

#include "job/words.h"
#include "sheet/face.h"
#include "sheet/plan_number.h"
#include "trade/corner.h"

/*
 * The first page: what to know before anything is cut, once for the whole job: the plan's number, what changed, the
 * order of work, faces in hanging order, tools, what the boards come to, the key to the stock, every finding.
 */
enum { TICK = 0, TEXT = 4, HALF = 38, KEY_BOARDS = 12, KEY_WHAT = 13, KEY_WIDTH = 24 };

typedef struct FirstPage {
    Sheet *sheet;
    const Job *job;
    const Wall *wall;
    Arena *arena;
    SheetSection *section;
} FirstPage;

static void begin_part(FirstPage *first, const char *head)
{
    first->section = sheet_section(first->sheet, "All faces", false);
    SheetLine *line = sheet_line(first->sheet, &first->section->heads);
    line->rule = true;
    sheet_cell(first->sheet, line, 0, SHEET_COLUMNS, ALIGN_LEFT, WEIGHT_WORDS, head);
}

static void put(FirstPage *first, Weight weight, const char *text)
{
    sheet_words(first->sheet, &sheet_group(first->sheet, first->section)->lines, 0, weight, text);
}

static void put_step(FirstPage *first, const char *text)
{
    SheetLine *line = sheet_line(first->sheet, &sheet_group(first->sheet, first->section)->lines);
    sheet_tick(first->sheet, line, TICK, false);
    sheet_cell(first->sheet, line, TEXT, SHEET_COLUMNS - TEXT, ALIGN_LEFT, WEIGHT_TEXT, text);
}

static void add_number(FirstPage *first)
{
    Arena *arena = first->arena;
    const Plan *plan = first->job->plan;
    first->section = sheet_section(first->sheet, "All faces", false);
    put(first, WEIGHT_WORDS,
        words(arena, "This is plan %s. Throw out sheets with another number.", first->sheet->plan));
    if (plan->changed_count == 0)
        return;
    const char *list = "";
    for (int i = 0; i < plan->changed_count; i++)
        list = words(arena, "%s%s%d", list, i > 0 ? ", " : "", plan->changed[i]);
    put(first, WEIGHT_STRONG,
        words(arena, "The last event changed %s %s.", plan->changed_count == 1 ? "piece" : "pieces", list));
}

static bool has_studs(const Wall *wall)
{
    for (int i = 0; i < wall->faces.count; i++)
        if (wall->faces.at[i].studs.given)
            return true;
    return false;
}

/* Common practice. */
static void add_order(FirstPage *first)
{
    const Wall *wall = first->wall;
    begin_part(first, "Order of work (common practice)");
    put_step(first,
             "Read the hazards below and settle them, with those whom they name, before you cut or fasten anything.");
    put_step(first, has_studs(wall)
                        ? "Strike the level line round the whole job. Find and mark every stud, cable and pipe."
                        : "Strike the level line round the whole job. Find and mark every cable and pipe.");
    if (wall->rough.count > 0)
        put_step(first, "Mill the rough boards by the mill sheet, and let the planks rest.");
    put_step(first, "Mark the courses' edges on the faces from the level line, with the story pole.");
    put_step(first,
             "Cut by the cut sheet, board by board as you hang, or by the batch sheet, one setting of the saw after "
             "the other.");
    put_step(first, wall_hangs_upward(wall)
                        ? "Hang by the row sheet: the faces in their order, on each the lowest course first, then up."
                        : "Hang by the row sheet: the faces in their order, on each course 0 first, then up, then down "
                          "from it.");
    put_step(first,
             "Every few courses measure an edge, pencil it on the row sheet and enter it: what is still to hang is "
             "then worked out from what hangs.");
    if (wall->trim.given)
        put_step(first, "Cut the trim to what you find on the wall; the cut sheet says from which boards.");
}

static void add_faces(FirstPage *first)
{
    if (first->wall->faces.count < 2)
        return;
    begin_part(first, "Faces in hanging order");
    const CornerTurn *turns = corner_turns(first->arena, first->wall);
    for (int i = 0; i < first->wall->faces.count; i++)
        put_step(first, words(first->arena, "%s: %s",
                              words_name(first->arena, first->wall->faces.at[turns[i].face].name), turns[i].text));
}

/* The faces as they will look, in hanging order. */
static void add_sketch(FirstPage *first)
{
    begin_part(first, "The wall");
    const Places places = places_of_plan(first->arena, first->job->layout, first->job->plan);
    const CornerTurn *turns = corner_turns(first->arena, first->wall);
    for (int i = 0; i < first->wall->faces.count; i++) {
        SheetLines *lines = &sheet_group(first->sheet, first->section)->lines;
        const char *name = words_name(first->arena, first->wall->faces.at[turns[i].face].name);
        sheet_words(first->sheet, lines, 0, WEIGHT_STRONG, words(first->arena, "Face %s", name));
        sheet_sketch(first->sheet, lines, drawing_of_face(first->arena, first->job, &places, turns[i].face),
                     "The elevation shows it.");
    }
}

static bool any_rip(const Layout *layout, RipShape least)
{
    for (int i = 0; i < layout->wall->faces.count; i++)
        for (int k = 0; k < layout->faces[i].course_count; k++)
            if (layout->faces[i].courses[k].rip.shape >= least)
                return true;
    return false;
}

static bool any_cut(const Layout *layout)
{
    for (int i = 0; i < layout->wall->faces.count; i++)
        for (int k = 0; k < layout->faces[i].course_count; k++)
            if (layout->faces[i].courses[k].cut_count > 0)
                return true;
    return false;
}

/* Common practice. */
static void add_tools(FirstPage *first)
{
    Arena *arena = first->arena;
    const Wall *wall = first->wall;
    const Layout *layout = first->job->layout;
    begin_part(first, "Tools (common practice)");
    const char *kerf =
        wall->saw.kerf > 0 ? words(arena, " whose blade takes %s", words_length_unit(arena, wall, wall->saw.kerf)) : "";
    put(first, WEIGHT_TEXT,
        words(arena,
              "Tape, level, square, pencil, a straight stick for the pole; a crosscut saw%s with a stop%s%s%s%s.", kerf,
              any_rip(layout, RIP_STRAIGHT) ? "; a saw to rip with" : "",
              any_rip(layout, RIP_TAPER) ? ", a taper jig or clamped straightedge" : "",
              any_cut(layout) ? "; drill and jigsaw for cutouts" : "",
              wall->planks.reveal > 0
                  ? words(arena, "; spacers of %s for the reveal (the bill names things of that thickness)",
                          words_length_unit(arena, wall, wall->planks.reveal))
                  : ""));
}

static void add_bound(FirstPage *first)
{
    Arena *arena = first->arena;
    const Wall *wall = first->wall;
    const Plan *plan = first->job->plan;
    if (plan->bound_known && plan->boards_bound > 0)
        put(first, WEIGHT_TEXT,
            words(arena, "%s; no plan that covers as much can do with fewer than %d, nor with less than %s.",
                  words_count(arena, plan->boards_opened, "board", "boards"), plan->boards_bound,
                  words_length_unit(arena, wall, plan->length_bound)));
    else if (plan->bound_known)
        put(first, WEIGHT_TEXT,
            words(arena, "No plan that covers as much can do with less than %s.",
                  words_length_unit(arena, wall, plan->length_bound)));
    else
        put(first, WEIGHT_TEXT, "No lower limit on boards is known for this plan.");
}

/* What is at hand, what is used, what is proved, how it will look: nothing of it is needed at the saw. */
static void add_boards(FirstPage *first)
{
    Arena *arena = first->arena;
    const Wall *wall = first->wall;
    const Plan *plan = first->job->plan;
    begin_part(first, "Boards");
    put(first, WEIGHT_STRONG,
        words(arena, "Uses %d of %s, %s of boards for %s of pieces.", plan->boards_opened,
              words_count(arena, plan->board_count, "board", "boards"),
              words_length_unit(arena, wall, plan->length_opened), words_length_unit(arena, wall, plan->length_used)));
    add_bound(first);
    if (plan->length_least > 0)
        put(first, WEIGHT_TEXT,
            words(arena, "With nothing to spend, %s would do; the rest makes for fewer joints.",
                  words_length_unit(arena, wall, plan->length_least)));
    const char *tones = words_tones(arena, &plan->looks), *joints = words_joints(arena, &plan->looks);
    if (tones != NULL)
        put(first, WEIGHT_TEXT, words(arena, "%s.", tones));
    if (joints != NULL)
        put(first, WEIGHT_TEXT, words(arena, "Looks: %s.", joints));
}

/* "31 1/2 long, gray, 3 1/2 wide, label A7" */
static const char *stock_words(FirstPage *first, const Stock *stock)
{
    Arena *arena = first->arena;
    const char *text = words(arena, "%s", words_length(arena, first->wall, stock->length));
    if (stock->tone[0] != '\0')
        text = words(arena, "%s %s", text, words_name(arena, stock->tone));
    if (stock->width_given)
        text = words(arena, "%s, %s wide", text, words_length(arena, first->wall, stock->width));
    if (stock->label[0] != '\0')
        text = words(arena, "%s, label %s", text, words_name(arena, stock->label));
    return stock->count == 1 ? text : words(arena, "%s, %d alike", text, stock->count);
}

/* Which numbers which boards have: a line of stock each, two beside one another. */
static void add_key(FirstPage *first)
{
    begin_part(first, "Key to the stock");
    SheetLine *line = NULL;
    int number = 1;
    for (int i = 0; i < first->wall->stock.count; i++) {
        const Stock *stock = &first->wall->stock.at[i];
        const int at = i % 2 == 0 ? 0 : HALF, last = number + stock->count - 1;
        if (i % 2 == 0)
            line = sheet_line(first->sheet, &sheet_group(first->sheet, first->section)->lines);
        sheet_cell(first->sheet, line, at, KEY_BOARDS, ALIGN_RIGHT, WEIGHT_STRONG,
                   number == last ? words(first->arena, "%d", number) : words(first->arena, "%d-%d", number, last));
        sheet_cell(first->sheet, line, at + KEY_WHAT, KEY_WIDTH, ALIGN_LEFT, WEIGHT_TEXT, stock_words(first, stock));
        number = last + 1;
    }
}

Sheet *sheet_first(Arena *arena, const Job *job, const char *date)
{
    FirstPage first = {.job = job, .wall = job->wall, .arena = arena};
    first.sheet = sheet_of_job(arena, job, "First page", date);
    add_number(&first);
    add_order(&first);
    add_faces(&first);
    add_sketch(&first);
    add_tools(&first);
    add_boards(&first);
    if (job->wall->stock.count > 0)
        add_key(&first);
    sheet_add_every_finding(first.sheet, job);
    return first.sheet;
}
