/* One part of the head of the file alone: the editor changes its parts together. */
#ifndef TESTS_SUPPORT_EDIT_HEAD_H
#define TESTS_SUPPORT_EDIT_HEAD_H

#include "wall/edit.h"

static inline bool edit_title(Document *document, const char *title, Err *err)
{
    const Wall *wall = document_wall(document);
    return edit_head(document, title, wall->units, wall->round, err);
}

static inline bool edit_units(Document *document, Units units, Length round, Err *err)
{
    return edit_head(document, document_wall(document)->title, units, round, err);
}

#endif
