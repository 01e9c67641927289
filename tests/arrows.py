# SPDX-License-Identifier: MIT
"""Reads the #include lines of src/ and cli/ and fails on an arrow that points up, or a heavy header outside its room."""
import pathlib
import re
import sys

ROOMS = {
    "quantity": {"quantity"},
    "mechanics": {"mechanics", "quantity"},
    "corrosion": {"corrosion", "quantity"},
    "input": {"input", "quantity"},
    "tables": {"tables", "input", "corrosion", "quantity"},
    "joint": {"joint", "tables", "input", "loads", "mechanics", "corrosion", "quantity"},
    "loads": {"loads", "mechanics", "quantity"},
    "assess": {"assess", "joint", "tables", "input", "loads", "mechanics", "corrosion", "quantity"},
    "report": {"report", "assess", "joint", "tables", "input", "loads", "mechanics", "corrosion", "quantity"},
    "cli": {"report", "assess", "joint", "tables", "input", "quantity"},
}
# Each heavy header has its rooms.
HEAVY = {"toml++": {"input"}, "CLI": {"cli"}, "nlohmann": {"input", "report"}, "Eigen": {"assess"}, "csv.h": {"input"}, "nettle": {"input"}}

root = pathlib.Path(sys.argv[1])
wrong = []
for path in sorted([*root.glob("src/**/*.[ch]pp"), *root.glob("cli/*.[ch]pp")]):
    room = path.relative_to(root / "src").parts[0] if "src" in path.relative_to(root).parts else "cli"
    for number, line in enumerate(path.read_text().splitlines(), 1):
        found = re.match(r'#include ["<](?P<first>[^/">]+)[/">]', line)
        if not found:
            continue
        first = found["first"]
        if first in ROOMS and first not in ROOMS[room]:
            wrong.append(f"{path}:{number}: {room} may not include {first}")
        if first in HEAVY and room not in HEAVY[first]:
            wrong.append(f"{path}:{number}: {first} has its room in {' and '.join(sorted(HEAVY[first]))}")
print("\n".join(wrong) or "arrows point down")
sys.exit(1 if wrong else 0)
