/* Bytes to keys. The sequences: xterm control sequences (T. Dickey, E. Moy), the VT220 programmer's manual,
 * console_codes(4) (from memory). */
#include "support/test.h"

#include "screen/app/action.h"
#include "screen/term/key.h"

#include <stdio.h>
#include <string.h>

/* All keys that the bytes make, the escape delay having passed at their end. */
static int decode(const char *bytes, size_t length, Key *keys, int most)
{
    Decoder decoder;
    decoder_init(&decoder);
    int count = 0;
    for (size_t i = 0; i < length && count < most; i++) {
        Key key = decoder_take(&decoder, (unsigned char)bytes[i]);
        if (key != PRESS_NONE)
            keys[count++] = key;
    }
    Key key = decoder_settle(&decoder);
    if (key != PRESS_NONE && count < most)
        keys[count++] = key;
    decoder_finish(&decoder);
    return count;
}

static void one(const char *bytes, Key wanted)
{
    Key keys[8] = {0};
    int count = decode(bytes, strlen(bytes), keys, 8);
    if (count != 1 || keys[0] != wanted) {
        printf("# %s\n", bytes + (bytes[0] == '\x1b'));
        assert_int_equal(count, 1);
        assert_int_equal(keys[0], wanted);
    }
}

START_TEST(keys_of_common_terminals)
{
    one("\x1b[A", PRESS_UP);
    one("\x1bOB", PRESS_DOWN);
    one("\x1b[1;2A", PRESS_SHIFT | PRESS_UP);
    one("\x1b[1;5D", PRESS_CTRL | PRESS_LEFT);
    one("\x1b[a", PRESS_SHIFT | PRESS_UP);
    one("\x1b[3~", PRESS_DELETE);
    one("\x1b[5;2~", PRESS_SHIFT | PRESS_PAGE_UP);
    one("\x1b[15~", PRESS_F1 + 4);
    one("\x1b[[B", PRESS_F1 + 1);
    one("\x1bOP", PRESS_F1);
    one("\x1b[21~", PRESS_F1 + 9);
    one("\x1b[7$", PRESS_SHIFT | PRESS_HOME);
    one("\x1b[Z", PRESS_SHIFT | PRESS_TAB);
    one("\x7f", PRESS_BACKSPACE);
    one("\r", PRESS_ENTER);
    one("\t", PRESS_TAB);
    one("\x13", PRESS_CTRL | 's');
    one("\x1b", PRESS_ESCAPE);
    one("\x1bx", PRESS_ALT | 'x');
    one("\xc3\xbc", 0xfc);
}
END_TEST

START_TEST(the_number_pad_types)
{
    one("\x1bOp", '0');
    one("\x1bOy", '9');
    one("\x1bOo", '/');
    one("\x1bOn", '.');
    one("\x1bOm", '-');
    one("\x1bOk", '+');
    one("\x1bOM", PRESS_ENTER);
}
END_TEST

START_TEST(unknown_sequences_leave_no_text_behind)
{
    const char *const swallowed[] = {"\x1b[?1;2c",     "\x1b[38;5;1m", "\x1b[99~",
                                     "\x1b[<0;10;10M", "\x1b[[Z",      "\x1b[1;2;3;4;5;6;7Q",
                                     "\x80",           "\xff",         "\xc3"};
    Key keys[8];
    for (size_t i = 0; i < sizeof swallowed / sizeof *swallowed; i++) {
        int count = decode(swallowed[i], strlen(swallowed[i]), keys, 8);
        for (int k = 0; k < count; k++)
            assert_false(key_is_text(keys[k]));
    }
    char long_one[300] = "\x1b[";
    memset(long_one + 2, '1', sizeof long_one - 4);
    strcpy(long_one + sizeof long_one - 3, "~x");
    assert_int_equal(decode(long_one, strlen(long_one), keys, 8), 1);
    assert_int_equal(keys[0], 'x');
}
END_TEST

START_TEST(a_broken_sequence_gives_way_to_the_next_key)
{
    Key keys[8];
    assert_int_equal(decode("\x1b\x1b[A", 4, keys, 8), 2);
    assert_int_equal(keys[0], PRESS_ESCAPE);
    assert_int_equal(keys[1], PRESS_UP);
    assert_int_equal(decode("\x1b[1\r", 4, keys, 8), 1);
    assert_int_equal(keys[0], PRESS_ENTER);
    assert_int_equal(decode("\xe2\x80q", 3, keys, 8), 1);
    assert_int_equal(keys[0], 'q');
}
END_TEST

START_TEST(a_paste_is_one_key_with_its_text)
{
    Decoder decoder;
    decoder_init(&decoder);
    const char bytes[] = "\x1b[200~12 \x1b[A 3/4\x1b[201~";
    Key last = PRESS_NONE;
    for (size_t i = 0; i + 1 < sizeof bytes; i++) {
        last = decoder_take(&decoder, (unsigned char)bytes[i]);
        assert_true(i + 2 == sizeof bytes || last == PRESS_NONE);
    }
    assert_int_equal(last, PRESS_PASTE);
    assert_string_equal(decoder_pasted(&decoder), "12 \x1b[A 3/4");
    assert_int_equal(decoder_take(&decoder, 'x'), 'x');
    decoder_finish(&decoder);
}
END_TEST

START_TEST(a_paste_has_a_limit)
{
    Decoder decoder;
    decoder_init(&decoder);
    for (const char *at = "\x1b[200~"; *at != '\0'; at++)
        decoder_take(&decoder, (unsigned char)*at);
    for (int i = 0; i < 3 * PASTE_MOST; i++)
        assert_int_equal(decoder_take(&decoder, 'a'), PRESS_NONE);
    Key key = PRESS_NONE;
    for (const char *at = "\x1b[201~"; *at != '\0'; at++)
        key = decoder_take(&decoder, (unsigned char)*at);
    assert_int_equal(key, PRESS_PASTE);
    assert_true(strlen(decoder_pasted(&decoder)) < PASTE_MOST);
    decoder_finish(&decoder);
}
END_TEST

START_TEST(every_action_stands_once_with_its_words)
{
    for (int id = 1; id < ACTION_COUNT; id++) {
        const Action *action = action_of((ActionId)id);
        assert_true(action->menu[0] != '\0' && action->help[0] != '\0');
        assert_int_not_equal(action->keys[0], PRESS_NONE);
        assert_true(action->hints == 0 || action->word[0] != '\0');
    }
}
END_TEST

START_TEST(no_key_means_two_things_in_one_place)
{
    for (int a = 1; a < ACTION_COUNT; a++)
        for (int b = a + 1; b < ACTION_COUNT; b++) {
            const Action *first = action_of((ActionId)a), *second = action_of((ActionId)b);
            for (int i = 0; i < ACTION_KEYS; i++)
                for (int k = 0; k < ACTION_KEYS; k++)
                    if (first->keys[i] != PRESS_NONE && first->keys[i] == second->keys[k] &&
                        (first->places & second->places) != 0)
                        FAIL("one key for: %s; %s", first->menu, second->menu);
        }
}
END_TEST

/* Function keys, and arrows with Shift, are not sent by every terminal: each such action has a key that is. */
START_TEST(every_function_key_has_a_twin)
{
    for (int id = 1; id < ACTION_COUNT; id++) {
        const Action *action = action_of((ActionId)id);
        bool plain = false;
        for (int k = 0; k < ACTION_KEYS; k++) {
            Key key = action->keys[k], base = key & 0x1fffff;
            bool control = (key & PRESS_CTRL) != 0 && base >= 'a' && base <= 'z';
            plain = plain || key_is_text(key) || control || key == PRESS_ENTER || key == PRESS_TAB ||
                    key == PRESS_ESCAPE || key == PRESS_BACKSPACE;
        }
        bool in_lists =
            action->group == GROUP_LISTS && action->id == ACTION_PREVIOUS; /* j and k walk lists, see list.c */
        if (!plain && !in_lists)
            FAIL("no twin: %s", action->menu);
    }
}
END_TEST

START_TEST(each_place_hints_at_five_to_seven_keys)
{
    const unsigned places[] = {PLACE_COURSES | PLACE_DRAWN, PLACE_OPENING | PLACE_DRAWN};
    for (size_t i = 0; i < sizeof places / sizeof *places; i++) {
        int hints = 0;
        for (int id = 1; id < ACTION_COUNT; id++)
            hints += (action_of((ActionId)id)->hints & places[i]) != 0;
        assert_in_range(hints, 5, 7);
    }
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        keys_of_common_terminals,
        the_number_pad_types,
        unknown_sequences_leave_no_text_behind,
        a_broken_sequence_gives_way_to_the_next_key,
        a_paste_is_one_key_with_its_text,
        a_paste_has_a_limit,
        every_action_stands_once_with_its_words,
        no_key_means_two_things_in_one_place,
        every_function_key_has_a_twin,
        each_place_hints_at_five_to_seven_keys,
    };
    return RUN(tests);
}
