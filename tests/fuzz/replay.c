/*
 * Runs a fuzz target without a fuzzer, as a test: over each file of a folder as it is, and then over so many changed
 * ones (bytes replaced, taken out, doubled, two files joined), the same on each run. Prints TAP.
 *
 *     replay FOLDER CHANGES
 */
#include "fuzz.h"

#include "base/arena.h"
#include "base/file.h"
#include "base/random.h"

#include <dirent.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { SEED_LIMIT = 1 << 20, CHANGES_MOST = 8 };

typedef struct Seed {
    const char *name;
    const char *bytes;
    size_t length;
} Seed;

typedef struct Seeds {
    Seed *at;
    int count;
    int room;
} Seeds;

static int by_name(const void *a, const void *b)
{
    return strcmp(((const Seed *)a)->name, ((const Seed *)b)->name);
}

static bool read_seeds(Arena *arena, const char *folder, Seeds *seeds, Err *err)
{
    DIR *open = opendir(folder);
    if (open == NULL)
        return err_set(err, ERR_SYSTEM, "%s cannot be opened", folder);
    Text text;
    text_init(&text);
    bool done = true;
    for (struct dirent *entry; done && (entry = readdir(open)) != NULL;) {
        if (entry->d_name[0] == '.')
            continue;
        char path[4096];
        snprintf(path, sizeof path, "%s/%s", folder, entry->d_name);
        done = file_read(path, SEED_LIMIT, &text, err);
        if (done)
            *arena_push(arena, seeds) = (Seed){arena_text(arena, entry->d_name, strlen(entry->d_name)),
                                               arena_text(arena, text.bytes, text.length), text.length};
    }
    closedir(open);
    text_finish(&text);
    if (seeds->count > 0)
        qsort(seeds->at, (size_t)seeds->count, sizeof *seeds->at, by_name);
    return done;
}

static void feed(const char *bytes, size_t length)
{
    /* a copy of just that size, so that a sanitizer sees a step beyond it */
    uint8_t *copy = malloc(length + (length == 0));
    if (copy == NULL)
        abort();
    memcpy(copy, bytes, length);
    LLVMFuzzerTestOneInput(copy, length);
    free(copy);
}

static void change(Text *text, const Seeds *seeds, Random *random)
{
    size_t at = (size_t)random_below(random, text->length + 1);
    const Seed *other = &seeds->at[random_below(random, (uint64_t)seeds->count)];
    size_t other_at = (size_t)random_below(random, other->length + 1);
    size_t most = other->length - other_at < 64 ? other->length - other_at : 64;
    size_t some = (size_t)random_below(random, most + 1);
    switch (random_below(random, 4)) {
    case 0: /* another byte */
        if (at < text->length)
            text->bytes[at] = (char)random_below(random, 256);
        break;
    case 1: /* a stretch less */
        some = some < text->length - at ? some : text->length - at;
        memmove(text->bytes + at, text->bytes + at + some, text->length - at - some);
        text->length -= some;
        text->bytes[text->length] = '\0';
        break;
    case 2: /* a stretch of another seed in its place */
        some = some < text->length - at ? some : text->length - at;
        memcpy(text->bytes + at, other->bytes + other_at, some);
        break;
    default: /* and behind it */ text_put_bytes(text, other->bytes + other_at, some); break;
    }
}

int main(int count, char **words)
{
    const int changes = count == 3 ? (int)strtol(words[2], NULL, 10) : 0;
    if (changes < 1) {
        fputs("usage: replay FOLDER CHANGES\n", stderr);
        return 2;
    }
    Arena *arena = arena_new();
    Seeds seeds = {0};
    Err err;
    if (!read_seeds(arena, words[1], &seeds, &err) || seeds.count == 0) {
        printf("Bail out! no seeds in %s\n", words[1]);
        return 1;
    }
    printf("1..%d\n", 2 * seeds.count);
    Text text;
    text_init(&text);
    Random random = {1};
    for (int i = 0; i < seeds.count; i++) {
        const Seed *seed = &seeds.at[i];
        feed(seed->bytes, seed->length);
        printf("ok %d - %s as it is\n", 2 * i + 1, seed->name);
        fflush(stdout);
        for (int c = 0; c < changes; c++) {
            text_clear(&text);
            text_put_bytes(&text, seed->bytes, seed->length);
            for (uint64_t times = 1 + random_below(&random, CHANGES_MOST); times > 0; times--)
                change(&text, &seeds, &random);
            feed(text.bytes, text.length);
        }
        printf("ok %d - %s changed %d times\n", 2 * i + 2, seed->name, changes);
        fflush(stdout);
    }
    text_finish(&text);
    arena_free(arena);
    return 0;
}
