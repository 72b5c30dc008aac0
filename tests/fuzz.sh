#!/usr/bin/env bash
# Builds the fuzz targets with clang and fuzzes each for that many seconds, from the tests' own files:
#   bash tests/fuzz.sh SECONDS [TARGET...]
# One line each: target, executions, executions a second, findings. Inputs that fail are kept in .build/fuzz/findings.
set -euo pipefail
cd "$(dirname "$0")/.."
. app/install.sh

seconds=${1:-}
[[ "$seconds" =~ ^[1-9][0-9]*$ ]] || fail "Say for how many seconds each target is to be fuzzed: bash tests/fuzz.sh SECONDS."
shift
install_missing "${build_packages[@]}" "${fuzz_packages[@]}"
build=.build/fuzz
set_up_build "$build" -DCMAKE_BUILD_TYPE=Debug -DCMAKE_CXX_FLAGS_DEBUG="-O1 -g1" -DCMAKE_C_COMPILER=clang-14 \
    -DCMAKE_CXX_COMPILER=clang++-14 -DHAMMERLINE_FUZZ=ON -DHAMMERLINE_SANITIZE=ON
ninja -C "$build" >&2 || fail "The build stopped; the lines above say where."

targets=("$@")
if [ ${#targets[@]} = 0 ]; then
    for source in tests/fuzz/*_fuzz.cpp; do
        targets+=("$(basename "$source" .cpp)")
    done
fi

# Typed texts, one a file, out of the test sources: whatever stands in quotes there.
texts_of() {
    grep -ohE '"([^"\\]|\\.)+"' "$1" | sort -u | sed -E 's/^"|"$//g; s/\\"/"/g' | awk -v folder="$2" '{ print " " $0 > (folder "/text" NR); close(folder "/text" NR) }'
}

seeds_for() {
    local folder="$build/corpus/$1"
    mkdir -p "$folder"
    case $1 in
    quantity_fuzz) texts_of tests/core/quantity_test.cpp "$folder"; texts_of tests/core/intake_entry_test.cpp "$folder" ;;
    notes_fuzz) texts_of tests/core/notes_test.cpp "$folder" ;;
    csv_fuzz) cp tests/reference/csv_cases/*sv tests/reference/cases/*sv "$folder" ;;
    spec_fuzz) find resources/spec -name '*.json' -exec cp {} "$folder" \; ;;
    export_fuzz) cp tests/fuzz/seeds/export.json "$folder" ;;
    book_fuzz) [ -z "$(ls "$folder")" ] && "$build/tests/fuzz/book_seed" "$folder/seed.hammerline" ;;
    esac
    return 0
}

# Short texts show more a second: nobody types a hundred characters into a cell, and a thousand bytes of a table, which is
# read some ten times over, hold every kind of row.
limits_of() {
    case $1 in
    quantity_fuzz | notes_fuzz) printf '%s' "-max_len=128" ;;
    csv_fuzz) printf '%s' "-max_len=1024" ;;
    esac
}

export ASAN_OPTIONS="detect_leaks=1:allocator_may_return_null=1"
mkdir -p "$build/findings"
found=0
for target in "${targets[@]}"; do
    seeds_for "$target"
    log="$build/$target.log"
    findings="$build/findings/$target-"
    status=0
    "$build/tests/fuzz/$target" -max_total_time="$seconds" -timeout=10 -rss_limit_mb=2048 -print_final_stats=1 \
        $(limits_of "$target") -artifact_prefix="$findings" "$build/corpus/$target" >"$log" 2>&1 || status=$?
    executions=$(sed -n 's/^stat::number_of_executed_units: *//p' "$log")
    rate=$(sed -n 's/^stat::average_exec_per_sec: *//p' "$log")
    result=0
    if [ "$status" != 0 ]; then
        result=1
        found=1
    fi
    printf '%s %s executions %s a second %s findings\n' "$target" "${executions:-0}" "${rate:-0}" "$result"
    [ "$result" = 0 ] || printf '%s: see %s and %s*\n' "$target" "$log" "$findings" >&2
done
exit "$found"
