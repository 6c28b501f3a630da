/*
 * Which known word someone may have meant by one that is not known: for keys of a file, commands, species. It knows no
 * words of its own.
 */
#ifndef BASE_NEAREST_H
#define BASE_NEAREST_H

/* How many letters have to be put in, taken out, changed, or swapped with their neighbour to make `a` out of `b`,
 * capitals counting as small letters (the optimal string alignment distance). Only the first 64 bytes of each count. */
int nearest_distance(const char *a, const char *b);

/* Index of the nearest of words[0..count), of equal ones the first; -1 where none is near: more than a third of the
 * letters would have to change. */
int nearest_word(const char *word, const char *const *words, int count);

#endif
