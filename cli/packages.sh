# SPDX-License-Identifier: MIT
# Sourced by try.sh and tests/run.sh: installs the Debian packages named, where any is missing.
install_missing() {
  local missing=() package
  for package in "$@"; do
    dpkg -s "$package" >/dev/null 2>&1 || missing+=("$package")
  done
  ((${#missing[@]})) || return 0
  if [[ $EUID -ne 0 ]]; then
    echo "these packages are missing; install them as root: ${missing[*]}" >&2
    return 3
  fi
  echo "installing ${missing[*]}" >&2
  export DEBIAN_FRONTEND=noninteractive
  apt-get update -qq && apt-get install -y -qq --no-install-recommends "${missing[@]}" >/dev/null
}

build_packages=(g++ cmake ninja-build libboost-dev libeigen3-dev libcli11-dev libtomlplusplus-dev libfmt-dev nlohmann-json3-dev libexpected-dev libcsv-dev nettle-dev)
