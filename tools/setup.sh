#!/bin/sh
# Sets everything up from a bare Debian: Debian packages, the environment, the program.
#   tools/setup.sh          what is needed to run the program
#   tools/setup.sh tests    also what the tests need (a browser, PDF tools)
set -eu
cd "$(dirname "$0")/.."
PYTHON=${PYTHON:-python3}
STAMP=.venv/.set-up

say() { printf '%s\n' "$*" >&2; }

has_command() { command -v "$1" >/dev/null 2>&1; }

# add PACKAGE to the list of what is missing unless its command is there
missing=""
want() {
    if ! has_command "$1"; then missing="$missing $2"; fi
}

want "$PYTHON" python3
if has_command "$PYTHON" && ! "$PYTHON" -c 'import ensurepip, venv' >/dev/null 2>&1; then
    missing="$missing python3-venv"
fi
if [ "${1:-}" = tests ]; then
    want chromium chromium
    want pdftotext poppler-utils
    # the browser driver is linked against it, and a bare Debian does not have it
    if [ -z "$(find /lib /usr/lib -name 'libatomic.so.1' 2>/dev/null | head -n 1)" ]; then
        missing="$missing libatomic1"
    fi
fi

if [ -n "$missing" ]; then
    if [ "$(id -u)" = 0 ] && has_command apt-get; then
        say "Installing the Debian packages:$missing"
        apt-get update -qq >&2
        DEBIAN_FRONTEND=noninteractive apt-get install -qq -y --no-install-recommends $missing >&2
    else
        say "These Debian packages are missing:$missing"
        say "Install them as root:  apt-get install$missing"
        exit 1
    fi
fi

if ! "$PYTHON" -c 'import sys; sys.exit(sys.version_info < (3, 11))'; then
    say "Python 3.11 or newer is needed; $PYTHON is $("$PYTHON" -V 2>&1)."
    exit 1
fi

# nothing to do when the environment is newer than what it is made from
if [ -f "$STAMP" ] && [ ! requirements.lock -nt "$STAMP" ] && [ ! pyproject.toml -nt "$STAMP" ]; then
    exit 0
fi

[ -x .venv/bin/python ] || "$PYTHON" -m venv .venv
.venv/bin/python -m pip --version >/dev/null 2>&1 || .venv/bin/python -m ensurepip --upgrade >/dev/null
say "Installing the locked packages; this takes a few minutes the first time."
.venv/bin/python -m pip install --quiet --disable-pip-version-check --require-hashes -r requirements.lock
.venv/bin/python -m pip install --quiet --disable-pip-version-check --no-deps --editable .
# without compiled bytecode every first start is two or three times slower
.venv/bin/python -m compileall -q src .venv/lib >/dev/null 2>&1 || true
touch "$STAMP"
