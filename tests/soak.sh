#!/usr/bin/env bash
# The long form of the kill test: bash tests/soak.sh CYCLES
# CYCLES times on the command line, and a twentieth of that in the real window under Xvfb; then a fault at every file call
# of every command that writes, and ten times as many books with mutated rows, with mutated bytes and with one flipped bit.
set -euo pipefail
cd "$(dirname "$0")/.."
. app/install.sh

cycles=${1:-}
[[ "$cycles" =~ ^[1-9][0-9]*$ ]] || fail "Say how many cycles: bash tests/soak.sh CYCLES."
install_missing "${build_packages[@]}" "${test_packages[@]}"
build=.build/tests
set_up_build "$build" -DCMAKE_BUILD_TYPE=Debug -DCMAKE_CXX_FLAGS_DEBUG=-O1 \
    -DHAMMERLINE_TESTS=ON -DHAMMERLINE_SANITIZE=ON
ninja -C "$build" soak faults row_mutations failing_calls hammerline db_tests >&2 || fail "The build stopped; the lines above say where."
export ASAN_OPTIONS=detect_leaks=0
"$build/tests/soak" "$cycles" "$build/app/hammerline"
bash tests/soak/window.sh "$build/app/hammerline" $(((cycles + 19) / 20))
"$build/tests/faults" "$build/app/hammerline" "$build/tests/libfailing_calls.so" all
"$build/tests/row_mutations" "$build/app/hammerline" $((cycles * 10)) all
HAMMERLINE_MUTATIONS=$((cycles * 10)) "$build/tests/db_tests" "a mutated*"
HAMMERLINE_FLIPS=$((cycles * 10)) "$build/tests/db_tests" "a flipped bit*" --success | tail -n 12
