/* Any bytes are keys in the editor's own loop: nothing stops it, the wall stays one that can be laid out, what is shown
 * is text. */
#include "fuzz.h"

#include "base/panic.h"
#include "screen/rig.h"
#include "screen/term/key.h"
#include "support/utf8_valid.h"
#include "wall/check.h"

#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

enum { COLUMNS = 60, ROWS = 20, BYTES_MOST = 200 };

/* Small, so that the boards of a change are worked out in an instant, with something of each kind to come upon. */
static const char wall_text[] = "datumrow: 1\n"
                                "units: in\n"
                                "planks: {width: 4, thickness: 1/2}\n"
                                "start: 2\n"
                                "joints: {stagger: 6}\n"
                                "saw: {kerf: 1/8}\n"
                                "faces:\n"
                                "- name: back\n"
                                "  width: 60\n"
                                "  floor: [{at: 0, down: 8}]\n"
                                "  ceiling: [{at: 0, up: 12}]\n"
                                "  corner: {kind: inside, joint: butt}\n"
                                "  studs: {first: 6, spacing: 16}\n"
                                "  openings:\n"
                                "  - {name: outlet, kind: box, left: 20, bottom: -3, width: 2 1/4, height: 3 3/4}\n"
                                "- name: side\n"
                                "  width: 30\n"
                                "  floor: [{at: 0, down: 8}]\n"
                                "  ceiling: [{at: 0, up: 12}]\n"
                                "stock:\n"
                                "- {label: A, length: 64, count: 7}\n"
                                "- {length: 40, count: 4, tone: gray}\n"
                                "hung:\n"
                                "- {face: back, course: 0, left: 0, right: 60, board: 1}\n";

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
    Rig *rig = rig_on_text(COLUMNS, ROWS, wall_text);
    Decoder decoder;
    decoder_init(&decoder);
    /* files that keys ask for go into the rig's folder; no printer's command is found */
    char path[4096];
    const char *known = getenv("PATH");
    snprintf(path, sizeof path, "%s", known == NULL ? "" : known);
    setenv("PATH", "/nonexistent", 1);
    const int here = open(".", O_RDONLY | O_DIRECTORY);
    BUG_UNLESS(here >= 0 && chdir(rig->folder) == 0);
    press(rig, &decoder, bytes, size < BYTES_MOST ? size : BYTES_MOST);
    BUG_UNLESS(fchdir(here) == 0);
    close(here);
    setenv("PATH", path, 1);
    decoder_finish(&decoder);
    rig_free(rig);
    return 0;
}
