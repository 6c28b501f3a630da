#include "store/copies.h"

#include "base/file.h"

#include <errno.h>
#include <limits.h>
#include <stdio.h>
#include <string.h>
#include <sys/stat.h>
#include <time.h>
#include <unistd.h>

enum { NUMBERS_MOST = 999 };

static bool numbered(const char *recovery, int number, char out[PATH_MAX])
{
    const int length = snprintf(out, PATH_MAX, "%s.%d", recovery, number);
    return length >= 0 && length < PATH_MAX;
}

bool copies_aside(const char *recovery, Err *err)
{
    char aside[PATH_MAX];
    for (int i = 1; i <= NUMBERS_MOST && numbered(recovery, i, aside); i++) {
        /* a second name is given only where there is none yet */
        if (link(recovery, aside) == 0 && unlink(recovery) == 0)
            return true;
        if (errno == EEXIST || access(aside, F_OK) == 0)
            continue;
        if (rename(recovery, aside) == 0)
            return true;
        err_system(err, errno, "an older recovery copy cannot be moved aside");
        return err_at(err, recovery, 0, 0);
    }
    err_set(err, ERR_SYSTEM, "there are too many recovery copies of this wall; open it and drop some");
    return err_at(err, recovery, 0, 0);
}

/* Whether the copy was written no earlier than the file, as far as the file's date can be believed. */
static bool is_newer(const char *copy, const char *path)
{
    struct stat of_copy;
    struct stat of_file;
    if (stat(copy, &of_copy) != 0)
        return false;
    if (stat(path, &of_file) != 0)
        return true;
    const struct timespec a = of_copy.st_mtim;
    const struct timespec b = of_file.st_mtim;
    return b.tv_sec > time(NULL) || (a.tv_sec != b.tv_sec ? a.tv_sec > b.tv_sec : a.tv_nsec >= b.tv_nsec);
}

static bool differs(const char *copy_path, const char *path)
{
    Text copy;
    Text file;
    text_init(&copy);
    text_init(&file);
    const bool other = file_read(copy_path, STORE_FILE_MOST, &copy, NULL) &&
                       !(file_read(path, STORE_FILE_MOST, &file, NULL) && copy.length == file.length &&
                         memcmp(copy.bytes, file.bytes, copy.length) == 0);
    text_finish(&copy);
    text_finish(&file);
    return other;
}

static void add(Arena *arena, RecoveryCopies *copies, const char *copy)
{
    struct stat what;
    if (stat(copy, &what) != 0)
        return;
    const RecoveryCopy one = {arena_text(arena, copy, strlen(copy)), (int64_t)what.st_mtim.tv_sec};
    *arena_push(arena, copies) = one;
    int at = copies->count - 1;
    for (; at > 0 && copies->at[at - 1].kept < one.kept; at--)
        copies->at[at] = copies->at[at - 1];
    copies->at[at] = one;
}

RecoveryCopies copies_waiting(Arena *arena, const char *recovery, bool newest, const char *path)
{
    RecoveryCopies copies = {0};
    char copy[PATH_MAX];
    if (newest && is_newer(recovery, path) && differs(recovery, path))
        add(arena, &copies, recovery);
    for (int i = 1; i <= NUMBERS_MOST && numbered(recovery, i, copy); i++)
        if (access(copy, F_OK) == 0 && differs(copy, path))
            add(arena, &copies, copy);
    return copies;
}
