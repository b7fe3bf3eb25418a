#!/usr/bin/env bash
# Makes the report of each station, looks at it as a browser and a validator do, and sets its PDF on both papers; the
# same look at a comparison of the first station with itself, every hose limited to 8 gal/min in B, and at an incident
# of each kind.
#
#   tests/report/web/run.sh PROGRAM FOLDER SITE...
#
# The time of each PDF is printed beside its goal of 10 s; it fails only above 60 s, or without pages or fonts.
set -euo pipefail
root=$(cd -- "$(dirname -- "${BASH_SOURCE[0]}")/../../.." && pwd -P)
source "$root/tools/setup.sh"
here=$root/tests/report/web
program=$1
folder=$2
shift 2

install_missing "$root/packages/report.txt"
if [[ -z ${FORECOURSE_BROWSER:-} ]] && ! command -v chromium >/dev/null; then
  install_missing "$root/packages/browser.txt"
fi
if ! command -v node >/dev/null || ! command -v npm >/dev/null; then install_missing "$root/packages/node.txt"; fi
# npm is called only when the lock file changed since the last time.
if ! cmp -s "$here/package-lock.json" "$here/node_modules/.installed"; then
  npm ci --prefix "$here" --no-audit --no-fund
  cp "$here/package-lock.json" "$here/node_modules/.installed"
fi

# make SITE PAPER: findings about the station (exit code 1) are an answer too.
make() {
  local code=0
  "$program" study "$1" --out "$folder/$2/$(basename "$1" .toml)" --pdf --paper "$2" >/dev/null || code=$?
  ((code <= 1)) || { echo "exit code $code: $1 on $2" && return 1; }
}

rm -rf -- "$folder"
pages_of() { pdfinfo "$1" | awk '/^Pages:/ { print $2 }'; }
first=$1
reports=()
for site; do
  name=$(basename "$site" .toml)
  for paper in a4 letter; do
    start=$(milliseconds)
    make "$site" "$paper"
    took=$(($(milliseconds) - start))
    pdf=$folder/$paper/$name/report.pdf
    pages=$(pages_of "$pdf")
    loose=$(pdffonts "$pdf" | awk 'NR > 2 && $(NF - 4) != "yes"' | wc -l)
    fonts=$(pdffonts "$pdf" | awk 'NR > 2' | wc -l)
    echo "$name on $paper: $pages pages, $fonts fonts embedded, $((took / 1000)).$((took / 100 % 10)) s (goal 10 s)"
    ((pages > 0 && fonts > 0 && loose == 0 && took < 60000)) || { echo "$pdf: $loose fonts are not embedded" && exit 1; }
  done
  reports+=("$folder/a4/$name/report.html")
done
code=0
"$program" compare "$first" --set 'hose.*.limiter=8 gpm' --out "$folder/compare" >/dev/null || code=$?
((code <= 1)) || { echo "exit code $code: comparison of $first" && exit 1; }
# An incident of each kind, one of them with drawn inputs.
incident() {
  local code=0
  "$program" incident "$@" --out "$folder/incidents" >/dev/null || code=$?
  ((code <= 1)) || { echo "exit code $code: incident $*" && exit 1; }
}
incident "$root/sites/hollin-gap.toml" crack
incident "$root/sites/hollin-gap.toml" drive-off
incident "$root/sites/hollin-gap.toml" sump-fire
incident "$root/sites/hollin-gap.toml" overfill
incident "$root/sites/hollin-gap.toml" line-break --at regular-gap-2 --stop-at "90 s"
incident "$root/sites/hollin-gap.toml" nozzle-left-open --at D4.diesel-a --stop-at "2 min"
incident "$root/sites/hollin-gap.toml" struck --runs 200
node "$here/check.mjs" "${reports[@]}" "$folder/compare/compare.html" "$folder"/incidents/*.html
