#!/usr/bin/env bash
# Every C++ file is laid out by clang-format 14, and the shell can read every script; says which are not.
set -euo pipefail
cd "$(dirname "$0")/.."
formatter=$(command -v clang-format-14 || command -v clang-format) || { echo "clang-format 14 is missing" >&2; exit 2; }
mapfile -t files < <(find core db ui app tests -name '*.cpp' -o -name '*.h' -o -name '*.hpp' | sort)
"$formatter" --dry-run -Werror "${files[@]}"
while IFS= read -r script; do
    bash -n "$script"
done < <(find app tests .ci -name '*.sh' -o -path .ci/run)
echo "${#files[@]} files are laid out."
