#include "sheet/writers/csv.h"

#include <string.h>

#include "base/fold.h"
#include "base/utf8.h"

/* A decimal number as words_decimal writes it, which a spreadsheet takes for that number. */
static bool is_number(const char *field)
{
    static const char digits[] = "0123456789";
    field += *field == '-';
    size_t whole = strspn(field, digits);
    const char *rest = field + whole;
    if (whole > 0 && *rest == '.') {
        size_t part = strspn(rest + 1, digits);
        rest += part > 0 ? 1 + part : 0;
    }
    return whole > 0 && *rest == '\0';
}

/* Whether a spreadsheet could run the field as a formula: by its first sign, spaces in front not counted, also of the
 * wide signs that some locales take for it (OWASP, "CSV Injection"; spaces and wide signs from memory). */
static bool is_formula(const char *field)
{
    static const char *const signs[] = {"=", "+", "-", "@", "\t", "\r", "\n", "\uff1d", "\uff0b", "\uff0d", "\uff20"};
    if (is_number(field))
        return false;
    field += strspn(field, " ");
    for (size_t i = 0; i < sizeof signs / sizeof *signs; i++)
        if (strncmp(field, signs[i], strlen(signs[i])) == 0)
            return true;
    return false;
}

/* A space that does not break is for lines that fold: here it is a plain one. Line ends and tabs mean what they say
 * within quotes; all else that a terminal should not see has a stand-in. */
static void put_field(Arena *arena, Text *out, const char *field)
{
    const bool quoted = strpbrk(field, "\",\r\n") != NULL;
    text_put(out, quoted ? "\"" : "");
    text_put(out, is_formula(field) ? "'" : "");
    while (*field != '\0') {
        const size_t plain = strcspn(field, "\"\t\r\n");
        const char *safe = utf8_safe_in(arena, arena_text(arena, field, plain));
        fold_put(out, safe, strlen(safe));
        field += plain;
        if (*field == '\0')
            break;
        text_put(out, *field == '"' ? "\"" : "");
        text_put_bytes(out, field++, 1);
    }
    text_put(out, quoted ? "\"" : "");
}

static void put_record(Arena *arena, Text *out, const char *const *fields, int count)
{
    for (int i = 0; i < count; i++) {
        text_put(out, i > 0 ? "," : "");
        put_field(arena, out, fields[i]);
    }
    text_put(out, "\r\n");
}

void csv_write(const Sheet *sheet, Text *out)
{
    const SheetRecords *records = &sheet->records;
    Arena *arena = arena_new();
    put_record(arena, out, records->names, records->name_count);
    for (int i = 0; i < records->count; i++)
        put_record(arena, out, records->at[i].at, records->name_count);
    arena_free(arena);
}
