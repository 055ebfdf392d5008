# What ./run, ./test and the scripts beside this file have in common. Sourced, never run.
# shellcheck shell=bash

HOUSE=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
CACHE=${XDG_CACHE_HOME:-$HOME/.cache}/tautline
# Builds stay outside the clone: a folder that is copied, synced or searched stays small. Each clone has its own:
# cargo tells one package in two clones apart by the times of its files alone, so in one folder the older clone
# would run what the newer one built.
CLONE=$(cksum <<<"$HOUSE" | cut -d' ' -f1)
export CARGO_TARGET_DIR=${CARGO_TARGET_DIR:-$CACHE/target-$CLONE}

say() { printf '%s\n' "$*"; }
complain() { printf '%s\n' "$*" >&2; }
have() { command -v "$1" >/dev/null 2>&1; }

# The oldest compiler we promise, as the workspace states it.
oldest_rust() { sed -n 's/^rust-version *= *"\([0-9.]*\)".*/\1/p' "$HOUSE/Cargo.toml"; }

# Is version $1 at least version $2? Compares the first two numbers.
at_least() {
    local IFS=.
    local -a found=($1) wanted=($2)
    ((found[0] > wanted[0] || (found[0] == wanted[0] && found[1] >= wanted[1])))
}

# A compiler that is new enough and can link, or a plain refusal. Nothing is installed or switched here:
# the toolchain is the person's own.
require_rust() {
    local oldest version
    oldest=$(oldest_rust)
    if ! have cargo || ! have rustc; then
        complain "There is no Rust here: neither 'cargo' nor 'rustc' may be missing from PATH."
        complain "Install Rust $oldest or newer (https://rustup.rs, or your system's packages) and run this again."
        return 1
    fi
    if ! version=$(rustc --version 2>&1); then
        complain "'rustc' is on PATH but does not answer: $version"
        return 1
    fi
    version=$(cut -d' ' -f2 <<<"$version")
    if ! at_least "$version" "$oldest"; then
        complain "The compiler here is Rust $version; tautline needs $oldest or newer."
        complain "With rustup: 'rustup update stable'. Otherwise take a newer package of your system."
        return 1
    fi
    require_linker
}

# Only linking a program proves that a linker is there; its name differs from system to system.
require_linker() {
    local trial answer
    trial=$(mktemp -d)
    if ! answer=$(rustc --edition 2024 -o "$trial/trial" - <<<'fn main() {}' 2>&1); then
        complain "Rust is here, but it cannot link a program: $(sed -n 's/^error: //p' <<<"$answer" | head -n 1)"
        complain "Install a C linker: 'apt-get install gcc' (Debian, Ubuntu), 'dnf install gcc' (Fedora),"
        complain "'xcode-select --install' (macOS)."
        rm -rf "$trial"
        return 1
    fi
    rm -rf "$trial"
}

# Runs a command as root, or fails where that would mean asking for a password.
as_root() {
    if [ "$(id -u)" = 0 ]; then
        "$@"
    elif have sudo && sudo -n true 2>/dev/null; then
        sudo -n "$@"
    else
        return 1
    fi
}

# Fetches the lists of packages. One at a time: apt refuses a second one.
refresh_packages() {
    mkdir -p "$CACHE"
    (
        flock 9
        as_root apt-get update -qq
    ) 9>"$CACHE/apt-lists.lock"
}
