/* Any bytes are keys in the editor's own loop: nothing stops it, the wall stays one that can be laid out, what is shown
 * is text. */
#include "fuzz.h"

#include "base/panic.h"
#include "base/utf8.h"
#include "screen/rig.h"
#include "screen/term/key.h"
#include "wall/check.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

enum { COLUMNS = 60, ROWS = 20, BYTES_MOST = 200 };

static void check(const Rig *rig)
{
    Arena *arena = arena_new();
    const Wall *wall = document_wall(rig->app->document);
    BUG_UNLESS(wall == NULL || wall_check(arena, wall).count == 0);
    BUG_UNLESS(utf8_valid(rig->picture.bytes, rig->picture.length) == rig->picture.length);
    arena_free(arena);
}

/* As the terminal gives them: now and then no byte comes for a while, and what waits is a key. */
static void press(Rig *rig, Decoder *decoder, const uint8_t *bytes, size_t size)
{
    for (size_t i = 0; i < size && rig->running; i++) {
        Key key = decoder_take(decoder, bytes[i]);
        if (key == PRESS_NONE && i % 7 == 6)
            key = decoder_settle(decoder);
        if (key == PRESS_PASTE)
            memory_paste(rig->term, decoder_pasted(decoder));
        else if (key != PRESS_NONE)
            memory_key(rig->term, key);
        if (i % 5 == 4 || i + 1 == size) {
            rig_settle(rig);
            check(rig);
        }
    }
}

int LLVMFuzzerTestOneInput(const uint8_t *bytes, size_t size)
{
    Rig *rig = rig_new(COLUMNS, ROWS);
    Decoder decoder;
    decoder_init(&decoder);
    /* files that keys ask for go into the rig's folder; no printer's command is found */
    char path[4096];
    const char *known = getenv("PATH");
    snprintf(path, sizeof path, "%s", known == NULL ? "" : known);
    setenv("PATH", "/nonexistent", 1);
    BUG_UNLESS(chdir(rig->folder) == 0);
    press(rig, &decoder, bytes, size < BYTES_MOST ? size : BYTES_MOST);
    BUG_UNLESS(chdir("/") == 0);
    setenv("PATH", path, 1);
    decoder_finish(&decoder);
    rig_free(rig);
    return 0;
}
