#!/usr/bin/env bash
# A whole job typed with real keys into the real window, from nothing: a first page, a new piano in five answers, a fault
# found and mended, 88 let-offs with a slip of the hand, the trial with fractions and its notes read again, a question
# answered, a round of work, a second round read in a pass of its own, the comparison, the record as PDF. What the book
# holds is compared value by value with what was typed. PROGRAM is the built program. No sleep decides anything: every
# wait ends on a condition.
set -euo pipefail
program=$1
. "$(dirname "$0")/../on_a_display.sh"
book=$out/Documents/whole-job.hammerline

open_window Hammerline
pressed=0
keys() { pressed=$((pressed + $#)); xdotool key --delay 60 "$@"; }
type() { pressed=$((pressed + ${#1})); xdotool type --delay 60 -- "$1"; }

# What the book holds: passes as "NOTE DIMENSION TEXT;", findings as "PART STATE;", amounts as "NOTE TURNS;".
kept() {
    "$program" export "$book" --out "$out/all.json" >/dev/null
    python3 - "$out/all.json" "$1" <<'PY'
import json, sys
piano = json.load(open(sys.argv[1]))["pianos"][0]
what = sys.argv[2]
if what.isdigit():
    reads = piano["passes"][int(what) - 1]["readings"] if len(piano["passes"]) >= int(what) else []
    print("".join(f"{n} {d} {t};" for n, d, t in sorted((r["note"], r["dimension"], r["text"]) for r in reads)))
elif what == "done":
    said = sorted((d["notes"][0], "aim" if d["to_aim"] else f"{abs(d['amount']):g}") for d in piano["done"])
    print("".join(f"{note} {how};" for note, how in said))
else:
    print("".join(f"{f['part']} {f['state']};" for f in piano["findings"]))
PY
}
holds() { [ "$(kept "$1")" = "$2" ]; }
expect() { until_true 30 holds "$1" "$2" || { echo "after \"$3\" the book holds: $(kept "$1")
instead of: $2" >&2; exit 1; }; }

# --- the first minute
keys n Return Return Return Return # kind, keys, player and spec sheet as they stand
type "Whole job"; keys Return
until_true 20 test -s "$book"
[ "$pressed" -le 60 ] || { echo "the first piano took $pressed keys" >&2; exit 1; }

# --- the survey: the action bolts are loose, and tightened at once
until_true 20 focused "$window"
keys l
expect findings "action-bolts to-do;" "L at the action bolts"
keys m
expect findings "action-bolts mended;" "M at the action bolts"

# --- 88 let-offs; a slip is asked about and typed again, a reading is corrected by going back
as_found() { # NOTE
    case $1 in
    20 | 45 | 70 | 33 | 58) echo 5.$((($1) % 4)) ;;
    *) echo 3.$((($1 * 7) % 3)) ;;
    esac
}
keys ctrl+3
until_true 20 focused "$window"
keys bracketright bracketright bracketright bracketright
wanted=
for ((note = 1; note <= 88; note++)); do
    value=$(as_found "$note")
    if [ "$note" = 7 ]; then type 31; keys Return; fi # no such let-off: asked about, and typed over
    type "$value"; keys Return
    wanted+="$note let-off $value;"
done
expect 1 "$wanted" "88 let-offs"

# --- the plan: an eighth of a turn at its first line, a quarter at the next, the first one corrected
keys ctrl+5
until_true 20 focused "$window"
type 1/8; keys Return
turned() { [ "$(kept done | tr ';' '\n' | grep -c "$1")" = "$2" ]; }
until_true 30 turned ' 0.125' 1 || { echo "1/8 is kept as: $(kept done)" >&2; exit 1; }
type .25; keys Return
until_true 30 turned ' 0.25' 1 || { echo ".25 is kept as: $(kept done)" >&2; exit 1; }
keys Up Up
type 0.2; keys Return
until_true 30 turned ' 0.2$' 1 || { echo "0.2 over a ticked line is kept as: $(kept done)" >&2; exit 1; }
until_true 30 turned ' 0.125' 0

# --- the third trial note as it is proposed; F8 leads to its reading, and each is read again
keys Down Return
until_true 30 turned ' 0.125' 1 || { echo "Enter at the third trial line is kept as: $(kept done)" >&2; exit 1; }
"$program" export "$book" --out "$out/turns.json" >/dev/null
mapfile -t tried < <(python3 -c 'import json; print("\n".join(str(n) for n in sorted(
    d["notes"][0] for d in json.load(open("'"$out"'/turns.json"))["pianos"][0]["done"])))')
[ "${#tried[@]}" = 3 ] || { echo "three trial notes were turned, not: ${tried[*]}" >&2; exit 1; }
keys F8
until_true 20 focused "$window"
second=
for note in "${tried[@]}"; do # the note is gone to, and its reading typed
    keys ctrl+g
    until_true 20 named 'Go to note'
    type "$note"; keys Return
    until_true 20 focused "$window"
    type 4.2; keys Return
    second+="$note let-off 4.2;"
done
expect 2 "$second" "the trial notes read again"
expect 1 "$wanted" "the first pass, after the second began"

# --- what is asked first is answered in its list, in place
keys ctrl+5
until_true 20 focused "$window"
keys ctrl+r a
keys y                              # in order, but only where it was tried:
type '1-3,27-29,53-55,71-73'        # three screws of each section
keys Return
screws() { grep -q "let-off-screw sound;" <<<"$(kept findings)"; }
until_true 20 screws || { echo "the answer is kept as: $(kept findings)" >&2; exit 1; }
keys Escape # the other questions stay open

# --- a second round, in a pass of its own that is given a name
after() { # NOTE
    case $1 in
    20 | 45 | 70 | 33 | 58) echo 3.1 ;;
    *) echo 3.$((($1 * 7) % 3)) ;;
    esac
}
keys ctrl+m
until_true 20 named 'New pass'
type "after the round"; keys Return
until_true 20 focused "$window"
keys ctrl+3
until_true 20 focused "$window"
keys ctrl+g
until_true 20 named 'Go to note'
type 1; keys Return
until_true 20 focused "$window"
round=
for ((note = 1; note <= 88; note++)); do
    value=$(after "$note")
    type "$value"; keys Return
    round+="$note let-off $value;"
done
expect 3 "$round" "88 let-offs of the second round"
expect 1 "$wanted" "the first pass, after the second round"

# --- compared, and on paper
keys ctrl+6
until_true 20 focused "$window"
keys alt+p Down Down Right Up Return # Save as PDF, its last sheet
until_true 20 named 'Record for the owner'
keys Return
printed() { ls "$out/Documents" "$out" | grep -q 'Record for the owner.*\.pdf$'; }
until_true 30 printed
pdf=$(find "$out" -name '*Record for the owner*.pdf')
grep -q "Whole job" <<<"$(pdftotext "$pdf" -)" || { echo "The record does not name the piano." >&2; exit 1; }
"$program" compare "$book" --from 1 --to 3 --json >"$out/compared.json" || [ $? = 1 ]
python3 - "$out/compared.json" <<'PY'
import json, sys
[let_off] = [d for d in json.load(open(sys.argv[1]))["dimensions"] if d["dimension"] == "let-off"]
assert (let_off["n"], let_off["outside_now"]) == (88, 0), let_off
assert let_off["outside_before"] >= 5, let_off
PY
"$program" verify "$book" >/dev/null
echo "A whole job in real keys: $pressed of them, and the book holds what was typed."
