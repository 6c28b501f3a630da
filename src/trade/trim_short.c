#include "trade/trim_short.h"

#include "base/utf8.h"
#include "fill/trim.h"
#include "trade/say.h"
#include "trade/trim_runs.h"

#include <stdlib.h>
#include <string.h>

/*
 * The editor asks after every key, so that most walls must get by without a search: strips longer than every board can
 * never be cut, and where the others go into the boards one after the other, the longest first, each into the first
 * board with room, no plan lacks more (a plan cuts as much length as can be cut). Only where that leaves one over is
 * the cutting planned.
 */
enum { TRIES_MOST = 1000000 };

/* What a board gives in one piece. */
static Length usable(const Wall *wall, const TrimStock *stock)
{
    Length length = stock->length - 2 * wall->saw.square;
    return length > 0 ? length : 0;
}

static Length longest_usable(const Wall *wall)
{
    Length longest = 0;
    for (int i = 0; i < wall->trim.stock.count; i++) {
        Length length = usable(wall, &wall->trim.stock.at[i]);
        longest = wall->trim.stock.at[i].count > 0 && length > longest ? length : longest;
    }
    return longest;
}

static int by_length(const void *a, const void *b)
{
    const TrimPiece *x = a, *y = b;
    return (x->length < y->length) - (x->length > y->length);
}

/* Whether all strips that are no longer than `longest` go into the boards without more ado. */
static bool goes_in(const Wall *wall, const TrimPieces *pieces, Length longest)
{
    int64_t boards = 0, strips = 0;
    for (int i = 0; i < wall->trim.stock.count; i++)
        boards += wall->trim.stock.at[i].count;
    for (int i = 0; i < pieces->count; i++)
        strips += pieces->at[i].count;
    if (strips == 0)
        return true;
    if (boards == 0 || strips > TRIES_MOST || boards > TRIES_MOST / strips)
        return false;
    Arena *arena = arena_new();
    Length *room = arena_array(arena, Length, (int)boards);
    int board = 0;
    for (int i = 0; i < wall->trim.stock.count; i++)
        for (int n = 0; n < wall->trim.stock.at[i].count; n++)
            room[board++] = usable(wall, &wall->trim.stock.at[i]) + wall->saw.kerf;
    TrimPiece *sorted = arena_array(arena, TrimPiece, pieces->count);
    memcpy(sorted, pieces->at, (size_t)pieces->count * sizeof *sorted);
    qsort(sorted, (size_t)pieces->count, sizeof *sorted, by_length);
    bool good = true;
    for (int i = 0; good && i < pieces->count; i++)
        for (int n = 0; good && n < sorted[i].count && sorted[i].length > 0 && sorted[i].length <= longest; n++) {
            Length need = sorted[i].length + wall->saw.kerf;
            for (board = 0; board < boards && room[board] < need;)
                board++;
            good = board < boards;
            if (good)
                room[board] -= need;
        }
    arena_free(arena);
    return good;
}

static TrimPieces too_long(Arena *arena, const TrimPieces *pieces, Length longest)
{
    TrimPieces missing = {0};
    for (int i = 0; i < pieces->count; i++)
        if (pieces->at[i].length > longest && pieces->at[i].count > 0)
            *arena_push(arena, &missing) = pieces->at[i];
    return missing;
}

/* Lines of one name and length are one. */
static TrimPieces gathered(Arena *arena, const TrimPieces *pieces)
{
    TrimPieces out = {0};
    for (int i = 0; i < pieces->count; i++) {
        const TrimPiece *piece = &pieces->at[i];
        int k = 0;
        while (k < out.count && (out.at[k].length != piece->length || strcmp(out.at[k].name, piece->name) != 0))
            k++;
        if (k < out.count)
            out.at[k].count += piece->count;
        else
            *arena_push(arena, &out) = *piece;
    }
    return out;
}

void trim_short_findings(Arena *arena, const Layout *layout, Findings *findings)
{
    const Wall *wall = layout->wall;
    if (!wall->trim.given)
        return;
    TrimPieces pieces = trim_pieces(arena, layout);
    Length longest = longest_usable(wall);
    TrimPieces missing =
        goes_in(wall, &pieces, longest) ? too_long(arena, &pieces, longest) : trim_plan(arena, wall, &pieces)->missing;
    missing = gathered(arena, &missing);
    for (int i = 0; i < missing.count; i++) {
        const TrimPiece *piece = &missing.at[i];
        char name[WALL_NAME_MOST * 4 + 1];
        utf8_safe(name, sizeof name, piece->name, WALL_NAME_MOST, false);
        const char *what = say(arena, "%s of %s, %s long, cannot be cut from the trim stock",
                               piece->count == 1 ? "One strip" : say(arena, "%d strips", piece->count), name,
                               say_length(arena, wall, piece->length));
        const char *why =
            longest == 0 ? "there are no boards; write what is at hand under trim.stock."
            : piece->length > longest
                ? say(arena, "its longest board gives %s; add longer ones under trim.stock, or make two strips of one.",
                      say_length(arena, wall, longest))
                : "no board that is long enough is left; add more under trim.stock.";
        Finding finding = finding_of(RULE_MISSING);
        finding.text = say(arena, "%s: %s", what, why);
        *arena_push(arena, findings) = finding;
    }
}
