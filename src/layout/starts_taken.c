#include "layout/starts_taken.h"

/*
 * Most courses beside an opening lie clear of floor and ceiling over the opening's whole width, and are counted without
 * a look at the columns; the others are looked at column by column:
 *
 *      --------____              ceiling: course k+1 must be looked at
 *      -----+-----+----
 *           |     |              course k: clear
 *      -----|     |----
 */

/* A course's band. */
typedef struct TakenBand {
    int64_t course;
    Fine foot, head;
} TakenBand;

static Fine fine_greater(Fine a, Fine b)
{
    return a > b ? a : b;
}

static Fine fine_lesser(Fine a, Fine b)
{
    return a < b ? a : b;
}

/* Narrows [left, right] to where the line lies below y, or above it. */
static void narrow_to(const GapEdge *edge, Fine y, bool below, Fine *left, Fine *right)
{
    const Fine at_left = line_at(&edge->line, *left), at_right = line_at(&edge->line, *right);
    const bool left_in = below ? at_left < y : at_left > y, right_in = below ? at_right < y : at_right > y;
    if (left_in && right_in)
        return;
    if (!left_in && !right_in)
        *right = *left;
    else
        *(left_in ? right : left) = line_where(&edge->line, y);
}

/* Whether the column has wall between two heights. */
static bool wall_between(const Column *column, Fine low, Fine high)
{
    if (column->lower.left >= column->upper.left && column->lower.right >= column->upper.right)
        return false;
    Fine left = column->left, right = column->right;
    narrow_to(&column->lower, high, true, &left, &right);
    if (left < right)
        narrow_to(&column->upper, low, false, &left, &right);
    return left < right;
}

/* Whether the opening takes something of the band. */
static bool takes_some(const WeighFace *face, const TakenSpan *span, const TakenBand *band)
{
    if (!span->beyond && band->foot >= span->floor_highest && band->head <= span->ceiling_lowest)
        return true;
    const Fine low = fine_greater(band->foot, fine_of(span->box.bottom));
    const Fine high = fine_lesser(band->head, fine_of(span->box.top));
    for (int i = span->first; i < span->first + span->count; i++) {
        const Column *column = &face->columns.at[i];
        Fine left, right;
        if (wall_between(column, low, high) &&
            (!span->beyond || band_in_column(face, column, low, high, &left, &right) > 0))
            return true;
    }
    return false;
}

/* Whether it leaves nothing of the column's stretch of the band. */
static bool takes_column(const Column *column, const TakenSpan *span, const TakenBand *band)
{
    if (!wall_between(column, band->foot, band->head))
        return true;
    const Fine low = fine_lesser(column->lower.left, column->lower.right);
    const Fine high = fine_greater(column->upper.left, column->upper.right);
    return fine_of(span->box.left) <= column->left && fine_of(span->box.right) >= column->right &&
           fine_of(span->box.bottom) <= fine_greater(band->foot, low) &&
           fine_of(span->box.top) >= fine_lesser(band->head, high);
}

static bool takes_all(const Reaches *reaches, const CourseReach *reach, const TakenSpan *span, const TakenBand *band)
{
    const Columns *columns = &reaches->face->columns;
    for (int i = 0; i < columns->count; i++) {
        const Column *column = &columns->at[i];
        if (column->right > reach->left && column->left < reach->right && !takes_column(column, span, band))
            return false;
    }
    return true;
}

static bool is_cutout(Reaches *reaches, const TakenSpan *span, const TakenBand *band)
{
    if (!takes_some(reaches->face, span, band))
        return false;
    const CourseReach *reach = reach_of(reaches, band->course);
    return reach->hung && !takes_all(reaches, reach, span, band);
}

int taken_count(Reaches *reaches)
{
    int count = 0;
    for (int i = 0; i < reaches->face->opening_count; i++) {
        const TakenSpan *span = &reaches->face->taken[i];
        if (span->count == 0)
            continue;
        TakenBand band = {.course = bands_above(reaches->bands, wide_narrow(span->low >> FINE_BITS))};
        for (; band.course <= reaches->last; band.course++) {
            Length foot;
            const int in_list = bands_foot(reaches->bands, band.course, &foot);
            band.foot = fine_of(foot);
            band.head = fine_of(foot + reaches->bands->height[in_list]);
            if (band.foot >= span->high)
                break;
            count += is_cutout(reaches, span, &band);
        }
    }
    return count;
}
