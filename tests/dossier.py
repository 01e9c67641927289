# SPDX-License-Identifier: MIT
"""Makes reports/verification.md from the published cases as they run, or with --check holds the committed one against them."""
import collections
import json
import os
import pathlib
import subprocess
import sys
import tempfile

tests, program, root = (pathlib.Path(p).resolve() for p in sys.argv[1:4])
check = "--check" in sys.argv
with tempfile.TemporaryDirectory() as folder:
    log = pathlib.Path(folder) / "log"
    run = subprocess.run([tests, "--test-suite=published/*"], env={**os.environ, "FAYWRIGHT_PUBLISHED_LOG": str(log)}, capture_output=True, text=True)
    if run.returncode:
        sys.exit(run.stdout[-2000:])
    rows = [line.split("\t") for line in log.read_text().splitlines()]

# Finite-element values are held to the stated error of each form, not to printed digits: counted apart.
elements = [row for row in rows if row[3] == "practice"]
rows = [row for row in rows if row[3] != "practice"]
by_document = collections.OrderedDict()
for document, edition, place, basis, what, theirs, ours, unit, agrees in sorted(rows):
    by_document.setdefault((document, edition, basis), []).append((place, what, theirs, ours, unit, agrees))
agreed = sum(1 for row in rows if row[8] == "agrees")
differing = sorted({tuple(row) for row in rows if row[8] != "agrees"})
tables = json.loads(subprocess.run([program, "table", "--format", "json"], capture_output=True, text=True, check=True).stdout)["tables"]

out = ["# Verification dossier", "",
       "Made by `bash reports/regenerate.sh` from the published cases as they run; the suite fails when this page is not what they say.", "",
       f"{len(rows)} printed answers are compared, {agreed} agree within half a unit of their last printed digit, {len(rows) - agreed} do not. "
       "Basis `published`: the answer was read in the document or a reprint of it; `memory`: it was recalled from it. "
       f"Apart from these, {len(elements)} finite-element values are compared within the stated error of each form "
       "(`tests/published/finite_element.cpp`).", "",
       "## Compared, by document", "", "| document | edition | basis | answers | agree |", "|---|---|---|---:|---:|"]
for (document, edition, basis), cases in by_document.items():
    out.append(f"| {document} | {edition} | {basis} | {len(cases)} | {sum(1 for c in cases if c[5] == 'agrees')} |")
out += ["", "## What does not come out", "", "Each stands in the tests as a case that must fail, with the reason in its name.", "",
        "| document | place | quantity | printed | ours | unit |", "|---|---|---|---:|---:|---|"]
for document, edition, place, basis, what, theirs, ours, unit, _ in differing:
    out.append(f"| {document} | {place} | {what} | {theirs} | {ours} | {unit} |")
out += ["", "## What the tables stand on", "", "| table | rows | published | memory | practice |", "|---|---:|---:|---:|---:|"]
for table in tables:
    out.append(f"| {table['name']} | {table['rows']} | {table['published']} | {table['memory']} | {table['practice']} |")
out += ["", (root / "reports/limits.md").read_text().rstrip(), ""]
text = "\n".join(out)
page = root / "reports/verification.md"
if not check:
    page.write_text(text)
elif not page.exists() or page.read_text() != text:
    sys.exit("reports/verification.md is not what the published cases say; run bash reports/regenerate.sh and look at the change")
print(f"{len(rows)} printed answers, {agreed} agree")
