#include "trade/spacer.h"

#include "base/panic.h"
#include "base/text.h"

#include <stdlib.h>

/*
 *   course k+1   =================
 *                   [ spacer ]        thickness of the stack = reveal
 *   course k     =================
 *
 * The table runs from thin to thick, coins and steel mixed; a stack holds one or two kinds of one material.
 */

#define MINT "United States Mint"
#define GAUGE "Manufacturers' Standard Gauge, uncoated sheet steel"
#define GAUGE_MEMORY "Manufacturers' Standard Gauge, uncoated sheet steel (from memory)"
#define ZINC "Galvanized Sheet Gauge, zinc-coated sheet steel"

/* Ten thousandths of an inch: 0.0001 in = 2540 nm. Hundredths of a millimetre: 10000 nm. */
#define INCH_E4(n) (INT64_C(n) * 2540)
#define MM_E2(n) (INT64_C(n) * 10000)

#define SHEET(gauge, inch_e4, source)                                                                        \
    {                                                                                                        \
        gauge " gauge sheet steel", "pieces of " gauge " gauge sheet steel", INCH_E4(inch_e4), false, source \
    }
#define ZINC_SHEET(gauge, inch_e4)                                                                                     \
    {                                                                                                                  \
        gauge " gauge zinc-coated steel", "pieces of " gauge " gauge zinc-coated steel", INCH_E4(inch_e4), false, ZINC \
    }

static const SpacerThing things[] = {
    SHEET("24", 239, GAUGE),
    SHEET("22", 299, GAUGE),
    SHEET("20", 359, GAUGE),
    SHEET("19", 418, GAUGE_MEMORY),
    SHEET("18", 478, GAUGE),
    {"dime", "dimes", MM_E2(135), true, MINT},
    SHEET("17", 538, GAUGE_MEMORY),
    SHEET("16", 598, GAUGE),
    {"one-cent coin", "one-cent coins", MM_E2(152), true, MINT},
    ZINC_SHEET("16", 635),
    SHEET("15", 673, GAUGE),
    {"quarter dollar", "quarter dollars", MM_E2(175), true, MINT},
    SHEET("14", 747, GAUGE),
    {"five-cent coin", "five-cent coins", MM_E2(195), true, MINT},
    ZINC_SHEET("14", 785),
    {"dollar coin", "dollar coins", MM_E2(200), true, MINT},
    {"half dollar", "half dollars", MM_E2(215), true, MINT},
    SHEET("13", 897, GAUGE),
    SHEET("12", 1046, GAUGE),
    SHEET("11", 1196, GAUGE),
    SHEET("10", 1345, GAUGE),
};

enum { THING_COUNT = sizeof things / sizeof *things };

int spacer_thing_count(void)
{
    return THING_COUNT;
}

const SpacerThing *spacer_thing(int index)
{
    BUG_UNLESS(index >= 0 && index < THING_COUNT);
    return &things[index];
}

static bool is_coin(int index)
{
    return things[index].coin;
}

static int pieces_of(const Spacer *spacer)
{
    return spacer->count[0] + (spacer->kinds > 1 ? spacer->count[1] : 0);
}

static int compare(const void *left, const void *right)
{
    const Spacer *a = left;
    const Spacer *b = right;
    if (a->thickness != b->thickness)
        return a->thickness < b->thickness ? -1 : 1;
    if (pieces_of(a) != pieces_of(b))
        return pieces_of(a) - pieces_of(b);
    if (a->kinds != b->kinds)
        return a->kinds - b->kinds;
    for (int i = 0; i < a->kinds; i++) {
        if (a->thing[i] != b->thing[i])
            return a->thing[i] - b->thing[i];
        if (a->count[i] != b->count[i])
            return a->count[i] - b->count[i];
    }
    return 0;
}

Spacers spacer_choices(Arena *arena, Length low, Length high)
{
    Spacers choices = {0};
    for (int first = 0; first < THING_COUNT; first++)
        for (int count = 1; count <= SPACER_STACK_MOST; count++) {
            Length alone = things[first].thickness * count;
            if (alone >= low && alone <= high)
                *arena_push(arena, &choices) =
                    (Spacer){.thickness = alone, .kinds = 1, .thing = {first}, .count = {count}};
            for (int second = first + 1; second < THING_COUNT; second++)
                for (int more = 1; count + more <= SPACER_STACK_MOST && is_coin(first) == is_coin(second); more++) {
                    Length both = alone + things[second].thickness * more;
                    if (both >= low && both <= high)
                        *arena_push(arena, &choices) =
                            (Spacer){.thickness = both, .kinds = 2, .thing = {first, second}, .count = {count, more}};
                }
        }
    if (choices.count > 0)
        qsort(choices.at, (size_t)choices.count, sizeof *choices.at, compare);
    return choices;
}

/* The choice that `wish` asks for, of one kind of thing: nearest to it, or with `no_less` the thinnest that is not
 * under it. */
static bool choose(Length wish, bool no_less, Spacer *out)
{
    Arena *arena = arena_new();
    Spacers choices = spacer_choices(arena, 0, LENGTH_MOST);
    int best = -1;
    for (int i = 0; i < choices.count; i++) {
        Length off = choices.at[i].thickness - wish;
        if (choices.at[i].kinds > 1 || (no_less && off < 0))
            continue;
        if (best < 0 || llabs(off) < llabs(choices.at[best].thickness - wish) ||
            (llabs(off) == llabs(choices.at[best].thickness - wish) &&
             pieces_of(&choices.at[i]) < pieces_of(&choices.at[best])))
            best = i;
    }
    if (best >= 0)
        *out = choices.at[best];
    arena_free(arena);
    return best >= 0;
}

bool spacer_nearest(Length wish, Spacer *out)
{
    return choose(wish, false, out);
}

bool spacer_at_least(Length least, Spacer *out)
{
    return choose(least, true, out);
}

const char *spacer_words(Arena *arena, const Spacer *spacer)
{
    static const char *const numbers[] = {"", "", "two", "three"};
    Text text;
    text_init(&text);
    for (int i = 0; i < spacer->kinds; i++) {
        const SpacerThing *thing = &things[spacer->thing[i]];
        int count = spacer->count[i];
        BUG_UNLESS(count >= 1 && count <= SPACER_STACK_MOST);
        text_put(&text, i > 0 ? " and " : "");
        if (count > 1)
            text_format(&text, "%s %s", numbers[count], thing->plural);
        else
            text_format(&text, "%s %s", is_coin(spacer->thing[i]) ? "a" : "a piece of", thing->name);
    }
    const char *words = arena_text(arena, text.bytes, text.length);
    text_finish(&text);
    return words;
}
