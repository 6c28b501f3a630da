/* datumrow(5) lists the keys of the table and the species there are: between two marks in the page stands what is made
 * of them here. With DATUMROW_RENEW=1 it is put there. */
#include "support/test.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/file.h"
#include "store/keys.h"
#include "support/manual.h"
#include "wall/species.h"

static const char *kind_words(const FileKey *key)
{
    switch (key->kind) {
    case VALUE_VERSION: return "number";
    case VALUE_TEXT: return "text";
    case VALUE_UNITS:
    case VALUE_ONE_WORD:
    case VALUE_WORD: return "word";
    case VALUE_LENGTH: return "length";
    case VALUE_LENGTH_OR_WORD: return "length or word";
    case VALUE_WIDTHS: return "length, or list of lengths";
    case VALUE_LENGTHS: return "list of lengths";
    case VALUE_COUNT: return "count";
    case VALUE_WHOLE: return "whole number";
    case VALUE_NUMBER: return "number";
    case VALUE_TEMPERATURE: return "temperature";
    case VALUE_PERCENT: return "percent";
    case VALUE_PERCENT_OR_WORD: return "percent or word";
    case VALUE_RECORD: return "mapping";
    case VALUE_RECORDS:
    case VALUE_HUNG: return "list";
    }
    return "";
}

/* A text of the table as mdoc: capital, full stop, nothing that a line of mdoc would take for a macro. */
static void put_sentence(Text *out, const char *says)
{
    char first = says[0];
    text_format(out, "%c", (char)(first >= 'a' && first <= 'z' ? first - 'a' + 'A' : first));
    for (const char *c = says + 1; *c != '\0'; c++) {
        if (*c == '`') {
            const char *end = strchr(c + 1, '`');
            if (end == NULL)
                FAIL("a lone ` in \"%s\"", says);
            text_put(out, "\\fB");
            text_put_bytes(out, c + 1, (size_t)(end - c - 1));
            text_put(out, "\\fR");
            c = end;
        } else {
            text_put_bytes(out, c, 1);
        }
    }
    text_put(out, ".\n");
}

static void put_key(const char *path, const FileKey *key, void *context)
{
    Text *out = context;
    text_format(out, ".It Ic %s\n.Pq %s", path, kind_words(key));
    bool first = true;
    for (const char *const *word = key->words; word != NULL && *word != NULL; word++)
        if ((*word)[0] != '\0') {
            text_format(out, "%s%s", first ? ": " : ", ", *word);
            first = false;
        }
    if (key->range == RANGE_ABOVE_ZERO && key->kind != VALUE_COUNT)
        text_put(out, " above 0");
    else if (key->range == RANGE_FROM_ZERO)
        text_put(out, " from 0");
    if (key->required && key->instead == NULL)
        text_put(out, ", required");
    else if (key->instead != NULL)
        text_format(out, ", or %s", key->instead);
    else if (key->fallback != NULL && key->fallback[0] != '\0' && strpbrk(key->fallback, "[{") == NULL)
        text_format(out, ", default %s", key->fallback);
    text_put(out, "\n");
    put_sentence(out, key->says);
}

static void put_keys(Text *out)
{
    text_put(out, ".Bl -tag -width Ds\n");
    keys_walk(put_key, out);
    text_put(out, ".El\n");
}

static void put_species(Text *out)
{
    for (int i = 0; i < species_count(); i++)
        text_format(out, "%s%s\n", species_at(i)->name, i + 1 < species_count() ? ";" : ".");
}

static void hold_to(const char *what, void (*write)(Text *out))
{
    Text made;
    text_init(&made);
    write(&made);
    manual_hold("datumrow.5", what, &made);
    text_finish(&made);
}

START_TEST(the_manual_describes_every_key)
{
    hold_to("keys", put_keys);
}
END_TEST

START_TEST(the_manual_names_every_species)
{
    hold_to("species", put_species);
}
END_TEST

/* Whether tests/FILE.c has the test. */
static bool has_test(const char *file, const char *test)
{
    char path[1000], start[200];
    Text text;
    Err err = {0};
    snprintf(path, sizeof path, "%s/tests/%s.c", getenv("DATUMROW_SOURCE"), file);
    snprintf(start, sizeof start, "START_TEST(%s)", test);
    text_init(&text);
    const bool has = file_read(path, 1 << 20, &text, &err) && strstr(text.bytes, start) != NULL;
    text_finish(&text);
    return has;
}

/* "`trade/bill: nails_have_their_penny_sizes`" in the rows of DEVELOPERS.md, "Checks against the outside". */
START_TEST(the_index_of_outside_checks_names_tests_that_are_there)
{
    char path[1000];
    Text text;
    Err err = {0};
    int count = 0;
    snprintf(path, sizeof path, "%s/DEVELOPERS.md", getenv("DATUMROW_SOURCE"));
    text_init(&text);
    assert_done(file_read(path, 1 << 20, &text, &err), &err);
    char *at = strstr(text.bytes, "## Checks against the outside"), *end = at == NULL ? NULL : strstr(at, "\n## ");
    assert_non_null(at);
    assert_non_null(end);
    *end = '\0';
    at = strstr(at, "| --- |");
    assert_non_null(at);
    while ((at = strchr(at, '`')) != NULL) {
        char file[100], test[100];
        if (sscanf(at, "`%99[a-z_0-9/]: %99[a-z_0-9]`", file, test) != 2)
            FAIL("no test is named in \"%.60s\"", at);
        if (!has_test(file, test))
            FAIL("tests/%s.c has no test %s", file, test);
        at = strchr(at + 1, '`') + 1;
        count++;
    }
    assert_true(count > 40);
    text_finish(&text);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        the_manual_describes_every_key,
        the_index_of_outside_checks_names_tests_that_are_there,
        the_manual_names_every_species,
    };
    return RUN(tests);
}
