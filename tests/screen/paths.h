/*
 * The keys of the wall file as paths, for tests that hold the editor to them. (The table's own header and the editor's
 * each have a Key.)
 */
#ifndef TESTS_SCREEN_PATHS_H
#define TESTS_SCREEN_PATHS_H

/* Calls `each` for every key that has a value of its own: "faces[].openings[].width". */
void paths_of_values(void (*each)(const char *path, void *context), void *context);

#endif
