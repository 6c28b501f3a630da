#include "support/picture.h"

#include "base/utf8.h"

static void put_code(Text *out, uint32_t code)
{
    char bytes[4];
    text_put_bytes(out, bytes, (size_t)utf8_encode(code, bytes));
}

/* One letter a style: '.' plain, then a, b, ...; all mosaics are 'M'. */
static uint32_t style_letter(int style)
{
    if (style == STYLE_PLAIN)
        return '.';
    return style >= STYLE_MOSAIC ? 'M' : (uint32_t)('a' + style - 1);
}

void picture_write(const Grid *grid, bool styles, Text *out)
{
    for (int pass = 0; pass < (styles ? 2 : 1); pass++) {
        for (int y = 0; y < grid->rows; y++) {
            size_t end = out->length;
            for (int x = 0; x < grid->columns; x++) {
                const Cell *cell = grid_at(grid, x, y);
                if (pass == 1)
                    put_code(out, style_letter(cell->style));
                else if (cell->code != 0)
                    put_code(out, cell->code);
                if (pass == 0 && cell->mark != 0)
                    put_code(out, cell->mark);
                if (pass == 1 ? cell->style != STYLE_PLAIN : cell->code != ' ')
                    end = out->length;
            }
            out->length = end;
            text_put(out, "\n");
        }
    }
}
