/*
 * Whole files: read with a limit, written so that a crash, a full disk or a pulled plug leaves either the old
 * file or the new one. It knows nothing of what the bytes mean.
 */
#ifndef BASE_FILE_H
#define BASE_FILE_H

#include "base/err.h"
#include "base/text.h"

#include <limits.h>
#include <stdbool.h>
#include <stddef.h>

/* Reads `path` ("-" is standard input) into `out`, which is initialised already. Folders, devices, pipes by a name
 * (which could be waited for without end) and files over `limit` bytes are errors; on failure `out` is untouched. */
bool file_read(const char *path, size_t limit, Text *out, Err *err);

/* Writes `bytes` to a temporary file beside the target, fsync, same mode as the old file, setgid too (and owner, where
 * that may be given), rename, fsync of the folder. Follows symbolic links to the real file. A file that may not be
 * written, a folder, a pipe or a device is refused. On failure the old file stands as it was and the temporary one is
 * gone; only where the folder's fsync fails at the very end, the new file stands there already, and the error says so.
 */
bool file_write_safely(const char *path, const char *bytes, size_t length, Err *err);

/* Creates `path` with `bytes`, whole at once; an error of kind ERR_SYSTEM where it exists already, and that is left
 * alone. On failure there is no such file. */
bool file_create(const char *path, const char *bytes, size_t length, Err *err);

/* Removes what writers that are dead left beside `path`, in its folder. */
void file_clear_left(const char *path);

/* The path that the last component's symbolic links lead to, also where no file is there yet. */
bool file_follow_links(const char *path, char real[PATH_MAX], Err *err);

/* Makes the folder and those above it, mode 0700 for new ones; one that exists is no error. */
bool file_make_folder(const char *path, Err *err);

#endif
