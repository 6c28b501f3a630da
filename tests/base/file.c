#include "support/test.h"

#include "base/file.h"

#include <errno.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <time.h>
#include <unistd.h>

static char folder[] = "/tmp/datumrow-file-XXXXXX";

static const char *in_folder(const char *name)
{
    static char paths[4][200];
    static int next;
    char *path = paths[next++ % 4];
    snprintf(path, 200, "%s/%s", folder, name);
    return path;
}

static void assert_content(const char *name, const char *content)
{
    Text text;
    Err err;
    text_init(&text);
    assert_done(file_read(in_folder(name), 1000, &text, &err), &err);
    assert_string_equal(text.bytes, content);
    text_finish(&text);
}

/* The temporary files that this process has left behind. */
static int files_left(void)
{
    int count = 0;
    for (int i = 0; i < 100; i++) {
        char name[64];
        snprintf(name, sizeof name, ".datumrow-%ld-%d.new", (long)getpid(), i);
        count += access(in_folder(name), F_OK) == 0;
    }
    return count;
}

START_TEST(reads_what_was_written)
{
    Err err;
    assert_done(file_write_safely(in_folder("a"), "one\ntwo", 7, &err), &err);
    assert_content("a", "one\ntwo");
    assert_done(file_write_safely(in_folder("a"), "", 0, &err), &err);
    assert_content("a", "");
    assert_int_equal(files_left(), 0);
}
END_TEST

START_TEST(reading_is_limited)
{
    Err err;
    Text text;
    text_init(&text);
    text_put(&text, "as it was");
    assert_done(file_write_safely(in_folder("long"), "0123456789", 10, &err), &err);
    assert_false(file_read(in_folder("long"), 9, &text, &err));
    assert_int_equal(err.kind, ERR_LIMIT);
    assert_string_equal(err.place, in_folder("long"));
    assert_string_equal(text.bytes, "as it was");
    assert_done(file_read(in_folder("long"), 10, &text, &err), &err);
    assert_string_equal(text.bytes, "0123456789");
    text_finish(&text);
}
END_TEST

START_TEST(tells_what_cannot_be_read)
{
    Err err;
    Text text;
    text_init(&text);
    assert_false(file_read(in_folder("nowhere"), 10, &text, &err));
    assert_holds(err.text, "no such file");
    assert_false(file_read(folder, 10, &text, &err));
    assert_holds(err.text, "folder");
    assert_false(file_read("/dev/zero", 10, &text, &err));
    assert_holds(err.text, "device");
    assert_done(file_write_safely(in_folder("a"), "", 0, &err), &err);
    assert_false(file_read(in_folder("a/b"), 10, &text, &err));
    assert_holds(err.text, strerror(ENOTDIR));
    assert_int_equal(text.length, 0);
    text_finish(&text);
}
END_TEST

START_TEST(reads_a_pipe_and_standard_input)
{
    int ends[2];
    assert_int_equal(pipe(ends), 0);
    assert_int_equal(write(ends[1], "piped", 5), 5);
    close(ends[1]);
    int before = dup(STDIN_FILENO);
    dup2(ends[0], STDIN_FILENO);
    close(ends[0]);
    Text text;
    Err err;
    text_init(&text);
    assert_done(file_read("-", 10, &text, &err), &err);
    assert_string_equal(text.bytes, "piped");
    text_finish(&text);
    dup2(before, STDIN_FILENO);
    close(before);
}
END_TEST

START_TEST(keeps_the_mode)
{
    Err err;
    struct stat what;
    assert_done(file_write_safely(in_folder("mode"), "x", 1, &err), &err);
    mode_t mask = umask(0);
    umask(mask);
    assert_int_equal(stat(in_folder("mode"), &what), 0);
    assert_int_equal(what.st_mode & 0777, 0666 & ~mask);
    assert_int_equal(chmod(in_folder("mode"), 0640), 0);
    assert_done(file_write_safely(in_folder("mode"), "y", 1, &err), &err);
    assert_int_equal(stat(in_folder("mode"), &what), 0);
    assert_int_equal(what.st_mode & 0777, 0640);
}
END_TEST

START_TEST(writes_through_links)
{
    Err err;
    struct stat what;
    assert_int_equal(mkdir(in_folder("deep"), 0700), 0);
    assert_int_equal(symlink("deep/wall", in_folder("link")), 0);
    assert_int_equal(symlink("link", in_folder("link2")), 0);
    assert_done(file_write_safely(in_folder("link2"), "new", 3, &err), &err); /* what it names is not there yet */
    assert_content("deep/wall", "new");
    assert_done(file_write_safely(in_folder("link2"), "newer", 5, &err), &err);
    assert_content("deep/wall", "newer");
    assert_int_equal(lstat(in_folder("link2"), &what), 0);
    assert_true(S_ISLNK(what.st_mode));
    assert_int_equal(symlink("ring", in_folder("ring")), 0);
    assert_false(file_write_safely(in_folder("ring"), "x", 1, &err));
    assert_holds(err.text, strerror(ELOOP));
}
END_TEST

START_TEST(refuses_what_is_no_file)
{
    Err err;
    assert_false(file_write_safely(folder, "x", 1, &err));
    assert_holds(err.text, "folder");
    assert_false(file_write_safely("/dev/null", "x", 1, &err));
    assert_holds(err.text, "not a file");
    assert_false(file_write_safely(in_folder("no/such/folder"), "x", 1, &err));
    assert_int_equal(err.kind, ERR_SYSTEM);
    assert_false(file_write_safely("", "x", 1, &err));
}
END_TEST

/* As on a full disk: the process may write 4096 bytes and no more. */
START_TEST(a_failed_write_leaves_the_old_file)
{
    Err err;
    assert_done(file_write_safely(in_folder("full"), "old", 3, &err), &err);
    pid_t child = fork();
    if (child == 0) {
        static char much[10000];
        signal(SIGXFSZ, SIG_IGN);
        setrlimit(RLIMIT_FSIZE, &(struct rlimit){4096, 4096});
        bool wrote = file_write_safely(in_folder("full"), much, sizeof much, &err) ||
                     strstr(err.text, "what stood there is unharmed") == NULL ||
                     file_write_safely(in_folder("fresh"), much, sizeof much, &err) ||
                     strstr(err.text, "what stood there") != NULL;
        bool made = file_create(in_folder("fresh"), much, sizeof much, &err);
        _exit(wrote || made || files_left() > 0 || access(in_folder("fresh"), F_OK) == 0);
    }
    int status;
    assert_int_equal(waitpid(child, &status, 0), child);
    assert_int_equal(status, 0);
    assert_content("full", "old");
}
END_TEST

/* Who is root may write anything: the child gives that up first. */
START_TEST(a_file_that_is_kept_from_writing_stays)
{
    Err err;
    assert_done(file_write_safely(in_folder("kept"), "old", 3, &err), &err);
    assert_int_equal(chmod(in_folder("kept"), 0444), 0);
    assert_int_equal(chmod(folder, 0777), 0);
    pid_t child = fork();
    if (child == 0) {
        if (geteuid() == 0 && setuid(65534) != 0)
            _exit(2);
        _exit(file_write_safely(in_folder("kept"), "new", 3, &err) ? 1 : 0);
    }
    int status;
    assert_int_equal(waitpid(child, &status, 0), child);
    assert_int_equal(status, 0);
    assert_content("kept", "old");
}
END_TEST

START_TEST(create_takes_no_name_twice)
{
    Err err;
    assert_done(file_create(in_folder("once"), "first", 5, &err), &err);
    assert_false(file_create(in_folder("once"), "second", 6, &err));
    assert_int_equal(err.kind, ERR_SYSTEM);
    assert_holds(err.text, "exists already");
    assert_content("once", "first");
}
END_TEST

START_TEST(makes_folders)
{
    Err err;
    struct stat what;
    assert_done(file_make_folder(in_folder("x/y/z"), &err), &err);
    assert_done(file_make_folder(in_folder("x/y/z/"), &err), &err);
    assert_int_equal(stat(in_folder("x/y"), &what), 0);
    assert_int_equal(what.st_mode & 0777, 0700);
    assert_done(file_write_safely(in_folder("x/f"), "", 0, &err), &err);
    assert_false(file_make_folder(in_folder("x/f"), &err));
    assert_holds(err.text, "is a file");
    assert_false(file_make_folder(in_folder("x/f/g"), &err));
}
END_TEST

/* A pipe with no writer, opened, would be waited for without end. */
START_TEST(a_named_pipe_is_refused_at_once)
{
    Err err;
    Text text;
    text_init(&text);
    assert_int_equal(mkfifo(in_folder("a"), 0600), 0);
    alarm(5);
    assert_false(file_read(in_folder("a"), 100, &text, &err));
    assert_holds(err.text, "is a pipe");
    assert_false(file_write_safely(in_folder("a"), "x", 1, &err));
    assert_false(file_create(in_folder("a"), "x", 1, &err));
    alarm(0);
    text_finish(&text);
}
END_TEST

/* A file of a group of its own that passes on its rights. */
START_TEST(keeps_the_bits_above_the_rights)
{
    Err err;
    struct stat what;
    assert_done(file_write_safely(in_folder("mode"), "x", 1, &err), &err);
    assert_int_equal(chmod(in_folder("mode"), 02750), 0);
    assert_done(file_write_safely(in_folder("mode"), "y", 1, &err), &err);
    assert_int_equal(stat(in_folder("mode"), &what), 0);
    assert_int_equal(what.st_mode & 07777, 02750);
}
END_TEST

/* What a process left that was killed while it wrote; what a living one writes, and what is somebody else's, stays. */
START_TEST(clears_what_the_dead_left)
{
    Err err;
    char left[100], alive[100];
    pid_t child = fork();
    if (child == 0)
        _exit(0);
    assert_int_equal(waitpid(child, NULL, 0), child);
    snprintf(left, sizeof left, ".datumrow-%ld-0.new", (long)child);
    snprintf(alive, sizeof alive, ".datumrow-%ld-7.new", (long)getpid());
    assert_done(file_create(in_folder(left), "half", 4, &err), &err);
    assert_done(file_create(in_folder(alive), "half", 4, &err), &err);
    assert_done(file_create(in_folder("once"), "mine", 4, &err), &err);
    file_clear_left(in_folder("once"));
    assert_int_not_equal(access(in_folder(left), F_OK), 0);
    assert_int_equal(access(in_folder(alive), F_OK), 0);
    assert_content("once", "mine");
    unlink(in_folder(alive));
}
END_TEST

/* A new file is there whole or not at all, however its writer ends. */
START_TEST(a_new_file_comes_whole)
{
    Err err;
    static char much[400000];
    for (int i = 0; i < 40; i++) {
        pid_t child = fork();
        if (child == 0)
            _exit(file_create(in_folder("fresh"), much, sizeof much, &err) ? 0 : 1);
        struct timespec some = {0, i * 50000};
        nanosleep(&some, NULL);
        kill(child, SIGKILL);
        assert_int_equal(waitpid(child, NULL, 0), child);
        struct stat what;
        if (stat(in_folder("fresh"), &what) == 0)
            assert_int_equal(what.st_size, sizeof much);
        unlink(in_folder("fresh"));
    }
    assert_done(file_create(in_folder("once"), "mine", 4, &err), &err);
    file_clear_left(in_folder("once"));
    assert_int_equal(files_left(), 0);
}
END_TEST

static void make_folder(void)
{
    memcpy(folder, "/tmp/datumrow-file-XXXXXX", sizeof folder);
    assert_non_null(mkdtemp(folder));
}

static void remove_folder(void)
{
    const char *names[] = {"a",    "long", "mode", "link2", "link", "deep/wall", "deep",  "ring", "full",
                           "kept", "once", "x/f",  "x/y/z", "x/y",  "x",         "fresh", ""};
    for (size_t i = 0; i < sizeof names / sizeof *names; i++)
        remove(in_folder(names[i]));
}

int main(void)
{
    const TTest *const tests[] = {
        reads_what_was_written,
        reading_is_limited,
        tells_what_cannot_be_read,
        reads_a_pipe_and_standard_input,
        keeps_the_mode,
        writes_through_links,
        refuses_what_is_no_file,
        a_failed_write_leaves_the_old_file,
        a_file_that_is_kept_from_writing_stays,
        create_takes_no_name_twice,
        makes_folders,
        a_named_pipe_is_refused_at_once,
        keeps_the_bits_above_the_rights,
        clears_what_the_dead_left,
        a_new_file_comes_whole,
    };
    return RUN_WITH(tests, make_folder, remove_folder);
}
