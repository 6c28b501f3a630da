/*
 * Fields of a struct, reached by their offset as the table of keys has it. They are copied in and out as bytes, so that
 * no pointer of another type ever points at one.
 */
#ifndef STORE_FIELD_H
#define STORE_FIELD_H

#include <string.h>

#define FIELD_GET(record, offset, out) memcpy((out), (const char *)(record) + (offset), sizeof *(out))
#define FIELD_PUT(record, offset, in) memcpy((char *)(record) + (offset), (in), sizeof *(in))

#endif
