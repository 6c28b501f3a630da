/*
 * A question laid over everything: a few lines of text and what can be answered, each with its key. Esc is the answer
 * that changes nothing. It knows nothing of what is asked.
 */
#ifndef SCREEN_FORMS_QUESTION_H
#define SCREEN_FORMS_QUESTION_H

#include "screen/app/app.h"

typedef struct Choice {
    Key key; /* small letter */
    const char *words;
} Choice;

enum { CHOICES_MOST = 6 };

/* Gets the index of the choice; -1 where Esc was pressed. The question is gone when it is called. */
typedef void Answer(App *app, int choice);

void question_ask(App *app, const char *title, const char *text, const Choice *choices, int count, Answer *call);

/* Whether a question is on top. */
bool question_waits(App *app);

#endif
