#include "fill/steady/held.h"

#include "fill/breaks.h"
#include "fill/pins.h"

bool held_lost(const Wall *wall, int losses, int records, const Piece *piece)
{
    if (piece->hung)
        return false;
    if (!wall_stock_usable(wall_board(wall, piece->board), records))
        return true;
    Length from = piece->offset - piece->left_kerf;
    Length to = piece->offset + piece->right - piece->left + piece->closer + piece->right_kerf;
    for (int i = 0; i < losses; i++) {
        const HungLoss *loss = &wall->hung_losses.at[i];
        if (loss->board == piece->board && loss->offset < to && loss->offset + loss->length > from)
            return true;
    }
    return false;
}

/* ---- what is let go of ---- */

LetGo let_go_nothing(Arena *arena, const Event *event)
{
    const int faces = event->after->wall->faces.count;
    LetGo let_go = {.trouble = arena_array(arena, bool *, faces), .distance = LET_NOTHING};
    for (int i = 0; i < faces; i++)
        let_go.trouble[i] = arena_array(arena, bool, event->after->faces[i].course_count + 1);
    return let_go;
}

void let_go_more(const Event *event, LetGo *let_go)
{
    int most = 0;
    for (int i = 0; i < event->after->wall->faces.count; i++)
        most = event->after->faces[i].course_count > most ? event->after->faces[i].course_count : most;
    let_go->distance = let_go->distance < 1 ? let_go->distance + 1 : let_go->distance * 3;
    if (let_go->distance >= most)
        let_go->distance = LET_ALL;
}

static bool is_new(const Event *event, const Piece *piece)
{
    const BoardUse *use = &event->plan->boards[piece->board - 1];
    for (int i = use->first; i < use->first + use->count; i++)
        if (same_piece(event->after, piece, event->before, &event->plan->pieces[event->plan->by_board[i]]))
            return false;
    return true;
}

void let_go_trouble(Arena *arena, const Event *event, const Plan *mended, bool changed, LetGo *let_go)
{
    bool **trouble = let_go->trouble;
    for (int i = 0; i < mended->bare_count; i++)
        trouble[mended->bare[i].face][mended->bare[i].course] = true;
    for (int i = 0; i < mended->piece_count && changed; i++) {
        const Piece *piece = &mended->pieces[i];
        if (is_new(event, piece))
            trouble[piece->face][piece->course] = true;
    }
    const Breaks breaks = breaks_find(arena, event->after, mended);
    for (int i = 0; i < breaks.count; i++) {
        const Break *found = &breaks.at[i];
        trouble[found->face][found->course] |= !found->pinned;
        if (found->rule == RULE_STAGGER && found->course > 0) /* the lower of the pair */
            trouble[found->face][found->course - 1] |= !found->pinned;
    }
}

static bool is_let_go(const LetGo *let_go, const FaceLayout *face, int index, int course)
{
    if (let_go->distance == LET_ALL)
        return true;
    for (int i = course - let_go->distance; i <= course + let_go->distance; i++)
        if (i >= 0 && i < face->course_count && let_go->trouble[index][i])
            return true;
    return false;
}

/* A piece of the plan as it comes to lie after the event. */
typedef struct Held {
    bool stays;
    int course, segment; /* of its face, after the event */
    Length left, right, left_kerf, right_kerf;
} Held;

/* The segment that the piece lies on for the greatest length, or -1. */
static int segment_under(const Course *course, const Piece *piece)
{
    int best = -1;
    Length most = 0;
    for (int i = 0; i < course->segment_count; i++) {
        const Segment *segment = &course->segments[i];
        Length from = piece->left > segment->left ? piece->left : segment->left;
        Length to = piece->right < segment->right ? piece->right : segment->right;
        if (to - from > most) {
            most = to - from;
            best = i;
        }
    }
    return best;
}

/* Whether a piece that hangs ends there. */
static bool ends_at_hung(const Event *event, const Piece *piece, int64_t course, Length x)
{
    for (int i = 0; i < event->wall->hung_pieces.count; i++) {
        const Hung *hung = &event->demand->hung[i];
        if (hung->face == piece->face && event->wall->hung_pieces.at[i].course == course &&
            (hung->left == x || hung->right == x))
            return true;
    }
    return false;
}

/* Where the end of a piece comes to be: at its segment's end where it was there, at its stud or at what hangs, else on
 * the nearest mark of the segment as it is now. */
static Length moved_end(const Event *event, const Piece *piece, const Segment *old, const Segment *now, Length x)
{
    const Length round = event->wall->round;
    if (x == old->left)
        return now->left;
    if (x == old->right)
        return now->right;
    const int64_t course = same_course(event->before, piece);
    if (old->left == now->left || ends_at_hung(event, piece, course, x) ||
        pins_pinned(event->wall, piece->face, course, x))
        return x;
    if (event->demand->on_studs && (x - old->left) % round != 0)
        return x;
    return now->left + length_round(x - now->left, round);
}

/* What the blade takes and the board gives: whether a piece may lie between two others or a record and the ends. */
static bool fits_board(const Event *event, const Piece *piece, const Held *held)
{
    const Wall *wall = event->wall;
    const Stock *stock = wall_board(wall, piece->board);
    Length from = piece->offset, to = piece->offset + held->right - held->left + piece->closer;
    if (from < wall->saw.square || to > stock->length - wall->saw.square)
        return false;
    for (int i = 0; i < stock->avoid.count; i++)
        if (from < stock->avoid.at[i].to && to > stock->avoid.at[i].from)
            return false;
    for (int i = 0; i < wall->hung_pieces.count; i++) {
        const HungPiece *record = &wall->hung_pieces.at[i];
        const Hung *hung = &event->demand->hung[i];
        if (record->board != piece->board || hung->fault != HUNG_FITS)
            continue;
        Length offset = record->offset_given ? record->offset : hung->offset;
        Length length = record->exact ? record->right - record->left : hung->right - hung->left;
        Length end = offset + length + record->closer;
        Length before = hung->right_kerf > held->left_kerf ? hung->right_kerf : held->left_kerf;
        Length behind = hung->left_kerf > held->right_kerf ? hung->left_kerf : held->right_kerf;
        if (from < end + before && offset < to + behind)
            return false;
    }
    return true;
}

/* Whether the piece can still be cut: its course may have become higher than its board is wide, or it may fall apart.
 */
static bool fits_wall(const Event *event, const Piece *piece, const Course *course, const Held *held)
{
    const Wall *wall = event->wall;
    const Stock *stock = wall_board(wall, piece->board);
    Length width = stock->width_given ? stock->width : wall_widest(wall);
    return held->left < held->right && layout_need(wall, course, held->left, held->right) <= width &&
           layout_whole(course, held->left, held->right) &&
           pins_allow(wall, piece->face, course->number, &course->segments[held->segment], held->left, held->right);
}

/* The piece after the event, whatever lies beside it on its board. */
static Held hold_piece(const Event *event, const Piece *piece)
{
    Held held = {.course = -1, .segment = -1};
    const FaceLayout *face = &event->after->faces[piece->face];
    if (piece->hung || held_lost(event->wall, event->wall->hung_losses.count, event->records, piece))
        return held;
    held.course = layout_course_index(face, same_course(event->before, piece));
    if (held.course < 0)
        return held;
    const Course *course = &face->courses[held.course];
    held.segment = segment_under(course, piece);
    if (held.segment < 0)
        return held;
    const Segment *now = &course->segments[held.segment];
    const Segment *old = &event->before->faces[piece->face].courses[piece->course].segments[piece->segment];
    held.left = moved_end(event, piece, old, now, piece->left);
    held.right = moved_end(event, piece, old, now, piece->right);
    held.left_kerf = held.left == now->left ? now->left_kerf : event->demand->kerf;
    held.right_kerf = held.right == now->right ? now->right_kerf : event->demand->kerf;
    held.stays = held.left >= now->left && held.right <= now->right && fits_wall(event, piece, course, &held) &&
                 fits_board(event, piece, &held);
    return held;
}

/* Every piece of the plan after the event; of two that have come too near on their board the second goes. */
static Held *hold_pieces(const Event *event, Arena *arena)
{
    const Plan *plan = event->plan;
    Held *held = arena_array(arena, Held, plan->piece_count + 1);
    for (int i = 0; i < plan->piece_count; i++)
        held[i] = hold_piece(event, &plan->pieces[i]);
    for (int i = 0; i < plan->board_count; i++) {
        const BoardUse *use = &plan->boards[i];
        const Held *before = NULL;
        Length end = 0;
        for (int j = use->first; j < use->first + use->count; j++) {
            const Piece *piece = &plan->pieces[plan->by_board[j]];
            Held *here = &held[plan->by_board[j]];
            if (!here->stays)
                continue;
            if (before != NULL) {
                Length kerf = before->right_kerf > here->left_kerf ? before->right_kerf : here->left_kerf;
                here->stays = piece->offset >= end + kerf;
            }
            if (here->stays) {
                before = here;
                end = piece->offset + here->right - here->left + piece->closer;
            }
        }
    }
    return held;
}

int held_add(Arena *arena, const Event *event, const LetGo *let_go, Wall *wall)
{
    const Plan *plan = event->plan;
    const Held *held = hold_pieces(event, arena);
    const int hung = wall->hung_pieces.count;
    int place = hung_next_place(wall);
    for (int i = 0; i < plan->piece_count; i++) {
        const Piece *piece = &plan->pieces[i];
        if (!held[i].stays || is_let_go(let_go, &event->after->faces[piece->face], piece->face, held[i].course))
            continue;
        *arena_push(arena, &wall->hung_pieces) = (HungPiece){.face = wall->faces.at[piece->face].name,
                                                             .course = (int)same_course(event->before, piece),
                                                             .left = held[i].left,
                                                             .right = held[i].right,
                                                             .board = piece->board,
                                                             .offset_given = true,
                                                             .offset = piece->offset,
                                                             .state = PIECE_PLANNED,
                                                             .exact = true,
                                                             .closer = piece->closer,
                                                             .place = place};
    }
    return wall->hung_pieces.count - hung;
}
