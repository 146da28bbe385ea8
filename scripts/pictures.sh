#!/usr/bin/env bash
# Makes the README's pictures from the examples: draws both sets and turns a few sheets into small PNGs (needs poppler-utils).
set -euo pipefail
cd "$(dirname "$0")/.."
tmp=$(mktemp -d)
trap 'rm -rf "$tmp"' EXIT
mkdir -p docs/pictures
shot() { # example, sheet, name
  node bin/eavewright.js draw "examples/$1/project.json" -o "$tmp/$3" --only "$2" >/dev/null 2>&1 || [ $? = 1 ]
  pdftoppm -r 38 -png -singlefile "$tmp/$3/set.pdf" "docs/pictures/$3"
}
shot 01-gable-scissor-kept-slab A-201 elevations
shot 01-gable-scissor-kept-slab A-301 section
shot 02-shed-snow-two-storey S-501 detail
shot 02-shed-snow-two-storey S-101 footing-plan
shot 04-free-gable-knee-braces S-301 load-path
shot 05-l-shape-two-roofs S-102 beam-plan
