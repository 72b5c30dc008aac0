# Sourced by app/run.sh and tests/run.sh: installs the Debian packages that are missing, and says so in one sentence
# where it cannot.
build_packages=(g++ cmake ninja-build pkg-config qt6-base-dev libgl-dev libsqlite3-dev libsqlitecpp-dev libsodium-dev
    libcli11-dev libfmt-dev libexpected-dev nlohmann-json3-dev libboost-dev fonts-noto-core fonts-dejavu-core)
test_packages=(git catch2 librapidcheck-dev clang-format-14 clang-tidy-14 xvfb xdotool openbox xauth poppler-utils sqlite3 xclip
    desktop-file-utils appstream lintian man-db shared-mime-info libglib2.0-bin dpkg-dev file zsh fish
    dbus at-spi2-core python3-gi gir1.2-atspi-2.0)
desktop_packages=(qt6-gtk-platformtheme qt6-wayland)
package_packages=(dpkg-dev file)
browser_packages=(chromium) # reads the page of a second opinion; its test is left out where there is none
bench_packages=(libbenchmark-dev sqlite3)
fuzz_packages=(clang-14 libclang-rt-14-dev)

fail() {
    printf '%s\n' "$*" >&2
    exit 2
}

missing_packages() {
    local package
    for package in "$@"; do
        [ "$(dpkg-query -W -f '${db:Status-Status}' "$package" 2>/dev/null)" = installed ] || printf '%s ' "$package"
    done
}

install_missing() {
    command -v dpkg-query >/dev/null || fail "This script installs with apt on Debian 12; on another system install by hand: $*."
    local missing
    missing=$(missing_packages "$@")
    [ -n "$missing" ] || return 0
    local as_root=()
    if [ "$(id -u)" != 0 ]; then
        command -v sudo >/dev/null || fail "These packages are missing and neither root nor sudo is at hand to install them: $missing"
        as_root=(sudo)
    fi
    printf 'Installing: %s\n' "$missing" >&2
    # shellcheck disable=SC2086  # a list of words
    { "${as_root[@]}" apt-get -o APT::Update::Error-Mode=any update -qq &&
        "${as_root[@]}" env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends $missing; } >&2 ||
        fail "apt could not install what is missing (is the network there?): $missing"
}

# What a test can do without: a sentence in place of a stop.
install_if_to_be_had() {
    ([ -z "$(missing_packages "$@")" ] || install_missing "$@") ||
        printf 'Not to be had here: %s. The tests that need it are left out.\n' "$*" >&2
}

# Configures BUILD once, with the arguments that follow. A folder that was moved or copied here with its checkout still
# speaks of the old place: it is made anew.
set_up_build() {
    local build=$1
    shift
    if [ -f "$build/CMakeCache.txt" ]; then
        local home
        home=$(sed -n 's/^CMAKE_HOME_DIRECTORY:INTERNAL=//p' "$build/CMakeCache.txt")
        [ "$home" -ef . ] || rm -rf -- "$build"
    fi
    [ -f "$build/build.ninja" ] || cmake -S . -B "$build" -G Ninja "$@" >&2 ||
        fail "The build could not be set up; the lines above say why."
}
