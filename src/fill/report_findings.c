#include "fill/report_findings.h"

#include "base/text.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* A length as the wall marks it. */
typedef struct Shown {
    char text[LENGTH_TEXT_MAX];
} Shown;

static Shown show(const Wall *wall, Length length)
{
    Shown shown;
    length_show_unit(length, wall->units, wall->round, shown.text);
    return shown;
}

static Finding *add(Arena *arena, const Layout *layout, Plan *plan, Rule rule, int face, int course)
{
    Finding *finding = arena_push(arena, &plan->findings);
    *finding = finding_of(rule);
    finding->face = face;
    if (face >= 0 && course >= 0) {
        finding->has_course = true;
        finding->course = layout->faces[face].courses[course].number;
    }
    return finding;
}

/* ---- rules broken ---- */

static void report_break(Arena *arena, const Demand *demand, const Break *found, Plan *plan)
{
    const Wall *wall = demand->wall;
    Finding *finding = add(arena, demand->layout, plan, found->rule, found->face, found->course);
    finding->has_at = true;
    finding->at = found->at;
    finding->piece = found->piece;
    for (int i = 0; i < plan->piece_count; i++)
        if (plan->pieces[i].number == found->piece)
            finding->board = plan->pieces[i].board;
    Shown at = show(wall, found->at), other = show(wall, found->other);
    if (found->rule == RULE_STAGGER) {
        Length apart = found->at > found->other ? found->at - found->other : found->other - found->at;
        Shown distance = show(wall, apart), asked = show(wall, demand->stagger);
        finding->text =
            text_in(arena, "the joint at %s stands %s from the one at %s in the course below; %s are asked for.",
                    at.text, distance.text, other.text, asked.text);
    } else if (found->rule == RULE_SHORTEST) {
        Shown asked = show(wall, wall->joints.shortest);
        finding->text = text_in(arena, "the piece at %s is %s long; no piece should be shorter than %s.", at.text,
                                other.text, asked.text);
    } else if (demand->layout->faces[found->face].studs.count == 0) {
        finding->text = text_in(arena, "the joint at %s stands on no stud: this face has none written down.", at.text);
    } else {
        finding->text = text_in(arena, "the joint at %s stands on no stud: back it with a block.", at.text);
    }
}

/* ---- wall left bare ---- */

/* Longest rest of any board so wide or wider, from the widest down. */
typedef struct Rest {
    Length width, longest;
    int board; /* number */
} Rest;

static int from_widest(const void *a, const void *b)
{
    const Rest *one = a, *other = b;
    if (one->width != other->width)
        return one->width > other->width ? -1 : 1;
    return (one->board > other->board) - (one->board < other->board);
}

static Rest *list_rests(Arena *arena, const Wall *wall, const Plan *plan)
{
    Rest *rests = arena_array(arena, Rest, plan->board_count);
    Length widest = wall_widest(wall);
    int board = 0;
    for (int line = 0; line < wall->stock.count; line++) {
        const Stock *stock = &wall->stock.at[line];
        for (int i = 0; i < stock->count; i++, board++)
            rests[board] = (Rest){stock->width_given ? stock->width : widest, plan->boards[board].left_over, board + 1};
    }
    if (plan->board_count > 1)
        qsort(rests, (size_t)plan->board_count, sizeof *rests, from_widest);
    for (int i = 1; i < plan->board_count; i++)
        if (rests[i - 1].longest > rests[i].longest)
            rests[i].longest = rests[i - 1].longest;
    return rests;
}

static Length longest_rest(const Rest *rests, int count, Length width)
{
    int low = 0, high = count; /* the first that is too narrow */
    while (low < high) {
        int middle = low + (high - low) / 2;
        if (rests[middle].width >= width)
            low = middle + 1;
        else
            high = middle;
    }
    return low > 0 ? rests[low - 1].longest : 0;
}

/* What a bare stretch is told by. */
typedef struct BareFacts {
    const Plan *plan;
    const char *place;
    Length length, shortest, need; /* of the stretch; of a piece there; the width it needs */
    Length rest, any;              /* the longest rest as wide as that, and of any width */
    bool wide_enough;              /* some board at hand is */
    bool too_few;
    const Wall *wall;
} BareFacts;

/* Where nothing that is wide enough is left. */
static const char *no_rest_words(Arena *arena, const BareFacts *facts)
{
    if (facts->any > 0)
        return text_in(arena, "%s: too few boards: nothing is left that is %s wide, as is needed here.", facts->place,
                       show(facts->wall, facts->need).text);
    if (facts->plan->piece_count == 0)
        return text_in(arena, "%s: squaring and the stretches to avoid take all of every board; look at both.",
                       facts->place);
    return text_in(arena, "%s: too few boards: nothing is left of any.", facts->place);
}

static const char *bare_words(Arena *arena, const BareFacts *facts)
{
    const char *place = facts->place;
    const Shown longest = show(facts->wall, facts->rest), least = show(facts->wall, facts->shortest);
    if (facts->plan->board_count == 0)
        return text_in(arena, "%s: there are no boards; write what is at hand under stock.", place);
    if (!facts->wide_enough)
        return text_in(arena, "%s: no board at hand is %s wide, as is needed here.", place,
                       show(facts->wall, facts->need).text);
    if (facts->rest <= 0)
        return no_rest_words(arena, facts);
    if (facts->rest < facts->shortest && facts->plan->piece_count == 0)
        return text_in(arena, "%s: no board is long enough: the longest gives %s, and no piece may be shorter than %s.",
                       place, longest.text, least.text);
    if (facts->rest < facts->shortest)
        return text_in(arena, "%s: too few boards: the longest rest is %s, and no piece may be shorter than %s.", place,
                       longest.text, least.text);
    if (facts->too_few)
        return text_in(arena, "%s: too few boards: the longest rest is %s.", place, longest.text);
    if (facts->rest < facts->length)
        return text_in(arena,
                       "%s: of the boards left the longest reaches %s, and the rules let no joint stand where it would "
                       "end.",
                       place, longest.text);
    return text_in(arena, "%s: the rules let no piece end where it would have to.", place);
}

static void report_bare(Arena *arena, const Demand *demand, const Rest *rests, Bare *bare, Plan *plan)
{
    const Wall *wall = demand->wall;
    const Course *course = &demand->layout->faces[bare->face].courses[bare->course];
    const Segment *segment = &course->segments[bare->segment];
    const Length need = layout_need(wall, course, bare->left, bare->right);
    BareFacts facts = {.plan = plan,
                       .length = bare->right - bare->left,
                       .shortest = segment->right - segment->left < wall->joints.shortest ? 0 : wall->joints.shortest,
                       .need = need,
                       .rest = longest_rest(rests, plan->board_count, need),
                       .any = longest_rest(rests, plan->board_count, 0),
                       .wide_enough = plan->board_count > 0 && rests[0].width >= need,
                       .wall = wall};
    bare->too_few = facts.rest < facts.shortest || facts.rest < wall->round;
    facts.too_few = bare->too_few;
    facts.place = text_in(arena, "bare from %s to %s", show(wall, bare->left).text, show(wall, bare->right).text);
    Finding *finding = add(arena, demand->layout, plan, RULE_STOCK, bare->face, bare->course);
    finding->has_at = true;
    finding->at = bare->left;
    finding->text = bare_words(arena, &facts);
}

/* ---- hung pieces that do not fit, or should not have been cut as they were ---- */

/* Why a record does not fit, and what mends it. */
static const char *misfit_words(Arena *arena, const Wall *wall, const Hung *hung, int board)
{
    switch (hung->fault) {
    case HUNG_FITS: break;
    case HUNG_NO_PLACE: return "lies where no wood hangs; correct its face, course or ends";
    case HUNG_LEAVES:
        return text_in(arena, "reaches beyond the end of its section by more than %s; correct its ends",
                       show(wall, wall->joints.closer > HUNG_NEAR ? wall->joints.closer : HUNG_NEAR).text);
    case HUNG_OVERLAPS: return "lies over another hung piece; correct the ends of one of them";
    case HUNG_NO_BOARD:
        return text_in(arena, "is from board %d, which is not there; boards are numbered from 1 to %d", board,
                       wall_board_count(wall));
    case HUNG_TOO_SHORT:
        return text_in(arena, "is from board %d, which is too short for it; correct its board or its offset", board);
    case HUNG_TWICE:
        return text_in(arena, "takes wood of board %d that is in another hung piece; correct an offset", board);
    }
    return "";
}

static void report_hung(Arena *arena, const Demand *demand, int index, Plan *plan)
{
    const Wall *wall = demand->wall;
    const Hung *hung = &demand->hung[index];
    const HungPiece *record = &wall->hung_pieces.at[index];
    Finding *finding = add(arena, demand->layout, plan, RULE_HUNG, hung->face, hung->course);
    if (hung->face >= 0) {
        finding->has_course = true;
        finding->course = record->course;
    }
    finding->has_at = true;
    finding->at = record->left;
    if (hung->fault != HUNG_NO_BOARD)
        finding->board = record->board;
    Shown from = show(wall, record->left), to = show(wall, record->right);
    const char *what = text_in(arena, "the hung piece from %s to %s", from.text, to.text);
    if (hung->fault == HUNG_FITS) {
        Shown first = show(wall, hung->across->from), last = show(wall, hung->across->to);
        finding->text =
            text_in(arena,
                    "%s is cut across %s to %s of board %d, which is to be avoided; look at what hangs there, or "
                    "correct its board, its offset or the stretch; it stays in the plan.",
                    what, first.text, last.text, record->board);
        return;
    }
    finding->text =
        text_in(arena, "%s %s; it is left out of the plan.", what, misfit_words(arena, wall, hung, record->board));
}

/* Wood that was lost of a board that is not there; beyond the end of one that is, wall_check refuses it. */
static void report_loss(Arena *arena, const Demand *demand, const HungLoss *loss, Plan *plan)
{
    if (loss->board >= 1 && loss->board <= plan->board_count)
        return;
    Shown from = show(demand->wall, loss->offset), to = show(demand->wall, loss->offset + loss->length);
    add(arena, demand->layout, plan, RULE_HUNG, -1, -1)->text =
        text_in(arena,
                "the lost wood from %s to %s is of board %d, which is not there; boards are numbered from 1 to %d. "
                "Nothing is taken out for it.",
                from.text, to.text, loss->board, plan->board_count);
}

/* ---- closers that no board gave ---- */

static void report_closers(Arena *arena, const Demand *demand, Plan *plan)
{
    if (plan->closers_off == 0)
        return;
    Text text;
    text_init(&text);
    text_format(&text, "no board gave %s over for %d of the pieces that close a section: ",
                show(demand->wall, demand->wall->joints.closer).text, plan->closers_off);
    for (int i = 0, told = 0; i < plan->piece_count; i++)
        if (plan->pieces[i].closer_off)
            text_format(&text, told++ > 0 ? ", %d" : "%d", plan->pieces[i].number);
    text_put(&text, ". Measure at the wall before you cut these, or keep less over.");
    Finding *finding = add(arena, demand->layout, plan, RULE_CLOSER, -1, -1);
    finding->text = arena_text(arena, text.bytes, text.length);
    text_finish(&text);
}

/* ---- pins that are not kept as they are meant ---- */

/* Whether a piece ends at the pin; `over` gets the piece that lies over it, if any. */
static bool is_made(const Layout *layout, const Plan *plan, int face, const Pin *pin, const Piece **over)
{
    *over = NULL;
    for (int i = 0; i < plan->piece_count; i++) {
        const Piece *piece = &plan->pieces[i];
        if (piece->face != face || layout->faces[face].courses[piece->course].number != pin->course)
            continue;
        if (piece->left == pin->at || piece->right == pin->at)
            return true;
        if (piece->left < pin->at && pin->at < piece->right)
            *over = piece;
    }
    return false;
}

static void report_pin(Arena *arena, const Demand *demand, const Pin *pin, Plan *plan)
{
    const int face = wall_face_named(demand->wall, pin->face);
    const Piece *over = NULL;
    const bool made = face >= 0 && is_made(demand->layout, plan, face, pin, &over);
    if (face < 0 || (made && !pins_barred_on(demand->wall, face, pin->course, pin->at)))
        return;
    Finding *finding = add(arena, demand->layout, plan, RULE_PIN, face, -1);
    finding->has_course = finding->has_at = true;
    finding->course = pin->course;
    finding->at = pin->at;
    finding->piece = over != NULL ? over->number : 0;
    finding->board = over != NULL ? over->board : 0;
    const Shown at = show(demand->wall, pin->at);
    if (made)
        finding->text =
            text_in(arena, "the joint pinned at %s is made, though a bar is there; take one of them away.", at.text);
    else if (over != NULL)
        finding->text = text_in(arena, "the joint pinned at %s is not made: piece %d hangs over it; take the pin away.",
                                at.text, over->number);
    else
        finding->text = text_in(arena,
                                "the joint pinned at %s is not made: no wood hangs beside it; move the pin, or "
                                "take it away.",
                                at.text);
}

void report_changed(Arena *arena, const Demand *demand, Plan *plan)
{
    if (plan->changed_count == 0)
        return;
    Text text;
    text_init(&text);
    text_format(&text, "%d %s changed after what happened last: ", plan->changed_count,
                plan->changed_count == 1 ? "piece" : "pieces");
    for (int i = 0; i < plan->changed_count; i++)
        text_format(&text, i > 0 ? ", %d" : "%d", plan->changed[i]);
    text_put(&text, ". Print the sheets again before you cut any of these; all other pieces stay as printed.");
    add(arena, demand->layout, plan, RULE_ANEW, -1, -1)->text = arena_text(arena, text.bytes, text.length);
    text_finish(&text);
}

void report_findings(Arena *arena, const Demand *demand, const Breaks *breaks, Plan *plan)
{
    for (int i = 0; i < breaks->count; i++)
        report_break(arena, demand, &breaks->at[i], plan);
    const Rest *rests = plan->bare_count > 0 ? list_rests(arena, demand->wall, plan) : NULL;
    for (int i = 0; i < plan->bare_count; i++)
        report_bare(arena, demand, rests, &plan->bare[i], plan);
    for (int i = 0; i < demand->hung_count; i++)
        if (demand->hung[i].fault != HUNG_FITS || demand->hung[i].across != NULL)
            report_hung(arena, demand, i, plan);
    for (int i = 0; i < demand->wall->hung_losses.count; i++)
        report_loss(arena, demand, &demand->wall->hung_losses.at[i], plan);
    report_closers(arena, demand, plan);
    for (int i = 0; i < demand->wall->joints.pins.count; i++)
        report_pin(arena, demand, &demand->wall->joints.pins.at[i], plan);
}

void report_bound(Arena *arena, Bound bound, Plan *plan)
{
    plan->length_bound = bound.length;
    plan->boards_bound = bound.boards;
    plan->bound_known = bound.length <= plan->length_opened && bound.boards <= plan->boards_opened;
    if (plan->bound_known)
        return;
    Finding *finding = arena_push(arena, &plan->findings);
    *finding = finding_of(RULE_BOUND);
    finding->text =
        "The lower limit on boards that datumrow worked out failed its own check, so it is left out. Cut by "
        "the plan as it is, and report this error with the wall file.";
}
