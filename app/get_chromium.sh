#!/bin/sh
# Gets Chromium for the browser tests through the system's packages, where that is allowed. Going
# without is said plainly; with CI=true it is a failure.
set -eu

if [ -n "${CHROMIUM:-}" ] || command -v chromium >/dev/null; then
    exit 0
fi
why="only root may install it"
if [ "$(id -u)" -eq 0 ]; then
    why="there is no apt-get"
    if command -v apt-get >/dev/null; then
        echo "Getting Chromium from the system's packages ..."
        apt-get update -qq || true
        DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends chromium \
            >/dev/null && exit 0
        why="apt-get can't get it"
    fi
fi
echo "LEFT OUT: the browser tests, for want of Chromium: $why. Install the package chromium" >&2
echo "(apt-get install --no-install-recommends chromium), or let CHROMIUM be its path." >&2
[ "${CI:-}" != true ]
