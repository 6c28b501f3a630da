#include "wall/checking.h"

#include "base/text.h"
#include "base/utf8.h"

#include <stdio.h>
#include <string.h>

static void put_path(Text *text, const Where *where)
{
    if (where == NULL)
        return;
    put_path(text, where->in);
    text_format(text, "%s%s", where->in == NULL ? "" : ".", where->key);
    if (where->index >= 0)
        text_format(text, "[%d]", where->index);
}

void check_note(Checking *checking, const Where *where, const char *format, ...)
{
    Text path;
    Text text;
    va_list list;
    text_init(&path);
    text_init(&text);
    put_path(&path, where);
    va_start(list, format);
    text_format_list(&text, format, list);
    va_end(list);
    *arena_push(checking->arena, &checking->problems) =
        (Problem){.path = arena_text(checking->arena, path.bytes, path.length),
                  .text = arena_text(checking->arena, text.bytes, text.length)};
    text_finish(&path);
    text_finish(&text);
}

const char *check_owner(const Where *where, char out[CHECK_OWNER_MOST])
{
    out[0] = '\0';
    while (where != NULL && where->kind == NULL)
        where = where->in;
    if (where == NULL)
        return out;
    if (where->name[0] == '\0')
        snprintf(out, CHECK_OWNER_MOST, " of %s %d", where->kind, where->index + 1);
    else
        snprintf(out, CHECK_OWNER_MOST, " of %s \"%.*s\"", where->kind, (int)utf8_prefix(where->name, 40), where->name);
    return out;
}

const char *check_say(const Checking *checking, Length value, char out[CHECK_VALUE_MOST])
{
    char bare[LENGTH_TEXT_MAX];
    const Units units = checking->wall->units;
    length_write(value, units, bare);
    /* what is no decimal number of inches comes with its own unit */
    const bool has_unit = strchr(bare, 'm') != NULL;
    snprintf(out, CHECK_VALUE_MOST, "%s%s", bare, has_unit ? "" : units == UNITS_IN ? " in" : " mm");
    return out;
}

bool check_length(Checking *checking, const Where *where, const char *what, Length value)
{
    char owner[CHECK_OWNER_MOST];
    if (value >= -LENGTH_MOST && value <= LENGTH_MOST)
        return true;
    check_note(checking, where, "%s%s is beyond 1 km; write a length within a wall", what, check_owner(where, owner));
    return false;
}

bool check_not_below(Checking *checking, const Where *where, const char *what, Length value)
{
    char said[CHECK_VALUE_MOST];
    char owner[CHECK_OWNER_MOST];
    if (value >= 0)
        return check_length(checking, where, what, value);
    check_note(checking, where, "%s%s is %s; write 0 or more", what, check_owner(where, owner),
               check_say(checking, value, said));
    return false;
}

bool check_above(Checking *checking, const Where *where, const char *what, Length value)
{
    char said[CHECK_VALUE_MOST];
    char owner[CHECK_OWNER_MOST];
    if (value > 0)
        return check_length(checking, where, what, value);
    check_note(checking, where, "%s%s is %s; write a length above 0", what, check_owner(where, owner),
               check_say(checking, value, said));
    return false;
}

bool check_range(Checking *checking, const Where *where, const char *what, RangedFigure figure, Length value)
{
    const FigureRange range = range_of(figure, checking->wall->units);
    char said[CHECK_VALUE_MOST];
    char least[CHECK_VALUE_MOST];
    char most[CHECK_VALUE_MOST];
    char owner[CHECK_OWNER_MOST];
    if (value >= range.least && value <= range.most)
        return true;
    check_owner(where, owner);
    check_say(checking, value, said);
    if (range.most >= LENGTH_MOST)
        check_note(checking, where, "%s%s is %s; write %s or more", what, owner, said,
                   check_say(checking, range.least, least));
    else
        check_note(checking, where, "%s%s is %s; write %s to %s", what, owner, said,
                   check_say(checking, range.least, least), check_say(checking, range.most, most));
    return false;
}

bool check_text(Checking *checking, const Where *where, const char *what, const char *text, bool required)
{
    const size_t length = strlen(text);
    if (length == 0) {
        if (required)
            check_note(checking, where, "%s is empty; write a few letters or digits", what);
        return !required;
    }
    if (length > WALL_NAME_MOST) {
        check_note(checking, where, "%s has %zu bytes; write %d at most", what, length, WALL_NAME_MOST);
        return false;
    }
    for (size_t at = 0; at < length;) {
        uint32_t code;
        const int bytes = utf8_decode(text + at, length - at, &code);
        if (bytes < 0) {
            check_note(checking, where, "%s is not UTF-8; write it again with plain letters", what);
            return false;
        }
        /* C0, DEL, C1, and what Unicode breaks a line at */
        if (code < 0x20 || (code >= 0x7f && code < 0xa0) || code == 0x2028 || code == 0x2029) {
            check_note(checking, where,
                       "%s holds a line break, a tab or another control character; write it on one line", what);
            return false;
        }
        at += (size_t)bytes;
    }
    return true;
}
