#!/usr/bin/env bash
# The drawing tests read PDFs back with independent tools from Debian's packages. Installs them when they are missing and
# this is a Debian machine with rights to do so; otherwise says what to install and leaves the tests to report it.
set -euo pipefail
missing=()
command -v pdftotext >/dev/null || missing+=(poppler-utils)
command -v qpdf >/dev/null || missing+=(qpdf)
[ ${#missing[@]} -eq 0 ] && exit 0
if command -v apt-get >/dev/null && [ "$(id -u)" = 0 ]; then
  apt-get update -qq && apt-get install -y -qq --no-install-recommends "${missing[@]}" >/dev/null
else
  echo "Please install: ${missing[*]} (Debian packages; the PDF tests read the sheets back with them)" >&2
fi
