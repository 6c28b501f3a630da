/* Any bytes are a wall file or are refused with places in them; what was read is written so that it reads back, and
 * into its own text without a byte changed. */
#include "fuzz.h"

#include "base/panic.h"
#include "store/store.h"
#include "support/utf8_valid.h"
#include "wall/check.h"

#include <string.h>

static void check_errors(const Errs *errors)
{
    BUG_UNLESS(errors->count > 0);
    for (int i = 0; i < errors->count; i++) {
        const Err *err = &errors->at[i];
        BUG_UNLESS(err->text[0] != '\0' && strchr(err->text, '\n') == NULL);
        BUG_UNLESS(utf8_valid(err->text, strlen(err->text)) == strlen(err->text));
        BUG_UNLESS(err->line >= 0 && (err->line == 0) == (err->column == 0));
        BUG_UNLESS(i == 0 || err->line == 0 || err->line >= err[-1].line);
    }
}

static void check_back(Arena *arena, const Wall *wall, const Text *text)
{
    Source back;
    Errs errors = {0};
    BUG_UNLESS(store_parse(arena, "back", text->bytes, text->length, &back, &errors));
    BUG_UNLESS(wall_equal(wall, back.wall));
}

int LLVMFuzzerTestOneInput(const uint8_t *bytes, size_t size)
{
    Arena *arena = arena_new();
    Source source = {0};
    Errs errors = {0};
    if (!store_parse(arena, "wall.yaml", (const char *)bytes, size, &source, &errors)) {
        check_errors(&errors);
    } else {
        Text text;
        text_init(&text);
        BUG_UNLESS(wall_check(arena, source.wall).count == 0);
        store_write(source.wall, NULL, &text);
        check_back(arena, source.wall, &text);
        store_write(source.wall, &source, &text);
        BUG_UNLESS(text.length == size && memcmp(text.bytes, bytes, size) == 0);
        /* and with something changed */
        Wall *other = wall_copy(arena, source.wall);
        other->start = other->start > 0 ? -LENGTH_MM : LENGTH_MM;
        if (other->stock.count > 0)
            other->stock.at = &other->stock.at[1];
        other->stock.count -= other->stock.count > 0;
        other->hung_pieces.count = 0;
        for (int i = 0; i < other->stock.count; i++)
            other->stock.at[i].gone_given = other->stock.at[i].found_given = false;
        store_write(other, &source, &text);
        check_back(arena, other, &text);
        text_finish(&text);
    }
    arena_free(arena);
    return 0;
}
