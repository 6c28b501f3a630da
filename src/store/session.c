#include "store/session.h"

#include "base/file.h"
#include "base/hash.h"
#include "base/panic.h"
#include "store/lock.h"
#include "store/state.h"

#include <errno.h>
#include <limits.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

/*
 * Two paths: `path` as the user wrote it, for messages and for reading and writing; `real`, without links, by which
 * the lock and the recovery copy are named, so that two names of one file mean the same.
 *
 * A recovery copy that was there before and that the user neither took up nor dropped is moved aside, not written over,
 * when this session keeps its first own one.
 *
 * The copy that is named by the file is that of the editor with the lock, which may be alive. A session without the
 * lock has a copy of another name, as a wall without a file does, so it can neither take nor drop nor write over it.
 */

enum { NAME_MOST = 200, NEW_MOST = 1000, NEW_LISTED = 10 };

struct Session {
    char *path; /* NULL: no file yet */
    char *real;
    Lock *lock;
    bool elsewhere; /* another editor held the lock when it was opened */
    bool known;     /* what is on disk was read or saved here */
    uint64_t hash;  /* of it */
    char recovery[PATH_MAX];
    char taken[PATH_MAX]; /* the numbered copy that was taken up; "" where none was */
    Lock *recovery_lock;  /* without a file or its lock: the name of the copy is ours as long as it is held */
    bool kept;            /* the copy there is this session's own, or was taken up or dropped */
};

static char *copy_of(const char *text)
{
    char *copy = strdup(text);
    if (copy == NULL)
        panic_no_memory();
    return copy;
}

/* ---- names ---- */

/* The path without links; of a file that is not there yet, the folder's with its name: where a link leads there, the
 * name that a save will write to. NULL where there is no such folder. */
static char *real_path(const char *path, Err *err)
{
    char *real = realpath(path, NULL);
    if (real != NULL)
        return real;
    int failure = errno;
    if (failure == ENOENT) {
        char end[PATH_MAX];
        if (!file_follow_links(path, end, err))
            return NULL;
        const char *slash = strrchr(end, '/');
        const char *name = slash == NULL ? end : slash + 1;
        char folder[PATH_MAX];
        char joined[PATH_MAX];
        const int length = snprintf(folder, sizeof folder, "%.*s", slash == NULL ? 1 : (int)(slash - end + 1),
                                    slash == NULL ? "." : end);
        char *real_folder = length < (int)sizeof folder ? realpath(folder, NULL) : NULL;
        failure = errno;
        const int joined_length =
            real_folder == NULL ? -1 : snprintf(joined, sizeof joined, "%s/%s", real_folder, name);
        const bool found = real_folder != NULL && name[0] != '\0' && joined_length < (int)sizeof joined;
        free(real_folder);
        if (found)
            return copy_of(joined);
    }
    err_system(err, failure, "cannot be opened; check the name and the folder");
    err_at(err, path, 0, 0);
    return NULL;
}

/* Recovery copies are named by a hash of the whole path and, for people, the file's name. */
static bool name_recovery(Session *session, Err *err)
{
    char short_hash[13];
    char name[NAME_MOST + 32];
    const char *slash = strrchr(session->real, '/');
    hash_short(hash_bytes(session->real, strlen(session->real)), short_hash);
    snprintf(name, sizeof name, "%s-%.*s", short_hash, NAME_MOST, slash == NULL ? session->real : slash + 1);
    return state_path("recovery", name, session->recovery, err);
}

/* The recovery copy of the so many-th wall without a file. */
static bool new_wall_path(int number, char out[PATH_MAX], Err *err)
{
    char name[64];
    snprintf(name, sizeof name, "new-wall-%d.yaml", number);
    return state_path("recovery", name, out, err);
}

/* Without a file: the first name that no copy has and no living editor holds. */
static bool name_new_recovery(Session *session, Err *err)
{
    for (int i = 1; i <= NEW_MOST; i++) {
        if (!new_wall_path(i, session->recovery, err))
            return false;
        if (access(session->recovery, F_OK) == 0)
            continue;
        session->recovery_lock = lock_take(session->recovery, NULL);
        if (session->recovery_lock != NULL && !lock_is_shared(session->recovery_lock))
            return true;
        lock_leave(session->recovery_lock);
        session->recovery_lock = NULL;
    }
    return err_set(err, ERR_SYSTEM, "there is no free name for a recovery copy; tidy up the state folder");
}

/* Where the session's recovery copy lies; "" where there is no state folder, and then session_keep tells. */
static bool name_copy(Session *session, Err *err)
{
    const bool named = session->lock == NULL ? name_new_recovery(session, err) : name_recovery(session, err);
    if (!named)
        session->recovery[0] = '\0';
    return named;
}

/* ---- open and close ---- */

Session *session_open(const char *path, Err *err)
{
    Session *session = calloc(1, sizeof *session);
    Err slip;
    if (session == NULL)
        panic_no_memory();
    if (path == NULL) {
        name_copy(session, &slip);
        return session;
    }
    session->path = copy_of(path);
    session->real = real_path(path, err);
    if (session->real == NULL) {
        session_close(session);
        return NULL;
    }
    Err told = {0};
    session->lock = lock_take(session->real, &told);
    session->elsewhere = session->lock == NULL && told.kind == ERR_LOCKED;
    if (session->lock == NULL && err != NULL)
        *err = told;
    name_copy(session, &slip);
    file_clear_left(session->real);
    if (session->recovery[0] != '\0')
        file_clear_left(session->recovery);
    return session;
}

void session_close(Session *session)
{
    if (session == NULL)
        return;
    lock_leave(session->lock);
    lock_leave(session->recovery_lock);
    free(session->path);
    free(session->real);
    free(session);
}

const char *session_path(const Session *session)
{
    return session->path;
}

bool session_locked(const Session *session)
{
    return session->path == NULL || session->lock != NULL;
}

bool session_elsewhere(const Session *session)
{
    return session->elsewhere;
}

/* ---- reading and saving ---- */

bool session_read(Session *session, Arena *arena, Source *out, Errs *errs)
{
    BUG_UNLESS(session->path != NULL);
    if (!store_read(arena, session->path, out, errs))
        return false;
    session->known = true;
    session->hash = out->hash;
    return true;
}

DiskState session_disk(Session *session)
{
    struct stat what;
    if (session->path == NULL)
        return DISK_SAME;
    if (stat(session->path, &what) != 0 && (errno == ENOENT || errno == ENOTDIR))
        return session->known ? DISK_GONE : DISK_SAME;
    if (!session->known)
        return DISK_CHANGED;
    Text text;
    text_init(&text);
    const bool read = file_read(session->path, STORE_FILE_MOST, &text, NULL);
    const bool same = read && hash_bytes(text.bytes, text.length) == session->hash;
    text_finish(&text);
    return same ? DISK_SAME : read ? DISK_CHANGED : DISK_UNREADABLE;
}

/* What a save that failed at its very end wrote all the same: nobody else wrote it. */
static void note_written(Session *session, const Text *text)
{
    const uint64_t hash = hash_bytes(text->bytes, text->length);
    Text now;
    text_init(&now);
    if (file_read(session->path, STORE_FILE_MOST, &now, NULL) && hash_bytes(now.bytes, now.length) == hash) {
        session->known = true;
        session->hash = hash;
    }
    text_finish(&now);
}

/* The file is written: what is on disk, and what the next save keeps comments from. The wall keeps its own ids. */
static void settle(Session *session, Arena *arena, const Wall *wall, const Text *text, Source *source)
{
    session->known = true;
    session->hash = hash_bytes(text->bytes, text->length);
    *source = (Source){.wall = wall_copy(arena, wall),
                       .text = arena_text(arena, text->bytes, text->length),
                       .length = text->length,
                       .hash = session->hash};
}

static const Source *source_or_none(const Source *source)
{
    return source->text == NULL ? NULL : source;
}

/* The copy of an earlier run that the user wants to keep for later is not this session's to remove. */
static void forget_own(Session *session)
{
    if (session->taken[0] != '\0')
        unlink(session->taken);
    session->taken[0] = '\0';
    if (session->kept)
        session_forget(session);
}

bool session_save(Session *session, Arena *arena, const Wall *wall, Source *source, bool over, Err *err)
{
    if (session->path == NULL)
        return err_set(err, ERR_USAGE, "this wall has no file yet; save it under a name");
    static const char *const instead[] = {[DISK_CHANGED] = "was changed by another program since it was read",
                                          [DISK_GONE] = "is gone from where it was read",
                                          [DISK_UNREADABLE] =
                                              "cannot be read any more, so what it holds now is not known"};
    const DiskState state = over ? DISK_SAME : session_disk(session);
    if (state != DISK_SAME) {
        err_set(err, ERR_CHANGED, "%s; save over it, or under another name", instead[state]);
        return err_at(err, session->path, 0, 0);
    }
    Text text;
    text_init(&text);
    store_write(wall, source_or_none(source), &text);
    const bool done = file_write_safely(session->path, text.bytes, text.length, err);
    if (done) {
        settle(session, arena, wall, &text, source);
        forget_own(session);
    } else {
        note_written(session, &text);
    }
    text_finish(&text);
    return done;
}

/* Makes the session one of the file at `path`, whose lock it has got. */
static void move_to(Session *session, const char *path, char *real, Lock *lock)
{
    Err slip;
    forget_own(session);
    lock_leave(session->lock);
    lock_leave(session->recovery_lock);
    free(session->path);
    free(session->real);
    session->path = copy_of(path);
    session->real = real;
    session->lock = lock;
    session->elsewhere = false;
    session->recovery_lock = NULL;
    session->kept = false;
    name_copy(session, &slip);
}

bool session_save_as(Session *session, Arena *arena, const char *path, const Wall *wall, Source *source, bool over,
                     Err *err)
{
    char *real = real_path(path, err);
    if (real == NULL)
        return false;
    if (session->real != NULL && strcmp(real, session->real) == 0) {
        free(real);
        return session_save(session, arena, wall, source, over, err);
    }
    Lock *lock = lock_take(real, err);
    if (lock == NULL) {
        free(real);
        return false;
    }
    Text text;
    text_init(&text);
    store_write(wall, source_or_none(source), &text);
    const bool done =
        over ? file_write_safely(path, text.bytes, text.length, err) : file_create(path, text.bytes, text.length, err);
    if (done) {
        settle(session, arena, wall, &text, source);
        move_to(session, path, real, lock);
    } else {
        lock_leave(lock);
        free(real);
    }
    text_finish(&text);
    return done;
}

/* ---- the recovery copy ---- */

static bool has_recovery(const Session *session)
{
    return session->recovery[0] != '\0' && access(session->recovery, F_OK) == 0;
}

bool session_keep(Session *session, const Wall *wall, const Source *source, Err *err)
{
    /* no state folder when it was opened; say why, and take it where there is one now */
    if (session->recovery[0] == '\0' && !name_copy(session, err))
        return false;
    if (!session->kept && has_recovery(session) && !copies_aside(session->recovery, err))
        return false;
    Text text;
    text_init(&text);
    store_write(wall, source == NULL ? NULL : source_or_none(source), &text);
    const bool done = file_write_safely(session->recovery, text.bytes, text.length, err);
    text_finish(&text);
    session->kept |= done;
    return done;
}

RecoveryCopies session_copies(const Session *session, Arena *arena)
{
    if (session->lock == NULL || session->recovery[0] == '\0')
        return (RecoveryCopies){0};
    return copies_waiting(arena, session->recovery, !session->kept, session->path);
}

bool session_recover(Session *session, Arena *arena, const char *copy, Source *out, Errs *errs)
{
    if (!store_read(arena, copy, out, errs))
        return false;
    if (strcmp(copy, session->recovery) == 0)
        session->kept = true;
    else
        snprintf(session->taken, sizeof session->taken, "%s", copy);
    return true;
}

void session_drop(Session *session, const char *copy)
{
    unlink(copy);
    session->kept |= strcmp(copy, session->recovery) == 0;
}

void session_forget(Session *session)
{
    if (session->taken[0] != '\0')
        unlink(session->taken);
    session->taken[0] = '\0';
    if (session->recovery[0] != '\0')
        unlink(session->recovery);
    session->kept = true;
}

const char *session_recovery_path(const Session *session)
{
    return session->recovery;
}

/* ---- copies of walls that never had a file ---- */

Recent session_left_over(Arena *arena)
{
    Recent left = {arena_array(arena, char *, NEW_LISTED), 0};
    char path[PATH_MAX];
    for (int i = 1; i <= NEW_MOST && left.count < NEW_LISTED && new_wall_path(i, path, NULL); i++) {
        /* where another process holds it, a living editor is at work on it; where this one does, it is in its hands */
        Lock *lock = access(path, F_OK) == 0 ? lock_take(path, NULL) : NULL;
        if (lock != NULL && !lock_is_shared(lock))
            left.at[left.count++] = arena_text(arena, path, strlen(path));
        lock_leave(lock);
    }
    return left;
}

void session_drop_left_over(const char *path)
{
    unlink(path);
}
