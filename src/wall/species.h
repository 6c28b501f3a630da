/*
 * Woods that the wall file may name, and how much each moves across its grain: Wood Handbook (USDA Forest Products
 * Laboratory, FPL-GTR-282), Table 13-5 (change coefficients per percent of moisture content, for 6 to 14 %) and Table
 * 4-3 (shrinkage from green to ovendry). Whole numbers, no equations: those are the trade's.
 */
#ifndef WALL_SPECIES_H
#define WALL_SPECIES_H

typedef struct Species {
    const char *name;  /* as the wall file writes it: "pine, eastern white" */
    int radial;        /* C_R, hundred-thousandths per percent: quarter grain */
    int tangential;    /* C_T: flat grain */
    int shrink_radial; /* S_R, tenths of a percent; 0 where the table has none */
    int shrink_tangential;
    int green; /* percent of moisture where shrinking begins, which C was reckoned from: 30, for redwood and some cedars
                  22 */
} Species;

int species_count(void);
const Species *species_at(int index); /* in the order of their names */

/* The species of that name, capitals or not, blanks as they come; NULL where there is none. */
const Species *species_named(const char *name);

/* The names nearest to `name`, best first, into near[0..most); how many there are, NEAREST_MOST of base/nearest.h
 * at the most. For "nearest names" in an error. */
int species_nearest(const char *name, const Species *near[], int most);

#endif
