#!/usr/bin/env bash
# A second start with a book that is open brings its window forward instead of opening another, on a real X display
# under a window manager; after a kill the next start is not fooled by what the killed window left. $1 is the program.
set -euo pipefail
program=$1
. "$(dirname "$0")/../on_a_display.sh"
chmod 700 "$out"
export QT_QPA_PLATFORM=xcb
book="$out/Town hall.hammerline"
other=$out/other.hammerline
for each in "$book" "$other"; do "$program" new "$each" --piano "Tried" --action upright >/dev/null; done

windows() { xdotool search --onlyvisible --name "^$1 – Hammerline\$" 2>/dev/null || true; }
shows() { [ "$(windows "$1" | wc -l)" = "$2" ]; }
active() { [ "$(xdotool getactivewindow)" = "$1" ]; }
start() { # further words go to the program
    "$program" "$@" --settings "$out/window.ini" >>"$out/window.log" 2>&1 &
    started=$!
    pids+=("$started")
}

start window "$book" --station measure
first=$started
until_true 90 shows "Town hall" 1
hall=$(windows "Town hall")
start window "$other" --station measure
until_true 90 shows other 1
xdotool windowactivate "$(windows other)"
until_true 20 active "$(windows other)"

# the second start ends by itself, and the first window is in front, at the station that was asked for
timeout 60 "$program" "$book" || { echo "The second start did not end well." >&2; exit 1; }
shows "Town hall" 1 || { echo "A second window was opened." >&2; exit 1; }
until_true 20 active "$hall"

# minimised, it comes back
xdotool windowminimize "$hall"
until_true 20 shows "Town hall" 0
timeout 60 "$program" "$book"
until_true 20 shows "Town hall" 1

# by choice a window of its own
start window "$book" --another
until_true 90 shows "Town hall" 2
kill -9 "$started"
until_true 20 shows "Town hall" 1
timeout 60 "$program" "$book"
shows "Town hall" 1 || { echo "The first window lost its door to the second." >&2; exit 1; }

# a killed window leaves its socket; the next start opens a window and stands at the door again
kill -9 "$first"
until_true 20 shows "Town hall" 0
[ -n "$(find "$out" -maxdepth 1 -name 'hammerline-*' -type s)" ] || { echo "No socket was left to be tried." >&2; exit 1; }
start window "$book"
until_true 90 shows "Town hall" 1
timeout 60 "$program" "$book"
shows "Town hall" 1 || { echo "A second window was opened after a kill." >&2; exit 1; }
echo "A second start raises the window that runs; after a kill it opens one."
