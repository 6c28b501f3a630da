#include "command/produce.h"

#include <errno.h>
#include <inttypes.h>
#include <limits.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/ioctl.h>
#include <sys/stat.h>
#include <time.h>
#include <unistd.h>

#include "base/file.h"
#include "base/hash.h"
#include "base/panic.h"
#include "base/utf8.h"
#include "command/check_list.h"
#include "config.h"
#include "sheet/printer.h"
#include "sheet/writers/csv.h"
#include "sheet/writers/pdf.h"
#include "sheet/writers/plain.h"
#include "sheet/writers/plan.h"
#include "store/store.h"

/* ---- messages ---- */

int produce_tell(const Err *err)
{
    char line[ERR_PLACE_MAX + ERR_TEXT_MAX + 64];
    char safe[sizeof line];
    err_line(err, line, sizeof line);
    utf8_safe(safe, sizeof safe, line, (int)sizeof safe, false);
    fprintf(stderr, "datumrow: %s\n", safe);
    return err->kind == ERR_USAGE ? 2 : 3;
}

/* ---- from the file to the job ---- */

static const char *base_name(const char *path)
{
    const char *slash = strrchr(path, '/');
    return slash == NULL ? path : slash + 1;
}

static const Job *read_job(Arena *arena, const char *path)
{
    Source source = {0};
    Errs errs = {0};
    if (!store_read(arena, path, &source, &errs)) {
        for (int i = 0; i < errs.count; i++)
            produce_tell(&errs.at[i]);
        return NULL;
    }
    Text canonical;
    text_init(&canonical);
    store_write(source.wall, NULL, &canonical);
    char hash[13];
    hash_short(hash_bytes(canonical.bytes, canonical.length), hash);
    text_finish(&canonical);
    Err err = {0};
    const char *name = strcmp(path, "-") == 0 ? "standard input" : base_name(path);
    const Job *job = job_of_wall(arena, source.wall, name, hash, &err);
    if (job == NULL) {
        store_locate(&source, path, &err);
        if (err.place[0] == '\0')
            err_at(&err, path, 0, 0);
        produce_tell(&err);
    }
    return job;
}

/* No clock in a result: the date is the one that a build or a script gives (SOURCE_DATE_EPOCH), else a space to write
 * it on. */
static const char *date_of_environment(Arena *arena)
{
    const char *given = getenv("SOURCE_DATE_EPOCH");
    size_t length = given == NULL ? 0 : strlen(given);
    if (length == 0 || length > 11 || strspn(given, "0123456789") != length)
        return "";
    int64_t seconds = 0;
    for (size_t i = 0; i < length; i++)
        seconds = seconds * 10 + (given[i] - '0');
    time_t when = (time_t)seconds;
    struct tm parts;
    char date[32];
    if (gmtime_r(&when, &parts) == NULL || strftime(date, sizeof date, "%Y-%m-%d", &parts) == 0)
        return "";
    return arena_text(arena, date, strlen(date));
}

/* ---- from the job to bytes ---- */

static bool write_sheet(const Sheet *sheet, Format format, Text *out, Err *err)
{
    switch (format) {
    case FORMAT_CSV: csv_write(sheet, out); return true;
    case FORMAT_PDF: return pdf_write(sheet, out, err);
    case FORMAT_SVG: return svg_write(sheet, out, err);
    case FORMAT_NONE:
    case FORMAT_TEXT: break;
    }
    plain_write(sheet, out);
    return true;
}

static Format format_of(const Call *call)
{
    if (call->format != FORMAT_NONE)
        return call->format;
    return call->print && DATUMROW_PDF ? FORMAT_PDF : FORMAT_TEXT;
}

/* Whether a person reads it in a window, and asked for no form of paper. */
static bool at_terminal(const Call *call, int *columns)
{
    if (call->format != FORMAT_NONE || call->out != NULL || call->print || !isatty(STDOUT_FILENO))
        return false;
    struct winsize size;
    *columns = ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) == 0 && size.ws_col > 0 ? size.ws_col : SHEET_COLUMNS;
    return true;
}

/* ---- from bytes to where they are wanted ---- */

bool produce_on_standard_output(const Text *text, Err *err)
{
    errno = 0;
    if (fwrite(text->bytes, 1, text->length, stdout) != text->length || fflush(stdout) != 0) {
        int why = errno != 0 ? errno : EIO;
        err_system(err, why, "standard output could not be written");
        return false;
    }
    return true;
}

static bool same_file(const char *a, const char *b)
{
    struct stat x, y;
    return stat(a, &x) == 0 && stat(b, &y) == 0 && x.st_dev == y.st_dev && x.st_ino == y.st_ino;
}

/* "reading-wall-rows.pdf" */
static void print_name(const Call *call, Format format, char *out, size_t size)
{
    const char *name = strcmp(call->path, "-") == 0 ? "wall" : base_name(call->path);
    const char *dot = strrchr(name, '.');
    int length = dot == NULL || dot == name ? (int)strnlen(name, 60) : (int)(dot - name);
    snprintf(out, size, "%.*s-%s%s", length > 60 ? 60 : length, name, call->command->name,
             format == FORMAT_PDF ? ".pdf" : ".txt");
}

static bool print_sheet(const Call *call, Format format, const Text *text, Err *err)
{
    char name[100], path[PATH_MAX];
    print_name(call, format, name, sizeof name);
    if (call->out != NULL)
        snprintf(path, sizeof path, "%s", call->out);
    else if (!printer_keep(name, text->bytes, text->length, path, sizeof path, err))
        return false;
    if (printer_send(path, name, err)) {
        if (call->out == NULL)
            printer_drop(path);
        return true;
    }
    char reason[ERR_TEXT_MAX];
    snprintf(reason, sizeof reason, "%s", err->text);
    return err_set(err, ERR_SYSTEM, "%.300s; the sheet was not printed and is kept as %.400s", reason, path);
}

static bool deliver(const Call *call, Format format, const Text *text, Err *err)
{
    bool to_file = call->out != NULL && strcmp(call->out, "-") != 0;
    if (to_file) {
        if (strcmp(call->path, "-") != 0 && same_file(call->out, call->path)) {
            err_set(err, ERR_USAGE, "that is the wall file itself; write to another file");
            return err_at(err, call->out, 0, 0);
        }
        if (!file_write_safely(call->out, text->bytes, text->length, err))
            return false;
    }
    if (call->print)
        return print_sheet(call, format, text, err);
    if (to_file)
        return true;
    if (format == FORMAT_PDF && isatty(STDOUT_FILENO))
        return err_set(err, ERR_USAGE, "a PDF is nothing for a terminal; add -o OUT.pdf");
    return produce_on_standard_output(text, err);
}

/* What is asked for, as bytes that nothing is written of yet. */
typedef struct Making {
    const Call *call;
    Arena *arena;
    Text text;
    const Job *job; /* NULL where there is none, and that is told */
    bool done;
    Err err;
} Making;

static void make(void *with)
{
    Making *making = with;
    const Call *call = making->call;
    making->job = read_job(making->arena, call->path);
    if (making->job == NULL)
        return;
    making->done = true;
    int columns = 0;
    if (call->command->sheet == NULL)
        plan_write(making->job, &making->text);
    else if (call->command->sheet == sheet_check && at_terminal(call, &columns))
        check_list_write(making->job, columns, &making->text);
    else
        making->done = write_sheet(call->command->sheet(making->arena, making->job, date_of_environment(making->arena)),
                                   format_of(call), &making->text, &making->err);
}

int produce(const Call *call)
{
    Making making = {.call = call, .arena = arena_new()};
    text_init(&making.text);
    char place[64];
    int status = 3;
    if (!panic_attempt(make, &making, place, sizeof place)) {
        Err err;
        if (strcmp(place, PANIC_NO_MEMORY) == 0)
            err_set(&err, ERR_LIMIT, "there is not enough memory for this; close other programs, or lift the limit");
        else
            err_set(&err, ERR_LIMIT, "an error in datumrow (%s) stopped this; report it with the wall file", place);
        err_at(&err, call->path, 0, 0);
        return produce_tell(&err);
    }
    if (making.done && deliver(call, format_of(call), &making.text, &making.err))
        status = findings_of(&making.job->findings, GRADE_FAULT) > 0 ? 1 : 0;
    else if (making.job != NULL)
        status = produce_tell(&making.err);
    text_finish(&making.text);
    arena_free(making.arena);
    return status;
}
