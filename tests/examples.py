# SPDX-License-Identifier: MIT
"""Makes the example documents again and holds them, byte for byte, against reports/examples."""
import filecmp
import pathlib
import subprocess
import sys
import tempfile

program, root = (pathlib.Path(p).resolve() for p in sys.argv[1:3])
approved = root / "reports/examples"


def files(folder):
    return {f.relative_to(folder) for f in folder.rglob("*") if f.is_file()}


with tempfile.TemporaryDirectory() as made:
    made = pathlib.Path(made)
    subprocess.run(["bash", root / "reports/examples.sh", program, made], check=True)
    wrong = [f"{f}: made, but not among the examples" for f in sorted(files(made) - files(approved))]
    wrong += [f"{f}: among the examples, but not made" for f in sorted(files(approved) - files(made))]
    both = sorted(files(made) & files(approved))
    wrong += [f"{f}: differs" for f in both if not filecmp.cmp(made / f, approved / f, shallow=False)]
if wrong:
    print(*wrong, "look at what changed, then: bash reports/regenerate.sh", sep="\n")
print(f"{len(both)} examples made again")
sys.exit(1 if wrong or not both else 0)
