#include "proof/proving.h"

#include <stdlib.h>
#include <string.h>

/*
 *     course k+1   |========|=========|  ...bare...  |====|
 *                           joint     joints to be
 *     course k     |==========|=======|==============|====|
 *                             joint: nearer than `stagger` to that above is a break
 */

typedef struct SaidJoint {
    Length x;
    bool hung;
} SaidJoint;

typedef struct SaidJoints {
    SaidJoint *at;
    int count, room;
} SaidJoints;

typedef struct RulesProof {
    Proving *proving;
    const Face *face;
    const SaidFace *said;
    int breaks[3]; /* of stagger, shortest, stud, on this face */
    int bare;
} RulesProof;

enum { STAGGER, SHORTEST, STUD };
static const char *const rules[] = {"stagger", "shortest", "stud"};

static bool is_told(const RulesProof *proof, const char *rule, int64_t course, Length at)
{
    for (int i = 0; i < proof->proving->said->warning_count; i++) {
        const SaidWarning *warning = &proof->proving->said->warnings[i];
        if (strcmp(warning->rule, rule) == 0 && warning->face != NULL &&
            strcmp(warning->face, proof->said->name) == 0 && warning->has_course && warning->course == course &&
            warning->has_at && warning->at == at)
            return true;
    }
    return false;
}

static void found_break(RulesProof *proof, int rule, int64_t course, Length at)
{
    proof->breaks[rule]++;
    claim(proof->proving, is_told(proof, rules[rule], course, at),
          "face %s, course %lld: the break of `%s` at %lld is not told", proof->said->name, (long long)course,
          rules[rule], (long long)at);
}

/* ---- where joints stand ---- */

static bool on_stud(const Face *face, Length x)
{
    const Studs *studs = &face->studs;
    if (!studs->given || x < 0 || x > face->width)
        return false;
    if (studs->regular)
        return x >= studs->first && x <= face->width && (x - studs->first) % studs->spacing == 0;
    for (int i = 0; i < studs->at.count; i++)
        if (studs->at.at[i] == x)
            return true;
    return false;
}

/* Whether the file asks for a joint between `after` and `before`, both left out. */
static bool pinned_between(const RulesProof *proof, int64_t course, Length after, Length before)
{
    const Pins *pins = &proof->proving->wall->joints.pins;
    for (int i = 0; i < pins->count; i++)
        if (strcmp(pins->at[i].face, proof->said->name) == 0 && pins->at[i].course == course &&
            pins->at[i].at > after && pins->at[i].at < before)
            return true;
    return false;
}

static bool is_barred(const RulesProof *proof, int64_t course, Length x)
{
    const Bars *bars = &proof->proving->wall->joints.bars;
    for (int i = 0; i < bars->count; i++)
        if (strcmp(bars->at[i].face, proof->said->name) == 0 && bars->at[i].course == course && bars->at[i].from <= x &&
            x <= bars->at[i].to)
            return true;
    return false;
}

static const SaidPiece *ends_at(const SaidSegment *segment, Length x, bool right)
{
    for (int i = 0; i < segment->piece_count; i++)
        if ((right ? segment->pieces[i].right : segment->pieces[i].left) == x)
            return &segment->pieces[i];
    return NULL;
}

/* One end of a piece inside its segment; a joint of two is looked at once, at its left piece. */
static void prove_joint(RulesProof *proof, const SaidCourse *course, const SaidSegment *segment, Length x,
                        SaidJoints *joints)
{
    const Wall *wall = proof->proving->wall;
    const SaidPiece *left = ends_at(segment, x, true), *right = ends_at(segment, x, false);
    const bool hung =
        (left != NULL && proving_hangs(proof->proving, proof->said->name, course->number, segment, left)) ||
        (right != NULL && proving_hangs(proof->proving, proof->said->name, course->number, segment, right));
    *arena_push(proof->proving->arena, joints) = (SaidJoint){x, hung};
    if (hung)
        return;
    const bool stud = wall->joints.land == LAND_STUDS && on_stud(proof->face, x);
    const bool pinned = pinned_between(proof, course->number, x - 1, x + 1);
    claim(proof->proving, pinned || !is_barred(proof, course->number, x),
          "face %s, course %lld: the joint at %lld is in a bar", proof->said->name, (long long)course->number,
          (long long)x);
    claim(proof->proving, pinned || stud || (x - segment->left) % wall->round == 0,
          "face %s, course %lld: the joint at %lld is on no mark", proof->said->name, (long long)course->number,
          (long long)x);
    if (wall->joints.land == LAND_STUDS && !stud)
        found_break(proof, STUD, course->number, x);
}

/* ---- how long pieces are ---- */

/* The gap that the piece lies in: from hung piece to hung piece, or to the segment's ends. */
static bool fills_gap(const RulesProof *proof, const SaidCourse *course, const SaidSegment *segment, int index)
{
    const SaidPiece *piece = &segment->pieces[index];
    Length left = segment->left, right = segment->right;
    for (int i = 0; i < segment->piece_count; i++) {
        const SaidPiece *other = &segment->pieces[i];
        if (i == index || !proving_hangs(proof->proving, proof->said->name, course->number, segment, other))
            continue;
        if (other->right <= piece->left && other->right > left)
            left = other->right;
        if (other->left >= piece->right && other->left < right)
            right = other->left;
    }
    return piece->left == left && piece->right == right;
}

static void prove_segment(RulesProof *proof, const SaidCourse *course, const SaidSegment *segment, SaidJoints *joints)
{
    Length x = segment->left;
    int piece = 0, bare = 0;
    while (x < segment->right) {
        const SaidPiece *next = piece < segment->piece_count ? &segment->pieces[piece] : NULL;
        if (next != NULL && next->left == x && next->right > x) {
            const bool hangs = proving_hangs(proof->proving, proof->said->name, course->number, segment, next);
            const Length length = next->right - next->left;
            claim(proof->proving, hangs || !pinned_between(proof, course->number, next->left, next->right),
                  "face %s, course %lld: piece %d runs over a pin", proof->said->name, (long long)course->number,
                  next->number);
            if (!hangs && length < proof->proving->wall->joints.shortest && !fills_gap(proof, course, segment, piece))
                found_break(proof, SHORTEST, course->number, next->left);
            x = next->right;
            piece++;
        } else if (bare < segment->missing_count && segment->missing[bare].from == x && segment->missing[bare].to > x) {
            proof->bare++;
            claim(proof->proving, is_told(proof, "stock", course->number, x),
                  "face %s, course %lld: bare at %lld, which is not told", proof->said->name, (long long)course->number,
                  (long long)x);
            x = segment->missing[bare++].to;
        } else {
            break;
        }
        if (x < segment->right)
            prove_joint(proof, course, segment, x, joints);
    }
    claim(proof->proving, x == segment->right && piece == segment->piece_count && bare == segment->missing_count,
          "face %s, course %lld: at %lld neither a piece nor told bare", proof->said->name, (long long)course->number,
          (long long)x);
}

static void prove_stagger(RulesProof *proof, const SaidCourse *course, const SaidJoints *low, const SaidJoints *high)
{
    for (int i = 0; i < high->count; i++)
        for (int k = 0; k < low->count; k++) {
            const Length apart = high->at[i].x - low->at[k].x;
            if ((apart < 0 ? -apart : apart) < proof->proving->wall->joints.stagger &&
                !(high->at[i].hung && low->at[k].hung))
                found_break(proof, STAGGER, course->number, high->at[i].x);
        }
}

static int told(const RulesProof *proof, const char *rule)
{
    int count = 0;
    for (int i = 0; i < proof->proving->said->warning_count; i++) {
        const SaidWarning *warning = &proof->proving->said->warnings[i];
        count +=
            strcmp(warning->rule, rule) == 0 && warning->face != NULL && strcmp(warning->face, proof->said->name) == 0;
    }
    return count;
}

static void prove_face(Proving *proving, int index)
{
    RulesProof proof = {
        .proving = proving, .face = &proving->wall->faces.at[index], .said = &proving->said->faces[index]};
    SaidJoints below = {0};
    for (int i = 0; i < proof.said->course_count; i++) {
        const SaidCourse *course = &proof.said->courses[i];
        SaidJoints joints = {0};
        for (int k = 0; k < course->segment_count; k++)
            prove_segment(&proof, course, &course->segments[k], &joints);
        claim(proving, i == 0 || course[-1].number < course->number, "face %s: courses out of order", proof.said->name);
        if (i > 0 && course[-1].number == course->number - 1)
            prove_stagger(&proof, course, &below, &joints);
        below = joints;
    }
    for (int rule = STAGGER; rule <= STUD; rule++)
        claim(proving, told(&proof, rules[rule]) == proof.breaks[rule], "face %s: %d breaks of `%s` told, there are %d",
              proof.said->name, told(&proof, rules[rule]), rules[rule], proof.breaks[rule]);
    claim(proving, told(&proof, "stock") == proof.bare, "face %s: %d bare stretches told, there are %d",
          proof.said->name, told(&proof, "stock"), proof.bare);
}

void prove_rules(Proving *proving)
{
    for (int i = 0; i < proving->said->face_count; i++)
        prove_face(proving, i);
}
