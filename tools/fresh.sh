#!/usr/bin/env bash
# Are the generated files in the tree still what the program generates?
#
#   tools/fresh.sh GENERATE           compares, and says which command brings a stale file up to date
#   tools/fresh.sh GENERATE --write   writes them anew
#
# GENERATE is the program built from tools/generate.cpp. One line a generated file: FILE: ITS ARGUMENT
set -euo pipefail
generated="
schema/site.schema.json: schema
docs/handbook/site-file.md: reference
docs/handbook/records-files.md: records
web/src/api/types.ts: types
web/src/api/units.ts: units
web/src/style/drawing.css: drawing-rules
"

root=$(cd -- "$(dirname -- "${BASH_SOURCE[0]}")/.." && pwd -P)
program=$1
mode=${2:-compare}
new=$(mktemp)
trap 'rm -f -- "$new"' EXIT
stale=0
while IFS=: read -r file arguments; do
  read -ra arguments <<<"$arguments"
  if ! "$program" "${arguments[@]}" >"$new"; then
    echo "$file: 'generate ${arguments[*]}' failed"
    stale=1
    continue
  fi
  if [[ $mode == --write ]]; then
    mkdir -p -- "$(dirname -- "$root/$file")"
    cp -- "$new" "$root/$file"
    echo "$file: written"
  elif cmp -s -- "$new" "$root/$file"; then
    echo "$file: fresh"
  else
    echo "$file: stale; write it anew with: tools/fresh.sh build/release/generate --write"
    stale=1
  fi
done < <(sed '/^$/d' <<<"$generated")
exit "$stale"
