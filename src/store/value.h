/*
 * One value of the wall file: from its text into the field that its key names, and from the field to text. It knows
 * each kind of scalar and nothing of mappings, lists or places in a file.
 */
#ifndef STORE_VALUE_H
#define STORE_VALUE_H

#include "base/err.h"
#include "base/text.h"
#include "store/keys.h"

/* Reads `text` into the field of `key` in `record`, a struct that the key's Record describes; a bare length is in
 * `units`. For kinds that are no list or mapping; of VALUE_WIDTHS and VALUE_LENGTHS one item is added. False with `err`
 * filled (no place), the field untouched. */
bool value_read(Arena *arena, const FileKey *key, const char *text, size_t length, Units units, void *record, Err *err);

/* "anywhere or studs": all words but the empty one. */
void value_list_words(const char *const *words, Text *out);

/* Appends the value as a file of these units would write it: quoted where other readers could take it for something
 * else. For kinds that are no list or mapping. */
void value_write(const FileKey *key, const void *record, Units units, Text *out);

/* What a file without the key means, put into the field; `record` is zeroed otherwise. */
void value_default(Arena *arena, const FileKey *key, void *record);

/* The key's value is what a file without it means. */
bool value_is_default(const FileKey *key, const void *record);

/* Whether a file of this record has to say the key at all (it may, where the value is the default). */
bool value_stands(const FileKey *key, const void *record);

/* The key was read: its flag says so from now on. */
void value_mark_given(const FileKey *key, void *record);

/* A field that is an array, as arena_push grows it. */
typedef struct Array {
    void *at;
    int count;
    int room;
} Array;

Array array_of(const void *record, size_t at);
void *array_item(const Array *array, const Record *of, int index);
/* One more item, zeroed. */
void *array_push(Arena *arena, void *record, size_t at, size_t size);

/* The struct of a VALUE_RECORD. */
void *value_inner(const FileKey *key, void *record);
const void *value_inner_const(const FileKey *key, const void *record);

#endif
