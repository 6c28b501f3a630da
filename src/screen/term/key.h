/*
 * Keys under names of our own, and the decoder that makes them out of the bytes a terminal sends: UTF-8, control
 * characters, the sequences of xterm, the VT220, rxvt and the Linux console, the number pad in both its modes,
 * bracketed paste. What is no key is swallowed whole, so that no tail of a sequence ends up as text. It knows nothing
 * of time: the caller says when an Escape has stood alone for long enough. Nothing here knows what a key does.
 */
#ifndef SCREEN_TERM_KEY_H
#define SCREEN_TERM_KEY_H

#include "base/text.h"

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

/* A character is its code point (from space up); the keys without one are numbered beyond Unicode. Modifiers are bits
 * above. */
typedef uint32_t Key;

enum {
    PRESS_NONE = 0,
    PRESS_UP = 0x110000,
    PRESS_DOWN,
    PRESS_LEFT,
    PRESS_RIGHT,
    PRESS_HOME,
    PRESS_END,
    PRESS_PAGE_UP,
    PRESS_PAGE_DOWN,
    PRESS_INSERT,
    PRESS_DELETE,
    PRESS_BACKSPACE,
    PRESS_TAB,
    PRESS_ENTER,
    PRESS_ESCAPE,
    PRESS_F1, /* F2 to F12 follow */
    PRESS_F12 = PRESS_F1 + 11,
    PRESS_PASTE, /* text came from the clipboard: decoder_pasted */
    PRESS_SHIFT = 0x200000,
    PRESS_CTRL = 0x400000, /* with a small letter: PRESS_CTRL | 's' */
    PRESS_ALT = 0x800000
};

/* Whether it is a character to be put into a field. */
bool key_is_text(Key key);

/* "Up", "Shift-Up", "Ctrl-S", "F10", "Space", "x"; arrows as signs unless `ascii`. */
void key_label(Key key, bool ascii, char *out, size_t size);

enum { PASTE_MOST = 64 * 1024, SEQUENCE_MOST = 64 };

typedef struct Decoder {
    unsigned char waiting[SEQUENCE_MOST]; /* bytes of a key not yet whole */
    size_t count;
    bool pasting;
    Text pasted; /* what was pasted last, or so far */
} Decoder;

void decoder_init(Decoder *decoder);
void decoder_finish(Decoder *decoder);

/* Takes one byte; the key that it completes, or PRESS_NONE. */
Key decoder_take(Decoder *decoder, unsigned char byte);

/* Bytes wait for more to come: ask again after the escape delay. */
bool decoder_waits(const Decoder *decoder);

/* No more came: what waits is a key of its own (Escape, Alt with a character) or nothing. */
Key decoder_settle(Decoder *decoder);

/* The text of the last PRESS_PASTE; at most PASTE_MOST bytes, the rest was dropped. Dies at the next byte taken. */
const char *decoder_pasted(const Decoder *decoder);

#endif
