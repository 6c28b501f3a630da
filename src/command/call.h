/*
 * The words behind `datumrow` understood: a command, options, a file. The habits are those of GNU programs: options
 * anywhere, long ones cut short as long as they are clear, `--name=value` and `--name value`, letters joined, `--` ends
 * them, `-` is standard input. It looks at no file and prints nothing.
 */
#ifndef COMMAND_CALL_H
#define COMMAND_CALL_H

#include "base/err.h"
#include "command/table.h"

typedef struct Call {
    const Command *command; /* NULL: the editor */
    const char *path;       /* the wall file; NULL where none was named */
    Format format;          /* as asked for by --as or by the ending of `out`; FORMAT_NONE where neither says */
    const char *out;        /* NULL or "-": standard output */
    bool print;
    bool help, version;
    bool path_maybe_command; /* the editor's file was the one word, and it may be a command written wrongly */
} Call;

/* False, with ERR_USAGE, where they cannot be understood. With help or version asked for, nothing else is held against
 * them. */
bool call_understand(int count, char **words, Call *out, Err *err);

#endif
