# Completion of datumrow for fish.

function __datumrow_no_command
    not __fish_seen_subcommand_from new all first rows cuts batch pole nails bill mill draw check starts plan
end

complete -c datumrow -n __datumrow_no_command -a new -d 'ask the few sizes of a new wall, write FILE, open the editor'
complete -c datumrow -n __datumrow_no_command -a all -d 'every sheet that work is done by, the first page in front'
complete -c datumrow -n __datumrow_no_command -a first -d 'first page: plan number, order of work, stock, hazards'
complete -c datumrow -n __datumrow_no_command -a rows -d 'row sheet, in hanging order: marks, rips, pieces, cutouts'
complete -c datumrow -n __datumrow_no_command -a cuts -d 'cut sheet: every board, what is cut from it, in which order'
complete -c datumrow -n __datumrow_no_command -a batch -d 'batch sheet: the same pieces by stop, fence and saw angle'
complete -c datumrow -n __datumrow_no_command -a pole -d 'story pole: every mark from the level line'
complete -c datumrow -n __datumrow_no_command -a nails -d 'nailing page: how planks are held, what needs more'
complete -c datumrow -n __datumrow_no_command -a bill -d 'materials: boards, trim, fasteners, adhesive, finish'
complete -c datumrow -n __datumrow_no_command -a mill -d 'mill sheet: rough boards to planks'
complete -c datumrow -n __datumrow_no_command -a draw -d 'elevation, drawn'
complete -c datumrow -n __datumrow_no_command -a check -d 'hazards, faults and cautions only'
complete -c datumrow -n __datumrow_no_command -a starts -d 'start heights worth considering, best first'
complete -c datumrow -n __datumrow_no_command -a plan -d 'the plan as data (YAML, nanometres)'

complete -c datumrow -l as -x -a 'text pdf svg csv' -d 'the form of the sheet'
complete -c datumrow -s o -l output -r -d 'write to a file'
complete -c datumrow -l print -d 'hand the sheet to the printer'
complete -c datumrow -s h -l help -d 'show commands and options'
complete -c datumrow -s V -l version -d 'show the version'
