#include "proof/proving.h"

#include <stdlib.h>

/*
 * A face waits for the one that runs through an inside corner that they share, and one that laps an outside corner for
 * the one whose ends it covers. Again and again the first face of the file that waits for none of those left is next;
 * where each waits, the first.
 */

static bool waits_for(const Wall *wall, int face, int other)
{
    const int count = wall->faces.count;
    for (int at = 0; at < count; at++) {
        const Corner *corner = &wall->faces.at[at].corner;
        const int next = (at + 1) % count;
        const bool butt = corner->kind == CORNER_INSIDE && corner->joint == CORNER_BUTT;
        const bool lap = corner->kind == CORNER_OUTSIDE && corner->joint == CORNER_LAP;
        if (!butt && !lap)
            continue;
        const int through = corner->through == THROUGH_LEFT ? at : next, ends = through == at ? next : at;
        const int first = butt ? through : ends, second = butt ? ends : through;
        if (first != second && face == second && other == first)
            return true;
    }
    return false;
}

static void order_faces(const Wall *wall, int *order)
{
    const int count = wall->faces.count;
    bool done[WALL_FACES_MOST] = {false};
    for (int put = 0; put < count; put++) {
        int next = -1;
        for (int face = 0; face < count && next < 0; face++) {
            bool waits = done[face];
            for (int other = 0; other < count; other++)
                waits = waits || (!done[other] && other != face && waits_for(wall, face, other));
            next = waits ? -1 : face;
        }
        for (int face = 0; face < count && next < 0; face++)
            next = done[face] ? -1 : face;
        done[next] = true;
        order[put] = next;
    }
}

static void number_course(Proving *proving, const SaidCourse *course, int *next)
{
    for (int i = 0; i < course->segment_count; i++)
        for (int k = 0; k < course->segments[i].piece_count; k++) {
            const SaidPiece *piece = &course->segments[i].pieces[k];
            ++*next;
            claim(proving, piece->number == *next, "piece %d hangs as number %d", piece->number, *next);
        }
}

static void prove_order(Proving *proving)
{
    int order[WALL_FACES_MOST], next = 0;
    order_faces(proving->wall, order);
    for (int i = 0; i < proving->said->face_count; i++) {
        const SaidFace *face = &proving->said->faces[order[i]];
        for (int k = 0; k < face->course_count; k++)
            if (face->courses[k].number >= 0)
                number_course(proving, &face->courses[k], &next);
        for (int k = face->course_count - 1; k >= 0; k--)
            if (face->courses[k].number < 0)
                number_course(proving, &face->courses[k], &next);
    }
}

static void prove_totals(Proving *proving)
{
    const Said *said = proving->said;
    int64_t courses = 0, pieces = 0, joints = 0, used = 0, missing = 0, opened = 0, length = 0;
    for (int i = 0; i < said->face_count; i++)
        for (int k = 0; k < said->faces[i].course_count; k++, courses++)
            for (int s = 0; s < said->faces[i].courses[k].segment_count; s++) {
                const SaidSegment *segment = &said->faces[i].courses[k].segments[s];
                for (int p = 0; p < segment->piece_count; p++, pieces++) {
                    used += segment->pieces[p].right - segment->pieces[p].left;
                    joints += p > 0 && segment->pieces[p - 1].right == segment->pieces[p].left;
                }
                for (int m = 0; m < segment->missing_count; m++)
                    missing += segment->missing[m].to - segment->missing[m].from;
            }
    for (int i = 0; i < said->board_count; i++) {
        opened += said->boards[i].piece_count > 0;
        length += said->boards[i].piece_count > 0 ? said->boards[i].length : 0;
    }
    claim(proving, said->courses == courses, "totals: %lld courses, there are %lld", (long long)said->courses,
          (long long)courses);
    claim(proving, said->pieces == pieces, "totals: %lld pieces, there are %lld", (long long)said->pieces,
          (long long)pieces);
    claim(proving, said->joints == joints, "totals: %lld joints, there are %lld", (long long)said->joints,
          (long long)joints);
    claim(proving, said->boards_opened == opened && said->length_opened == length,
          "totals: %lld boards of %lld opened, there are %lld of %lld", (long long)said->boards_opened,
          (long long)said->length_opened, (long long)opened, (long long)length);
    claim(proving, said->length_used == used && said->missing == missing,
          "totals: %lld used and %lld missing, there are %lld and %lld", (long long)said->length_used,
          (long long)said->missing, (long long)used, (long long)missing);
    claim(proving, !said->bound_given || said->bound <= length, "totals: the bound %lld is above what is opened",
          (long long)said->bound);
}

void prove_numbers(Proving *proving)
{
    const Wall *wall = proving->wall;
    claim(proving, proving->said->pitch_count == wall->planks.widths.count, "%d pitches", proving->said->pitch_count);
    for (int i = 0; i < wall->planks.widths.count && i < proving->said->pitch_count; i++)
        claim(proving, proving->said->pitch[i] == wall->planks.widths.at[i] - wall->planks.lap + wall->planks.reveal,
              "pitch %d is %lld", i, (long long)proving->said->pitch[i]);
    prove_order(proving);
    prove_totals(proving);
}
