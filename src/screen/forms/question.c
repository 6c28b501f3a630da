#include "screen/forms/question.h"

#include "base/fold.h"
#include "base/panic.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/*
 * What is asked, where there is room and where there is little. Answers get their rows first, folded where all of them
 * fit so; the text gets what is left, and is moved through with Page Down where that is too little.
 *
 *     +-- title ------------------------+      title (no frame)
 *     | text                            |      text, as far as there are rows
 *     |                                 |    > k  an answer
 *     |>k  an answer that is folded     |      f  another
 *     |    over two lines               |
 *     +---------------------------------+
 */
enum { TEXT_MOST = 1024, WIDE_MOST = 70, KEY_CELLS = 3 };

typedef struct Question {
    char title[80];
    char text[TEXT_MOST];
    Choice choices[CHOICES_MOST];
    int count;
    int focus;
    int top; /* first line of the text that is shown */
    Answer *answer;
} Question;

static int lines_of(const char *text, int cells)
{
    int begin, lines = 0;
    while (fold_line(text, cells, lines, &begin) >= 0)
        lines++;
    return lines;
}

/* Folded at spaces, from line `top` on, into at most `area.rows`. */
static void draw_folded(Grid *grid, Rect area, const char *text, int top)
{
    int begin, length;
    for (int i = 0; i < area.rows && (length = fold_line(text, area.columns, top + i, &begin)) >= 0; i++)
        grid_format(grid, area.x, area.y + i, area.columns, STYLE_PLAIN, "%.*s", length, text + begin);
}

/* How the rows are shared out. */
typedef struct Share {
    bool framed;
    bool apart;             /* a blank line between text and answers */
    int title;              /* rows of the title without a frame: 0 or 1 */
    int text;               /* rows of the text */
    int first, last;        /* answers that are shown: first .. last - 1 */
    int rows[CHOICES_MOST]; /* of each answer */
    int whole;              /* rows of all that is shown, the frame counted */
} Share;

/* One row an answer; those round the one in focus where even that is too much. The one in focus is told in full where
 * rows are left. */
static int squeeze(const Question *question, int cells, int room, Share *share)
{
    int most = room < question->count ? room : question->count, used = 0;
    most = most < 0 ? 0 : most;
    share->first = question->focus - most + 1 > 0 ? question->focus - most + 1 : 0;
    share->last = share->first + most;
    for (int i = share->first; i < share->last; i++)
        used += share->rows[i] = 1;
    int more = lines_of(question->choices[question->focus].words, cells) - 1;
    if (more > room - used)
        more = room - used;
    if (most > 0 && more > 0) {
        share->rows[question->focus] += more;
        used += more;
    }
    return used;
}

static Share share_out(const Question *question, int columns, int rows)
{
    Share share = {.first = 0, .last = question->count};
    int cells = columns - 4 - KEY_CELLS, answers = 0;
    for (int i = 0; i < question->count; i++)
        answers += share.rows[i] = lines_of(question->choices[i].words, cells > 1 ? cells : 1);
    int text = lines_of(question->text, columns - 4 > 1 ? columns - 4 : 1);
    share.framed = rows >= answers + text + 2;
    share.title = !share.framed && rows > question->count ? 1 : 0;
    int room = rows - (share.framed ? 2 : share.title);
    if (answers > room)
        answers = squeeze(question, cells > 1 ? cells : 1, room, &share);
    room -= answers;
    share.text = text < room ? text : room;
    share.apart = share.framed && text < room;
    share.whole = answers + share.text + (share.apart ? 1 : 0) + (share.framed ? 2 : share.title);
    return share;
}

static void draw_answer(const Question *question, Grid *grid, Rect row, int index)
{
    char label[24];
    key_label(question->choices[index].key, grid->ascii, label, sizeof label);
    grid_text(grid, row.x, row.y, KEY_CELLS, STYLE_KEY, label);
    Rect words = {row.x + KEY_CELLS, row.y, row.columns - KEY_CELLS, row.rows};
    if (row.rows > 1)
        draw_folded(grid, words, question->choices[index].words, 0);
    else
        grid_text(grid, words.x, words.y, words.columns, STYLE_PLAIN, question->choices[index].words);
    if (index != question->focus)
        return;
    grid_restyle(grid, row, STYLE_CHOSEN);
    grid_glyph(grid, row.x - 1, row.y, GLYPH_CHOSEN, STYLE_STRONG);
    grid_cursor(grid, row.x, row.y);
}

static void question_draw(App *app, void *state, Grid *grid, Rect area)
{
    (void)app;
    Question *question = state;
    int wide = area.columns < WIDE_MOST ? area.columns : WIDE_MOST;
    Share share = share_out(question, wide, area.rows);
    Rect panel = {area.x + (area.columns - wide) / 2, area.y, wide, share.whole};
    if (share.framed) {
        panel.y += (area.rows - share.whole) / 2;
        grid_panel(grid, panel, question->title);
    } else {
        grid_fill(grid, area, ' ', STYLE_PLAIN);
        if (share.title > 0)
            grid_text(grid, panel.x + 2, panel.y, wide - 2, STYLE_STRONG, question->title);
    }
    Rect inside = {panel.x + 2, panel.y + (share.framed ? 1 : share.title), wide - 4, share.text};
    int lines = lines_of(question->text, inside.columns > 1 ? inside.columns : 1);
    if (question->top > lines - share.text)
        question->top = lines - share.text;
    draw_folded(grid, inside, question->text, question->top);
    if (share.text > 0 && question->top + share.text < lines)
        grid_glyph(grid, inside.x + inside.columns, inside.y + share.text - 1, GLYPH_POINT_DOWN, STYLE_KEY);
    if (share.text > 0 && question->top > 0)
        grid_glyph(grid, inside.x + inside.columns, inside.y, GLYPH_POINT_UP, STYLE_KEY);
    int y = inside.y + share.text + (share.apart ? 1 : 0);
    for (int i = share.first; i < share.last; i++) {
        draw_answer(question, grid, (Rect){inside.x, y, inside.columns, share.rows[i]}, i);
        y += share.rows[i];
    }
}

static void answer(App *app, const Question *question, int choice)
{
    Answer *call = question->answer;
    layers_pop(&app->layers);
    call(app, choice);
}

static bool question_key(App *app, void *state, Key key)
{
    Question *question = state;
    if (key == PRESS_PAGE_DOWN || key == PRESS_PAGE_UP) {
        question->top += key == PRESS_PAGE_DOWN ? 1 : question->top > 0 ? -1 : 0; /* held to the text when drawn */
        return true;
    }
    if (key >= 'A' && key <= 'Z')
        key += 'a' - 'A';
    for (int i = 0; i < question->count; i++)
        if (question->choices[i].key == key) {
            answer(app, question, i);
            return true;
        }
    return key_is_text(key);
}

static void question_step(App *app, void *state, int by)
{
    (void)app;
    Question *question = state;
    question->focus = (question->focus + by + question->count) % question->count;
}

static void question_choose(App *app, void *state)
{
    const Question *question = state;
    answer(app, question, question->focus);
}

static bool question_back(App *app, void *state)
{
    answer(app, state, -1);
    return false;
}

static const View question_view = {
    .places = PLACE_QUESTION,
    .draw = question_draw,
    .key = question_key,
    .step = question_step,
    .choose = question_choose,
    .back = question_back,
    .finish = free,
};

void question_ask(App *app, const char *title, const char *text, const Choice *choices, int count, Answer *call)
{
    BUG_UNLESS(count > 0 && count <= CHOICES_MOST);
    Question *question = calloc(1, sizeof *question);
    if (question == NULL)
        panic_no_memory();
    snprintf(question->title, sizeof question->title, "%s", title);
    snprintf(question->text, sizeof question->text, "%s", text);
    memcpy(question->choices, choices, (size_t)count * sizeof *choices);
    question->count = count;
    question->answer = call;
    layers_push(&app->layers, &question_view, question);
}

bool question_waits(App *app)
{
    return layers_top(&app->layers)->view == &question_view;
}
