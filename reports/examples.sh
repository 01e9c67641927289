#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# Makes the example documents with a program into a folder: examples.sh PROGRAM FOLDER. Status 1 is a joint or an offer that fails.
set -euo pipefail
program=$(realpath "$1")
mkdir -p "$2"
out=$(realpath "$2")
cd "$(dirname "$0")/.."
make_set() {
  local folder=$1 status=0
  shift
  rm -rf "${out:?}/$folder"
  "$program" report "$@" --output "$out/$folder" >/dev/null || status=$?
  [[ $status -le 1 ]]
}
make_set drawbar cli/demo/drawbar.toml --joints 2
make_set drawbar-offered-stainless cli/demo/drawbar.toml --offer cli/demo/offers/stainless.toml --only comparison
make_set suspension cli/demo/suspension.toml --only sheet --only care
