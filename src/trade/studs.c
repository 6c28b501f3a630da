#include "trade/studs.h"

/* How many centres lie below x, or at it too with `at`. */
static int below(const LengthList *studs, Length x, bool at)
{
    int low = 0;
    int high = studs->count;
    while (low < high) {
        int middle = low + (high - low) / 2;
        if (studs->at[middle] < x || (at && studs->at[middle] == x))
            low = middle + 1;
        else
            high = middle;
    }
    return low;
}

int studs_between(const LengthList *studs, Length left, Length right)
{
    return right < left ? 0 : below(studs, right, true) - below(studs, left, false);
}

bool studs_missing(const Layout *layout, const Piece *piece)
{
    const Face *face = &layout->wall->faces.at[piece->face];
    return face->wall == FACE_STUDS && face->studs.given &&
           studs_between(&layout->faces[piece->face].studs, piece->left, piece->right) == 0;
}

/* Whether the end of the piece is a joint, not an end of its segment. */
static bool is_joint(const Course *course, const Piece *piece, Length end)
{
    if (piece->segment >= course->segment_count)
        return false;
    const Segment *segment = &course->segments[piece->segment];
    return end != segment->left && end != segment->right;
}

Hold studs_holding(const Layout *layout, const Piece *piece)
{
    const FaceLayout *face = &layout->faces[piece->face];
    const Course *course = &face->courses[piece->course];
    const LengthList *studs = &face->studs;
    Hold hold = {0};
    int first = below(studs, piece->left, false), last = below(studs, piece->right, true) - 1;
    while (first <= last && studs->at[first] < piece->left + STUD_END_LEAST &&
           !(studs->at[first] == piece->left && is_joint(course, piece, piece->left)))
        first++;
    while (first <= last && studs->at[last] > piece->right - STUD_END_LEAST &&
           !(studs->at[last] == piece->right && is_joint(course, piece, piece->right)))
        last--;
    if (first > last)
        return hold;
    hold.studs = last - first + 1;
    hold.left = studs->at[first] - piece->left;
    hold.right = piece->right - studs->at[last];
    return hold;
}

Length fastener_stack(const Wall *wall, int face)
{
    return wall->planks.thickness + wall->faces.at[face].backing + wall->fasteners.drywall;
}

bool opening_cuts(const FaceLayout *face, int opening)
{
    for (int i = 0; i < face->course_count; i++)
        for (int j = 0; j < face->courses[i].cut_count; j++)
            if (face->courses[i].cuts[j].opening == opening)
                return true;
    return false;
}
