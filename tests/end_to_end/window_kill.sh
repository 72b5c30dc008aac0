#!/usr/bin/env bash
# Readings typed into the real window on a real X display are in the book when the program is killed with SIGKILL right
# after the cell is left. PROGRAM is the built program. No sleep decides anything: every wait ends on a condition.
set -euo pipefail
program=$1
. "$(dirname "$0")/on_a_display.sh"
book=$out/typed.hammerline

"$program" new "$book" --piano "Typed" --action upright >/dev/null
QT_QPA_PLATFORM=xcb "$program" window "$book" --station measure --dimension let-off --note 10 \
    --settings "$out/window.ini" >"$out/window.log" 2>&1 &
window_pid=$!
pids+=("$window_pid")
until_true 90 xdotool search --onlyvisible --name Hammerline
window=$(xdotool search --onlyvisible --name Hammerline | head -n 1)
until_true 20 xdotool windowfocus "$window"

readings() { "$program" list "$book" --json | grep -o '"readings": [0-9]*' | grep -o '[0-9]*$' || true; }
typed=0
for text in 3.1 3,2 1/8; do
    xdotool type --delay 40 "$text"
    xdotool key --delay 40 Return
    typed=$((typed + 1))
    until_true 30 bash -c "[ \"\$('$program' list '$book' --json | grep -o '\"readings\": [0-9]*' | grep -o '[0-9]*\$')\" = $typed ]"
done
kill -9 "$window_pid"
"$program" verify "$book" >/dev/null
check=$("$program" check "$book" --json || [ $? = 1 ])
for value in 3.1 3.2 3.175; do
    grep -q "\"value\": $value," <<<"$check" || { echo "lost: $value" >&2; exit 1; }
done
[ "$(readings)" = 3 ]
echo "Three readings typed into the window are in the book after SIGKILL."
