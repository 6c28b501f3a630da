#include "support/test.h"

#include "sheet/made_up.h"
#include "sheet/writers/csv.h"

/* Sentences and examples of RFC 4180, section 2, numbered as there. */
START_TEST(follows_the_rules_of_rfc_4180)
{
    Arena *arena = arena_new();
    Sheet *sheet = made_up_sheet(arena);
    static const char *const names[] = {"face", "text"};
    sheet_records(sheet, names, 2);
    const char **field = sheet_record(sheet)->at;
    field[0] = "aaa";
    field = sheet_record(sheet)->at; /* rule 7: "aaa","b""bb","ccc" */
    field[0] = "b\"bb";
    field[1] = "c,c";
    field = sheet_record(sheet)->at; /* rule 6: line breaks, quotes and commas are enclosed */
    field[0] = "b \r\nbb";
    field[1] = " spaces ";
    Text text;
    text_init(&text);
    csv_write(sheet, &text);
    assert_string_equal(text.bytes, "face,text\r\n"
                                    "aaa,\r\n"
                                    "\"b\"\"bb\",\"c,c\"\r\n"
                                    "\"b \r\nbb\", spaces \r\n");
    text_finish(&text);
    arena_free(arena);
}
END_TEST

/* The signs that OWASP's page "CSV Injection" names, in front of what a user typed, and numbers, which stay numbers. */
START_TEST(no_field_is_a_formula)
{
    static const struct {
        const char *field, *bytes;
    } rows[] = {
        {"=1+1", "'=1+1"},
        {"+1+1", "'+1+1"},
        {"-1+1", "'-1+1"},
        {"@SUM(A1)", "'@SUM(A1)"},
        {"\tx", "'\tx"},
        {"\rx", "\"'\rx\""},
        {"\nx", "\"'\nx\""},
        {"  =1", "'  =1"},
        {"=A1,\"b\"", "\"'=A1,\"\"b\"\"\""},
        {"\uff1d1", "'\uff1d1"},
        {"+3", "'+3"},
        {"-", "'-"},
        {"-.5", "'-.5"},
        {"-2.", "'-2."},
        {"-2.5.1", "'-2.5.1"},
        {"-2.625", "-2.625"},
        {"-12", "-12"},
        {"0.5", "0.5"},
        {"a=b", "a=b"},
        {"2\u00a01/2", "2 1/2"},
        {"", ""},
    };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        Arena *arena = arena_new();
        Sheet *sheet = made_up_sheet(arena);
        static const char *const names[] = {"name", "end"};
        sheet_records(sheet, names, 2);
        sheet_record(sheet)->at[0] = rows[i].field;
        Text text;
        text_init(&text);
        csv_write(sheet, &text);
        assert_string_equal(text.bytes, words(arena, "name,end\r\n%s,\r\n", rows[i].bytes));
        text_finish(&text);
        arena_free(arena);
    }
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {follows_the_rules_of_rfc_4180, no_field_is_a_formula};
    return RUN(tests);
}
