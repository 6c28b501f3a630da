/*
 * A qsort of another kind, for tests/same/run to put before that of the C library: heapsort. POSIX lets equal elements
 * come in any order, and libraries differ in it; what is printed may not hang on that.
 */
#include <stdlib.h>
#include <string.h>

static void exchange(char *a, char *b, size_t size)
{
    for (size_t i = 0; i < size; i++) {
        char held = a[i];
        a[i] = b[i];
        b[i] = held;
    }
}

typedef int Compare(const void *a, const void *b);

static void sink(char *base, size_t at, size_t count, size_t size, Compare *compare)
{
    for (size_t child = 2 * at + 1; child < count; at = child, child = 2 * at + 1) {
        if (child + 1 < count && compare(base + child * size, base + (child + 1) * size) < 0)
            child++;
        if (compare(base + at * size, base + child * size) >= 0)
            return;
        exchange(base + at * size, base + child * size, size);
    }
}

void qsort(void *elements, size_t count, size_t size, Compare *compare)
{
    char *base = elements;
    for (size_t i = count / 2; i-- > 0;)
        sink(base, i, count, size, compare);
    for (size_t end = count; end-- > 1;) {
        exchange(base, base + end * size, size);
        sink(base, 0, end, size, compare);
    }
}
