#include "job/measures.h"

#include <string.h>

#include "base/text.h"
#include "job/words.h"
#include "trade/corner.h"
#include "trade/shown.h"
#include "wall/straight.h"

#define HARD_SPACE "\xc2\xa0" /* a width and its place stay on one line */

static const char *edges_cut(const Plank *plank)
{
    if (plank->lower_cut && plank->upper_cut)
        return " off both edges";
    if (plank->lower_cut)
        return " off the lower edge";
    return plank->upper_cut ? " off the upper edge" : "";
}

/* Bends nearer than a marking step are one on paper. */
typedef struct Bend {
    Length at, left, right; /* the widths on its two sides: they differ at a step of floor or ceiling */
} Bend;

typedef struct Bends {
    Bend *at;
    int count;
    int room;
} Bends;

static Bends bends_of(Arena *arena, const Wall *wall, const Plank *plank)
{
    Bends bends = {0};
    for (int i = 0; i < plank->width_count; i++) {
        const PlankWidth *width = &plank->widths[i];
        Bend *last = bends.count == 0 ? NULL : &bends.at[bends.count - 1];
        if (last != NULL && width->at - last->at < wall->round)
            *last =
                (Bend){i + 1 == plank->width_count && bends.count > 1 ? width->at : last->at, last->left, width->width};
        else
            *arena_push(arena, &bends) = (Bend){width->at, width->width, width->width};
    }
    return bends;
}

static bool steps(const Wall *wall, const Bend *one)
{
    return !marks_alike(wall, one->left, one->right);
}

/* Every break, from the plank's left end; two of them are a taper. */
static char *scribe_words(Arena *arena, const Wall *wall, const Plank *plank)
{
    Bends bends = bends_of(arena, wall, plank);
    if (bends.count == 2 && !steps(wall, &bends.at[0]) && !steps(wall, &bends.at[1]))
        return words(arena, "taper%s, %s at the left to %s at the right", edges_cut(plank),
                     words_length(arena, wall, bends.at[0].left), words_length(arena, wall, bends.at[1].right));
    Text text;
    text_init(&text);
    text_format(&text, "scribe%s: width", edges_cut(plank));
    for (int i = 0; i < bends.count; i++) {
        const Bend *one = &bends.at[i];
        text_format(&text, "%s %s", i == 0 ? "" : ",", words_length(arena, wall, one->left));
        if (steps(wall, one))
            text_format(&text, " and then %s", words_length(arena, wall, one->right));
        text_format(&text, HARD_SPACE "at" HARD_SPACE "%s", words_length(arena, wall, one->at));
    }
    text_put(&text, " from the left end");
    char *out = arena_text(arena, text.bytes, text.length);
    text_finish(&text);
    return out;
}

static bool widths_alike(const Wall *wall, const Plank *plank)
{
    for (int i = 1; i < plank->width_count; i++)
        if (!marks_alike(wall, plank->widths[0].width, plank->widths[i].width))
            return false;
    return true;
}

char *measures_rip(Arena *arena, const Wall *wall, const Plank *plank)
{
    char *left = words_length(arena, wall, plank->widths[0].width);
    char *right = words_length(arena, wall, plank->widths[plank->width_count - 1].width);
    if (plank->shape == RIP_FULL)
        return words(arena, "full width, %s", left);
    if (plank->shape == RIP_STRAIGHT)
        return words(arena, "straight%s, rip to %s", edges_cut(plank), left);
    if (widths_alike(wall, plank))
        return words(arena, "%s%s of less than a mark, rip to %s", words_rip_shape(plank->shape), edges_cut(plank),
                     left);
    if (plank->shape == RIP_TAPER)
        return words(arena, "taper%s, %s at the left to %s at the right", edges_cut(plank), left, right);
    return scribe_words(arena, wall, plank);
}

bool measures_full(const Course *course, const Plank *plank)
{
    return plank->shape == RIP_FULL && plank->widths[0].width == course->width;
}

static bool end_slants(const Wall *wall, const PlankEnd *end)
{
    return !marks_alike(wall, end->lower, end->upper);
}

/* Both edges are measured between their ends, rounded once. */
char *measures_ends(Arena *arena, const Wall *wall, const Plank *plank)
{
    bool left = end_slants(wall, &plank->left), right = end_slants(wall, &plank->right);
    if (!left && !right)
        return NULL;
    Length lower = plank->length - plank->left.lower - plank->right.lower;
    Length upper = plank->length - plank->left.upper - plank->right.upper;
    if (left != right && marks_alike(wall, lower, upper))
        return NULL;
    const char *which = left && right ? "Both ends slant" : (left ? "Left end slants" : "Right end slants");
    bool lower_long = lower >= upper;
    char *out = words(arena, "%s: %s edge (long) %s, %s edge (short) %s", which, lower_long ? "lower" : "upper",
                      words_length(arena, wall, lower_long ? lower : upper), lower_long ? "upper" : "lower",
                      words_length(arena, wall, lower_long ? upper : lower));
    if (left && right)
        out = words(arena, "%s; at the left the lower edge begins at %s, the upper at %s", out,
                    words_length(arena, wall, plank->left.lower), words_length(arena, wall, plank->left.upper));
    if (left && length_round(plank->left.height, wall->round) > 0)
        out = words(arena, "%s; the left end itself is %s high", out, words_length(arena, wall, plank->left.height));
    if (right && length_round(plank->right.height, wall->round) > 0)
        out = words(arena, "%s; the right end itself is %s high", out, words_length(arena, wall, plank->right.height));
    return out;
}

char *measures_miters(Arena *arena, const Layout *layout, const Piece *piece)
{
    PieceEnd left, right;
    corner_piece_ends(arena, layout, piece, &left, &right);
    const bool at_left = left.cut == END_MITER || left.cut == END_BEVEL;
    const bool at_right = right.cut == END_MITER || right.cut == END_BEVEL;
    if (at_left && at_right && strcmp(left.text, right.text) == 0)
        return words(arena, "Both ends: %s", left.text);
    if (at_left && at_right)
        return words(arena, "Left end: %s. Right end: %s", left.text, right.text);
    if (at_left)
        return words(arena, "Left end: %s", left.text);
    return at_right ? words(arena, "Right end: %s", right.text) : NULL;
}

char *measures_shows(Arena *arena, const Layout *layout, const Piece *piece)
{
    const Wall *wall = layout->wall;
    const ShownList list = shown_on_piece(arena, layout, piece);
    char *out = NULL;
    for (int i = 0; i < list.count; i++) {
        const Shown *shown = &list.at[i];
        out = words(arena, "%s%s: %s from the left end, %s on the face",
                    out == NULL ? "Shows " : words(arena, "%s; ", out), words_name(arena, shown->what),
                    words_length(arena, wall, shown->on_piece), words_length(arena, wall, shown->at));
    }
    return out;
}

static const char *cut_word(const PlankCut *cut)
{
    if (cut->lap_only)
        return "Cut in the lap alone";
    switch (cut->shape) {
    case CUT_HOLE: return "Hole";
    case CUT_TOP: return "Notch in the upper edge";
    case CUT_BOTTOM: return "Notch in the lower edge";
    case CUT_LEFT: return "Notch in the left end";
    case CUT_RIGHT: return "Notch in the right end";
    case CUT_CORNER: return "Cut-out corner";
    case CUT_EDGE: return "Edge cut away all along";
    }
    return "";
}

/* Up or down from its edge: "3/4 to 2 1/4 up from the lower edge", or, through an edge, how deep it goes from it. */
static char *cut_heights(Arena *arena, const Wall *wall, const Plank *plank, const PlankCut *cut)
{
    static const char *const from[] = {[FROM_LOWER] = "up from the lower edge",
                                       [FROM_UPPER] = "down from the upper edge",
                                       [FROM_MARK] = "up from the line of the lower mark"};
    bool opens_far = plank->from == FROM_UPPER ? cut->opens_lower : cut->opens_upper;
    bool opens_near = plank->from == FROM_UPPER ? cut->opens_upper : cut->opens_lower;
    char *near = words_length(arena, wall, cut->near);
    char *far = words_length(arena, wall, cut->far);
    if (opens_far && opens_near)
        return words(arena, "through both edges");
    if (opens_far)
        return words(arena, "from %s %s, through the other edge", near, from[plank->from]);
    return words(arena, "%s to %s %s", near, far, from[plank->from]);
}

static char *cut_leaves(Arena *arena, const Wall *wall, const PlankCut *cut)
{
    char *below = words_length(arena, wall, cut->below);
    char *above = words_length(arena, wall, cut->above);
    if (cut->below >= 0 && cut->above >= 0)
        return words(arena, "; leaves %s below and %s above", below, above);
    if (cut->below >= 0)
        return words(arena, "; leaves %s below", below);
    return cut->above >= 0 ? words(arena, "; leaves %s above", above) : "";
}

/* Places along a plank are from its outermost point at the left: where that end slants, the edge that reaches it. */
static const char *left_end(const Wall *wall, const Plank *plank)
{
    if (!end_slants(wall, &plank->left))
        return "the left end";
    return plank->left.lower < plank->left.upper ? "the left end of the lower edge" : "the left end of the upper edge";
}

char *measures_cut(Arena *arena, const Wall *wall, const Face *face, const Plank *plank, const PlankCut *cut)
{
    return words(arena, "%s, %s: %s to %s from %s; %s%s", cut_word(cut),
                 words_name(arena, face->openings.at[cut->opening].name), words_length(arena, wall, cut->left),
                 words_length(arena, wall, cut->right), left_end(wall, plank), cut_heights(arena, wall, plank, cut),
                 cut_leaves(arena, wall, cut));
}

char *measures_cuts(Arena *arena, const Wall *wall, const Face *face, const Plank *plank)
{
    Text text;
    text_init(&text);
    for (int i = 0; i < plank->cut_count; i++)
        text_format(&text, "%s%s", i > 0 ? " | " : "", measures_cut(arena, wall, face, plank, &plank->cuts[i]));
    char *out = arena_text(arena, text.bytes, text.length);
    text_finish(&text);
    return out;
}

char *measures_laps(Arena *arena, const Wall *wall, const Plank *plank)
{
    if (plank->lap_count == 0)
        return NULL;
    Text text;
    text_init(&text);
    text_put(&text, "The ceiling cuts the lap alone");
    for (int i = 0; i < plank->lap_count; i++)
        text_format(&text, "%s from %s to %s", i == 0 ? "" : ",", words_length(arena, wall, plank->laps[i].left),
                    words_length(arena, wall, plank->laps[i].right));
    char *out = arena_text(arena, text.bytes, text.length);
    text_finish(&text);
    return out;
}

char *measures_studs(Arena *arena, const FaceLayout *face, const Plank *plank)
{
    if (face->studs.count == 0)
        return "";
    int first = plank->stud_first + 1, last = plank->stud_first + plank->stud_count;
    if (plank->stud_count == 0)
        return "no stud";
    if (plank->stud_count == 1)
        return words(arena, "stud %d", first);
    return words(arena, "studs %d-%d", first, last);
}
