#!/usr/bin/env bash
# The drawing tests read PDFs back with independent tools from Debian's packages, and the browser tests drive its Chromium. Installs them when they are missing and
# this is a Debian machine with rights to do so; otherwise says what to install and leaves the tests to report it.
set -euo pipefail
missing=()
command -v pdftotext >/dev/null || missing+=(poppler-utils)
command -v qpdf >/dev/null || missing+=(qpdf)
command -v chromium >/dev/null || command -v google-chrome >/dev/null || missing+=(chromium)
[ ${#missing[@]} -eq 0 ] && exit 0
if command -v apt-get >/dev/null && [ "$(id -u)" = 0 ]; then
  apt-get update -qq && apt-get install -y -qq --no-install-recommends "${missing[@]}" >/dev/null
else
  echo "Please install: ${missing[*]} (Debian packages; the tests read PDFs back and look at the app with them)" >&2
fi
