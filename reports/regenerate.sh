#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# Makes the dossier again from the release build.
set -euo pipefail
cd "$(dirname "$0")/.."
build=${1:-build/release}
/usr/bin/python3 tests/dossier.py "$build/tests/faywright_tests" "$build/faywright" .
