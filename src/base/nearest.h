/*
 * Which known word someone may have meant by one that is not known: for keys of a file, commands, species. It knows no
 * words of its own.
 */
#ifndef BASE_NEAREST_H
#define BASE_NEAREST_H

#include <stdbool.h>

/* How many letters have to be put in, taken out, changed, or swapped with their neighbour to make `a` out of `b`,
 * capitals counting as small letters (the optimal string alignment distance). Only the first 64 bytes of each count. */
int nearest_distance(const char *a, const char *b);

/* Index of the nearest of words[0..count), of equal ones the first; -1 where none is near: more than a third of the
 * letters would have to change. */
int nearest_word(const char *word, const char *const *words, int count);

/* The same name of several words, capitals or not, blanks as they come: "Pine,  jack" is "pine, jack". */
bool nearest_same(const char *a, const char *b);

enum { NEAREST_MOST = 8 };

/* The names of names[0..count) nearest to `name`, best first, as their indices, into near[0..most); how many
 * there are, NEAREST_MOST at the most. A word
 * that both have counts for more than letters that differ: "pine" is nearer to "pine, jack" than to "fine". */
int nearest_names(const char *name, const char *const *names, int count, int near[], int most);

#endif
