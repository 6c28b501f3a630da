/* Any bytes are a length or are refused with a sentence; a length is within 1 km and is written so that it reads back.
 */
#include "fuzz.h"

#include "base/panic.h"
#include "length/length.h"
#include "support/utf8_valid.h"

#include <string.h>

static void check(const char *text, size_t size, Units units)
{
    Length length = 0;
    Err err = {.text = ""};
    if (!length_parse(text, size, units, &length, &err)) {
        BUG_UNLESS(err.text[0] != '\0' && strchr(err.text, '\n') == NULL);
        BUG_UNLESS(utf8_valid(err.text, strlen(err.text)) == strlen(err.text));
        return;
    }
    BUG_UNLESS(length >= -LENGTH_MOST && length <= LENGTH_MOST);
    char written[LENGTH_TEXT_MAX];
    Length back = 0;
    length_write(length, units, written);
    BUG_UNLESS(length_parse(written, strlen(written), units, &back, &err) && back == length);
}

int LLVMFuzzerTestOneInput(const uint8_t *bytes, size_t size)
{
    const char *text = (const char *)bytes;
    check(text, size, UNITS_IN);
    check(text, size, UNITS_MM);
    int64_t millionths;
    Err err;
    if (length_parse_number(text, size, &millionths, &err)) {
        Length length;
        /* what is a plain number is a bare length too, unless it is too long for a wall */
        BUG_UNLESS(length_parse(text, size, UNITS_MM, &length, &err) ? length == millionths : err.kind == ERR_VALUE);
    }
    return 0;
}
