/* The table of keys holds what it says: ranges, defaults, words that no YAML reader takes for something else. */
#include "support/test.h"

#include "everything.h"
#include "store/keys.h"
#include "store/tree.h"

#include <stdio.h>
#include <string.h>

static Arena *arena;
static int looked_at;

static bool parse(const char *text, Source *out, Errs *errors)
{
    *errors = (Errs){0};
    return store_parse(arena, "wall.yaml", text, strlen(text), out, errors);
}

/* Where the key of a path stands in the file: its name and its value. In lists the first item that has it. */
static TreeNode *find(TreeNode *node, const char *path, TreeNode **name)
{
    if (path[0] == '\0')
        return node;
    if (strncmp(path, "[]", 2) == 0) {
        for (TreeNode *item = node->kind == NODE_LIST ? node->first : NULL; item != NULL; item = item->next) {
            TreeNode *found = find(item, path + 2 + (path[2] == '.'), name);
            if (found != NULL)
                return found;
        }
        return NULL;
    }
    char key[64];
    const size_t length = strcspn(path, ".[");
    snprintf(key, sizeof key, "%.*s", (int)length, path);
    TreeNode *value = node->kind == NODE_MAPPING ? tree_value(node, key, name) : NULL;
    return value == NULL ? NULL : find(value, path + length + (path[length] == '.'), name);
}

static TreeNode *place_of(const char *path, TreeNode **name)
{
    Report report = {.arena = arena, .name = ""};
    TreeNode *root = tree_parse(arena, &report, everything, strlen(everything));
    assert_non_null(root);
    TreeNode *value = find(root, path, name);
    if (value == NULL)
        FAIL("%s does not stand in everything.h", path);
    return value;
}

/* The file with other bytes from `start` to `end`. */
static char *with(size_t start, size_t end, const char *bytes)
{
    Text text;
    text_init(&text);
    text_put_bytes(&text, everything, start);
    text_put(&text, bytes);
    text_put(&text, everything + end);
    char *copy = arena_text(arena, text.bytes, text.length);
    text_finish(&text);
    return copy;
}

static void for_each(void (*each)(const char *path, const FileKey *key, void *context))
{
    arena = arena_new();
    looked_at = 0;
    keys_walk(each, NULL);
    arena_free(arena);
}

/* ---- */

static void key_stands(const char *path, const FileKey *key, void *context)
{
    (void)context;
    TreeNode *name = NULL;
    place_of(path, &name);
    assert_non_null(key->says);
    assert_true(strlen(key->says) > 3);
    assert_true(key->says[strlen(key->says) - 1] != '.');
    assert_null(strchr(key->says, '\n'));
    looked_at++;
}

START_TEST(every_key_stands_in_everything)
{
    for_each(key_stands);
    assert_true(looked_at >= 90);
    Source out;
    Errs errors;
    arena = arena_new();
    if (!parse(everything, &out, &errors))
        FAIL("%d: %s", errors.at[0].line, errors.at[0].text);
    arena_free(arena);
}
END_TEST

/* "Keys and words avoid what older YAML readers take for truth values": YAML 1.1, https://yaml.org/type/bool.html and
 * https://yaml.org/type/null.html (both from memory). */
static void is_no_truth_value(const char *word)
{
    static const char *const taken[] = {"y", "n", "yes", "no", "on", "off", "true", "false", "null", "~", ""};
    for (size_t i = 0; i < sizeof taken / sizeof *taken; i++)
        assert_string_not_equal(word, taken[i]);
    for (const char *c = word; *c != '\0'; c++)
        assert_true((*c >= 'a' && *c <= 'z') || *c == '-' || (*c == ' ' && c > word));
}

static void key_words(const char *path, const FileKey *key, void *context)
{
    (void)path;
    (void)context;
    is_no_truth_value(key->name);
    for (int i = 0; key->words != NULL && key->words[i] != NULL; i++)
        if (i > 0 || key->words[i][0] != '\0')
            is_no_truth_value(key->words[i]);
    looked_at++;
}

START_TEST(no_word_is_a_truth_value)
{
    for_each(key_words);
    assert_true(looked_at > 0);
}
END_TEST

/* Is told in the line that the key's value stands in. */
static bool is_refused_there(const char *path, const char *value)
{
    TreeNode *name = NULL;
    const TreeNode *place = place_of(path, &name);
    Source out;
    Errs errors;
    if (parse(with(place->start, place->end, value), &out, &errors))
        return false;
    bool there = false;
    for (int i = 0; i < errors.count; i++)
        there |= errors.at[i].line == place->line;
    return there;
}

static bool is_length(const FileKey *key)
{
    return key->kind == VALUE_LENGTH || key->kind == VALUE_WIDTHS || key->kind == VALUE_LENGTHS ||
           key->kind == VALUE_LENGTH_OR_WORD;
}

static void key_range(const char *path, const FileKey *key, void *context)
{
    (void)context;
    if (!is_length(key) && key->kind != VALUE_COUNT && key->kind != VALUE_WHOLE && key->kind != VALUE_PERCENT)
        return;
    looked_at++;
    const bool list = key->kind == VALUE_LENGTHS;
    if (key->range == RANGE_ABOVE_ZERO && !is_refused_there(path, "0"))
        FAIL("%s takes 0", path);
    if (key->range != RANGE_ANY && !is_refused_there(path, "-1"))
        FAIL("%s takes -1", path);
    if (is_length(key) && !is_refused_there(path, list ? "[1001 m]" : "1001 m"))
        FAIL("%s takes more than 1 km", path);
    if (!is_refused_there(path, list ? "[1e3]" : "1e3"))
        FAIL("%s takes an exponent", path);
}

START_TEST(ranges_are_held)
{
    for_each(key_range);
    assert_true(looked_at >= 50);
}
END_TEST

/* A file without the key means the same as one with its default written out. */
static void key_default(const char *path, const FileKey *key, void *context)
{
    (void)context;
    if (key->fallback == NULL)
        return;
    TreeNode *name = NULL;
    const TreeNode *value = place_of(path, &name);
    /* the comma behind it goes too, or the one before */
    size_t start = name->start;
    size_t end = value->end;
    if (everything[end] == ',')
        end++;
    else
        while (everything[start] != ',' && everything[start] != '{')
            start--;
    start += everything[start] == '{';
    Source without;
    Source written;
    Errs errors;
    if (!parse(with(start, end, ""), &without, &errors))
        FAIL("without %s: %s", path, errors.at[0].text);
    if (!parse(with(value->start, value->end, key->kind == VALUE_TEXT ? "''" : key->fallback), &written, &errors))
        FAIL("%s: %s: %s", path, key->fallback, errors.at[0].text);
    if (!wall_equal(without.wall, written.wall))
        FAIL("%s: %s is not what a file without it means", path, key->fallback);
    looked_at++;
}

START_TEST(defaults_are_what_is_left_out)
{
    for_each(key_default);
    assert_true(looked_at >= 20);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        every_key_stands_in_everything,
        no_word_is_a_truth_value,
        ranges_are_held,
        defaults_are_what_is_left_out,
    };
    return RUN(tests);
}
