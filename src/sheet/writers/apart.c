#include "sheet/writers/apart.h"

#include <errno.h>
#include <fcntl.h>
#include <signal.h>
#include <stdlib.h>
#include <string.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include "base/panic.h"

enum { DREW = 0, FAILED = 3, UNSAID = 4, ROOM = 4 << 20 };

static const char unsure[] =
    "the sheet could not be drawn, most likely for want of memory; the text sheet (--as text) holds "
    "the same";

static bool put_all(int file, const char *bytes, size_t length)
{
    while (length > 0) {
        ssize_t put = write(file, bytes, length);
        if (put < 0 && errno == EINTR)
            continue;
        if (put < 0)
            return false;
        bytes += put;
        length -= (size_t)put;
    }
    return true;
}

/* The child touches neither the terminal nor what a dying editor would do: it ends quietly, and its parent tells. */
static void be_quiet(void)
{
    static const int ends[] = {SIGSEGV, SIGBUS, SIGFPE, SIGILL, SIGABRT, SIGTRAP, SIGSYS};
    for (size_t i = 0; i < sizeof ends / sizeof *ends; i++)
        signal(ends[i], SIG_DFL);
    panic_hook(NULL);
    setrlimit(RLIMIT_CORE, &(struct rlimit){0, 0});
    int nothing = open("/dev/null", O_RDWR | O_CLOEXEC);
    for (int file = STDIN_FILENO; nothing >= 0 && file <= STDERR_FILENO; file++)
        dup2(nothing, file);
}

/* Whether there is memory left at the end. */
static bool has_room(void)
{
    void *room = malloc(ROOM);
    free(room);
    return room != NULL;
}

/* A drawing that takes longer waits for something that will not come: where memory is short the libraries may wait for
 * a thread of theirs that never began. The largest halls take a tenth of it. */
enum { DRAW_SECONDS = 300 };

/* Where memory is short the libraries may leave glyphs out and say nothing: so the sheet is drawn twice, and counts
 * only where both are the same. */
static bool draw_surely(ApartDraw *draw, const Sheet *sheet, Text *drawn, Err *err)
{
    Text again;
    text_init(&again);
    if (!draw(sheet, drawn, err) || !draw(sheet, &again, err))
        return false;
    if (again.length == drawn->length && memcmp(again.bytes, drawn->bytes, drawn->length) == 0 && has_room())
        return true;
    return err_set(err, ERR_SYSTEM, "%s", unsure);
}

static _Noreturn void be_child(ApartDraw *draw, const Sheet *sheet, int to)
{
    Text drawn;
    Err err = {0};
    be_quiet();
    signal(SIGALRM, SIG_DFL);
    alarm(DRAW_SECONDS);
    panic_last(); /* no attempt of the parent's is taken up here */
    text_init(&drawn);
    bool good = draw_surely(draw, sheet, &drawn, &err);
    bool said = good ? put_all(to, drawn.bytes, drawn.length) : put_all(to, err.text, strlen(err.text));
    _exit(!said ? UNSAID : good ? DREW : FAILED);
}

/* All that comes, up to its end. */
static bool take_all(int from, Text *out)
{
    char chunk[16384];
    for (;;) {
        ssize_t got = read(from, chunk, sizeof chunk);
        if (got == 0)
            return true;
        if (got < 0 && errno == EINTR)
            continue;
        if (got < 0)
            return false;
        text_put_bytes(out, chunk, (size_t)got);
    }
}

static bool take_end(pid_t child, const Text *came, Err *err)
{
    int status;
    while (waitpid(child, &status, 0) < 0)
        if (errno != EINTR)
            return err_system(err, errno, "the drawing cannot be waited for");
    if (WIFEXITED(status) && WEXITSTATUS(status) == DREW)
        return true;
    if (WIFEXITED(status) && WEXITSTATUS(status) == FAILED && came->length > 0)
        return err_set(err, ERR_SYSTEM, "%s", came->bytes);
    return err_set(err, ERR_SYSTEM, "%s", unsure);
}

bool apart_draw(ApartDraw *draw, const Sheet *sheet, Text *out, Err *err)
{
    int ends[2];
    if (pipe(ends) != 0)
        return err_system(err, errno, "the sheet could not be drawn");
    pid_t child = fork();
    if (child == 0) {
        close(ends[0]);
        be_child(draw, sheet, ends[1]);
    }
    int failure = errno;
    close(ends[1]);
    if (child < 0) {
        close(ends[0]);
        return err_system(err, failure, "the sheet could not be drawn");
    }
    Text came;
    text_init(&came);
    bool whole = take_all(ends[0], &came);
    close(ends[0]); /* a child that still writes ends by that */
    bool good = take_end(child, &came, err);
    if (good && !whole)
        good = err_set(err, ERR_SYSTEM, "the sheet could not be drawn: its bytes did not come back");
    if (good)
        text_put_bytes(out, came.bytes, came.length);
    text_finish(&came);
    return good;
}
