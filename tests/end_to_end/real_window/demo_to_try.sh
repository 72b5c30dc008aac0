#!/usr/bin/env bash
# D on the first page opens a copy of the demo in the temporary folder, with real keys in the real window: it can be
# worked in at once. PROGRAM is the built program. No sleep decides anything.
set -euo pipefail
program=$1
. "$(dirname "$0")/../on_a_display.sh"
export TMPDIR=$out
open_window Hammerline
xdotool key --delay 60 d
opened() { [ -n "$(named '^demo – Hammerline$')" ]; }
until_true 60 opened
demo=$(find "$out" -name demo.hammerline)
"$program" verify "$demo" >/dev/null
"$program" list "$demo" | grep -q "88" || { echo "The demo holds no piano of 88 notes." >&2; exit 1; }
content() { "$program" export "$demo" --json --out - | md5sum; }
before=$(content)
changed() { [ "$(content)" != "$before" ]; }
until_true 20 focused "$window"
xdotool key --delay 60 ctrl+z # the copy is worked in like any book
until_true 30 changed
"$program" verify "$demo" >/dev/null
echo "The demo opens from the first page, sound and its own copy."
