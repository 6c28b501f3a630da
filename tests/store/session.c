/*
 * One file under the editor: locks between processes, what changed on disk, saves that leave either the old file or the
 * new one, recovery copies that are not lost.
 */
#include "support/with_arena.h"

#include "base/file.h"
#include "store/session.h"
#include "support/edit_head.h"

#include <dirent.h>
#include <errno.h>
#include <fcntl.h>
#include <limits.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <time.h>
#include <unistd.h>

enum { NOBODY = 65534 };

static char folder[PATH_MAX - 256];
static char wall_path[PATH_MAX];

static const char text_of_wall[] =
    "# the hall\n"
    "datumrow: 1\n"
    "units: mm\n"
    "planks: {width: 100, thickness: 12}\n"
    "start: 0   # level\n"
    "faces: [{name: a, width: 900, floor: [{at: 0, down: 9}], ceiling: [{at: 0, up: 9}]}]\n";

static const char *below(const char *name)
{
    static char paths[4][PATH_MAX];
    static int next = 0;
    char *path = paths[next++ % 4];
    snprintf(path, PATH_MAX, "%s/%s", folder, name);
    return path;
}

static void put_file(const char *path, const char *text)
{
    FILE *file = fopen(path, "w");
    assert_non_null(file);
    assert_int_equal(fwrite(text, 1, strlen(text), file), strlen(text));
    assert_int_equal(fclose(file), 0);
}

static const char *file_text(const char *path)
{
    Text text;
    Err err;
    text_init(&text);
    assert_done(file_read(path, STORE_FILE_MOST, &text, &err), &err);
    const char *copy = arena_text(arena, text.bytes, text.length);
    text_finish(&text);
    return copy;
}

static bool exists(const char *path)
{
    struct stat what;
    return lstat(path, &what) == 0;
}

/* Folders that cannot be brought to the disk. */
static bool folders_fail;

int fsync(int file)
{
    struct stat what;
    if (folders_fail && fstat(file, &what) == 0 && S_ISDIR(what.st_mode)) {
        errno = EIO;
        return -1;
    }
    return fdatasync(file);
}

static bool waits(const Session *session)
{
    return session_copies(session, arena).count > 0;
}

static void set_up(void)
{
    const char *base = getenv("TMPDIR");
    snprintf(folder, sizeof folder, "%s/datumrow-session-XXXXXX", base == NULL ? "/tmp" : base);
    if (mkdtemp(folder) == NULL)
        FAIL("no folder can be made in %s", base == NULL ? "/tmp" : base);
    snprintf(wall_path, sizeof wall_path, "%s/wall.yaml", folder);
    setenv("XDG_STATE_HOME", below("state"), 1);
    arena_begin();
    put_file(wall_path, text_of_wall);
}

static void remove_all(const char *path)
{
    DIR *open = opendir(path);
    if (open != NULL) {
        for (struct dirent *entry; (entry = readdir(open)) != NULL;) {
            char inner[PATH_MAX + 256];
            if (strcmp(entry->d_name, ".") == 0 || strcmp(entry->d_name, "..") == 0)
                continue;
            snprintf(inner, sizeof inner, "%s/%s", path, entry->d_name);
            remove_all(inner);
        }
        closedir(open);
    }
    remove(path);
}

static void tear_down(void)
{
    chmod(folder, 0700);
    remove_all(folder);
    arena_end();
}

/* A session on the wall's file that has been read, and the wall with its start raised. */
typedef struct Work {
    Session *session;
    Source source;
    Document *document;
} Work;

static Work begin(void)
{
    Work work = {0};
    Err err;
    Errs errors = {0};
    work.session = session_open(wall_path, &err);
    if (work.session == NULL)
        FAIL("%s", err.text);
    assert_true(session_read(work.session, arena, &work.source, &errors));
    work.document = document_new(work.source.wall);
    assert_done(edit_nudge_start(work.document, 5 * LENGTH_MM, &err), &err);
    return work;
}

static void end(Work *work)
{
    document_free(work->document);
    session_close(work->session);
}

static const char raised[] = "start: 5   # level\n";

/* Runs in a process of its own; what it returns comes back. */
static int in_child(int (*act)(void))
{
    const pid_t child = fork();
    assert_true(child >= 0);
    if (child == 0)
        _exit(act());
    int status;
    assert_int_equal(waitpid(child, &status, 0), child);
    assert_true(WIFEXITED(status));
    return WEXITSTATUS(status);
}

/* ---- saving ---- */

START_TEST(saves_and_knows_its_file)
{
    Err err;
    Work work = begin();
    assert_int_equal(session_disk(work.session), DISK_SAME);
    assert_done(session_save(work.session, arena, document_wall(work.document), &work.source, false, &err), &err);
    assert_holds(file_text(wall_path), raised);
    assert_holds(file_text(wall_path), "# the hall\n");
    assert_string_equal(work.source.text, file_text(wall_path));
    assert_true(wall_equal(work.source.wall, document_wall(work.document)));
    assert_int_equal(session_disk(work.session), DISK_SAME);
    /* and again, with another change, from the source that the save gave */
    assert_done(edit_title(work.document, "hall", &err), &err);
    assert_done(session_save(work.session, arena, document_wall(work.document), &work.source, false, &err), &err);
    assert_holds(file_text(wall_path), "# the hall\ndatumrow: 1\ntitle: hall\n");
    end(&work);
}
END_TEST

/* After a save the document's ids are not those that a fresh reading would give: each note stays with its line. */
START_TEST(notes_stay_with_their_lines_over_saves)
{
    Err err;
    char text[2048];
    snprintf(text, sizeof text, "%sstock:\n- {length: 1000}  # a\n- {length: 1100}  # b\n- {length: 1200}  # c\n",
             text_of_wall);
    put_file(wall_path, text);
    Work work = begin();
    const Stock found = {.label = (char[]){"F"}, .tone = (char[]){""}, .length = LENGTH_METRE, .count = 2};
    assert_done(edit_add_stock(work.document, document_wall(work.document)->stock.at[0].id, &found, NULL, &err), &err);
    assert_done(session_save(work.session, arena, document_wall(work.document), &work.source, false, &err), &err);
    for (int i = 0; i < 4; i++) {
        Stock line = document_wall(work.document)->stock.at[i];
        line.count = 5;
        assert_done(edit_stock(work.document, &line, &err), &err);
    }
    assert_done(edit_remove_stock(work.document, document_wall(work.document)->stock.at[3].id, &err), &err);
    assert_done(session_save(work.session, arena, document_wall(work.document), &work.source, false, &err), &err);
    assert_holds(file_text(wall_path), "stock:\n- {length: 1000, count: 5}  # a\n- {label: F, length: 1000, count: 5}\n"
                                       "- {length: 1100, count: 5}  # b\n");
    assert_null(strstr(file_text(wall_path), "# c"));
    end(&work);
}
END_TEST

START_TEST(notices_by_content_what_changed_on_disk)
{
    Err err;
    Work work = begin();
    struct stat before;
    assert_int_equal(stat(wall_path, &before), 0);
    /* the same length and time, another content */
    char other[sizeof text_of_wall];
    memcpy(other, text_of_wall, sizeof other);
    other[2] = 'T';
    put_file(wall_path, other);
    const struct timespec times[2] = {before.st_atim, before.st_mtim};
    assert_int_equal(utimensat(AT_FDCWD, wall_path, times, 0), 0);
    assert_int_not_equal(session_disk(work.session), DISK_SAME);
    assert_false(session_save(work.session, arena, document_wall(work.document), &work.source, false, &err));
    assert_int_equal(err.kind, ERR_CHANGED);
    assert_string_equal(err.place, wall_path);
    assert_string_equal(file_text(wall_path), other);
    /* another time, the same content */
    put_file(wall_path, text_of_wall);
    assert_int_equal(session_disk(work.session), DISK_SAME);
    /* gone */
    assert_int_equal(unlink(wall_path), 0);
    assert_int_not_equal(session_disk(work.session), DISK_SAME);
    assert_false(session_save(work.session, arena, document_wall(work.document), &work.source, false, &err));
    assert_int_equal(err.kind, ERR_CHANGED);
    assert_holds(err.text, "gone");
    assert_done(session_save(work.session, arena, document_wall(work.document), &work.source, true, &err), &err);
    assert_holds(file_text(wall_path), raised);
    end(&work);
}
END_TEST

START_TEST(keeps_mode_and_goes_through_links)
{
    Err err;
    assert_int_equal(chmod(wall_path, 0640), 0);
    assert_int_equal(mkdir(below("links"), 0700), 0);
    assert_int_equal(symlink("../wall.yaml", below("links/one.yaml")), 0);
    assert_int_equal(symlink("one.yaml", below("links/two.yaml")), 0);
    char plain[PATH_MAX];
    snprintf(plain, sizeof plain, "%s", wall_path);
    snprintf(wall_path, sizeof wall_path, "%s", below("links/two.yaml"));
    Work work = begin();
    assert_done(session_save(work.session, arena, document_wall(work.document), &work.source, false, &err), &err);
    struct stat what;
    assert_int_equal(lstat(below("links/two.yaml"), &what), 0);
    assert_true(S_ISLNK(what.st_mode));
    assert_int_equal(stat(plain, &what), 0);
    assert_int_equal(what.st_mode & 0777, 0640);
    assert_holds(file_text(plain), raised);
    end(&work);
}
END_TEST

START_TEST(a_full_disk_leaves_the_old_file)
{
    Err err;
    Work work = begin();
    /* a file may not grow beyond 16 bytes: what a full disk does, with the signal that comes with it left out */
    struct rlimit before;
    assert_int_equal(getrlimit(RLIMIT_FSIZE, &before), 0);
    struct rlimit tight = before;
    tight.rlim_cur = 16;
    signal(SIGXFSZ, SIG_IGN);
    assert_int_equal(setrlimit(RLIMIT_FSIZE, &tight), 0);
    const bool saved = session_save(work.session, arena, document_wall(work.document), &work.source, false, &err);
    const bool kept = session_keep(work.session, document_wall(work.document), &work.source, NULL);
    assert_int_equal(setrlimit(RLIMIT_FSIZE, &before), 0);
    assert_false(saved);
    assert_false(kept);
    assert_int_equal(err.kind, ERR_SYSTEM);
    assert_string_equal(file_text(wall_path), text_of_wall);
    assert_string_equal(work.source.text, text_of_wall);
    assert_int_equal(session_disk(work.session), DISK_SAME);
    /* nothing is left lying beside it, and with room again it is saved */
    int entries = 0;
    DIR *open = opendir(folder);
    for (struct dirent *entry; (entry = readdir(open)) != NULL;)
        entries += strstr(entry->d_name, ".new") != NULL;
    closedir(open);
    assert_int_equal(entries, 0);
    assert_done(session_save(work.session, arena, document_wall(work.document), &work.source, false, &err), &err);
    end(&work);
}
END_TEST

/* Root may write everywhere: then somebody else tries. */
static int save_into_read_only(void)
{
    if (mkdir(below("state"), 0700) != 0)
        return 1;
    if (geteuid() == 0 && (chown(folder, NOBODY, NOBODY) != 0 || chown(wall_path, NOBODY, NOBODY) != 0 ||
                           chown(below("state"), NOBODY, NOBODY) != 0 || setgid(NOBODY) != 0 || setuid(NOBODY) != 0))
        return 1;
    if (chmod(folder, 0500) != 0)
        return 2;
    Err err = {0};
    Work work = begin();
    const bool locked = session_locked(work.session); /* by a lock that lies elsewhere */
    const bool saved = session_save(work.session, arena, document_wall(work.document), &work.source, false, &err);
    const bool kept = session_keep(work.session, document_wall(work.document), &work.source, NULL);
    end(&work);
    if (chmod(folder, 0700) != 0)
        return 3;
    return locked && !saved && kept && err.kind == ERR_SYSTEM ? 0 : 4;
}

START_TEST(a_file_that_is_read_only_is_refused)
{
    Err err;
    assert_int_equal(in_child(save_into_read_only), 0);
    assert_string_equal(file_text(wall_path), text_of_wall);
    assert_null(session_open(below("wall.yaml/inside.yaml"), &err));
    assert_int_equal(err.kind, ERR_SYSTEM);
}
END_TEST

/* Killed at any moment of many saves, the file is one of the two texts, whole. */
START_TEST(killed_at_any_moment_the_file_is_whole)
{
    Err err;
    for (int round = 0; round < 25; round++) {
        put_file(wall_path, text_of_wall);
        const pid_t child = fork();
        assert_true(child >= 0);
        if (child == 0) {
            Work work = begin();
            for (;;) {
                if (!session_save(work.session, arena, document_wall(work.document), &work.source, true, &err))
                    _exit(1);
                edit_nudge_start(work.document, work.document == NULL ? 0 : LENGTH_MM, &err);
                if (document_wall(work.document)->start > 90 * LENGTH_MM)
                    edit_start(work.document, 5 * LENGTH_MM, &err);
            }
        }
        const struct timespec pause = {0, 1000000L * (1 + round % 15)};
        nanosleep(&pause, NULL);
        assert_int_equal(kill(child, SIGKILL), 0);
        int status;
        assert_int_equal(waitpid(child, &status, 0), child);
        assert_true(WIFSIGNALED(status));
        Source source;
        Errs errors = {0};
        assert_true(store_read(arena, wall_path, &source, &errors));
        assert_holds(source.text, "# the hall\n");
    }
}
END_TEST

/* ---- another name, no name ---- */

START_TEST(save_as_writes_over_another_file_only_when_told)
{
    Err err;
    Work work = begin();
    put_file(below("there.yaml"), "something else\n");
    assert_false(session_save_as(work.session, arena, below("there.yaml"), document_wall(work.document), &work.source,
                                 false, &err));
    assert_int_equal(err.kind, ERR_SYSTEM);
    assert_string_equal(file_text(below("there.yaml")), "something else\n");
    assert_string_equal(session_path(work.session), wall_path);
    assert_false(session_save_as(work.session, arena, below("no/such/folder.yaml"), document_wall(work.document),
                                 &work.source, false, &err));
    assert_done(session_keep(work.session, document_wall(work.document), &work.source, &err), &err);
    assert_true(exists(session_recovery_path(work.session)));
    char old_copy[PATH_MAX];
    snprintf(old_copy, sizeof old_copy, "%s", session_recovery_path(work.session));

    assert_done(session_save_as(work.session, arena, below("new.yaml"), document_wall(work.document), &work.source,
                                false, &err),
                &err);
    assert_string_equal(session_path(work.session), below("new.yaml"));
    assert_holds(file_text(below("new.yaml")), raised);
    assert_string_equal(file_text(wall_path), text_of_wall); /* the old one is left alone */
    assert_false(exists(old_copy));
    assert_true(exists(below(".new.yaml.lock")));
    assert_false(exists(below(".wall.yaml.lock")));
    assert_int_equal(session_disk(work.session), DISK_SAME);
    assert_done(session_save_as(work.session, arena, below("there.yaml"), document_wall(work.document), &work.source,
                                true, &err),
                &err);
    assert_holds(file_text(below("there.yaml")), raised);
    /* its own name in another guise */
    assert_int_equal(symlink("there.yaml", below("same.yaml")), 0);
    assert_done(session_save_as(work.session, arena, below("same.yaml"), document_wall(work.document), &work.source,
                                false, &err),
                &err);
    assert_string_equal(session_path(work.session), below("there.yaml"));
    end(&work);
    assert_false(exists(below(".there.yaml.lock")));
}
END_TEST

START_TEST(a_wall_without_a_file)
{
    Err err;
    Source source = {0};
    Errs errors = {0};
    assert_true(store_parse(arena, "wall", text_of_wall, strlen(text_of_wall), &source, &errors));
    Session *session = session_open(NULL, &err);
    Session *other = session_open(NULL, &err);
    assert_null(session_path(session));
    assert_true(session_locked(session));
    assert_int_equal(session_disk(session), DISK_SAME);
    assert_string_not_equal(session_recovery_path(session), session_recovery_path(other));
    assert_done(session_keep(session, source.wall, NULL, &err), &err);
    assert_true(exists(session_recovery_path(session)));
    Source none = {0};
    assert_false(session_save(session, arena, source.wall, &none, false, &err));
    assert_int_equal(err.kind, ERR_USAGE);
    assert_done(session_save_as(session, arena, below("first.yaml"), source.wall, &none, false, &err), &err);
    assert_true(wall_equal(none.wall, source.wall));
    assert_true(store_read(arena, below("first.yaml"), &source, &errors));
    session_close(session);
    session_close(other);
}
END_TEST

START_TEST(a_file_that_is_not_there_yet)
{
    Err err;
    Source source = {0};
    Errs errors = {0};
    assert_true(store_parse(arena, "wall", text_of_wall, strlen(text_of_wall), &source, &errors));
    Session *session = session_open(below("later.yaml"), &err);
    assert_non_null(session);
    assert_int_equal(session_disk(session), DISK_SAME);
    put_file(below("later.yaml"), "another was quicker\n");
    assert_int_not_equal(session_disk(session), DISK_SAME);
    assert_false(session_save(session, arena, source.wall, &source, false, &err));
    assert_int_equal(err.kind, ERR_CHANGED);
    session_close(session);
    assert_null(session_open(below("no/such/folder.yaml"), &err));
    assert_int_equal(err.kind, ERR_SYSTEM);
}
END_TEST

/* ---- locks ---- */

static int open_while_held(void)
{
    Err err = {0};
    Session *session = session_open(wall_path, &err);
    char process[32];
    char host[128] = "";
    snprintf(process, sizeof process, "number %ld", (long)getppid());
    gethostname(host, sizeof host - 1);
    if (session == NULL || session_locked(session))
        return 1;
    if (err.kind != ERR_LOCKED || strstr(err.text, process) == NULL || strstr(err.text, host) == NULL)
        return 2;
    session_close(session);
    return 0;
}

static int open_while_free(void)
{
    Err err = {0};
    Session *session = session_open(wall_path, &err);
    const bool locked = session != NULL && session_locked(session);
    session_close(session);
    return locked ? 0 : 1;
}

static int die_with_the_lock(void)
{
    Err err = {0};
    Session *session = session_open(wall_path, &err);
    return session != NULL && session_locked(session) ? 0 : 1; /* not closed */
}

START_TEST(a_second_editor_is_told)
{
    Work work = begin();
    assert_true(session_locked(work.session));
    assert_int_equal(in_child(open_while_held), 0);
    /* and that did not take the lock away */
    assert_int_equal(in_child(open_while_held), 0);
    assert_true(exists(below(".wall.yaml.lock")));
    end(&work);
    assert_false(exists(below(".wall.yaml.lock")));
    assert_int_equal(in_child(open_while_free), 0);
}
END_TEST

/* What the living editor keeps is its own: another one, without the lock, neither sees nor drops nor replaces it. */
static int meddle_without_the_lock(void)
{
    Err err = {0};
    Errs errs = {0};
    Source source;
    Session *session = session_open(wall_path, &err);
    if (session == NULL || session_locked(session) || !session_elsewhere(session))
        return 1;
    if (waits(session))
        return 2;
    if (!session_read(session, arena, &source, &errs) ||
        session_recover(session, arena, session_recovery_path(session), &source, &errs))
        return 3;
    session_forget(session);
    if (!session_keep(session, source.wall, &source, &err) || !exists(session_recovery_path(session)))
        return 4;
    session_forget(session); /* its own */
    if (exists(session_recovery_path(session)))
        return 5;
    session_close(session);
    return 0;
}

START_TEST(without_the_lock_the_copy_is_let_alone)
{
    Err err;
    Work work = begin();
    assert_false(session_elsewhere(work.session));
    assert_done(session_keep(work.session, document_wall(work.document), &work.source, &err), &err);
    assert_int_equal(in_child(meddle_without_the_lock), 0);
    assert_holds(file_text(session_recovery_path(work.session)), raised);
    char older[PATH_MAX + 16];
    snprintf(older, sizeof older, "%s.1", session_recovery_path(work.session));
    assert_false(exists(older));
    end(&work);
}
END_TEST

/* The other user may read the lock's file, not write it. */
START_TEST(another_user_is_told)
{
    Err err = {0};
    if (geteuid() != 0)
        SKIP("only root can be two users");
    assert_int_equal(chmod(folder, 0777), 0);
    assert_int_equal(chmod(wall_path, 0666), 0);
    Work work = begin();
    const pid_t other = fork();
    if (other == 0) {
        setenv("XDG_STATE_HOME", below("state-of-other"), 1);
        if (setgid(NOBODY) != 0 || setuid(NOBODY) != 0)
            _exit(9);
        Session *session = session_open(wall_path, &err);
        _exit(session != NULL && session_elsewhere(session) && err.kind == ERR_LOCKED ? 0 : 1);
    }
    int status;
    assert_int_equal(waitpid(other, &status, 0), other);
    assert_int_equal(status, 0);
    end(&work);
}
END_TEST

static int leave_a_temporary_file(void)
{
    char name[100];
    snprintf(name, sizeof name, ".datumrow-%ld-0.new", (long)getpid());
    put_file(below(name), "half");
    return 0;
}

START_TEST(what_a_dead_writer_left_is_cleared)
{
    assert_int_equal(in_child(leave_a_temporary_file), 0);
    Work work = begin();
    DIR *open = opendir(folder);
    for (const struct dirent *entry; (entry = readdir(open)) != NULL;)
        assert_int_not_equal(strncmp(entry->d_name, ".datumrow-", 10), 0);
    closedir(open);
    end(&work);
}
END_TEST

START_TEST(through_a_link_it_is_the_same_file)
{
    Work work = begin();
    assert_int_equal(symlink("wall.yaml", below("link.yaml")), 0);
    char plain[PATH_MAX];
    snprintf(plain, sizeof plain, "%s", wall_path);
    snprintf(wall_path, sizeof wall_path, "%s", below("link.yaml"));
    assert_int_equal(in_child(open_while_held), 0);
    end(&work);
}
END_TEST

/* A link to a file that is not there yet: a save writes to what it leads to, so lock and copy are named by that. */
START_TEST(a_link_to_nothing_yet_is_the_file_that_it_will_be)
{
    Err err;
    assert_int_equal(mkdir(below("links"), 0700), 0);
    assert_int_equal(symlink("../later.yaml", below("links/one.yaml")), 0);
    assert_int_equal(symlink("one.yaml", below("links/two.yaml")), 0);
    Session *session = session_open(below("links/two.yaml"), &err);
    assert_non_null(session);
    assert_true(session_locked(session));
    assert_true(exists(below(".later.yaml.lock")));
    snprintf(wall_path, sizeof wall_path, "%s", below("later.yaml"));
    assert_int_equal(in_child(open_while_held), 0);
    Source source = {0};
    Errs errors = {0};
    assert_true(store_parse(arena, "wall", text_of_wall, strlen(text_of_wall), &source, &errors));
    assert_done(session_keep(session, source.wall, NULL, &err), &err);
    char copy[PATH_MAX];
    snprintf(copy, sizeof copy, "%s", session_recovery_path(session));
    assert_done(session_save(session, arena, source.wall, &source, true, &err), &err);
    assert_true(exists(wall_path));
    session_close(session);
    session = session_open(wall_path, &err); /* by its own name, now that it is there */
    assert_string_equal(session_recovery_path(session), copy);
    session_close(session);
}
END_TEST

START_TEST(a_dead_editors_lock_is_taken_over)
{
    assert_int_equal(in_child(die_with_the_lock), 0);
    assert_true(exists(below(".wall.yaml.lock")));
    Work work = begin();
    assert_true(session_locked(work.session));
    assert_int_equal(in_child(open_while_held), 0);
    end(&work);
    assert_false(exists(below(".wall.yaml.lock")));
}
END_TEST

START_TEST(an_editor_is_not_in_its_own_way)
{
    Err err;
    Work work = begin();
    Session *again = session_open(wall_path, &err);
    assert_true(session_locked(again));
    session_close(again);
    assert_true(exists(below(".wall.yaml.lock")));
    assert_int_equal(in_child(open_while_held), 0);
    end(&work);
}
END_TEST

/* ---- recovery ---- */

static int edit_and_die(void)
{
    Err err;
    Work work = begin();
    return session_keep(work.session, document_wall(work.document), &work.source, &err) ? 0 : 1;
}

START_TEST(a_copy_waits_after_a_crash)
{
    Err err;
    Errs errors = {0};
    Source recovered;
    assert_int_equal(in_child(edit_and_die), 0);
    assert_string_equal(file_text(wall_path), text_of_wall);
    Work work = begin();
    assert_true(waits(work.session));
    assert_true(session_recover(work.session, arena, session_recovery_path(work.session), &recovered, &errors));
    assert_true(wall_equal(recovered.wall, document_wall(work.document)));
    assert_holds(recovered.text, "# the hall\n");
    assert_true(exists(session_recovery_path(work.session))); /* until it is saved */
    assert_done(session_save(work.session, arena, recovered.wall, &work.source, false, &err), &err);
    assert_false(exists(session_recovery_path(work.session)));
    assert_false(waits(work.session));
    end(&work);
}
END_TEST

START_TEST(no_copy_waits_without_need)
{
    Err err;
    Work work = begin();
    assert_false(waits(work.session)); /* there is none */
    assert_done(session_keep(work.session, document_wall(work.document), &work.source, &err), &err);
    assert_false(waits(work.session)); /* its own */
    session_forget(work.session);
    assert_false(exists(session_recovery_path(work.session)));
    assert_done(session_keep(work.session, work.source.wall, &work.source, &err), &err);
    end(&work);
    work = begin();
    assert_false(waits(work.session)); /* says what the file says */
    session_forget(work.session);
    assert_done(session_keep(work.session, document_wall(work.document), &work.source, &err), &err);
    char copy[PATH_MAX];
    snprintf(copy, sizeof copy, "%s", session_recovery_path(work.session));
    end(&work);
    const struct timespec old[2] = {{1000000000, 0}, {1000000000, 0}};
    assert_int_equal(utimensat(AT_FDCWD, copy, old, 0), 0);
    work = begin();
    assert_false(waits(work.session)); /* the file is newer */
    assert_true(exists(copy));
    end(&work);
}
END_TEST

/* "Keep the copy for later", and then an edit: the older copy is moved aside. */
START_TEST(a_copy_that_waits_is_not_written_over)
{
    Err err;
    assert_int_equal(in_child(edit_and_die), 0);
    Work work = begin();
    assert_true(waits(work.session));
    assert_done(edit_nudge_start(work.document, 2 * LENGTH_MM, &err), &err);
    assert_done(session_keep(work.session, document_wall(work.document), &work.source, &err), &err);
    assert_holds(file_text(session_recovery_path(work.session)), "start: 7");
    char older[PATH_MAX + 16];
    snprintf(older, sizeof older, "%s.1", session_recovery_path(work.session));
    assert_holds(file_text(older), raised);
    end(&work);
}
END_TEST

/* Whoever keeps each copy for later has them all, newest first, and each can be taken up. */
START_TEST(copies_kept_for_later_are_numbered)
{
    Err err;
    Errs errors = {0};
    Source recovered;
    for (int i = 1; i <= 3; i++) {
        Work work = begin();
        assert_int_equal(session_copies(work.session, arena).count, i - 1);
        for (int k = 0; k < i; k++)
            assert_done(edit_nudge_start(work.document, i * LENGTH_MM, &err), &err);
        assert_done(session_keep(work.session, document_wall(work.document), &work.source, &err), &err);
        const struct timespec at[2] = {{2000000000 + i, 0}, {2000000000 + i, 0}};
        assert_int_equal(utimensat(AT_FDCWD, session_recovery_path(work.session), at, 0), 0);
        end(&work);
    }
    Work work = begin();
    const RecoveryCopies copies = session_copies(work.session, arena);
    assert_int_equal(copies.count, 3);
    for (int i = 0; i < 3; i++)
        assert_int_equal(copies.at[i].kept, 2000000003 - i);
    assert_true(session_recover(work.session, arena, copies.at[2].path, &recovered, &errors));
    assert_holds(recovered.text, "start: 6");
    assert_done(session_save(work.session, arena, recovered.wall, &work.source, false, &err), &err);
    assert_int_equal(session_copies(work.session, arena).count, 2);
    session_drop(work.session, copies.at[1].path);
    assert_false(exists(copies.at[1].path));
    assert_false(exists(copies.at[2].path));
    assert_true(exists(copies.at[0].path));
    end(&work);
}
END_TEST

START_TEST(a_file_from_the_future_hides_no_copy)
{
    assert_int_equal(in_child(edit_and_die), 0);
    const struct timespec late[2] = {{4000000000, 0}, {4000000000, 0}};
    assert_int_equal(utimensat(AT_FDCWD, wall_path, late, 0), 0);
    Work work = begin();
    assert_true(waits(work.session));
    end(&work);
}
END_TEST

/* The file is written, and only the folder's fsync failed: the next save need not ask whether somebody else did it. */
START_TEST(a_save_that_failed_at_its_end_is_no_other_hand)
{
    Err err;
    Work work = begin();
    assert_done(edit_nudge_start(work.document, LENGTH_MM, &err), &err);
    folders_fail = true;
    assert_false(session_save(work.session, arena, document_wall(work.document), &work.source, false, &err));
    folders_fail = false;
    assert_holds(err.text, "is written, but");
    assert_int_equal(session_disk(work.session), DISK_SAME);
    assert_done(session_save(work.session, arena, document_wall(work.document), &work.source, false, &err), &err);
    end(&work);
}
END_TEST

START_TEST(a_file_that_is_gone_or_unreadable_is_told_as_that)
{
    Err err;
    Work work = begin();
    unlink(wall_path);
    assert_int_equal(session_disk(work.session), DISK_GONE);
    assert_false(session_save(work.session, arena, document_wall(work.document), &work.source, false, &err));
    assert_int_equal(err.kind, ERR_CHANGED);
    assert_holds(err.text, "is gone");
    assert_int_equal(mkfifo(wall_path, 0600), 0);
    alarm(5);
    assert_int_equal(session_disk(work.session), DISK_UNREADABLE);
    alarm(0);
    unlink(wall_path);
    put_file(wall_path, "else");
    assert_int_equal(session_disk(work.session), DISK_CHANGED);
    end(&work);
}
END_TEST

static int new_wall_and_die(void)
{
    Err err;
    Errs errors = {0};
    Source source;
    Session *session = session_open(NULL, &err);
    return session != NULL && store_parse(arena, "wall", text_of_wall, strlen(text_of_wall), &source, &errors) &&
                   session_keep(session, source.wall, NULL, &err)
               ? 0
               : 1;
}

START_TEST(new_walls_left_behind)
{
    Err err;
    assert_int_equal(session_left_over(arena).count, 0);
    assert_int_equal(in_child(new_wall_and_die), 0);
    Session *living = session_open(NULL, &err);
    Source source;
    Errs errors = {0};
    assert_true(store_parse(arena, "wall", text_of_wall, strlen(text_of_wall), &source, &errors));
    assert_done(session_keep(living, source.wall, NULL, &err), &err);
    const Recent left = session_left_over(arena);
    assert_int_equal(left.count, 1); /* the dead one's; the living one's is no business of anybody else */
    assert_string_not_equal(left.at[0], session_recovery_path(living));
    assert_true(store_read(arena, left.at[0], &source, &errors));
    session_drop_left_over(left.at[0]);
    assert_int_equal(session_left_over(arena).count, 0);
    session_forget(living);
    session_close(living);
}
END_TEST

START_TEST(without_a_state_folder_work_goes_on)
{
    Err err;
    char *home = getenv("HOME") == NULL ? NULL : strdup(getenv("HOME"));
    unsetenv("XDG_STATE_HOME");
    unsetenv("HOME");
    Work work = begin();
    assert_false(waits(work.session));
    assert_false(session_keep(work.session, document_wall(work.document), &work.source, &err));
    assert_holds(err.text, "XDG_STATE_HOME");
    assert_done(session_save(work.session, arena, document_wall(work.document), &work.source, false, &err), &err);
    assert_int_equal(session_recent(arena).count, 0);
    session_note_recent(wall_path);
    end(&work);
    if (home != NULL)
        setenv("HOME", home, 1);
    free(home);
}
END_TEST

/* ---- recent files ---- */

START_TEST(recent_files_stand_newest_first)
{
    assert_int_equal(session_recent(arena).count, 0);
    for (int i = 0; i < 12; i++) {
        char name[32];
        snprintf(name, sizeof name, "wall %d.yaml", i);
        put_file(below(name), text_of_wall);
        session_note_recent(below(name));
    }
    Recent recent = session_recent(arena);
    assert_int_equal(recent.count, 10);
    assert_string_equal(strrchr(recent.at[0], '/'), "/wall 11.yaml");
    assert_string_equal(strrchr(recent.at[9], '/'), "/wall 2.yaml");
    session_note_recent(below("wall 5.yaml"));
    recent = session_recent(arena);
    assert_int_equal(recent.count, 10);
    assert_string_equal(strrchr(recent.at[0], '/'), "/wall 5.yaml");
    assert_string_equal(strrchr(recent.at[1], '/'), "/wall 11.yaml");
    assert_int_equal(unlink(below("wall 11.yaml")), 0);
    assert_string_equal(strrchr(session_recent(arena).at[1], '/'), "/wall 10.yaml");
    put_file(below("state/datumrow/recent"), "no path\n\n/nowhere/at/all\n\x01\x02");
    assert_int_equal(session_recent(arena).count, 0);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        saves_and_knows_its_file,
        notes_stay_with_their_lines_over_saves,
        notices_by_content_what_changed_on_disk,
        keeps_mode_and_goes_through_links,
        a_full_disk_leaves_the_old_file,
        a_file_that_is_read_only_is_refused,
        killed_at_any_moment_the_file_is_whole,
        save_as_writes_over_another_file_only_when_told,
        a_wall_without_a_file,
        a_file_that_is_not_there_yet,
        a_second_editor_is_told,
        without_the_lock_the_copy_is_let_alone,
        another_user_is_told,
        what_a_dead_writer_left_is_cleared,
        through_a_link_it_is_the_same_file,
        a_link_to_nothing_yet_is_the_file_that_it_will_be,
        a_dead_editors_lock_is_taken_over,
        an_editor_is_not_in_its_own_way,
        a_copy_waits_after_a_crash,
        no_copy_waits_without_need,
        a_copy_that_waits_is_not_written_over,
        copies_kept_for_later_are_numbered,
        a_file_from_the_future_hides_no_copy,
        a_save_that_failed_at_its_end_is_no_other_hand,
        a_file_that_is_gone_or_unreadable_is_told_as_that,
        new_walls_left_behind,
        without_a_state_folder_work_goes_on,
        recent_files_stand_newest_first,
    };
    return RUN_WITH(tests, set_up, tear_down);
}
