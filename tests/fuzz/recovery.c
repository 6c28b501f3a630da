/* Any bytes stand where a recovery copy is kept: they are a wall, or are told as errors with their place, and the file
 * itself is read as before. */
#include "fuzz.h"

#include "base/file.h"
#include "base/panic.h"
#include "store/session.h"
#include "wall/check.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

static const char wall_text[] = "datumrow: 1\nunits: in\nplanks: {width: 3, thickness: 1/2}\nstart: 0\nfaces:\n"
                                "- {name: north, width: 60, floor: [{at: 0, down: 0}], ceiling: [{at: 0, up: 18}]}\n";

/* One folder for all runs of a process. */
static const char *folder(void)
{
    static char path[64];
    if (path[0] == '\0') {
        snprintf(path, sizeof path, "/tmp/datumrow-recovery-XXXXXX");
        BUG_UNLESS(mkdtemp(path) != NULL);
        setenv("XDG_STATE_HOME", path, 1);
    }
    return path;
}

static void put(const char *path, const void *bytes, size_t size)
{
    FILE *file = fopen(path, "wb");
    BUG_UNLESS(file != NULL && fwrite(bytes, 1, size, file) == size);
    fclose(file);
}

int LLVMFuzzerTestOneInput(const uint8_t *bytes, size_t size)
{
    char path[96];
    snprintf(path, sizeof path, "%s/wall.yaml", folder());
    put(path, wall_text, sizeof wall_text - 1);
    Arena *arena = arena_new();
    Err err = {0};
    Errs errs = {0};
    Source first = {0}, source = {0};
    Session *session = session_open(path, &err);
    BUG_UNLESS(session != NULL && session_read(session, arena, &first, &errs));
    BUG_UNLESS(session_keep(session, first.wall, &first, &err)); /* so that its folder is there */
    put(session_recovery_path(session), bytes, size);
    session_copies(session, arena);
    if (session_recover(session, arena, session_recovery_path(session), &source, &errs)) {
        BUG_UNLESS(wall_check(arena, source.wall).count == 0);
    } else {
        BUG_UNLESS(errs.count > 0);
        for (int i = 0; i < errs.count; i++)
            BUG_UNLESS(errs.at[i].text[0] != '\0' && strchr(errs.at[i].text, '\n') == NULL);
    }
    session_forget(session);
    session_close(session);
    arena_free(arena);
    return 0;
}
