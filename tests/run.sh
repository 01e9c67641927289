#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# Installs what is missing, builds, runs every test. `tests/run.sh quick` leaves out the sanitizer build and the fuzzers.
set -euo pipefail
cd "$(dirname "$0")/.."
source cli/packages.sh
install_missing "${build_packages[@]}" doctest-dev librapidcheck-dev units python3-jsonschema python3-ezdxf libxml2-utils chromium chromium-driver python3-selenium python3-markdown-it python3-pil fonts-liberation poppler-utils tidy parallel clang libclang-rt-14-dev clang-format clang-tidy git
step() { echo "== $* ($((SECONDS)) s)"; }

step "format"
mapfile -t sources < <(find src cli tests data -name '*.[ch]pp' | sort)
clang-format --dry-run --Werror "${sources[@]}"

step "build with g++, warnings are errors"
cmake --preset release -DFAYWRIGHT_TESTS=ON -DCMAKE_COMPILE_WARNING_AS_ERROR=ON >/dev/null
cmake --build --preset release >build/release.log 2>&1 || { grep -E "error|warning" build/release.log | cut -c1-300 >&2; exit 1; }

step "tests"
ctest --preset release

if [[ ${1:-} != quick ]]; then
  step "build with clang++, address and undefined-behaviour sanitizers, warnings are errors"
  cmake --preset asan-ubsan -DCMAKE_COMPILE_WARNING_AS_ERROR=ON >/dev/null
  cmake --build --preset asan-ubsan >build/asan.log 2>&1 || { grep -E "error|warning" build/asan.log | cut -c1-300 >&2; exit 1; }
  step "tests under the sanitizers"
  FAYWRIGHT_RANDOM_JOINTS=30 ctest --preset asan-ubsan
  step "fuzz the readers for some seconds"
  bash tests/fuzz/run.sh 5
  step "clang-tidy on what the last commit changed"
  bash tests/lint.sh
fi
step "done"
