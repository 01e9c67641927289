# SPDX-License-Identifier: MIT
"""Holds the JSON of check, isolate, substitute, couples, loads, calc, size and of a batch against the published schemas."""
import json
import pathlib
import subprocess
import sys

import jsonschema

program, root = (pathlib.Path(p).resolve() for p in sys.argv[1:3])


def printed(*arguments):
    run = subprocess.run([program, *arguments, "--format", "json"], capture_output=True, text=True, cwd=root)
    assert run.returncode in (0, 1), run.stderr

    def refuse(word):
        raise ValueError(f"{word} in the output of {arguments}")

    return json.loads(run.stdout, parse_constant=refuse)


def schema(name):
    return json.loads((root / "reports/schema" / name).read_text())


documents = 0
trailer = root / "cli/demo/trailer.toml"
loads = printed("loads", str(trailer))
jsonschema.validate(loads, schema("loads-v1.json"))
documents += 1
for body in [c["free_body"] for c in loads["coupling"] if "free_body" in c] + [b for j in loads["joints"] for b in j.get("drawbar", [])]:
    for left in body["left_over"].values():
        assert left["unit"] in ("N", "N*m") and left["value"] < 1e-6, body
isolate = schema("isolate-v1.json")
for joint in sorted(set(root.glob("cli/demo/*.toml")) - {trailer}):
    answer = printed("check", str(joint))
    jsonschema.validate(answer, schema("check-v1.json"))
    ids = {check["id"] for check in answer["checks"]}
    assert answer["governing"] in ids | {"corrosion-life"}
    failed = any(check["status"] == "fail" for check in answer["checks"])
    assert (answer["verdict"] == "fail") == (failed or answer["corrosion"]["status"] == "fail"), joint
    assert (answer["governing"] == "corrosion-life") == (not failed and answer["corrosion"]["status"] == "fail"), joint
    for exposure in ["surf beach"] if joint.stem != "drawbar" else ["C1", "brined winter roads"]:
        ranking = printed("isolate", str(joint), "--exposure", exposure, *(["--all"] if joint.stem == "bracket" else []))
        jsonschema.validate(ranking, isolate)
        states = [result["status"] for result in ranking["results"]]
        assert states == sorted(states, key=["pass", "fail", "cannot-be-built"].index), joint
        assert sum(result["as_written"] for result in ranking["results"]) <= 1, joint
        documents += 1
    documents += 1
    drawn = printed("check", str(joint), "--uncertainty", "--samples", "1000")
    jsonschema.validate(drawn, schema("check-v1.json"))
    uncertainty = drawn.pop("uncertainty")
    assert drawn == answer, joint
    known = [entry["id"] for entry in uncertainty["inputs"]]
    for response in uncertainty["responses"]:
        assert "ranking" not in response or list(response["ranking"]["shares"]) == known, joint
    documents += 1
substitute = schema("substitute-v1.json")
order = ["accept", "accept with changes", "ask", "refuse", "not readable"]
for joint in ("drawbar", "suspension", "through-tube", "bracket"):
    for offer in sorted(root.glob("cli/demo/offers/*.toml")):
        review = printed("substitute", f"cli/demo/{joint}.toml", str(offer))
        jsonschema.validate(review, substitute)
        assert review["governing"] == review["reasons"][0]["rule"], joint
        weights = [reason["weight"] for reason in review["reasons"]]
        assert (review["verdict"] == "refuse") == ("refuse" in weights), joint
        documents += 1
    list_of_offers = printed("substitute", f"cli/demo/{joint}.toml", "--offers", "cli/demo/offers.csv", "--exposure", "surf coast")
    jsonschema.validate(list_of_offers, substitute)
    verdicts = [offer["verdict"] for offer in list_of_offers["offers"]]
    assert len(verdicts) == 16 and verdicts == sorted(verdicts, key=order.index), joint
    documents += 1
calc = schema("calc-v1.json")
for arguments in (
    ["bearing", "bolt-diameter=20 mm", "hole-diameter=22 mm", "thickness=12 mm", "ultimate-strength=430 MPa",
     "bolt-ultimate-strength=800 MPa", "end-distance=40 mm", "edge-distance=30 mm", "method=EN 1993-1-8"],
    ["thread-geometry", "nominal-diameter=12 mm", "pitch=1.75 mm"],
    ["bolt-group-in-plane", 'positions=[["0 mm","0 mm"],["60 mm","80 mm"]]', "force-x=0 kN", "force-y=10 kN", "moment=0 N*m"],
):
    jsonschema.validate(printed("calc", *arguments), calc)
    documents += 1
for arguments in (["--exposure", "surf coast"], ["--all"], ["--explain", "zinc", "carbon steel", "--area-ratio", "3"],
                  ["--exposure", "launched, not rinsed", "--isolation", "EPDM gasket", "--with", "zinc"]):
    jsonschema.validate(printed("couples", *arguments), schema("couples-v1.json"))
    documents += 1
size = schema("size-v1.json")
for more in ([], ["--quick"], ["--objective", "parts", "--target", "0.95"], ["--target", "0.05"]):
    answer = printed("size", "cli/demo/drawbar-choices.toml", *more)
    jsonschema.validate(answer, size)
    assert bool(answer["best"]) == (more != ["--target", "0.05"])
    documents += 1
lines = subprocess.run([program, "check", "--batch"], input=(root / "tests/cases/batch.txt").read_bytes(), capture_output=True, cwd=root)
for line in lines.stdout.decode().splitlines():
    jsonschema.validate(json.loads(line), schema("batch-v1.json"))
    documents += 1
print(f"{documents} documents hold to their schema")
