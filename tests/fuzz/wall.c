/* Any bytes choose a wall that is legal, and nothing on its way from file to paper stops: laid out, filled for a while,
 * proved from its printed plan, looked at by the trade, every sheet. */
#include "fuzz.h"

#include "base/arena.h"
#include "base/panic.h"
#include "store/store.h"
#include "support/unkind_wall.h"
#include "unkind/hold.h"

#include <stdio.h>

enum { STEPS = 200 };

int LLVMFuzzerTestOneInput(const uint8_t *bytes, size_t size)
{
    Arena *arena = arena_new();
    Held held = {0};
    Text why;
    text_init(&why);
    const Wall *wall = unkind_wall_of_bytes(arena, bytes, size);
    if (!hold_wall(wall, (Wish){.steps = STEPS}, &held, &why)) {
        Text text;
        text_init(&text);
        store_write(wall, NULL, &text);
        fputs(text.bytes, stderr);
        text_finish(&text);
        panic("the wall above", 0, why.bytes);
    }
    text_finish(&why);
    arena_free(arena);
    return 0;
}
