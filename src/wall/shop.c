#include "wall/shop.h"

#include <string.h>

static char *own_text(Arena *arena, const char *text)
{
    return arena_text(arena, text ? text : "", text ? strlen(text) : 0);
}

void shop_own(Arena *arena, Wall *wall)
{
    TrimRuns runs = {0};
    for (int i = 0; i < wall->trim.runs.count; i++) {
        TrimRun *run = arena_push(arena, &runs);
        *run = wall->trim.runs.at[i];
        run->opening = own_text(arena, run->opening);
    }
    wall->trim.runs = runs;
    Roughs roughs = {0};
    for (int i = 0; i < wall->rough.count; i++) {
        Rough *rough = arena_push(arena, &roughs);
        *rough = wall->rough.at[i];
        rough->label = own_text(arena, rough->label);
        rough->tone = own_text(arena, rough->tone);
        Stretches avoid = {0};
        for (int j = 0; j < rough->avoid.count; j++)
            *arena_push(arena, &avoid) = rough->avoid.at[j];
        rough->avoid = avoid;
    }
    wall->rough = roughs;
}

static bool same_text(const char *a, const char *b)
{
    return strcmp(a ? a : "", b ? b : "") == 0;
}

static bool same_number(Number a, Number b)
{
    return a.given == b.given && (!a.given || a.thousandths == b.thousandths);
}

static bool same_length(OwnLength a, OwnLength b)
{
    return a.given == b.given && (!a.given || a.length == b.length);
}

static bool same_run(const TrimRun *a, const TrimRun *b)
{
    return a->along == b->along && a->width == b->width && a->thickness_given == b->thickness_given &&
           (!a->thickness_given || a->thickness == b->thickness) && same_text(a->opening, b->opening);
}

static bool same_rough(const Rough *a, const Rough *b)
{
    if (!same_text(a->label, b->label) || !same_text(a->tone, b->tone) || a->width != b->width ||
        a->thickness != b->thickness || a->length != b->length || a->count != b->count || a->ends != b->ends ||
        a->avoid.count != b->avoid.count)
        return false;
    for (int i = 0; i < a->avoid.count; i++)
        if (a->avoid.at[i].from != b->avoid.at[i].from || a->avoid.at[i].to != b->avoid.at[i].to)
            return false;
    return true;
}

static bool same_mill(const Mill *a, const Mill *b)
{
    return a->given == b->given && (!a->given || (a->edge == b->edge && same_length(a->kerf, b->kerf) &&
                                                  a->plane == b->plane && a->keep == b->keep));
}

static bool same_bill(const Bill *a, const Bill *b)
{
    if (a->given != b->given || !a->given)
        return a->given == b->given;
    return same_number(a->spare, b->spare) && same_number(a->fasteners, b->fasteners) &&
           a->glue_given == b->glue_given && (!a->glue_given || a->glue == b->glue) && same_length(a->bead, b->bead) &&
           same_number(a->cartridge, b->cartridge) && same_number(a->coats, b->coats) &&
           same_number(a->coverage, b->coverage) && same_number(a->thinning, b->thinning) &&
           a->sheet.given == b->sheet.given &&
           (!a->sheet.given || (a->sheet.width == b->sheet.width && a->sheet.length == b->sheet.length)) &&
           same_length(a->nominal, b->nominal);
}

bool shop_equal(const Wall *a, const Wall *b)
{
    if (a->trim.runs.count != b->trim.runs.count || a->rough.count != b->rough.count)
        return false;
    for (int i = 0; i < a->trim.runs.count; i++)
        if (!same_run(&a->trim.runs.at[i], &b->trim.runs.at[i]))
            return false;
    for (int i = 0; i < a->rough.count; i++)
        if (!same_rough(&a->rough.at[i], &b->rough.at[i]))
            return false;
    return same_mill(&a->mill, &b->mill) && same_bill(&a->bill, &b->bill);
}
