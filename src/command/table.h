/*
 * The commands and options there are: one table that the parser reads, --help prints, and the completions and the
 * manual page are tested against. It knows nothing of how they are carried out beyond which sheet a command makes.
 */
#ifndef COMMAND_TABLE_H
#define COMMAND_TABLE_H

#include "sheet/sheets/sheets.h"

#include <stdbool.h>

typedef enum Format { FORMAT_NONE = 0, FORMAT_TEXT = 1, FORMAT_PDF = 2, FORMAT_SVG = 4, FORMAT_CSV = 8 } Format;

enum { FORMATS_ALL = FORMAT_TEXT | FORMAT_PDF | FORMAT_SVG | FORMAT_CSV };

typedef Sheet *SheetMaker(Arena *arena, const Job *job, const char *date);

typedef struct Command {
    const char *name;
    const char *summary; /* for --help: what one gets */
    unsigned formats;    /* Format, or-ed; 0: it has one form of its own */
    SheetMaker *sheet;   /* NULL: `new`, `plan` */
} Command;

typedef enum OptionId { OPTION_AS, OPTION_OUTPUT, OPTION_PRINT, OPTION_HELP, OPTION_VERSION } OptionId;

typedef struct Option {
    OptionId id;
    char letter;          /* 0 where it has none */
    const char *name;     /* without the dashes */
    const char *argument; /* "OUT"; NULL where it takes none */
    const char *summary;
} Option;

int table_command_count(void);
const Command *table_command(int index);
/* The command of that name, or NULL. */
const Command *table_command_named(const char *name);
/* The command of the nearest name, or NULL where none is near. */
const Command *table_command_near(const char *name);

int table_option_count(void);
const Option *table_option(int index);

/* "text", "pdf", "svg", "csv"; FORMAT_NONE where the word is none of them. */
Format table_format(const char *word);
const char *table_format_word(Format format);
/* By the ending of a file's name: .txt, .pdf, .svg, .csv, small or capital; else FORMAT_NONE. */
Format table_format_of_file(const char *path);
/* The ending of a file's name, from its last point on; NULL where it has none: "rows", ".rows", "sheets.d/rows". */
const char *table_ending(const char *path);
/* Whether `command` writes a form of that ending; one with a form of its own writes YAML. */
bool table_ending_known(const Command *command, const char *ending);
/* ".txt, .pdf, .svg or .csv": those, for messages. */
const char *table_endings(const Command *command);

#endif
