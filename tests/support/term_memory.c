#include "support/term_memory.h"

#include "base/arena.h"
#include "base/utf8.h"

#include <stdlib.h>
#include <string.h>

typedef enum ScriptKind {
    SCRIPT_KEY,
    SCRIPT_PASTE,
    SCRIPT_RESIZE,
    SCRIPT_PASS,
    SCRIPT_STOP,
    SCRIPT_HANG_UP
} ScriptKind;

typedef struct Line {
    ScriptKind kind;
    Key key;
    char *text;
    int columns, rows;
    int milliseconds;
} Line;

typedef struct Script {
    Line *at;
    int count;
    int room;
} Script;

typedef struct Memory {
    Term term; /* first: a Term * is a Memory * */
    Arena *arena;
    Script script;
    int next; /* line of the script */
    bool idle;
    int columns, rows;
    int64_t now;
    Grid *picture;
    int pictures;
} Memory;

static Line *add(Term *term, ScriptKind kind)
{
    Memory *memory = (Memory *)term;
    Line *line = arena_push(memory->arena, &memory->script);
    *line = (Line){.kind = kind};
    memory->idle = false;
    return line;
}

static void memory_size(Term *term, int *columns, int *rows)
{
    *columns = ((Memory *)term)->columns;
    *rows = ((Memory *)term)->rows;
}

/* Time passes in steps no longer than the editor asked to wait, so that its own deadlines come true in between. */
static bool pass_time(Memory *memory, Line *line, int milliseconds)
{
    int step = milliseconds < 0 || milliseconds > line->milliseconds ? line->milliseconds : milliseconds;
    line->milliseconds -= step;
    memory->now += step;
    return line->milliseconds == 0;
}

static Happening memory_wait(Term *term, int milliseconds)
{
    Memory *memory = (Memory *)term;
    if (memory->next >= memory->script.count) {
        memory->idle = memory->idle || milliseconds != 0;
        return (Happening){.kind = HAPPENED_NOTHING};
    }
    Line *line = &memory->script.at[memory->next];
    if (line->kind == SCRIPT_PASS) {
        if (milliseconds != 0 && pass_time(memory, line, milliseconds))
            memory->next++;
        return (Happening){.kind = HAPPENED_NOTHING};
    }
    if (line->kind != SCRIPT_HANG_UP)
        memory->next++;
    switch (line->kind) {
    case SCRIPT_KEY: return (Happening){.kind = HAPPENED_KEY, .key = line->key};
    case SCRIPT_PASTE: return (Happening){.kind = HAPPENED_KEY, .key = PRESS_PASTE, .text = line->text};
    case SCRIPT_RESIZE:
        memory->columns = line->columns;
        memory->rows = line->rows;
        return (Happening){.kind = HAPPENED_RESIZE};
    case SCRIPT_STOP: return (Happening){.kind = HAPPENED_STOP};
    case SCRIPT_HANG_UP:
    case SCRIPT_PASS: break;
    }
    return (Happening){.kind = HAPPENED_GONE};
}

static void memory_show(Term *term, const Grid *grid)
{
    Memory *memory = (Memory *)term;
    if (memory->picture == NULL)
        memory->picture = grid_new(grid->columns, grid->rows);
    grid_copy(memory->picture, grid);
    memory->pictures++;
}

static int64_t memory_now(Term *term)
{
    return ((Memory *)term)->now;
}

static void memory_suspend(Term *term)
{
    (void)term;
}

static void memory_redraw(Term *term)
{
    (void)term;
}

static void memory_finish(Term *term)
{
    Memory *memory = (Memory *)term;
    grid_free(memory->picture);
    arena_free(memory->arena);
    free(memory);
}

Term *term_memory(int columns, int rows)
{
    Memory *memory = calloc(1, sizeof *memory);
    if (memory == NULL)
        abort();
    memory->arena = arena_new();
    memory->columns = columns;
    memory->rows = rows;
    memory->term = (Term){.utf8 = true,
                          .colour = true,
                          .size = memory_size,
                          .wait = memory_wait,
                          .show = memory_show,
                          .now = memory_now,
                          .suspend = memory_suspend,
                          .redraw = memory_redraw,
                          .finish = memory_finish};
    return &memory->term;
}

void memory_key(Term *term, Key key)
{
    add(term, SCRIPT_KEY)->key = key;
}

void memory_type(Term *term, const char *text)
{
    size_t left = strlen(text);
    while (left > 0) {
        uint32_t code;
        int bytes = utf8_decode(text, left, &code);
        if (bytes <= 0)
            return;
        memory_key(term, code);
        text += bytes;
        left -= (size_t)bytes;
    }
}

void memory_paste(Term *term, const char *text)
{
    Arena *arena = ((Memory *)term)->arena;
    add(term, SCRIPT_PASTE)->text = arena_text(arena, text, strlen(text));
}

void memory_resize(Term *term, int columns, int rows)
{
    Line *line = add(term, SCRIPT_RESIZE);
    line->columns = columns;
    line->rows = rows;
}

void memory_pass(Term *term, int milliseconds)
{
    add(term, SCRIPT_PASS)->milliseconds = milliseconds;
}

void memory_stop(Term *term)
{
    add(term, SCRIPT_STOP);
}

void memory_hang_up(Term *term)
{
    add(term, SCRIPT_HANG_UP);
}

bool memory_idle(const Term *term)
{
    return ((const Memory *)term)->idle;
}

const Grid *memory_picture(const Term *term)
{
    return ((const Memory *)term)->picture;
}

int memory_pictures(const Term *term)
{
    return ((const Memory *)term)->pictures;
}
