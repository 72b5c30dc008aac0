#!/usr/bin/env bash
# The kill test of the real window under Xvfb: readings are typed into it, and it is killed with SIGKILL at a random
# moment while it takes them. The book then holds what was seen to be stored, and of the rest a beginning of what was
# typed, in its order, and is sound.
#   bash tests/soak/window.sh PROGRAM CYCLES
set -euo pipefail
program=$1
cycles=$2
. "$(dirname "$0")/../end_to_end/on_a_display.sh"
book=$out/typed.hammerline

stored() { # the texts of the let-offs, in the order of the notes, as far as the book has them
    "$program" export "$book" --out "$out/now.csv" >/dev/null
    sed 1d "$out/now.csv" | cut -d';' -f6
}
at_least() { [ "$(stored | wc -l)" -ge "$1" ]; }

total=0
for ((cycle = 1; cycle <= cycles; cycle++)); do
    rm -f "$book"*
    "$program" new "$book" --piano "Typed" --action upright >/dev/null
    QT_QPA_PLATFORM=xcb "$program" window "$book" --station measure --dimension let-off --note 1 \
        --settings "$out/window.ini" >"$out/window.log" 2>&1 &
    window_pid=$!
    pids+=("$window_pid")
    until_true 90 xdotool search --onlyvisible --name Hammerline
    window=$(xdotool search --onlyvisible --name Hammerline | head -n 1)
    until_true 20 xdotool windowfocus "$window"
    typed=()
    for i in 1 2 3 4 5 6 7 8; do
        typed+=("3.$i$((cycle % 10))")
    done
    # the first ones are seen in the book before the rest is typed
    seen=$((RANDOM % 3 + 1))
    for ((i = 0; i < seen; i++)); do
        xdotool type --delay 20 "${typed[i]}"
        xdotool key --delay 20 Return
        until_true 60 at_least $((i + 1))
    done
    (
        for ((i = seen; i < ${#typed[@]}; i++)); do
            xdotool type --delay 10 "${typed[i]}"
            xdotool key --delay 10 Return
        done
    ) >/dev/null 2>&1 &
    typist=$!
    sleep "0.$((RANDOM % 900 + 100))" # the random moment itself
    kill -9 "$window_pid"
    wait "$typist" 2>/dev/null || true
    "$program" verify "$book" >/dev/null || { echo "not sound after cycle $cycle" >&2; exit 1; }
    mapfile -t there < <(stored)
    [ ${#there[@]} -ge "$seen" ] || { echo "lost: ${there[*]} of ${typed[*]:0:seen}" >&2; exit 1; }
    for ((i = 0; i < ${#there[@]}; i++)); do
        [ "${there[i]}" = "${typed[i]}" ] || { echo "half done: ${there[*]} of ${typed[*]}" >&2; exit 1; }
    done
    total=$((total + ${#there[@]}))
done
echo "window: $cycles cycles, $total readings typed and there, sound"
