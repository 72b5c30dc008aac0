#!/usr/bin/env bash
# Installs what is missing, builds with the address and undefined-behaviour sanitizers and runs every test.
#   --only PATTERN    only the tests whose name matches
set -euo pipefail
cd "$(dirname "$0")/.."
. app/install.sh

only=()
if [ "${1:-}" = --only ]; then
    [ -n "${2:-}" ] || fail "--only takes a pattern of test names."
    only=(-R "$2")
fi
install_missing "${build_packages[@]}" "${test_packages[@]}"
install_if_to_be_had "${browser_packages[@]}"
build=.build/tests
set_up_build "$build" -DCMAKE_BUILD_TYPE=Debug -DCMAKE_CXX_FLAGS_DEBUG=-O1 -DHAMMERLINE_TESTS=ON \
    -DHAMMERLINE_SANITIZE=ON -DCMAKE_UNITY_BUILD=ON
ninja -C "$build" || fail "The build stopped; the lines above say where."
export QT_QPA_PLATFORM=offscreen
ctest --test-dir "$build" --output-on-failure --timeout 1500 -j 2 "${only[@]}"
