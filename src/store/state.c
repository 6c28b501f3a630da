#include "store/state.h"

#include "base/file.h"

#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static bool join(char out[PATH_MAX], const char *path, const char *name, Err *err)
{
    const int length = snprintf(out, PATH_MAX, "%s%s%s", path, name[0] == '\0' ? "" : "/", name);
    if (length >= 0 && length < PATH_MAX)
        return true;
    err_system(err, ENAMETOOLONG, "the state folder's path is too long");
    return err_at(err, path, 0, 0);
}

static bool find_home(char out[PATH_MAX], Err *err)
{
    const char *state = getenv("XDG_STATE_HOME");
    if (state != NULL && state[0] == '/')
        return join(out, state, "datumrow", err);
    const char *home = getenv("HOME");
    if (home != NULL && home[0] == '/')
        return join(out, home, ".local/state/datumrow", err);
    return err_set(err, ERR_SYSTEM, "there is no home folder to keep recovery copies in; set HOME or XDG_STATE_HOME");
}

bool state_path(const char *folder, const char *name, char out[PATH_MAX], Err *err)
{
    char home[PATH_MAX];
    char within[PATH_MAX];
    Err slip;
    if (err == NULL)
        err = &slip;
    return find_home(home, err) && join(within, home, folder, err) && file_make_folder(within, err) &&
           join(out, within, name, err);
}
