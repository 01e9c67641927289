#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# Makes the dossier and the example documents again from the release build.
set -euo pipefail
cd "$(dirname "$0")/.."
build=${1:-build/release}
/usr/bin/python3 tests/dossier.py "$build/tests/faywright_tests" "$build/faywright" .
bash reports/examples.sh "$build/faywright" reports/examples
