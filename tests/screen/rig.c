#include "rig.h"

#include "base/file.h"
#include "base/panic.h"
#include "screen/forms/file.h"
#include "support/picture.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

#define SIXTEENTHS(count) ((count)*LENGTH_INCH / 16)
#define INCHES(whole, sixteenths) ((whole)*LENGTH_INCH + SIXTEENTHS(sixteenths))

static char *words(Arena *arena, const char *text)
{
    return arena_text(arena, text, strlen(text));
}

static void add_opening(Arena *arena, Wall *wall, Face *face, const Opening *opening, const char *name)
{
    Opening *added = arena_push(arena, &face->openings);
    *added = *opening;
    added->id = wall->next_id++;
    added->name = words(arena, name);
}

static Face *add_face(Arena *arena, Wall *wall, const char *name, Length width)
{
    Face *face = arena_push(arena, &wall->faces);
    *face = (Face){.id = wall->next_id++, .name = words(arena, name), .width = width};
    return face;
}

static void add_mark(Arena *arena, Marks *marks, Length at, Length off)
{
    *arena_push(arena, marks) = (Mark){at, off};
}

Wall *rig_wall(Arena *arena)
{
    Wall *wall = wall_new(arena, UNITS_IN);
    wall->title = words(arena, "Boathouse reading wall");
    *arena_push(arena, &wall->planks.widths) = INCHES(2, 12);
    wall->planks.thickness = INCHES(0, 8);
    wall->planks.reveal = INCHES(0, 1);
    wall->planks.least_given = true;
    wall->planks.least = INCHES(0, 12);
    wall->start = INCHES(2, 4);
    wall->saw = (Saw){INCHES(0, 2), INCHES(0, 4)};
    Face *north = add_face(arena, wall, "north", INCHES(141, 6));
    add_mark(arena, &north->floor, 0, INCHES(40, 8));
    add_mark(arena, &north->floor, INCHES(141, 6), INCHES(39, 15));
    add_mark(arena, &north->ceiling, 0, INCHES(53, 0));
    add_mark(arena, &north->ceiling, INCHES(70, 0), INCHES(53, 3));
    add_mark(arena, &north->ceiling, INCHES(141, 6), INCHES(52, 14));
    north->studs = (Studs){.given = true, .regular = true, .first = INCHES(14, 4), .spacing = INCHES(16, 0)};
    north->corner = (Corner){CORNER_INSIDE, CORNER_BUTT, THROUGH_LEFT, 0};
    add_opening(arena, wall, north,
                &(Opening){.kind = OPENING_WINDOW,
                           .left = INCHES(52, 0),
                           .bottom = INCHES(-4, 0),
                           .width = INCHES(36, 0),
                           .height = INCHES(41, 8)},
                "window");
    add_opening(arena, wall, north,
                &(Opening){.kind = OPENING_BOX,
                           .left = INCHES(37, 0),
                           .bottom = INCHES(-28, 8),
                           .width = INCHES(2, 4),
                           .height = INCHES(3, 12),
                           .clear = INCHES(0, 1)},
                "desk outlet");
    add_opening(arena, wall, north,
                &(Opening){.kind = OPENING_BOX,
                           .left = INCHES(107, 0),
                           .bottom = INCHES(18, 8),
                           .width = INCHES(2, 4),
                           .height = INCHES(3, 12),
                           .clear = INCHES(0, 1)},
                "lamp outlet");
    Face *east = add_face(arena, wall, "east", INCHES(60, 0));
    add_mark(arena, &east->floor, 0, INCHES(39, 15));
    add_mark(arena, &east->ceiling, 0, INCHES(52, 14));
    /* no joint but in one long course or another, and boards that fit their segments: what is drawn does not depend on
     * how they are chosen */
    wall->saw.kerf = INCHES(1, 0);
    wall->joints.shortest = INCHES(50, 0);
    const Length lengths[3] = {INCHES(142, 8), INCHES(61, 0), INCHES(54, 8)};
    for (int i = 0; i < 3; i++)
        *arena_push(arena, &wall->stock) = (Stock){.id = wall->next_id++,
                                                   .label = words(arena, ""),
                                                   .tone = words(arena, ""),
                                                   .length = lengths[i],
                                                   .count = 40};
    return wall;
}

static Rig *rig_empty(int columns, int rows)
{
    Rig *rig = calloc(1, sizeof *rig);
    BUG_UNLESS(rig != NULL);
    snprintf(rig->folder, sizeof rig->folder, "/tmp/datumrow-screen-XXXXXX");
    BUG_UNLESS(mkdtemp(rig->folder) != NULL);
    setenv("XDG_STATE_HOME", rig->folder, 1);
    text_init(&rig->picture);
    rig->term = term_memory(columns, rows);
    rig->loop = loop_new(rig->term);
    rig->app = rig->loop->app;
    rig->running = true;
    return rig;
}

Rig *rig_new(int columns, int rows)
{
    Rig *rig = rig_empty(columns, rows);
    Arena *arena = arena_new();
    Err err;
    BUG_UNLESS(file_begin(rig->app, NULL, rig_wall(arena), &err));
    arena_free(arena);
    rig_settle(rig);
    return rig;
}

Rig *rig_on_text(int columns, int rows, const char *text)
{
    Rig *rig = rig_empty(columns, rows);
    Arena *arena = arena_new();
    char path[128];
    snprintf(path, sizeof path, "%s/wall.yaml", rig->folder);
    Err err;
    Errs errs = {0};
    BUG_UNLESS(file_create(path, text, strlen(text), &err));
    BUG_UNLESS(file_open(rig->app, path, arena, &errs));
    arena_free(arena);
    rig_settle(rig);
    return rig;
}

Rig *rig_on_file(int columns, int rows)
{
    Arena *arena = arena_new();
    Text text;
    text_init(&text);
    store_write(rig_wall(arena), NULL, &text);
    Rig *rig = rig_on_text(columns, rows, text.bytes);
    text_finish(&text);
    arena_free(arena);
    return rig;
}

/* Only what the rig itself made lies in its folder. */
static void remove_folder(const char *folder)
{
    char command[200];
    snprintf(command, sizeof command, "%s", folder);
    pid_t process = fork();
    if (process == 0) {
        execlp("rm", "rm", "-rf", "--", command, (char *)NULL);
        _exit(127);
    }
    if (process > 0)
        waitpid(process, NULL, 0);
}

void rig_free(Rig *rig)
{
    loop_free(rig->loop);
    rig->term->finish(rig->term);
    text_finish(&rig->picture);
    remove_folder(rig->folder);
    free(rig);
}

void rig_settle(Rig *rig)
{
    for (int turns = 0; rig->running && !memory_idle(rig->term); turns++) {
        BUG_UNLESS(turns < 1000000);
        rig->running = loop_turn(rig->loop);
    }
    text_clear(&rig->picture);
    const Grid *picture = memory_picture(rig->term);
    if (picture != NULL)
        picture_write(picture, false, &rig->picture);
}

void rig_key(Rig *rig, Key key)
{
    memory_key(rig->term, key);
    rig_settle(rig);
}

void rig_keys(Rig *rig, Key key, int times)
{
    for (int i = 0; i < times; i++)
        memory_key(rig->term, key);
    rig_settle(rig);
}

void rig_type(Rig *rig, const char *text)
{
    memory_type(rig->term, text);
    rig_settle(rig);
}

void rig_pass(Rig *rig, int milliseconds)
{
    memory_pass(rig->term, milliseconds);
    rig_settle(rig);
}

bool rig_shows(const Rig *rig, const char *wanted)
{
    return strstr(rig->picture.bytes, wanted) != NULL;
}
