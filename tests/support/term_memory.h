/*
 * A terminal in memory: it is fed a script of keys, pauses and sizes, shows on nothing, and keeps the last picture.
 * Time stands still but for what the script lets pass, so every run is alike. A test feeds it, turns the editor's loop
 * until memory_idle, and looks.
 */
#ifndef TESTS_SUPPORT_TERM_MEMORY_H
#define TESTS_SUPPORT_TERM_MEMORY_H

#include "screen/term/term.h"

Term *term_memory(int columns, int rows);

/* The script, in order. Text is typed key by key. */
void memory_key(Term *term, Key key);
void memory_type(Term *term, const char *text);
void memory_paste(Term *term, const char *text);
void memory_resize(Term *term, int columns, int rows);
void memory_pass(Term *term, int milliseconds); /* nothing happens for so long */
void memory_stop(Term *term);                   /* a signal asks the program to end */

void memory_hang_up(Term *term); /* from then on the terminal is gone */

/* The script is used up and the editor has asked to wait: it has worked and painted all it could. */
bool memory_idle(const Term *term);

/* The last picture shown; NULL before the first. Lives as long as the terminal. */
const Grid *memory_picture(const Term *term);
int memory_pictures(const Term *term); /* how many were shown */

#endif
