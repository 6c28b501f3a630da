/*
 * The one table of keys of the wall file: what each is called, what kind of value it takes, where that lives in the
 * document, whether it may be left out, and the line that the manual and the messages say of it. Reading, writing,
 * "nearest known key" and the check of datumrow(5) all go by it; none of them names a key itself.
 *
 * To add a key: add its field to the struct in wall/wall.h (to wall_copy.c where it holds text or a list, to the
 * equality there, its range to wall_check), then a row in keys.c, at the place where a fresh file shall have it. A
 * field that is there only where the file has the key gets a bool beside it (FLAG). A group of keys is a Record of its
 * own. Then the key is read, written, kept with its comments and told of; tests/store/everything.h wants it too, and
 * tests/support/random_wall.c, and tests/screen/forms.c a field in a form, and `DATUMROW_RENEW=1 meson test
 * command-manual` puts it into datumrow(5).
 */
#ifndef STORE_KEYS_H
#define STORE_KEYS_H

#include "wall/wall.h"

#include <stddef.h>

typedef enum ValueKind {
    VALUE_VERSION,         /* the number 1; no field */
    VALUE_TEXT,            /* char *, one line */
    VALUE_UNITS,           /* Units */
    VALUE_LENGTH,          /* Length */
    VALUE_LENGTH_OR_WORD,  /* Length, or the first of `words`, which sets the flag */
    VALUE_WIDTHS,          /* LengthList: a length, or a list of them */
    VALUE_LENGTHS,         /* LengthList: a list */
    VALUE_COUNT,           /* int, from 1; 1 where it is left out */
    VALUE_WHOLE,           /* int, any sign */
    VALUE_WORD,            /* an enumeration, `words` by its values */
    VALUE_ONE_WORD,        /* the first of `words` and no other; no field */
    VALUE_TEMPERATURE,     /* Air: its temperature and celsius */
    VALUE_PERCENT,         /* int64_t, thousandths */
    VALUE_PERCENT_OR_WORD, /* the same, or the first of `words`, which sets the flag */
    VALUE_NUMBER,          /* int64_t, thousandths: a plain number that is no percentage */
    VALUE_RECORD,          /* a mapping: `record`, a struct inside */
    VALUE_RECORDS,         /* a list of mappings: an array of `record` */
    VALUE_HUNG             /* a list of records of several kinds, `parts`, in the order of hung_walk; of a Wall */
} ValueKind;

/* What numbers are allowed; wall_check holds them to it, here it is told. */
typedef enum Range { RANGE_ANY, RANGE_FROM_ZERO, RANGE_ABOVE_ZERO } Range;

typedef struct Record Record;

/* One kind of records in a list of several. */
typedef struct ListPart {
    const Record *record;
    size_t at;    /* of its array */
    size_t place; /* of the int in each that says which of all records it is */
} ListPart;

typedef struct FileKey {
    const char *name;
    ValueKind kind;
    bool required;
    Range range;
    size_t at;           /* of the value, in the struct that the record describes */
    size_t flag;         /* of the bool there that says whether the key stands in the file; NO_FLAG where none does */
    bool flag_is;        /* the value of that bool where it does */
    const char *instead; /* the key that may stand in place of this one, which is then not required; never both */
    const char *const *words; /* up to NULL; "" for a value that no word is written for */
    const Record *record;
    const ListPart *parts;              /* VALUE_HUNG: HUNG_KINDS of them */
    bool (*stands)(const void *record); /* in place of a flag: whether the key is written */
    const char *fallback; /* what a file without the key means, as it would be written; NULL where nothing */
    const char *says;     /* one line without a full stop, for the manual and for "missing" */
} FileKey;

#define NO_FLAG ((size_t)-1)

struct Record {
    const char *what; /* how messages call one: "a face" */
    const FileKey *keys;
    int count;
    size_t size;
    size_t id;     /* of its uint32_t id, or NO_FLAG */
    bool one_line; /* a fresh one is written in { } */
    bool apart;    /* fresh ones have a blank line between them */
};

/* The mapping that a wall file is. */
extern const Record keys_of_file;

/* The key or word that took the place of one that older files have, or NULL. */
const char *keys_renamed(const char *word);

/* What the file calls what people also call by another word, as a value ("outlet": "box"); NULL where it knows none. */
const char *keys_meant(const char *word);

/* The key of that name, or NULL. */
const FileKey *record_key(const Record *record, const char *name, size_t length);

/* Calls `each` for every key, in the order of the table, with its path: "faces[].openings[].width". */
void keys_walk(void (*each)(const char *path, const FileKey *key, void *context), void *context);

#endif
