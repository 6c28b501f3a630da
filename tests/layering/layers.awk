# Reads the sources of src/ and prints what breaks the house's rules, a line each:
#
#     RULE<tab>FILE:LINE: what is wrong
#
# table: "folder=may,may;folder=...", as src/meson.build has it; a folder is a storey or a room ("storey/room"). A file stands
# on the command line as it is below src/, "storey/file.c". A unit is a source with the header of its name. Comments and
# strings are taken out before words are looked for.

BEGIN {
    split(table, rows, ";")
    for (r in rows) {
        split(rows[r], row, "=")
        known[row[1]] = 1
        count = split(row[2], names, ",")
        for (n = 1; n <= count; n++)
            may[row[1], names[n]] = 1
    }
}

FNR == 1 {
    in_comment = 0
    file = FILENAME
    sub(/^\.\//, "", file)
    folder = folder_of(file) # "" for main.c, above all storeys
    storey = folder
    sub(/\/.*/, "", storey)
    if (folder != "" && !(folder in known))
        found("storeys", "the folder " folder " is not in the table of src/meson.build")
}

{
    line = without_comments($0)
    if (line ~ /^[ \t]*#[ \t]*include/)
        include(line)
    gsub(/"([^"\\]|\\.)*"/, "\"\"", line)
    gsub(/format\(printf,/, "", line) # the attribute
    banned(line)
}

function folder_of(path) { return sub(/\/[^\/]*$/, "", path) ? path : "" }

function unit_of(path) {
    sub(/\.[ch]$/, "", path)
    return path
}

function found(rule, text) { print rule "\t" file ":" FNR ": " text }

function without_comments(text,    out, at) {
    out = ""
    for (;;) {
        if (in_comment) {
            at = index(text, "*/")
            if (at == 0)
                return out
            text = substr(text, at + 2)
            in_comment = 0
        }
        at = index(text, "/*")
        if (at == 0)
            break
        out = out substr(text, 1, at - 1) " "
        text = substr(text, at + 2)
        in_comment = 1
    }
    sub(/\/\/.*/, "", text)
    return out text
}

function include(line,    name, of) {
    name = line
    sub(/^[ \t]*#[ \t]*include[ \t]*/, "", name)
    sub(/[ \t]*$/, "", name)
    if (name ~ /^"/) {
        gsub(/"/, "", name)
        if (name == "config.h")
            return
        of = folder_of(name)
        if (name ~ /^\./ || of == "")
            found("includes", "\"" name "\" does not say its storey; write it from src/")
        else if (!(of in known))
            found("includes", "\"" name "\" is of no storey")
        else if (folder != "" && of != folder && !((folder, of) in may))
            found("includes", folder " may not include " of)
        arrow(unit_of(file), unit_of(name))
        return
    }
    if (name ~ /curses|<term\.h>/) {
        if (storey != "screen")
            found("curses", name " outside screen/")
        else if (curses != "" && curses != file)
            found("curses", name " in a second file, after " curses)
        curses = file
    }
    if (name ~ /yaml/ && storey != "store" && file != "sheet/writers/plan.c")
        found("yaml", name " outside store/ and the writer of the plan")
    if (name ~ /cairo|pango/ && !(folder == "sheet/writers" && file ~ /pdf|svg|cairo/))
        found("cairo", name " outside the writers of PDF and SVG")
}

# One unit includes another: for the rule of circles, which END looks at.
function arrow(from, to) {
    if (from == to || (from, to) in place)
        return
    place[from, to] = file ":" FNR
    after[from] = after[from] " " to
}

# The unit that `unit` includes and that includes it back, at once or through others; "" where there is none.
function circle(unit,    seen, through, todo, next_units, first, last, count, n) {
    count = split(after[unit], next_units, " ")
    for (n = 1; n <= count; n++) {
        through[n] = next_units[n]
        todo[n] = next_units[n]
    }
    last = count
    for (first = 1; first <= last; first++) {
        if (todo[first] == unit)
            return through[first]
        if (todo[first] in seen || !(todo[first] in after))
            continue
        seen[todo[first]] = 1
        count = split(after[todo[first]], next_units, " ")
        for (n = 1; n <= count; n++) {
            todo[++last] = next_units[n]
            through[last] = through[first]
        }
    }
    return ""
}

function word(line, words) { return line ~ ("(^|[^A-Za-z0-9_])(" words ")($|[^A-Za-z0-9_])") }

function banned(line) {
    if (word(line, "strtod|strtof|strtold|atoi|atol|atof|sprintf|vsprintf|strcpy|strcat|gets|system|popen"))
        found("calls", "a call that the house does not use")
    if (word(line, "double|float") && word(storey, "base|length|wall|layout|fill|store"))
        found("floats", "a floating point number where lengths are decided")
    if (word(line, "printf|puts|putchar|stdout|stderr|perror") && word(storey, top) == 0 && storey != "" && file != "base/panic.c")
        found("prints", "printing below command and screen")
    if (word(line, "setlocale|localeconv") && storey != "" && storey != "screen")
        found("locale", "the locale is the screen's alone")
}

END {
    for (unit in after) {
        to = circle(unit)
        if (to != "")
            print "circles\t" place[unit, to] ": " unit " includes " to ", which includes it back"
    }
}
