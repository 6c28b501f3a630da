#include "paths.h"

#include "store/keys.h"

typedef struct Walk {
    void (*each)(const char *path, void *context);
    void *context;
} Walk;

static void leave_out_mappings(const char *path, const FileKey *key, void *context)
{
    const Walk *walk = context;
    if (key->record == NULL && key->parts == NULL)
        walk->each(path, walk->context);
}

void paths_of_values(void (*each)(const char *path, void *context), void *context)
{
    Walk walk = {each, context};
    keys_walk(leave_out_mappings, &walk);
}
