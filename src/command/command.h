/*
 * The command line: the words behind `datumrow` understood, and done where they name a command. It knows nothing of the
 * screen: where the words ask for the editor, that is handed back to main.
 */
#ifndef COMMAND_COMMAND_H
#define COMMAND_COMMAND_H

typedef enum CommandNext {
    COMMAND_DONE, /* leave with `status` */
    COMMAND_OPEN, /* open the editor on `path`; NULL: on its first screen */
    COMMAND_NEW   /* the editor asks the few sizes of a new wall and writes `path`, which does not exist yet */
} CommandNext;

typedef struct CommandResult {
    CommandNext next;
    int status; /* 0 done; 1 done, and the wall has faults; 2 wrong usage; 3 a file could not be read or written */
    const char *path; /* one of `words`, or NULL */
} CommandResult;

/* `words` are those of main, the program's own name first. Results go to standard output, messages to standard error.
 */
CommandResult command_run(int count, char **words);

#endif
