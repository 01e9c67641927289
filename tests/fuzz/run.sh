#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# Fuzzes the readers: run.sh SECONDS. A crash is left in build/fuzz and fails the run; make it a named regression case.
set -euo pipefail
cd "$(dirname "$0")/../.."
seconds=${1:-60}
mkdir -p build/fuzz/corpus/{designation,joint,offer,offers,quantity,site,table,trailer}
cmake --preset asan-ubsan >/dev/null
cmake --build --preset asan-ubsan >build/fuzz.log 2>&1 || { grep -E "error" build/fuzz.log | cut -c1-300 >&2; exit 1; }
for name in designation joint offer offers quantity site table trailer; do
  seeds=()
  [[ $name == joint || $name == trailer ]] && seeds=(cli/demo)
  [[ $name == offers ]] && { mkdir -p build/fuzz/lists; cp cli/demo/offers.csv build/fuzz/lists/; seeds=(build/fuzz/lists); }
  [[ $name == offer ]] && seeds=(cli/demo/offers)
  [[ $name == site ]] && seeds=(cli/demo/sites)
  [[ $name == designation ]] && seeds=(tests/fuzz/designations)
  [[ $name == table ]] && { mkdir -p build/fuzz/seeds; cp data/threads.toml data/layers.toml build/fuzz/seeds/; seeds=(build/fuzz/seeds); }
  build/asan-ubsan/tests/fuzz/fuzz_$name build/fuzz/corpus/$name "${seeds[@]}" -max_total_time="$seconds" -max_len=16384 -timeout=10 \
    -artifact_prefix=build/fuzz/ -print_final_stats=1 >build/fuzz/$name.log 2>&1 || { tail -30 build/fuzz/$name.log >&2; exit 1; }
  grep -E "number_of_executed_units" build/fuzz/$name.log | sed "s/^stat::number_of_executed_units: */fuzz $name: runs /"
done
