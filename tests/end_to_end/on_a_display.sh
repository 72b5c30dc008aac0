# Sourced by the tests that drive the real window: an X display of their own, a folder `out` that goes with them, and
# waiting on conditions instead of sleeping.
out=$(mktemp -d)
pids=()
finish() {
    for pid in "${pids[@]}"; do kill -9 "$pid" 2>/dev/null || true; done
    rm -rf "$out"
}
trap finish EXIT
export ASAN_OPTIONS=detect_leaks=0 XDG_RUNTIME_DIR=$out XDG_CONFIG_HOME=$out HOME=$out

# Counted in tries, not by the clock: a machine that was halted for a while wakes with a clock that has leapt.
until_true() { # SECONDS COMMAND...
    local tries=$(($1 * 10))
    shift
    until "$@" >/dev/null 2>&1; do
        ((tries-- > 0)) || { echo "waited in vain for: $*" >&2; cat "$out"/*.log >&2; return 1; }
        sleep 0.1
    done
}

Xvfb -displayfd 3 -screen 0 1280x800x24 -nolisten tcp 3>"$out/display" 2>/dev/null &
pids+=($!)
until_true 20 test -s "$out/display"
export DISPLAY=:$(cat "$out/display")
unset QT_QPA_PLATFORM WAYLAND_DISPLAY
openbox >/dev/null 2>&1 &
pids+=($!)

named() { xdotool search --onlyvisible --name "$1" | head -n 1; }
focused() { [ "$(xdotool getwindowfocus)" = "$1" ]; }
# Starts $program with these words, with settings of its own, and gives its window the hand: `window` is the one whose
# name holds TITLE.
open_window() { # TITLE WORDS...
    local title=$1
    shift
    QT_QPA_PLATFORM=xcb "$program" window "$@" --settings "$out/window.ini" >"$out/window.log" 2>&1 &
    pids+=("$!")
    until_true 90 xdotool search --onlyvisible --name "$title"
    window=$(named "$title")
    until_true 20 xdotool windowactivate --sync "$window"
    until_true 20 focused "$window"
}
