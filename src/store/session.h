/*
 * One file under the editor: opened, locked, watched, saved, and kept from being lost. The recovery copy lies under
 * XDG_STATE_HOME/datumrow/recovery, named by the file's full path; it is written whole each time and removed when the
 * document is saved or left on purpose.
 */
#ifndef STORE_SESSION_H
#define STORE_SESSION_H

#include "store/copies.h"
#include "store/store.h"

typedef struct Session Session;

/* Takes hold of `path` (NULL: a wall with no file yet). A lock that a living editor holds is told as ERR_LOCKED in
 * `err` with its process number and machine, and the session is still returned, unlocked, so that the user can decide.
 * A lock left behind by a dead one is taken over. NULL only on system errors. */
Session *session_open(const char *path, Err *err);

/* Lets go of the lock; does not touch the recovery copy. */
void session_close(Session *session);

const char *session_path(const Session *session); /* NULL where there is none yet */
bool session_locked(const Session *session);      /* this session holds the lock */
bool session_elsewhere(const Session *session);   /* it does not, since another editor held it when it was opened */

/* Reads the session's file and remembers its content as what is on disk. */
bool session_read(Session *session, Arena *arena, Source *out, Errs *errs);

/* What the file on disk is, by content and not by time: what was last read or saved here, something else, not there,
 * or nothing that can be read. Without a file of its own a session's is the same. */
typedef enum DiskState { DISK_SAME, DISK_CHANGED, DISK_GONE, DISK_UNREADABLE } DiskState;
DiskState session_disk(Session *session);

/* Saves `wall` to the session's file; ERR_CHANGED where the file changed on disk since and `over` is false. On success
 * the recovery copy is removed, and `source`, which lives in `arena`, becomes the text that was written. */
bool session_save(Session *session, Arena *arena, const Wall *wall, Source *source, bool over, Err *err);

/* The same under another name, whose lock is taken first; ERR_SYSTEM where `path` exists and `over` is false. */
bool session_save_as(Session *session, Arena *arena, const char *path, const Wall *wall, Source *source, bool over,
                     Err *err);

/* The recovery copy is written (no fsync wait longer than needed). The file's own copy belongs to whoever holds the
 * lock: without it none ever waits, and what is kept is kept as that of a wall without a file. A copy of an earlier run
 * that was neither taken up nor dropped is moved aside first. */
bool session_keep(Session *session, const Wall *wall, const Source *source, Err *err);
const char *session_recovery_path(const Session *session);

/* All that wait and differ from the file, newest first. */
RecoveryCopies session_copies(const Session *session, Arena *arena);

/* Reads one of them; it is dropped with the next save, as the session's own is. */
bool session_recover(Session *session, Arena *arena, const char *copy, Source *out, Errs *errs);

/* Removes one of them; and the session's own, with the one that it recovered. */
void session_drop(Session *session, const char *copy);
void session_forget(Session *session);

/* Files opened lately, newest first, under XDG_STATE_HOME/datumrow/recent; at most ten, those that are gone left out.
 */
typedef struct Recent {
    char **at;
    int count;
} Recent;
Recent session_recent(Arena *arena);
void session_note_recent(const char *path);

/* Recovery copies of walls that never had a file and whose editor is gone: at most ten. Dropped once they are taken up.
 */
Recent session_left_over(Arena *arena);
void session_drop_left_over(const char *path);

#endif
