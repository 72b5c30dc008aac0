#!/usr/bin/env bash
# The piano's answers with real keys in the real window: what is typed in the folds and in the drawing of the key stands
# in the book value by value; what cannot be stays in its field until Esc; and what is asked before a screw is turned is
# answered in its list. No sleep decides anything.
#   piano_answers.sh PROGRAM
set -euo pipefail
program=$(realpath "$1")
. "$(dirname "$0")/../on_a_display.sh"
keys() { xdotool key --delay 15 "$@"; }
type() { xdotool type --delay 15 -- "$1"; }
kept() { # WORDS OF JQ'S KIND, as a path of names: what the book has there
    "$program" export "$out/t.hammerline" --json --out - | python3 -c '
import json, sys
at = json.load(sys.stdin)["pianos"][0]
for name in sys.argv[1].split("."):
    at = at.get(name, "") if isinstance(at, dict) else ""
print(at)' "$1"
}
stands() { [ "$(kept "$1")" = "$2" ]; }
expect() { # PATH VALUE
    until_true 20 stands "$1" "$2" || { echo "$1 is '$(kept "$1")', not '$2'." >&2; exit 1; }
}

"$program" new "$out/t.hammerline" --piano "Hall upright" --action upright >/dev/null
"$program" enter "$out/t.hammerline" 40 let-off 6 >/dev/null
open_window Hammerline "$out/t.hammerline" --station measure

# --- from what heights count, asked over the grid before the first one
heights() {
    "$program" export "$out/t.hammerline" --json --out - | python3 -c '
import json, sys
read = json.load(sys.stdin)["pianos"][0]["passes"][0]
print(read["references"].get("key-height"), *[r["text"] for r in read["readings"] if r["dimension"] == "key-height"])'
}
read_so() { [ "$(heights)" = "$1" ]; }
keys Home alt+2
until_true 20 read_so 'bed' || { echo "Heights are read so: $(heights)" >&2; exit 1; }
type 65; keys Return
until_true 20 read_so 'bed 65' || { echo "Heights are read so: $(heights)" >&2; exit 1; }
keys ctrl+1

# --- the folds: F6 goes to the first of them, Tab and Enter from field to field
keys F6 Tab Tab
type 66; keys Return
expect attributes.last-damper 66
keys Tab Tab                         # past the fold's bar and the butt to the rest rail
type 44; keys Return
expect attributes.rest-rail 1-44,45-88
type '1, 20, 44, 45, 88'; keys Return
expect attributes.brackets '1,20,44;45,88'
type 9; keys Return                  # 1 mm at the rail gives no 9 mm of blow
keys ctrl+2                          # nothing typed is lost behind another station:
type 5; keys Return                  # the field still has the hand, and "95" cannot be either
expect attributes.rest-rail-factor ''
keys Escape ctrl+a
type 1.3; keys Return
expect attributes.rest-rail-factor 1.3

# --- the arms, typed in the drawing
keys F6
type 212; keys Return
type 126; keys Return
expect attributes.arms-natural ,212,,126
type 238; keys Return
type 140; keys Return
expect attributes.arms-natural 238,212,140,126

# --- what is asked before a screw is turned
keys ctrl+5
keys a
keys y
type '1-3,27-29,53-55,71-73'; keys Return
surveyed() { grep -q "$1" <<<"$("$program" survey "$out/t.hammerline" --json)"; }
tried() { surveyed '"let-off-screw"'; }
until_true 20 tried
keys n Return                        # the next: not in order, by its first fault
faulty() { surveyed '"case"'; }
until_true 20 faulty
echo "Folds, arms and questions: what was typed stands in the book."
