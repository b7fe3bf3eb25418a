# shellcheck shell=bash
# Shared by ./run and ./test: the packages and the build of the workbench's page. To be sourced after tools/setup.sh.

# npm ARGUMENT...: with the Node of tools/node, since Debian's own is too old for the bundler.
web_npm() {
  local node=("$root"/tools/node/node_modules/node-linux-*/bin)
  PATH=${node[0]}:$PATH npm --prefix "$root/web" "$@"
}

# locked FOLDER COMMAND...: runs what installs the npm packages of a folder, if its lock file changed since the last time.
locked() {
  local folder=$1
  shift
  if cmp -s "$folder/package-lock.json" "$folder/node_modules/.installed"; then return; fi
  "$@" ci >&2 || fail "npm packages could not be installed; the reason stands above."
  cp "$folder/package-lock.json" "$folder/node_modules/.installed"
}

# What building and testing the page takes.
web_packages() {
  if ! command -v node >/dev/null || ! command -v npm >/dev/null; then install_missing "$root/packages/node.txt"; fi
  locked "$root/tools/node" npm --prefix "$root/tools/node"
  locked "$root/web" web_npm
}

# web_build FOLDER: the page, into FOLDER/web, where the program looks for it. Silent when there is nothing to do.
web_build() {
  local stamp=$1/web.built
  if [[ -f $stamp && -f $1/web/index.html ]] &&
    [[ -z $(find "$root/web" "$root/shelf" "$root/wasm" -name node_modules -prune -o -type f -newer "$stamp" -print -quit) ]]; then
    return
  fi
  web_packages
  touch "$stamp.new"
  FORECOURSE_WEB_OUT=$1/web web_npm run --silent build >&2 ||
    fail "the page of the workbench could not be built; the reason stands above."
  mv "$stamp.new" "$stamp"
}
