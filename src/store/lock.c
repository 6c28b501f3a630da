#include "store/lock.h"

#include "base/file.h"
#include "base/hash.h"
#include "base/panic.h"
#include "store/state.h"

#include <errno.h>
#include <fcntl.h>
#include <limits.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

/*
 * Who lets go removes the file first, while the lock is still held. Another process may have opened it just before and
 * get the lock of a file that has no name any more: so whoever got a lock looks whether the name still leads to it, and
 * else begins anew.
 */

enum { TRIES_MOST = 20, HOST_MOST = 128, HOLDER_MOST = 256 };

struct Lock {
    char *path; /* of the lock's own file */
    int file;
    pid_t process; /* that holds it: a child does not inherit record locks */
    int holders;   /* in this process */
    Lock *next;
};

/* All that this process holds: a record lock belongs to the process, and ends when any descriptor of its file closes.
 */
static Lock *held = NULL;

/* "1234 workshop", as the file says it. */
static void put_holder(int file)
{
    char host[HOST_MOST] = "";
    char line[HOLDER_MOST];
    gethostname(host, sizeof host - 1);
    const int length = snprintf(line, sizeof line, "%ld %s\n", (long)getpid(), host);
    if (ftruncate(file, 0) == 0 && pwrite(file, line, (size_t)length, 0) != length)
        return; /* only people read it */
}

static void name_holder(int file, pid_t process, Err *err)
{
    char line[HOLDER_MOST];
    const ssize_t length = pread(file, line, sizeof line - 1, 0);
    line[length > 0 ? length : 0] = '\0';
    line[strcspn(line, "\r\n")] = '\0';
    char *end = line;
    const long number = strtol(line, &end, 10);
    const char *host = *end == ' ' && end[1] != '\0' ? end + 1 : "another machine";
    err_set(err, ERR_LOCKED,
            "another editor has this file open, on the machine %s (program number %ld there); close it there first",
            host, number > 0 ? number : (long)process);
}

/* 1 where the lock was got, 0 where another holds it (told), -1 where it cannot be had (errno). */
static int try_lock(int file, Err *err)
{
    struct flock range = {.l_type = F_WRLCK, .l_whence = SEEK_SET};
    int got;
    do
        got = fcntl(file, F_SETLK, &range);
    while (got != 0 && errno == EINTR);
    if (got == 0)
        return 1;
    if (errno != EACCES && errno != EAGAIN)
        return -1;
    range = (struct flock){.l_type = F_WRLCK, .l_whence = SEEK_SET};
    if (fcntl(file, F_GETLK, &range) != 0 || range.l_type == F_UNLCK)
        range.l_pid = 0;
    name_holder(file, range.l_pid, err);
    return 0;
}

static bool still_named(int file, const char *path)
{
    struct stat opened;
    struct stat named;
    return fstat(file, &opened) == 0 && lstat(path, &named) == 0 && opened.st_dev == named.st_dev &&
           opened.st_ino == named.st_ino && S_ISREG(opened.st_mode);
}

/* Somebody else's lock file, that one may read alone: 0 where it is held (told); else it is a dead one's, and removed
 * where that may be done, -1 where it may not. */
static int look_at_foreign(const char *path, Err *err)
{
    const int file = open(path, O_RDONLY | O_CLOEXEC | O_NOFOLLOW | O_NONBLOCK);
    struct flock range = {.l_type = F_WRLCK, .l_whence = SEEK_SET};
    if (file < 0)
        return -1;
    const bool is_held = fcntl(file, F_GETLK, &range) == 0 && range.l_type != F_UNLCK;
    if (is_held)
        name_holder(file, range.l_pid, err);
    close(file);
    return is_held ? 0 : unlink(path) == 0 ? 1 : -1;
}

/* As try_lock, of the file at `path`, which is made where it is not there; `out` gets its descriptor. */
static int take_file(const char *path, int *out, Err *err)
{
    for (int i = 0; i < TRIES_MOST; i++) {
        const int file = open(path, O_RDWR | O_CREAT | O_CLOEXEC | O_NOFOLLOW | O_NONBLOCK, 0644);
        if (file < 0 && errno == EACCES) {
            const int foreign = look_at_foreign(path, err);
            if (foreign == 1)
                continue;
            errno = EACCES;
            return foreign;
        }
        if (file < 0)
            return -1;
        const int got = try_lock(file, err);
        if (got == 1 && still_named(file, path)) {
            put_holder(file);
            *out = file;
            return 1;
        }
        const int failure = errno;
        close(file);
        errno = failure;
        if (got != 1)
            return got;
    }
    errno = EAGAIN;
    return -1;
}

static bool beside(const char *real, char out[PATH_MAX])
{
    const char *slash = strrchr(real, '/');
    const char *name = slash == NULL ? real : slash + 1;
    const int length = snprintf(out, PATH_MAX, "%.*s.%s.lock", (int)(name - real), real, name);
    return length >= 0 && length < PATH_MAX;
}

static bool in_state_folder(const char *real, char out[PATH_MAX])
{
    char short_hash[13];
    char name[64];
    hash_short(hash_bytes(real, strlen(real)), short_hash);
    snprintf(name, sizeof name, "%s.lock", short_hash);
    return state_path("locks", name, out, NULL);
}

static Lock *find(const char *path)
{
    for (Lock *lock = held; lock != NULL; lock = lock->next)
        if (lock->process == getpid() && strcmp(lock->path, path) == 0)
            return lock;
    return NULL;
}

static Lock *keep(const char *path, int file)
{
    Lock *lock = calloc(1, sizeof *lock);
    char *copy = strdup(path);
    if (lock == NULL || copy == NULL)
        panic_no_memory();
    *lock = (Lock){.path = copy, .file = file, .process = getpid(), .holders = 1, .next = held};
    held = lock;
    return lock;
}

Lock *lock_take(const char *real, Err *err)
{
    bool (*const places[])(const char *real, char out[PATH_MAX]) = {beside, in_state_folder};
    int failure = ENAMETOOLONG;
    for (size_t i = 0; i < sizeof places / sizeof *places; i++) {
        char path[PATH_MAX];
        int file;
        if (!places[i](real, path))
            continue;
        Lock *own = find(path);
        if (own != NULL) {
            own->holders++;
            return own;
        }
        const int got = take_file(path, &file, err);
        if (got == 1)
            return keep(path, file);
        if (got == 0) {
            err_at(err, real, 0, 0);
            return NULL;
        }
        failure = errno;
    }
    err_system(err, failure, "no lock can be had on it, so a second editor would not be noticed");
    err_at(err, real, 0, 0);
    return NULL;
}

bool lock_is_shared(const Lock *lock)
{
    return lock->holders > 1;
}

void lock_leave(Lock *lock)
{
    if (lock == NULL || --lock->holders > 0)
        return;
    for (Lock **link = &held; *link != NULL; link = &(*link)->next)
        if (*link == lock) {
            *link = lock->next;
            break;
        }
    if (lock->process == getpid())
        unlink(lock->path);
    close(lock->file);
    free(lock->path);
    free(lock);
}
