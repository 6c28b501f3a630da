#include "sheet/writers/csv.h"

#include <string.h>

static void put_field(Text *out, const char *field)
{
    if (strpbrk(field, "\",\r\n") == NULL) {
        text_put(out, field);
        return;
    }
    text_put(out, "\"");
    for (const char *c = field; *c != '\0'; c++)
        text_put_bytes(out, *c == '"' ? "\"\"" : c, *c == '"' ? 2 : 1);
    text_put(out, "\"");
}

static void put_record(Text *out, const char *const *fields, int count)
{
    for (int i = 0; i < count; i++) {
        text_put(out, i > 0 ? "," : "");
        put_field(out, fields[i]);
    }
    text_put(out, "\r\n");
}

void csv_write(const Sheet *sheet, Text *out)
{
    const SheetRecords *records = &sheet->records;
    put_record(out, records->names, records->name_count);
    for (int i = 0; i < records->count; i++)
        put_record(out, records->at[i].at, records->name_count);
}
