#!/usr/bin/env bash
# What is typed at the lines of the list of work, with real keys in the real window and with no stand-in for anything,
# is what the book holds: 1/8 and .125 are an eighth of a turn, a ticked line is typed over, more than one go is asked
# about, Backspace and Space untick this line and nothing else, and Ctrl+Z brings the tick back. PROGRAM is the built
# program. No sleep decides anything: every wait ends on a condition.
set -euo pipefail
program=$1
. "$(dirname "$0")/../on_a_display.sh"
book=$out/turns.hammerline

"$program" new "$book" --piano "Turns" --action upright >/dev/null
for note in 20 45 70; do "$program" enter "$book" "$note" let-off 6.0 >/dev/null || [ $? = 1 ]; done
open_window Hammerline "$book" --station work

# What the book holds of what was done: "NOTE TURNS;" without the sign of the direction, or "NOTE aim;", by note.
kept() {
    "$program" export "$book" --out "$out/all.json" >/dev/null
    python3 - "$out/all.json" <<'PY'
import json, sys
done = json.load(open(sys.argv[1]))["pianos"][0]["done"]
said = sorted((d["notes"][0], "aim" if d["to_aim"] else f"{abs(d['amount']):g}") for d in done)
print("".join(f"{note} {how};" for note, how in said))
PY
}
holds() { [ "$(kept)" = "$1" ]; }
expect() { until_true 20 holds "$1" || { echo "after \"$2\" the book holds: $(kept) instead of: $1" >&2; exit 1; }; }
keys() { xdotool key --delay 60 "$@"; }

xdotool type --delay 60 1/8; keys Return
expect "20 0.125;" "1/8 Enter at the first line"
xdotool type --delay 60 .25; keys Return
expect "20 0.125;45 0.25;" ".25 Enter at the second line"
keys Up Up
xdotool type --delay 60 0.2; keys Return
expect "20 0.2;45 0.25;" "0.2 Enter over the ticked first line"
keys space # the second line, where Enter led
expect "20 0.2;" "Space at the ticked second line"
keys space
expect "20 0.2;45 0.125;" "Space at the open second line"
keys BackSpace
expect "20 0.2;" "Backspace at the ticked second line"
keys BackSpace # open: nothing of it to take back
keys ctrl+z
expect "20 0.2;45 0.125;" "Ctrl+Z after Backspace"
keys Down
xdotool type --delay 60 1; keys Return # a whole turn is more than one go
keys Escape
expect "20 0.2;45 0.125;" "1 Enter Escape: asked, and left"
xdotool type --delay 60 1; keys Return Return
expect "20 0.2;45 0.125;70 1;" "1 Enter Enter: asked, and kept"
"$program" check "$book" --json >"$out/check.json" || [ $? = 1 ]
grep -q '"high": 3,' "$out/check.json" || { echo "a reading typed before is not what it was" >&2; exit 1; }
"$program" verify "$book" >/dev/null
echo "What was typed at the lines of the list of work is what the book holds."
