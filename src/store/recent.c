#include "store/session.h"

#include "base/file.h"
#include "store/state.h"

#include <limits.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

/*
 * One absolute path a line, newest first. What cannot be read or written there is no reason to disturb anybody.
 */

enum { RECENT_MOST = 10, RECENT_FILE_MOST = 1 << 20 };

Recent session_recent(Arena *arena)
{
    Recent recent = {arena_array(arena, char *, RECENT_MOST), 0};
    char path[PATH_MAX];
    Text text;
    text_init(&text);
    if (state_path("", "recent", path, NULL) && file_read(path, RECENT_FILE_MOST, &text, NULL))
        for (char *line = text.bytes; *line != '\0' && recent.count < RECENT_MOST;) {
            const size_t length = strcspn(line, "\n");
            char *name = arena_text(arena, line, length);
            if (name[0] == '/' && access(name, F_OK) == 0)
                recent.at[recent.count++] = name;
            line += length + (line[length] == '\n');
        }
    text_finish(&text);
    return recent;
}

void session_note_recent(const char *path)
{
    char list[PATH_MAX];
    char *real = realpath(path, NULL);
    if (real != NULL && strchr(real, '\n') == NULL && state_path("", "recent", list, NULL)) {
        Arena *arena = arena_new();
        const Recent before = session_recent(arena);
        Text text;
        text_init(&text);
        text_format(&text, "%s\n", real);
        for (int i = 0, count = 1; i < before.count && count < RECENT_MOST; i++)
            if (strcmp(before.at[i], real) != 0) {
                text_format(&text, "%s\n", before.at[i]);
                count++;
            }
        file_write_safely(list, text.bytes, text.length, NULL);
        text_finish(&text);
        arena_free(arena);
    }
    free(real);
}
