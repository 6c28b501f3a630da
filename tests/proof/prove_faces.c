#include "proof/proving.h"

#include <stdlib.h>
#include <string.h>

/*
 * Every band from the lowest course to the highest is reckoned from the start upward and downward, with measured edges,
 * and cut into columns that end at every end of a piece. Where wood is left two columns wide by less than a tenth of a
 * nanometre at one x, both readings (one segment, or two) are allowed.
 */

enum { REACH = 12000 };         /* mm: no wall of these tests goes so far */
#define AREA_LEAST ((Real)1e9L) /* nm2: a course of less does not exist */
#define NEAR ((Real)0.51L)      /* nm: the nearest whole number */

typedef struct Band {
    int64_t number;
    Length bottom, top;
} Band;

typedef struct Bands {
    Band *at;
    int count, room;
} Bands;

static Length face_of_course(const Wall *wall, int64_t number)
{
    const int64_t count = wall->planks.widths.count;
    return wall->planks.widths.at[((number % count) + count) % count] - wall->planks.lap;
}

static const HungEdge *edge_of(const Wall *wall, const char *face, int64_t course, bool top)
{
    for (int i = 0; i < wall->hung_edges.count; i++) {
        const HungEdge *edge = &wall->hung_edges.at[i];
        if (strcmp(edge->face, face) == 0 && edge->course == course && edge->is_top == top)
            return edge;
    }
    return NULL;
}

/* Upward from course 0, then downward; on a measured edge the band ends and the next begins. One that would leave its
 * band no height is no edge of it. */
static Bands bands_around(Proving *proving, const Face *face)
{
    const Wall *wall = proving->wall;
    const Length reach = REACH * LENGTH_MM;
    Bands bands = {0};
    Length edge = wall->start;
    for (int64_t number = 0; edge < reach; number++) {
        Band band = {number, edge, edge + face_of_course(wall, number)};
        const HungEdge *top = edge_of(wall, face->name, number, true);
        const HungEdge *bottom = number == 0 ? edge_of(wall, face->name, 0, false) : NULL;
        if (bottom != NULL && bottom->height < (top != NULL ? top->height : band.top))
            band.bottom = bottom->height;
        if (top != NULL && top->height > band.bottom)
            band.top = top->height;
        *arena_push(proving->arena, &bands) = band;
        edge = band.top + wall->planks.reveal;
    }
    edge = bands.count > 0 ? bands.at[0].bottom : wall->start;
    for (int64_t number = -1; edge > -reach; number--) {
        Band band = {number, edge - wall->planks.reveal - face_of_course(wall, number), edge - wall->planks.reveal};
        const HungEdge *bottom = edge_of(wall, face->name, number, false);
        if (bottom != NULL && bottom->height < band.top)
            band.bottom = bottom->height;
        *arena_push(proving->arena, &bands) = band;
        edge = band.bottom;
    }
    return bands;
}

/* Hung from the lowest up: every edge is a top, and all courses above it start one reveal from it. */
static Bands bands_upward(Proving *proving, const Face *face)
{
    const Wall *wall = proving->wall;
    const Length reach = REACH * LENGTH_MM, reveal = wall->planks.reveal;
    Bands bands = {0};
    int64_t number = 0;
    Length edge = wall->start;
    while (edge > -reach)
        edge -= reveal + face_of_course(wall, --number);
    for (; edge < reach; number++) {
        Band band = {number, edge, edge + face_of_course(wall, number)};
        const HungEdge *top = edge_of(wall, face->name, number, true);
        if (top != NULL && top->height > band.bottom)
            band.top = top->height;
        *arena_push(proving->arena, &bands) = band;
        edge = band.top + reveal;
    }
    return bands;
}

static Bands bands_of(Proving *proving, const Face *face)
{
    const Planks *planks = &proving->wall->planks;
    const bool upward = planks->hang_given ? planks->hang == HANG_UPWARD : planks->lap > 0;
    return upward ? bands_upward(proving, face) : bands_around(proving, face);
}

/* ---- one course ---- */

typedef struct CourseProof {
    Proving *proving;
    const Ground *ground;
    const SaidFace *face;
    const SaidCourse *course;
    Columns columns;
} CourseProof;

/* How much the wood of two neighbouring columns has in common where they meet. */
static Real shared(const Column *one, const Column *other)
{
    Real most = 0;
    if (other->left - one->right > 1.0L / 128)
        return 0;
    for (int i = 0; i < one->part_count; i++)
        for (int k = 0; k < other->part_count; k++) {
            const Real low = one->parts[i].bottom[1] > other->parts[k].bottom[0] ? one->parts[i].bottom[1]
                                                                                 : other->parts[k].bottom[0];
            const Real high =
                one->parts[i].top[1] < other->parts[k].top[0] ? one->parts[i].top[1] : other->parts[k].top[0];
            most = high - low > most ? high - low : most;
        }
    return most;
}

/* Stretches of x with wood, from the columns. */
typedef struct Run {
    Real left, right;
    bool may_join; /* the next begins where this ends, with next to nothing in common */
} Run;

typedef struct Runs {
    Run *at;
    int count, room;
} Runs;

static Runs runs_of(const CourseProof *proof)
{
    Runs runs = {0};
    const Column *before = NULL;
    for (int i = 0; i < proof->columns.count; i++) {
        const Column *column = &proof->columns.at[i];
        if (column->wood <= 1.0L / 64)
            continue;
        const bool beside = before != NULL && column->left - before->right < 1.0L / 128;
        if (beside && shared(before, column) > 0.1L)
            runs.at[runs.count - 1].right = column->right;
        else {
            if (beside)
                runs.at[runs.count - 1].may_join = true;
            *arena_push(proof->proving->arena, &runs) = (Run){column->left, column->right, false};
        }
        before = column;
    }
    return runs;
}

static bool near(Real exact, Length said)
{
    const Real off = exact - (Real)said;
    return off < NEAR && off > -NEAR;
}

static void prove_segments(CourseProof *proof)
{
    const Runs runs = runs_of(proof);
    int next = 0;
    for (int i = 0; i < runs.count; i++) {
        int last = i;
        const SaidSegment *segment = next < proof->course->segment_count ? &proof->course->segments[next] : NULL;
        const bool narrow = runs.at[i].right - runs.at[i].left < 2 && !runs.at[i].may_join;
        if (narrow && (segment == NULL || !near(runs.at[i].left, segment->left)))
            continue; /* than what is rounded: it may be there or not */
        while (segment != NULL && runs.at[last].may_join && !near(runs.at[last].right, segment->right))
            last++;
        claim(proof->proving,
              segment != NULL && near(runs.at[i].left, segment->left) && near(runs.at[last].right, segment->right),
              "face %s, course %lld: segment %d is %lld to %lld, it should be %.1Lf to %.1Lf", proof->face->name,
              (long long)proof->course->number, next, segment != NULL ? (long long)segment->left : 0,
              segment != NULL ? (long long)segment->right : 0, runs.at[i].left, runs.at[last].right);
        next++;
        i = last;
    }
    int narrow = 0;
    for (int i = next; i < proof->course->segment_count; i++)
        narrow += proof->course->segments[i].right - proof->course->segments[i].left <= 2;
    claim(proof->proving, next + narrow == proof->course->segment_count, "face %s, course %lld: %d segments, not %d",
          proof->face->name, (long long)proof->course->number, proof->course->segment_count, next);
}

/* ---- one piece ---- */

static Real outline_area(const SaidPiece *piece, Real *around)
{
    Real twice = 0;
    for (int i = 0; i < piece->point_count; i++) {
        const SaidPoint a = piece->outline[i], b = piece->outline[(i + 1) % piece->point_count];
        const SaidPoint o = piece->outline[0];
        twice += (Real)(a.x - o.x) * (Real)(b.y - o.y) - (Real)(b.x - o.x) * (Real)(a.y - o.y);
        *around += (Real)llabs(b.x - a.x) + (Real)llabs(b.y - a.y);
    }
    return twice / 2;
}

/* The lower left corner comes first: no point lies left of it, and none at its x below it. */
static bool begins_right(const SaidPiece *piece)
{
    const SaidPoint first = piece->outline[0];
    Length lowest = first.y;
    for (int i = 1; i < piece->point_count; i++)
        lowest = piece->outline[i].y < lowest ? piece->outline[i].y : lowest;
    for (int i = 1; i < piece->point_count; i++)
        if (piece->outline[i].x < first.x && piece->outline[i].y == lowest && first.y == lowest)
            return false;
    return true;
}

/* Whether the sides, with openings left in, part the piece: its outline is then that of the larger body. */
static bool parted(const CourseProof *proof, const SaidPiece *piece)
{
    const Column *before = NULL;
    Ground bare = *proof->ground;
    bare.box_count = 0;
    const Length cuts[] = {piece->left, piece->right};
    const Columns columns =
        ground_columns(proof->proving->arena, &bare, proof->course->bottom, proof->course->top, cuts, 2, true);
    for (int i = 0; i < columns.count; i++) {
        const Column *column = &columns.at[i];
        if (column->right <= (Real)piece->left + 0.01L || column->left >= (Real)piece->right - 0.01L)
            continue;
        if (column->part_count != 1 || (before != NULL && shared(before, column) < 1))
            return true;
        before = column;
    }
    return false;
}

static void prove_outline(CourseProof *proof, const SaidPiece *piece)
{
    Real around = 0;
    const Real area = outline_area(piece, &around);
    const Real region = ground_area(&proof->columns, (Real)piece->left, (Real)piece->right, true);
    const Real slack = 2 * around + 1000;
    for (int i = 0; i < piece->point_count; i++) {
        const SaidPoint point = piece->outline[i];
        claim(proof->proving,
              point.x >= piece->left && point.x <= piece->right && point.y >= proof->course->bottom &&
                  point.y <= proof->course->top,
              "piece %d: its outline leaves its ends or its band", piece->number);
    }
    claim(proof->proving, piece->point_count >= 3 && area > 0, "piece %d: no outline that runs anticlockwise",
          piece->number);
    claim(proof->proving, begins_right(piece), "piece %d: its outline does not begin at the lower left", piece->number);
    claim(proof->proving, (area - region < slack && region - area < slack) || parted(proof, piece),
          "piece %d: outline of %.0Lf nm2, it should be %.0Lf", piece->number, area, region);
}

/* What of a box lies within the piece's own outline, from the columns with openings left in. */
static bool box_takes(const CourseProof *proof, const SaidPiece *piece, const GroundBox *box, Real least)
{
    Ground only = *proof->ground;
    GroundBox one = *box;
    only.boxes = &one;
    only.box_count = 1;
    const Length cuts[] = {piece->left, piece->right};
    const Columns columns =
        ground_columns(proof->proving->arena, &only, proof->course->bottom, proof->course->top, cuts, 2, true);
    return ground_area(&columns, (Real)piece->left, (Real)piece->right, true) -
               ground_area(&columns, (Real)piece->left, (Real)piece->right, false) >
           least;
}

static Length later(Length a, Length b)
{
    return a > b ? a : b;
}

static Length sooner(Length a, Length b)
{
    return a < b ? a : b;
}

static void prove_cutouts(CourseProof *proof, const SaidPiece *piece)
{
    bool *found = arena_array(proof->proving->arena, bool, piece->cutout_count + 1);
    for (int i = 0; i < proof->ground->box_count; i++) {
        const GroundBox *box = &proof->ground->boxes[i];
        const SaidCutout want = {.left = later(box->left, piece->left),
                                 .right = sooner(box->right, piece->right),
                                 .bottom = later(box->bottom, proof->course->bottom),
                                 .top = sooner(box->top, proof->course->top)};
        if (want.left >= want.right || want.bottom >= want.top)
            continue;
        const SaidCutout *is = NULL;
        for (int k = 0; k < piece->cutout_count && is == NULL; k++)
            if (strcmp(piece->cutouts[k].opening, proof->ground->face->openings.at[box->opening].name) == 0) {
                is = &piece->cutouts[k];
                found[k] = true;
            }
        const char *name = proof->ground->face->openings.at[box->opening].name;
        if (is == NULL)
            claim(proof->proving, !box_takes(proof, piece, box, 1e4L), "piece %d: no cutout for %s", piece->number,
                  name);
        else
            claim(proof->proving,
                  is->left == want.left && is->right == want.right && is->bottom == want.bottom &&
                      is->top == want.top && box_takes(proof, piece, box, 0),
                  "piece %d: the cutout for %s is not the grown opening clipped to it", piece->number, name);
    }
    for (int i = 0; i < piece->cutout_count; i++)
        claim(proof->proving, found[i], "piece %d: a cutout for %s, which is not there", piece->number,
              piece->cutouts[i].opening);
}

/* Wood below and above one opening that no column between the ends joins: two pieces, not one. Sides are left aside:
 * where they part a piece no joint could have helped. */
static void prove_whole(CourseProof *proof, const SaidPiece *piece)
{
    if (piece->cutout_count == 0)
        return;
    enum { BODIES_MOST = 4096 };
    static int body[BODIES_MOST]; /* of each part of each column, the least part that it hangs with */
    const Length cuts[] = {piece->left, piece->right};
    const Columns columns =
        ground_columns(proof->proving->arena, proof->ground, proof->course->bottom, proof->course->top, cuts, 2, false);
    int count = 0, first_before = 0;
    const Column *before = NULL;
    for (int i = 0; i < columns.count; i++) {
        const Column *column = &columns.at[i];
        if (column->right <= (Real)piece->left + 0.01L || column->left >= (Real)piece->right - 0.01L)
            continue;
        const int first = count;
        for (int k = 0; k < column->part_count && count < BODIES_MOST; k++, count++) {
            body[count] = count;
            for (int j = 0; before != NULL && j < before->part_count; j++) {
                const Real low = before->parts[j].bottom[1] > column->parts[k].bottom[0] ? before->parts[j].bottom[1]
                                                                                         : column->parts[k].bottom[0];
                const Real high = before->parts[j].top[1] < column->parts[k].top[0] ? before->parts[j].top[1]
                                                                                    : column->parts[k].top[0];
                if (high - low < 0.1L)
                    continue;
                const int a = body[first_before + j], b = body[count];
                for (int m = 0; m <= count; m++)
                    body[m] = body[m] == (a > b ? a : b) ? (a < b ? a : b) : body[m];
            }
        }
        first_before = first;
        before = column;
    }
    bool whole = true;
    for (int i = 1; i < count; i++)
        whole = whole && body[i] == body[0];
    claim(proof->proving, whole, "piece %d does not hang together", piece->number);
}

static void prove_studs(CourseProof *proof, const SaidPiece *piece)
{
    const Studs *studs = &proof->ground->face->studs;
    const Length width = proof->ground->face->width;
    Length at[1024];
    int count = 0;
    if (studs->given && studs->regular)
        for (Length x = studs->first; x <= width && count < 1024; x += studs->spacing)
            at[count++] = x;
    else if (studs->given)
        for (int i = 0; i < studs->at.count && count < 1024; i++)
            at[count++] = studs->at.at[i];
    int next = 0;
    for (int i = 0; i < count; i++)
        if (at[i] >= 0 && at[i] <= width && at[i] >= piece->left && at[i] <= piece->right) {
            claim(proof->proving, next < piece->stud_count && piece->studs[next] == at[i],
                  "piece %d: the stud at %lld is not listed", piece->number, (long long)at[i]);
            next++;
        }
    claim(proof->proving, next == piece->stud_count, "piece %d lists studs that are not there", piece->number);
}

/* ---- a course, a face ---- */

static void prove_course(CourseProof *proof)
{
    const SaidCourse *course = proof->course;
    const int64_t most = face_of_course(proof->proving->wall, course->number);
    claim(proof->proving,
          course->rip_least <= course->rip_most && course->rip_most <= later(most, course->top - course->bottom),
          "face %s, course %lld: its rip", proof->face->name, (long long)course->number);
    prove_segments(proof);
    for (int i = 0; i < course->segment_count; i++)
        for (int k = 0; k < course->segments[i].piece_count; k++) {
            const SaidPiece *piece = &course->segments[i].pieces[k];
            prove_outline(proof, piece);
            prove_cutouts(proof, piece);
            prove_studs(proof, piece);
            if (!proving_hangs(proof->proving, proof->face->name, course->number, &course->segments[i], piece))
                prove_whole(proof, piece);
        }
}

/* Every x at which a piece, a segment or a bare stretch of the course ends. */
static Length *ends_of(Arena *arena, const SaidCourse *course, int *count)
{
    int room = 0;
    for (int i = 0; i < course->segment_count; i++)
        room += 2 + 2 * (course->segments[i].piece_count + course->segments[i].missing_count);
    Length *ends = arena_array(arena, Length, room + 1);
    *count = 0;
    for (int i = 0; i < course->segment_count; i++) {
        const SaidSegment *segment = &course->segments[i];
        for (int k = 0; k < segment->piece_count; k++) {
            ends[(*count)++] = segment->pieces[k].left;
            ends[(*count)++] = segment->pieces[k].right;
        }
        for (int k = 0; k < segment->missing_count; k++) {
            ends[(*count)++] = segment->missing[k].from;
            ends[(*count)++] = segment->missing[k].to;
        }
    }
    return ends;
}

static const SaidCourse *said_course(const SaidFace *face, int64_t number)
{
    for (int i = 0; i < face->course_count; i++)
        if (face->courses[i].number == number)
            return &face->courses[i];
    return NULL;
}

/* A course that is nowhere as high as `leave` is not hung. */
static bool left_away(const Proving *proving, const Columns *columns)
{
    Real most = 0;
    for (int i = 0; i < columns->count; i++)
        for (int k = 0; k < 2; k++) {
            const Column *column = &columns->at[i];
            if (column->part_count > 0)
                most = column->region > most ? column->region : most;
        }
    return proving->wall->planks.leave > 0 && most <= (Real)proving->wall->planks.leave * 1.0001L + 2;
}

static void prove_face(Proving *proving, int index)
{
    const SaidFace *said = &proving->said->faces[index];
    const Face *face = &proving->wall->faces.at[index];
    const Ground ground = ground_of(proving->arena, proving->wall, index);
    const Bands bands = bands_of(proving, face);
    Real net = 0, around = 0;
    int present = 0;
    claim(proving, strcmp(said->name, face->name) == 0, "face %d is called %s", index, said->name);
    for (int i = 0; i < bands.count; i++) {
        const Band *band = &bands.at[i];
        const SaidCourse *course = said_course(said, band->number);
        CourseProof proof = {proving, &ground, said, course, {0}};
        int count = 0;
        const Length *ends = course != NULL ? ends_of(proving->arena, course, &count) : NULL;
        if (band->bottom < band->top)
            proof.columns = ground_columns(proving->arena, &ground, band->bottom, band->top, ends, count, true);
        const Real region = ground_area(&proof.columns, -1e13L, 1e13L, true);
        claim(proving, region < AREA_LEAST * 1.1L || course != NULL || left_away(proving, &proof.columns),
              "face %s: course %lld of %.0Lf nm2 is not there", said->name, (long long)band->number, region);
        claim(proving, region > AREA_LEAST * 0.9L || course == NULL, "face %s: course %lld is too many", said->name,
              (long long)band->number);
        if (course == NULL)
            continue;
        present++;
        claim(proving, course->bottom == band->bottom && course->top == band->top,
              "face %s, course %lld: from %lld to %lld, it should be %lld to %lld", said->name, (long long)band->number,
              (long long)course->bottom, (long long)course->top, (long long)band->bottom, (long long)band->top);
        prove_course(&proof);
        for (int k = 0; k < course->segment_count; k++)
            for (int j = 0; j < course->segments[k].piece_count; j++) {
                const SaidPiece *piece = &course->segments[k].pieces[j];
                net += ground_area(&proof.columns, (Real)piece->left, (Real)piece->right, false);
                outline_area(piece, &around);
            }
    }
    claim(proving, present == said->course_count, "face %s: %d courses, not %d", said->name, said->course_count,
          present);
    const Real off = net / 1e12L - (Real)said->net_area;
    claim(proving, off < 0.51L + around / 1e12L * 4 && off > -0.51L - around / 1e12L * 4,
          "face %s: net-area %lld mm2, it should be %.1Lf", said->name, (long long)said->net_area, net / 1e12L);
}

void prove_faces(Proving *proving)
{
    for (int i = 0; i < proving->said->face_count; i++)
        prove_face(proving, i);
}
