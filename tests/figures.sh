#!/usr/bin/env bash
# The house in figures, one line each: size of files and functions, branches, includes that run upward, files without
# a header. A function is what clang-format lays out as one: a head that ends in "{" and a "}" at the same indentation.
# The figures are places to look, not verdicts; only upward includes make the status 1.
set -euo pipefail
cd "$(dirname "$0")/.."

sources() { git ls-files -- "$@" | grep -E '\.(cpp|h|hpp)$'; }

printf '%-8s %7s %8s %8s %8s\n' floor files lines median longest
for floor in core db ui app tests; do
    sources "$floor" | while IFS= read -r file; do wc -l <"$file"; done | sort -n | awk -v floor="$floor" '
        { lines[NR] = $1; sum += $1 }
        END { printf "%-8s %7d %8d %8d %8d\n", floor, NR, sum, lines[int((NR + 1) / 2)], lines[NR] }'
done

sources core db ui app | grep '\.cpp$' | while IFS= read -r file; do
    awk -v file="$file" '
        function indentation(text) { match(text, /^ */); return RLENGTH }
        function opens(text) {
            if (text !~ /\{$/) return 0
            if (text ~ /^ *(namespace|struct|class|enum|union|if|else|for|while|switch|do|try|case|default|return)[^A-Za-z_]/) return 0
            if (text ~ /^ *\}/) return 0
            if (text ~ /=[^=]*\{$/ && text !~ /\) (const )?(noexcept )?(override )?\{$/) return 0
            return text ~ /\)( const)?( noexcept)?( override)?( final)?( -> [^ ]+)?( : .*)? \{$/
        }
        !inside && opens($0) && indentation($0) <= 4 { inside = 1; depth = indentation($0); from = NR; branches = 0; next }
        inside && /^ *\}/ && indentation($0) == depth {
            print NR - from + 1, branches, file ":" from
            inside = 0
            next
        }
        inside {
            line = $0
            sub(/\/\/.*/, "", line)
            gsub(/"([^"\\]|\\.)*"/, "", line)
            branches += gsub(/(^|[^A-Za-z_])(if|for|while|case|catch)[^A-Za-z_]/, " ", line) + gsub(/&&|\|\||[^?]\?[^?]/, "", line)
        }' "$file"
done | sort -n | awk '
    { length_of[NR] = $1; lines += $1; branches += $2 }
    $2 > 12 { many++ }
    $2 >= 10 && $1 <= 25 { dense++ }
    END {
        printf "functions                       %7d\n", NR
        printf "lines of a function, p90        %7d\n", length_of[int(NR * 0.9)]
        printf "branches per 10 lines           %7.2f\n", 10 * branches / lines
        printf "functions over 12 branches      %7d\n", many
        printf "10 or more branches, 25 lines   %6.1f %%\n", 100 * dense / NR
    }'

# A floor includes only itself and those below it.
upward=$(
    grep -nE '#include "(db|ui|app)/' -r core || true
    grep -nE '#include "(ui|app)/' -r db || true
    grep -nE '#include "app/' -r ui || true
)
printf 'upward includes of floors       %7d\n' "$(printf '%s' "$upward" | grep -c . || true)"
without=$(sources core db ui app | grep '\.cpp$' | while IFS= read -r file; do
    [ -f "${file%.cpp}.h" ] || [ -f "${file%.cpp}.hpp" ] || printf '%s\n' "$file"
done)
printf 'files without their header      %7d\n' "$(printf '%s\n' "$without" | grep -c . || true)"
if [ -n "$upward" ]; then
    printf '%s\n' "$upward"
    exit 1
fi
