#include "command/command.h"

#include <stdio.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "base/panic.h"
#include "base/text.h"
#include "command/help.h"
#include "command/produce.h"

static CommandResult done(int status)
{
    return (CommandResult){.next = COMMAND_DONE, .status = status};
}

static CommandResult refuse(const Err *err)
{
    return done(produce_tell(err));
}

static CommandResult show(void (*write)(Text *out))
{
    Text text;
    text_init(&text);
    write(&text);
    Err err = {0};
    bool written = produce_on_standard_output(&text, &err);
    text_finish(&text);
    return written ? done(0) : refuse(&err);
}

static bool exists(const char *path)
{
    struct stat status;
    return lstat(path, &status) == 0;
}

/* The editor asks and writes; what stands against it is told here, before the screen changes. */
static CommandResult new_wall(const char *path)
{
    Err err = {0};
    if (strcmp(path, "-") == 0) {
        err_set(&err, ERR_USAGE, "a new wall needs a file of its own; write datumrow new FILE");
        return refuse(&err);
    }
    if (exists(path)) {
        err_set(&err, ERR_SYSTEM, "there is such a file already; choose another name, or open it with datumrow FILE");
        err_at(&err, path, 0, 0);
        return refuse(&err);
    }
    if (!isatty(STDIN_FILENO) || !isatty(STDOUT_FILENO)) {
        err_set(&err, ERR_USAGE,
                "new asks for sizes, and there is no terminal to ask on; write the wall file by hand, "
                "see man 5 datumrow");
        return refuse(&err);
    }
    return (CommandResult){.next = COMMAND_NEW, .path = path};
}

static CommandResult open_editor(const Call *call)
{
    Err err = {0};
    if (call->path != NULL && strcmp(call->path, "-") == 0) {
        err_set(&err, ERR_USAGE, "the editor needs a file that it can save to; the commands read standard input");
        return refuse(&err);
    }
    if (call->path != NULL && call->path_maybe_command && !exists(call->path)) {
        const Command *near = table_command_near(call->path);
        if (near != NULL) {
            err_set(&err, ERR_USAGE, "there is no file and no command %.60s; did you mean datumrow %s FILE?",
                    call->path, near->name);
            return refuse(&err);
        }
    }
    return (CommandResult){.next = COMMAND_OPEN, .path = call->path};
}

/* Outside an attempt: one line, the status of what could not be done, and nothing half written. */
static void end_at_once(const char *message)
{
    fprintf(stderr, "datumrow: %s\n", message);
    _exit(3);
}

CommandResult command_run(int count, char **words)
{
    panic_hook(end_at_once);
    Call call = {0};
    Err err = {0};
    if (!call_understand(count, words, &call, &err))
        return refuse(&err);
    if (call.help)
        return show(help_write);
    if (call.version)
        return show(help_version);
    if (call.command == NULL)
        return open_editor(&call);
    if (strcmp(call.command->name, "new") == 0)
        return new_wall(call.path);
    return done(produce(&call));
}
