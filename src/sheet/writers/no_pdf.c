/* Stands in for pdf.c where the program is built without pangocairo. */
#include "sheet/writers/pdf.h"

static bool refuse(Err *err)
{
    return err_set(err, ERR_USAGE, "this datumrow was built without PDF and SVG; write --as text or --as csv");
}

bool pdf_write(const Sheet *sheet, Text *out, Err *err)
{
    (void)sheet;
    (void)out;
    return refuse(err);
}

bool svg_write(const Sheet *sheet, Text *out, Err *err)
{
    (void)sheet;
    (void)out;
    return refuse(err);
}
