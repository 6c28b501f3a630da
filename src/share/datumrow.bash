# Completion of datumrow for bash.

_datumrow()
{
    local word=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD - 1]} i command=
    local commands='new all first rows cuts batch pole nails bill mill draw check starts plan'
    local options='--as --output --print --help --version -o -h -V'
    COMPREPLY=()
    case $before in
    --as)
        mapfile -t COMPREPLY < <(compgen -W 'text pdf svg csv' -- "$word")
        return
        ;;
    -o | --output)
        mapfile -t COMPREPLY < <(compgen -f -- "$word")
        return
        ;;
    esac
    if [[ $word == -* ]]; then
        mapfile -t COMPREPLY < <(compgen -W "$options" -- "$word")
        return
    fi
    for ((i = 1; i < COMP_CWORD; i++)); do
        [[ " $commands " == *" ${COMP_WORDS[i]} "* ]] && command=${COMP_WORDS[i]}
    done
    mapfile -t COMPREPLY < <(
        [[ $command ]] || compgen -W "$commands" -- "$word"
        compgen -d -S / -- "$word"
        compgen -f -X '!*.yaml' -- "$word"
        compgen -f -X '!*.yml' -- "$word"
    )
    [[ ${COMPREPLY[0]} == */ ]] && compopt -o nospace
}

complete -o filenames -F _datumrow datumrow
