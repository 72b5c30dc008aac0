#!/usr/bin/env bash
# What the desktop and Debian say of what is installed. $1 is the build folder.
#   desktop-file-validate, appstreamcli, man --warnings, lintian, and the shells on their completions.
set -euo pipefail
build=$1
here=$(cd "$(dirname "$0")/../.." && pwd)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

wrong() {
    printf '%s\n' "$*" >&2
    exit 1
}

cmake --install "$build" --prefix "$work/usr" >/dev/null
share=$work/usr/share
id=org.hammerline.Hammerline
said=$(desktop-file-validate "$share/applications/$id.desktop" 2>&1) || wrong "$said"
[ -z "$said" ] || wrong "$said"
appstreamcli validate --no-net "$share/metainfo/$id.metainfo.xml" || wrong "The metainfo is refused."
said=$(MANWIDTH=80 man --warnings -l "$share/man/man1/hammerline.1.gz" 2>&1 >/dev/null)
[ -z "$said" ] || wrong "The manual page: $said"
bash -n "$share/bash-completion/completions/hammerline"
zsh -n "$share/zsh/vendor-completions/_hammerline"
fish -n "$share/fish/vendor_completions.d/hammerline.fish"

# The completion does complete: a command by its beginning, a dimension by its name.
completes() { # the words typed, the last one begun; prints what is offered
    bash -c '. "$0"; COMP_WORDS=("$@"); COMP_CWORD=$(($# - 1)); _hammerline 2>/dev/null; printf "%s\n" "${COMPREPLY[@]}"' \
        "$share/bash-completion/completions/hammerline" "$@"
}
[ "$(completes hammerline compa)" = compare ] || wrong "bash does not complete compa."
completes hammerline enter x.hammerline 40 let | grep -qx let-off || wrong "bash does not complete let-off."
completes hammerline pass x.hammerline --stack i | grep -qx in || wrong "bash does not complete --stack in."

# A book is known by what stands in it, not only by its name.
mkdir -p "$work/data/mime/packages"
cp "$share/mime/packages/$id.xml" "$work/data/mime/packages/"
cp /usr/share/mime/packages/freedesktop.org.xml "$work/data/mime/packages/"
update-mime-database "$work/data/mime" 2>/dev/null
QT_QPA_PLATFORM=offscreen "$work/usr/bin/hammerline" demo "$work/plain.hammerline" >/dev/null
mv "$work/plain.hammerline" "$work/without-a-name"
kind=$(XDG_DATA_HOME=$work/data XDG_DATA_DIRS=$work/none gio info -a standard::content-type "$work/without-a-name" |
    sed -n 's/.*standard::content-type: //p')
[ "$kind" = application/x-hammerline-book ] || wrong "A bench book is taken for $kind."

# The pictures are the drawing's.
for size in 16 24 32 48 64 128 256; do
    file "$share/icons/hicolor/${size}x$size/apps/$id.png" | grep -q "$size x $size" || wrong "The icon of $size."
done

grep -q "^$(sed -n 's/^project(hammerline VERSION \([0-9.]*\).*/\1/p' "$here/CMakeLists.txt") (" \
    "$here/resources/CHANGELOG" || wrong "The change log does not begin with the version."
(cd "$work" && cpack --config "$build/CPackConfig.cmake" -B "$work/deb" >"$work/cpack.log" 2>&1) || wrong "$(cat "$work/cpack.log")"
deb=$(echo "$work"/deb/*.deb)
dpkg-deb -f "$deb" Depends | grep -q libqt6widgets6 || wrong "The package does not depend on Qt."
dpkg-deb -f "$deb" Recommends | grep -q qt6-gtk-platformtheme || wrong "The package does not recommend the theme."
# A build under test is linked with sanitizers and keeps no hardening of its own: errors of the package only.
said=$(lintian --allow-root --fail-on error "$deb" 2>&1) || wrong "$said"
printf 'Installed, judged by the desktop and by lintian: %s\n' "$(basename "$deb")"
