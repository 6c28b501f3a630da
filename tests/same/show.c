/*
 * Shows walls whole, for comparing what two builds make of them. `walls FOLDER COUNT` writes COUNT random walls there,
 * as files. `show FOLDER FILE...` reads each FILE and writes what every command prints of it, as text and as CSV, and
 * the plan, into a file of its name in FOLDER; a wall is worked out once for all of them.
 */
#include "base/file.h"
#include "base/hash.h"
#include "command/table.h"
#include "sheet/writers/csv.h"
#include "sheet/writers/plain.h"
#include "sheet/writers/plan.h"
#include "store/store.h"
#include "support/random_wall.h"
#include "support/unkind_wall.h"

#include <inttypes.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { PATH_ROOM = 4096 };

static void give_up(const char *path, const char *text)
{
    fprintf(stderr, "%s: %s\n", path, text);
    exit(1);
}

static void write_file(const char *path, const Text *text)
{
    Err err = {0};
    if (!file_write_safely(path, text->bytes, text->length, &err))
        give_up(path, err.text);
}

/* Kind ones and unkind ones in turn, of every kind. */
static Wall *wall_of(Arena *arena, int number)
{
    if (number % 2 == 1)
        return unkind_wall(arena, (uint64_t)number);
    return random_wall(arena, (uint64_t)number, (RandomKind)(number / 2 % RANDOM_KIND_COUNT));
}

static void write_walls(const char *folder, int count)
{
    for (int i = 0; i < count; i++) {
        Arena *arena = arena_new();
        Text text;
        text_init(&text);
        store_write(wall_of(arena, i), NULL, &text);
        char path[PATH_ROOM];
        snprintf(path, sizeof path, "%s/random-%03d.yaml", folder, i);
        write_file(path, &text);
        text_finish(&text);
        arena_free(arena);
    }
}

static void show_job(Arena *arena, const Job *job, Text *out)
{
    for (int i = 0; i < table_command_count(); i++) {
        const Command *command = table_command(i);
        if (command->sheet == NULL)
            continue;
        const Sheet *sheet = command->sheet(arena, job, "");
        text_format(out, "---- %s\n", command->name);
        plain_write(sheet, out);
        if (command->formats & FORMAT_CSV)
            csv_write(sheet, out);
    }
    text_format(out, "---- plan\n");
    plan_write(job, out);
}

static void show(const char *folder, const char *path)
{
    const char *slash = strrchr(path, '/');
    const char *name = slash == NULL ? path : slash + 1;
    Arena *arena = arena_new();
    Source source = {0};
    Errs errs = {0};
    Text out, canonical;
    text_init(&out);
    text_init(&canonical);
    if (store_read(arena, path, &source, &errs)) {
        store_write(source.wall, NULL, &canonical);
        char hash[13];
        hash_short(hash_bytes(canonical.bytes, canonical.length), hash);
        Err err = {0};
        const Job *job = job_of_wall(arena, source.wall, name, hash, &err);
        if (job == NULL)
            text_format(&out, "%s: %s\n", err.place, err.text);
        else
            show_job(arena, job, &out);
    }
    for (int i = 0; i < errs.count; i++)
        text_format(&out, "%s: %s\n", errs.at[i].place, errs.at[i].text);
    char to[PATH_ROOM];
    snprintf(to, sizeof to, "%s/%s", folder, name);
    write_file(to, &out);
    text_finish(&canonical);
    text_finish(&out);
    arena_free(arena);
}

int main(int count, char **arguments)
{
    if (count == 4 && strcmp(arguments[1], "walls") == 0) {
        write_walls(arguments[2], (int)strtol(arguments[3], NULL, 10));
        return 0;
    }
    if (count < 4 || strcmp(arguments[1], "show") != 0)
        give_up("use", "walls FOLDER COUNT, or show FOLDER FILE...");
    for (int i = 3; i < count; i++)
        show(arguments[2], arguments[i]);
    return 0;
}
