#include "wall/document.h"

#include "base/panic.h"
#include "wall/change.h"
#include "wall/check.h"

#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/*
 *      steps   [0]  [1]  [2]  [3]  [4]        each a whole wall in an arena of its own; [0] is how it began and has
 *                         ^at                 no name; steps[at] is the wall as it is, what lies behind can be redone
 */

typedef struct Step {
    Arena *arena;
    Wall *wall;
    char name[STEP_NAME_MOST];
} Step;

struct Document {
    Step *steps;
    int count;
    int room;
    int at;
    uint64_t version;
    Nudged nudged; /* by the last change */
    Step saved;
    Arena *scratch;
    Wall *changing; /* in scratch, between begin and commit */
};

/* ---- steps ---- */

static Step step_of(const Wall *wall, const char *name)
{
    Step step = {.arena = arena_new()};
    step.wall = wall_copy(step.arena, wall);
    snprintf(step.name, sizeof step.name, "%s", name);
    return step;
}

/* Forgets the steps behind the first `count`. */
static void cut_steps(Document *document, int count)
{
    while (document->count > count)
        arena_free(document->steps[--document->count].arena);
}

static void add_step(Document *document, const Wall *wall, const char *name)
{
    if (document->count == document->room) {
        const int room = document->room == 0 ? 16 : 2 * document->room;
        Step *steps = realloc(document->steps, (size_t)room * sizeof *steps);
        if (steps == NULL)
            panic_no_memory();
        document->steps = steps;
        document->room = room;
    }
    document->steps[document->count++] = step_of(wall, name);
}

Document *document_new(const Wall *wall)
{
    Document *document = calloc(1, sizeof *document);
    if (document == NULL)
        panic_no_memory();
    document->scratch = arena_new();
    document->version = 1;
    add_step(document, wall, "");
    document->saved = step_of(wall, "");
    return document;
}

void document_free(Document *document)
{
    if (document == NULL)
        return;
    cut_steps(document, 0);
    free(document->steps);
    arena_free(document->saved.arena);
    arena_free(document->scratch);
    free(document);
}

/* ---- as it is ---- */

const Wall *document_wall(const Document *document)
{
    return document->steps[document->at].wall;
}

uint64_t document_version(const Document *document)
{
    return document->version;
}

bool document_changed(const Document *document)
{
    return !wall_equal(document_wall(document), document->saved.wall);
}

void document_mark_saved(Document *document)
{
    arena_free(document->saved.arena);
    document->saved = step_of(document_wall(document), "");
    document_end_run(document);
}

/* ---- back and forth ---- */

const char *document_undo_name(const Document *document)
{
    return document->at > 0 ? document->steps[document->at].name : NULL;
}

const char *document_redo_name(const Document *document)
{
    return document->at + 1 < document->count ? document->steps[document->at + 1].name : NULL;
}

static bool move(Document *document, int by)
{
    const int to = document->at + by;
    document_end_run(document);
    if (to < 0 || to >= document->count)
        return false;
    document->at = to;
    document->version++;
    return true;
}

bool document_undo(Document *document)
{
    return move(document, -1);
}

bool document_redo(Document *document)
{
    return move(document, 1);
}

void document_end_run(Document *document)
{
    document->nudged = (Nudged){.kind = NUDGED_NOTHING};
}

/* ---- changes ---- */

static bool goes_on(const Document *document, Nudged nudged)
{
    return nudged.kind != NUDGED_NOTHING && nudged.kind == document->nudged.kind && nudged.id == document->nudged.id &&
           document->at > 0;
}

const Wall *document_before_nudges(const Document *document, Nudged nudged)
{
    return document->steps[document->at - (goes_on(document, nudged) ? 1 : 0)].wall;
}

Wall *document_begin(Document *document)
{
    arena_reset(document->scratch);
    document->changing = wall_copy(document->scratch, document_wall(document));
    return document->changing;
}

bool document_commit(Document *document, Nudged nudged, const char *name, Err *err)
{
    BUG_UNLESS(document->changing != NULL);
    /* deep, so that what the caller lent is let go; and with no text NULL */
    const Wall *wall = wall_copy(document->scratch, document->changing);
    document->changing = NULL;
    const Problems problems = wall_check(document->scratch, wall);
    if (problems.count > 0) {
        err_set(err, ERR_VALUE, "%s", problems.at[0].text);
        return err_at(err, problems.at[0].path, 0, 0);
    }
    const bool same_nudge = goes_on(document, nudged);
    if (!wall_equal(wall, document_wall(document))) {
        cut_steps(document, document->at + (same_nudge ? 0 : 1));
        document->at = document->count - 1;
        /* nudges that led back to where they began are no step at all */
        if (!same_nudge || !wall_equal(wall, document_wall(document))) {
            add_step(document, wall, name);
            document->at = document->count - 1;
            document->nudged = nudged;
        } else {
            document_end_run(document);
        }
        document->version++;
    } else if (!same_nudge) {
        document_end_run(document);
    }
    arena_reset(document->scratch);
    return true;
}

bool document_step(Document *document, Err *err, const char *format, ...)
{
    char name[STEP_NAME_MOST];
    va_list list;
    va_start(list, format);
    vsnprintf(name, sizeof name, format, list);
    va_end(list);
    return document_commit(document, (Nudged){.kind = NUDGED_NOTHING}, name, err);
}

bool document_refuse(Err *err, const char *place, const char *text)
{
    err_set(err, ERR_VALUE, "%s", text);
    return err_at(err, place, 0, 0);
}

void document_take_out(void *at, int *count, int index, size_t size)
{
    char *item = (char *)at + (size_t)index * size;
    memmove(item, item + size, (size_t)(*count - index - 1) * size);
    (*count)--;
}

void document_move_last(void *at, int count, int index, size_t size)
{
    for (int i = count - 1; i > index; i--) {
        unsigned char *item = (unsigned char *)at + (size_t)i * size;
        for (size_t k = 0; k < size; k++) {
            const unsigned char held = item[k];
            item[k] = *(item + k - size);
            *(item + k - size) = held;
        }
    }
}

Arena *document_arena(Document *document)
{
    return document->scratch;
}
