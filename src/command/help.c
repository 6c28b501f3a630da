#include "command/help.h"

#include <stdio.h>

#include "command/table.h"
#include "config.h"

enum { SUMMARY = 20 };

static void put_row(Text *out, const char *what, const char *summary)
{
    size_t from = out->length;
    text_format(out, "  %s", what);
    text_pad(out, from, SUMMARY);
    text_format(out, "%s\n", summary);
}

void help_write(Text *out)
{
    char what[64];
    text_put(out, "Usage: datumrow [COMMAND] [OPTION]... [FILE]  (a wall file; - is standard input)\n");
    put_row(out, "[FILE]", "open the editor on FILE; without FILE, on its first screen");
    for (int i = 0; i < table_command_count(); i++) {
        snprintf(what, sizeof what, "%s FILE", table_command(i)->name);
        put_row(out, what, table_command(i)->summary);
    }
    for (int i = 0; i < table_option_count(); i++) {
        const Option *option = table_option(i);
        if (option->id == OPTION_VERSION) /* stands with --help */
            continue;
        const char *argument = option->argument == NULL ? "" : option->argument;
        const char *between = option->argument == NULL ? "" : " ";
        if (option->letter != 0)
            snprintf(what, sizeof what, "-%c, --%s%s%s", option->letter, option->name, between, argument);
        else
            snprintf(what, sizeof what, "--%s%s%s", option->name, between, argument);
        put_row(out, what, option->id == OPTION_HELP ? "show this; -V, --version: show the version" : option->summary);
    }
    text_put(out, "Examples: datumrow reading-wall.yaml\n"
                  "  datumrow rows --as pdf -o rows.pdf reading-wall.yaml\n"
                  "  datumrow cuts --print reading-wall.yaml\n"
                  "Exit status: 0 done; 1 done, the wall has faults; 2 usage; 3 file trouble.\n");
}

void help_version(Text *out)
{
    text_format(out, "datumrow %s\n", DATUMROW_VERSION);
    text_format(out, "PDF and SVG: %s\n", DATUMROW_PDF ? "yes" : "not built in");
}
