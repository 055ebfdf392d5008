# What the stages need beyond Rust, fetched in the background while the first stages compile.
# Everything goes into the cache, except system packages. Sourced by ./test.
# shellcheck shell=bash

CARGO_DENY_VERSION=0.20.2
CARGO_BOLERO_VERSION=0.13.5
REFERENCE=$CACHE/reference
SCHEMATHESIS=$CACHE/schemathesis
EXPORTS=$CACHE/exports
LONGEST_INSTALL=900   # seconds; after that the stage that waits has failed
export PATH=$CACHE/tools/bin:$PATH

# ── each need: a function that provides it, and what to do by hand where it can't ────────────────────────

R_PACKAGES="r-cran-survey r-cran-boot r-cran-lme4 r-cran-pbkrtest r-cran-lmertest"

by_hand() {
    case $1 in
    cargo_deny) say "cargo-deny: cargo install cargo-deny --locked --version $CARGO_DENY_VERSION" ;;
    cargo_bolero) say "cargo-bolero: cargo install cargo-bolero --locked --version $CARGO_BOLERO_VERSION --no-default-features --features libfuzzer" ;;
    wasm_compiler) say "a compiler for the browser: rustup target add wasm32-unknown-unknown" ;;
    xmllint) say "xmllint: apt-get install libxml2-utils" ;;
    gnu_time) say "the program time: apt-get install time" ;;
    poppler) say "pdftotext and pdfinfo: apt-get install poppler-utils" ;;
    node) say "Node.js 18 or newer: apt-get install nodejs" ;;
    strace) say "strace: apt-get install strace" ;;
    exports) say "PyPI within reach, Python 3 with venv, GDAL, LibreOffice Calc and xmllint: apt-get install python3-venv gdal-bin libreoffice-calc-nogui libxml2-utils" ;;
    schemathesis) say "PyPI within reach, and Python 3 with venv: apt-get install python3-venv" ;;
    node_tools) say "npm and its registry within reach: apt-get install nodejs npm; then tools/node-tools" ;;
    chromium) say "Chromium: apt-get install chromium, or CHROMIUM names one" ;;
    reference) say "PyPI within reach, Python 3 with venv, R with survey, boot, lme4, pbkrtest and lmerTest: apt-get install python3-venv r-base-core $R_PACKAGES" ;;
    esac
}

# Built without optimising: it runs for a second, and compiling it is what takes time.
provide_cargo_deny() {
    have cargo-deny && return
    CARGO_PROFILE_RELEASE_OPT_LEVEL=0 CARGO_PROFILE_RELEASE_LTO=off CARGO_PROFILE_RELEASE_CODEGEN_UNITS=64 \
        CARGO_TARGET_DIR=$CACHE/target-tools \
        cargo install cargo-deny --locked --version "$CARGO_DENY_VERSION" --root "$CACHE/tools" &&
        rm -rf "$CACHE/target-tools"
}

provide_cargo_bolero() {
    have cargo-bolero && return
    CARGO_PROFILE_RELEASE_OPT_LEVEL=0 CARGO_PROFILE_RELEASE_LTO=off CARGO_PROFILE_RELEASE_CODEGEN_UNITS=64 \
        CARGO_TARGET_DIR=$CACHE/target-tools \
        cargo install cargo-bolero --locked --version "$CARGO_BOLERO_VERSION" \
        --no-default-features --features libfuzzer --root "$CACHE/tools" &&
        rm -rf "$CACHE/target-tools"
}

provide_wasm_compiler() { tools/wasm-cargo prepare; }

provide_strace() { have strace || system_packages strace; }

provide_node() { have node || system_packages nodejs; }

provide_gnu_time() { [ -x /usr/bin/time ] || system_packages time; }

provide_poppler() { have pdftotext || system_packages poppler-utils; }

provide_xmllint() { have xmllint || system_packages libxml2-utils; }

provide_node_tools() {
    { have node && have npm; } || system_packages nodejs npm || return
    tools/node-tools prepare
}

provide_chromium() { [ -x "${CHROMIUM:-/usr/bin/chromium}" ] || system_packages chromium; }

provide_reference() {
    { have Rscript && Rscript -e 'library(survey); library(boot); library(lme4); library(pbkrtest); library(lmerTest)'; } ||
        system_packages r-base-core $R_PACKAGES || return
    python_packages testdata/reference/requirements.txt "$REFERENCE"
}

provide_exports() {
    { have ogrinfo && have soffice && have xmllint; } ||
        system_packages gdal-bin libreoffice-calc-nogui libxml2-utils || return
    python_packages tools/exports/requirements.txt "$EXPORTS"
}

provide_schemathesis() { python_packages tools/schemathesis.txt "$SCHEMATHESIS"; }

# The packages of a list, each of one version, in a folder of their own.
python_packages() {
    local wanted=$1 folder=$2
    cmp -s "$wanted" "$folder/requirements.txt" && return
    rm -rf "$folder"
    python3 -m venv "$folder" || { system_packages python3-venv && python3 -m venv "$folder"; } || return
    "$folder/bin/pip" install --quiet --requirement "$wanted" && cp "$wanted" "$folder/requirements.txt"
}

# One at a time: two of apt's installations at once would refuse each other.
system_packages() {
    have apt-get || { complain "not a system with apt-get; needed: $*" && return 1; }
    as_root true || { complain "needs root: apt-get install $*" && return 1; }
    (
        flock 9
        install_packages "$@" || { refresh_packages && install_packages "$@"; }
    ) 9>"$CACHE/apt-install.lock"
}

install_packages() {
    as_root env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends "$@"
}

# ── which stage needs what ──────────────────────────────────────────────────────────────────────────────

needs_of() {
    case $1 in
    deny | advisories) say cargo_deny ;;
    guided) say cargo_bolero ;;
    locks | run) say wasm_compiler ;;
    gpx) say xmllint ;;
    pdf) say poppler ;;
    golden) say wasm_compiler node ;;
    app) say wasm_compiler node_tools chromium ;;
    reference) say reference ;;
    exports) say exports ;;
    server) say schemathesis ;;
    synced) say strace ;;
    memory) say gnu_time ;;
    esac
}

start_installs() {
    local stage need needs=" "
    rm -f "$LOGS"/install-*
    for stage in "$@"; do
        for need in $(needs_of "$stage"); do
            [[ $needs = *" $need "* ]] && continue
            needs+="$need "
            start_group "$LOGS/install-$need.log" install "$need"
        done
    done
    [ "$needs" = " " ] || say "In the background:$needs"
}

# The outcome is left as a file: the stage that waits for it is another process.
install() {
    if "provide_$1"; then
        touch "$LOGS/install-$1.done"
    else
        touch "$LOGS/install-$1.missing"
    fi
}

# Waits until a need is provided; says what to do by hand where it could not be.
installed() {
    local waited=0
    until [ -e "$LOGS/install-$1.done" ]; do
        if [ -e "$LOGS/install-$1.missing" ] || [ "$waited" -gt "$LONGEST_INSTALL" ]; then
            tail -n 20 "$LOGS/install-$1.log"
            say "Missing: $(by_hand "$1")"
            return 1
        fi
        [ $((waited % 10)) != 0 ] || say "waiting for $1: $(tail -n 1 "$LOGS/install-$1.log")"
        waited=$((waited + 1))
        sleep 1
    done
}

list_missing() {
    local mark need
    for mark in "$LOGS"/install-*.missing; do
        [ -e "$mark" ] || continue
        need=${mark##*/install-}
        say "Could not be installed, so what needs it failed: $(by_hand "${need%.missing}")"
    done
}
