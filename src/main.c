/* Picks the screen or a command, once the ground is firm. */
#include "command/command.h"
#include "screen/screen.h"

#include <fcntl.h>
#include <signal.h>
#include <unistd.h>

/* What was closed stays of no use, but is taken, so that no file that is opened later gets its number and then what is
 * told to people. A file larger than may be is an error to tell, as a full disk is, and not the end. */
static void stand_firm(void)
{
    for (int file = STDIN_FILENO; file <= STDERR_FILENO; file++)
        if (fcntl(file, F_GETFD) == -1)
            (void)open("/dev/null", file == STDIN_FILENO ? O_WRONLY : O_RDONLY);
    signal(SIGXFSZ, SIG_IGN);
}

int main(int count, char **words)
{
    stand_firm();
    CommandResult result = command_run(count, words);
    switch (result.next) {
    case COMMAND_OPEN: return screen_run(result.path, SCREEN_OPEN);
    case COMMAND_NEW: return screen_run(result.path, SCREEN_NEW);
    case COMMAND_DONE: break;
    }
    return result.status;
}
