/* What must hold of the sheets of any wall, seen on their printed text alone. */
#include "support/test.h"

#include "base/fold.h"
#include "base/utf8.h"
#include "fill/fill.h"
#include "fill/trim.h"
#include "job/words.h"
#include "sheet/sheets/sheets.h"
#include "sheet/writers/csv.h"
#include "sheet/writers/plain.h"
#include "support/random_wall.h"
#include "trade/trim_runs.h"

#include <stdlib.h>
#include <string.h>

enum { WALLS = 60 };

static const struct {
    const char *name;
    Sheet *(*make)(Arena *arena, const Job *job, const char *date);
} makers[] = {{"all", sheet_all},     {"nails", sheet_nails}, {"first", sheet_first}, {"rows", sheet_rows},
              {"cuts", sheet_cuts},   {"batch", sheet_batch}, {"pole", sheet_pole},   {"draw", sheet_draw},
              {"check", sheet_check}, {"bill", sheet_bill},   {"mill", sheet_mill},   {"starts", sheet_starts}};

/* Any plan will do; that of the hand method is there at once. */
static const Job *job_for(Arena *arena, uint64_t seed)
{
    Err err = {0};
    const Wall *wall = random_wall(arena, seed, seed % 3 == 0 ? RANDOM_HUNG : RANDOM_ANY);
    const Layout *layout = layout_wall(arena, wall, &err);
    if (layout == NULL)
        FAIL("wall %d: %s", (int)seed, err.text);
    return job_of_parts(arena, layout, fill_by_hand(arena, layout), "wall.yaml", "0123456789ab");
}

/* The next line of `*text`, its line end taken off; NULL at the end. Form feeds are taken for the begin of a page. */
static char *next_line(char **text, int *line_of_page)
{
    if (**text == '\0')
        return NULL;
    if (**text == '\f') {
        (*text)++;
        *line_of_page = 0;
    }
    char *line = *text;
    char *end = strchr(line, '\n');
    assert_non_null(end);
    *end = '\0';
    *text = end + 1;
    (*line_of_page)++;
    return line;
}

START_TEST(every_page_fits)
{
    for (uint64_t seed = 1; seed <= WALLS; seed++) {
        Arena *arena = arena_new();
        const Job *job = job_for(arena, seed);
        for (size_t i = 0; i < sizeof makers / sizeof *makers; i++) {
            Text text;
            text_init(&text);
            plain_write(makers[i].make(arena, job, ""), &text);
            char *rest = text.bytes, *line;
            int number = 0;
            while ((line = next_line(&rest, &number)) != NULL)
                if (utf8_cells(line) > SHEET_COLUMNS || number > SHEET_LINES || strpbrk(line, "\t\r\f") != NULL)
                    FAIL("wall %d, %s: line %d: %s", (int)seed, makers[i].name, number, line);
            text_finish(&text);
        }
        arena_free(arena);
    }
}
END_TEST

/* The length that `text` holds, spaces in front of it. */
static Length read_length(const char *text, size_t length, Units units)
{
    Length out = 0;
    Err err = {0};
    while (length > 0 && *text == ' ') {
        text++;
        length--;
    }
    if (!length_parse(text, length, units, &out, &err))
        FAIL("\"%.*s\" is no length: %s", (int)length, text, err.text);
    return out;
}

/* A section of a row as it is printed, and its pieces so far. */
typedef struct Row {
    Length length, sum;
    Length joints[400];
    int joint_count, pieces;
    bool joints_untold;
} Row;

/* "; joints at 32 1/4, 48:": each of them. */
static void read_joints(const char *from, Units units, Row *row)
{
    const char *at = strstr(from, "; joint");
    row->joint_count = 0;
    if (at == NULL)
        return;
    at = strstr(at, " at ") + 4;
    while (*at != '\0') {
        const size_t length = strcspn(at, ",:");
        assert_in_range(row->joint_count, 0, 399);
        row->joints[row->joint_count++] = read_length(at, length, units);
        at += length + (at[length] != '\0');
    }
}

/* What `words` say of a section: " 59 13/16 long; joints at 12, 30:" from `from` on. */
static void read_words(const char *from, Units units, Row *row)
{
    const char *to = strstr(from, " long");
    assert_non_null(to);
    *row = (Row){.length = read_length(from, (size_t)(to - from), units)};
    read_joints(to, units, row);
}

/* Adds the cells from `at` up to `end` of the line to `whole`, spaces around them taken off. */
static void take_cells(Text *whole, const char *line, int at, int end)
{
    const char *from = line + utf8_prefix(line, at), *to = line + utf8_prefix(line, end);
    while (from < to && *from == ' ')
        from++;
    while (to > from && to[-1] == ' ')
        to--;
    if (from == to)
        return;
    text_put(whole, whole->length > 0 ? " " : "");
    text_put_bytes(whole, from, (size_t)(to - from));
}

static bool is_whole(const Text *text)
{
    return text->length > 0 && text->bytes[text->length - 1] == ':';
}

/* "From 1/16 on the face, 59 13/16 long:", "Section 1 of 2, from ..."; its length and joints. It may take several
 * lines: those that follow are taken with it. */
static bool read_section(char *line, char **rest, int *number, Units units, Row *row)
{
    static const char before[] = " on the face, ";
    const bool begins = strncmp(line, "    From ", 9) == 0 || strncmp(line, "    Section ", 12) == 0;
    if (!begins || strstr(line, before) == NULL)
        return false;
    Text whole;
    text_init(&whole);
    take_cells(&whole, line, 0, SHEET_COLUMNS);
    while (!is_whole(&whole)) {
        line = next_line(rest, number);
        assert_non_null(line);
        take_cells(&whole, line, 0, SHEET_COLUMNS);
    }
    read_words(strstr(whole.bytes, before) + sizeof before - 1, units, row);
    text_finish(&whole);
    return true;
}

/* "  1: from 1/16, 48 7/16 long:" and beside it that of section 2: two sections, one in either half. Their joints are
 * where the first piece ends. */
static bool read_both(char *line, char **rest, int *number, Units units, Row both[2])
{
    enum { HALF = 38 };
    if (strncmp(line, "  1: from ", 10) != 0)
        return false;
    Text halves[2];
    for (int k = 0; k < 2; k++)
        text_init(&halves[k]);
    while (!is_whole(&halves[0]) || !is_whole(&halves[1])) {
        if (line == NULL)
            FAIL("two sections without an end%s", "");
        for (int k = 0; k < 2; k++)
            take_cells(&halves[k], line, k * HALF, (k + 1) * HALF);
        if (!is_whole(&halves[0]) || !is_whole(&halves[1]))
            line = next_line(rest, number);
    }
    for (int k = 0; k < 2; k++) {
        read_words(strstr(halves[k].bytes, ", ") + 2, units, &both[k]);
        both[k].joints_untold = true;
        text_finish(&halves[k]);
    }
    return true;
}

/* The piece or bare stretch that stands at column `at`; its printed length. */
static bool read_piece(const char *line, int at, Units units, Length *length)
{
    enum { BOARD = 7, LENGTH = 23, STUDS = 32 }; /* columns of the row sheet */
    if (utf8_cells(line) < at + STUDS - 1)
        return false;
    const char *part = line + utf8_prefix(line, at), *board = line + utf8_prefix(line, at + BOARD);
    const bool ticks = strncmp(part, "[ ] ", 4) == 0 || strncmp(part, "[x] ", 4) == 0;
    if ((!ticks || board[-1] < '0' || board[-1] > '9') && strncmp(board, "BARE", 4) != 0)
        return false;
    const size_t from = utf8_prefix(line, at + LENGTH), to = utf8_prefix(line, at + STUDS);
    *length = read_length(line + from, to - from, units);
    return true;
}

static void end_row(const Row *row, uint64_t seed)
{
    const bool joints = row->joints_untold ? row->pieces <= 2 : row->pieces == row->joint_count + (row->pieces > 0);
    if (row->sum != row->length || !joints)
        FAIL("wall %d: %d pieces add up to %lld, the row is %lld nm and has %d joints", (int)seed, row->pieces,
             (long long)row->sum, (long long)row->length, row->joint_count);
}

static void take_piece(Row *row, Length length, uint64_t seed)
{
    if (!row->joints_untold && row->pieces > 0 &&
        (row->pieces > row->joint_count || row->joints[row->pieces - 1] != row->sum))
        FAIL("wall %d: joint %d is not where the lengths end, at %lld", (int)seed, row->pieces, (long long)row->sum);
    row->sum += length;
    row->pieces++;
}

/* The printed lengths of a row's pieces add up to the printed length of the row, and its joints are where they do. */
START_TEST(printed_lengths_add_up)
{
    enum { HALF = 38 };
    int sections = 0, beside = 0, pieces = 0, planned = 0;
    for (uint64_t seed = 1; seed <= WALLS; seed++) {
        Arena *arena = arena_new();
        const Job *job = job_for(arena, seed);
        const Units units = job->wall->units;
        Text text;
        text_init(&text);
        plain_write(sheet_rows(arena, job, ""), &text);
        char *rest = text.bytes, *line;
        int number = 0;
        Row rows[2] = {{0}, {0}}, next[2] = {{0}, {0}};
        bool both = false;
        while ((line = next_line(&rest, &number)) != NULL) {
            const bool two = read_both(line, &rest, &number, units, next);
            if (two || read_section(line, &rest, &number, units, &next[0])) {
                for (int k = 0; k < 2; k++) {
                    end_row(&rows[k], seed);
                    rows[k] = k == 0 || two ? next[k] : (Row){0};
                }
                both = two;
                sections += two ? 2 : 1;
                beside += two;
                continue;
            }
            for (int k = 0; k < 2; k++) {
                Length length;
                if (read_piece(line, k * HALF, units, &length)) {
                    take_piece(&rows[both ? k : 0], length, seed);
                    pieces++;
                }
            }
        }
        for (int k = 0; k < 2; k++)
            end_row(&rows[k], seed);
        planned += job->plan->piece_count + job->plan->bare_count;
        text_finish(&text);
        arena_free(arena);
    }
    assert_true(sections > 10 * WALLS && beside > WALLS);
    assert_int_equal(pieces, planned);
}
END_TEST

static int shown_kind(const Sheet *sheet, const char *kind)
{
    int column = 0, count = 0;
    while (strcmp(sheet->records.names[column], "kind") != 0)
        column++;
    for (int i = 0; i < sheet->records.count; i++)
        count += strcmp(sheet->records.at[i].at[column], kind) == 0;
    return count;
}

/* Every piece of plank once on the row sheet and once on the cut sheet, under the same length; behind them every piece
 * of trim once. */
START_TEST(both_sheets_hold_every_piece)
{
    int trims = 0;
    for (uint64_t seed = 1; seed <= WALLS; seed++) {
        Arena *arena = arena_new();
        const Job *job = job_for(arena, seed);
        const Sheet *rows = sheet_rows(arena, job, ""), *cuts = sheet_cuts(arena, job, "");
        assert_int_equal(rows->records.count,
                         job->plan->piece_count + shown_kind(rows, "bare") + shown_kind(rows, "course"));
        assert_int_equal(shown_kind(rows, "piece"), job->plan->piece_count);
        assert_int_equal(shown_kind(rows, "bare"), job->plan->bare_count);
        TrimPieces pieces = trim_pieces(arena, job->layout);
        const TrimPlan *trim = trim_plan(arena, job->wall, &pieces);
        assert_int_equal(shown_kind(cuts, "plank"), job->plan->piece_count);
        assert_int_equal(shown_kind(cuts, "trim"), trim->piece_count);
        assert_int_equal(shown_kind(cuts, "trim missing"), trim->missing.count);
        trims += trim->piece_count;
        assert_string_equal(rows->records.names[5], "piece");
        assert_string_equal(rows->records.names[8], "length");
        assert_string_equal(cuts->records.names[4], "piece");
        assert_string_equal(cuts->records.names[7], "length");
        assert_string_equal(cuts->records.names[15], "kind");
        const char **lengths = arena_array(arena, const char *, job->plan->piece_count + 1);
        for (int i = 0; i < rows->records.count; i++) { /* face by face; numbers go round mitered corners */
            if (rows->records.at[i].at[5][0] == '\0')
                continue; /* a stretch that stays bare, a course that openings take whole */
            const long number = strtol(rows->records.at[i].at[5], NULL, 10);
            assert_in_range(number, 1, job->plan->piece_count);
            assert_null(lengths[number]);
            lengths[number] = rows->records.at[i].at[8];
        }
        for (int i = 0; i < job->plan->piece_count; i++) {
            assert_string_equal(cuts->records.at[i].at[15], "plank");
            long number = strtol(cuts->records.at[i].at[4], NULL, 10);
            assert_in_range(number, 1, job->plan->piece_count);
            assert_non_null(lengths[number]);
            assert_string_equal(cuts->records.at[i].at[7], lengths[number]);
            lengths[number] = NULL;
        }
        bool *seen = arena_array(arena, bool, trim->piece_count + 1);
        for (int i = job->plan->piece_count; i < cuts->records.count; i++) {
            if (strcmp(cuts->records.at[i].at[15], "trim") != 0)
                continue; /* missing, or how a strip is ripped */
            long number = strtol(cuts->records.at[i].at[4], NULL, 10);
            assert_in_range(number, 1, trim->piece_count);
            assert_false(seen[number]);
            seen[number] = true;
        }
        for (int i = 1; i <= trim->piece_count; i++)
            assert_true(seen[i]);
        arena_free(arena);
    }
    assert_true(trims > WALLS);
}
END_TEST

/* Counts each number of "12 of 57; 3* of 58 (A2)" in `times`, which has room for `most`. */
static void count_numbers(const char *list, int *times, int most)
{
    while (list != NULL) {
        long number = strtol(list, NULL, 10);
        assert_in_range(number, 1, most);
        times[number]++;
        list = strstr(list, "; ");
        list = list == NULL ? NULL : list + 2;
    }
}

/* What stands in the lists of the batch sheet's crosscuts: planks, and with `trim` the trim. */
static void count_crosscuts(const Sheet *sheet, bool trim, int *times, int most)
{
    enum { LIST = 16, HALF = 39 };
    for (int i = 0; i < sheet->sections.count; i++) {
        const SheetSection *section = &sheet->sections.at[i];
        const char *head = section->heads.count == 0 ? "" : section->heads.at[0].at[0].text;
        if (strcmp(head, trim ? "Trim" : "Crosscuts, with a stop block") != 0)
            continue;
        for (int k = 0; k < section->groups.count; k++)
            for (int c = 0; c < section->groups.at[k].lines.at[0].count; c++) {
                const SheetCell *cell = &section->groups.at[k].lines.at[0].at[c];
                if (cell->at == LIST || cell->at == HALF + LIST)
                    count_numbers(cell->text, times, most);
            }
    }
}

static const char *field_of(const Sheet *sheet, int record, const char *name)
{
    for (int i = 0; i < sheet->records.name_count; i++)
        if (strcmp(sheet->records.names[i], name) == 0)
            return sheet->records.at[record].at[i];
    FAIL("%s has no column %s", sheet->kind, name);
    return "";
}

/* Every piece of the cut sheet that is still to be cut stands once among the crosscuts of the batch sheet, and once in
 * its data; nothing else does. */
START_TEST(the_batch_sheet_holds_the_pieces_of_the_cut_sheet)
{
    int hung = 0, trims = 0;
    for (uint64_t seed = 1; seed <= WALLS; seed++) {
        Arena *arena = arena_new();
        const Job *job = job_for(arena, seed);
        const Sheet *cuts = sheet_cuts(arena, job, ""), *batch = sheet_batch(arena, job, "");
        for (int trim = 0; trim <= 1; trim++) {
            const char *kind = trim ? "trim" : "plank";
            const int most = cuts->records.count + job->plan->piece_count + 1000;
            int *printed = arena_array(arena, int, most + 1), *data = arena_array(arena, int, most + 1);
            count_crosscuts(batch, trim, printed, most);
            for (int i = 0; i < batch->records.count; i++)
                if (strcmp(field_of(batch, i, "kind"), kind) == 0)
                    data[strtol(field_of(batch, i, "piece"), NULL, 10)]++;
            for (int i = 0; i < cuts->records.count; i++) {
                if (strcmp(field_of(cuts, i, "kind"), kind) != 0)
                    continue;
                const long number = strtol(field_of(cuts, i, "piece"), NULL, 10);
                const int times = field_of(cuts, i, "hung")[0] == '\0' ? 1 : 0;
                if (printed[number] != times || data[number] != times)
                    FAIL("wall %d: %s %ld stands %d times, in the data %d, not %d", (int)seed, kind, number,
                         printed[number], data[number], times);
                printed[number] = data[number] = 0;
                hung += times == 0;
                trims += trim;
            }
            for (int i = 0; i <= most; i++)
                if (printed[i] + data[i] != 0)
                    FAIL("wall %d: %s %d is not on the cut sheet", (int)seed, kind, i);
        }
        arena_free(arena);
    }
    assert_true(hung > 0 && trims > 0);
}
END_TEST

/* The bytes of a cell's text as they stand in the data, where quotes are doubled; the first letter left out, which may
 * be small there. */
static const char *as_data(Arena *arena, const char *cell)
{
    Text text;
    text_init(&text);
    fold_put(&text, cell + 1, strlen(cell + 1));
    const char *out = "";
    for (const char *c = text.bytes; *c != '\0'; c++)
        out = words(arena, "%s%s%c", out, *c == '"' ? "\"" : "", *c);
    text_finish(&text);
    return out;
}

/* The cells of the sheet that stand at `at` and reach to the page's right edge: what is told in words under a piece, a
 * start, a rough board. As much is in the data. Returns how many there are. */
static int details_in_data(const Sheet *sheet, int at, int seed)
{
    static const char rip[] = "Rip: ";
    int count = 0;
    Text data;
    text_init(&data);
    csv_write(sheet, &data);
    for (int i = 0; i < sheet->sections.count; i++)
        for (int k = 0; k < sheet->sections.at[i].groups.count; k++) {
            const SheetLines *lines = &sheet->sections.at[i].groups.at[k].lines;
            for (int l = 0; l < lines->count; l++)
                for (int c = 0; c < lines->at[l].count; c++) {
                    const SheetCell *cell = &lines->at[l].at[c];
                    if (cell->at != at || cell->width != SHEET_COLUMNS - at)
                        continue;
                    bool is_rip = strncmp(cell->text, rip, sizeof rip - 1) == 0;
                    if (strstr(data.bytes, as_data(sheet->arena, cell->text + (is_rip ? sizeof rip - 1 : 0))) == NULL)
                        FAIL("wall %d, %s: not in the data: %s", seed, sheet->kind, cell->text);
                    count++;
                }
        }
    text_finish(&data);
    return count;
}

START_TEST(data_loses_nothing_that_the_text_has)
{
    enum { ROWS_DETAIL = 9, DETAIL = 14, TEXT = 8 };
    int rows = 0, cuts = 0, starts = 0, mill = 0;
    for (uint64_t seed = 1; seed <= WALLS; seed++) {
        Arena *arena = arena_new();
        const Job *job = job_for(arena, seed);
        rows += details_in_data(sheet_rows(arena, job, ""), ROWS_DETAIL, (int)seed);
        cuts += details_in_data(sheet_cuts(arena, job, ""), DETAIL, (int)seed);
        starts += details_in_data(sheet_starts(arena, job, ""), TEXT, (int)seed);
        mill += details_in_data(sheet_mill(arena, job, ""), TEXT, (int)seed);
        arena_free(arena);
    }
    assert_true(rows > WALLS && cuts > WALLS && starts > WALLS && mill > WALLS);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        every_page_fits,
        printed_lengths_add_up,
        both_sheets_hold_every_piece,
        the_batch_sheet_holds_the_pieces_of_the_cut_sheet,
        data_loses_nothing_that_the_text_has,
    };
    return RUN(tests);
}
