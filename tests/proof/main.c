/*
 * A wall file and what `datumrow plan` printed of it, held against one another:
 *
 *     proof WALL PLAN
 *
 * Prints what does not hold; the exit status is 0 where all of it does.
 */
#include "base/file.h"
#include "proof/prove.h"
#include "store/store.h"

#include <stdio.h>

enum { PLAN_MOST = 1 << 28 };

int main(int count, char **words)
{
    Arena *arena = arena_new();
    Source source = {0};
    Errs errs = {0};
    Err err = {0};
    Text plan, why;
    text_init(&plan);
    text_init(&why);
    int status = 2;
    if (count != 3)
        fputs("usage: proof WALL PLAN\n", stderr);
    else if (!store_read(arena, words[1], &source, &errs))
        fprintf(stderr, "proof: %s: %s\n", errs.at[0].place, errs.at[0].text);
    else if (!file_read(words[2], PLAN_MOST, &plan, &err))
        fprintf(stderr, "proof: %s\n", err.text);
    else if (!prove(source.wall, plan.bytes, plan.length, &why))
        printf("%s\n", why.bytes);
    else
        status = 0;
    text_finish(&why);
    text_finish(&plan);
    arena_free(arena);
    return status;
}
