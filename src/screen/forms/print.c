/*
 * The boards are worked out to the end before anything is printed, so that paper and `datumrow rows` say the same.
 */
#include "screen/forms/print.h"

#include "base/file.h"
#include "base/hash.h"
#include "base/panic.h"
#include "config.h"
#include "screen/forms/file.h"
#include "screen/forms/form.h"
#include "sheet/printer.h"
#include "sheet/sheets/sheets.h"
#include "sheet/writers/pdf.h"
#include "sheet/writers/plain.h"

#include <limits.h>
#include <stdio.h>
#include <string.h>
#include <sys/stat.h>

enum { PRINT_SHEET, PRINT_TO, PRINT_FILE, PRINT_OVER };
enum { TO_PRINTER, TO_PDF, TO_TEXT };

static const struct {
    const char *word;    /* in the form */
    const char *subject; /* begins what is told of it */
    const char *stem;    /* in the name of the file */
    Sheet *(*make)(Arena *arena, const Job *job, const char *date);
} sheets[] = {
    {"all sheets", "All sheets are", "all", sheet_all},
    {"first page", "The first page is", "first", sheet_first},
    {"row sheet", "The row sheet is", "rows", sheet_rows},
    {"cut sheet", "The cut sheet is", "cuts", sheet_cuts},
    {"batch sheet", "The batch sheet is", "batch", sheet_batch},
    {"story pole", "The story pole is", "pole", sheet_pole},
    {"elevation", "The elevation is", "draw", sheet_draw},
    {"faults", "The list of faults is", "check", sheet_check},
};
enum { SHEETS = sizeof sheets / sizeof *sheets };

/* The job as the commands make it: named after the file, with the hash of the wall. */
static const Job *job_for_paper(App *app, Arena *arena)
{
    Work *work = app_work(app);
    if (work->layout == NULL)
        return NULL;
    work_complete(work);
    if (app_work(app)->layout == NULL)
        return NULL;
    Text canonical;
    text_init(&canonical);
    store_write(work->wall, NULL, &canonical);
    char hash[13];
    hash_short(hash_bytes(canonical.bytes, canonical.length), hash);
    text_finish(&canonical);
    const char *name = file_base_name(app);
    return job_of_parts(arena, work->layout, fill_plan(work->fill), name != NULL ? name : "", hash);
}

/* Beside the wall file, named after it: boathouse-rows.pdf. */
static bool own_name(const App *app, int which, bool pdf, char *out, size_t size)
{
    const char *path = file_path(app);
    if (path == NULL)
        path = "wall.yaml";
    const char *slash = strrchr(path, '/');
    const char *dot = strrchr(slash == NULL ? path : slash, '.');
    int stem = dot != NULL ? (int)(dot - path) : (int)strlen(path);
    int length = snprintf(out, size, "%.*s-%s.%s", stem, path, sheets[which].stem, pdf ? "pdf" : "txt");
    return length > 0 && (size_t)length < size;
}

/* A sheet is never written over the wall itself. */
static bool is_wall_file(const App *app, const char *path)
{
    const char *wall = file_path(app);
    struct stat a, b;
    return wall != NULL && stat(wall, &a) == 0 && stat(path, &b) == 0 && a.st_dev == b.st_dev && a.st_ino == b.st_ino;
}

static bool to_file(App *app, const Form *form, int which, bool pdf, const Text *text, Err *err)
{
    char path[PATH_MAX];
    snprintf(path, sizeof path, "%s", form->fields[PRINT_FILE].text);
    if (form_is_empty(form, PRINT_FILE) && !own_name(app, which, pdf, path, sizeof path))
        return err_set(err, ERR_SYSTEM, "the name of the wall file is too long; give the sheet a name");
    if (is_wall_file(app, path)) {
        err_set(err, ERR_VALUE, "that is the wall file itself; write to another file");
        return err_at(err, "file", 0, 0);
    }
    bool over = field_choice(&form->fields[PRINT_OVER]) == 1;
    bool done = over ? file_write_safely(path, text->bytes, text->length, err)
                     : file_create(path, text->bytes, text->length, err);
    if (!done)
        return err_at(err, "file", 0, 0);
    app_say(app, STYLE_GOOD, "%s in %s.", sheets[which].subject, path);
    return true;
}

/* Where there is no printer the sheet stays where it is, and the person is told where. */
static void to_printer(App *app, int which, bool pdf, const Text *text)
{
    char name[80], path[PATH_MAX];
    Err err;
    snprintf(name, sizeof name, "datumrow-%s.%s", sheets[which].stem, pdf ? "pdf" : "txt");
    if (!printer_keep(name, text->bytes, text->length, path, sizeof path, &err)) {
        app_tell(app, &err);
    } else if (printer_send(path, sheets[which].word, &err)) {
        printer_drop(path);
        app_say(app, STYLE_GOOD, "%s at the printer.", sheets[which].subject);
    } else {
        app_say(app, STYLE_CAUTION, "%s. %s in %s", err.text, sheets[which].subject, path);
    }
}

typedef struct Printing {
    int which;
    bool pdf;
    Arena *arena;
    const Job *job;
    Text *text;
    bool done;
    Err *err;
} Printing;

static void make(void *with)
{
    Printing *making = with;
    const Sheet *sheet = sheets[making->which].make(making->arena, making->job, "");
    if (making->pdf)
        making->done = pdf_write(sheet, making->text, making->err);
    else
        plain_write(sheet, making->text);
}

/* Where an invariant breaks, the sheet is refused and nothing is written. */
static bool attempt(Printing *making)
{
    char place[64];
    making->done = true;
    if (panic_attempt(make, making, place, sizeof place))
        return making->done;
    if (strcmp(place, PANIC_NO_MEMORY) == 0)
        return err_set(making->err, ERR_LIMIT,
                       "there is not enough memory for this sheet; save, and close other programs");
    return err_set(making->err, ERR_LIMIT,
                   "this sheet cannot be made: an error in datumrow (%s); save and report it with the wall file",
                   place);
}

static bool take_print(App *app, const Form *form, Err *err)
{
    int which = field_choice(&form->fields[PRINT_SHEET]);
    int to = field_choice(&form->fields[PRINT_TO]);
    bool pdf = to == TO_PDF || (to == TO_PRINTER && DATUMROW_PDF);
    Arena *arena = arena_new();
    Text text;
    text_init(&text);
    const Job *job = job_for_paper(app, arena);
    bool done = job != NULL || err_set(err, ERR_LIMIT, "%s", app->work.err.text);
    done = done && attempt(&(Printing){which, pdf, arena, job, &text, false, err});
    if (done && to == TO_PRINTER)
        to_printer(app, which, pdf, &text);
    else if (done)
        done = to_file(app, form, which, pdf, &text, err);
    text_finish(&text);
    arena_free(arena);
    return done;
}

void print_open(App *app)
{
    static const char *const to[] = {"printer", "PDF file", "text file"};
    static const char *const over[] = {"say so", "write over it"};
    static const char *words[SHEETS];
    for (int i = 0; i < SHEETS; i++)
        words[i] = sheets[i].word;
    Form *form = form_new("Print a sheet", app_wall(app)->units, 0, take_print);
    form_choice(form, "Sheet", "sheet", words, SHEETS, 0);
    form_choice(form, "Goes to", "to", to, 3, DATUMROW_PDF ? TO_PDF : TO_TEXT);
    form_field(form, FIELD_TEXT, "File", "file", "beside the wall file, named after it");
    form_choice(form, "If the file exists", "over", over, 2, 0);
    form_open(app, form);
}
