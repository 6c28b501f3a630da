/* Help, completions and the manual page hold exactly the commands and options of the table. */
#include "support/test.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/file.h"
#include "base/text.h"
#include "base/utf8.h"
#include "command/help.h"
#include "command/table.h"

static void read_source(const char *path, Text *out)
{
    char whole[1024];
    Err err = {0};
    const char *root = getenv("DATUMROW_SOURCE");
    assert_non_null(root);
    snprintf(whole, sizeof whole, "%s/%s", root, path);
    text_init(out);
    assert_done(file_read(whole, 1 << 20, out, &err), &err);
}

static int times(const char *text, const char *part)
{
    int count = 0;
    for (const char *at = strstr(text, part); at != NULL; at = strstr(at + 1, part))
        count++;
    return count;
}

/* Each text once. */
#define assert_once(text, ...)                                                         \
    do {                                                                               \
        char part[256];                                                                \
        snprintf(part, sizeof part, __VA_ARGS__);                                      \
        if (times((text), part) != 1)                                                  \
            FAIL("\"%s\" stands there %d times, not once", part, times((text), part)); \
    } while (0)

START_TEST(help_fits_one_screen)
{
    Text text;
    text_init(&text);
    help_write(&text);
    int lines = 0;
    for (char *line = strtok(text.bytes, "\n"); line != NULL; line = strtok(NULL, "\n"))
        assert_in_range(utf8_cells(line), 1, 80);
    text_clear(&text);
    help_write(&text);
    lines = times(text.bytes, "\n");
    assert_in_range(lines, 1, 24);
    for (int i = 0; i < table_command_count(); i++)
        assert_once(text.bytes, "\n  %s FILE ", table_command(i)->name);
    for (int i = 0; i < table_option_count(); i++)
        assert_holds(text.bytes, table_option(i)->name);
    text_finish(&text);
}
END_TEST

/* The words in quotes behind `before`, which stands once; as many as the table has commands or options and their
 * letters. */
static int words_behind(const char *text, const char *before, char *out, size_t size)
{
    const char *from = strstr(text, before);
    assert_non_null(from);
    from += strlen(before);
    const char *end = strchr(from, '\'');
    assert_non_null(end);
    snprintf(out, size, " %.*s ", (int)(end - from), from);
    return times(out, " ") - 1;
}

START_TEST(bash_knows_the_table)
{
    Text text;
    char words[512];
    read_source("src/share/datumrow.bash", &text);
    assert_int_equal(words_behind(text.bytes, "local commands='", words, sizeof words), table_command_count());
    for (int i = 0; i < table_command_count(); i++)
        assert_once(words, " %s ", table_command(i)->name);
    int count = words_behind(text.bytes, "local options='", words, sizeof words);
    for (int i = 0; i < table_option_count(); i++) {
        assert_once(words, " --%s ", table_option(i)->name);
        if (table_option(i)->letter != 0)
            assert_once(words, " -%c ", table_option(i)->letter);
        count -= table_option(i)->letter != 0 ? 2 : 1;
    }
    assert_int_equal(count, 0);
    text_finish(&text);
}
END_TEST

START_TEST(zsh_knows_the_table)
{
    Text text;
    read_source("src/share/_datumrow", &text);
    for (int i = 0; i < table_command_count(); i++) {
        const Command *command = table_command(i);
        char summary[160] = "";
        for (const char *c = command->summary; *c != '\0'; c++) {
            size_t end = strlen(summary);
            snprintf(summary + end, sizeof summary - end, *c == ':' ? "\\:" : "%c", *c);
        }
        assert_once(text.bytes, "        '%s:%s'\n", command->name, summary);
    }
    assert_int_equal(times(text.bytes, "\n        '") - table_command_count(),
                     times(text.bytes, "\n        '--") + times(text.bytes, "\n        '(") +
                         times(text.bytes, "\n        '1:") + times(text.bytes, "\n        '2:"));
    for (int i = 0; i < table_option_count(); i++) {
        const Option *option = table_option(i);
        if (option->letter != 0)
            assert_once(text.bytes, "{-%c,--%s}'[", option->letter, option->name);
        else
            assert_once(text.bytes, "'--%s[", option->name);
    }
    text_finish(&text);
}
END_TEST

START_TEST(fish_knows_the_table)
{
    Text text;
    read_source("src/share/datumrow.fish", &text);
    for (int i = 0; i < table_command_count(); i++)
        assert_once(text.bytes, " -a %s -d '%s'\n", table_command(i)->name, table_command(i)->summary);
    assert_int_equal(times(text.bytes, " -n __datumrow_no_command -a "), table_command_count());
    int options = 0;
    for (int i = 0; i < table_option_count(); i++, options++) {
        const Option *option = table_option(i);
        if (option->letter != 0)
            assert_once(text.bytes, " -s %c -l %s ", option->letter, option->name);
        else
            assert_once(text.bytes, "complete -c datumrow -l %s ", option->name);
    }
    assert_int_equal(times(text.bytes, " -l "), options);
    text_finish(&text);
}
END_TEST

START_TEST(manual_knows_the_table)
{
    Text text;
    read_source("man/datumrow.1", &text);
    for (int i = 0; i < table_command_count(); i++)
        assert_once(text.bytes, "\n.It Cm %s\n", table_command(i)->name);
    assert_int_equal(times(text.bytes, "\n.It Cm "), table_command_count());
    for (int i = 0; i < table_option_count(); i++) {
        const Option *option = table_option(i);
        const char *argument = option->argument == NULL ? "" : " Ar ";
        const char *word = option->argument == NULL ? "" : option->argument;
        if (option->letter != 0)
            assert_once(text.bytes, "\n.It Fl %c%s%s , Fl -%s%s%s\n", option->letter, argument, word, option->name,
                        argument, word);
        else
            assert_once(text.bytes, "\n.It Fl -%s%s%s\n", option->name, argument, word);
    }
    text_finish(&text);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        help_fits_one_screen, bash_knows_the_table, zsh_knows_the_table, fish_knows_the_table, manual_knows_the_table,
    };
    return RUN(tests);
}
