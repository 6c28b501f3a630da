#include "store/report.h"

#include "base/text.h"

#include <stdlib.h>

void report_error(Report *report, ErrKind kind, int line, int column, const char *format, ...)
{
    if (report_is_full(report)) {
        report->more = true;
        return;
    }
    Text text;
    va_list list;
    text_init(&text);
    va_start(list, format);
    text_format_list(&text, format, list);
    va_end(list);
    Err *err = arena_push(report->arena, &report->errors);
    err_set(err, kind, "%s", text.bytes);
    err_at(err, report->name, line, column);
    text_finish(&text);
}

bool report_is_full(const Report *report)
{
    return report->errors.count >= ERRORS_MOST;
}

/* Each error with its place among those noted, so that equal ones keep their order. */
typedef struct Noted {
    Err err;
    int order;
} Noted;

static int compare(const void *a, const void *b)
{
    const Noted *p = a;
    const Noted *q = b;
    if (p->err.line != q->err.line)
        return p->err.line < q->err.line ? -1 : 1;
    if (p->err.column != q->err.column)
        return p->err.column < q->err.column ? -1 : 1;
    return p->order - q->order;
}

void report_finish(Report *report, Errs *out)
{
    const int count = report->errors.count;
    if (count > 1) {
        Noted *sorted = arena_array(report->arena, Noted, count);
        for (int i = 0; i < count; i++)
            sorted[i] = (Noted){report->errors.at[i], i};
        qsort(sorted, (size_t)count, sizeof *sorted, compare);
        for (int i = 0; i < count; i++)
            report->errors.at[i] = sorted[i].err;
    }
    if (report->more) {
        Err *err = arena_push(report->arena, &report->errors);
        err_set(err, ERR_INPUT, "there is more like this; mend these first");
        err_at(err, report->name, 0, 0);
    }
    *out = report->errors;
}
