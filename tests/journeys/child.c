#include "child.h"

#include "base/file.h"
#include "base/panic.h"

#include <dirent.h>
#include <errno.h>
#include <fcntl.h>
#include <poll.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/ioctl.h>
#include <sys/wait.h>
#include <time.h>
#include <unistd.h>

enum { PATIENCE = 10000, BEAT = 20 }; /* milliseconds */

static long long now(void)
{
    struct timespec time;
    clock_gettime(CLOCK_MONOTONIC, &time);
    return (long long)time.tv_sec * 1000 + time.tv_nsec / 1000000;
}

static void open_terminal(Child *child, int columns, int rows)
{
    child->master = posix_openpt(O_RDWR | O_NOCTTY);
    BUG_UNLESS(child->master >= 0 && grantpt(child->master) == 0 && unlockpt(child->master) == 0);
    child->slave = open(ptsname(child->master), O_RDWR | O_NOCTTY);
    BUG_UNLESS(child->slave >= 0);
    fcntl(child->master, F_SETFD, FD_CLOEXEC);
    fcntl(child->slave, F_SETFD, FD_CLOEXEC);
    child_resize(child, columns, rows);
    tcgetattr(child->slave, &child->sane);
}

/* In the new process: the terminal becomes its own, then the program takes over. */
static void become(const Child *child, const char *terminal, const char *const *words)
{
    setsid();
    int file = open(ptsname(child->master), O_RDWR);
    for (int i = 0; i < 3; i++)
        dup2(file, i);
    if (file > 2)
        close(file);
    if (terminal != NULL)
        setenv("TERM", terminal, 1);
    else
        unsetenv("TERM");
    setenv("XDG_STATE_HOME", child->folder, 1);
    setenv("LC_ALL", "C.UTF-8", 1);
    unsetenv("NO_COLOR");
    char *arguments[8];
    int count = 0;
    char name[] = "datumrow";
    arguments[count++] = name;
    for (int i = 0; words[i] != NULL && count < 7; i++)
        arguments[count++] = strdup(words[i]);
    arguments[count] = NULL;
    const char *program = getenv("DATUMROW_PROGRAM");
    execv(program != NULL ? program : "datumrow", arguments);
    _exit(127);
}

static Child *prepare(int columns, int rows)
{
    Child *child = calloc(1, sizeof *child);
    BUG_UNLESS(child != NULL);
    text_init(&child->heard);
    snprintf(child->folder, sizeof child->folder, "/tmp/datumrow-journey-XXXXXX");
    BUG_UNLESS(mkdtemp(child->folder) != NULL);
    snprintf(child->wall, sizeof child->wall, "%s/wall.yaml", child->folder);
    char path[1000];
    snprintf(path, sizeof path, "%s/tests/journeys/wall.yaml", getenv("DATUMROW_SOURCE"));
    Text text;
    text_init(&text);
    Err err;
    BUG_UNLESS(file_read(path, 1 << 20, &text, &err));
    BUG_UNLESS(file_create(child->wall, text.bytes, text.length, &err));
    text_finish(&text);
    open_terminal(child, columns, rows);
    return child;
}

static void launch(Child *child, const char *terminal, const char *const *words)
{
    child->process = fork();
    BUG_UNLESS(child->process >= 0);
    if (child->process == 0)
        become(child, terminal, words);
}

Child *child_start(const char *terminal, int columns, int rows, const char *const *words)
{
    Child *child = prepare(columns, rows);
    launch(child, terminal, words);
    return child;
}

Child *child_on_wall(const char *terminal, int columns, int rows)
{
    Child *child = prepare(columns, rows);
    launch(child, terminal, (const char *[]){child->wall, NULL});
    return child;
}

void child_again(Child *child, const char *terminal)
{
    child->over = false;
    child->heeded = child->heard.length;
    launch(child, terminal, (const char *[]){child->wall, NULL});
}

Child *child_beside(const Child *first, const char *terminal)
{
    Child *child = calloc(1, sizeof *child);
    BUG_UNLESS(child != NULL);
    text_init(&child->heard);
    child->guest = true;
    snprintf(child->folder, sizeof child->folder, "%s", first->folder);
    snprintf(child->wall, sizeof child->wall, "%s", first->wall);
    open_terminal(child, 80, 24);
    launch(child, terminal, (const char *[]){child->wall, NULL});
    return child;
}

void child_write(Child *child, const char *path, const char *words, const char *others)
{
    const char *text = child_file(child, path);
    const char *found = strstr(text, words);
    BUG_UNLESS(found != NULL);
    Text changed;
    text_init(&changed);
    text_put_bytes(&changed, text, (size_t)(found - text));
    text_put(&changed, others);
    text_put(&changed, found + strlen(words));
    Err err;
    BUG_UNLESS(file_write_safely(path, changed.bytes, changed.length, &err));
    text_finish(&changed);
}

static void remove_folder(const char *folder)
{
    pid_t process = fork();
    if (process == 0) {
        execlp("rm", "rm", "-rf", "--", folder, (char *)NULL);
        _exit(127);
    }
    if (process > 0)
        waitpid(process, NULL, 0);
}

void child_free(Child *child)
{
    if (!child->over) {
        kill(child->process, SIGKILL);
        waitpid(child->process, NULL, 0);
    }
    if (child->master >= 0)
        close(child->master);
    if (child->slave >= 0)
        close(child->slave);
    text_finish(&child->heard);
    if (!child->guest)
        remove_folder(child->folder);
    free(child);
}

/* Takes what was written, for a beat at the most. */
static void listen_a_beat(Child *child)
{
    struct pollfd poller = {.fd = child->master, .events = POLLIN};
    if (child->master < 0 || poll(&poller, 1, BEAT) <= 0)
        return;
    char bytes[4096];
    ssize_t count = read(child->master, bytes, sizeof bytes);
    for (ssize_t i = 0; i < count; i++)
        if (bytes[i] != '\0')
            text_put_bytes(&child->heard, &bytes[i], 1);
}

void child_type(Child *child, const char *bytes)
{
    size_t left = strlen(bytes);
    while (left > 0) {
        ssize_t done = write(child->master, bytes, left < 64 ? left : 64);
        if (done < 0 && errno != EINTR && errno != EAGAIN)
            return;
        if (done > 0) {
            bytes += done;
            left -= (size_t)done;
        }
        listen_a_beat(child);
    }
}

void child_resize(Child *child, int columns, int rows)
{
    struct winsize size = {.ws_col = (unsigned short)columns, .ws_row = (unsigned short)rows};
    ioctl(child->master, TIOCSWINSZ, &size);
}

void child_signal(Child *child, int number)
{
    kill(child->process, number);
}

void child_hang_up(Child *child)
{
    close(child->slave);
    close(child->master);
    child->slave = child->master = -1;
}

bool child_says(Child *child, const char *words)
{
    long long end = now() + PATIENCE;
    for (;;) {
        const char *found = strstr(child->heard.bytes + child->heeded, words);
        if (found != NULL) {
            child->heeded = (size_t)(found - child->heard.bytes) + strlen(words);
            return true;
        }
        if (now() > end)
            return false;
        listen_a_beat(child);
    }
}

static bool waited(Child *child, int options, bool (*wanted)(int status))
{
    long long end = now() + PATIENCE;
    while (now() < end) {
        int status;
        if (waitpid(child->process, &status, options | WNOHANG) == child->process) {
            child->status = status;
            child->over = WIFEXITED(status) || WIFSIGNALED(status);
            if (wanted(status)) {
                listen_a_beat(child);
                return true;
            }
        }
        if (child->over)
            return false;
        if (child->master < 0)
            poll(NULL, 0, BEAT);
        listen_a_beat(child);
    }
    return false;
}

static bool is_over(int status)
{
    return WIFEXITED(status) || WIFSIGNALED(status);
}

static bool is_stopped(int status)
{
    return WIFSTOPPED(status);
}

bool child_ends(Child *child)
{
    return waited(child, 0, is_over);
}

bool child_stops(Child *child)
{
    return waited(child, WUNTRACED, is_stopped);
}

bool child_modes_are_sane(const Child *child)
{
    struct termios modes;
    return tcgetattr(child->slave, &modes) == 0 && modes.c_lflag == child->sane.c_lflag &&
           modes.c_iflag == child->sane.c_iflag && modes.c_oflag == child->sane.c_oflag;
}

const char *child_file(Child *child, const char *path)
{
    static char bytes[1 << 16];
    Text text;
    text_init(&text);
    Err err;
    bytes[0] = '\0';
    if (file_read(path, sizeof bytes - 1, &text, &err))
        snprintf(bytes, sizeof bytes, "%s", text.bytes);
    text_finish(&text);
    (void)child;
    return bytes;
}

bool child_file_holds(Child *child, const char *path, const char *words)
{
    long long end = now() + PATIENCE;
    while (strstr(child_file(child, path), words) == NULL) {
        if (now() > end)
            return false;
        listen_a_beat(child);
    }
    return true;
}

const char *child_recovery(Child *child)
{
    static char path[600];
    char folder[100];
    snprintf(folder, sizeof folder, "%s/datumrow/recovery", child->folder);
    DIR *open = opendir(folder);
    if (open == NULL)
        return NULL;
    const char *found = NULL;
    for (struct dirent *entry; (entry = readdir(open)) != NULL;)
        if (entry->d_name[0] != '.') {
            snprintf(path, sizeof path, "%s/%s", folder, entry->d_name);
            found = path;
        }
    closedir(open);
    return found;
}
