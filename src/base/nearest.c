#include "base/nearest.h"

#include <string.h>

enum { LETTERS = 64 };

static int letter(char c)
{
    return c >= 'A' && c <= 'Z' ? c - 'A' + 'a' : (unsigned char)c;
}

static int smallest(int a, int b, int c)
{
    int least = a < b ? a : b;
    return least < c ? least : c;
}

static int bytes_of(const char *word)
{
    size_t length = strnlen(word, LETTERS);
    return (int)length;
}

/* Three rows of the table: cost[i % 3][k] makes the first k letters of b out of the first i of a. */
int nearest_distance(const char *a, const char *b)
{
    int cost[3][LETTERS + 1];
    int rows = bytes_of(a), columns = bytes_of(b);
    for (int k = 0; k <= columns; k++)
        cost[0][k] = k;
    for (int i = 1; i <= rows; i++) {
        int *row = cost[i % 3], *above = cost[(i + 2) % 3], *two_above = cost[(i + 1) % 3];
        row[0] = i;
        for (int k = 1; k <= columns; k++) {
            int same = letter(a[i - 1]) == letter(b[k - 1]) ? 0 : 1;
            row[k] = smallest(above[k] + 1, row[k - 1] + 1, above[k - 1] + same);
            bool swapped =
                i > 1 && k > 1 && letter(a[i - 1]) == letter(b[k - 2]) && letter(a[i - 2]) == letter(b[k - 1]);
            if (swapped && two_above[k - 2] + 1 < row[k])
                row[k] = two_above[k - 2] + 1;
        }
    }
    return cost[rows % 3][columns];
}

int nearest_word(const char *word, const char *const *words, int count)
{
    int best = -1, least = 0;
    for (int i = 0; i < count; i++) {
        int distance = nearest_distance(word, words[i]);
        int longer = bytes_of(word) > bytes_of(words[i]) ? bytes_of(word) : bytes_of(words[i]);
        if (distance * 3 <= longer && (best < 0 || distance < least)) {
            best = i;
            least = distance;
        }
    }
    return best;
}

/* ---- names of several words ---- */

/* A name letter by letter: small letters, one blank between words and behind a comma, none elsewhere. */
typedef struct Letters {
    const char *at;
    bool begun, blank; /* a blank is due before the next letter */
} Letters;

static int next_letter(Letters *letters)
{
    for (; *letters->at == ' ' || *letters->at == '\t'; letters->at++)
        letters->blank = true;
    if (*letters->at == '\0')
        return '\0';
    if (letters->blank && letters->begun && *letters->at != ',') {
        letters->blank = false;
        return ' ';
    }
    letters->begun = true;
    letters->blank = *letters->at == ',';
    return letter(*letters->at++);
}

bool nearest_same(const char *a, const char *b)
{
    Letters left = {.at = a}, right = {.at = b};
    int one, other;
    do {
        one = next_letter(&left);
        other = next_letter(&right);
    } while (one == other && one != '\0');
    return one == other;
}

static void plain(const char *name, char out[LETTERS])
{
    Letters letters = {.at = name};
    int length = 0, next;
    while (length < LETTERS - 1 && (next = next_letter(&letters)) != '\0')
        out[length++] = (char)next;
    out[length] = '\0';
}

/* The letters of all words of `wanted` that stand in `name`. */
static int shared_words(const char *wanted, const char *name)
{
    int letters = 0;
    while (*wanted != '\0') {
        char word[LETTERS];
        size_t length = strcspn(wanted, " ,-");
        memcpy(word, wanted, length);
        word[length] = '\0';
        if (length > 2 && strstr(name, word) != NULL)
            letters += (int)length;
        wanted += length;
        wanted += strspn(wanted, " ,-");
    }
    return letters;
}

int nearest_names(const char *name, const char *const *names, int count, int near[], int most)
{
    char wanted[LETTERS], other[LETTERS];
    int costs[NEAREST_MOST], found = 0;
    if (most > NEAREST_MOST)
        most = NEAREST_MOST;
    plain(name, wanted);
    for (int i = 0; i < count; i++) {
        plain(names[i], other);
        int cost = nearest_distance(wanted, other) - 3 * shared_words(wanted, other);
        int at = found;
        while (at > 0 && cost < costs[at - 1])
            at--;
        if (at == most)
            continue;
        if (found < most)
            found++;
        for (int k = found - 1; k > at; k--) {
            costs[k] = costs[k - 1];
            near[k] = near[k - 1];
        }
        costs[at] = cost;
        near[at] = i;
    }
    return found;
}
