/* prlimit */
#define _GNU_SOURCE
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
#include <sys/resource.h>
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

/* Told by the shell: which process it is, and what became of it. */
typedef struct Report {
    pid_t process;
    int status;
} Report;

static void report(int file, pid_t process, int status)
{
    Report told = {process, status};
    if (write(file, &told, sizeof told) != sizeof told)
        _exit(1);
}

/* In the program's own process: it takes the terminal over. */
static void become(const Child *child, const char *terminal, const char *const *words)
{
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

/* In a new process: what a shell is to the program. Without one the system would not let it be stopped. */
static void be_shell(const Child *child, int told, const char *terminal, const char *const *words)
{
    setsid();
    int file = open(ptsname(child->master), O_RDWR);
    for (int i = 0; i < 3; i++)
        dup2(file, i);
    if (file > 2)
        close(file);
    close(child->master); /* only the test holds the other end, so that it can hang up */
    close(child->slave);
    signal(SIGHUP, SIG_IGN);
    signal(SIGTTOU, SIG_IGN);
    pid_t program = fork();
    if (program == 0) {
        setpgid(0, 0);
        tcsetpgrp(STDIN_FILENO, getpgrp());
        signal(SIGHUP, SIG_DFL);
        signal(SIGTTOU, SIG_DFL);
        become(child, terminal, words);
    }
    setpgid(program, program);
    report(told, program, -1);
    int status;
    while (waitpid(program, &status, WUNTRACED) == program) {
        report(told, program, status);
        if (!WIFSTOPPED(status))
            break;
    }
    _exit(0);
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
    int ends[2];
    BUG_UNLESS(pipe(ends) == 0);
    fcntl(ends[0], F_SETFD, FD_CLOEXEC);
    fcntl(ends[1], F_SETFD, FD_CLOEXEC);
    child->shell = fork();
    BUG_UNLESS(child->shell >= 0);
    if (child->shell == 0)
        be_shell(child, ends[1], terminal, words);
    close(ends[1]);
    child->reports = ends[0];
    Report told;
    BUG_UNLESS(read(child->reports, &told, sizeof told) == sizeof told);
    child->process = told.process;
}

static void part_from_shell(Child *child)
{
    close(child->reports);
    waitpid(child->shell, NULL, 0);
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
    part_from_shell(child);
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
    if (!child->over)
        kill(child->process, SIGKILL);
    part_from_shell(child);
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

/* What the shell tells next; false after ten seconds. */
static bool told(Child *child)
{
    long long end = now() + PATIENCE;
    struct pollfd poller = {.fd = child->reports, .events = POLLIN};
    while (now() < end) {
        Report news;
        if (poll(&poller, 1, BEAT) > 0) {
            if (read(child->reports, &news, sizeof news) != sizeof news)
                return false;
            child->status = news.status;
            child->over = WIFEXITED(news.status) || WIFSIGNALED(news.status);
            for (size_t before = child->heard.length + 1; before != child->heard.length;) {
                before = child->heard.length;
                listen_a_beat(child);
            }
            return true;
        }
        listen_a_beat(child);
    }
    return false;
}

bool child_ends(Child *child)
{
    return told(child) && child->over;
}

bool child_stops(Child *child)
{
    return told(child) && WIFSTOPPED(child->status);
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

bool child_starve(Child *child)
{
    char path[64];
    long pages = 0;
    snprintf(path, sizeof path, "/proc/%ld/statm", (long)child->process);
    FILE *file = fopen(path, "r");
    if (file == NULL)
        return false;
    const int read = fscanf(file, "%ld", &pages);
    fclose(file);
    const rlim_t most = (rlim_t)pages * (rlim_t)sysconf(_SC_PAGESIZE);
    return read == 1 && prlimit(child->process, RLIMIT_AS, &(struct rlimit){most, most}, NULL) == 0;
}
