#include "sheet/writers/plan.h"

#include <inttypes.h>
#include <string.h>

#include "base/utf8.h"
#include "fill/trim.h"
#include "job/places.h"
#include "job/start_work.h"
#include "layout/starts.h"
#include "trade/season.h"
#include "trade/shown.h"
#include "trade/trim_runs.h"

/*
 * Written by hand, not by an emitter: one fixed layout of blocks and flows, so that the same plan is the same bytes
 * with every version of every library. Blocks for what there are many of (faces, courses, pieces), flows for what
 * stands on one line.
 */
typedef struct Writer {
    const Job *job;
    Text *out;
    Arena *scratch;
    Places places;
} Writer;

/* ---- scalars ---- */

/* Words that some reader takes for something other than a text. */
static bool reads_otherwise(const char *text)
{
    static const char *const words[] = {"null", "true", "false", "yes", "no", "on", "off", "y", "n"};
    for (size_t i = 0; i < sizeof words / sizeof *words; i++) {
        size_t k = 0;
        while (text[k] != '\0' && words[i][k] != '\0' && (text[k] | 32) == words[i][k])
            k++;
        if (text[k] == '\0' && words[i][k] == '\0')
            return true;
    }
    return false;
}

/* Letters first, then letters, digits, single spaces and `-`, `_`: no reader of YAML takes that for anything but
 * itself. */
static bool plain(const char *text)
{
    size_t length = strlen(text);
    if (length == 0 || text[length - 1] == ' ' || reads_otherwise(text))
        return false;
    for (size_t i = 0; i < length; i++) {
        char c = text[i];
        bool letter = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
        bool later = (c >= '0' && c <= '9') || c == ' ' || c == '-' || c == '_';
        if (!letter && (i == 0 || !later))
            return false;
    }
    return true;
}

/* Characters that a double-quoted scalar holds as they are: those of YAML 1.2.2's c-printable that a terminal may see
 * too. */
static bool printable(uint32_t code)
{
    return !utf8_unseen(code) && (code < 0xd800 || code >= 0xe000);
}

static void put_string(Text *out, const char *text)
{
    if (plain(text)) {
        text_put(out, text);
        return;
    }
    text_put(out, "\"");
    size_t length = strlen(text);
    for (size_t i = 0; i < length;) {
        uint32_t code = 0;
        int bytes = utf8_decode(text + i, length - i, &code);
        if (bytes <= 0) { /* no file with such a byte is read */
            bytes = 1;
            code = 0xfffd;
        }
        if (code == '"' || code == '\\')
            text_format(out, "\\%c", (char)code);
        else if (printable(code))
            text_put_bytes(out, text + i, (size_t)bytes);
        else if (code < 0x10000)
            text_format(out, "\\u%04" PRIX32, code);
        else
            text_format(out, "\\U%08" PRIX32, code);
        i += (size_t)bytes;
    }
    text_put(out, "\"");
}

static void put_length(Text *out, const char *key, Length length)
{
    text_format(out, "%s: %" PRId64, key, length);
}

static void put_name(Text *out, const char *key, const char *text)
{
    text_format(out, "%s: ", key);
    put_string(out, text);
}

/* ---- faces ---- */

static void put_outline(Text *out, const Points *points)
{
    text_put(out, "        outline: [");
    for (int i = 0; i < points->count; i++)
        text_format(out, "%s[%" PRId64 ", %" PRId64 "]", i > 0 ? ", " : "", points->at[i].x, points->at[i].y);
    text_put(out, "]\n");
}

static void put_cutouts(Text *out, const Face *face, const Cutouts *cutouts)
{
    text_put(out, cutouts->count == 0 ? "        cutouts: []\n" : "        cutouts:\n");
    for (int i = 0; i < cutouts->count; i++) {
        const Cutout *cutout = &cutouts->at[i];
        text_put(out, "        - {");
        put_name(out, "opening", face->openings.at[cutout->opening].name);
        text_format(out, ", shape: %s, left: %" PRId64 ", right: %" PRId64 ", bottom: %" PRId64 ", top: %" PRId64 "}\n",
                    cut_shape_word(cutout->shape), cutout->box.left, cutout->box.right, cutout->box.bottom,
                    cutout->box.top);
    }
}

static void put_studs(Text *out, const LengthList *studs, Length left, Length right)
{
    bool first = true;
    text_put(out, "        studs: [");
    for (int i = 0; i < studs->count; i++) {
        if (studs->at[i] < left || studs->at[i] > right)
            continue;
        text_format(out, "%s%" PRId64, first ? "" : ", ", studs->at[i]);
        first = false;
    }
    text_put(out, "]\n");
}

/* Only where the piece shows something. */
static void put_shows(Writer *writer, const Piece *piece)
{
    const ShownList list = shown_on_piece(writer->scratch, writer->job->layout, piece);
    for (int i = 0; i < list.count; i++) {
        put_length(writer->out, i == 0 ? "        shows: [{at" : ", {at", list.at[i].at);
        put_name(writer->out, ", what", list.at[i].what);
        text_put(writer->out, i + 1 == list.count ? "}]\n" : "}");
    }
}

static void put_piece(Writer *writer, const FaceLayout *face, const Course *course, const Piece *piece)
{
    Text *out = writer->out;
    text_format(out, "      - piece: %d\n        board: %d\n", piece->number, piece->board);
    put_length(out, "        offset", piece->offset);
    put_length(out, "\n        left", piece->left);
    put_length(out, "\n        right", piece->right);
    text_put(out, "\n");
    Points outline = layout_outline(writer->scratch, face, course, piece->left, piece->right);
    Cutouts cutouts = layout_cutouts(writer->scratch, face, course, piece->left, piece->right);
    put_outline(out, &outline);
    put_cutouts(out, &writer->job->wall->faces.at[piece->face], &cutouts);
    put_studs(out, &face->studs, piece->left, piece->right);
    put_shows(writer, piece);
    arena_reset(writer->scratch);
}

static void put_segment(Writer *writer, const FaceLayout *face, const Course *course, int segment, Place place)
{
    Text *out = writer->out;
    const Plan *plan = writer->job->plan;
    put_length(out, "    - left", course->segments[segment].left);
    put_length(out, "\n      right", course->segments[segment].right);
    bool any = false;
    for (int i = place.piece_first; i < place.piece_first + place.piece_count; i++) {
        if (plan->pieces[i].segment != segment)
            continue;
        text_put(out, any ? "" : "\n      pieces:\n");
        any = true;
        put_piece(writer, face, course, &plan->pieces[i]);
    }
    text_put(out, any ? "      missing: [" : "\n      pieces: []\n      missing: [");
    any = false;
    for (int i = place.bare_first; i < place.bare_first + place.bare_count; i++) {
        const Bare *bare = &plan->bare[i];
        if (bare->segment != segment)
            continue;
        text_format(out, "%s{left: %" PRId64 ", right: %" PRId64 "}", any ? ", " : "", bare->left, bare->right);
        any = true;
    }
    text_put(out, "]\n");
}

static void put_course(Writer *writer, int face_index, int course_index)
{
    const FaceLayout *face = &writer->job->layout->faces[face_index];
    const Course *course = &face->courses[course_index];
    const Rip *rip = &course->rip;
    Text *out = writer->out;
    static const char *const shapes[] = {
        [RIP_FULL] = "full", [RIP_STRAIGHT] = "straight", [RIP_TAPER] = "taper", [RIP_SCRIBE] = "scribe"};
    put_length(out, "  - course", course->number);
    put_length(out, "\n    bottom", course->bottom);
    put_length(out, "\n    top", course->top);
    text_format(
        out, "\n    rip: {shape: %s, left: %" PRId64 ", right: %" PRId64 ", least: %" PRId64 ", most: %" PRId64 "}\n",
        shapes[rip->shape], rip->left, rip->right, rip->least, rip->most);
    text_put(out, course->segment_count == 0 ? "    segments: []\n" : "    segments:\n");
    for (int i = 0; i < course->segment_count; i++)
        put_segment(writer, face, course, i, places_get(&writer->places, face_index, course_index));
}

/* Outlines less cutouts of everything that hangs there, in mm2. */
static int64_t net_area(Writer *writer, int face_index)
{
    const Plan *plan = writer->job->plan;
    const FaceLayout *face = &writer->job->layout->faces[face_index];
    Wide sum = 0;
    for (int i = 0; i < plan->piece_count; i++) {
        const Piece *piece = &plan->pieces[i];
        if (piece->face != face_index)
            continue;
        sum += layout_area(writer->scratch, face, &face->courses[piece->course], piece->left, piece->right);
        arena_reset(writer->scratch);
    }
    return wide_narrow(wide_divide(sum, (Wide)LENGTH_MM * LENGTH_MM));
}

static void put_faces(Writer *writer)
{
    const Job *job = writer->job;
    text_put(writer->out, "faces:\n");
    for (int i = 0; i < job->wall->faces.count; i++) {
        const FaceLayout *face = &job->layout->faces[i];
        put_name(writer->out, "- name", job->wall->faces.at[i].name);
        text_format(writer->out, "\n  net-area: %" PRId64 "\n", net_area(writer, i));
        text_put(writer->out, face->course_count == 0 ? "  courses: []\n" : "  courses:\n");
        for (int k = 0; k < face->course_count; k++)
            put_course(writer, i, k);
    }
}

/* ---- what comes behind the faces ---- */

static void put_boards(Writer *writer)
{
    const Job *job = writer->job;
    const Plan *plan = job->plan;
    Text *out = writer->out;
    text_put(out, plan->board_count == 0 ? "boards: []\n" : "boards:\n");
    for (int stock = 0, number = 1; stock < job->wall->stock.count; stock++) {
        const Stock *line = &job->wall->stock.at[stock];
        for (int i = 0; i < line->count; i++, number++) {
            const BoardUse *use = &plan->boards[number - 1];
            text_format(out, "- {board: %d, ", number);
            put_name(out, "label", line->label);
            put_length(out, ", length", line->length);
            text_put(out, ", pieces: [");
            for (int k = 0; k < use->count; k++)
                text_format(out, "%s%d", k > 0 ? ", " : "", plan->pieces[plan->by_board[use->first + k]].number);
            put_length(out, "], left-over", use->left_over);
            text_put(out, "}\n");
        }
    }
}

/* A list of flows, one a line; written even when empty. */
static void begin_list(Text *out, const char *key, int count)
{
    text_format(out, count == 0 ? "%s: []\n" : "%s:\n", key);
}

static void put_trim_pieces(Text *out, const TrimPlan *trim)
{
    begin_list(out, "  pieces", trim->piece_count);
    for (int i = 0; i < trim->piece_count; i++) {
        const TrimCut *cut = &trim->pieces[i];
        text_format(out, "  - {piece: %d, ", cut->number);
        put_name(out, "name", cut->name);
        put_length(out, ", length", cut->length);
        text_format(out, ", board: %d", cut->board);
        put_length(out, ", offset", cut->offset);
        text_put(out, "}\n");
    }
}

static void put_trim_boards(Text *out, const TrimPlan *trim)
{
    begin_list(out, "  boards", trim->board_count);
    for (int i = 0; i < trim->board_count; i++) {
        const TrimBoard *board = &trim->boards[i];
        text_format(out, "  - {board: %d", i + 1);
        put_length(out, ", length", board->length);
        text_put(out, ", pieces: [");
        for (int k = 0; k < board->count; k++)
            text_format(out, "%s%d", k > 0 ? ", " : "", trim->pieces[trim->by_board[board->first + k]].number);
        put_length(out, "], left-over", board->left_over);
        text_put(out, "}\n");
    }
}

/* Like pieces that are missing are named one by one. */
static void put_trim_missing(Text *out, const TrimPieces *missing)
{
    begin_list(out, "  missing", missing->count);
    for (int i = 0; i < missing->count; i++)
        for (int k = 0; k < missing->at[i].count; k++) {
            text_put(out, "  - {");
            put_name(out, "name", missing->at[i].name);
            put_length(out, ", length", missing->at[i].length);
            text_put(out, "}\n");
        }
}

/* What was measured by hand, and what the wall asks for. */
static void put_trim(Writer *writer)
{
    const Wall *wall = writer->job->wall;
    if (!wall->trim.given)
        return;
    TrimPieces pieces = trim_pieces(writer->scratch, writer->job->layout);
    const TrimPlan *trim = trim_plan(writer->scratch, wall, &pieces);
    if (trim->piece_count + trim->board_count + trim->missing.count > 0) {
        text_put(writer->out, "trim:\n");
        put_trim_pieces(writer->out, trim);
        put_trim_boards(writer->out, trim);
        put_trim_missing(writer->out, &trim->missing);
        text_format(writer->out, "  proved: %s\n", trim->proved ? "true" : "false");
    }
    arena_reset(writer->scratch);
}

static void put_least(Writer *writer)
{
    const Job *job = writer->job;
    const Strip *least = &job->layout->least;
    if (!least->found)
        return;
    const Face *face = &job->wall->faces.at[least->face];
    Text *out = writer->out;
    text_format(out, "least: {width: %" PRId64 ", ", least->width);
    put_name(out, "face", face->name);
    text_format(out, ", course: %" PRId64 ", ", least->course);
    put_name(out, "where",
             least->opening >= 0 ? face->openings.at[least->opening].name : (least->at_floor ? "floor" : "ceiling"));
    text_put(out, "}\n");
}

static void put_starts(Writer *writer)
{
    Starts starts = starts_of_layout(writer->scratch, writer->job->layout);
    const StartWork *work = start_work(writer->scratch, writer->job->wall, &starts);
    Text *out = writer->out;
    begin_list(out, "starts", starts.count);
    for (int i = 0; i < starts.count; i++) {
        const Start *start = &starts.at[i];
        put_length(out, "- {start", start->start);
        put_length(out, ", least", start->least);
        text_format(out, ", cutouts: %d", start->cutouts);
        if (work[i].shallow > 0)
            text_format(out, ", shallow: %d", work[i].shallow);
        if (work[i].boards != START_BOARDS_UNKNOWN)
            text_format(out, ", boards: %d", work[i].boards);
        text_put(out, ", why: [");
        for (int k = 0; k < start->why_count; k++) {
            text_put(out, k > 0 ? ", " : "");
            put_string(out, start->why[k]);
        }
        text_put(out, "]}\n");
    }
    arena_reset(writer->scratch);
}

static void put_moisture(Text *out, const char *key, int64_t hundredths)
{
    text_format(out, "%s: %" PRId64 ".%02" PRId64, key, hundredths / 100, hundredths % 100);
}

static void put_seasons(Writer *writer)
{
    Seasons seasons = season_of_wall(writer->job->wall);
    Text *out = writer->out;
    if (!seasons.given)
        return;
    put_moisture(out, "seasons: {moisture: {hung", seasons.hung.moisture);
    put_moisture(out, ", dry", seasons.dry.moisture);
    put_moisture(out, ", damp", seasons.damp.moisture);
    put_length(out, "}, reveal: {hung", seasons.hung.reveal);
    put_length(out, ", dry", seasons.dry.reveal);
    put_length(out, ", damp", seasons.damp.reveal);
    text_put(out, "}}\n");
}

static void put_warning(Writer *writer, const Finding *finding)
{
    const Wall *wall = writer->job->wall;
    Text *out = writer->out;
    text_format(out, "- {rule: %s, grade: %s", rule_word(finding->rule), grade_word(rule_grade(finding->rule)));
    if (finding->face >= 0)
        put_name(out, ", face", wall->faces.at[finding->face].name);
    if (finding->has_course)
        put_length(out, ", course", finding->course);
    if (finding->has_at)
        put_length(out, ", at", finding->at);
    if (finding->piece > 0)
        text_format(out, ", piece: %d", finding->piece);
    if (finding->board > 0)
        text_format(out, ", board: %d", finding->board);
    if (finding->face >= 0 && finding->opening >= 0)
        put_name(out, ", opening", wall->faces.at[finding->face].openings.at[finding->opening].name);
    put_name(out, ", text", finding->text);
    text_put(out, "}\n");
}

static void put_warnings(Writer *writer)
{
    const Findings *findings = &writer->job->findings;
    text_put(writer->out, findings->count == 0 ? "warnings: []\n" : "warnings:\n");
    for (int i = 0; i < findings->count; i++)
        put_warning(writer, &findings->at[i]);
}

/* Tones where there are neighbours that have one, the rest where there are joints. */
static void put_looks(Text *out, const Looks *looks, int joints)
{
    if (looks->touching > 0)
        text_format(out, ", neighbours: %d, one-tone: %d, by-chance: %d", looks->touching, looks->equal, looks->chance);
    if (joints > 0)
        text_format(out, ", stacked: %d, stairs: %d, short-pairs: %d, beside-cutouts: %d", looks->stacked,
                    looks->stairs, looks->short_pairs, looks->near_sides);
    if (looks->loose > 0)
        text_format(out, ", loose: %d", looks->loose);
}

static void put_totals(Writer *writer)
{
    const Plan *plan = writer->job->plan;
    Text *out = writer->out;
    text_format(out, "totals: {courses: %d, pieces: %d, joints: %d, boards-opened: %d, ",
                writer->job->layout->course_total, plan->piece_count, plan->joints, plan->boards_opened);
    put_length(out, "length-opened", plan->length_opened);
    put_length(out, ", length-used", plan->length_used);
    if (plan->bound_known)
        put_length(out, ", length-bound", plan->length_bound);
    if (plan->length_least > 0)
        put_length(out, ", length-least", plan->length_least);
    put_length(out, ", missing", plan->bare_length);
    put_looks(out, &plan->looks, plan->joints);
    text_put(out, "}\n");
}

static void put_opening_lines(Writer *writer)
{
    const Wall *wall = writer->job->wall;
    Text *out = writer->out;
    text_put(out, "datumrow-plan: 1\n");
    put_name(out, "title", wall->title);
    text_put(out, "\npitch: [");
    for (int i = 0; i < wall->planks.widths.count; i++)
        text_format(out, "%s%" PRId64, i > 0 ? ", " : "",
                    wall->planks.widths.at[i] - wall->planks.lap + wall->planks.reveal);
    text_put(out, "]\n");
}

void plan_write(const Job *job, Text *out)
{
    Arena *arena = arena_new();
    Writer writer = {.job = job, .out = out, .scratch = arena_new()};
    writer.places = places_of_plan(arena, job->layout, job->plan);
    put_opening_lines(&writer);
    put_faces(&writer);
    put_boards(&writer);
    put_trim(&writer);
    put_least(&writer);
    put_starts(&writer);
    put_seasons(&writer);
    put_warnings(&writer);
    put_totals(&writer);
    arena_free(writer.scratch);
    arena_free(arena);
}
