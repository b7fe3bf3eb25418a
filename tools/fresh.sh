#!/usr/bin/env bash
# Are the generated files in the tree still what the program generates?
#
#   tools/fresh.sh PROGRAM           compares, and says which command brings a stale file up to date
#   tools/fresh.sh PROGRAM --write   writes them anew
#
# One line a generated file: FILE: ARGUMENTS OF THE PROGRAM
set -euo pipefail
generated="
schema/site.schema.json: schema
"

root=$(cd -- "$(dirname -- "${BASH_SOURCE[0]}")/.." && pwd -P)
program=$1
mode=${2:-compare}
new=$(mktemp)
trap 'rm -f -- "$new"' EXIT
stale=0
while IFS=: read -r file arguments; do
  read -ra arguments <<<"$arguments"
  if ! "$program" --help | grep -qE "^ +${arguments[0]}( |\$)"; then
    echo "$file: the program has no command '${arguments[0]}' yet"
    continue
  fi
  if ! "$program" "${arguments[@]}" >"$new"; then
    echo "$file: 'forecourse ${arguments[*]}' failed"
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
    echo "$file: stale; write it anew with: tools/fresh.sh build/release/forecourse --write"
    stale=1
  fi
done < <(sed '/^$/d' <<<"$generated")
exit "$stale"
