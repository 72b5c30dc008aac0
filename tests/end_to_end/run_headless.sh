#!/usr/bin/env bash
# app/run.sh without a display, as on a machine nobody sits at: it must write the demo book, the checked readings, the
# adjustment list and a picture of the window, and say where; a second run has nothing to build.
set -euo pipefail
cd "$(dirname "$0")/../.."
out=$(mktemp -d)
trap 'rm -rf "$out"' EXIT
unset DISPLAY WAYLAND_DISPLAY
export HAMMERLINE_OUT=$out
said=$(bash app/run.sh)
for file in school-upright.hammerline check.txt adjustment-list.pdf window.png; do
    [ -s "$out/$file" ] || { echo "missing: $file" >&2; exit 1; }
    grep -q "$out/$file" <<<"$said" || { echo "does not say where: $file" >&2; exit 1; }
done
[ "$(head -c 5 "$out/adjustment-list.pdf")" = "%PDF-" ]
pdftotext "$out/adjustment-list.pdf" - | grep "Adjustment list" >/dev/null
[ "$(head -c 4 "$out/window.png" | od -An -c | tr -d ' ')" = '211PNG' ]
[ "$(bash app/run.sh --build | tail -n 1)" = .build/release/app/hammerline ]
[ -x .build/release/app/hammerline ]
echo "app/run.sh does the main job without a display."
