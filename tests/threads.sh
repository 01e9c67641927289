#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# What runs on several threads, under the thread sanitizer: a race ends it.
set -euo pipefail
cd "$(dirname "$0")/.."
source cli/packages.sh
install_missing "${build_packages[@]}" doctest-dev librapidcheck-dev clang libclang-rt-14-dev
cmake --preset tsan -DFAYWRIGHT_TESTS=ON >/dev/null
cmake --build --preset tsan >build/tsan.log 2>&1 || { grep -E "error|warning" build/tsan.log | cut -c1-300 >&2; exit 1; }
TSAN_OPTIONS=halt_on_error=1 build/tsan/tests/faywright_tests --test-case="*number of threads*,*threads*"
echo "no race seen"
