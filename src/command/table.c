#include "command/table.h"

#include <string.h>
#include <strings.h>

#include "base/nearest.h"

/* In the order in which the job is done; --help, completions and the manual page keep it. */
static const Command commands[] = {
    {"new", "ask the few sizes of a new wall, write FILE, open the editor", 0, NULL},
    {"all", "every sheet that work is done by, the first page in front", FORMATS_ALL, sheet_all},
    {"first", "first page: plan number, order of work, stock, hazards", FORMATS_ALL, sheet_first},
    {"rows", "row sheet, in hanging order: marks, rips, pieces, cutouts", FORMATS_ALL, sheet_rows},
    {"cuts", "cut sheet: every board, what is cut from it, in which order", FORMATS_ALL, sheet_cuts},
    {"batch", "batch sheet: the same pieces by stop, fence and saw angle", FORMATS_ALL, sheet_batch},
    {"pole", "story pole: every mark from the level line", FORMATS_ALL, sheet_pole},
    {"nails", "nailing page: how planks are held, what needs more", FORMATS_ALL, sheet_nails},
    {"bill", "materials: boards, trim, fasteners, adhesive, finish", FORMATS_ALL, sheet_bill},
    {"mill", "mill sheet: rough boards to planks", FORMATS_ALL, sheet_mill},
    {"draw", "elevation, drawn", FORMATS_ALL, sheet_draw},
    {"check", "hazards, faults and cautions only", FORMATS_ALL, sheet_check},
    {"starts", "start heights worth considering, best first", FORMATS_ALL, sheet_starts},
    {"plan", "the plan as data (YAML, nanometres)", 0, NULL},
};

static const Option options[] = {
    {OPTION_AS, 0, "as", "FORMAT", "text, pdf, svg or csv; else as OUT ends, else text"},
    {OPTION_OUTPUT, 'o', "output", "OUT", "write to the file OUT, not to standard output"},
    {OPTION_PRINT, 0, "print", NULL, "hand the sheet to the printer, unscaled (lp)"},
    {OPTION_HELP, 'h', "help", NULL, "show this"},
    {OPTION_VERSION, 'V', "version", NULL, "show the version"},
};

enum { COMMAND_COUNT = sizeof commands / sizeof *commands, OPTION_COUNT = sizeof options / sizeof *options };

static const struct {
    Format format;
    const char *word, *ending;
} formats[] = {{FORMAT_TEXT, "text", ".txt"},
               {FORMAT_PDF, "pdf", ".pdf"},
               {FORMAT_SVG, "svg", ".svg"},
               {FORMAT_CSV, "csv", ".csv"}};

int table_command_count(void)
{
    return COMMAND_COUNT;
}

const Command *table_command(int index)
{
    return &commands[index];
}

const Command *table_command_named(const char *name)
{
    for (int i = 0; i < COMMAND_COUNT; i++)
        if (strcmp(commands[i].name, name) == 0)
            return &commands[i];
    return NULL;
}

const Command *table_command_near(const char *name)
{
    const char *names[COMMAND_COUNT];
    for (int i = 0; i < COMMAND_COUNT; i++)
        names[i] = commands[i].name;
    int index = nearest_word(name, names, COMMAND_COUNT);
    return index < 0 ? NULL : &commands[index];
}

int table_option_count(void)
{
    return OPTION_COUNT;
}

const Option *table_option(int index)
{
    return &options[index];
}

Format table_format(const char *word)
{
    for (size_t i = 0; i < sizeof formats / sizeof *formats; i++)
        if (strcmp(formats[i].word, word) == 0)
            return formats[i].format;
    return FORMAT_NONE;
}

const char *table_format_word(Format format)
{
    for (size_t i = 0; i < sizeof formats / sizeof *formats; i++)
        if (formats[i].format == format)
            return formats[i].word;
    return "";
}

const char *table_ending(const char *path)
{
    const char *slash = strrchr(path, '/');
    const char *name = slash == NULL ? path : slash + 1;
    const char *point = strrchr(name, '.');
    return point == NULL || point == name || point[1] == '\0' ? NULL : point;
}

Format table_format_of_file(const char *path)
{
    const char *ending = table_ending(path);
    for (size_t i = 0; ending != NULL && i < sizeof formats / sizeof *formats; i++)
        if (strcasecmp(ending, formats[i].ending) == 0)
            return formats[i].format;
    return FORMAT_NONE;
}

bool table_ending_known(const Command *command, const char *ending)
{
    if (command->formats == 0)
        return strcasecmp(ending, ".yaml") == 0 || strcasecmp(ending, ".yml") == 0;
    for (size_t i = 0; i < sizeof formats / sizeof *formats; i++)
        if ((command->formats & (unsigned)formats[i].format) != 0 && strcasecmp(ending, formats[i].ending) == 0)
            return true;
    return false;
}

const char *table_endings(const Command *command)
{
    return command->formats == 0 ? ".yaml or .yml" : ".txt, .pdf, .svg or .csv";
}
