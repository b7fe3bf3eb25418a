# shellcheck shell=bash
# Shared by ./run, ./test and .ci/run: installs Debian packages, configures, builds. To be sourced, with $root set.
# All it says goes to standard error: standard output belongs to the program.

say() { printf '%s\n' "$*" >&2; }
fail() {
  say "error: $*"
  exit 3
}

milliseconds() { printf '%s' "$((${EPOCHREALTIME/[.,]/} / 1000))"; }

# Prints the names in a package list, without comments.
listed() { sed -e 's/#.*//' -e 's/[[:space:]]//g' -e '/^$/d' "$1"; }

# Prints those of the given packages that are not installed.
missing() {
  local name state
  declare -A found=()
  while read -r name state; do
    if [[ $state == installed ]]; then found[$name]=yes; fi
  done <<<"$(dpkg-query --show --showformat '${Package} ${db:Status-Status}\n' "$@" 2>/dev/null)"
  for name; do
    [[ -n ${found[$name]:-} ]] || printf '%s\n' "$name"
  done
}

# install_missing LIST: asks dpkg first; apt is called only when something is missing.
install_missing() {
  local names want as_root=() apt
  if [[ -n ${FORECOURSE_SKIP_PACKAGES:-} ]]; then return; fi
  read -ra names <<<"$(listed "$1" | tr '\n' ' ')"
  if ! command -v apt-get >/dev/null || ! command -v dpkg-query >/dev/null; then
    fail "packages are installed with apt, as on Debian 12, and there is no apt here.
  Install what these Debian packages hold: ${names[*]}
  then run this again with FORECOURSE_SKIP_PACKAGES=1."
  fi
  read -ra want <<<"$(missing "${names[@]}" | tr '\n' ' ')"
  if ((${#want[@]} == 0)); then return; fi
  if ((EUID != 0)); then
    command -v sudo >/dev/null || fail "packages are missing: ${want[*]}. Install them as root, or install sudo."
    as_root=(sudo)
  fi
  say "installing Debian packages: ${want[*]}"
  apt=("${as_root[@]}" env DEBIAN_FRONTEND=noninteractive apt-get -q -o DPkg::Lock::Timeout=900)
  "${apt[@]}" update >&2 </dev/null || fail "apt-get update failed; the reason stands above."
  "${apt[@]}" install -y --no-install-recommends "${want[@]}" >&2 </dev/null ||
    fail "apt-get install failed; the reason stands above."
}

# configured PRESET [SOURCE]: build/PRESET stands. One that came along with a copy of the tree is thrown away.
configured() {
  local folder=$root/build/$1 source=${2:-$root}
  [[ -f $folder/build.ninja ]] || return 1
  if ! grep -qxF "CMAKE_HOME_DIRECTORY:INTERNAL=$source" "$folder/CMakeCache.txt"; then
    say "build/$1 was made for another folder: starting afresh"
    rm -rf -- "$folder"
    return 1
  fi
}

# configure PRESET [CMAKE OPTION...]: quiet when it goes well.
configure() {
  local folder=$root/build/$1
  mkdir -p -- "$folder"
  if ! (cd -- "$root" && cmake --preset "$@") >"$folder/configure.log" 2>&1; then
    cat -- "$folder/configure.log" >&2
    fail "the build could not be configured"
  fi
}

# build PRESET [TARGET...]: silent when there is nothing to do.
build() {
  local folder=$root/build/$1
  shift
  ninja -C "$folder" "$@" | { grep -vE 'no work to do|Entering directory|Re-checking globbed' || true; } >&2 ||
    fail "the build failed; the reason stands above."
}
