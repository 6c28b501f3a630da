#include "support/with_arena.h"

Arena *arena;

void arena_begin(void)
{
    arena = arena_new();
}

void arena_end(void)
{
    arena_free(arena);
}

char *text_in_arena(const char *string)
{
    return arena_text(arena, string, strlen(string));
}
