#include "base/file.h"

#include <dirent.h>
#include <errno.h>
#include <fcntl.h>
#include <limits.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

enum { LINKS_MOST = 40, TRIES_MOST = 100 };

/* Fails with the place set: every error here is about one file. */
static bool refuse(Err *err, ErrKind kind, const char *path, const char *text)
{
    err_set(err, kind, "%s", text);
    return err_at(err, path, 0, 0);
}

static bool refuse_system(Err *err, int errnum, const char *path, const char *text)
{
    err_system(err, errnum, "%s", text);
    return err_at(err, path, 0, 0);
}

static int open_again(const char *path, int flags, mode_t mode)
{
    int file;
    do
        file = open(path, flags | O_CLOEXEC, mode);
    while (file < 0 && errno == EINTR);
    return file;
}

/* ---- reading ---- */

static int open_to_read(const char *path, Err *err)
{
    int file = open_again(path, O_RDONLY | O_NOCTTY | O_NONBLOCK, 0);
    if (file < 0 && errno == ENOENT)
        refuse(err, ERR_SYSTEM, path, "there is no such file; check the name and the folder");
    else if (file < 0 && errno == ENXIO)
        refuse(err, ERR_SYSTEM, path, "is a socket or a device, not a file; name a file");
    else if (file < 0)
        refuse_system(err, errno, path, "cannot be opened");
    return file;
}

static bool may_be_read(int file, const char *path, Err *err)
{
    struct stat what;
    if (fstat(file, &what) != 0)
        return refuse_system(err, errno, path, "cannot be looked at");
    if (S_ISDIR(what.st_mode))
        return refuse(err, ERR_SYSTEM, path, "is a folder; name a file in it");
    if (S_ISFIFO(what.st_mode) && strncmp(path, "/dev/fd/", 8) != 0)
        return refuse(err, ERR_SYSTEM, path, "is a pipe, not a file; name a file, or - for standard input");
    if (S_ISFIFO(what.st_mode)) /* that a shell made, and feeds */
        fcntl(file, F_SETFL, fcntl(file, F_GETFL) & ~O_NONBLOCK);
    if (S_ISCHR(what.st_mode) || S_ISBLK(what.st_mode))
        return refuse(err, ERR_SYSTEM, path, "is a device; name a file, or - for standard input");
    return true;
}

/* Appends all that is left of `file`; errno on failure, EFBIG beyond the limit, 0 when done. */
static int read_all(int file, size_t limit, Text *into)
{
    char chunk[16384];
    for (;;) {
        ssize_t got = read(file, chunk, sizeof chunk);
        if (got == 0)
            return 0;
        if (got < 0 && errno == EINTR)
            continue;
        if (got < 0)
            return errno;
        if ((size_t)got > limit - into->length)
            return EFBIG;
        text_put_bytes(into, chunk, (size_t)got);
    }
}

bool file_read(const char *path, size_t limit, Text *out, Err *err)
{
    bool standard = strcmp(path, "-") == 0;
    const char *name = standard ? "standard input" : path;
    int file = standard ? STDIN_FILENO : open_to_read(path, err);
    if (file < 0)
        return false;
    Text read_so_far;
    text_init(&read_so_far);
    bool done = standard || may_be_read(file, path, err);
    if (done) {
        int failure = read_all(file, limit, &read_so_far);
        done = failure == 0;
        if (failure == EFBIG) {
            err_set(err, ERR_LIMIT, "is larger than %zu bytes, the most that is read; name a smaller file", limit);
            err_at(err, name, 0, 0);
        } else if (failure == EISDIR) {
            refuse(err, ERR_SYSTEM, name, "is a folder; name a file in it");
        } else if (failure != 0) {
            refuse_system(err, failure, name, "cannot be read");
        }
    }
    if (!standard)
        close(file);
    if (done) {
        text_clear(out);
        text_put_bytes(out, read_so_far.bytes, read_so_far.length);
    }
    text_finish(&read_so_far);
    return done;
}

/* ---- writing ---- */

/* Bytes of `path` up to and with its last slash. */
static size_t folder_length(const char *path)
{
    const char *slash = strrchr(path, '/');
    return slash == NULL ? 0 : (size_t)(slash - path) + 1;
}

static bool join(char *out, size_t size, const char *folder, size_t folder_size, const char *name)
{
    int length = snprintf(out, size, "%.*s%s", (int)folder_size, folder, name);
    return length >= 0 && (size_t)length < size;
}

bool file_follow_links(const char *path, char real[PATH_MAX], Err *err)
{
    if (!join(real, PATH_MAX, "", 0, path))
        return refuse_system(err, ENAMETOOLONG, path, "cannot be written");
    for (int i = 0; i < LINKS_MOST; i++) {
        char target[PATH_MAX];
        ssize_t length = readlink(real, target, sizeof target - 1);
        if (length < 0)
            return true;
        target[length] = '\0';
        char joined[PATH_MAX];
        size_t folder = target[0] == '/' ? 0 : folder_length(real);
        if (!join(joined, sizeof joined, real, folder, target))
            return refuse_system(err, ENAMETOOLONG, path, "cannot be written");
        memcpy(real, joined, sizeof joined);
    }
    return refuse_system(err, ELOOP, path, "cannot be written");
}

/* Gives the new file the owner, group and mode of the old one. Who may not give files away keeps their own name on it;
 * where the group cannot be kept, its rights shrink to those of all others, so that no strangers gain any. */
static int keep_mode(int file, const struct stat *old)
{
    mode_t mode = old->st_mode & 07777;
    if (fchown(file, old->st_uid, old->st_gid) != 0 && fchown(file, (uid_t)-1, old->st_gid) != 0)
        mode &= 0707 | (mode & 07) << 3; /* and nothing is run in its name */
    return fchmod(file, mode) == 0 || errno == EPERM ? 0 : errno;
}

/* Writes all, gives it the mode of `old` (NULL: leaves it as it is), makes it durable and closes `file` in any case;
 * errno on failure, 0 when done. The mode comes last: writing takes setgid off. */
static int write_all_and_close(int file, const char *bytes, size_t length, const struct stat *old)
{
    int failure = 0;
    for (size_t at = 0; at < length && failure == 0;) {
        ssize_t put = write(file, bytes + at, length - at);
        if (put >= 0)
            at += (size_t)put;
        else if (errno != EINTR)
            failure = errno;
    }
    if (failure == 0 && old != NULL)
        failure = keep_mode(file, old);
    if (failure == 0 && fsync(file) != 0 && errno != EINVAL && errno != EROFS)
        failure = errno;
    if (close(file) != 0 && failure == 0 && errno != EINTR)
        failure = errno;
    return failure;
}

/* A name that is in a folder only once the folder itself is on the disk. Some file systems cannot do that for folders
 * (EINVAL): there is nothing more to do there. */
static int settle_folder(const char *path)
{
    char folder[PATH_MAX];
    size_t length = folder_length(path);
    if (!join(folder, sizeof folder, length == 0 ? "." : path, length == 0 ? 1 : length, ""))
        return ENAMETOOLONG;
    int file = open_again(folder, O_RDONLY | O_DIRECTORY, 0);
    if (file < 0)
        return errno == EACCES ? 0 : errno; /* a folder one may write to, not list */
    int failure = fsync(file) == 0 || errno == EINVAL ? 0 : errno;
    close(file);
    return failure;
}

/* Opens a new file beside `real`, its name into `temporary`. */
static int open_beside(const char *real, char temporary[PATH_MAX], mode_t mode)
{
    for (int i = 0; i < TRIES_MOST; i++) {
        char name[64];
        snprintf(name, sizeof name, ".datumrow-%ld-%d.new", (long)getpid(), i);
        if (!join(temporary, PATH_MAX, real, folder_length(real), name)) {
            errno = ENAMETOOLONG;
            return -1;
        }
        int file = open_again(temporary, O_WRONLY | O_CREAT | O_EXCL | O_NOFOLLOW, mode);
        if (file >= 0) /* is_left asks for it */
            fcntl(file, F_SETLK, &(struct flock){.l_type = F_WRLCK, .l_whence = SEEK_SET});
        if (file >= 0 || errno != EEXIST)
            return file;
    }
    return -1;
}

bool file_write_safely(const char *path, const char *bytes, size_t length, Err *err)
{
    char real[PATH_MAX];
    char temporary[PATH_MAX];
    if (!file_follow_links(path, real, err))
        return false;
    struct stat old;
    bool exists = stat(real, &old) == 0;
    if (!exists && errno != ENOENT)
        return refuse_system(err, errno, path, "cannot be written");
    if (exists && S_ISDIR(old.st_mode))
        return refuse(err, ERR_SYSTEM, path, "is a folder; name a file in it");
    if (exists && !S_ISREG(old.st_mode))
        return refuse(err, ERR_SYSTEM, path, "is a pipe or a device, not a file; name a file");
    if (exists && faccessat(AT_FDCWD, real, W_OK, AT_EACCESS) != 0)
        return refuse_system(err, errno, path, "cannot be written");

    int file = open_beside(real, temporary, exists ? 0600 : 0666);
    if (file < 0)
        return refuse_system(err, errno, path, "cannot be written, since no new file can be made beside it");
    int failure = write_all_and_close(file, bytes, length, exists ? &old : NULL);
    if (failure == 0 && rename(temporary, real) != 0)
        failure = errno;
    if (failure != 0) {
        unlink(temporary);
        return refuse_system(err, failure, path,
                             exists ? "cannot be written; what stood there is unharmed" : "cannot be written");
    }
    failure = settle_folder(real);
    if (failure != 0)
        return refuse_system(err, failure, path, "is written, but the disk does not say that it is safe there");
    return true;
}

/* Gives what is written to `temporary` the name `path`, which must not be there. Where the file system knows no second
 * name for a file, an empty one holds the place until it is moved there. */
static int name_new(const char *temporary, const char *path)
{
    if (link(temporary, path) == 0) {
        unlink(temporary);
        return 0;
    }
    if (errno == EEXIST)
        return EEXIST;
    int file = open_again(path, O_WRONLY | O_CREAT | O_EXCL, 0600);
    if (file < 0)
        return errno;
    close(file);
    if (rename(temporary, path) == 0)
        return 0;
    int failure = errno;
    unlink(path);
    return failure;
}

bool file_create(const char *path, const char *bytes, size_t length, Err *err)
{
    static const char exists[] = "exists already; choose another name";
    char temporary[PATH_MAX];
    struct stat there;
    if (lstat(path, &there) == 0)
        return refuse(err, ERR_SYSTEM, path, exists);
    int file = open_beside(path, temporary, 0666);
    if (file < 0)
        return refuse_system(err, errno, path, "cannot be made");
    int failure = write_all_and_close(file, bytes, length, NULL);
    if (failure == 0)
        failure = name_new(temporary, path);
    if (failure != 0) {
        unlink(temporary);
        return failure == EEXIST ? refuse(err, ERR_SYSTEM, path, exists)
                                 : refuse_system(err, failure, path, "cannot be written");
    }
    failure = settle_folder(path);
    if (failure != 0) {
        unlink(path);
        return refuse_system(err, failure, path, "cannot be written so that it stays");
    }
    return true;
}

/* ---- what the dead left ---- */

/* The process that made a temporary file of this name; 0 where it is no such name. */
static pid_t maker_of(const char *name)
{
    static const char begin[] = ".datumrow-", end[] = ".new";
    char *rest;
    if (strncmp(name, begin, sizeof begin - 1) != 0)
        return 0;
    long process = strtol(name + sizeof begin - 1, &rest, 10);
    if (process <= 0 || *rest != '-' || rest[1] < '0' || rest[1] > '9')
        return 0;
    strtol(rest + 1, &rest, 10);
    return strcmp(rest, end) == 0 ? (pid_t)process : 0;
}

/* On this machine nobody has that number. On another one somebody could, who then holds a lock on the file. */
static bool is_left(const char *path, pid_t maker)
{
    if (kill(maker, 0) == 0 || errno != ESRCH)
        return false;
    int file = open_again(path, O_RDWR | O_NOFOLLOW | O_NONBLOCK, 0);
    if (file < 0)
        return false;
    struct stat what;
    struct flock range = {.l_type = F_WRLCK, .l_whence = SEEK_SET};
    bool left = fstat(file, &what) == 0 && S_ISREG(what.st_mode) && fcntl(file, F_SETLK, &range) == 0;
    close(file);
    return left;
}

void file_clear_left(const char *path)
{
    char folder[PATH_MAX];
    size_t length = folder_length(path);
    if (!join(folder, sizeof folder, length == 0 ? "./" : path, length == 0 ? 2 : length, ""))
        return;
    DIR *open = opendir(folder);
    if (open == NULL)
        return;
    for (const struct dirent *entry; (entry = readdir(open)) != NULL;) {
        char left[PATH_MAX];
        pid_t maker = maker_of(entry->d_name);
        if (maker > 0 && join(left, sizeof left, folder, strlen(folder), entry->d_name) && is_left(left, maker))
            unlink(left);
    }
    closedir(open);
}

static bool make_one(const char *path, Err *err)
{
    struct stat what;
    if (mkdir(path, 0700) == 0)
        return true;
    int failure = errno;
    if (stat(path, &what) == 0) {
        if (S_ISDIR(what.st_mode))
            return true;
        return refuse(err, ERR_SYSTEM, path, "is a file where a folder is wanted; move it away");
    }
    return refuse_system(err, failure, path, "this folder cannot be made");
}

bool file_make_folder(const char *path, Err *err)
{
    char part[PATH_MAX];
    if (!join(part, sizeof part, "", 0, path))
        return refuse_system(err, ENAMETOOLONG, path, "this folder cannot be made");
    for (char *slash = strchr(part + (part[0] == '/'), '/'); slash != NULL; slash = strchr(slash + 1, '/')) {
        *slash = '\0';
        if (!make_one(part, err))
            return false;
        *slash = '/';
    }
    return make_one(part, err);
}
