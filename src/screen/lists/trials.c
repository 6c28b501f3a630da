#include "screen/lists/trials.h"

#include "base/utf8.h"
#include "job/start_words.h"
#include "job/start_work.h"
#include "job/words.h"
#include "trade/say.h"
#include "trade/widths.h"

static const char hung_already[] = "Pieces hang already, and the start, the widths and the reveal belong to what "
                                   "hangs: there is nothing to choose here any more. Esc goes back.";

static bool anything_hung(const Wall *wall)
{
    return wall->hung_pieces.count + wall->hung_edges.count > 0;
}

/* A word and its figure in a column of its own; a space stands behind it however long it is. */
static void put_column(Text *line, const char *word, const char *figure, int cells)
{
    size_t from = line->length;
    text_format(line, "%s %s ", word, figure);
    text_pad(line, from, cells);
}

/* "whole" where no strip is cut there: the narrowest is as wide as a course. */
static const char *strip_figure(Arena *arena, const Wall *wall, Length strip, bool whole)
{
    return whole ? "whole" : words_length(arena, wall, strip);
}

static const char *kept(Arena *arena, Text *text)
{
    const char *copy = arena_text(arena, text->bytes, text->length);
    text_finish(text);
    return copy;
}

/* ---- starts ---- */

static Length narrowest_face(const Wall *wall)
{
    Length least = wall_course_face(wall, 0);
    for (int i = 1; i < wall->planks.widths.count; i++)
        if (wall_course_face(wall, i) < least)
            least = wall_course_face(wall, i);
    return least;
}

static const char *start_whole(Arena *arena, const Wall *wall, const Start *start, const StartWork *work)
{
    Text text;
    text_init(&text);
    text_format(&text, "%s. %s %s", words_capital(arena, start_words_why(arena, start)),
                start_words_strips(arena, wall, start), start_words_work(arena, start, work));
    for (int i = 0; i < start->opening_count; i++)
        text_format(&text, " %s%s", words_capital(arena, start_words_opening(arena, wall, &start->openings[i])),
                    i + 1 < start->opening_count ? ";" : ".");
    return kept(arena, &text);
}

static void add_start(Trial *trial, const Wall *wall, const Start *start, const StartWork *work)
{
    Arena *arena = trial->arena;
    Length face = narrowest_face(wall);
    Text left;
    text_init(&left);
    put_column(&left, "start", words_length(arena, wall, start->start), 15);
    put_column(&left, "least", strip_figure(arena, wall, start->least, !start->narrowest.found), 14);
    put_column(&left, "top", strip_figure(arena, wall, start->ceiling, start->ceiling >= face), 12);
    text_format(&left, "bottom %s", strip_figure(arena, wall, start->floor, start->floor >= face));
    *arena_push(arena, &trial->lines) = (TrialLine){.start = start->start,
                                                    .reveal = wall->planks.reveal,
                                                    .left = kept(arena, &left),
                                                    .right = start->why_count > 0 ? start->why[0] : "",
                                                    .whole = start_whole(arena, wall, start, work)};
}

void trials_starts(App *app)
{
    const Wall *wall = app_wall(app);
    const Layout *layout = app_work(app)->layout;
    Trial *trial = trial_new("Start heights worth considering, best first", "set the start");
    trial->nothing = hung_already;
    if (layout == NULL) {
        trial->nothing = app->work.err.text;
    } else {
        Starts starts = starts_of_layout(trial->arena, layout);
        const StartWork *work = start_work(trial->arena, wall, &starts);
        for (int i = 0; i < starts.count; i++)
            add_start(trial, wall, &starts.at[i], &work[i]);
    }
    trial_open(app, trial);
}

/* ---- widths and reveals ---- */

static const char *choice_whole(Arena *arena, const Wall *wall, const WidthChoice *choice)
{
    const char *keeper = "";
    if (choice->by_spacer)
        keeper = words(arena, " Reveal kept by %s, %s.", spacer_words(arena, &choice->spacer),
                       say_thin(arena, wall, choice->spacer.thickness));
    const char *boards = "";
    if (choice->change != 0 && !choice->by_spacer)
        boards = words(arena, " Wide enough for it: %s.", say_count(arena, choice->boards, "board", "boards"));
    return words(arena, "%s, reveal %s, with the best start for it, %s. %s%s%s",
                 words(arena, wall->planks.widths.count > 1 ? "Widest plank %s" : "Plank %s",
                       words_length_unit(arena, wall, choice->width)),
                 say_fine(arena, wall, choice->reveal), words_mark(arena, wall, choice->best.start),
                 choice->whole ? "Whole courses only: nothing is ripped."
                               : start_words_strips(arena, wall, &choice->best),
                 keeper, boards);
}

static void add_choice(Trial *trial, const Wall *wall, const WidthChoice *choice, bool reveal)
{
    Arena *arena = trial->arena;
    Text left;
    text_init(&left);
    if (reveal)
        put_column(&left, "reveal", say_fine(arena, wall, choice->reveal), 19);
    else
        put_column(&left, "width", words_length(arena, wall, choice->width), 19);
    put_column(&left, "start", words_length(arena, wall, choice->best.start), 15);
    text_format(&left, "least %s", strip_figure(arena, wall, choice->best.least, choice->whole));
    const char *right = choice->by_spacer ? spacer_words(arena, &choice->spacer) : "";
    *arena_push(arena, &trial->lines) = (TrialLine){.start = choice->best.start,
                                                    .change = reveal ? 0 : choice->change,
                                                    .reveal = choice->reveal,
                                                    .left = kept(arena, &left),
                                                    .right = choice->change == 0 ? "as written" : right,
                                                    .whole = choice_whole(arena, wall, choice)};
}

void trials_widths(App *app)
{
    const Wall *wall = app_wall(app);
    const Layout *layout = app_work(app)->layout;
    Trial *trial = trial_new("Widths, then reveals, each with its best start", "choose other planks");
    trial->nothing = hung_already;
    if (layout == NULL) {
        trial->nothing = app->work.err.text;
    } else if (!anything_hung(wall)) {
        WidthChoices widths = widths_worth(trial->arena, layout);
        for (int i = 0; i < widths.count; i++)
            add_choice(trial, wall, &widths.at[i], false);
        WidthChoices reveals = reveals_worth(trial->arena, layout);
        for (int i = 0; i < reveals.count; i++)
            add_choice(trial, wall, &reveals.at[i], true);
    }
    trial_open(app, trial);
}

/* ---- spacers ---- */

static const char *spacer_whole(Arena *arena, const Wall *wall, const Spacer *spacer)
{
    const char *text = words(arena, "%s: %s, which is %s.", words_capital(arena, spacer_words(arena, spacer)),
                             say_thin(arena, wall, spacer->thickness), say_fine(arena, wall, spacer->thickness));
    for (int i = 0; i < spacer->kinds; i++) {
        const SpacerThing *thing = spacer_thing(spacer->thing[i]);
        if (spacer->kinds > 1 || spacer->count[0] > 1)
            text = words(arena, "%s %s: %s each.", text, words_capital(arena, thing->name),
                         say_thin(arena, wall, thing->thickness));
        if (i == 0 || thing->source != spacer_thing(spacer->thing[0])->source)
            text = words(arena, "%s Source: %s.", text, thing->source);
    }
    return words(arena, "%s Worn or bent ones differ: measure a stack of ten. The start stays where it is.", text);
}

static void add_spacer(Trial *trial, const Wall *wall, const Spacer *spacer)
{
    Arena *arena = trial->arena;
    Text left;
    text_init(&left);
    put_column(&left, say_thin(arena, wall, spacer->thickness), "", 10);
    text_put(&left, spacer_words(arena, spacer));
    *arena_push(arena, &trial->lines) =
        (TrialLine){.start = wall->start,
                    .reveal = spacer->thickness,
                    .left = kept(arena, &left),
                    .right = spacer->thickness == wall->planks.reveal ? "as written" : "",
                    .whole = spacer_whole(arena, wall, spacer)};
}

/* Off-cuts of two gauges are not kept together; coins of two kinds are in every pocket. */
static bool handy(const Spacer *spacer)
{
    return spacer->kinds == 1 || spacer_thing(spacer->thing[0])->coin;
}

/* The one nearest to the reveal as it is. */
static int nearest_line(const TrialLines *lines, Length reveal)
{
    int nearest = 0;
    for (int i = 1; i < lines->count; i++) {
        Length off = lines->at[i].reveal - reveal, best = lines->at[nearest].reveal - reveal;
        if ((off < 0 ? -off : off) < (best < 0 ? -best : best))
            nearest = i;
    }
    return nearest;
}

void trials_spacers(App *app)
{
    const Wall *wall = app_wall(app);
    Length reveal = wall->planks.reveal;
    Trial *trial = trial_new("Reveal by things at hand, thinnest first", "set the reveal by a spacer");
    trial->nothing = anything_hung(wall) ? hung_already : "Nothing at hand is as thick as that. Esc goes back.";
    if (!anything_hung(wall)) {
        Spacers spacers = spacer_choices(trial->arena, reveal / 2, reveal > 0 ? reveal * 2 : LENGTH_INCH / 8);
        for (int i = 0; i < spacers.count; i++)
            if (handy(&spacers.at[i]))
                add_spacer(trial, wall, &spacers.at[i]);
        trial->focus = nearest_line(&trial->lines, reveal);
    }
    trial_open(app, trial);
}

/* ---- spending ---- */

static const char *share(Arena *arena, const TrialLine *line)
{
    return line->spend_all ? "all" : words(arena, "%d %%", (int)(line->spend / 1000));
}

/* Once the plan of the line in focus is final, its figures. */
static void learn_spending(App *app, Trial *trial)
{
    TrialLine *line = &trial->lines.at[trial->focus];
    const Work *work = app_work(app);
    if (line->known || work->layout == NULL || !work->filled)
        return;
    line->known = true;
    Arena *arena = trial->arena;
    const Wall *wall = app_wall(app);
    const Plan *plan = fill_plan(work->fill);
    const Looks *looks = &plan->looks;
    Text left;
    text_init(&left);
    text_format(&left, "%-6s ", share(arena, line));
    put_column(&left, say_count(arena, plan->boards_opened, "board", "boards"), "", 11);
    put_column(&left, say_count(arena, plan->joints, "joint", "joints"), "", 11);
    text_format(&left, "%d stacked", looks->stacked);
    line->left = kept(arena, &left);
    line->whole = words(
        arena, "Uses %s of boards. %s, %d over a joint one or two courses below, %s, %s%s.",
        words_length_unit(arena, wall, plan->length_opened), say_count(arena, plan->joints, "joint", "joints"),
        looks->stacked, say_count(arena, looks->stairs, "stair of three", "stairs of three"),
        say_count(arena, looks->short_pairs, "pair of short pieces", "pairs of short pieces"),
        looks->touching == 0 ? "" : words(arena, "; %d of %d neighbors of one tone", looks->equal, looks->touching));
}

void trials_spending(App *app)
{
    static const int64_t shares[] = {0, 1, 2, 5, 10, 20};
    enum { SHARES = sizeof shares / sizeof *shares };
    const Joints *joints = &app_wall(app)->joints;
    Trial *trial = trial_new("Fewer joints for more wood: up to so much more length", "choose what may be spent");
    for (int i = 0; i <= SHARES; i++) {
        TrialLine line = {.spends = true, .spend = i < SHARES ? shares[i] * 1000 : 0, .spend_all = i == SHARES};
        const bool written = line.spend == joints->spend && line.spend_all == joints->spend_all;
        line.left = words(trial->arena, "%-6s move here to see what it buys", share(trial->arena, &line));
        line.right = written ? "as written" : "";
        line.whole = "What it buys is being worked out.";
        if (written)
            trial->focus = i;
        *arena_push(trial->arena, &trial->lines) = line;
    }
    trial->learn = learn_spending;
    trial_open(app, trial);
}
