#include "trade/tally.h"

#include "trade/assume.h"
#include "trade/say.h"

#include <string.h>

/*
 *     |sq|-- stretch --|avoid|--|avoid|------ stretch ------|sq|
 *                             ^ shorter than `joints.shortest`: no piece comes out of it
 */

static Length stretch(const Wall *wall, Length from, Length to)
{
    Length least = wall->joints.shortest > 0 ? wall->joints.shortest : 1;
    return to - from >= least ? to - from : 0;
}

Length tally_usable(const Wall *wall, Length from, Length to, const Stretches *avoid)
{
    Length usable = 0;
    for (int i = 0; i < avoid->count; i++) {
        usable += stretch(wall, from, avoid->at[i].from < to ? avoid->at[i].from : to);
        from = avoid->at[i].to > from ? avoid->at[i].to : from;
    }
    return usable + stretch(wall, from, to);
}

static Length usable_of(const Wall *wall, const Stock *stock)
{
    return tally_usable(wall, wall->saw.square, stock->length - wall->saw.square, &stock->avoid);
}

static void count_tone(Arena *arena, Tally *tally, const Wall *wall, const Stock *stock)
{
    const char *tone = stock->tone ? stock->tone : "";
    int i = 0;
    while (i < tally->tone_count && strcmp(tally->tones[i].tone, tone) != 0)
        i++;
    if (!tally->tones)
        tally->tones = arena_array(arena, TallyTone, wall->stock.count);
    if (i == tally->tone_count)
        tally->tones[tally->tone_count++].tone = tone;
    tally->tones[i].boards += stock->count;
    tally->tones[i].running += stock->length * stock->count;
}

static void count_boards(Arena *arena, const Wall *wall, Tally *tally)
{
    for (int i = 0; i < wall->stock.count; i++) {
        const Stock *stock = &wall->stock.at[i];
        tally->boards += stock->count;
        tally->running += stock->length * stock->count;
        tally->usable += usable_of(wall, stock) * stock->count;
        if (tally->shortest == 0 || stock->length < tally->shortest)
            tally->shortest = stock->length;
        if (stock->length > tally->longest)
            tally->longest = stock->length;
        count_tone(arena, tally, wall, stock);
    }
}

static Length widest_board(const Wall *wall)
{
    Length widest = 0;
    for (int i = 0; i < wall->stock.count; i++) {
        Length width = wall->stock.at[i].width_given ? wall->stock.at[i].width : wall_widest(wall);
        widest = width > widest ? width : widest;
    }
    return widest;
}

static void count_needs(const Layout *layout, Tally *tally)
{
    const Wall *wall = layout->wall;
    Length widest = widest_board(wall);
    for (int i = 0; i < wall->faces.count; i++)
        for (int j = 0; j < layout->faces[i].course_count; j++) {
            const Course *course = &layout->faces[i].courses[j];
            for (int k = 0; k < course->segment_count; k++) {
                const Segment *segment = &course->segments[k];
                Length length = segment->right - segment->left;
                tally->needed += length;
                if (tally->boards > 0 && layout_need(wall, course, segment->left, segment->right) > widest)
                    tally->too_wide += length;
            }
        }
    for (int i = 0; i < wall->hung_pieces.count; i++)
        tally->hung += wall->hung_pieces.at[i].right - wall->hung_pieces.at[i].left;
}

static const char *words(Arena *arena, const Wall *wall, const Tally *tally)
{
    char there[LENGTH_TEXT_MAX];
    char needed[LENGTH_TEXT_MAX];
    char missing[LENGTH_TEXT_MAX];
    Length step = wall->units == UNITS_IN ? LENGTH_INCH : 10 * LENGTH_MM;
    length_show_long(tally->usable, wall->units, step, there);
    length_show_long(tally->needed, wall->units, step, needed);
    length_show_long(tally->missing, wall->units, step, missing);
    const char *boards = say_count(arena, tally->boards, "board", "boards");
    const char *share =
        say(arena, "%s, %s usable; the wall needs %s: %d %% covered", boards, there, needed, tally->share / 100);
    if (tally->missing == 0)
        return say(arena, "%s, with the spare", share);
    if (tally->more_boards == 0)
        return say(arena, "%s, %s short with the spare", share, missing);
    return say(arena, "%s, %s short with the spare, about %s more like these", share, missing,
               say_count(arena, tally->more_boards, "board", "boards"));
}

/* More than there can be in a file is told as so many. */
static int few(Wide count)
{
    return count < WALL_BOARDS_MOST ? (int)count : WALL_BOARDS_MOST;
}

Tally tally_of(Arena *arena, const Layout *layout)
{
    const Wall *wall = layout->wall;
    Tally tally = {0};
    count_boards(arena, wall, &tally);
    count_needs(layout, &tally);
    Length wanted = assume_more(tally.needed, assume(wall, ASSUME_SPARE).value);
    tally.missing = wanted > tally.usable ? wanted - tally.usable : 0;
    tally.share = 10000;
    if (tally.usable < tally.needed)
        tally.share = (int)wide_floor((Wide)tally.usable * 10000, tally.needed);
    if (tally.missing > 0 && tally.usable > 0)
        tally.more_boards = few(wide_ceiling((Wide)tally.missing * tally.boards, tally.usable));
    tally.text = words(arena, wall, &tally);
    return tally;
}
