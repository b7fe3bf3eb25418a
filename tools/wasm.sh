# shellcheck shell=bash
# Shared by ./test and whoever puts the engine into a page: the engine as WebAssembly. To be sourced after
# tools/setup.sh.

# wasm_build FOLDER: build/wasm/engine.js, one file that holds all of the engine, and FOLDER/engine.packed, where the
# program looks for it. Silent when there is nothing to do.
wasm_build() {
  local folder=$root/build/wasm emscripten
  if ! command -v em++ >/dev/null; then install_missing "$root/packages/wasm.txt"; fi
  emscripten=$(dirname -- "$(readlink -f -- "$(command -v em++)")")
  if ! configured wasm "$root/wasm"; then
    mkdir -p -- "$folder"
    cmake -S "$root/wasm" -B "$folder" -G Ninja -DCMAKE_BUILD_TYPE=Release \
      -DCMAKE_TOOLCHAIN_FILE="$emscripten/cmake/Modules/Platform/Emscripten.cmake" >"$folder/configure.log" 2>&1 || {
      cat -- "$folder/configure.log" >&2
      fail "the build of the engine could not be configured"
    }
  fi
  build wasm
  cmp -s -- "$folder/engine.packed" "$1/engine.packed" || cp -- "$folder/engine.packed" "$1/engine.packed"
}
