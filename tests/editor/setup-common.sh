# What the set-up scripts of both editors share; they `source` it. Says in whose name it speaks by $0.

# Debian packages of programs that are missing: `need PROGRAM PACKAGE` and `need_font` collect, `install_missing` installs.
missing=()
need() { command -v "$1" >/dev/null || missing+=("$2"); }
need_font() { [ -e /usr/share/fonts/truetype/dejavu/DejaVuSansMono.ttf ] || missing+=(fonts-dejavu); }
install_missing() {
  [ ${#missing[@]} -gt 0 ] || return 0
  echo "$0: installing ${missing[*]}"
  command -v apt-get >/dev/null || { echo "$0: install these by hand: ${missing[*]}" >&2; exit 2; }
  local as_root=()
  [ "$(id -u)" = 0 ] || as_root=(sudo)
  "${as_root[@]}" apt-get update -qq
  DEBIAN_FRONTEND=noninteractive "${as_root[@]}" apt-get install -qq -y --no-install-recommends "${missing[@]}" >/dev/null
}

# Makes an empty folder for npm to install into: `empty_folder FOLDER`.
empty_folder() {
  rm -rf "$1"
  mkdir -p "$1"
  # A package.json of its own, else npm would take the project's folder for the place to install into.
  echo '{ "private": true }' >"$1/package.json"
  # npm hands the settings of the script that calls this down in the environment; they are not meant for these installs.
  local name
  while IFS= read -r name; do unset "$name"; done < <(compgen -e | grep -iE '^npm_(config_(local_prefix|prefix)|package_|lifecycle_)' || true)
}

quiet=(--no-audit --no-fund --loglevel=error)
