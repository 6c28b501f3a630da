#include "wall/edit.h"

#include "wall/change.h"

/*
 * Changes of what the shop does: trim and its runs, rough boards, milling, what the bill assumes. Nothing that hangs
 * names any of it.
 */

/* ---- trim ---- */

bool edit_trim(Document *document, const Trim *trim, Err *err)
{
    document_begin(document)->trim = *trim;
    return document_step(document, err, "change the trim");
}

static const char *along_name(TrimAlong along)
{
    switch (along) {
    case ALONG_FLOOR: return "along the floor";
    case ALONG_CEILING: return "along the ceiling";
    case ALONG_INSIDE: return "in inside corners";
    case ALONG_OUTSIDE: return "round outside corners";
    case ALONG_OPENINGS: return "round openings";
    case ALONG_EDGES: return "along the planks' ends";
    }
    return "along the floor";
}

static bool run_is_gone(Err *err)
{
    return document_refuse(err, "trim.runs", "there is no such run of trim any more; choose one that is there");
}

bool edit_add_trim_run(Document *document, int index, const TrimRun *run, Err *err)
{
    Wall *wall = document_begin(document);
    if (index < 0 || index > wall->trim.runs.count)
        return run_is_gone(err);
    PUT_IN(document, &wall->trim.runs, index, *run);
    wall->trim.given = true;
    return document_step(document, err, "add trim %s", along_name(run->along));
}

bool edit_trim_run(Document *document, int index, const TrimRun *run, Err *err)
{
    Wall *wall = document_begin(document);
    if (index < 0 || index >= wall->trim.runs.count)
        return run_is_gone(err);
    wall->trim.runs.at[index] = *run;
    return document_step(document, err, "change trim %s", along_name(run->along));
}

bool edit_remove_trim_run(Document *document, int index, Err *err)
{
    Wall *wall = document_begin(document);
    Trim *trim = &wall->trim;
    if (index < 0 || index >= trim->runs.count)
        return run_is_gone(err);
    const TrimAlong along = trim->runs.at[index].along;
    TAKE_OUT(&trim->runs, index);
    trim->given = trim->stock.count + trim->pieces.count + trim->runs.count > 0;
    return document_step(document, err, "remove trim %s", along_name(along));
}

/* ---- rough boards ---- */

static int rough_index(const Wall *wall, uint32_t id)
{
    for (int i = 0; i < wall->rough.count; i++)
        if (wall->rough.at[i].id == id)
            return i;
    return -1;
}

static bool rough_is_gone(Err *err)
{
    return document_refuse(err, "rough", "there is no such line of rough boards any more; choose one that is there");
}

bool edit_add_rough(Document *document, uint32_t after, const Rough *added, uint32_t *id, Err *err)
{
    Wall *wall = document_begin(document);
    const int index = after == 0 ? wall->rough.count : rough_index(wall, after) + 1;
    if (after != 0 && index == 0)
        return rough_is_gone(err);
    Rough rough = *added;
    rough.id = wall->next_id++;
    PUT_IN(document, &wall->rough, index, rough);
    const bool done = document_step(document, err, "add %d rough board%s", rough.count, rough.count == 1 ? "" : "s");
    if (done && id != NULL)
        *id = rough.id;
    return done;
}

bool edit_rough(Document *document, const Rough *changed, Err *err)
{
    Wall *wall = document_begin(document);
    const int index = rough_index(wall, changed->id);
    if (index < 0)
        return rough_is_gone(err);
    wall->rough.at[index] = *changed;
    return document_step(document, err, "change line %d of the rough boards", index + 1);
}

bool edit_remove_rough(Document *document, uint32_t id, Err *err)
{
    Wall *wall = document_begin(document);
    const int index = rough_index(wall, id);
    if (index < 0)
        return rough_is_gone(err);
    const int count = wall->rough.at[index].count;
    TAKE_OUT(&wall->rough, index);
    return document_step(document, err, "remove %d rough board%s", count, count == 1 ? "" : "s");
}

/* ---- milling and the bill ---- */

bool edit_mill(Document *document, const Mill *mill, Err *err)
{
    document_begin(document)->mill = *mill;
    return document_step(document, err, "change the milling");
}

bool edit_bill(Document *document, const Bill *bill, Err *err)
{
    document_begin(document)->bill = *bill;
    return document_step(document, err, "change what the bill assumes");
}
