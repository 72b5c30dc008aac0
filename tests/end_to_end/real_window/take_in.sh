#!/usr/bin/env bash
# What comes from elsewhere, taken in with real keys in the real window and with no stand-in for a dialog: a table of
# readings through the file dialog and the preview, another book through the Book menu. What the book holds is compared
# value by value with what the files held. $1 is the program.
set -euo pipefail
program=$1
. "$(dirname "$0")/../on_a_display.sh"
chmod 700 "$out"
export QT_QPA_PLATFORM=xcb
book=$out/hall.hammerline
other=$out/other.hammerline
"$program" new "$book" --piano Hall --action upright >/dev/null
"$program" new "$other" --piano Elsewhere --action upright >/dev/null
"$program" enter "$other" 12 let-off 3.3 >/dev/null || [ $? = 1 ]
printf 'note,let-off,key-dip\n1,3.1,10.1\n2,2.9,9.9\n3,3.3,10.2\n' >"$out/readings.csv"
open_window '^hall – Hammerline$' "$book" --station measure

# Of a piano: "NOTE DIMENSION TEXT;" of its first pass, by note.
kept() { # PIANO
    "$program" export "$book" --out "$out/all.json" >/dev/null
    python3 - "$out/all.json" "$1" <<'PY'
import json, sys
for piano in json.load(open(sys.argv[1]))["pianos"]:
    if piano["name"] == sys.argv[2]:
        reads = piano["passes"][0]["readings"] if piano["passes"] else []
        print("".join(sorted(f"{r['note']} {r['dimension']} {r['text']};" for r in reads)))
PY
}
holds() { [ "$(kept "$1")" = "$2" ]; }

xdotool key --delay 60 ctrl+i
until_true 20 named '^Import readings$'
xdotool type --delay 20 "$out/readings.csv"
xdotool key --delay 60 Return
preview() { now=$(xdotool getwindowfocus) && [ "$now" != "$window" ] && [ -z "$(named '^Import readings$')" ]; }
until_true 20 preview
holds Hall "" || { echo "Something was kept before the preview was answered." >&2; exit 1; }
xdotool key --delay 60 Return
until_true 20 holds Hall "1 key-dip 10.1;1 let-off 3.1;2 key-dip 9.9;2 let-off 2.9;3 key-dip 10.2;3 let-off 3.3;" ||
    { echo "after the import the book holds: $(kept Hall)" >&2; exit 1; }

until_true 20 focused "$window"
xdotool key --delay 60 Escape alt+b Up Up Up Up Return # the fourth from the end: Merge another book
until_true 20 named '^Merge another book$'
xdotool type --delay 20 "$other"
xdotool key --delay 60 Return
until_true 20 holds Elsewhere "12 let-off 3.3;" || { echo "after the merge: $(kept Elsewhere)" >&2; exit 1; }
holds Hall "1 key-dip 10.1;1 let-off 3.1;2 key-dip 9.9;2 let-off 2.9;3 key-dip 10.2;3 let-off 3.3;"
"$program" verify "$book" >/dev/null
echo "Imported through its preview and merged, in the real window."
