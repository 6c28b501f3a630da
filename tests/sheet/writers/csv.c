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

int main(void)
{
    const TTest *const tests[] = {follows_the_rules_of_rfc_4180};
    return RUN(tests);
}
