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
