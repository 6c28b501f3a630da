/*
 * Files that are refused: bad/NAME.yaml with what is said of it in bad/NAME.txt, a line an error, LINE:COLUMN: in front
 * where it has a place.
 */
#include "support/test.h"

#include "base/file.h"
#include "store/store.h"
#include "support/utf8_valid.h"

#include <dirent.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static void read_whole(const char *folder, const char *name, const char *end, Text *out)
{
    Text path;
    Err err;
    text_init(&path);
    text_format(&path, "%s/%s%s", folder, name, end);
    assert_done(file_read(path.bytes, STORE_FILE_MOST, out, &err), &err);
    text_finish(&path);
}

static void put_errors(const Errs *errors, Text *out)
{
    text_clear(out);
    for (int i = 0; i < errors->count; i++) {
        const Err *err = &errors->at[i];
        if (err->line > 0)
            text_format(out, "%d:%d: ", err->line, err->column);
        text_format(out, "%s\n", err->text);
    }
}

START_TEST(each_bad_file_is_told_in_its_words)
{
    char folder[4096];
    const char *source = getenv("DATUMROW_SOURCE");
    snprintf(folder, sizeof folder, "%s/tests/store/bad", source == NULL ? "." : source);
    DIR *open = opendir(folder);
    assert_non_null(open);
    Text file;
    Text expected;
    Text told;
    text_init(&file);
    text_init(&expected);
    text_init(&told);
    int count = 0;
    int wrong = 0;
    for (struct dirent *entry; (entry = readdir(open)) != NULL;) {
        char *end = strstr(entry->d_name, ".yaml");
        if (end == NULL)
            continue;
        Arena *arena = arena_new();
        Source out = {0};
        Errs errors = {0};
        read_whole(folder, entry->d_name, "", &file);
        *end = '\0';
        read_whole(folder, entry->d_name, ".txt", &expected);
        assert_false(store_parse(arena, "wall.yaml", file.bytes, file.length, &out, &errors));
        assert_null(out.wall);
        assert_true(errors.count > 0);
        for (int i = 0; i < errors.count; i++)
            assert_string_equal(errors.at[i].place, "wall.yaml");
        put_errors(&errors, &told);
        if (strcmp(told.bytes, expected.bytes) != 0) {
            tests_note("%s.yaml is told as\n%sinstead of\n%s", entry->d_name, told.bytes, expected.bytes);
            wrong++;
        }
        arena_free(arena);
        count++;
    }
    closedir(open);
    text_finish(&file);
    text_finish(&expected);
    text_finish(&told);
    assert_true(count >= 40);
    assert_int_equal(wrong, 0);
}
END_TEST

/* ---- what would be too large to keep as a file ---- */

static Arena *arena;

static const Err *first_error(const char *text, size_t length)
{
    Source out = {0};
    Errs errors = {0};
    if (arena != NULL)
        arena_free(arena);
    arena = arena_new();
    assert_false(store_parse(arena, "wall.yaml", text, length, &out, &errors));
    assert_true(errors.count > 0);
    return &errors.at[0];
}

static const char head[] = "datumrow: 1\nunits: in\nplanks: {width: 3, thickness: 1/2}\nstart: 0\nfaces:\n";
static const char face[] = "- {name: f%d, width: 100, floor: [{at: 0, down: 40}], ceiling: [{at: 0, up: 50}]%s}\n";

START_TEST(files_above_eight_mebibytes_are_refused)
{
    Text text;
    text_init(&text);
    text_put(&text, head);
    text_format(&text, "- {name: f, width: 100, floor: [{at: 0, down: 40}], ceiling: [{at: 0, up: 50}]}\n#");
    text_put_times(&text, 'x', STORE_FILE_MOST - (int)text.length);
    Source out;
    Errs errors;
    Arena *large = arena_new();
    assert_true(store_parse(large, "wall.yaml", text.bytes, text.length, &out, &errors));
    arena_free(large);
    text_put(&text, "x");
    const Err *err = first_error(text.bytes, text.length);
    assert_int_equal(err->kind, ERR_LIMIT);
    assert_holds(err->text, "8 MiB");
    text_finish(&text);
}
END_TEST

START_TEST(deep_nesting_is_refused_where_it_begins)
{
    Text text;
    text_init(&text);
    text_put(&text, "a: ");
    text_put_times(&text, '[', 1000000);
    const Err *err = first_error(text.bytes, text.length);
    assert_int_equal(err->kind, ERR_LIMIT);
    assert_int_equal(err->line, 1);
    assert_int_equal(err->column, 4 + 15); /* the mapping is the first */
    assert_holds(err->text, "16");
    text_finish(&text);
}
END_TEST

START_TEST(too_many_values_are_refused)
{
    Text text;
    text_init(&text);
    text_put(&text, "a: [");
    while (text.length < STORE_FILE_MOST - 2)
        text_put(&text, "1,");
    text_put(&text, "]");
    const Err *err = first_error(text.bytes, text.length);
    assert_int_equal(err->kind, ERR_LIMIT);
    text_finish(&text);
}
END_TEST

START_TEST(too_many_faces_or_openings_are_refused)
{
    Text text;
    text_init(&text);
    text_put(&text, head);
    for (int i = 0; i < WALL_FACES_MOST + 1; i++)
        text_format(&text, face, i, "");
    assert_holds(first_error(text.bytes, text.length)->text, "65 faces");
    text_clear(&text);
    text_put(&text, head);
    text_put(&text,
             "- name: f\n  width: 100\n  floor: [{at: 0, down: 40}]\n  ceiling: [{at: 0, up: 50}]\n  openings:\n");
    for (int i = 0; i < WALL_OPENINGS_MOST + 1; i++)
        text_format(&text, "  - {name: o%d, kind: box, left: 1, bottom: 1, width: 1, height: 1}\n", i);
    assert_holds(first_error(text.bytes, text.length)->text, "4097 openings");
    text_finish(&text);
}
END_TEST

START_TEST(names_longer_than_a_field_are_refused)
{
    Text text;
    Text name;
    text_init(&text);
    text_init(&name);
    text_put_times(&name, 'n', WALL_NAME_MOST);
    for (int more = 0; more < 2; more++) {
        text_clear(&text);
        text_put(&text, head);
        text_format(&text, "- {name: %s, width: 100, floor: [{at: 0, down: 40}], ceiling: [{at: 0, up: 50}]}\n",
                    name.bytes);
        if (more == 0) {
            Source out;
            Errs errors;
            Arena *fine = arena_new();
            assert_true(store_parse(fine, "wall.yaml", text.bytes, text.length, &out, &errors));
            arena_free(fine);
        } else {
            const Err *err = first_error(text.bytes, text.length);
            assert_int_equal(err->kind, ERR_LIMIT);
            assert_holds(err->text, "257 bytes");
        }
        text_put(&name, "n");
    }
    text_finish(&text);
    text_finish(&name);
}
END_TEST

/* So many slips that nobody reads them all: the first ones, and that there are more. */
START_TEST(of_many_slips_the_first_are_told)
{
    Text text;
    text_init(&text);
    text_put(&text, head);
    text_format(&text, face, 1, "");
    text_put(&text, "stock:\n");
    for (int i = 0; i < 100000; i++)
        text_put(&text, "- {length: no}\n");
    Arena *many = arena_new();
    Source out;
    Errs errors = {0};
    assert_false(store_parse(many, "wall.yaml", text.bytes, text.length, &out, &errors));
    assert_in_range(errors.count, 10, 100);
    assert_int_equal(errors.at[0].line, 8);
    assert_holds(errors.at[errors.count - 1].text, "more");
    arena_free(many);
    text_finish(&text);
}
END_TEST

/* Cut short anywhere, a file is refused with a place inside it, or it is a wall. */
START_TEST(a_file_cut_short_is_refused_or_a_wall)
{
    char path[4096];
    const char *source = getenv("DATUMROW_SOURCE");
    Text file;
    Err err;
    text_init(&file);
    snprintf(path, sizeof path, "%s/samples/stove-corner.yaml", source == NULL ? "." : source);
    assert_done(file_read(path, STORE_FILE_MOST, &file, &err), &err);
    for (size_t length = 0; length < file.length; length++) {
        Arena *cut = arena_new();
        Source out = {0};
        Errs errors = {0};
        if (!store_parse(cut, "wall.yaml", file.bytes, length, &out, &errors)) {
            assert_true(errors.count > 0);
            assert_true(utf8_valid(errors.at[0].text, strlen(errors.at[0].text)) == strlen(errors.at[0].text));
            assert_null(strchr(errors.at[0].text, '\n'));
        }
        arena_free(cut);
    }
    text_finish(&file);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        each_bad_file_is_told_in_its_words,      files_above_eight_mebibytes_are_refused,
        deep_nesting_is_refused_where_it_begins, too_many_values_are_refused,
        too_many_faces_or_openings_are_refused,  names_longer_than_a_field_are_refused,
        of_many_slips_the_first_are_told,        a_file_cut_short_is_refused_or_a_wall,
    };
    const int failed = RUN(tests);
    arena_free(arena);
    return failed;
}
