#include "command/call.h"

#include <string.h>

#include "base/nearest.h"

typedef struct CallReading {
    char **words;
    int count;
    int at; /* the next word to look at */
    Call call;
    const char *as;
    const char *operands[3]; /* command and file; one more is one too many */
    int operand_count;
    bool only_operands; /* behind `--` */
    bool first_after_dashes;
} CallReading;

/* ---- options ---- */

static bool take(CallReading *reading, const Option *option, const char *argument, Err *err)
{
    switch (option->id) {
    case OPTION_AS:
        reading->as = argument;
        reading->call.format = table_format(argument);
        if (reading->call.format == FORMAT_NONE)
            return err_set(err, ERR_USAGE, "--as %.40s: there is no such form; write text, pdf, svg or csv", argument);
        return true;
    case OPTION_OUTPUT:
        if (argument[0] == '\0')
            return err_set(err, ERR_USAGE, "-o needs the name of a file to write to; - is standard output");
        reading->call.out = argument;
        return true;
    case OPTION_PRINT: reading->call.print = true; return true;
    case OPTION_HELP: reading->call.help = true; return true;
    case OPTION_VERSION: reading->call.version = true; return true;
    }
    return true;
}

/* The word behind an option that needs one. */
static const char *next_word(CallReading *reading)
{
    return reading->at < reading->count ? reading->words[reading->at++] : NULL;
}

static bool no_such_option(const char *word, size_t length, Err *err)
{
    const char *names[16];
    char name[32];
    int count = table_option_count();
    for (int i = 0; i < count; i++)
        names[i] = table_option(i)->name;
    memcpy(name, word, length < sizeof name ? length : sizeof name - 1);
    name[length < sizeof name ? length : sizeof name - 1] = '\0';
    int near = nearest_word(name, names, count);
    if (near >= 0)
        return err_set(err, ERR_USAGE, "there is no option --%s; did you mean --%s?", name, names[near]);
    return err_set(err, ERR_USAGE, "there is no option --%s; see datumrow --help", name);
}

/* An option's whole name, or a beginning that only one of them has. */
static bool take_long(CallReading *reading, const char *word, Err *err)
{
    const char *value = strchr(word, '=');
    size_t length = value != NULL ? (size_t)(value - word) : strlen(word);
    const Option *found = NULL;
    for (int i = 0; length > 0 && i < table_option_count(); i++) {
        const Option *option = table_option(i);
        if (strncmp(option->name, word, length) != 0)
            continue;
        bool whole = strlen(option->name) == length;
        if (found != NULL && !whole)
            return err_set(err, ERR_USAGE, "--%.*s could be --%s or --%s; write more of it", (int)length, word,
                           found->name, option->name);
        found = option;
        if (whole)
            break;
    }
    if (found == NULL)
        return no_such_option(word, length, err);
    if (found->argument == NULL) {
        if (value != NULL)
            return err_set(err, ERR_USAGE, "--%s takes no value", found->name);
        return take(reading, found, "", err);
    }
    const char *argument = value != NULL ? value + 1 : next_word(reading);
    if (argument == NULL)
        return err_set(err, ERR_USAGE, "--%s needs %s behind it: %s", found->name, found->argument, found->summary);
    return take(reading, found, argument, err);
}

static bool take_letters(CallReading *reading, const char *letters, Err *err)
{
    for (const char *letter = letters; *letter != '\0'; letter++) {
        const Option *found = NULL;
        for (int i = 0; i < table_option_count(); i++)
            if (table_option(i)->letter == *letter)
                found = table_option(i);
        if (found == NULL) {
            bool shown = *letter > ' ' && *letter < 127;
            return err_set(err, ERR_USAGE, "there is no option -%c; see datumrow --help", shown ? *letter : '?');
        }
        if (found->argument == NULL) {
            if (!take(reading, found, "", err))
                return false;
            continue;
        }
        const char *argument = letter[1] != '\0' ? letter + 1 : next_word(reading);
        if (argument == NULL)
            return err_set(err, ERR_USAGE, "-%c needs %s behind it: %s", found->letter, found->argument,
                           found->summary);
        return take(reading, found, argument, err);
    }
    return true;
}

static bool take_word(CallReading *reading, const char *word, Err *err)
{
    if (!reading->only_operands && strcmp(word, "--") == 0) {
        reading->only_operands = true;
        return true;
    }
    if (!reading->only_operands && strncmp(word, "--", 2) == 0)
        return take_long(reading, word + 2, err);
    if (!reading->only_operands && word[0] == '-' && word[1] != '\0')
        return take_letters(reading, word + 1, err);
    if (reading->operand_count == 0)
        reading->first_after_dashes = reading->only_operands;
    if (reading->operand_count < 3)
        reading->operands[reading->operand_count++] = word;
    return true;
}

/* ---- operands ---- */

/* The first word is a command where it is the name of one, unless it stands behind `--`. */
static bool understand_operands(CallReading *reading, Err *err)
{
    Call *call = &reading->call;
    int next = 0;
    if (reading->operand_count > 0 && !reading->first_after_dashes)
        call->command = table_command_named(reading->operands[0]);
    if (call->command != NULL)
        next = 1;
    if (reading->operand_count > next)
        call->path = reading->operands[next];
    if (call->command == NULL && reading->operand_count > 1 && !reading->first_after_dashes) {
        const Command *near = table_command_near(reading->operands[0]);
        if (near != NULL)
            return err_set(err, ERR_USAGE, "there is no command %.60s; did you mean %s?", reading->operands[0],
                           near->name);
        return err_set(err, ERR_USAGE, "there is no command %.60s; see datumrow --help", reading->operands[0]);
    }
    if (reading->operand_count > next + 1)
        return err_set(err, ERR_USAGE, "one wall file at a time; %.200s is one too many", reading->operands[next + 1]);
    if (call->command != NULL && call->path == NULL)
        return err_set(err, ERR_USAGE, "which wall file? write datumrow %s FILE", call->command->name);
    call->path_maybe_command = call->command == NULL && call->path != NULL && !reading->first_after_dashes;
    return true;
}

/* What OUT ends in says the form, where --as does not; an ending of no form is a slip, not a wish for text. */
static bool understand_ending(CallReading *reading, Err *err)
{
    Call *call = &reading->call;
    const char *ending = call->out == NULL ? NULL : table_ending(call->out);
    if (ending == NULL || reading->as != NULL)
        return true;
    if (strcmp(call->out, call->path) == 0)
        return true; /* refused where files are looked at, for a better reason */
    if (!table_ending_known(call->command, ending))
        return err_set(err, ERR_USAGE,
                       "-o %.200s: %s writes no form that ends in %.20s; write a name that ends in %s%s", call->out,
                       call->command->name, ending, table_endings(call->command),
                       call->command->formats == 0 ? "" : ", or say the form with --as");
    if (call->command->formats != 0)
        call->format = table_format_of_file(call->out);
    return true;
}

static bool check_forms(CallReading *reading, Err *err)
{
    const Call *call = &reading->call;
    bool to_file = call->out != NULL && strcmp(call->out, "-") != 0;
    if (call->command == NULL || (call->command->sheet == NULL && strcmp(call->command->name, "new") == 0)) {
        const char *option = reading->as != NULL ? "--as" : call->out != NULL ? "-o" : call->print ? "--print" : NULL;
        if (option != NULL)
            return err_set(err, ERR_USAGE, "%s goes with a sheet: datumrow rows %s%s FILE", option, option,
                           reading->as != NULL ? " pdf" : (call->print ? "" : " OUT"));
        return true;
    }
    if (call->command->formats == 0 && (reading->as != NULL || call->print))
        return err_set(err, ERR_USAGE, "%s has one form; leave %s away", call->command->name,
                       reading->as != NULL ? "--as" : "--print");
    if (!understand_ending(reading, err))
        return false;
    if (call->print && (call->format == FORMAT_CSV || call->format == FORMAT_SVG))
        return err_set(
            err, ERR_USAGE, "%s is nothing to print; print it as pdf or text: %s", table_format_word(call->format),
            reading->as != NULL ? "leave --as away, or write --as pdf or --as text" : "let -o OUT end in .pdf or .txt");
    if (call->print && call->out != NULL && !to_file)
        return err_set(err, ERR_USAGE, "--print and -o - do not go together; leave one of them away");
    return true;
}

bool call_understand(int count, char **words, Call *out, Err *err)
{
    CallReading reading = {.words = words, .count = count, .at = 1};
    bool good = true;
    while (good && reading.at < count)
        good = take_word(&reading, words[reading.at++], err);
    if (good && !reading.call.help && !reading.call.version)
        good = understand_operands(&reading, err) && check_forms(&reading, err);
    *out = reading.call;
    return good;
}
