#!/usr/bin/env bash
# A folder that a telephone fills, watched in the real window: it is chosen by keys, a file that is dropped into it is
# taken by one key, and after the window was killed and opened again it is still watched. Two dates stand side by side.
# PROGRAM is the built program. No sleep decides anything: every wait ends on a condition.
set -euo pipefail
program=$1
. "$(dirname "$0")/../on_a_display.sh"
book=$out/hall.hammerline phone=$out/phone
mkdir "$phone"
"$program" new "$book" --piano Hall --action upright --last-damper 66 >/dev/null
"$program" enter "$book" 40 let-off 4.2 >/dev/null || true
QT_QPA_PLATFORM=offscreen "$program" window "$book" --station measure --picture "$out/one.png" >/dev/null
QT_QPA_PLATFORM=offscreen "$program" window "$book" --station piano --picture "$out/two.png" >/dev/null

photographs() { "$program" photo "$book" --json | python3 -c 'import json, sys; print(len(json.load(sys.stdin)["photos"]))'; }
keeps() { [ "$(photographs)" = "$1" ]; }
takes() { xdotool key --delay 60 ctrl+t; keeps "$1"; }

open_window Hammerline "$book" --station measure
xdotool key --delay 60 ctrl+shift+w
until_true 20 xdotool search --onlyvisible --name "Watch a folder"
until_true 20 focused "$(named 'Watch a folder')"
xdotool type --delay 60 -- "$phone"
xdotool key --delay 60 Return
until_true 20 focused "$window"
keeps 0
cp "$out/one.png" "$phone/one.png"
until_true 30 takes 1

kill -9 "${pids[-1]}"
open_window Hammerline "$book" --station measure
cp "$out/two.png" "$phone/two.png"
until_true 30 takes 2
xdotool key --delay 60 ctrl+shift+d
until_true 20 xdotool search --onlyvisible --name "Two dates"
until_true 20 focused "$(named 'Two dates')"
xdotool key --delay 60 Right Left shift+Right Escape
until_true 20 focused "$window"
"$program" verify "$book" >/dev/null
echo "a folder was watched, and two dates stood side by side"
