#include "base/nearest.h"

#include <stdbool.h>
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
