#include "support/test.h"

#include <stdio.h>
#include <string.h>

#include "command/call.h"

enum { WORDS = 12 };

/* Understands `line`, split at spaces, behind the program's own name; the words live until the next call. */
static bool understand(const char *line, Call *call, Err *err)
{
    static char buffer[256];
    static char program[] = "datumrow";
    char *words[WORDS] = {program};
    int count = 1;
    snprintf(buffer, sizeof buffer, "%s", line);
    for (char *word = strtok(buffer, " "); word != NULL; word = strtok(NULL, " "))
        words[count++] = word;
    *err = (Err){0};
    return call_understand(count, words, call, err);
}

START_TEST(takes_commands_and_files)
{
    Call call;
    Err err;
    assert_done(understand("", &call, &err), &err);
    assert_null(call.command);
    assert_null(call.path);
    assert_done(understand("wall.yaml", &call, &err), &err);
    assert_null(call.command);
    assert_string_equal(call.path, "wall.yaml");
    for (int i = 0; i < table_command_count(); i++) {
        char line[64];
        snprintf(line, sizeof line, "%s wall.yaml", table_command(i)->name);
        assert_done(understand(line, &call, &err), &err);
        assert_ptr_equal(call.command, table_command(i));
        assert_string_equal(call.path, "wall.yaml");
    }
    assert_done(understand("rows -", &call, &err), &err);
    assert_string_equal(call.path, "-");
}
END_TEST

/* As getopt_long: anywhere, cut short, joined or apart, `--` ends them. */
START_TEST(takes_options_as_gnu_programs_do)
{
    static const char *const same[] = {
        "rows --as pdf -o out.pdf wall.yaml",
        "--as=pdf rows wall.yaml -oout.pdf",
        "rows wall.yaml --as=pdf --output=out.pdf",
        "rows wall.yaml --a pdf --out out.pdf",
        "rows -o out.pdf wall.yaml",
    };
    Call call;
    Err err;
    for (size_t i = 0; i < sizeof same / sizeof *same; i++) {
        assert_done(understand(same[i], &call, &err), &err);
        assert_string_equal(call.command->name, "rows");
        assert_string_equal(call.path, "wall.yaml");
        assert_int_equal(call.format, FORMAT_PDF);
        assert_string_equal(call.out, "out.pdf");
    }
    assert_done(understand("rows -- --as", &call, &err), &err);
    assert_string_equal(call.path, "--as");
    assert_done(understand("-- rows", &call, &err), &err);
    assert_null(call.command);
    assert_string_equal(call.path, "rows");
    assert_done(understand("rows --print wall.yaml", &call, &err), &err);
    assert_true(call.print);
    assert_done(understand("rows --as pdf -o sheet.txt wall.yaml", &call, &err), &err);
    assert_int_equal(call.format, FORMAT_PDF);
    assert_done(understand("rows -o - wall.yaml", &call, &err), &err);
    assert_int_equal(call.format, FORMAT_NONE);
    assert_done(understand("plan -o plan.yaml wall.yaml", &call, &err), &err);
    assert_int_equal(call.format, FORMAT_NONE);
    /* a name without an ending is no slip: text, or what --as says */
    static const char *const plain[] = {"rows -o sheet wall.yaml", "rows -o sheets.d/rows wall.yaml",
                                        "rows -o .rows wall.yaml", "plan -o plan wall.yaml"};
    for (size_t i = 0; i < sizeof plain / sizeof *plain; i++) {
        assert_done(understand(plain[i], &call, &err), &err);
        assert_int_equal(call.format, FORMAT_NONE);
    }
    assert_done(understand("rows --as csv -o rows.foo wall.yaml", &call, &err), &err);
    assert_int_equal(call.format, FORMAT_CSV);
    assert_done(understand("rows -o ROWS.PDF wall.yaml", &call, &err), &err);
    assert_int_equal(call.format, FORMAT_PDF);
}
END_TEST

START_TEST(shows_help_whatever_else_is_written)
{
    Call call;
    Err err;
    static const char *const lines[] = {"--help", "-h", "rows --help", "rows a b c --help", "--he"};
    for (size_t i = 0; i < sizeof lines / sizeof *lines; i++) {
        assert_done(understand(lines[i], &call, &err), &err);
        assert_true(call.help);
    }
    assert_done(understand("-V", &call, &err), &err);
    assert_true(call.version);
}
END_TEST

START_TEST(says_what_to_write_instead)
{
    static const struct {
        const char *line, *says;
    } cases[] = {
        {"rwos wall.yaml", "did you mean rows?"},
        {"hang wall.yaml", "see datumrow --help"},
        {"rows", "datumrow rows FILE"},
        {"new", "datumrow new FILE"},
        {"rows a.yaml b.yaml", "b.yaml is one too many"},
        {"-- a.yaml b.yaml", "b.yaml is one too many"},
        {"rows --pint wall.yaml", "did you mean --print?"},
        {"rows --frobnicate wall.yaml", "see datumrow --help"},
        {"rows -x wall.yaml", "no option -x"},
        {"rows --as docx wall.yaml", "text, pdf, svg or csv"},
        {"rows wall.yaml --as", "--as needs FORMAT"},
        {"rows wall.yaml -o", "-o needs OUT"},
        {"rows --print=yes wall.yaml", "--print takes no value"},
        {"rows --print --as csv wall.yaml", "csv is nothing to print"},
        {"rows --print -o - wall.yaml", "do not go together"},
        {"rows --print -o rows.csv wall.yaml", "csv is nothing to print"},
        {"rows -o x.foo wall.yaml", ".txt, .pdf, .svg or .csv"},
        {"cuts -o cuts.yaml wall.yaml", "no form that ends in .yaml"},
        {"rows --print -o x.foo wall.yaml", "no form that ends in .foo"},
        {"plan -o p.csv wall.yaml", "no form that ends in .csv; write a name that ends in .yaml or .yml"},
        {"plan --as csv wall.yaml", "leave --as away"},
        {"plan --print wall.yaml", "leave --print away"},
        {"--as pdf wall.yaml", "--as goes with a sheet"},
        {"new --print wall.yaml", "--print goes with a sheet"},
        {"--= wall.yaml", "no option --"},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        Call call;
        Err err;
        if (understand(cases[i].line, &call, &err))
            FAIL("\"%s\" was taken", cases[i].line);
        assert_int_equal(err.kind, ERR_USAGE);
        assert_holds(err.text, cases[i].says);
    }
}
END_TEST

START_TEST(knows_formats_by_word_and_ending)
{
    static const Format all[] = {FORMAT_TEXT, FORMAT_PDF, FORMAT_SVG, FORMAT_CSV};
    for (size_t i = 0; i < sizeof all / sizeof *all; i++)
        assert_int_equal(table_format(table_format_word(all[i])), all[i]);
    assert_int_equal(table_format("PDF"), FORMAT_NONE);
    assert_int_equal(table_format_of_file("a/b.svg"), FORMAT_SVG);
    assert_int_equal(table_format_of_file("rows.txt"), FORMAT_TEXT);
    assert_int_equal(table_format_of_file(".pdf"), FORMAT_NONE);
    assert_int_equal(table_format_of_file("rows"), FORMAT_NONE);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        takes_commands_and_files,   takes_options_as_gnu_programs_do, shows_help_whatever_else_is_written,
        says_what_to_write_instead, knows_formats_by_word_and_ending,
    };
    return RUN(tests);
}
