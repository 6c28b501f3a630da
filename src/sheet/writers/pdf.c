#include "sheet/writers/pdf.h"

#include <cairo-pdf.h>
#include <cairo-svg.h>
#include <string.h>

#include "job/words.h"
#include "sheet/writers/apart.h"
#include "sheet/writers/draw_cairo.h"

static cairo_status_t collect(void *closure, const unsigned char *bytes, unsigned int length)
{
    text_put_bytes(closure, (const char *)bytes, length);
    return CAIRO_STATUS_SUCCESS;
}

static bool check(cairo_status_t status, Err *err)
{
    if (status == CAIRO_STATUS_SUCCESS)
        return true;
    return err_set(err, ERR_SYSTEM, "the sheet could not be drawn: %s; the text sheet (--as text) holds the same",
                   cairo_status_to_string(status));
}

static double page_width(const Press *press, int page)
{
    return press_landscape(press, page) ? PAGE_LONG : PAGE_SHORT;
}

static double page_height(const Press *press, int page)
{
    return press_landscape(press, page) ? PAGE_SHORT : PAGE_LONG;
}

static void set_metadata(cairo_surface_t *surface, Arena *arena, const Sheet *sheet)
{
    const char *day = sheet->date[0] == '\0' ? "1970-01-01" : sheet->date;
    const char *when = words(arena, "%sT00:00:00Z", day);
    cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_TITLE,
                                   words(arena, "%s: %s", sheet->title, sheet->kind));
    cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_CREATOR, "datumrow");
    cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_CREATE_DATE, when);
    cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_MOD_DATE, when);
}

static bool draw_pdf(const Sheet *sheet, Text *out, Err *err)
{
    Arena *arena = arena_new();
    Press press;
    press_begin(&press, arena, sheet);
    cairo_surface_t *surface =
        cairo_pdf_surface_create_for_stream(collect, out, page_width(&press, 0), page_height(&press, 0));
    cairo_pdf_surface_restrict_to_version(surface, CAIRO_PDF_VERSION_1_4);
    set_metadata(surface, arena, sheet);
    cairo_t *cairo = cairo_create(surface);
    for (int i = 0; i < press.pages.count; i++) {
        cairo_pdf_surface_set_size(surface, page_width(&press, i), page_height(&press, i));
        press_page(&press, cairo, i);
        cairo_show_page(cairo);
    }
    cairo_status_t drawn = cairo_status(cairo);
    cairo_destroy(cairo);
    cairo_surface_finish(surface);
    bool good = check(drawn != CAIRO_STATUS_SUCCESS ? drawn : cairo_surface_status(surface), err);
    cairo_surface_destroy(surface);
    press_end(&press);
    arena_free(arena);
    return good;
}

/* cairo counts the surfaces of a process and writes the count into the file, where nothing refers to it: without it two
 * runs are equal. */
static void drop_surface_number(Text *svg)
{
    static const char name[] = " id=\"surface";
    char *from = strstr(svg->bytes, name);
    char *to = from == NULL ? NULL : strchr(from + sizeof name - 1, '"');
    if (to == NULL)
        return;
    to++;
    memmove(from, to, strlen(to) + 1);
    svg->length -= (size_t)(to - from);
}

/* SVG has no pages: they stand one below the other, a thin line between. */
static bool draw_svg(const Sheet *sheet, Text *out, Err *err)
{
    Arena *arena = arena_new();
    Press press;
    press_begin(&press, arena, sheet);
    double width = 0, height = 0;
    for (int i = 0; i < press.pages.count; i++) {
        width = page_width(&press, i) > width ? page_width(&press, i) : width;
        height += page_height(&press, i);
    }
    cairo_surface_t *surface = cairo_svg_surface_create_for_stream(collect, out, width, height);
    cairo_svg_surface_set_document_unit(surface, CAIRO_SVG_UNIT_PT);
    cairo_t *cairo = cairo_create(surface);
    cairo_set_source_rgb(cairo, 1, 1, 1);
    cairo_paint(cairo);
    double y = 0;
    for (int i = 0; i < press.pages.count; i++) {
        cairo_save(cairo);
        cairo_translate(cairo, 0, y);
        press_page(&press, cairo, i);
        cairo_restore(cairo);
        y += page_height(&press, i);
        if (i + 1 < press.pages.count) {
            cairo_set_source_rgb(cairo, 0.6, 0.6, 0.6);
            cairo_set_line_width(cairo, 0.5);
            cairo_move_to(cairo, 0, y);
            cairo_line_to(cairo, width, y);
            cairo_stroke(cairo);
        }
    }
    cairo_status_t drawn = cairo_status(cairo);
    cairo_destroy(cairo);
    cairo_surface_finish(surface);
    bool good = check(drawn != CAIRO_STATUS_SUCCESS ? drawn : cairo_surface_status(surface), err);
    cairo_surface_destroy(surface);
    drop_surface_number(out);
    press_end(&press);
    arena_free(arena);
    return good;
}

bool pdf_write(const Sheet *sheet, Text *out, Err *err)
{
    return apart_draw(draw_pdf, sheet, out, err);
}

bool svg_write(const Sheet *sheet, Text *out, Err *err)
{
    return apart_draw(draw_svg, sheet, out, err);
}
