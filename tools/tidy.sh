#!/usr/bin/env bash
# clang-tidy over src/: all files, or only those that changed.
#
#   tools/tidy.sh BUILD_DIR all|changed
#
# Changed is: against the commit in FORECOURSE_TIDY_BASE, else against the last commit before this one.
# A changed header is checked through the source file of the same name, if there is one.
set -euo pipefail
root=$(cd -- "$(dirname -- "${BASH_SOURCE[0]}")/.." && pwd -P)
folder=$(cd -- "$1" && pwd -P)
cd -- "$root"

changed() {
  local base=${FORECOURSE_TIDY_BASE:-HEAD~1}
  if git rev-parse --verify --quiet "$base^{commit}" &>/dev/null; then
    git diff --name-only --diff-filter=d "$base" -- src
    git ls-files --others --exclude-standard -- src
  else
    find src -name '*.cpp' -o -name '*.h'
  fi
}

if [[ $2 == all ]]; then
  mapfile -t sources < <(find src -name '*.cpp' | sort)
else
  mapfile -t sources < <(changed | sed -n 's/\.\(cpp\|h\)$/.cpp/p' | sort -u | while read -r file; do
    if [[ -f $file ]]; then printf '%s\n' "$file"; fi
  done)
fi
echo "clang-tidy: ${#sources[@]} files"
if ((${#sources[@]})); then
  # Warning switches of g++ that clang does not know are no fault of the code.
  printf '%s\0' "${sources[@]}" |
    xargs -0 -n 1 -P "$(nproc)" clang-tidy --quiet --extra-arg=-Wno-unknown-warning-option -p "$folder" \
      2> >(grep -vE '^[0-9]+ warnings? (generated|treated)' >&2)
fi
