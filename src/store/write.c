#include "store/print.h"
#include "store/store.h"

void store_write(const Wall *wall, const Source *source, Text *out)
{
    (void)source;
    text_clear(out);
    print_file(wall, out);
}
