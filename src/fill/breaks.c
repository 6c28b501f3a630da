/*
 *     course k+1   |========|=========|
 *                           at                at - other < stagger: a break
 *     course k     |==========|=======|
 *                             other
 */
#include "fill/breaks.h"

#include "fill/pins.h"

typedef struct Joint {
    Length x;
    int piece;
    bool hung, pinned;
} Joint;

typedef struct CourseJoints {
    Joint *at;
    int count, room;
} CourseJoints;

static void put_joint(Arena *arena, CourseJoints *joints, Length x, const Piece *piece, bool pinned)
{
    Joint *last = joints->count > 0 ? &joints->at[joints->count - 1] : NULL;
    if (last != NULL && last->x == x)
        last->hung = last->hung || piece->hung;
    else
        *arena_push(arena, joints) = (Joint){x, piece->number, piece->hung, pinned};
}

/* The joints of the course that `*next` begins; `*next` moves past its pieces. */
static void read_course(Arena *arena, const Layout *layout, const Plan *plan, int *next, CourseJoints *joints)
{
    joints->count = 0;
    const Piece *first = &plan->pieces[*next];
    const Course *course = &layout->faces[first->face].courses[first->course];
    for (; *next < plan->piece_count; (*next)++) {
        const Piece *piece = &plan->pieces[*next];
        if (piece->face != first->face || piece->course != first->course)
            break;
        const Segment *segment = &course->segments[piece->segment];
        if (piece->left != segment->left)
            put_joint(arena, joints, piece->left, piece,
                      pins_pinned(layout->wall, piece->face, course->number, piece->left));
        if (piece->right != segment->right)
            put_joint(arena, joints, piece->right, piece,
                      pins_pinned(layout->wall, piece->face, course->number, piece->right));
    }
}

static bool at_stud(const LengthList *studs, Length x)
{
    int low = 0, high = studs->count;
    while (low < high) {
        int middle = low + (high - low) / 2;
        if (studs->at[middle] < x)
            low = middle + 1;
        else
            high = middle;
    }
    return low < studs->count && studs->at[low] == x;
}

static bool is_fixed(const Joint *joint)
{
    return joint->pinned || joint->hung;
}

static void find_pairs(Arena *arena, const CourseJoints *low, const CourseJoints *high, Length stagger, Break like,
                       Breaks *out)
{
    int first = 0;
    for (int i = 0; i < high->count; i++) {
        while (first < low->count && low->at[first].x <= high->at[i].x - stagger)
            first++;
        for (int j = first; j < low->count && low->at[j].x < high->at[i].x + stagger; j++) {
            if (low->at[j].hung && high->at[i].hung)
                continue;
            Break found = like;
            found.at = high->at[i].x;
            found.other = low->at[j].x;
            found.piece = high->at[i].piece;
            found.pinned = is_fixed(&low->at[j]) && is_fixed(&high->at[i]);
            *arena_push(arena, out) = found;
        }
    }
}

/* Whether the piece reaches to its segment's end, or to what hangs there; with `pins` to a pin. */
static bool reaches(const Layout *layout, const Plan *plan, int index, bool right, bool pins)
{
    const Piece *piece = &plan->pieces[index];
    const Course *course = &layout->faces[piece->face].courses[piece->course];
    const Segment *segment = &course->segments[piece->segment];
    const Length x = right ? piece->right : piece->left;
    const int beside = right ? index + 1 : index - 1;
    if (x == (right ? segment->right : segment->left) ||
        (pins && pins_pinned(layout->wall, piece->face, course->number, x)))
        return true;
    if (beside < 0 || beside >= plan->piece_count)
        return false;
    const Piece *other = &plan->pieces[beside];
    return other->hung && other->face == piece->face && other->course == piece->course &&
           other->segment == piece->segment && (right ? other->left : other->right) == x;
}

/* Whether the piece covers all that lies between the ends of its segment and what hangs; with `pins` pins too. */
static bool fills_gap(const Layout *layout, const Plan *plan, int index, bool pins)
{
    return reaches(layout, plan, index, false, pins) && reaches(layout, plan, index, true, pins);
}

static void find_in_pieces(Arena *arena, const Layout *layout, const Plan *plan, Breaks *out)
{
    Length shortest = layout->wall->joints.shortest;
    for (int i = 0; i < plan->piece_count; i++) {
        const Piece *piece = &plan->pieces[i];
        Length length = piece->right - piece->left;
        if (!piece->hung && length < shortest && !fills_gap(layout, plan, i, false))
            *arena_push(arena, out) = (Break){RULE_SHORTEST,
                                              piece->face,
                                              piece->course,
                                              piece->left,
                                              length,
                                              piece->number,
                                              fills_gap(layout, plan, i, true)};
    }
}

static void find_off_studs(Arena *arena, const LengthList *studs, const CourseJoints *joints, Break like, Breaks *out)
{
    for (int i = 0; i < joints->count; i++) {
        if (joints->at[i].hung || at_stud(studs, joints->at[i].x))
            continue;
        like.at = joints->at[i].x;
        like.piece = joints->at[i].piece;
        like.pinned = joints->at[i].pinned;
        *arena_push(arena, out) = like;
    }
}

/* The joints of every course, a face after the other; pieces lie course by course, but of several faces by turns where
 * these hang as one. */
static CourseJoints **read_joints(Arena *arena, const Layout *layout, const Plan *plan)
{
    const int faces = layout->wall->faces.count;
    CourseJoints **joints = arena_array(arena, CourseJoints *, faces);
    for (int face = 0; face < faces; face++)
        joints[face] = arena_array(arena, CourseJoints, layout->faces[face].course_count + 1);
    for (int next = 0; next < plan->piece_count;) {
        const Piece *first = &plan->pieces[next];
        read_course(arena, layout, plan, &next, &joints[first->face][first->course]);
    }
    return joints;
}

Breaks breaks_find(Arena *arena, const Layout *layout, const Plan *plan)
{
    Breaks breaks = {0};
    const Length stagger = layout->wall->joints.stagger;
    CourseJoints **joints = read_joints(arena, layout, plan);
    find_in_pieces(arena, layout, plan, &breaks);
    for (int face = 0; face < layout->wall->faces.count; face++) {
        const FaceLayout *on = &layout->faces[face];
        const CourseJoints *courses = joints[face];
        for (int i = 0; i < on->course_count; i++) {
            if (layout->wall->joints.land == LAND_STUDS)
                find_off_studs(arena, &on->studs, &courses[i], (Break){.rule = RULE_STUD, .face = face, .course = i},
                               &breaks);
            if (i > 0 && on->courses[i].number == on->courses[i - 1].number + 1)
                find_pairs(arena, &courses[i - 1], &courses[i], stagger,
                           (Break){.rule = RULE_STAGGER, .face = face, .course = i}, &breaks);
        }
    }
    for (int i = 0; i < breaks.count; i++)
        breaks.weighed += !breaks.at[i].pinned;
    return breaks;
}
