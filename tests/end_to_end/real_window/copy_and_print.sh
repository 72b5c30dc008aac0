#!/usr/bin/env bash
# Keys and menus of the real window on a real display: a list copied as text and as a table, a sheet saved as PDF from
# the Print menu through the real file dialog, Find from station to station. $1 is the program.
set -euo pipefail
program=$1
. "$(dirname "$0")/../on_a_display.sh"
chmod 700 "$out"
export QT_QPA_PLATFORM=xcb
"$program" demo "$out/hall.hammerline" >/dev/null
open_window '^hall – Hammerline$' "$out/hall.hammerline" --station review

clipboard() { timeout 5 xclip -o -selection clipboard "$@"; }
copied() { # presses until the program has begun to listen
    xdotool key --delay 40 ctrl+c
    clipboard | head -n 1 | grep -q "^rank.*note.*dimension"
}
until_true 60 copied
[ "$(clipboard | wc -l)" -ge 10 ] || { echo "The list is cut." >&2; exit 1; }
clipboard -t text/html | grep -q "<th>dimension</th>" || { echo "No table for a letter." >&2; exit 1; }

# Print > Save as PDF > Check sheet; the dialog asks for a name, and the one it suggests is taken
saved() {
    xdotool key --delay 60 alt+p Down Down Right Down Down Return
    until_true 10 xdotool search --onlyvisible --name '^Check sheet$'
    xdotool key --delay 60 Return
    until_true 10 bash -c "ls '$out' | grep -q '.*, Check sheet, [0-9]*-[0-9]*-[0-9]*\.pdf$'"
}
until_true 60 saved
pdf=$(find "$out" -name '*, Check sheet, *.pdf')
grep -qi "check" <<<"$(pdftotext "$pdf" -)" || { echo "The PDF says nothing of the kind." >&2; exit 1; }
echo "Copied, printed and named in the real window."
