#!/usr/bin/env bash
# Every benchmark in Release, one line each: NAME VALUE UNIT goal GOAL ok|short. Installs what is missing; not part of CI.
#   --pianos N    of the yardstick (200)
set -euo pipefail
cd "$(dirname "$0")/.."
. app/install.sh

pianos=200
if [ "${1:-}" = --pianos ]; then
    [ -n "${2:-}" ] || fail "--pianos takes a number."
    pianos=$2
fi
install_missing "${build_packages[@]}" "${bench_packages[@]}" jq
build=.build/bench
set_up_build "$build" -DCMAKE_BUILD_TYPE=Release -DCMAKE_UNITY_BUILD=ON -DHAMMERLINE_BENCHMARKS=ON
ninja -C "$build" >&2 || fail "The build stopped; the lines above say where."

# Medians of rounds that take turns: what else the machine does falls on both sides of a ratio.
"$build/tests/speed/speed" --benchmark_repetitions=9 --benchmark_enable_random_interleaving=true --benchmark_min_time=0.2 \
    --benchmark_format=json 2>/dev/null | jq -r '
    [.benchmarks[] | select(.aggregate_name == "median") | {key: .run_name, value: .cpu_time}] | from_entries as $t
    | def line($name; $value; $unit; $goal):
        "\($name) \($value * 1000 | round / 1000) \($unit) goal \($goal) \(if $value <= $goal then "ok" else "short" end)";
      line("judging-88"; $t["judging/88"]; "ms"; 0.3),
      line("viewing-88"; $t["viewing/88"]; "ms"; 1),
      line("planning-88"; $t["planning/88"]; "ms"; 16),
      line("judging-88-over-44-notes"; $t["judging/88"] / $t["judging/44"]; "ratio"; 2.2),
      line("planning-88-over-44-notes"; $t["planning/88"] / $t["planning/44"]; "ratio"; 2.2)'
if command -v Rscript >/dev/null; then
    readings=$(mktemp)
    trap 'rm -f "$readings"' EXIT
    "$build/tests/speed/speed" --readings >"$readings"
    r=$(Rscript tests/speed/judging.R "$readings")
    ours=$("$build/tests/speed/speed" --benchmark_filter=judging/88 --benchmark_format=json 2>/dev/null | jq '.benchmarks[0].cpu_time')
    jq -nr --argjson r "$r" --argjson ours "$ours" '"judging-over-the-same-in-R \($ours / $r * 1000 | round / 1000) ratio goal 1 \(if $ours <= $r then "ok" else "short" end)"'
else
    echo "# judging-over-the-same-in-R: not measured, Rscript (r-base-core) is not installed"
fi
"$build/tests/speed/yardstick" "$pianos"
"$build/tests/speed/conclusions"
for more in "$build"/tests/speed/bench_*; do
    [ -x "$more" ] && [ -f "$more" ] && "$more"
done
