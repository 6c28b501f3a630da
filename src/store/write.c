#include "store/store.h"

#include "base/panic.h"
#include "store/keep.h"
#include "store/print.h"

/*
 * Nothing is handed out that would not read back as the wall. A text of which that cannot be had piece by piece is
 * written afresh: a comment may be lost, a value never.
 */

void store_write(const Wall *wall, const Source *source, Text *out)
{
    if (source != NULL && source->text != NULL && keep_text(wall, source, out) &&
        keep_reads_as(wall, out->bytes, out->length))
        return;
    text_clear(out);
    print_file(wall, out);
    BUG_UNLESS(keep_reads_as(wall, out->bytes, out->length));
}
