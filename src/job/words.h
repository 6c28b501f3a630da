/*
 * How sheets say things: lengths to the marking resolution, marks from the level line, boards, courses, rips. Every
 * text is in plain words, made in the arena, and the same on every machine. Names that a user typed come out safe to
 * show.
 */
#ifndef JOB_WORDS_H
#define JOB_WORDS_H

#include "base/text.h"
#include "job/job.h"

/* A text made as by printf. */
char *words(Arena *arena, const char *format, ...) __attribute__((format(printf, 2, 3)));

/* What a user typed, safe to show and cut to 60 cells. */
char *words_name(Arena *arena, const char *name);

/* With a capital letter in front. */
char *words_capital(Arena *arena, const char *text);

/* "Course 3, piece 12: the joint ...": a finding where its place does not stand beside it. A text that begins small
 * goes on from the course it belongs to. */
void words_put_finding(Text *out, const Finding *finding);
char *words_finding(Arena *arena, const Finding *finding);

/* "40 1/2", to the wall's marking resolution; words_length_unit: "40 1/2 in". */
char *words_length(Arena *arena, const Wall *wall, Length length);
char *words_length_unit(Arena *arena, const Wall *wall, Length length);

/* "40.5": the same as a decimal number, for spreadsheets. */
char *words_decimal(Arena *arena, const Wall *wall, Length length);

/* "40 1/2 up", "3/16 down", "0, level": a height from the level line. */
char *words_mark(Arena *arena, const Wall *wall, Length height);

/* "31", or "31 (A7)" where it is labelled. */
char *words_board(Arena *arena, const Wall *wall, int number);

/* "Course 3", "Course 0, the reference". */
char *words_course(Arena *arena, int64_t number);

/* "full", "straight", "taper", "scribe": the plan's words. */
const char *words_rip_shape(RipShape shape);

/* "1 board", "3 boards". */
char *words_count(Arena *arena, int count, const char *one, const char *many);

/* "9 hazards, 8 of them on any such job, 0 faults, 4 cautions." `general` of the hazards are of any such job. */
char *words_grades(Arena *arena, const Findings *findings, int general);

/* "3 of 41 neighbours are of one tone; by chance it would be 14"; NULL where no neighbours have a tone. */
char *words_tones(Arena *arena, const Looks *looks);

/* "2 joints over a joint one or two courses below, 1 stair of three joints"; NULL where nothing of the joints catches
 * the eye. */
char *words_joints(Arena *arena, const Looks *looks);

/* "inches, marked to 1/16" */
char *words_units(Arena *arena, const Wall *wall);

#endif
