#!/bin/sh
# A person at a terminal, by way of tmux: what is on the screen is looked at until it is there, with a limit; nothing sleeps
# for longer than between two looks. Prints TAP. The program is $DATUMROW_PROGRAM.
set -u

if ! command -v tmux >/dev/null 2>&1; then
    echo '1..0 # SKIP tmux is not installed'
    exit 0
fi

folder=$(mktemp -d) || exit 1
name=datumrow-$$
tests=0
failed=0

tm() {
    tmux -L "$name" -f /dev/null "$@"
}

tidy() {
    tm kill-server 2>/dev/null
    rm -rf "$folder"
}
trap tidy EXIT
trap 'exit 1' INT TERM

screen() {
    tm capture-pane -p -t journey
}

# sees WORDS: whether they come to be on the screen within ten seconds
sees() {
    looks=200
    while [ "$looks" -gt 0 ]; do
        screen | grep -qF -- "$1" && return 0
        sleep 0.05
        looks=$((looks - 1))
    done
    screen | sed 's/^/# /'
    return 1
}

# misses WORDS: whether they go from the screen
misses() {
    looks=200
    while [ "$looks" -gt 0 ]; do
        screen | grep -qF -- "$1" || return 0
        sleep 0.05
        looks=$((looks - 1))
    done
    screen | sed 's/^/# /'
    return 1
}

check() {
    tests=$((tests + 1))
    what=$1
    shift
    if "$@"; then
        echo "ok $tests - $what"
    else
        echo "not ok $tests - $what"
        failed=$((failed + 1))
    fi
}

keys() {
    tm send-keys -t journey "$@"
}

# open COLUMNS ROWS SETTINGS WORDS...: the program in a window of that size
open() {
    columns=$1 rows=$2 settings=$3
    shift 3
    tm kill-session -t journey 2>/dev/null
    tm new-session -d -s journey -x "$columns" -y "$rows" \
        "env XDG_STATE_HOME='$folder' LC_ALL=C.UTF-8 TERM=screen-256color $settings '$DATUMROW_PROGRAM' $*; echo left with \$?; cat"
}

file_has() {
    looks=200
    while [ "$looks" -gt 0 ]; do
        grep -qF -- "$2" "$1" && return 0
        sleep 0.05
        looks=$((looks - 1))
    done
    return 1
}

# a session of its own keeps the server alive between two journeys
tm new-session -d -s keep cat

wall=$folder/wall.yaml
cp "$DATUMROW_SOURCE/tests/journeys/wall.yaml" "$wall"

# open, nudge, see the rip change, save, reopen
open 80 24 '' "$wall"
check 'the wall opens on its elevation' sees 'Top rip 1/8'
keys Up
check 'one nudge moves the start' sees 'Start 2 5/16'
check 'and the top rip' sees 'Top rip 1/16'
check 'the change is told' sees 'wall.yaml, changed'
keys C-s
check 'it is saved' sees 'wall.yaml, saved'
check 'the file says so' file_has "$wall" 'start: 2 5/16'
keys q
check 'it leaves without a question' sees 'left with 0'
open 80 24 '' "$wall"
check 'it opens again where it was' sees 'Start 2 5/16'

# what a person wrote into the file stays: comments, blank lines, spacing, notation; changed is what was changed
cp "$DATUMROW_SOURCE/tests/journeys/kept.yaml" "$folder/kept.yaml"
# (a comment behind a value keeps its column)
sed 's/^start:    2 1\/4    #/start:    2 5\/16   #/' "$folder/kept.yaml" >"$folder/kept.wanted"
same() {
    cmp -s "$1" "$2" || { diff "$1" "$2" | sed 's/^/# /' && return 1; }
}
keys q
check 'the first wall is left' sees 'left with 0'
open 80 24 '' "$folder/kept.yaml"
check 'a wall full of notes opens' sees 'Top rip 1/8'
keys Up
check 'a nudge moves its start' sees 'Start 2 5/16'
keys C-s
check 'and is saved' sees 'kept.yaml, saved'
check 'but for the start the file is what it was, byte for byte' same "$folder/kept.wanted" "$folder/kept.yaml"
keys C-z
check 'undone' sees 'kept.yaml, changed'
keys C-s
check 'and saved again' sees 'kept.yaml, saved'
check 'the file is wholly what it was' same "$DATUMROW_SOURCE/tests/journeys/kept.yaml" "$folder/kept.yaml"
keys q
check 'it is left' sees 'left with 0'
open 80 24 '' "$wall"
check 'and the first wall stands there again' sees 'Start 2 5/16'

# the other view, help, the menu
keys v
check 'one key shows the courses line by line' sees 'rip, left to right'
keys '?'
check 'help lists the keys' sees 'All keys'
keys Escape
check 'Esc closes it' misses 'All keys'
keys m
check 'the menu opens' sees 'Type a word'
keys boards Enter
check 'a word typed into it finds the boards' sees 'Boards at hand'
keys Escape
check 'Esc closes them' misses 'Boards at hand'

# leaving with a change asks
keys Down q
check 'leaving with a change asks' sees 'Leave with changes?'
keys Escape
check 'Esc stays' misses 'Leave with changes?'
keys C-z
check 'undo takes it back' sees 'wall.yaml, saved'
keys q
check 'then nothing is asked' sees 'left with 0'

# hanging: a piece, its edge measured, a board spoiled, and on after a break
cp "$DATUMROW_SOURCE/tests/journeys/wall.yaml" "$folder/hung.yaml"
open 80 24 '' "$folder/hung.yaml"
check 'before hanging the wall is in sight' sees 'Top rip 1/8'
keys H
check 'the first piece is the next' sees 'Next: north, course 0, piece 1'
check 'its marks are told' sees 'lower edge 2 1/4 up, upper edge 5 up'
check 'the plan comes to be final' misses 'not final yet'
keys Enter
check 'one key says that it hangs' sees '1 hung'
keys Enter Enter
check 'and the next ones' sees '3 hung'
keys e
check 'an edge is asked for' sees 'Upper edge of course 0 on north'
keys -l '5 1/8'
keys Enter
check 'what it comes to is told' sees '1/8 in higher than planned'
check 'and how to win it back' sees 'to win'
check 'the plan comes to be final again' misses 'not final yet'
keys x
check 'a spoiled board is out' sees 'is out'
check 'what hangs is left alone' sees '3 hung'
keys BSpace
check 'a piece is taken back' sees '2 hung'
keys C-s
check 'it is saved while hanging' sees 'hung.yaml, saved'
check 'the file holds the piece' file_has "$folder/hung.yaml" 'board:'
check 'and the edge' file_has "$folder/hung.yaml" 'top: 5 1/8'
keys Escape
check 'Esc goes back to the wall' sees 'north face'
keys q
check 'it leaves' sees 'left with 0'
open 80 24 '' "$folder/hung.yaml"
check 'after the break the wall is there again' sees 'north'
keys H
check 'and one goes on where one was' sees '2 hung'
keys Escape
check 'Esc goes back to the wall again' sees 'north face'
keys s
check 'starts are not offered any more' sees 'Pieces hang already'
keys Escape
check 'and Esc leaves them' misses 'Pieces hang already'
keys q
check 'it leaves without a question' sees 'left with 0'

# a new wall, from nothing
open 80 24 '' ''
check 'without a file there is a first screen' sees 'A new wall'
keys Enter
check 'a new wall asks for few sizes' sees 'Plank width'
keys Enter 100 Enter 40 Enter 50 Enter '2 3/4' Enter 1/2 Enter 1/16 Enter 2 Enter Enter Enter Enter 144 Enter 30 Enter Enter
check 'and stands on its elevation' sees 'wall face, 100 in wide'
keys C-s
check 'saving asks for a name' sees 'Save under another name'
keys C-u "$folder/new.yaml" C-d
check 'and writes the file' file_has "$folder/new.yaml" 'datumrow: 1'
check 'with the usual saw cut' file_has "$folder/new.yaml" 'kerf: 1/8'

# the wood, by the nearest name, and what stands in the file then
cp "$DATUMROW_SOURCE/tests/journeys/wall.yaml" "$folder/wood.yaml"
open 60 18 '' "$folder/wood.yaml"
check 'a wall in a small window' sees 'Start 2 1/4'
keys W
check 'the wood has a form' sees 'Wood, moisture and seasons'
keys -l 'eastern white pine'
check 'a name that is not known tells the nearest' sees 'nearest: pine, eastern white'
keys C-n Tab Tab
keys -l '68 F'
check 'a temperature is echoed' sees '68 F = 20 C'
keys Tab 45 Tab
keys -l '70 F'
keys Tab 25 Tab
keys -l '75 F'
keys Tab 65 C-s
check 'and saved out of the form' file_has "$folder/wood.yaml" "species: 'pine, eastern white'"
check 'and that is told' sees 'wood.yaml, saved'
keys q

# other terminals
open 60 18 'LC_ALL=C' "$wall"
check 'without UTF-8 it draws with ASCII' sees '===='
open 80 24 'NO_COLOR=1' "$wall"
check 'without colour it draws' sees 'Start 2 5/16'
open 20 5 '' "$wall"
check 'in a tiny window it says so' sees 'Make the window'
tm resize-window -t journey -x 100 -y 30 2>/dev/null
check 'and draws when there is room' sees 'Least strip'

echo "1..$tests"
[ "$failed" -eq 0 ]
