# Sourced by tests/run, samples/try and .ci/run, never run: what a bare Debian lacks, and the build. POSIX sh.
# The caller sets `root`, the folder of the sources.

say() { printf 'datumrow: %s\n' "$*" >&2; }

give_up() {
    say "$*"
    exit 1
}

# have WHAT: WHAT is a package, or COMMAND=PACKAGE, which counts as there where the command is.
have() {
    case $1 in
    *=*) command -v "${1%%=*}" >/dev/null 2>&1 ;;
    *) dpkg -s "$1" 2>/dev/null | grep -q '^Status: .* installed$' ;;
    esac
}

# install_missing WHAT...: says what it installs; where all is there, it does nothing and needs no network.
install_missing() {
    if ! command -v dpkg >/dev/null 2>&1 || ! command -v apt-get >/dev/null 2>&1; then
        say "this is no Debian: it is taken that these, or what they are called here, are installed: $*"
        return
    fi
    missing=
    for what in "$@"; do
        have "$what" || missing="$missing ${what#*=}"
    done
    [ -n "$missing" ] || return 0
    as_root=
    if [ "$(id -u)" != 0 ]; then
        command -v sudo >/dev/null 2>&1 || give_up "please have these installed first: apt-get install$missing"
        as_root=sudo
    fi
    say "installing with apt-get:$missing"
    # shellcheck disable=SC2086 # a list of words
    { $as_root apt-get -q update &&
        $as_root env DEBIAN_FRONTEND=noninteractive apt-get -q -y --no-install-recommends install $missing; } >&2 ||
        give_up "apt-get did not do it; what it said stands above"
}

# What building needs. The libraries' packages bring the C library's headers with them.
build_needs='cc=gcc libc6-dev meson=meson ninja=ninja-build pkg-config=pkg-config
    libyaml-dev libncurses-dev libpango1.0-dev libcairo2-dev'

# build_in FOLDER OPTION...: configures FOLDER (once, or again where the sources have moved) and builds $targets of it (all,
# where that is not set); what is said goes to FOLDER/build.log and is shown only where it fails.
build_in() {
    folder=$1
    shift
    log=$folder/build.log
    if [ "$(cat "$folder/.sources" 2>/dev/null)" != "$root" ] || [ ! -f "$folder/build.ninja" ]; then
        rm -rf "$folder"
        mkdir -p "$folder" || give_up "no folder can be made in $root"
        say "configuring $folder; the first build takes some minutes"
        meson setup "$folder" "$root" "$@" >"$log" 2>&1 || { cat "$log" >&2 && give_up "it could not be configured; see above"; }
        printf '%s\n' "$root" >"$folder/.sources"
    fi
    say "building in $folder"
    # shellcheck disable=SC2086 # a list of words
    ninja -C "$folder" ${targets:-} >"$log" 2>&1 || { cat "$log" >&2 && give_up "it could not be built; see above"; }
}
