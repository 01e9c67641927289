# SPDX-License-Identifier: MIT
"""Reads the hole drawings of the demo joints back with an independent library: every hole at its place, of its size, on its layer."""
import math
import pathlib
import re
import subprocess
import sys
import tempfile
import tomllib

import ezdxf

program, root = (pathlib.Path(p).resolve() for p in sys.argv[1:3])
wrong = []


def check(good, words):
    if not good:
        wrong.append(words)


def mm(text):
    number, unit = text.split()
    return float(number) * {"mm": 1.0, "m": 1000.0}[unit]


def drawn(joint, folder, status=0):
    run = subprocess.run([program, "report", joint, "--output", folder, "--only", "holes", "--only", "parts"], capture_output=True, text=True, cwd=root)
    check(run.returncode == status, f"{joint}: status {run.returncode}, wanted {status}: {run.stderr}")
    files = [pathlib.Path(line) for line in run.stdout.splitlines()]
    check(sorted(files) == sorted(folder.iterdir()), f"{joint}: what is told and what is there differ")
    return files


def places(file):
    page = ezdxf.readfile(file)
    check(page.dxfversion == "AC1009", f"{file.name}: {page.dxfversion}")
    check(not page.audit().errors, f"{file.name}: {page.audit().errors}")
    shapes = list(page.modelspace())
    layers = {shape.dxf.layer for shape in shapes}
    check(layers <= {"CUT_OUT", "CUT_IN", "MARK", "NOTE"}, f"{file.name}: layers {layers}")
    holes = [shape for shape in shapes if shape.dxftype() == "CIRCLE"]
    check(all(hole.dxf.layer == "CUT_IN" for hole in holes), f"{file.name}: a hole off its layer")
    outlines = [shape for shape in shapes if shape.dxf.layer == "CUT_OUT"]
    check(all(shape.dxftype() == "POLYLINE" and shape.is_closed for shape in outlines), f"{file.name}: an open outline")
    check(not any(shape.dxftype() == "TEXT" for shape in shapes if shape.dxf.layer.startswith("CUT")), f"{file.name}: text is cut")
    box = [v.dxf.location for shape in outlines for v in shape.vertices]
    for hole in holes:
        c, r = hole.dxf.center, hole.dxf.radius
        if box:
            inside = min(v.x for v in box) < c.x - r and c.x + r < max(v.x for v in box) and min(v.y for v in box) < c.y - r
            check(inside and c.y + r < max(v.y for v in box), f"{file.name}: a hole beyond the outline")
    return sorted((h.dxf.center.x, h.dxf.center.y, 2 * h.dxf.radius) for h in holes), outlines


with tempfile.TemporaryDirectory() as base:
    base = pathlib.Path(base)
    for name in ("drawbar", "suspension", "through-tube", "bracket"):
        joint = root / "cli/demo" / f"{name}.toml"
        told = subprocess.run([program, "check", joint], capture_output=True, text=True, cwd=root).stdout
        sizes = [float(size) for size in re.findall(r"^  hole in .*? ([0-9.]+) mm$", told, re.M)]
        files = drawn(joint, base / name)
        pages = sorted(f for f in files if f.suffix == ".dxf")
        check(len(pages) == len(sizes) > 0, f"{name}: {len(pages)} drawings for {len(sizes)} plies")
        text = tomllib.loads(joint.read_text())["pattern"]
        if "positions" in text:
            wanted = [(mm(x), mm(y)) for x, y in text["positions"]]
        else:
            columns, rows = text.get("columns", 1), text.get("rows", 1)
            px, py = mm(text.get("pitch-x", "0 mm")), mm(text.get("pitch-y", "0 mm"))
            wanted = [((i - (columns - 1) / 2) * px, (j - (rows - 1) / 2) * py) for i in range(columns) for j in range(rows)]
        wanted.sort()
        for page, size in zip(pages, sizes):
            holes, outlines = places(page)
            check(len(holes) == len(wanted), f"{page.name}: {len(holes)} holes, wanted {len(wanted)}")
            # The origin is the outline's corner: what must agree is each hole against the first.
            for (x, y, d), (wx, wy) in zip(holes, wanted):
                off = math.hypot(x - holes[0][0] - wx + wanted[0][0], y - holes[0][1] - wy + wanted[0][1])
                check(off < 1e-3, f"{page.name}: a hole {off} mm from its place")
                check(abs(d - size) < 1e-3, f"{page.name}: a hole of {d} mm, wanted {size}")
        for picture in (f for f in files if f.suffix == ".svg"):
            run = subprocess.run(["xmllint", "--noout", picture], capture_output=True, text=True)
            check(run.returncode == 0, f"{picture.name}: {run.stderr}")

    # Text of the joint file is data, in names of files too; and a joint that fails is no drawing to build from.
    hostile = (root / "cli/demo/drawbar.toml").read_text()
    hostile = re.sub(r"^title = .*$", lambda _: "title = '<script>alert(1)</script> \"&]]> \\U+0041 ^J %%u'", hostile, count=1, flags=re.M)
    hostile = hostile.replace('name = "drawbar"', "name = '../../<b>\"drawbar\" & co'", 1).replace('class = "8.8"', 'class = "4.6"', 1)
    (base / "hostile.toml").write_text(hostile)
    files = drawn(base / "hostile.toml", base / "hostile", status=1)
    check(all(re.fullmatch(r"holes-[A-Za-z0-9-]+\.(dxf|svg)|parts\.csv", f.name) for f in files), f"names {[f.name for f in files]}")
    for f in (f for f in files if f.suffix != ".csv"):
        if f.suffix == ".svg":
            run = subprocess.run(["xmllint", "--xpath", "count(//*[local-name()='script' or local-name()='b'])", f], capture_output=True, text=True)
            check(run.stdout.strip() == "0", f"{f.name}: markup of the title got in: {run.stdout} {run.stderr}")
            check("NOT TO BE BUILT" in f.read_text(), f"{f.name}: nothing says that the joint fails")
        else:
            notes = [t.dxf.text for t in ezdxf.readfile(f).modelspace() if t.dxftype() == "TEXT"]
            check(any("NOT TO BE BUILT" in t for t in notes), f"{f.name}: nothing says that the joint fails")
            check(any('<script>alert(1)</script> "&]]> \\ U+0041 ^ J % %u' in t for t in notes), f"{f.name}: the title is not shown as it is")
            check(f.read_bytes().isascii(), f"{f.name}: beyond ASCII")

print("\n".join(wrong) or "every hole is at its place")
sys.exit(1 if wrong else 0)
