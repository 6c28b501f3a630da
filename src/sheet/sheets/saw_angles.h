/*
 * The ends of pieces that are not cut square, by what the saw is set to: an angle in words, and the ends that are cut
 * at it. Lengths of slanted edges stand with each piece; degrees here are to set a saw, not to mark by.
 */
#ifndef SHEET_SHEETS_SAW_ANGLES_H
#define SHEET_SHEETS_SAW_ANGLES_H

#include "job/job.h"
#include "job/plank.h"

typedef struct SawAngles {
    const char *left, *right; /* NULL: square */
} SawAngles;

SawAngles saw_angles(Arena *arena, const Job *job, const Piece *piece, const Plank *plank);

typedef struct SawEnd {
    int piece;
    bool right;
} SawEnd;

typedef struct SawSetting {
    const char *angle;
    SawEnd *at;
    int count;
    int room;
} SawSetting;

typedef struct SawSettings {
    SawSetting *at;
    int count;
    int room;
} SawSettings;

/* Puts the end under its angle; nothing where that is NULL. */
void saw_settings_add(Arena *arena, SawSettings *settings, int piece, bool right, const char *angle);

/* "Left ends of pieces 3, 7; right end of piece 12." */
const char *saw_setting_ends(Arena *arena, SawSetting *setting);

/* "Pieces 3, 7, 12", rising; sorts `numbers`. */
const char *saw_number_list(Arena *arena, const char *before, int *numbers, int count);

#endif
