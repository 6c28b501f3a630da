/* What makes a wall impossible: where in the file, what is wrong, what to write instead. */
#ifndef WALL_PROBLEM_H
#define WALL_PROBLEM_H

typedef struct Problem {
    char *path; /* field path from the top of the file, "" for the whole */
    char *text; /* what is wrong; what to write instead */
} Problem;

typedef struct Problems {
    Problem *at;
    int count;
    int room;
} Problems;

#endif
