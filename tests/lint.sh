#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# clang-tidy on the sources the last commit and the work tree changed (four at most); with --all, on all of them.
set -euo pipefail
cd "$(dirname "$0")/.."
if [[ ${1:-} == --all ]]; then
  mapfile -t files < <(find src cli -name '*.cpp' | sort)
else
  # A first commit, or a shallow clone, has nothing to compare with.
  base=HEAD~1
  git rev-parse -q --verify "$base" >/dev/null 2>&1 || base=
  mapfile -t files < <({ [[ -n $base ]] && git diff --name-only --diff-filter=d "$base"; git ls-files -mo --exclude-standard; } 2>/dev/null |
    grep -E '^(src|cli)/.*\.cpp$' | sort -u | head -n 4)
fi
((${#files[@]})) || { echo "nothing to lint"; exit 0; }
printf '%s\n' "${files[@]}" | xargs -P2 -n1 clang-tidy --quiet -p build/asan-ubsan 2>/dev/null
echo "${#files[@]} files linted"
