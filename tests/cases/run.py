# SPDX-License-Identifier: MIT
"""Runs the program on the cases beside this file and compares what it prints with what was approved.

A case is NAME.case: lines of `args: ...` (shell words), `status: N`, and optionally `stdin: FILE`. Paths are those of the
project's root, where every case runs. NAME.approved.txt holds standard output, NAME.approved.err standard error. A difference
is written to the build folder; tests/approve.sh copies it here once a person has looked."""
import difflib
import os
import pathlib
import shlex
import subprocess
import sys

program, root, build = (pathlib.Path(p).resolve() for p in sys.argv[1:4])
here = pathlib.Path(__file__).parent
received = build / "received"
received.mkdir(exist_ok=True)
bad = 0
cases = sorted(here.glob("*.case"))
environment = {k: v for k, v in os.environ.items() if k not in ("NO_COLOR", "TERM", "LC_ALL", "LANG")}
for case in cases:
    fields = dict(line.split(":", 1) for line in case.read_text().splitlines() if ":" in line and not line.startswith("#"))
    stdin = (root / fields["stdin"].strip()).read_bytes() if "stdin" in fields else b""
    run = subprocess.run([program, *shlex.split(fields["args"])], input=stdin, capture_output=True, cwd=root, env=environment)
    problems = []
    if run.returncode != int(fields["status"]):
        problems.append(f"status {run.returncode}, wanted {fields['status'].strip()}")
    for suffix, output in ((".approved.txt", run.stdout), (".approved.err", run.stderr)):
        approved = case.with_name(case.stem + suffix)
        wanted = approved.read_text() if approved.exists() else ""
        got = output.decode(errors="replace")
        if got != wanted:
            (received / approved.name).write_text(got)
            problems += difflib.unified_diff(wanted.splitlines(), got.splitlines(), "approved", "received", lineterm="", n=1)
    if problems:
        bad += 1
        print(f"{case.name}: differs", *problems[:40], sep="\n  ")
print(f"{len(cases) - bad} of {len(cases)} cases agree")
sys.exit(1 if bad or not cases else 0)
