#include "support/test.h"

#include "base/arena.h"
#include "base/random.h"

#include <stdbool.h>
#include <string.h>

typedef struct Marks {
    uint64_t *at;
    int count;
    int room;
} Marks;

START_TEST(hands_out_zeroed_aligned_chunks)
{
    Arena *arena = arena_new();
    Random random = {1};
    for (int round = 0; round < 3; round++) {
        for (int i = 0; i < 2000; i++) {
            size_t size = (size_t)random_below(&random, i % 100 == 0 ? 100000 : 200);
            unsigned char *chunk = arena_bytes(arena, size);
            assert_int_equal((uintptr_t)chunk % _Alignof(max_align_t), 0);
            for (size_t k = 0; k < size; k++)
                assert_int_equal(chunk[k], 0);
            memset(chunk, 0xa5, size);
        }
        arena_reset(arena); /* dirty blocks must come out clean again */
    }
    arena_free(arena);
}
END_TEST

START_TEST(chunks_do_not_overlap)
{
    Arena *arena = arena_new();
    enum { COUNT = 500 };
    unsigned char *chunks[COUNT];
    size_t sizes[COUNT];
    Random random = {2};
    for (int i = 0; i < COUNT; i++) {
        sizes[i] = (size_t)random_below(&random, 5000);
        chunks[i] = arena_bytes(arena, sizes[i]);
        memset(chunks[i], i % 251, sizes[i]);
    }
    for (int i = 0; i < COUNT; i++)
        for (size_t k = 0; k < sizes[i]; k++)
            assert_int_equal(chunks[i][k], i % 251);
    arena_free(arena);
}
END_TEST

START_TEST(reset_uses_the_same_memory_again)
{
    Arena *arena = arena_new();
    void *first = arena_bytes(arena, 100);
    arena_bytes(arena, 1000000);
    arena_reset(arena);
    assert_ptr_equal(arena_bytes(arena, 100), first);
    arena_free(arena);
}
END_TEST

START_TEST(arrays_grow_and_keep_what_they_hold)
{
    Arena *arena = arena_new();
    Marks marks = {0};
    Marks others = {0};
    for (uint64_t i = 0; i < 20000; i++) {
        *arena_push(arena, &marks) = i;
        if (i % 3 == 0)
            *arena_push(arena, &others) = ~i; /* stands between, so that the first cannot always grow where it is */
    }
    assert_int_equal(marks.count, 20000);
    assert_true(marks.room >= marks.count);
    for (int i = 0; i < marks.count; i++)
        assert_int_equal(marks.at[i], i);
    for (int i = 0; i < others.count; i++)
        assert_true(others.at[i] == ~(uint64_t)(3 * i));
    arena_free(arena);
}
END_TEST

START_TEST(a_pushed_element_is_zeroed)
{
    Arena *arena = arena_new();
    memset(arena_bytes(arena, 100000), 0xff, 100000);
    arena_reset(arena);
    Marks marks = {0};
    for (int i = 0; i < 1000; i++)
        assert_int_equal(*arena_push(arena, &marks), 0);
    arena_free(arena);
}
END_TEST

START_TEST(the_last_array_grows_where_it_stands)
{
    Arena *arena = arena_new();
    arena_bytes(arena, 300000);
    arena_reset(arena);
    Marks marks = {0};
    *arena_push(arena, &marks) = 0;
    uint64_t *before = marks.at;
    for (int i = 0; i < 10000; i++)
        *arena_push(arena, &marks) = 0;
    assert_ptr_equal(marks.at, before);
    arena_free(arena);
}
END_TEST

START_TEST(text_is_a_copy_with_an_end)
{
    Arena *arena = arena_new();
    char source[] = {'d', 'e', 's', 'k', '!'};
    char *copy = arena_text(arena, source, 4);
    source[0] = 'x';
    assert_string_equal(copy, "desk");
    assert_string_equal(arena_text(arena, NULL, 0), "");
    arena_free(arena);
    arena_free(NULL);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        hands_out_zeroed_aligned_chunks,     chunks_do_not_overlap,      reset_uses_the_same_memory_again,
        arrays_grow_and_keep_what_they_hold, a_pushed_element_is_zeroed, the_last_array_grows_where_it_stands,
        text_is_a_copy_with_an_end,
    };
    return RUN(tests);
}
