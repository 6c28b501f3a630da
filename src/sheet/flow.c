#include "sheet/flow.h"

/* The page being filled. `used` counts from below the page head; `section` is the one whose heads stand above what
 * comes next, -1 on an empty page. */
typedef struct Flow {
    Arena *arena;
    const Sheet *sheet;
    const Medium *medium;
    SheetPages pages;
    int64_t used;
    int section;
} Flow;

static int64_t lines_height(const Medium *medium, const SheetLines *lines, int first, int count)
{
    int64_t height = 0;
    for (int i = first; i < first + count; i++)
        height += medium->height(medium->self, &lines->at[i]);
    return height;
}

static void begin_page(Flow *flow, int section)
{
    *arena_push(flow->arena, &flow->pages) = (SheetPage){.section = section};
    flow->used = 0;
    flow->section = -1;
}

static void put(Flow *flow, Slice slice, int64_t height)
{
    SheetPage *page = &flow->pages.at[flow->pages.count - 1];
    *arena_push(flow->arena, page) = slice;
    flow->used += height;
    flow->section = slice.section;
}

static int64_t heads_height(const Flow *flow, int section)
{
    if (flow->section == section)
        return 0;
    const SheetLines *heads = &flow->sheet->sections.at[section].heads;
    return lines_height(flow->medium, heads, 0, heads->count);
}

static int64_t space_before(const Flow *flow, const SheetGroup *group)
{
    return group->apart && flow->used > 0 ? flow->medium->space : 0;
}

/* A group that no page can hold goes on from page to page, as many lines as fit on each, at least one. */
static void put_split(Flow *flow, int section, int number)
{
    const SheetGroup *group = &flow->sheet->sections.at[section].groups.at[number];
    int first = 0;
    while (first < group->lines.count) {
        if (first > 0 || flow->used > 0)
            begin_page(flow, section);
        bool again = first > 0;
        int64_t height = heads_height(flow, section);
        if (again)
            height += lines_height(flow->medium, &group->lines, 0, 1);
        int count = 0;
        while (first + count < group->lines.count) {
            int64_t more = lines_height(flow->medium, &group->lines, first + count, 1);
            if (count > 0 && height + more > flow->medium->room)
                break;
            height += more;
            count++;
        }
        Slice slice = {.section = section, .group = number, .first = first, .count = count};
        slice.heads = true;
        slice.again = again;
        put(flow, slice, height);
        first += count;
    }
}

static void put_group(Flow *flow, int section, int number)
{
    const SheetGroup *group = &flow->sheet->sections.at[section].groups.at[number];
    int64_t heads = heads_height(flow, section);
    int64_t space = space_before(flow, group);
    int64_t height = lines_height(flow->medium, &group->lines, 0, group->lines.count);
    Slice slice = {.section = section, .group = number, .count = group->lines.count};
    slice.heads = flow->section != section;
    slice.space = space > 0;
    put(flow, slice, heads + space + height);
}

/* Groups that stay together: `number` and, while they ask for it, those behind it. */
static int chain_length(const SheetGroups *groups, int number)
{
    int count = 1;
    while (groups->at[number + count - 1].with_next && number + count < groups->count)
        count++;
    return count;
}

static void put_chain(Flow *flow, int section, int first, int count)
{
    const SheetGroups *groups = &flow->sheet->sections.at[section].groups;
    int64_t height = 0;
    for (int i = first; i < first + count; i++) {
        height += lines_height(flow->medium, &groups->at[i].lines, 0, groups->at[i].lines.count);
        if (i > first && groups->at[i].apart)
            height += flow->medium->space;
    }
    int64_t before = heads_height(flow, section) + space_before(flow, &groups->at[first]);
    if (flow->used > 0 && flow->used + before + height > flow->medium->room)
        begin_page(flow, section);
    for (int i = first; i < first + count; i++) {
        int64_t alone = lines_height(flow->medium, &groups->at[i].lines, 0, groups->at[i].lines.count);
        int64_t heads = heads_height(flow, section);
        int64_t space = space_before(flow, &groups->at[i]);
        if (flow->used + heads + space + alone <= flow->medium->room) {
            put_group(flow, section, i);
        } else if (heads_height(flow, section) + alone <= flow->medium->room) {
            begin_page(flow, section); /* a chain that no page can hold */
            put_group(flow, section, i);
        } else {
            put_split(flow, section, i);
        }
    }
}

static void put_section(Flow *flow, int number)
{
    const SheetSection *section = &flow->sheet->sections.at[number];
    bool drawing = flow->medium->draws && section->drawing != NULL;
    bool after_drawing = flow->pages.count > 0 && flow->pages.at[flow->pages.count - 1].drawing;
    if (flow->pages.count == 0 || after_drawing || ((section->new_page || drawing) && flow->used > 0))
        begin_page(flow, number);
    if (drawing) {
        flow->pages.at[flow->pages.count - 1].drawing = true;
        put(flow, (Slice){.section = number, .group = -1}, 1);
        return;
    }
    if (section->groups.count == 0) {
        int64_t heads = heads_height(flow, number);
        if (flow->used > 0 && flow->used + heads > flow->medium->room)
            begin_page(flow, number);
        put(flow, (Slice){.section = number, .group = -1, .heads = true}, heads);
        return;
    }
    for (int first = 0; first < section->groups.count;) {
        int count = chain_length(&section->groups, first);
        put_chain(flow, number, first, count);
        first += count;
    }
}

SheetPages flow_pages(Arena *arena, const Sheet *sheet, const Medium *medium)
{
    Flow flow = {.arena = arena, .sheet = sheet, .medium = medium, .section = -1};
    for (int i = 0; i < sheet->sections.count; i++)
        put_section(&flow, i);
    if (flow.pages.count == 0)
        begin_page(&flow, 0);
    return flow.pages;
}
