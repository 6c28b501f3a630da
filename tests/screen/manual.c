/* datumrow(1) lists the keys of the table of actions: between two marks in the page stands what is made of it here.
 * With DATUMROW_RENEW=1 it is put there. */
#include "support/test.h"

#include "screen/app/action.h"
#include "support/manual.h"

#include <string.h>

/* In mdoc a word may not begin with a mark that mdoc reads as its own. */
static void put_mdoc_word(Text *out, const char *word)
{
    if (strlen(word) == 1 && strchr("?[](),.:;!|", word[0]) != NULL)
        text_put(out, "\\&");
    for (; *word != '\0'; word++) {
        if (*word == '-')
            text_put(out, "\\-");
        else if (*word == '\\')
            text_put(out, "\\e");
        else
            text_put_bytes(out, word, 1);
    }
}

static void write_keys(Text *out)
{
    for (int group = 0; group < GROUP_COUNT; group++) {
        text_format(out, ".Ss %s\n.Bl -tag -width Ds\n", action_group_name((ActionGroup)group));
        for (int i = 1; i < ACTION_COUNT; i++) {
            const Action *action = action_of((ActionId)i);
            if ((int)action->group != group)
                continue;
            text_put(out, ".It");
            for (int k = 0; k < ACTION_KEYS && action->keys[k] != PRESS_NONE; k++) {
                char label[24];
                key_label(action->keys[k], true, label, sizeof label);
                text_put(out, k > 0 ? " , Ic " : " Ic ");
                put_mdoc_word(out, label);
            }
            char first = action->help[0];
            if (first >= 'a' && first <= 'z')
                first = (char)(first - 'a' + 'A');
            text_format(out, "\n%c%s.\n", first, action->help + 1);
        }
        text_put(out, ".El\n");
    }
}

START_TEST(the_manual_lists_the_keys_of_the_table)
{
    Text keys;
    text_init(&keys);
    write_keys(&keys);
    manual_hold("datumrow.1", "keys", &keys);
    text_finish(&keys);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {the_manual_lists_the_keys_of_the_table};
    return RUN(tests);
}
