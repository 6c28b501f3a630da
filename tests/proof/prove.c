#include "proof/prove.h"

#include "proof/proving.h"

#include <stdarg.h>
#include <stdio.h>
#include <string.h>

void claim(Proving *proving, bool holds, const char *format, ...)
{
    if (holds)
        return;
    char line[300];
    va_list values;
    va_start(values, format);
    vsnprintf(line, sizeof line, format, values);
    va_end(values);
    if (proving->failed++ < FAILED_MOST)
        text_format(proving->why, "%s%s", proving->failed > 1 ? "; " : "", line);
}

static Length distance(Length a, Length b)
{
    return a < b ? b - a : a - b;
}

/* An end is the record's, or its segment's where the record is so near to it. */
static bool same_end(const Wall *wall, Length said, Length written, Length of_segment)
{
    const Length near = wall->joints.closer > LENGTH_INCH / 8 ? wall->joints.closer : LENGTH_INCH / 8;
    return said == written || (said == of_segment && distance(written, of_segment) <= near);
}

bool proving_hangs(const Proving *proving, const char *face, int64_t course, const SaidSegment *segment,
                   const SaidPiece *piece)
{
    const HungPieces *hung = &proving->wall->hung_pieces;
    for (int i = 0; i < hung->count; i++) {
        const HungPiece *record = &hung->at[i];
        if (strcmp(record->face, face) == 0 && record->course == course && record->board == piece->board &&
            same_end(proving->wall, piece->left, record->left, segment->left) &&
            same_end(proving->wall, piece->right, record->right, segment->right) &&
            (!record->offset_given || record->offset == piece->offset))
            return true;
    }
    return false;
}

bool proving_happened(const Proving *proving)
{
    const Wall *wall = proving->wall;
    bool happened = wall->hung_pieces.count + wall->hung_losses.count + wall->hung_edges.count > 0;
    for (int i = 0; i < wall->stock.count; i++)
        happened = happened || wall->stock.at[i].gone_given || wall->stock.at[i].found_given;
    return happened;
}

const Stock *proving_stock(const Proving *proving, int board)
{
    const Stocks *stocks = &proving->wall->stock;
    for (int i = 0; i < stocks->count; i++) {
        if (board <= stocks->at[i].count)
            return board < 1 ? NULL : &stocks->at[i];
        board -= stocks->at[i].count;
    }
    return NULL;
}

bool prove(const Wall *wall, const char *plan, size_t length, Text *why)
{
    Said said;
    Proving proving = {.arena = arena_new(), .wall = wall, .said = &said, .why = why};
    bool holds = said_read(proving.arena, plan, length, &said, why);
    if (holds) {
        claim(&proving, said.face_count == wall->faces.count, "%d faces", said.face_count);
        if (proving.failed == 0) {
            prove_faces(&proving);
            prove_rules(&proving);
            prove_boards(&proving);
            prove_numbers(&proving);
        }
        holds = proving.failed == 0;
    }
    arena_free(proving.arena);
    return holds;
}
