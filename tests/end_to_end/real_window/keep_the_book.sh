#!/usr/bin/env bash
# What keeps a book, through the Book menu of the real window: Back up; Back up to another place; Is this book sound? on a book that was changed
# from outside; Restore a backup through the real file dialog. $1 is the program.
set -euo pipefail
program=$1
. "$(dirname "$0")/../on_a_display.sh"
chmod 700 "$out"
export QT_QPA_PLATFORM=xcb
book=$out/hall.hammerline
"$program" demo "$book" >/dev/null
open_window '^hall – Hammerline$' "$book" --station review

from_the_end() { # N: the entry of the Book menu that is the N-th from its end (Quit is the first)
    xdotool key --delay 60 Escape alt+b
    for ((i = 0; i < $1; i++)); do xdotool key --delay 60 Up; done
    xdotool key --delay 60 Return
}
shown() { xdotool search --onlyvisible --name "$1"; }

backed_up() {
    from_the_end 8
    until_true 10 bash -c "ls '$out'/hall.backup-*.hammerline"
}
until_true 60 backed_up
copy=$(ls "$out"/hall.backup-*.hammerline | head -n 1)
"$program" verify "$copy" >/dev/null || { echo "The copy is not sound." >&2; exit 1; }

# To another place through the real file dialog: the copy is whole, and the book is told where it lies.
elsewhere() {
    from_the_end 7
    until_true 10 shown '^Back up to another place$'
    xdotool type --delay 20 "$out/stick.hammerline"
    xdotool key --delay 60 Return
    until_true 10 test -s "$out/stick.hammerline"
}
until_true 60 elsewhere
until_true 20 "$program" verify "$out/stick.hammerline"

# A sound book is told in the line at the foot and no window opens: the key that is pressed next is answered.
from_the_end 6
until_true 30 bash -c "xdotool key F1; xdotool search --onlyvisible --name '^All keys$'"
xdotool key --delay 60 Escape

sqlite3 "$book" "UPDATE reading SET value = value * 2 WHERE relation = '='"
asked() {
    from_the_end 6
    until_true 10 shown '^Is this book sound\?$'
}
until_true 60 asked
xdotool key --delay 60 Return
until_true 20 bash -c "! xdotool search --onlyvisible --name '^Is this book sound\?\$'"

restored() {
    from_the_end 5
    until_true 10 shown '^Restore a backup of hall.hammerline$'
    xdotool type --delay 20 "$copy"
    xdotool key --delay 60 Return
    until_true 10 bash -c "ls '$out'/hall.replaced-*.hammerline"
}
until_true 60 restored
until_true 20 "$program" verify "$book"
! "$program" verify "$out"/hall.replaced-*.hammerline >/dev/null 2>&1 ||
    { echo "What was replaced is not what was changed." >&2; exit 1; }
echo "Backed up, asked and restored in the real window."
