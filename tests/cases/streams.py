# SPDX-License-Identifier: MIT
"""What becomes of the output: full and closed streams, links, pipes, the joint file itself. A silent loss must not read as a pass."""
import os
import pathlib
import pty
import select
import signal
import subprocess
import sys
import tempfile
import time

program, root = sys.argv[1], pathlib.Path(sys.argv[2])
demo = str(root / "cli/demo/drawbar.toml")
checked = 0


def status(line, wanted, holds=""):
    """Runs `line` in a shell, $F being the program and $D the demo; its exit status and a piece of what it prints are as wanted."""
    global checked
    checked += 1
    run = subprocess.run(["bash", "-c", line], capture_output=True, text=True, cwd=folder, env=os.environ | {"F": program, "D": demo}, errors="replace")
    if run.returncode != wanted or holds not in run.stderr + run.stdout:
        sys.exit(f"{line}\n  status {run.returncode}, wanted {wanted}; wanted words: {holds}\n{run.stdout}{run.stderr}")
    return run


with tempfile.TemporaryDirectory() as name:
    folder = pathlib.Path(name)
    lost = "standard output cannot be written"
    for words in ("check $D", "--help", "--version", "", "table", "calc", "torque", "check $D --format json", "check $D --explain slip"):
        status(f'"$F" {words} >/dev/full', 3, lost)
        status(f'"$F" {words} >&-', 3, lost)
    for words in ("check nowhere.toml", "chek", "check"):
        status(f'"$F" {words} 2>/dev/full', 2)
        status(f'"$F" {words} 2>&-', 2)
    status('"$F" check - <&-', 2, "standard input cannot be read")
    status('"$F" check - </', 2, "standard input cannot be read")
    status('"$F" check "$D" -o result <&- >&- 2>&-', 0)

    whole = status('"$F" check "$D"', 0).stdout
    status('"$F" check "$D" -o plain && cat plain', 0, whole)
    status('touch kept && chmod 640 kept && ln -s kept link && "$F" check "$D" -o link && test -L link && stat -c %a kept && cat kept', 0, "640\n" + whole)
    status('ln -s to-be dangling && "$F" check "$D" -o dangling && test -L dangling && cat to-be', 0, whole)
    status('mkfifo pipe && (cat pipe >got &) && "$F" check "$D" -o pipe && test -p pipe && sleep 0.2 && cat got', 0, whole)
    status('"$F" check "$D" -o /dev/stdout | cat', 0, whole)
    status('"$F" check "$D" -o /dev/full', 3, "cannot be written")
    status('"$F" check "$D" -o .', 3, "cannot be written")
    status('"$F" check "$D" -o nowhere/file', 3, "cannot be written")
    status('long=$(printf "x%.0s" {1..255}); "$F" check "$D" -o "$long" && cat "$long"', 0, whole)
    status('(ulimit -f 1; "$F" check "$D" -o limited) || test ! -e limited', 0)
    status('cp "$D" own.toml && "$F" check own.toml -o own.toml', 2, "is an input itself")
    status('cp "$(dirname "$D")/offers/stainless.toml" offer.toml && "$F" substitute "$D" offer.toml -o offer.toml', 2, "is an input itself")
    status('cp "$(dirname "$D")/offers.csv" list.csv && "$F" substitute "$D" --offers list.csv -o list.csv', 2, "is an input itself")
    status('"$F" report "$D" -o own.toml', 3, "is no folder")
    status('mkdir -p sheets/holes-1-drawbar.svg && "$F" report "$D" -o sheets', 3, "nothing was written")
    status('test "$(ls sheets)" = holes-1-drawbar.svg', 0)
    status('ln -s own.toml other.toml; "$F" check own.toml -o other.toml', 2, "is an input itself")
    status('cmp "$D" own.toml', 0)
    # A batch under GNU parallel: the same lines in the same order as in one run.
    joints = [str(path) for path in sorted((root / "cli/demo").glob("*.toml")) if path.stem != "trailer"] * 5
    (folder / "list").write_text("\n".join(joints) + "\n")
    alone = status('"$F" check --batch <list', 0).stdout
    status("parallel --will-cite -k -j 2 --pipe -N 3 '\"$F\" check --batch' <list", 0, alone)
    if len(alone.splitlines()) != len(joints):
        sys.exit("a batch has not a line for each joint")
    # A search far too long to wait for: Ctrl-C gives what it has, the bar stands on a terminal only.
    wide = pathlib.Path(demo).with_name("drawbar-choices.toml").read_text().replace('step = "20 mm"', 'step = "0.001 mm"').replace('to = "260 mm"', 'to = "60.9 mm"')
    wide = wide.replace("[choices]", '[choices]\n"tightening.proof-utilisation" = {from = 0.4, to = 0.89, step = 0.01}\n"pattern.pitch-y" = {from = "40 mm", to = "41 mm", step = "0.01 mm"}')
    (folder / "wide.toml").write_text(wide)
    run = subprocess.Popen([program, "size", "wide.toml"], cwd=folder, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True)
    time.sleep(1.5)
    run.send_signal(signal.SIGINT)
    told, complained = run.communicate(timeout=60)
    if run.returncode not in (0, 1) or "INCOMPLETE: ended early after" not in told or complained:
        sys.exit(f"Ctrl-C: status {run.returncode}\n{told[:400]}\n{complained[:400]}")
    try:
        ours, theirs = pty.openpty()
    except OSError:
        print("no terminal is to be had here: the bar was not looked at")
    else:
        run = subprocess.Popen([program, "size", "wide.toml", "--quick"], cwd=folder, stdout=subprocess.PIPE, stderr=theirs, text=True)
        drawn = b""
        while b"searching" not in drawn or b"%" not in drawn:
            if not select.select([ours], [], [], 60)[0]:
                sys.exit("no bar on a terminal")
            drawn += os.read(ours, 4096)
        run.send_signal(signal.SIGINT)
        told = run.communicate(timeout=60)[0]
        if run.returncode not in (0, 1) or "INCOMPLETE" not in told or "searching" in told:
            sys.exit(f"Ctrl-C on a terminal: status {run.returncode}\n{told[:400]}")
    checked += 2
    if list(folder.glob(".faywright-*")):
        sys.exit("a half-written file was left behind")
    for line in ("check $'a\\e[2Jb\\xff'", "$'ch\\e[2J'", "check \"$D\" --explain $'\\xc2\\x9b31m'", "table $'\\u202ex'", "torque --size $'\\e[2J'"):
        shown = status(f'"$F" {line}', 2).stderr
        if any(ord(c) < 32 and c != "\n" or c in "\x7f\x9b\u202e\ufffd" for c in shown):
            sys.exit(f"{line}: what a terminal would obey is printed: {shown!r}")
print(f"{checked} streams as they should be")
