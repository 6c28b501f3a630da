# Reads the sources of src/ and prints what breaks the house's rules, a line each:
#
#     RULE<tab>FILE:LINE: what is wrong
#
# table: "storey=below,below;storey=...", as src/meson.build has it. A file stands on the command line as it is below src/,
# "storey/file.c". Comments and strings are taken out before words are looked for.

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
    storey = file
    if (!sub(/\/.*/, "", storey))
        storey = "" # main.c, above all storeys
    if (storey != "" && !(storey in known))
        found("storeys", "the folder " storey " is not in the table of src/meson.build")
}

{
    line = without_comments($0)
    if (line ~ /^[ \t]*#[ \t]*include/)
        include(line)
    gsub(/"([^"\\]|\\.)*"/, "\"\"", line)
    gsub(/format\(printf,/, "", line) # the attribute
    banned(line)
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
        of = name
        if (name ~ /^\./ || !sub(/\/.*/, "", of))
            found("includes", "\"" name "\" does not say its storey; write it from src/")
        else if (!(of in known))
            found("includes", "\"" name "\" is of no storey")
        else if (storey != "" && of != storey && !((storey, of) in may))
            found("includes", storey " may not include " of)
        return
    }
    if (name ~ /curses|<term\.h>/) {
        if (storey != "screen")
            found("curses", name " outside screen/")
        else if (curses != "" && curses != file)
            found("curses", name " in a second file, after " curses)
        curses = file
    }
    if (name ~ /yaml/ && storey != "store" && file != "sheet/plan.c")
        found("yaml", name " outside store/ and the writer of the plan")
    if (name ~ /cairo|pango/ && !(storey == "sheet" && file ~ /pdf|svg|cairo/))
        found("cairo", name " outside the writers of PDF and SVG")
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
