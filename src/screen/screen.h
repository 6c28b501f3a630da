/*
 * The door of the editor: main opens it with a path, and gets the exit status back. Whatever is shown, asked and saved
 * in between happens inside; the terminal is as it was when it returns.
 */
#ifndef SCREEN_SCREEN_H
#define SCREEN_SCREEN_H

typedef enum ScreenTask {
    SCREEN_OPEN, /* the wall in the file; without a path the first screen */
    SCREEN_NEW   /* asks the few sizes a wall cannot do without, writes the file, which does not exist yet, goes on with
                    it */
} ScreenTask;

/* Runs the editor. 0: left as the user wished; 2: there is no terminal that can be drawn on; 3: the file could not be
 * read or understood, or TERM, INT or HUP ended it with changes in the recovery copy. What went wrong is told on
 * standard error. */
int screen_run(const char *path, ScreenTask task);

#endif
