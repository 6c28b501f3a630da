#include "trade/studs.h"

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
    return hold_of(&face->studs, &(HoldSpan){.left = piece->left,
                                             .right = piece->right,
                                             .left_joint = is_joint(course, piece, piece->left),
                                             .right_joint = is_joint(course, piece, piece->right)});
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
