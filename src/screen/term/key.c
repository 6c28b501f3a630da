/*
 * A sequence is held in `waiting` until its last byte is there:
 *
 *     ESC [ parameters final      parameters 0x20-0x3f, final 0x40-0x7e    (ECMA-48, control sequence)
 *     ESC O final                 application keypad and cursor keys       (single shift three)
 *     ESC [ [ A .. E              F1 to F5 of the Linux console
 *     ESC character               Alt with the character
 *     ESC [ 200 ~ text ESC [ 201 ~    a paste
 *
 * `waiting` never overflows: a control sequence longer than it is swallowed to its final byte.
 * The sequences are those of the xterm control sequences document and of the VT220 manual (from memory).
 */
#include "screen/term/key.h"

#include "base/utf8.h"

#include <stdio.h>
#include <string.h>

bool key_is_text(Key key)
{
    return key >= ' ' && key < 0x110000 && key != 0x7f;
}

static const char *const names[] = {
    "Up",        "Down",   "Left",   "Right",     "Home", "End",   "Page-Up",
    "Page-Down", "Insert", "Delete", "Backspace", "Tab",  "Enter", "Esc",
};

void key_label(Key key, bool ascii, char *out, size_t size)
{
    Key base = key & 0x1fffff;
    char word[16];
    if (base >= PRESS_F1 && base <= PRESS_F12)
        snprintf(word, sizeof word, "F%u", base - PRESS_F1 + 1);
    else if (!ascii && base >= PRESS_UP && base <= PRESS_RIGHT)
        snprintf(word, sizeof word, "%s", (const char *[]){"\u2191", "\u2193", "\u2190", "\u2192"}[base - PRESS_UP]);
    else if (base >= PRESS_UP && base <= PRESS_ESCAPE)
        snprintf(word, sizeof word, "%s", names[base - PRESS_UP]);
    else if (base == PRESS_PASTE)
        snprintf(word, sizeof word, "Paste");
    else if (base == ' ')
        snprintf(word, sizeof word, "Space");
    else {
        if ((key & PRESS_CTRL) != 0 && base >= 'a' && base <= 'z')
            base -= 'a' - 'A';
        char bytes[4];
        int length = utf8_encode(base, bytes);
        bool capital = key >= 'A' && key <= 'Z'; /* told as the keys that a hand presses */
        snprintf(word, sizeof word, "%s%.*s", capital ? "Shift-" : "", length, bytes);
    }
    snprintf(out, size, "%s%s%s%s", (key & PRESS_CTRL) != 0 ? "Ctrl-" : "", (key & PRESS_ALT) != 0 ? "Alt-" : "",
             (key & PRESS_SHIFT) != 0 ? "Shift-" : "", word);
}

void decoder_init(Decoder *decoder)
{
    *decoder = (Decoder){0};
    text_init(&decoder->pasted);
}

void decoder_finish(Decoder *decoder)
{
    text_finish(&decoder->pasted);
}

/* The modifier number of xterm: 1 + shift 1 + alt 2 + control 4. */
static Key modifiers(int number)
{
    if (number < 2 || number > 16)
        return 0;
    int bits = number - 1;
    return ((bits & 1) != 0 ? PRESS_SHIFT : 0) | ((bits & 2) != 0 ? PRESS_ALT : 0) | ((bits & 4) != 0 ? PRESS_CTRL : 0);
}

/* ESC [ n ~ */
static Key numbered(int number)
{
    static const struct {
        short number;
        Key key;
    } table[] = {
        {1, PRESS_HOME},      {2, PRESS_INSERT},  {3, PRESS_DELETE},  {4, PRESS_END},      {5, PRESS_PAGE_UP},
        {6, PRESS_PAGE_DOWN}, {7, PRESS_HOME},    {8, PRESS_END},     {11, PRESS_F1},      {12, PRESS_F1 + 1},
        {13, PRESS_F1 + 2},   {14, PRESS_F1 + 3}, {15, PRESS_F1 + 4}, {17, PRESS_F1 + 5},  {18, PRESS_F1 + 6},
        {19, PRESS_F1 + 7},   {20, PRESS_F1 + 8}, {21, PRESS_F1 + 9}, {23, PRESS_F1 + 10}, {24, PRESS_F12},
    };
    for (size_t i = 0; i < sizeof table / sizeof *table; i++)
        if (table[i].number == number)
            return table[i].key;
    return PRESS_NONE;
}

/* Letters at the end of ESC [ and ESC O alike. */
static Key lettered(unsigned char final)
{
    switch (final) {
    case 'A': return PRESS_UP;
    case 'B': return PRESS_DOWN;
    case 'C': return PRESS_RIGHT;
    case 'D': return PRESS_LEFT;
    case 'H': return PRESS_HOME;
    case 'F': return PRESS_END;
    case 'P': return PRESS_F1;
    case 'Q': return PRESS_F1 + 1;
    case 'R': return PRESS_F1 + 2;
    case 'S': return PRESS_F1 + 3;
    case 'Z': return PRESS_SHIFT | PRESS_TAB;
    default: return PRESS_NONE;
    }
}

/* ESC O: the application keypad types what is printed on it. rxvt sends small letters for Ctrl with an arrow. */
static Key single_shift(unsigned char final)
{
    static const char digits[] = "0123456789";
    if (final >= 'p' && final <= 'y')
        return (Key)digits[final - 'p'];
    switch (final) {
    case 'M': return PRESS_ENTER;
    case 'X': return '=';
    case 'I': return PRESS_TAB;
    case ' ': return ' ';
    case 'j': return '*';
    case 'k': return '+';
    case 'l': return ',';
    case 'm': return '-';
    case 'n': return '.';
    case 'o': return '/';
    case 'a': return PRESS_CTRL | PRESS_UP;
    case 'b': return PRESS_CTRL | PRESS_DOWN;
    case 'c': return PRESS_CTRL | PRESS_RIGHT;
    case 'd': return PRESS_CTRL | PRESS_LEFT;
    default: return lettered(final);
    }
}

/* A whole control sequence: its parameters are read as at most two numbers. */
static Key control_sequence(const unsigned char *bytes, size_t count)
{
    int numbers[2] = {0, 0};
    int at = 0;
    for (size_t i = 2; i + 1 < count; i++) {
        if (bytes[i] >= '0' && bytes[i] <= '9' && at < 2) {
            if (numbers[at] < 10000)
                numbers[at] = numbers[at] * 10 + (bytes[i] - '0');
        } else if (bytes[i] == ';' || bytes[i] == ':') {
            at++;
        } else if (at < 2) {
            return PRESS_NONE;
        }
    }
    unsigned char final = bytes[count - 1];
    Key key = PRESS_NONE;
    if (final == '~')
        key = numbered(numbers[0]);
    else if (final == '$' || final == '^' || final == '@') /* rxvt: shift, control, both */
        key = numbered(numbers[0]);
    else if (final >= 'a' && final <= 'd') /* rxvt: shift with an arrow */
        return PRESS_SHIFT | lettered((unsigned char)(final - 'a' + 'A'));
    else
        key = lettered(final);
    if (key == PRESS_NONE)
        return PRESS_NONE;
    if (final == '$')
        key |= PRESS_SHIFT;
    if (final == '^')
        key |= PRESS_CTRL;
    return key | modifiers(numbers[1]);
}

static Key plain_byte(unsigned char byte)
{
    switch (byte) {
    case '\r':
    case '\n': return PRESS_ENTER;
    case '\t': return PRESS_TAB;
    case 0x7f:
    case 0x08: return PRESS_BACKSPACE;
    case 0x00: return PRESS_CTRL | ' ';
    case 0x1b: return PRESS_ESCAPE;
    default: break;
    }
    if (byte <= 26)
        return PRESS_CTRL | (Key)(byte - 1 + 'a');
    return byte < ' ' ? PRESS_NONE : byte;
}

/* How many bytes the UTF-8 character that begins so has; 1 for what cannot begin one. */
static size_t utf8_length(unsigned char first)
{
    return first >= 0xf0 && first <= 0xf4 ? 4 : first >= 0xe0 ? (first < 0xf0 ? 3 : 1) : first >= 0xc2 ? 2 : 1;
}

static Key character(const unsigned char *bytes, size_t count)
{
    if (count == 1 && bytes[0] < 0x80)
        return plain_byte(bytes[0]);
    uint32_t code;
    if (utf8_decode((const char *)bytes, count, &code) != (int)count)
        return PRESS_NONE;
    return code < 0xa0 ? PRESS_NONE : code; /* C1 controls are no keys */
}

static Key finish_with(Decoder *decoder, Key key)
{
    decoder->count = 0;
    return key;
}

static Key take_escaped(Decoder *decoder)
{
    const unsigned char *bytes = decoder->waiting;
    size_t count = decoder->count;
    unsigned char last = bytes[count - 1];
    if (count == 2) {
        if (last == '[' || last == 'O')
            return PRESS_NONE;
        if (last == 0x1b) { /* the first stood alone */
            decoder->count = 1;
            return PRESS_ESCAPE;
        }
    }
    if (bytes[1] == '[') {
        if (count == 3 && last == '[')
            return PRESS_NONE;
        if (count == 4 && bytes[2] == '[')
            return finish_with(decoder, last >= 'A' && last <= 'E' ? PRESS_F1 + (Key)(last - 'A') : PRESS_NONE);
        bool rxvt = last == '$' && count > 3 && bytes[count - 2] >= '0' && bytes[count - 2] <= '9';
        if (last >= 0x20 && last < 0x40 && !rxvt)
            return PRESS_NONE;
        if (last < 0x20 || last > 0x7e) { /* broken off: the byte counts for itself */
            decoder->count = 0;
            return decoder_take(decoder, last);
        }
        if (count == 6 && memcmp(bytes + 2, "200~", 4) == 0) {
            decoder->pasting = true;
            text_clear(&decoder->pasted);
            return finish_with(decoder, PRESS_NONE);
        }
        return finish_with(decoder, control_sequence(bytes, count));
    }
    if (bytes[1] == 'O') {
        if (last >= '0' && last <= '9') /* ESC O 2 A: old ways to say Shift-Up */
            return PRESS_NONE;
        Key modifier = count == 4 ? modifiers(bytes[2] - '0') : 0;
        Key key = single_shift(last);
        return finish_with(decoder, key == PRESS_NONE ? key : key | modifier);
    }
    if (count - 1 < utf8_length(bytes[1]))
        return PRESS_NONE;
    Key key = character(bytes + 1, count - 1);
    return finish_with(decoder, key == PRESS_NONE ? key : key | PRESS_ALT);
}

/* Everything is text until ESC [ 201 ~. */
static Key take_pasted(Decoder *decoder, unsigned char byte)
{
    static const char end[] = "\x1b[201~";
    if (byte == (unsigned char)end[decoder->count]) {
        decoder->waiting[decoder->count++] = byte;
        if (decoder->count < sizeof end - 1)
            return PRESS_NONE;
        decoder->count = 0;
        decoder->pasting = false;
        return PRESS_PASTE;
    }
    size_t waiting = decoder->count;
    decoder->count = 0;
    if (decoder->pasted.length + waiting + 1 < PASTE_MOST)
        text_put_bytes(&decoder->pasted, end, waiting);
    if (byte == 0x1b) {
        decoder->waiting[0] = byte;
        decoder->count = 1;
    } else if (byte != 0 && decoder->pasted.length + 1 < PASTE_MOST) {
        text_put_bytes(&decoder->pasted, (const char *)&byte, 1);
    }
    return PRESS_NONE;
}

Key decoder_take(Decoder *decoder, unsigned char byte)
{
    if (decoder->pasting)
        return take_pasted(decoder, byte);
    if (decoder->count == sizeof decoder->waiting) /* swallow the middle of what no terminal sends */
        decoder->count--;
    decoder->waiting[decoder->count++] = byte;
    if (decoder->waiting[0] == 0x1b)
        return decoder->count == 1 ? PRESS_NONE : take_escaped(decoder);
    size_t need = utf8_length(decoder->waiting[0]);
    if (decoder->count > 1 && (byte & 0xc0) != 0x80) { /* cut short: the new byte begins afresh */
        decoder->count = 0;
        return decoder_take(decoder, byte);
    }
    if (decoder->count < need)
        return PRESS_NONE;
    return finish_with(decoder, character(decoder->waiting, decoder->count));
}

bool decoder_waits(const Decoder *decoder)
{
    return decoder->count > 0 && !decoder->pasting;
}

Key decoder_settle(Decoder *decoder)
{
    if (!decoder_waits(decoder))
        return PRESS_NONE;
    size_t count = decoder->count;
    decoder->count = 0;
    if (decoder->waiting[0] != 0x1b)
        return PRESS_NONE;
    if (count == 1)
        return PRESS_ESCAPE;
    return count == 2 && decoder->waiting[1] < 0x7f ? PRESS_ALT | (Key)decoder->waiting[1] : PRESS_NONE;
}

const char *decoder_pasted(const Decoder *decoder)
{
    return decoder->pasted.bytes;
}
