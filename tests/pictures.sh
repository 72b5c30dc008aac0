#!/usr/bin/env bash
# Pictures of the window and the paper, all of the demo book.
#   OUT         every station, the bench entry and how to measure, light and dark, at 1x and 2x, at a text size of 150 %
#               and 200 % and in a 3840x2160 window at 1x and 2x; account, stroke and action of five kinds, with text at
#               100 to 200 %, dark, and grey; every sheet's pages on both papers; as PNG into OUT: look at them
#   --readme    the five pictures of the README, anew into resources/pictures
set -euo pipefail
cd "$(dirname "$0")/.."
. app/install.sh
[ -n "${1:-}" ] || fail "Say where the pictures go: bash tests/pictures.sh OUT, or --readme for those of the README."
install_missing poppler-utils
program=$(bash app/run.sh --build | tail -n 1)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
export QT_QPA_PLATFORM=offscreen
book=$work/demo.hammerline
"$program" demo "$book" >/dev/null

# A station as FILE; what else is said goes to the window. Settings of its own: nobody's choices are in a picture.
picture() {
    local station=$1 file=$2
    shift 2
    "$program" window "$book" --settings "$work/settings.ini" --station "$station" --picture "$file" "$@" >/dev/null
}

# The demo's plan in force is ticked off already; its list printed anew is the plan that waits for hands.
plan_anew() {
    "$program" print "$book" adjustment --out "$work/adjustment.pdf" >/dev/null || [ $? = 1 ]
}

if [ "$1" = --readme ]; then
    picture measure resources/pictures/measure-light.png --theme light
    picture review resources/pictures/review-light.png --theme light
    picture bench resources/pictures/bench-dark.png --theme dark --note 52 --dimension let-off --typed 4.4
    picture how-to resources/pictures/how-to-light.png --theme light
    plan_anew
    picture work resources/pictures/work-light.png --theme light
    printf 'The pictures of the README are in resources/pictures\n'
    exit 0
fi

mkdir -p "$1"
out=$(cd "$1" && pwd)
plan_anew
for station in piano survey measure review work passes bench how-to account stroke action; do
    for theme in light dark; do
        for scale in 1 2; do
            picture "$station" "$out/$station-$theme-${scale}x.png" --theme "$theme" --scale "$scale"
        done
    done
    for size in 150 200; do
        picture "$station" "$out/$station-text-$size.png" --theme light --text-size $size
    done
    picture "$station" "$out/$station-3840x2160-1x.png" --theme light --width 3840 --height 2160
    picture "$station" "$out/$station-3840x2160-2x.png" --theme light --width 1920 --height 1080 --scale 2
done
# The note, wide, of every kind of action: a book with the readings of 31 notes.
wide_of() {
    local kind=$1 columns=$2 values=$3
    shift 3
    book=$work/$kind.hammerline
    "$program" new "$book" --piano "$kind" "$@" --quiet >/dev/null
    "$program" pass "$book" --quiet >/dev/null
    { printf 'note,%s\n' "$columns"; seq -f "%.0f,$values" 30 60; } >"$work/$kind.csv"
    "$program" import "$book" "$work/$kind.csv" --quiet >/dev/null || [ $? = 1 ]
    for station in account stroke action; do
        picture "$station" "$out/$kind-$station-light.png" --theme light --note 45
        picture "$station" "$out/$kind-$station-dark-2x.png" --theme dark --note 45 --scale 2
        for size in 150 200; do
            picture "$station" "$out/$kind-$station-text-$size.png" --theme light --note 45 --text-size $size
        done
        if command -v convert >/dev/null; then
            convert "$out/$kind-$station-light.png" -colorspace Gray "$out/$kind-$station-grey.png"
        fi
    done
}
vertical=key-dip,lost-motion,blow,let-off,checking,damper-start
wide_of upright "$vertical" 10.0,0.3,46.5,3.6,15,21 --action upright
wide_of old-upright "$vertical" 9.7,0.6,47.5,4.0,16,22 --action upright --spec old-upright
wide_of drop "$vertical" 9.3,0.3,43.5,3.2,14,18 --action drop
wide_of overdamper "$vertical" 9.8,0.4,46.0,3.4,15,20 --action upright --attribute damping=overdamper
wide_of grand key-dip,blow,let-off,checking,drop 10.0,46.0,2.0,15,1.5 --action grand
book=$work/demo.hammerline

for sheet in adjustment check survey parts labels comparison record action gauges; do
    for paper in A4 Letter; do
        "$program" print "$book" "$sheet" --paper "$paper" --out "$work/$sheet.pdf" >/dev/null || [ $? = 1 ]
        pdftoppm -r 80 -png "$work/$sheet.pdf" "$out/sheet-$sheet-$paper"
    done
done
printf 'Pictures are in %s\n' "$out"
