#include "base/arena.h"

#include "base/panic.h"

#include <limits.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

/*
 * A chain of blocks, each handed out from its start to its end. `current` is the one being handed out; those before it
 * are as full as they will get, those behind it are empty (kept by a reset). Every chunk's size is a multiple of UNIT,
 * so that the next one is aligned too.
 *
 *     first          current
 *     [#########.] -> [####......] -> [..........] -> NULL
 *                         ^ used
 */
enum { UNIT = _Alignof(max_align_t), FIRST_BLOCK = 4096, LARGEST_BLOCK = 1 << 20 };

typedef struct ArenaBlock ArenaBlock;
struct ArenaBlock {
    ArenaBlock *next;
    size_t size; /* of bytes[] */
    size_t used; /* a multiple of UNIT */
    _Alignas(max_align_t) unsigned char bytes[];
};

struct Arena {
    ArenaBlock *first;
    ArenaBlock *current;
    size_t next_size; /* of the next block, doubling */
};

static void *allocate(size_t size)
{
    void *memory = malloc(size);
    if (memory == NULL)
        panic_no_memory();
    return memory;
}

static size_t in_units(size_t size)
{
    BUG_UNLESS(size <= PTRDIFF_MAX - UNIT);
    return size == 0 ? UNIT : (size + UNIT - 1) / UNIT * UNIT;
}

Arena *arena_new(void)
{
    Arena *arena = allocate(sizeof *arena);
    *arena = (Arena){.next_size = FIRST_BLOCK};
    return arena;
}

void arena_free(Arena *arena)
{
    if (arena == NULL)
        return;
    for (ArenaBlock *block = arena->first; block != NULL;) {
        ArenaBlock *next = block->next;
        free(block);
        block = next;
    }
    free(arena);
}

void arena_reset(Arena *arena)
{
    for (ArenaBlock *block = arena->first; block != NULL; block = block->next)
        block->used = 0;
    arena->current = arena->first;
}

/* Puts a new block of at least `size` bytes behind the current one. */
static void add_block(Arena *arena, size_t size)
{
    size_t room = size > arena->next_size ? size : arena->next_size;
    BUG_UNLESS(room <= SIZE_MAX - sizeof(ArenaBlock));
    if (arena->next_size < LARGEST_BLOCK)
        arena->next_size *= 2;
    ArenaBlock *block = allocate(sizeof *block + room);
    block->size = room;
    block->used = 0;
    if (arena->current == NULL) {
        block->next = arena->first;
        arena->first = block;
    } else {
        block->next = arena->current->next;
        arena->current->next = block;
    }
    arena->current = block;
}

static bool fits(const ArenaBlock *block, size_t size)
{
    return block != NULL && size <= block->size - block->used;
}

void *arena_bytes(Arena *arena, size_t size)
{
    size = in_units(size);
    if (!fits(arena->current, size)) {
        if (arena->current != NULL && fits(arena->current->next, size))
            arena->current = arena->current->next;
        else
            add_block(arena, size);
    }
    ArenaBlock *block = arena->current;
    void *chunk = block->bytes + block->used;
    block->used += size;
    return memset(chunk, 0, size);
}

void *arena_array_bytes(Arena *arena, size_t count, size_t size)
{
    BUG_UNLESS(size == 0 || count <= PTRDIFF_MAX / size);
    return arena_bytes(arena, count * size);
}

char *arena_text(Arena *arena, const char *bytes, size_t length)
{
    BUG_UNLESS(length < PTRDIFF_MAX);
    char *copy = arena_bytes(arena, length + 1);
    if (length > 0)
        memcpy(copy, bytes, length);
    return copy;
}

/* Makes the chunk of `old` bytes at `at` one of `size` bytes where it stands; true if it was the last one handed out
 * and there is room. */
static bool extend(Arena *arena, const void *at, size_t old, size_t size)
{
    ArenaBlock *block = arena->current;
    size_t more = in_units(size) - in_units(old);
    if (block == NULL || (const unsigned char *)at + in_units(old) != block->bytes + block->used || !fits(block, more))
        return false;
    memset(block->bytes + block->used, 0, more);
    block->used += more;
    return true;
}

void *arena_grow(Arena *arena, void *at, int *count, int *room, size_t size)
{
    BUG_UNLESS(*count >= 0 && *count < INT_MAX && *count <= *room);
    if (*count == *room) {
        int more = *room > INT_MAX / 2 ? INT_MAX : *room < 8 ? 8 : *room * 2;
        BUG_UNLESS((size_t)more <= PTRDIFF_MAX / size);
        size_t old = (size_t)*room * size;
        if (*room == 0 || !extend(arena, at, old, (size_t)more * size)) {
            void *moved = arena_bytes(arena, (size_t)more * size);
            if (*count > 0)
                memcpy(moved, at, (size_t)*count * size);
            at = moved;
        }
        *room = more;
    }
    ++*count;
    return at;
}
