#!/usr/bin/env bash
# Every command of the command line on the demo book under valgrind: bash tests/soak/valgrind.sh PROGRAM
# PROGRAM: a build without sanitizers. Stops at the first command with an error or a block that is lost for good.
set -euo pipefail
cd "$(dirname "$0")/../.."
program=$(realpath "$1")
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT
export QT_QPA_PLATFORM=offscreen LC_ALL=C.UTF-8 XDG_RUNTIME_DIR="$folder"
book=$folder/demo.hammerline
second=$folder/second.hammerline
third=$folder/third.hammerline
commands=0

# STATUS COMMAND...: the exit status that the command is to have.
under() {
    local wanted=$1 status=0
    shift
    valgrind --quiet --error-exitcode=99 --leak-check=full --errors-for-leak-kinds=definite --show-leak-kinds=definite \
        --log-file="$folder/valgrind.log" "$program" "$@" >"$folder/out" 2>&1 || status=$?
    commands=$((commands + 1))
    [ "$status" = "$wanted" ] && return
    printf 'valgrind: "%s" ended with %s, not %s\n' "$*" "$status" "$wanted" >&2
    cat "$folder/valgrind.log" "$folder/out" >&2
    exit 1
}

under 0 demo "$book"
under 0 list "$book" --json
under 1 check "$book"
under 1 check "$book" --json --rule guard95
under 1 plan "$book" --json
under 1 compare "$book" --json
under 1 survey "$book"
under 0 export "$book" --out "$folder/demo.json"
piano=$(sed -n 's/^ *"name": "\(.*\)",$/\1/p' "$folder/demo.json" | head -1)
under 0 export "$book" --piano "$piano" --out "$folder/demo.csv"
under 0 import "$second" "$folder/demo.json"
under 0 undo "$second"
under 0 redo "$second"
under 0 new "$third" --piano "$piano" --action upright --last-damper 66
under 0 pass "$third" --label "as found" --temperature 20 --humidity 45
under 0 enter "$third" 40 let-off 3.2
under 1 enter "$third" 40 key-dip 6
under 2 enter "$third" 40 key-dip nonsense
under 0 override "$third" 40 blow 45 46 47 --reason "low rail"
under 0 import "$third" "$folder/demo.csv"
under 1 import "$third" tests/reference/cases/sunk_rail.csv --pass 1 # heights over another datum are asked about
under 2 import "$third" tests/reference/csv_cases/22_unterminated_quote.csv
under 0 tick "$third" --all
under 0 backup "$third" --out "$folder/copy.hammerline"
under 0 merge "$second" "$book"
under 0 restore "$third" "$folder/copy.hammerline"
under 0 verify "$third"
for sheet in adjustment check survey parts labels comparison record; do
    under 0 print "$book" "$sheet" --out "$folder/$sheet.pdf"
done
under 0 ids --json
printf 'valgrind %s commands 0 findings\n' "$commands"
