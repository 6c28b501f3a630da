#include "trade/season.h"

#include "base/panic.h"
#include "trade/say.h"
#include "trade/spacer.h"

#include <math.h>
#include <stdlib.h>

/*
 *      |<------ D, held at its middle ------>|r|<------
 *      =======================================  =======   hung
 *      =====================================    =====     dry:  D shrinks by half at each edge, the reveal gains the
 * whole
 *      ==========================================         damp: the reveal may close
 */

/* Coefficients of eq. 4-5 as c0 + c1 T + c2 T^2. */
typedef struct Power {
    double c0, c1, c2;
} Power;

typedef struct Coefficients {
    Power w, k, k1, k2;
} Coefficients;

static const Coefficients fahrenheit = {
    {330, 0.452, 0.00415}, {0.791, 0.000463, -0.000000844}, {6.34, 0.000775, -0.0000935}, {1.09, 0.0284, -0.0000904}};

static const Coefficients celsius = {
    {349, 1.29, 0.0135}, {0.805, 0.000736, -0.00000273}, {6.27, -0.00938, -0.000303}, {1.91, 0.0407, -0.000293}};

static double power_at(const Power *power, double t)
{
    return power->c0 + power->c1 * t + power->c2 * t * t;
}

double season_moisture(const Air *air)
{
    const Coefficients *of = air->celsius ? &celsius : &fahrenheit;
    double t = (double)air->temperature / 1000;
    double h = (double)air->humidity / 100000;
    double w = power_at(&of->w, t);
    double kh = power_at(&of->k, t) * h;
    double k1 = power_at(&of->k1, t);
    double k2 = power_at(&of->k2, t);
    double one = k1 * kh;
    double two = k1 * k2 * kh * kh;
    return 1800 / w * (kh / (1 - kh) + (one + 2 * two) / (1 + one + two));
}

/* Eq. 13-2 is given for these contents. */
#define DRY_END 6.0
#define DAMP_END 14.0

static bool is_within(double moisture)
{
    return moisture >= DRY_END && moisture <= DAMP_END;
}

double season_change(const Species *species, Grain grain, double size, double from, double to)
{
    const bool flat = grain == GRAIN_FLAT;
    const double coefficient = (flat ? species->tangential : species->radial) / 100000.0;
    if (is_within(from) && is_within(to))
        return size * coefficient * (to - from);
    const int tenths = flat ? species->shrink_tangential : species->shrink_radial;
    const double green = species->green;
    const double shrinkage = tenths > 0 ? tenths / 10.0 : 100 * green / (1 / coefficient - 10 + green);
    const double change = size * (to - from) / (100 * green / shrinkage - green + from);
    if (!is_within(from))
        return change;
    /* C is the slope at 10 %: from damper wood the equations do not meet at the ends of eq. 13-2, and it rules until
     * the other passes it */
    const double at_end = size * coefficient * ((to > DAMP_END ? DAMP_END : DRY_END) - from);
    return to > DAMP_END ? fmax(change, at_end) : fmin(change, at_end);
}

/* A length from a double: the one rounding, half away from zero. */
static Length whole(double length)
{
    BUG_UNLESS(length > -2.0 * (double)LENGTH_MOST && length < 2.0 * (double)LENGTH_MOST);
    return (Length)llround(length);
}

static Season season_at(const Wall *wall, const Species *species, const Air *air)
{
    double hung = season_moisture(&wall->wood.hung);
    double then = season_moisture(air);
    double change = season_change(species, wall->wood.grain, (double)wall_widest(wall), hung, then);
    Length reveal = whole((double)wall->planks.reveal - change);
    return (Season){.moisture = llround(then * 100),
                    .change = whole(change),
                    .reveal = reveal > 0 ? reveal : 0,
                    .closes = reveal < 0 ? -reveal : 0};
}

Seasons season_of_wall(const Wall *wall)
{
    Seasons seasons = {0};
    if (!wall->wood.given)
        return seasons;
    seasons.species = species_named(wall->wood.species);
    if (!seasons.species)
        return seasons;
    seasons.given = true;
    seasons.hung = season_at(wall, seasons.species, &wall->wood.hung);
    seasons.dry = season_at(wall, seasons.species, &wall->wood.dry);
    seasons.damp = season_at(wall, seasons.species, &wall->wood.damp);
    return seasons;
}

/* What a course is high at its highest: planks are as wide as it takes. */
static Length wood_of(const FaceLayout *face)
{
    Length wood = 0;
    for (int i = 0; i < face->course_count; i++)
        wood += face->courses[i].rip.most;
    return wood;
}

SeasonFace *season_faces(Arena *arena, const Layout *layout)
{
    const Wall *wall = layout->wall;
    Seasons seasons = season_of_wall(wall);
    if (!seasons.given)
        return NULL;
    double hung = season_moisture(&wall->wood.hung);
    SeasonFace *faces = arena_array(arena, SeasonFace, wall->faces.count);
    for (int i = 0; i < wall->faces.count; i++) {
        Length wood = wood_of(&layout->faces[i]);
        const Air *airs[2] = {&wall->wood.dry, &wall->wood.damp};
        Length changes[2];
        for (int j = 0; j < 2; j++)
            changes[j] =
                whole(season_change(seasons.species, wall->wood.grain, (double)wood, hung, season_moisture(airs[j])));
        faces[i] = (SeasonFace){.wood = wood, .dry = changes[0], .damp = changes[1]};
    }
    return faces;
}

/* The reveal closes in one season: by how much, and what would keep it open. */
static void add_closing(Arena *arena, const Wall *wall, const Season *season, const char *when, Findings *findings)
{
    if (season->closes == 0)
        return;
    Length needed = wall->planks.reveal + season->closes;
    Length fine = wall->units == UNITS_IN ? LENGTH_INCH / 64 : LENGTH_MM / 10;
    Spacer spacer;
    const char *would = spacer_at_least(needed, &spacer) ? say(arena, "%s (%s) would", spacer_words(arena, &spacer),
                                                               say_thin(arena, wall, spacer.thickness))
                                                         : "a spacer of that thickness would";
    Finding finding = finding_of(RULE_SEASON);
    finding.text =
        say(arena,
            "In the %s season the widest plank grows %s, more than the reveal of %s: the courses press on one "
            "another and may lift. A reveal of %s keeps them apart; %s do.",
            when, say_fine(arena, wall, season->change), say_fine(arena, wall, wall->planks.reveal),
            say_fine(arena, wall, length_round_up(needed, fine)), would);
    *arena_push(arena, findings) = finding;
}

void season_findings(Arena *arena, const Layout *layout, Findings *findings)
{
    const Wall *wall = layout->wall;
    Seasons seasons = season_of_wall(wall);
    if (!seasons.given)
        return;
    if (seasons.dry.moisture > seasons.damp.moisture) {
        Finding finding = finding_of(RULE_SEASON);
        finding.text =
            say(arena,
                "The air written as `dry` leaves the wood at %lld.%02lld %%, damper than the %lld.%02lld %% of "
                "`damp`; change the two over.",
                (long long)seasons.dry.moisture / 100, (long long)seasons.dry.moisture % 100,
                (long long)seasons.damp.moisture / 100, (long long)seasons.damp.moisture % 100);
        *arena_push(arena, findings) = finding;
    }
    if (seasons.dry.moisture <= seasons.damp.moisture &&
        (seasons.hung.moisture < seasons.dry.moisture || seasons.hung.moisture > seasons.damp.moisture)) {
        const bool below = seasons.hung.moisture < seasons.dry.moisture;
        Finding finding = finding_of(RULE_RANGE);
        finding.text =
            say(arena,
                "The air that the boards are hung in leaves the wood at %lld.%02lld %%, %s than the %lld.%02lld %% "
                "of the %s season. Check it.",
                (long long)seasons.hung.moisture / 100, (long long)seasons.hung.moisture % 100,
                below ? "drier" : "damper", (long long)(below ? seasons.dry : seasons.damp).moisture / 100,
                (long long)(below ? seasons.dry : seasons.damp).moisture % 100, below ? "dry" : "damp");
        *arena_push(arena, findings) = finding;
    }
    add_closing(arena, wall, &seasons.damp, "damp", findings);
    add_closing(arena, wall, &seasons.dry, "dry", findings);
}
