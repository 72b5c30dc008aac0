#!/usr/bin/env bash
# Builds Hammerline on Debian 12 and opens it on the demo book. Without a display it does the main job headless:
# it writes the demo book, its adjustment list as PDF and a picture of the window, and says where.
#   --build      only build; the last line printed is the path of the program
#   --package    build the Debian package; the last line printed is its path
#   --help       these lines
set -euo pipefail
cd "$(dirname "$0")/.."
. app/install.sh

task=${1:-}
case $task in
'' | --build | --package) ;;
-h | --help)
    sed -n '2,/^set -/s/^# \{0,1\}//p' app/run.sh
    exit 0
    ;;
*) fail "run.sh has no option $task; it takes --build, --package or --help." ;;
esac
[ $# -le 1 ] || fail "run.sh takes one option at a time."

install_missing "${build_packages[@]}"
# What a desktop needs besides: its theme, its file dialogs, Wayland.
[ -z "${DISPLAY:-}${WAYLAND_DISPLAY:-}" ] || install_missing "${desktop_packages[@]}"
[ "$task" != --package ] || install_missing "${package_packages[@]}"
build=.build/release
set_up_build "$build" -DCMAKE_BUILD_TYPE=Release -DCMAKE_UNITY_BUILD=ON
ninja -C "$build" hammerline >&2 || fail "The build stopped; the lines above say where."
program=$build/app/hammerline
if [ "$task" = --package ]; then
    ninja -C "$build" all >&2 || fail "The build stopped; the lines above say where."
    (cd "$build" && cpack -B package) >&2 || fail "The package could not be built; the lines above say why."
    find "$PWD/$build/package" -maxdepth 1 -name 'hammerline_*.deb' -printf '%T@ %p\n' | sort -n | tail -1 | cut -d' ' -f2-
    exit 0
fi
if [ "$task" = --build ]; then
    printf '%s\n' "$program"
    exit 0
fi

home=${HOME:-$(getent passwd "$(id -u)" | cut -d: -f6)}
out=${HAMMERLINE_OUT:-${XDG_DATA_HOME:-${home:-/tmp}/.local/share}/hammerline/demo}
mkdir -p "$out"
book=$out/school-upright.hammerline
[ -f "$book" ] || "$program" demo "$book"
if [ -n "${DISPLAY:-}${WAYLAND_DISPLAY:-}" ] && [ "${QT_QPA_PLATFORM:-}" != offscreen ]; then
    exec "$program" window "$book"
fi

# No display: the main job on paper.
status=0
"$program" check "$book" >"$out/check.txt" || status=$?
[ "$status" -le 1 ] || fail "The demo book could not be checked."
"$program" print "$book" adjustment --out "$out/adjustment-list.pdf"
"$program" window "$book" --station measure --picture "$out/window.png"
printf 'No display here, so the main job was done on paper:\n'
printf '  the demo book           %s\n' "$book"
printf '  its readings judged     %s\n' "$out/check.txt"
printf '  its adjustment list     %s\n' "$out/adjustment-list.pdf"
printf '  a picture of the window %s\n' "$out/window.png"
