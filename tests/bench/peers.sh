#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# The same sweep of bearing, torque and bolt group elsewhere: microseconds of one joint, as ratios of this run. No time is printed
# before all agree on the numbers.
set -euo pipefail
cd "$(dirname "$0")/../.."
missing=()
for package in libbenchmark-dev python3-numpy python3-pint octave; do dpkg -s "$package" >/dev/null 2>&1 || missing+=("$package"); done
if ((${#missing[@]})); then apt-get update -qq && apt-get install -y -qq --no-install-recommends "${missing[@]}" >/dev/null; fi
cmake --preset bench >/dev/null
cmake --build --preset bench --target bench_sweep
peers=tests/bench/peers
declare -A runs=(
  ["this library, units kept"]="build/bench/tests/bench/bench_sweep"
  ["NumPy, bare numbers"]="/usr/bin/python3 $peers/sweep_numpy.py"
  ["GNU Octave, bare numbers"]="octave --quiet --no-init-file $peers/sweep.m"
  ["Python with Pint, units kept"]="/usr/bin/python3 $peers/sweep_pint.py"
)
# One size for all, or the sums would differ: the mean over a sweep depends on its steps.
count=5000
reference=
declare -A time
for name in "${!runs[@]}"; do
  ${runs[$name]} "$count" >/dev/null
  read -r bearing torque greatest micro < <(${runs[$name]} "$count")
  : "${reference:=$bearing $torque $greatest}"
  awk -v a="$reference" -v b="$bearing $torque $greatest" 'BEGIN { split(a, x); split(b, y)
    for (i in x) if (x[i] == 0 || (x[i] - y[i]) ^ 2 > (1e-7 * x[i]) ^ 2) exit 1 }' ||
    { echo "$name gives $bearing $torque $greatest, another gave $reference" >&2; exit 1; }
  time[$name]=$micro
done
echo "bearing $(cut -d' ' -f1 <<<"$reference") N, torque $(cut -d' ' -f2 <<<"$reference") N*m, greatest bolt $(cut -d' ' -f3 <<<"$reference") N: all agree"
for name in "${!runs[@]}"; do
  awk -v n="$name" -v t="${time[$name]}" -v o="${time[this library, units kept]}" 'BEGIN { printf "%-30s %10.4f us a joint  %9.1f times\n", n, t, t / o }'
done | sort -k2 -t. -g -s
