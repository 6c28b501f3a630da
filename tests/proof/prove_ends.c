#include "proof/proving.h"

#include "base/wide.h"

#include <string.h>

/*
 *      ______________        An end along one line that leans all the way from the band's lower edge to its upper one:
 * the /              |       blade goes through the plank on a slant, and takes kerf x sqrt(1 + (dx/dy)^2). An upright
 * end
 *    /_______________|       takes the kerf; one at an outside miter, where it is beveled, kerf x sqrt(1 + (dx/dy)^2 +
 * 1).
 */

/* Square, or cut along one line: run over rise of it, as its marks have it. */
typedef struct Lean {
    Length run, rise;
} Lean;

/* The least whole number that is not below kerf x sqrt(1 + (run / rise)^2 + m). */
static Length blade_takes(Length kerf, Lean lean, bool miter)
{
    const Wide over = (Wide)lean.rise * lean.rise * (miter ? 2 : 1) + (Wide)lean.run * lean.run;
    const Wide under = (Wide)lean.rise * lean.rise;
    Length takes = kerf;
    for (Length step = (Length)1 << 40; step > 0; step /= 2)
        while (kerf > 0 && takes + step <= LENGTH_MOST &&
               wide_compare_ratio((Wide)(takes + step - 1) * (takes + step - 1), (Wide)kerf * kerf, over, under) < 0)
            takes += step;
    return takes;
}

/* Upright edges, and those no steeper than 1 in 13, bound no end on a slant. */
static bool has_slants(const SaidPiece *piece)
{
    for (int i = 0; i < piece->point_count; i++) {
        const SaidPoint a = piece->outline[i], b = piece->outline[(i + 1) % piece->point_count];
        const Length run = a.x < b.x ? b.x - a.x : a.x - b.x, rise = a.y < b.y ? b.y - a.y : a.y - b.y;
        if (run > 0 && rise * 13 > run)
            return true;
    }
    return false;
}

/* Whether the end's edge, `over` along x from the band's lower edge to its upper one, is the straight line between the
 * two marks, rounded at both ends. `upright`: of a side, whose marks are told by height. */
static bool is_along(const Mark *a, const Mark *b, bool upright, Length over, Length high, Lean *lean)
{
    const Length along = b->at - a->at, off = b->off < a->off ? a->off - b->off : b->off - a->off;
    *lean = upright ? (Lean){off, along} : (Lean){along, off};
    if (lean->rise == 0 || along == 0)
        return false;
    const Wide apart = (Wide)over * lean->rise - (Wide)lean->run * high;
    return apart <= 2 * (Wide)lean->rise && apart >= -2 * (Wide)lean->rise;
}

/* The piece a band with four corners, its end along one line: of the side, or of a floor or ceiling steeper than 1 in
 * 12. */
static bool lean_of(const Proving *proving, const SaidCut *cut, bool right, Lean *lean)
{
    const Face *face = &proving->wall->faces.at[cut->face_index];
    const Marks *limits[] = {right ? &face->right : &face->left, &face->floor, &face->ceiling};
    const Length high = cut->course->top - cut->course->bottom;
    Length x[2] = {0}; /* of the end, at the lower edge and at the upper */
    bool found[2] = {false};
    *lean = (Lean){0, 1};
    if (cut->piece->point_count != 4)
        return false;
    for (int i = 0; i < 4; i++) {
        const SaidPoint point = cut->piece->outline[i];
        const bool up = point.y == cut->course->top;
        if (!up && point.y != cut->course->bottom)
            return false;
        if (!found[up] || (right ? point.x > x[up] : point.x < x[up]))
            x[up] = point.x;
        found[up] = true;
    }
    const Length over = x[0] < x[1] ? x[1] - x[0] : x[0] - x[1];
    if (over <= 2)
        return true;
    for (int i = 0; i < 3; i++)
        for (int k = 1; k < limits[i]->count; k++)
            if (is_along(&limits[i]->at[k - 1], &limits[i]->at[k], i == 0, over, high, lean)) {
                if (i > 0 && lean->run >= 12 * lean->rise) /* no rake: ripped, not cut off */
                    *lean = (Lean){0, 1};
                return true;
            }
    return false;
}

static bool at_opening(const Proving *proving, const SaidCut *cut, bool right)
{
    const Length x = right ? cut->piece->right : cut->piece->left;
    const Ground ground = ground_of(proving->arena, proving->wall, cut->face_index);
    for (int i = 0; i < ground.box_count; i++)
        if (x == (right ? ground.boxes[i].left : ground.boxes[i].right) && ground.boxes[i].bottom < cut->course->top &&
            ground.boxes[i].top > cut->course->bottom)
            return true;
    return false;
}

/* It is the side that ends the segment there, at one height of the band or all along: no opening, no floor or ceiling.
 */
static bool at_side(const Proving *proving, const SaidCut *cut, bool right)
{
    const SaidCourse *course = cut->course;
    const Length x = right ? cut->piece->right : cut->piece->left;
    if (at_opening(proving, cut, right))
        return false;
    const Ground ground = ground_of(proving->arena, proving->wall, cut->face_index);
    const Marks *marks = right ? &ground.face->right : &ground.face->left;
    for (int i = -2; i < marks->count; i++) {
        const Length y = i == -2 ? course->bottom : i == -1 ? course->top : marks->at[i].at;
        const Real off = ground_side(&ground, right, (Real)y) - (Real)x;
        if (y >= course->bottom && y <= course->top && off < 2 && off > -2)
            return true;
    }
    return false;
}

static const Corner *corner_at(const Wall *wall, int face, bool right)
{
    return &wall->faces.at[right ? face : (face + wall->faces.count - 1) % wall->faces.count].corner;
}

static void prove_end(Proving *proving, SaidCut *cut, bool right)
{
    const Length kerf = proving->wall->saw.kerf;
    const bool at_end = right ? cut->piece->right == cut->segment->right : cut->piece->left == cut->segment->left;
    cut->kerfs[right] = kerf;
    if (!at_end)
        return;
    const Corner *corner = corner_at(proving->wall, cut->face_index, right);
    const bool side = at_side(proving, cut, right);
    const bool miter = side && corner->kind == CORNER_OUTSIDE && corner->joint == CORNER_MITER;
    Lean lean = {0, 1};
    if (corner->kind == CORNER_OUTSIDE && has_slants(cut->piece) && !side)
        cut->unclear = true; /* whether the side has a part in it */
    else if (has_slants(cut->piece) && !lean_of(proving, cut, right, &lean))
        cut->unclear = true;
    else
        cut->kerfs[right] = blade_takes(kerf, lean, miter);
}

/* Neither hung nor cut, nothing planned or bare to its right, and there a hung piece, an opening, or a side with an
 * inside corner or none. */
static bool closes(Proving *proving, const SaidCut *cut)
{
    const SaidSegment *segment = cut->segment;
    if (cut->hangs)
        return false;
    for (int i = 0; i < segment->missing_count; i++)
        if (segment->missing[i].from >= cut->piece->right)
            return false;
    for (int i = 0; i < segment->piece_count; i++)
        if (segment->pieces[i].left >= cut->piece->right &&
            !proving_hangs(proving, cut->face->name, cut->course->number, segment, &segment->pieces[i]))
            return false;
    if (cut->piece->right < segment->right)
        return true;
    if (at_opening(proving, cut, true))
        return true;
    return at_side(proving, cut, true) && corner_at(proving->wall, cut->face_index, true)->kind != CORNER_OUTSIDE;
}

void prove_ends(Proving *proving, SaidCut *cut)
{
    prove_end(proving, cut, false);
    prove_end(proving, cut, true);
    cut->closes = proving->wall->joints.closer > 0 && closes(proving, cut);
    if (cut->closes && proving->said->missing > 0) {
        cut->closes = false; /* it gives way before wood stays bare: where, the plan does not tell */
        cut->unclear = true;
    }
}
