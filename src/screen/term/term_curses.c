/*
 * The real terminal. Curses draws; the bytes of the keys are read here and decoded in key.c, so curses never waits for
 * one.
 *
 * Signals are blocked all the time but for the wait itself (pselect), so a flag is never set between looking at it and
 * waiting. The handlers set flags only. Left alone, curses would end the program on INT and TERM with the work unsaved:
 * ours stand before it starts, and it leaves alone what is taken.
 *
 *     every way out ──> give_back() ──> sane modes, cursor on, main screen
 *       finish, suspend                 (through curses)
 *       panic, SEGV BUS ... ABRT TRAP   (write and tcsetattr alone: safe in a handler)
 *
 * After a crash the last act, writing the recovery copy, is tried: it may not come off in a handler, so a clock ends
 * it, and the terminal has been given back before.
 */
#include "screen/term/term.h"

#include "base/panic.h"
#include "base/utf8.h"

#include <curses.h>
#include <errno.h>
#include <poll.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/ioctl.h>
#include <sys/select.h>
#include <term.h>
#include <termios.h>
#include <time.h>
#include <unistd.h>

/* term.h gives every capability a macro; this one is also the name of a field of ours. */
#undef columns

enum { ESCAPE_DELAY = 25, ESCAPE_DELAY_MOST = 10000, INPUT_MOST = 4096, LAST_SECONDS = 5 };

#define COUNT(array) (sizeof(array) / sizeof *(array))

typedef struct Curses {
    Term term; /* first: a Term * is a Curses * */
    SCREEN *screen;
    Decoder decoder;
    int escape_delay; /* milliseconds */
    bool pastes;      /* the terminal was asked to bracket what is pasted */
    unsigned char input[INPUT_MOST];
    size_t input_at, input_count;
} Curses;

static const char paste_on[] = "\x1b[?2004h";
static const char paste_off[] = "\x1b[?2004l";

/* What the handlers may touch: flags, and what was made ready for the last act. */
static volatile sig_atomic_t flag_stop, flag_resize, flag_suspend, flag_resume, flag_hang_up;
static volatile sig_atomic_t taken; /* the terminal is in our modes */
static struct termios sane;         /* as it was found */
static char leave_bytes[256];       /* what puts the terminal back */
static size_t leave_length;
static char last_words[512];
static void (*last_act)(void *with);
static void *last_act_with;
static sigset_t unblocked; /* the mask while waiting */

static void write_all(int file, const char *bytes, size_t length)
{
    while (length > 0) {
        ssize_t done = write(file, bytes, length);
        if (done <= 0)
            return;
        bytes += done;
        length -= (size_t)done;
    }
}

static void on_signal(int number)
{
    int before = errno;
    if (number == SIGWINCH)
        flag_resize = 1;
    else if (number == SIGTSTP)
        flag_suspend = 1;
    else if (number == SIGCONT)
        flag_resume = 1;
    else if (number == SIGHUP)
        flag_hang_up = 1;
    else
        flag_stop = 1;
    errno = before;
}

/* Safe in a handler: no curses, no memory. Does nothing the second time. */
static void give_back_at_once(void)
{
    if (!taken)
        return;
    taken = 0;
    write_all(STDOUT_FILENO, leave_bytes, leave_length);
    tcsetattr(STDIN_FILENO, TCSANOW, &sane);
}

/* What ends the program in good order, when it next waits; those that not every system has, and those of real time,
 * come on top. */
static const int ends[] = {
    SIGINT,    SIGTERM, SIGQUIT, SIGUSR1, SIGUSR2, SIGALRM, SIGVTALRM, SIGPROF, SIGXCPU,
#ifdef SIGPOLL
    SIGPOLL,
#endif
#ifdef SIGPWR
    SIGPWR,
#endif
#ifdef SIGSTKFLT
    SIGSTKFLT,
#endif
};
static const int others[] = {SIGHUP, SIGWINCH, SIGTSTP, SIGCONT};
static const int crashes[] = {SIGSEGV, SIGBUS, SIGFPE, SIGILL, SIGABRT, SIGTRAP, SIGSYS};

static void let_go_of_crashes(void)
{
    for (size_t i = 0; i < COUNT(crashes); i++)
        signal(crashes[i], SIG_DFL);
}

static void act_at_last(void)
{
    void (*act)(void *with) = last_act;
    last_act = NULL;
    if (act == NULL)
        return;
    sigset_t clock;
    sigemptyset(&clock);
    sigaddset(&clock, SIGALRM);
    signal(SIGALRM, SIG_DFL);
    sigprocmask(SIG_UNBLOCK, &clock, NULL);
    alarm(LAST_SECONDS);
    act(last_act_with);
    alarm(0);
}

static void on_crash(int number)
{
    static const char said[] = "datumrow: stopped by a mistake of its own.\n";
    give_back_at_once();
    write_all(STDERR_FILENO, said, sizeof said - 1);
    let_go_of_crashes();
    panic_last();
    act_at_last();
    write_all(STDERR_FILENO, last_words, strlen(last_words));
    raise(number);
}

static void on_panic(const char *message)
{
    give_back_at_once();
    fprintf(stderr, "datumrow: %s\n", message);
    let_go_of_crashes();
    act_at_last();
    fputs(last_words, stderr);
}

static void catch (int number, void (*handler)(int))
{
    struct sigaction action = {.sa_handler = handler, .sa_flags = SA_ONSTACK};
    sigfillset(&action.sa_mask);
    sigaction(number, &action, NULL);
}

/* The set of all that is heard while waiting alone. */
static void each_ours(void (*what)(int number, sigset_t *set), sigset_t *set)
{
    for (size_t i = 0; i < COUNT(ends); i++)
        what(ends[i], set);
    for (size_t i = 0; i < COUNT(others); i++)
        what(others[i], set);
    for (int number = SIGRTMIN; number <= SIGRTMAX; number++)
        what(number, set);
}

static void catch_one(int number, sigset_t *blocked)
{
    catch (number, on_signal);
    sigaddset(blocked, number);
}

static void release_one(int number, sigset_t *set)
{
    (void)set;
    signal(number, SIG_DFL);
}

static void hear_one(int number, sigset_t *heard)
{
    sigdelset(heard, number);
}

static void catch_all(void)
{
    static char stack[256 << 10]; /* of its own: the other may be what ran out */
    sigset_t blocked;
    sigaltstack(&(stack_t){.ss_sp = stack, .ss_size = sizeof stack}, NULL);
    sigemptyset(&blocked);
    each_ours(catch_one, &blocked);
    sigprocmask(SIG_BLOCK, &blocked, &unblocked);
    each_ours(hear_one, &unblocked);
    for (size_t i = 0; i < COUNT(crashes); i++)
        catch (crashes[i], on_crash);
    signal(SIGPIPE, SIG_IGN);
}

static void release_all(void)
{
    each_ours(release_one, NULL);
    let_go_of_crashes();
    sigprocmask(SIG_SETMASK, &unblocked, NULL);
}

static void add_leaving(const char *bytes)
{
    if (bytes == NULL || bytes == (char *)-1)
        return;
    size_t length = strlen(bytes);
    if (leave_length + length >= sizeof leave_bytes)
        return;
    memcpy(leave_bytes + leave_length, bytes, length);
    leave_length += length;
}

/* What a handler will write, made out while it is still safe to ask curses. */
static void prepare_leaving(const Curses *curses)
{
    leave_length = 0;
    if (curses->pastes)
        add_leaving(paste_off);
    add_leaving(exit_attribute_mode);
    add_leaving(orig_pair);
    add_leaving(keypad_local);
    add_leaving(exit_ca_mode);
    add_leaving(cursor_normal);
    add_leaving("\r\n");
}

static void ask_size(int *columns, int *rows)
{
    struct winsize size;
    if (ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) != 0 || size.ws_col == 0 || size.ws_row == 0) {
        *columns = tigetnum("cols") > 0 ? tigetnum("cols") : 80;
        *rows = tigetnum("lines") > 0 ? tigetnum("lines") : 24;
        return;
    }
    *columns = size.ws_col;
    *rows = size.ws_row;
}

static void take_modes(Curses *curses)
{
    raw();
    noecho();
    nonl();
    keypad(stdscr, TRUE);
    leaveok(stdscr, FALSE);
    scrollok(stdscr, FALSE);
    typeahead(-1);
    if (curses->pastes)
        write_all(STDOUT_FILENO, paste_on, sizeof paste_on - 1);
    taken = 1;
}

static void curses_size(Term *term, int *columns, int *rows)
{
    (void)term;
    ask_size(columns, rows);
    if (*columns != COLS || *rows != LINES)
        resizeterm(*rows, *columns);
}

static int64_t curses_now(Term *term)
{
    (void)term;
    struct timespec time;
    clock_gettime(CLOCK_MONOTONIC, &time);
    return (int64_t)time.tv_sec * 1000 + time.tv_nsec / 1000000;
}

static bool take_flag(volatile sig_atomic_t *flag)
{
    bool set = *flag != 0;
    *flag = 0;
    return set;
}

static HappeningKind flagged(void)
{
    if (flag_hang_up)
        return HAPPENED_GONE;
    if (flag_stop)
        return HAPPENED_STOP;
    if (take_flag(&flag_suspend))
        return HAPPENED_SUSPEND;
    if (take_flag(&flag_resume))
        return HAPPENED_RESUME;
    if (take_flag(&flag_resize))
        return HAPPENED_RESIZE;
    return HAPPENED_NOTHING;
}

/* Nothing to read though there should be: is the terminal gone, or was it only a hiccup? */
static bool is_gone(void)
{
    struct pollfd poller = {.fd = STDIN_FILENO, .events = POLLIN};
    return poll(&poller, 1, 0) > 0 && (poller.revents & (POLLHUP | POLLERR | POLLNVAL)) != 0;
}

static Happening key_happened(Curses *curses, Key key)
{
    Happening happening = {.kind = HAPPENED_KEY, .key = key};
    if (key == PRESS_PASTE)
        happening.text = decoder_pasted(&curses->decoder);
    return happening;
}

/* Waits for bytes or a signal; false when neither came in time. Handlers run in here only. */
static bool wait_for_bytes(int milliseconds)
{
    fd_set files;
    FD_ZERO(&files);
    FD_SET(STDIN_FILENO, &files);
    struct timespec time = {.tv_sec = milliseconds / 1000, .tv_nsec = (long)(milliseconds % 1000) * 1000000};
    return pselect(STDIN_FILENO + 1, &files, NULL, NULL, milliseconds < 0 ? NULL : &time, &unblocked) > 0;
}

/* The next key out of the bytes read already. */
static Key next_key(Curses *curses)
{
    while (curses->input_at < curses->input_count) {
        Key key = decoder_take(&curses->decoder, curses->input[curses->input_at++]);
        if (key != PRESS_NONE)
            return key;
    }
    return PRESS_NONE;
}

static Happening curses_wait(Term *term, int milliseconds)
{
    Curses *curses = (Curses *)term;
    for (;;) {
        Key key = next_key(curses);
        if (key != PRESS_NONE)
            return key_happened(curses, key);
        bool escaping = decoder_waits(&curses->decoder);
        bool bytes = wait_for_bytes(escaping ? curses->escape_delay : milliseconds);
        HappeningKind kind = flagged();
        if (kind != HAPPENED_NOTHING)
            return (Happening){.kind = kind};
        if (!bytes) {
            if (escaping && (key = decoder_settle(&curses->decoder)) != PRESS_NONE)
                return key_happened(curses, key);
            if (escaping)
                continue;
            return (Happening){.kind = HAPPENED_NOTHING};
        }
        ssize_t count = read(STDIN_FILENO, curses->input, sizeof curses->input);
        if (count == 0 || (count < 0 && errno != EINTR && errno != EAGAIN && (errno == EIO || is_gone())))
            return (Happening){.kind = HAPPENED_GONE};
        curses->input_at = 0;
        curses->input_count = count > 0 ? (size_t)count : 0;
        if (count < 0)
            return (Happening){.kind = HAPPENED_NOTHING};
    }
}

static void set_style(int style, bool colour)
{
    Look look = style_look(style, colour);
    attr_t attributes = A_NORMAL;
    if (look.bold)
        attributes |= A_BOLD;
    if (look.dim)
        attributes |= A_DIM;
    if (look.reverse)
        attributes |= A_REVERSE;
    if (look.underline)
        attributes |= A_UNDERLINE;
    attr_set(attributes, (short)look.pair, NULL);
}

/* Cells of one style go out together; a mark over a character needs a cell of its own. */
static void show_row(const Curses *curses, const Grid *grid, int y)
{
    wchar_t run[256];
    int count = 0, style = -1;
    move(y, 0);
    for (int x = 0; x < grid->columns; x++) {
        const Cell *cell = grid_at(grid, x, y);
        if (cell->code == 0)
            continue;
        if (cell->style != style || count + 2 >= (int)(sizeof run / sizeof *run)) {
            addnwstr(run, count);
            count = 0;
            style = cell->style;
            set_style(style, curses->term.colour);
        }
        run[count++] = (wchar_t)cell->code;
        if (cell->mark != 0)
            run[count++] = (wchar_t)cell->mark;
    }
    addnwstr(run, count);
}

static void curses_show(Term *term, const Grid *grid)
{
    const Curses *curses = (const Curses *)term;
    erase();
    for (int y = 0; y < grid->rows; y++)
        show_row(curses, grid, y);
    move(grid->cursor_y, grid->cursor_x);
    wnoutrefresh(stdscr);
    doupdate();
}

static void curses_redraw(Term *term)
{
    Curses *curses = (Curses *)term;
    reset_prog_mode(); /* a shell in between may have set its own */
    take_modes(curses);
    clearok(stdscr, TRUE);
}

static void give_back(Curses *curses)
{
    if (!taken)
        return;
    if (curses->pastes)
        write_all(STDOUT_FILENO, paste_off, sizeof paste_off - 1);
    curs_set(1);
    endwin();
    tcsetattr(STDIN_FILENO, TCSADRAIN, &sane);
    taken = 0;
}

static void curses_suspend(Term *term)
{
    Curses *curses = (Curses *)term;
    give_back(curses);
    sigset_t stop;
    sigemptyset(&stop);
    sigaddset(&stop, SIGTSTP);
    signal(SIGTSTP, SIG_DFL);
    raise(SIGTSTP);
    sigprocmask(SIG_UNBLOCK, &stop, NULL); /* stops here */
    sigprocmask(SIG_BLOCK, &stop, NULL);
    catch (SIGTSTP, on_signal);
    curses_redraw(term);
}

static void curses_finish(Term *term)
{
    Curses *curses = (Curses *)term;
    give_back(curses);
    delscreen(curses->screen);
    panic_hook(NULL);
    release_all();
    decoder_finish(&curses->decoder);
    free(curses);
}

static void start_colours(Curses *curses)
{
    const char *none = getenv("NO_COLOR");
    curses->term.colour = (none == NULL || none[0] == '\0') && has_colors() && start_color() == OK && COLORS >= 8 &&
                          COLOR_PAIRS >= STYLE_PAIRS && use_default_colors() == OK;
    if (!curses->term.colour)
        return;
    for (int pair = 1; pair < STYLE_PAIRS; pair++) {
        int front, back;
        style_pair(pair, COLORS, &front, &back);
        init_pair((short)pair, (short)front, (short)back);
    }
}

/* TERM says what can be drawn on; without it nothing can. */
static bool can_draw(Err *err)
{
    const char *name = getenv("TERM");
    if (!isatty(STDIN_FILENO) || !isatty(STDOUT_FILENO))
        return err_set(
            err, ERR_USAGE,
            "the editor needs a terminal to draw on; without one use the commands: datumrow rows FILE prints "
            "the row sheet, datumrow check FILE the faults, datumrow --help names them all");
    if (name == NULL || name[0] == '\0' || strcmp(name, "dumb") == 0)
        return err_set(
            err, ERR_USAGE,
            "%s, so the editor cannot draw; set TERM to what your terminal is (often xterm-256color), or use the "
            "commands: "
            "datumrow rows FILE prints the row sheet, datumrow check FILE the faults, datumrow --help names them all",
            name == NULL || name[0] == '\0' ? "TERM is not set" : "TERM is dumb");
    int status;
    if (setupterm(name, STDOUT_FILENO, &status) != OK)
        return err_set(err, ERR_USAGE,
                       "this system does not know the terminal TERM names; set TERM to one it knows (often "
                       "xterm-256color), or use the "
                       "commands: datumrow rows FILE prints the row sheet, datumrow --help names them all");
    if (cursor_address == NULL)
        return err_set(
            err, ERR_USAGE,
            "this terminal cannot place its cursor, so the editor cannot draw; use the commands: datumrow rows "
            "FILE prints the row sheet, datumrow --help names them all");
    return true;
}

static int escape_delay(void)
{
    const char *given = getenv("ESCDELAY");
    if (given == NULL || given[0] < '0' || given[0] > '9')
        return ESCAPE_DELAY;
    long delay = strtol(given, NULL, 10);
    return delay < 1 ? 1 : delay > ESCAPE_DELAY_MOST ? ESCAPE_DELAY_MOST : (int)delay;
}

Term *term_curses(Err *err)
{
    if (!can_draw(err))
        return NULL;
    Curses *curses = calloc(1, sizeof *curses);
    if (curses == NULL)
        panic_no_memory();
    tcgetattr(STDIN_FILENO, &sane);
    catch_all();
    use_env(FALSE);
    curses->escape_delay = escape_delay();
    set_escdelay(curses->escape_delay);
    curses->screen = newterm(NULL, stdout, stdin);
    if (curses->screen == NULL) {
        release_all();
        free(curses);
        err_set(err, ERR_USAGE, "the terminal cannot be drawn on; use the commands: datumrow --help names them");
        return NULL;
    }
    decoder_init(&curses->decoder);
    curses->term = (Term){.utf8 = false,
                          .size = curses_size,
                          .wait = curses_wait,
                          .show = curses_show,
                          .now = curses_now,
                          .suspend = curses_suspend,
                          .redraw = curses_redraw,
                          .finish = curses_finish};
    curses->pastes = cursor_address[0] == '\x1b' && cursor_address[1] == '[';
    start_colours(curses);
    prepare_leaving(curses);
    panic_hook(on_panic);
    take_modes(curses);
    return &curses->term;
}

void term_last_words(const char *words)
{
    char line[sizeof last_words];
    snprintf(line, sizeof line, "%s", words);
    memcpy(last_words, line, sizeof last_words);
}

void term_last_act(void (*act)(void *with), void *with)
{
    last_act = act;
    last_act_with = with;
}
