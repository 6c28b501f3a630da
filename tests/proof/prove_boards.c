#include "proof/proving.h"

#include <stdlib.h>

/*
 *     board  |square|==piece==|kerf|==piece==|closer|kerf|==piece==|avoid|==piece==|   |square|
 *            0      offset                                                                length
 */

typedef struct BoardsProof {
    Proving *proving;
    SaidCut *cuts; /* by piece number - 1 */
    int room;      /* the highest number */
    int count;     /* of pieces */
} BoardsProof;

static SaidCut cut_of(Proving *proving, int face, const SaidCourse *course, const SaidSegment *segment,
                      const SaidPiece *piece)
{
    SaidCut cut = {.piece = piece, .segment = segment, .course = course, .face_index = face};
    cut.face = &proving->said->faces[face];
    cut.hangs = proving_hangs(proving, cut.face->name, course->number, segment, piece);
    prove_ends(proving, &cut);
    return cut;
}

static void put(BoardsProof *proof, const SaidCut *cut, bool counts)
{
    const int number = cut->piece->number;
    if (counts) {
        proof->count++;
        proof->room = number > proof->room ? number : proof->room;
        claim(proof->proving, number >= 1, "a piece is number %d", number);
    } else if (number >= 1) {
        claim(proof->proving, proof->cuts[number - 1].piece == NULL, "two pieces are number %d", number);
        proof->cuts[number - 1] = cut_of(proof->proving, cut->face_index, cut->course, cut->segment, cut->piece);
    }
}

static void put_all(BoardsProof *proof, bool counts)
{
    const Said *said = proof->proving->said;
    for (int i = 0; i < said->face_count; i++)
        for (int k = 0; k < said->faces[i].course_count; k++)
            for (int s = 0; s < said->faces[i].courses[k].segment_count; s++) {
                const SaidCourse *course = &said->faces[i].courses[k];
                const SaidSegment *segment = &course->segments[s];
                for (int p = 0; p < segment->piece_count; p++) {
                    const SaidCut cut = {
                        .piece = &segment->pieces[p], .segment = segment, .course = course, .face_index = i};
                    put(proof, &cut, counts);
                }
            }
}

/* To count them, then to put them in their places. */
static void gather(BoardsProof *proof)
{
    put_all(proof, true);
    proof->cuts = arena_array(proof->proving->arena, SaidCut, proof->room + 1);
    put_all(proof, false);
}

/* Whether openings take all of the band's upper edge from `left` to `right`. */
static bool is_taken(const SaidCut *cut, Length left, Length right)
{
    for (bool further = true; further && left < right;) {
        further = false;
        for (int i = 0; i < cut->piece->cutout_count; i++) {
            const SaidCutout *taken = &cut->piece->cutouts[i];
            if (taken->top >= cut->course->top && taken->left <= left && taken->right > left) {
                left = taken->right;
                further = true;
            }
        }
    }
    return left >= right;
}

/* The greatest height of its outline, and `lap` more unless its upper side is cut all along; an edge measured higher
 * than its planks reach asks for no more than the whole plank. */
static Length width_needed(const Wall *wall, const SaidCut *cut)
{
    const SaidPiece *piece = cut->piece;
    Length low = piece->outline[0].y, high = low;
    bool uncut = false;
    for (int i = 0; i < piece->point_count; i++) {
        const SaidPoint a = piece->outline[i], b = piece->outline[(i + 1) % piece->point_count];
        low = a.y < low ? a.y : low;
        high = a.y > high ? a.y : high;
        uncut = uncut || (a.y == cut->course->top && b.y == cut->course->top && a.x != b.x &&
                          !is_taken(cut, a.x < b.x ? a.x : b.x, a.x < b.x ? b.x : a.x));
    }
    const int64_t count = wall->planks.widths.count;
    const Length whole = wall->planks.widths.at[((cut->course->number % count) + count) % count];
    const Length need = high - low + (uncut ? wall->planks.lap : 0);
    return need < whole ? need : whole;
}

static void prove_cut(Proving *proving, const SaidCut *cut, const Stock *stock)
{
    const Wall *wall = proving->wall;
    const SaidPiece *piece = cut->piece;
    const Length to = piece->offset + piece->right - piece->left;
    Length widest = 0;
    for (int i = 0; i < wall->planks.widths.count; i++)
        widest = wall->planks.widths.at[i] > widest ? wall->planks.widths.at[i] : widest;
    if (cut->hangs)
        return;
    claim(proving, piece->offset >= wall->saw.square && to <= stock->length - wall->saw.square,
          "piece %d takes wood of a squared end of board %d", piece->number, piece->board);
    for (int i = 0; i < stock->avoid.count; i++)
        claim(proving, piece->offset >= stock->avoid.at[i].to || to <= stock->avoid.at[i].from,
              "piece %d takes wood of board %d that is to be avoided", piece->number, piece->board);
    for (int i = 0; i < wall->hung_losses.count; i++) {
        const HungLoss *loss = &wall->hung_losses.at[i];
        claim(proving,
              loss->board != piece->board || piece->offset - wall->saw.kerf >= loss->offset + loss->length ||
                  to + wall->saw.kerf <= loss->offset,
              "piece %d takes wood of board %d that is lost", piece->number, piece->board);
    }
    const Length width = stock->width_given ? stock->width : widest;
    claim(proving, width_needed(wall, cut) <= width + 1, "piece %d needs %lld, board %d is %lld wide", piece->number,
          (long long)width_needed(wall, cut), piece->board, (long long)width);
}

static int by_from(const void *a, const void *b)
{
    const Stretch *p = a, *q = b;
    return (p->from > q->from) - (p->from < q->from);
}

/* Where on its board the piece ends, with what it keeps over where there is room for that: before the squared end, the
 * next stretch to avoid, and the next piece with what the blade takes. */
static Length end_on_board(Proving *proving, const SaidCut *cut, const SaidCut *next, const Stock *stock, bool closers)
{
    const Length bare = cut->piece->offset + cut->piece->right - cut->piece->left;
    const Length to = bare + (cut->closes && closers ? proving->wall->joints.closer : 0);
    bool room = to <= stock->length - proving->wall->saw.square;
    for (int i = 0; i < stock->avoid.count; i++)
        room = room && (to <= stock->avoid.at[i].from || bare >= stock->avoid.at[i].to);
    if (next != NULL) {
        const Length kerf = next->kerfs[0] > cut->kerfs[1] ? next->kerfs[0] : cut->kerfs[1];
        room = room && to + kerf <= next->piece->offset;
    }
    return room ? to : bare;
}

/* The longest stretch clear of squared ends and avoided wood, of every piece and what the blade takes at its ends. */
static Length left_over(Proving *proving, const BoardsProof *proof, const SaidBoard *board, const Stock *stock,
                        bool closers)
{
    const Length square = proving->wall->saw.square;
    const HungLosses *losses = &proving->wall->hung_losses;
    const int most = stock->avoid.count + losses->count + board->piece_count;
    Stretch *used = arena_array(proving->arena, Stretch, most + 1);
    int count = 0;
    for (int i = 0; i < stock->avoid.count; i++)
        used[count++] = stock->avoid.at[i];
    for (int i = 0; i < losses->count; i++)
        if (losses->at[i].board == board->number)
            used[count++] = (Stretch){losses->at[i].offset - proving->wall->saw.kerf,
                                      losses->at[i].offset + losses->at[i].length + proving->wall->saw.kerf};
    for (int i = 0; i < board->piece_count; i++) {
        const SaidCut *cut = &proof->cuts[board->pieces[i] - 1];
        const SaidCut *next = i + 1 < board->piece_count ? &proof->cuts[board->pieces[i + 1] - 1] : NULL;
        used[count++] = (Stretch){cut->piece->offset - cut->kerfs[0],
                                  end_on_board(proving, cut, next, stock, closers) + cut->kerfs[1]};
    }
    qsort(used, (size_t)count, sizeof *used, by_from);
    Length longest = 0, from = square;
    for (int i = 0; i <= count; i++) {
        const Length end = stock->length - square;
        const Length to = i < count && used[i].from < end ? used[i].from : end;
        longest = to - from > longest ? to - from : longest;
        if (i < count && used[i].to > from)
            from = used[i].to;
    }
    return longest;
}

static void prove_board(BoardsProof *proof, const SaidBoard *board)
{
    Proving *proving = proof->proving;
    const Stock *stock = proving_stock(proving, board->number);
    claim(proving, stock != NULL && stock->length == board->length, "board %d is %lld long", board->number,
          (long long)board->length);
    if (stock == NULL)
        return;
    const SaidCut *before = NULL;
    for (int i = 0; i < board->piece_count; i++) {
        const bool there =
            board->pieces[i] >= 1 && board->pieces[i] <= proof->room && proof->cuts[board->pieces[i] - 1].piece != NULL;
        claim(proving, there && proof->cuts[board->pieces[i] - 1].piece->board == board->number,
              "board %d lists piece %d, which is not cut from it", board->number, board->pieces[i]);
        if (!there)
            return;
        const SaidCut *cut = &proof->cuts[board->pieces[i] - 1];
        prove_cut(proving, cut, stock);
        const Length kerf = before == NULL ? 0 : before->kerfs[1] > cut->kerfs[0] ? before->kerfs[1] : cut->kerfs[0];
        if (before != NULL && !(before->hangs && cut->hangs))
            claim(proving,
                  cut->piece->offset - before->piece->offset - (before->piece->right - before->piece->left) >= kerf,
                  "pieces %d and %d of board %d are nearer than a kerf", before->piece->number, cut->piece->number,
                  board->number);
        before = cut;
    }
    const Wall *wall = proving->wall;
    if (stock->gone_given &&
        stock->gone <= wall->hung_pieces.count + wall->hung_losses.count + wall->hung_edges.count) {
        claim(proving, board->left_over == 0, "board %d is gone and has a left-over", board->number);
        return;
    }
    const Length longest = left_over(proving, proof, board, stock, true);
    const Length without = left_over(proving, proof, board, stock, false); /* or left off */
    bool clear = true;
    for (int i = 0; i < board->piece_count; i++)
        clear = clear && !proof->cuts[board->pieces[i] - 1].unclear;
    claim(proving, longest == board->left_over || without == board->left_over || !clear,
          "board %d: left-over %lld, it should be %lld", board->number, (long long)board->left_over,
          (long long)longest);
}

void prove_boards(Proving *proving)
{
    BoardsProof proof = {.proving = proving};
    const Said *said = proving->said;
    int listed = 0;
    gather(&proof);
    for (int i = 0; i < proof.room && !proving_happened(proving); i++)
        claim(proving, proof.cuts[i].piece != NULL, "no piece is number %d", i + 1);
    if (proving->failed > 0)
        return;
    for (int i = 0; i < said->board_count; i++) {
        claim(proving, said->boards[i].number == i + 1, "board %d is numbered %d", i + 1, said->boards[i].number);
        prove_board(&proof, &said->boards[i]);
        listed += said->boards[i].piece_count;
    }
    int boards = 0;
    for (int i = 0; i < proving->wall->stock.count; i++)
        boards += proving->wall->stock.at[i].count;
    claim(proving, boards == said->board_count, "%d boards told of, there are %d", said->board_count, boards);
    claim(proving, listed == proof.count, "%d pieces listed under boards, of %d", listed, proof.count);
}
