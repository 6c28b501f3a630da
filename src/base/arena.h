/*
 * Memory that is given back all at once. A result (a wall, a layout, a plan, a sheet) lives in one arena
 * and dies with it, so nothing in it is freed by hand. Allocation never returns NULL: out of memory is a
 * panic. Everything allocated is zeroed.
 *
 * Growing arrays are a struct with `at`, `count` and `room` members:
 *
 *     typedef struct Marks { Mark *at; int count; int room; } Marks;
 *     *arena_push(arena, &marks) = (Mark){...};
 */
#ifndef BASE_ARENA_H
#define BASE_ARENA_H

#include <stddef.h>

typedef struct Arena Arena;

Arena *arena_new(void);

/* Frees everything in it and the arena itself; NULL does nothing. */
void arena_free(Arena *arena);

/* Forgets everything in it and keeps its blocks for the next use. */
void arena_reset(Arena *arena);

/* `size` zeroed bytes, aligned for any type; size 0 gives a pointer that must not be read. */
void *arena_bytes(Arena *arena, size_t size);

/* `count` zeroed elements of `size` bytes each; the product is checked. */
void *arena_array_bytes(Arena *arena, size_t count, size_t size);

/* A copy that ends with NUL; the source need not. */
char *arena_text(Arena *arena, const char *bytes, size_t length);

#define arena_one(arena, Type) ((Type *)arena_bytes((arena), sizeof(Type)))
#define arena_array(arena, Type, count) ((Type *)arena_array_bytes((arena), (size_t)(count), sizeof(Type)))

/* Room for one more element behind the last, counted; used by arena_push. */
void *arena_grow(Arena *arena, void *at, int *count, int *room, size_t size);

#define arena_push(arena, array)                                                                           \
    ((array)->at = arena_grow((arena), (array)->at, &(array)->count, &(array)->room, sizeof *(array)->at), \
     &(array)->at[(array)->count - 1])

#endif
