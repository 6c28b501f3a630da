/* Picks the screen or a command, nothing else. */
#include "command/command.h"
#include "screen/screen.h"

int main(int count, char **words)
{
    CommandResult result = command_run(count, words);
    switch (result.next) {
    case COMMAND_OPEN: return screen_run(result.path, SCREEN_OPEN);
    case COMMAND_NEW: return screen_run(result.path, SCREEN_NEW);
    case COMMAND_DONE: break;
    }
    return result.status;
}
