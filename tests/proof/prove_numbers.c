#include "proof/proving.h"

#include "base/wide.h"

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

/* Faces joined by outside miters, directly or through others, are a group, named after its first. */
static void find_groups(const Wall *wall, int *group)
{
    const int count = wall->faces.count;
    for (int i = 0; i < count; i++)
        group[i] = i;
    for (int round = 0; round < count; round++)
        for (int at = 0; at < count; at++) {
            const Corner *corner = &wall->faces.at[at].corner;
            if (corner->kind != CORNER_OUTSIDE || corner->joint != CORNER_MITER)
                continue;
            const int next = (at + 1) % count, least = group[at] < group[next] ? group[at] : group[next];
            group[at] = group[next] = least;
        }
}

static int next_group(const Wall *wall, const int *group, const bool *done)
{
    int first_left = -1;
    for (int of = 0; of < wall->faces.count; of++) {
        if (group[of] != of || done[of])
            continue;
        first_left = first_left < 0 ? of : first_left;
        bool waits = false;
        for (int face = 0; face < wall->faces.count; face++)
            for (int other = 0; other < wall->faces.count; other++)
                waits = waits || (group[face] == of && group[other] != of && !done[group[other]] &&
                                  waits_for(wall, face, other));
        if (!waits)
            return of;
    }
    return first_left;
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

/* The course of that number on every face of the group. */
static void number_courses(Proving *proving, const int *group, int of, int64_t number, int *next)
{
    for (int i = 0; i < proving->said->face_count; i++)
        for (int k = 0; k < proving->said->faces[i].course_count && group[i] == of; k++)
            if (proving->said->faces[i].courses[k].number == number)
                number_course(proving, &proving->said->faces[i].courses[k], next);
}

static void prove_order(Proving *proving)
{
    const Wall *wall = proving->wall;
    const bool upward = wall->planks.hang_given ? wall->planks.hang == HANG_UPWARD : wall->planks.lap > 0;
    int group[WALL_FACES_MOST], next = 0;
    bool done[WALL_FACES_MOST] = {false};
    int64_t low = 0, high = 0;
    find_groups(wall, group);
    for (int i = 0; i < proving->said->face_count; i++)
        for (int k = 0; k < proving->said->faces[i].course_count; k++) {
            const int64_t number = proving->said->faces[i].courses[k].number;
            low = number < low ? number : low;
            high = number > high ? number : high;
        }
    for (int of = next_group(wall, group, done); of >= 0; of = next_group(wall, group, done)) {
        for (int64_t number = upward ? low : 0; number <= high; number++)
            number_courses(proving, group, of, number, &next);
        for (int64_t number = -1; number >= low && !upward; number--)
            number_courses(proving, group, of, number, &next);
        done[of] = true;
    }
}

/* Wood cut wrong opens a board too. */
static bool has_loss(const Wall *wall, int board)
{
    for (int i = 0; i < wall->hung_losses.count; i++)
        if (wall->hung_losses.at[i].board == board)
            return true;
    return false;
}

/* No more is opened than `spend` allows over `length-least`, which is told only where there is something to spend. */
static bool spends_what_it_may(const Proving *proving)
{
    const Joints *joints = &proving->wall->joints;
    const Said *said = proving->said;
    if (!said->least_opened_given)
        return true;
    if (joints->spend_all || proving_happened(proving))
        return joints->spend_all || joints->spend > 0;
    return (Wide)said->length_opened * 100000 <= (Wide)said->least_opened * (100000 + joints->spend);
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
        const bool is_opened = said->boards[i].piece_count > 0 || has_loss(proving->wall, said->boards[i].number);
        opened += is_opened;
        length += is_opened ? said->boards[i].length : 0;
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
    claim(proving, spends_what_it_may(proving), "totals: %lld is opened, where %lld would do", (long long)length,
          (long long)said->least_opened);
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
    if (!proving_happened(proving)) /* after that what did not change keeps its number */
        prove_order(proving);
    prove_totals(proving);
}
