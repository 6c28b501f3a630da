/* datumrow(1) lists the keys of the table of actions: between two marks in the page stands what is made of it here.
 * With DATUMROW_RENEW=1 it is put there. */
#include "support/test.h"

#include "screen/app/action.h"
#include "support/manual.h"

START_TEST(the_manual_lists_the_keys_of_the_table)
{
    Text keys;
    text_init(&keys);
    action_write_mdoc(&keys);
    manual_hold("datumrow.1", "keys", &keys);
    text_finish(&keys);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {the_manual_lists_the_keys_of_the_table};
    return RUN(tests);
}
