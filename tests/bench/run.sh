#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# Speed, as ratios measured in this run: what the types cost, full assessments a second, and the start of the program.
set -euo pipefail
cd "$(dirname "$0")/../.."
missing=()
for package in libbenchmark-dev hyperfine jq; do dpkg -s "$package" >/dev/null 2>&1 || missing+=("$package"); done
if ((${#missing[@]})); then apt-get update -qq && apt-get install -y -qq --no-install-recommends "${missing[@]}" >/dev/null; fi
cmake --preset bench >/dev/null
cmake --build --preset bench
build=build/bench
for name in units assess search couple; do
  "$build/tests/bench/bench_$name" --benchmark_repetitions=5 --benchmark_report_aggregates_only=true \
    --benchmark_out_format=json --benchmark_out="$build/$name.json" >/dev/null
done
hyperfine -N --warmup 20 --runs 200 --export-json "$build/start.json" "$build/faywright --version" \
  "$build/faywright check cli/demo/drawbar.toml" "$build/faywright report cli/demo/drawbar.toml --output $build/report" >/dev/null
places=(inland\ farm C3 C4 surf\ coast surf\ beach launched,\ not\ rinsed)
hyperfine -N -i --warmup 5 --runs 50 --export-json "$build/isolate.json" "$build/faywright --version" \
  "$build/faywright isolate cli/demo/drawbar.toml$(printf " --exposure '%s'" "${places[@]}")" >/dev/null
median() { jq -r --arg n "$2_median" '.benchmarks[] | select(.name == $n) | .'"$3" "$build/$1.json"; }
echo
jq -rn --argjson u "$(median units with_units cpu_time)" --argjson b "$(median units bare cpu_time)" \
  '"quantities over bare doubles            \($u / $b * 1000 | round / 1000)   (wanted: at most 1.02)"'
jq -rn --argjson n "$(median assess same_section items_per_second)" '"assessments a second, same section      \($n | round)   (wanted: 100000)"'
jq -rn --argjson n "$(median assess new_section items_per_second)" '"assessments a second, a new section each \($n | round)"'
jq -rn --argjson n "$(median assess same_section allocations)" '"allocations in an assessment            \($n)   (wanted: 0)"'
jq -rn --argjson n "$(median search every_one/real_time items_per_second)" '"variants a second, every one            \($n | round)"'
jq -rn --argjson q "$(median search quick/real_time items_per_second)" --argjson n "$(median search every_one/real_time items_per_second)" \
  '"quick search over every one            \($q / $n * 10 | round / 10)   (wanted: 10)"'
jq -rn --argjson t "$(median search every_one_on_two/real_time items_per_second)" --argjson n "$(median search every_one/real_time items_per_second)" \
  '"two threads over one                   \($t / $n * 100 | round / 100)   (wanted: 1.9)"'
jq -rn --argjson n "$(median assess drawn items_per_second)" --argjson a "$(median assess same_section items_per_second)" \
  '"joints drawn a second, over assessments  \($n / $a * 100 | round / 100)   (wanted: at least 1)"'
jq -rn --argjson n "$(median assess drawn allocations)" '"allocations for each joint drawn        \($n)   (wanted: below 0.01: some for each block)"'
jq -r '"check of the demo over --version        \(.results[1].median / .results[0].median * 100 | round / 100)   (wanted: at most 3)"' "$build/start.json"
jq -r '"report of the demo over --version       \(.results[2].median / .results[0].median * 100 | round / 100)   (wanted: at most 10)"' "$build/start.json"
jq -r '"isolate, six exposures, over --version   \(.results[1].median / .results[0].median * 10 | round / 10)   (wanted: at most 20)"' "$build/isolate.json"
jq -rn --argjson n "$(median couple couple/2 items_per_second)" '"mixed potentials a second, two metals    \($n | round)"'
jq -rn --argjson n "$(median couple couple/4 items_per_second)" '"mixed potentials a second, four metals   \($n | round)"'
