#!/usr/bin/env bash
# What the pictures of the README take besides a real editor: the program that makes a moving picture.
set -euo pipefail
root=$(cd "$(dirname "${BASH_SOURCE[0]}")/../.." && pwd)
source "$root/tests/editor/setup-common.sh"
need apngasm apngasm
need pngquant pngquant
install_missing
