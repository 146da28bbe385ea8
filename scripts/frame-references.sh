#!/usr/bin/env bash
# Solves the frames of test/verification/frames.test.ts again with CalculiX, a general-purpose finite-element program
# (Debian package calculix-ccx), and rewrites decks and results in test/verification/data/frames.
# The tests read those files and do not need the program.
set -euo pipefail
cd "$(dirname "$0")/.."
command -v ccx >/dev/null || { echo "Please install calculix-ccx (Debian package); nothing changed." >&2; exit 1; }
version=$(ccx -v | sed -n 's/.*Version *//p' | tr -d '[:space:]' || true)
exec node --import tsx scripts/frame-references.ts "$version"
