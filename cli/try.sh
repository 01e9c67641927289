#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# Installs what is missing, builds the program, checks the demo's drawbar-to-rail joint, reviews a supplier's list for it, writes its documents.
set -euo pipefail
cd "$(dirname "$0")/.."
source cli/packages.sh
install_missing "${build_packages[@]}"
cmake --preset release -DFAYWRIGHT_TESTS=OFF >/dev/null
cmake --build --preset release >build/try.log 2>&1 || { cat build/try.log >&2; exit 3; }
echo "\$ faywright check cli/demo/drawbar.toml"
build/release/faywright check cli/demo/drawbar.toml
echo
echo "\$ faywright substitute cli/demo/drawbar.toml --offers cli/demo/offers.csv"
build/release/faywright substitute cli/demo/drawbar.toml --offers cli/demo/offers.csv
echo
echo "\$ faywright report cli/demo/drawbar.toml --output build/documents"
build/release/faywright report cli/demo/drawbar.toml --output build/documents
echo
echo "the program is build/release/faywright; next: build/release/faywright --help"
