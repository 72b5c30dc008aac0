#!/usr/bin/env bash
# The first evening typed with real keys into the real window, from nothing: a first page, a new piano in five answers, a
# fault found and mended, 88 let-offs with a slip of the hand, and the first turns with fractions. What the book holds is
# compared value by value with what was typed. PROGRAM is the built program. No sleep decides anything: every wait ends
# on a condition.
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

# --- F8 leads on, and nothing that was typed is lost on the way
keys F8
"$program" verify "$book" >/dev/null
expect 1 "$wanted" "the whole walk"
echo "From nothing to the first turns of a screw in real keys: $pressed of them, and the book holds what was typed."
