/*
 * One file under the editor: opened, locked, watched, saved, and kept from being lost. The recovery copy lies under
 * XDG_STATE_HOME/datumrow/recovery, named by the file's full path; it is written whole each time and removed when the
 * document is saved or left on purpose.
 */
#ifndef STORE_SESSION_H
#define STORE_SESSION_H

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

/* Whether the file on disk is no longer the one last read or saved (by content, not by time; a file that is gone counts
 * as changed). */
bool session_file_changed(Session *session);

/* Saves `wall` to the session's file; ERR_CHANGED where the file changed on disk since and `over` is false. On success
 * the recovery copy is removed, and `source`, which lives in `arena`, becomes the text that was written. */
bool session_save(Session *session, Arena *arena, const Wall *wall, Source *source, bool over, Err *err);

/* The same under another name, whose lock is taken first; ERR_SYSTEM where `path` exists and `over` is false. */
bool session_save_as(Session *session, Arena *arena, const char *path, const Wall *wall, Source *source, bool over,
                     Err *err);

/* The recovery copy: written (no fsync wait longer than needed), asked for (true where one exists that differs from the
 * file and is newer), read, removed. The file's own copy belongs to whoever holds the lock: without it none ever waits,
 * and what is kept is kept as that of a wall without a file. */
bool session_keep(Session *session, const Wall *wall, const Source *source, Err *err);
bool session_recovery_waits(const Session *session);
bool session_recover(Session *session, Arena *arena, Source *out, Errs *errs);
void session_forget(Session *session);
const char *session_recovery_path(const Session *session);

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
