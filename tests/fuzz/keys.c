/* Any bytes from a terminal: the decoder never holds more than it has room for, makes only keys that have a name, and
 * what it calls text is a character that may be shown. */
#include "fuzz.h"

#include "base/panic.h"
#include "screen/term/key.h"
#include "support/utf8_valid.h"

#include <string.h>

static void check_key(const Decoder *decoder, Key key)
{
    char label[40];
    key_label(key, true, label, sizeof label);
    BUG_UNLESS(label[0] != '\0' && utf8_valid(label, strlen(label)) == strlen(label));
    if (key == PRESS_PASTE)
        BUG_UNLESS(strlen(decoder_pasted(decoder)) < PASTE_MOST);
    if (key_is_text(key)) {
        char bytes[4];
        uint32_t back;
        int count = utf8_encode(key, bytes);
        BUG_UNLESS(key >= ' ' && utf8_decode(bytes, (size_t)count, &back) == count && back == key);
    }
}

int LLVMFuzzerTestOneInput(const uint8_t *bytes, size_t size)
{
    Decoder decoder;
    decoder_init(&decoder);
    for (size_t i = 0; i < size; i++) {
        Key key = decoder_take(&decoder, bytes[i]);
        BUG_UNLESS(decoder.count < SEQUENCE_MOST + 1);
        if (key != PRESS_NONE)
            check_key(&decoder, key);
        if (i % 7 == 6 && (key = decoder_settle(&decoder)) != PRESS_NONE) /* now and then no byte comes for a while */
            check_key(&decoder, key);
    }
    decoder_settle(&decoder);
    BUG_UNLESS(!decoder_waits(&decoder));
    /* whatever came before, the next plain key is itself, once a paste is over */
    if (!decoder.pasting)
        BUG_UNLESS(decoder_take(&decoder, 'x') == 'x');
    decoder_finish(&decoder);
    return 0;
}
