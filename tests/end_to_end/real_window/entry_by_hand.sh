#!/usr/bin/env bash
# Readings typed with real keys into the real window, with no stand-in for a dialog, against what the book holds value
# by value: what is typed after a question takes the refused text's place, the edge of the grid takes nothing twice, a
# letter of another dimension enters nothing, a sharp goes to its own column, a new piano is typed into at once and has
# an order of its own, and M mends only what was found. PROGRAM is the built program. No sleep decides anything.
set -euo pipefail
program=$1
. "$(dirname "$0")/../on_a_display.sh"
book=$out/hands.hammerline

"$program" new "$book" --piano "First" --action upright >/dev/null
"$program" survey "$book" --add "17 jack slow" >/dev/null 2>&1 || [ $? = 1 ]
open_window Hammerline "$book" --station measure --dimension let-off --note 1
keys() { xdotool key --delay 60 "$@"; }
type() { xdotool type --delay 60 -- "$1"; }

# PIANO: "NOTE DIMENSION TEXT;" of its last pass, by note; then findings as "PART STATE COUNT;"
kept() {
    "$program" export "$book" --out "$out/all.json" >/dev/null
    python3 - "$out/all.json" "$1" <<'PY'
import json, sys
from collections import Counter
piano = next(p for p in json.load(open(sys.argv[1]))["pianos"] if p["name"] == sys.argv[2])
read = sorted((r["note"], r["dimension"], r["text"]) for p in piano["passes"] for r in p["readings"])
found = Counter((f["part"], f["state"]) for f in piano["findings"])
print("".join(f"{n} {d} {t};" for n, d, t in read) + "".join(f"{p} {s} {c};" for (p, s), c in sorted(found.items())))
PY
}
holds() { [ "$(kept "$1")" = "$2" ]; }
expect() { until_true 20 holds "$1" "$2" || { echo "after \"$3\": $(kept "$1") instead of: $2" >&2; exit 1; }; }
found="jack to-do 1;"

type 27; keys Return; type 2.8; keys Return
expect First "1 let-off 2.8;$found" "27, asked, 2.8"
type 445; keys Return; type 2.9; keys Return
expect First "1 let-off 2.8;2 let-off 2.9;$found" "445, refused, 2.9"
keys o # a word of lost motion
type 3.0; keys Return
expect First "1 let-off 2.8;2 let-off 2.9;3 let-off 3.0;$found" "o, then 3.0 at note 3"
keys ctrl+g
until_true 20 named "Go to note"
until_true 20 focused "$(named "Go to note")"
type 88; keys Return
until_true 20 focused "$window"
type 2.1; keys Down; type 2.2; keys Down
expect First "1 let-off 2.8;2 let-off 2.9;3 let-off 3.0;88 let-off 2.1;$found" "2.1 and 2.2 at the last row"
before=$(kept First)

# a new piano: typed into with no click between, and not in the order of the first
keys F4 # the first piano: all of a note before the next
keys ctrl+n
until_true 20 named "New piano"
until_true 20 focused "$(named "New piano")"
keys Return Return Return Return # kind, keys, player and spec sheet as they stand
type Second; keys Return
until_true 20 focused "$window"
type 0.3; keys Return
type 0.4; keys Return
expect Second "1 key-height 0.3;3 key-height 0.4;" "0.3 and 0.4 after New piano"
expect First "$before" "a second piano"
keys ctrl+g
until_true 20 named "Go to note"
until_true 20 focused "$(named "Go to note")"
type 5; keys Return
until_true 20 focused "$window"
type 12; keys Return
expect Second "1 key-height 0.3;3 key-height 0.4;5 sharp-height 12;" "12 at note 5, a sharp"

# M over every part and note of a piano in which nothing was found
keys ctrl+2 ctrl+a m
keys ctrl+3
type 12.5; keys Return # and the hand is back in the grid, at the sharp after it
expect Second "1 key-height 0.3;3 key-height 0.4;5 sharp-height 12;7 sharp-height 12.5;" "M over a piano without a finding"
"$program" verify "$book" >/dev/null
echo "What a hand typed into the window is what the book holds."
