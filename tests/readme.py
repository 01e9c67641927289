# SPDX-License-Identifier: MIT
"""Runs every `$ faywright ...` of the README and holds the printed lines against what the program prints.

A line `...` in the README stands for any number of lines left out."""
import pathlib
import re
import shlex
import subprocess
import sys

program, root = (pathlib.Path(p).resolve() for p in sys.argv[1:3])
blocks = re.findall(r"```console\n(.*?)```", (root / "README.md").read_text(), re.S)
bad = ran = 0
for block in blocks:
    for command, shown in re.findall(r"^\$ faywright ([^\n]*)\n((?:(?!\$ ).*\n)*)", block, re.M):
        ran += 1
        run = subprocess.run([program, *shlex.split(command)], capture_output=True, text=True, cwd=root)
        printed = (run.stdout + run.stderr).splitlines()
        at = 0
        skipping = False
        for line in shown.splitlines():
            if line.strip() == "...":
                skipping = True
                continue
            if skipping:
                while at < len(printed) and printed[at].rstrip() != line.rstrip():
                    at += 1
                skipping = False
            if at >= len(printed) or printed[at].rstrip() != line.rstrip():
                bad += 1
                print(f"README: faywright {command}: not printed: {line!r}; there stands {printed[at] if at < len(printed) else 'the end'!r}")
                break
            at += 1
print(f"{ran} commands of the README ran, {bad} differ")
sys.exit(1 if bad or not ran else 0)
