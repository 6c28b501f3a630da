#include "screen/question.h"

#include "base/panic.h"
#include "sheet/plain.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { TEXT_MOST = 1024, WIDE_MOST = 70 };

typedef struct Question {
    char title[80];
    char text[TEXT_MOST];
    Choice choices[CHOICES_MOST];
    int count;
    int focus;
    Answer *answer;
} Question;

/* Folded at spaces; returns how many lines there are. */
static int text_lines(Grid *grid, Rect area, const char *text, bool draw)
{
    int begin, length, lines = 0;
    for (; (length = plain_fold(text, area.columns, lines, &begin)) >= 0; lines++)
        if (draw)
            grid_format(grid, area.x, area.y + lines, area.columns, STYLE_PLAIN, "%.*s", length, text + begin);
    return lines;
}

static void question_draw(App *app, Layer *layer, Grid *grid, Rect area)
{
    (void)app;
    const Question *question = layer->state;
    int wide = area.columns < WIDE_MOST ? area.columns : WIDE_MOST;
    Rect inner = {0, 0, wide - 4 > 1 ? wide - 4 : 1, 0};
    int lines = text_lines(grid, inner, question->text, false);
    int rows = lines + question->count + 3;
    Rect panel = {area.x + (area.columns - wide) / 2, area.y + (area.rows - rows) / 2, wide, rows};
    if (panel.y < area.y)
        panel.y = area.y;
    grid_panel(grid, panel, question->title);
    inner.x = panel.x + 2;
    inner.y = panel.y + 1;
    text_lines(grid, inner, question->text, true);
    for (int i = 0; i < question->count; i++) {
        int y = inner.y + lines + 1 + i;
        char label[24];
        key_label(question->choices[i].key, grid->ascii, label, sizeof label);
        grid_text(grid, inner.x, y, 3, STYLE_KEY, label);
        grid_text(grid, inner.x + 3, y, inner.columns - 3, STYLE_PLAIN, question->choices[i].words);
        if (i == question->focus) {
            grid_restyle(grid, (Rect){inner.x, y, inner.columns, 1}, STYLE_CHOSEN);
            grid_cursor(grid, inner.x, y);
        }
    }
}

static void answer(App *app, const Question *question, int choice)
{
    Answer *call = question->answer;
    app_pop(app);
    call(app, choice);
}

static bool question_key(App *app, Layer *layer, Key key)
{
    const Question *question = layer->state;
    if (key >= 'A' && key <= 'Z')
        key += 'a' - 'A';
    for (int i = 0; i < question->count; i++)
        if (question->choices[i].key == key) {
            answer(app, question, i);
            return true;
        }
    return key_is_text(key);
}

static bool question_act(App *app, Layer *layer, ActionId action)
{
    Question *question = layer->state;
    if (action == ACTION_NEXT)
        question->focus = (question->focus + 1) % question->count;
    else if (action == ACTION_PREVIOUS)
        question->focus = (question->focus + question->count - 1) % question->count;
    else if (action == ACTION_CHOOSE)
        answer(app, question, question->focus);
    else if (action == ACTION_BACK)
        answer(app, question, -1);
    else
        return action == ACTION_LEAVE; /* a question is answered first */
    return true;
}

static const View question_view = {
    .places = PLACE_QUESTION,
    .draw = question_draw,
    .key = question_key,
    .act = question_act,
    .finish = free,
};

void question_ask(App *app, const char *title, const char *text, const Choice *choices, int count, Answer *call)
{
    BUG_UNLESS(count > 0 && count <= CHOICES_MOST);
    Question *question = calloc(1, sizeof *question);
    if (question == NULL)
        panic(__FILE__, __LINE__, "out of memory");
    snprintf(question->title, sizeof question->title, "%s", title);
    snprintf(question->text, sizeof question->text, "%s", text);
    memcpy(question->choices, choices, (size_t)count * sizeof *choices);
    question->count = count;
    question->answer = call;
    app_push(app, &question_view, question);
}
