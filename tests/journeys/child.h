/*
 * The program at the other end of a bare pseudo-terminal: started, typed at, resized, signalled, listened to. Waiting
 * is always for something to happen, with a limit; nothing sleeps.
 */
#ifndef TESTS_JOURNEYS_CHILD_H
#define TESTS_JOURNEYS_CHILD_H

#include "base/text.h"

#include <stdbool.h>
#include <sys/types.h>
#include <termios.h>

typedef struct Child {
    pid_t process; /* the program */
    pid_t shell;   /* its parent: without one the system would not let it be stopped */
    int reports;   /* what the shell tells of it */
    int master;
    int slave;           /* kept open, so that the modes can be asked for when the program is gone */
    struct termios sane; /* as the program found it */
    Text heard;          /* everything it wrote */
    size_t heeded;       /* up to here it was waited for already */
    char folder[64];     /* its own: state, and the wall file */
    char wall[100];
    int status; /* as waitpid gives it, once it is over */
    bool over;
    bool guest; /* the folder is another one's */
} Child;

/* The program with the words (NULL at the end) behind its name, on a terminal of this kind and size; `wall.yaml` lies
 * in its folder. */
Child *child_start(const char *terminal, int columns, int rows, const char *const *words);
/* The same on its own copy of the journeys' wall. */
Child *child_on_wall(const char *terminal, int columns, int rows);
/* Once it is over: the program again on the same terminal, folder and wall. */
void child_again(Child *child, const char *terminal);
/* Another one on the wall of `first`, on a terminal of its own. */
Child *child_beside(const Child *first, const char *terminal);
void child_free(Child *child);

/* Somebody else writes the file: `words` in it become `others`. */
void child_write(Child *child, const char *path, const char *words, const char *others);

void child_type(Child *child, const char *bytes);
void child_resize(Child *child, int columns, int rows);
void child_signal(Child *child, int number);
void child_hang_up(Child *child); /* the terminal is closed under it */

/* From now on it gets no more memory than it has. False where this system cannot do that. */
bool child_starve(Child *child);

/* Reads until the program wrote `words` behind what was heeded before; false after ten seconds. */
bool child_says(Child *child, const char *words);

/* Until it is over, or stopped; false after ten seconds. */
bool child_ends(Child *child);
bool child_stops(Child *child);

/* The terminal's modes are what they were before the program came. */
bool child_modes_are_sane(const Child *child);

/* The file's text; "" where there is none. Dies at the next call. */
const char *child_file(Child *child, const char *path);

/* Until the file holds the words; false after ten seconds. */
bool child_file_holds(Child *child, const char *path, const char *words);

/* Path of the recovery copy under the child's folder, or NULL. */
const char *child_recovery(Child *child);

#endif
