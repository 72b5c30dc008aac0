#!/usr/bin/env bash
# Every station of the demo book, the bench entry and how to measure, light and dark, at 1x and 2x, and every sheet's pages on both papers, as PNG into OUT.
set -euo pipefail
cd "$(dirname "$0")/.."
. app/install.sh
[ -n "${1:-}" ] || fail "Say where the pictures go: bash tests/pictures.sh OUT"
mkdir -p "$1"
out=$(cd "$1" && pwd)
install_missing poppler-utils
program=$(bash app/run.sh --build | tail -n 1)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
export QT_QPA_PLATFORM=offscreen
book=$work/demo.hammerline
"$program" demo "$book" >/dev/null
for station in piano survey measure review adjust passes bench how-to; do
    for theme in light dark; do
        for scale in 1 2; do
            "$program" window "$book" --station "$station" --theme "$theme" --scale "$scale" \
                --picture "$out/$station-$theme-${scale}x.png" >/dev/null
        done
    done
done
for sheet in adjustment check survey parts labels comparison record; do
    for paper in A4 Letter; do
        "$program" print "$book" "$sheet" --paper "$paper" --out "$work/$sheet.pdf" >/dev/null || [ $? = 1 ]
        pdftoppm -r 80 -png "$work/$sheet.pdf" "$out/sheet-$sheet-$paper"
    done
done
printf 'Pictures are in %s\n' "$out"
