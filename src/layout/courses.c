#include "layout/courses.h"

int layout_course_index(const FaceLayout *face, int64_t number)
{
    int low = 0, high = face->course_count;
    while (low < high) {
        const int middle = low + (high - low) / 2;
        if (face->courses[middle].number < number)
            low = middle + 1;
        else
            high = middle;
    }
    return low < face->course_count && face->courses[low].number == number ? low : -1;
}
