#include "sheet/printer.h"

#include <errno.h>
#include <fcntl.h>
#include <limits.h>
#include <signal.h>
#include <spawn.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

#include "base/file.h"

extern char **environ;

/* A path that lp cannot take for an option. */
static bool safe_path(const char *path, char *out, size_t size)
{
    int length = snprintf(out, size, "%s%s", path[0] == '-' ? "./" : "", path);
    return length >= 0 && (size_t)length < size;
}

bool printer_send(const char *path, const char *title, Err *err)
{
    char file[PATH_MAX];
    char name[300];
    if (!safe_path(path, file, sizeof file))
        return err_set(err, ERR_SYSTEM, "the path is too long for the printer command");
    snprintf(name, sizeof name, "%s", title);
    char lp[] = "lp", option[] = "-o", scaling[] = "print-scaling=none", called[] = "-t";
    char *words[] = {lp, option, scaling, called, name, file, NULL};
    posix_spawn_file_actions_t silence;
    posix_spawn_file_actions_init(&silence);
    posix_spawn_file_actions_addopen(&silence, STDIN_FILENO, "/dev/null", O_RDONLY, 0);
    posix_spawn_file_actions_addopen(&silence, STDOUT_FILENO, "/dev/null", O_WRONLY, 0);
    posix_spawn_file_actions_addopen(&silence, STDERR_FILENO, "/dev/null", O_WRONLY, 0);
    posix_spawnattr_t hears; /* every signal, whatever is blocked here */
    sigset_t none;
    sigemptyset(&none);
    posix_spawnattr_init(&hears);
    posix_spawnattr_setsigmask(&hears, &none);
    posix_spawnattr_setflags(&hears, POSIX_SPAWN_SETSIGMASK);
    pid_t process;
    int failed = posix_spawnp(&process, lp, &silence, &hears, words, environ);
    posix_spawnattr_destroy(&hears);
    posix_spawn_file_actions_destroy(&silence);
    if (failed != 0)
        return err_system(err, failed, "there is no printer command (lp) here");
    int status;
    while (waitpid(process, &status, 0) < 0)
        if (errno != EINTR)
            return err_system(err, errno, "the printer command cannot be waited for");
    if (WIFEXITED(status) && WEXITSTATUS(status) == 0)
        return true;
    if (WIFEXITED(status) && WEXITSTATUS(status) == 127)
        return err_set(err, ERR_SYSTEM, "there is no printer command (lp) here");
    return err_set(err, ERR_SYSTEM, "the printer command (lp) did not take it");
}

bool printer_keep(const char *name, const char *bytes, size_t length, char *path, size_t size, Err *err)
{
    const char *folder = getenv("TMPDIR");
    if (folder == NULL || folder[0] != '/')
        folder = "/tmp";
    int count = snprintf(path, size, "%s/datumrow-XXXXXX", folder);
    if (count < 0 || (size_t)count + strlen(name) + 2 > size)
        return err_set(err, ERR_SYSTEM,
                       "the path of the folder for passing files is too long; set TMPDIR to a shorter one");
    if (mkdtemp(path) == NULL) {
        int why = errno;
        err_system(err, why, "no folder can be made for the sheet");
        return err_at(err, folder, 0, 0);
    }
    size_t at = strlen(path);
    snprintf(path + at, size - at, "/%s", name);
    return file_create(path, bytes, length, err);
}

void printer_drop(const char *path)
{
    char folder[PATH_MAX];
    snprintf(folder, sizeof folder, "%s", path);
    char *slash = strrchr(folder, '/');
    unlink(path);
    if (slash != NULL) {
        *slash = '\0';
        rmdir(folder);
    }
}
