#include "fill/steady/numbers.h"

#include <stdlib.h>

typedef struct Numbered {
    int *old;    /* of each piece of the new plan: the same piece in the old one, -1 where there is none */
    bool *taken; /* of each piece of the old one: it is the same in the new */
} Numbered;

static Numbered find_same(Arena *arena, const Event *event, const Plan *plan)
{
    const Plan *old = event->plan;
    Numbered same = {arena_array(arena, int, plan->piece_count), arena_array(arena, bool, old->piece_count)};
    for (int i = 0; i < plan->piece_count; i++) {
        const BoardUse *use = &old->boards[plan->pieces[i].board - 1];
        same.old[i] = -1;
        for (int j = use->first; j < use->first + use->count && same.old[i] < 0; j++) {
            int other = old->by_board[j];
            if (!same.taken[other] && same_piece(event->after, &plan->pieces[i], event->before, &old->pieces[other])) {
                same.old[i] = other;
                same.taken[other] = true;
            }
        }
    }
    return same;
}

static int ascending(const void *a, const void *b)
{
    int one = *(const int *)a, other = *(const int *)b;
    return (one > other) - (one < other);
}

/* The old plan's numbers that became free on the course of the piece, rising, into `numbers`; how many there are. */
static int free_on_course(const Event *event, const Numbered *same, const Piece *like, int *numbers)
{
    const Plan *old = event->plan;
    const int64_t course = same_course(event->after, like);
    int count = 0;
    for (int i = 0; i < old->piece_count; i++)
        if (!same->taken[i] && old->pieces[i].face == like->face &&
            same_course(event->before, &old->pieces[i]) == course)
            numbers[count++] = old->pieces[i].number;
    if (count > 1)
        qsort(numbers, (size_t)count, sizeof *numbers, ascending);
    return count;
}

void numbers_keep(Arena *arena, const Event *event, Plan *plan, Numbers *numbers)
{
    Arena *work = arena_new();
    const Plan *old = event->plan;
    Numbered same = find_same(work, event, plan);
    int *free_numbers = arena_array(work, int, old->piece_count + 1);
    int free_count = 0, used = 0;
    numbers->changed = arena_array(arena, int, plan->piece_count);
    numbers->changed_count = 0;
    for (int i = 0; i < plan->piece_count; i++) {
        Piece *piece = &plan->pieces[i];
        if (i == 0 || piece->face != piece[-1].face || piece->course != piece[-1].course) {
            free_count = free_on_course(event, &same, piece, free_numbers);
            used = 0;
        }
        if (same.old[i] >= 0) {
            piece->number = old->pieces[same.old[i]].number;
            continue;
        }
        piece->number = used < free_count ? free_numbers[used++] : ++numbers->highest;
        numbers->changed[numbers->changed_count++] = piece->number;
    }
    if (numbers->changed_count > 1)
        qsort(numbers->changed, (size_t)numbers->changed_count, sizeof *numbers->changed, ascending);
    arena_free(work);
}

Numbers numbers_copy(Arena *arena, const Numbers *numbers)
{
    Numbers copy = *numbers;
    copy.changed = arena_array(arena, int, numbers->changed_count + 1);
    for (int i = 0; i < numbers->changed_count; i++)
        copy.changed[i] = numbers->changed[i];
    return copy;
}

void numbers_anew(const Event *event, Plan *plan, Numbers *numbers)
{
    Arena *work = arena_new();
    const Plan *old = event->plan;
    Numbered same = find_same(work, event, plan);
    numbers->highest = 0;
    for (int i = 0; i < plan->piece_count; i++)
        if (plan->pieces[i].hung && same.old[i] >= 0 && old->pieces[same.old[i]].number > numbers->highest)
            numbers->highest = old->pieces[same.old[i]].number;
    numbers->changed = NULL;
    numbers->changed_count = 0;
    for (int i = 0; i < plan->piece_count; i++) {
        bool keeps = plan->pieces[i].hung && same.old[i] >= 0;
        plan->pieces[i].number = keeps ? old->pieces[same.old[i]].number : ++numbers->highest;
    }
    arena_free(work);
}
