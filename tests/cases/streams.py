# SPDX-License-Identifier: MIT
"""What becomes of the output: full and closed streams, links, pipes, the joint file itself. A silent loss must not read as a pass."""
import os
import pathlib
import subprocess
import sys
import tempfile

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
    status('cp "$D" own.toml && "$F" check own.toml -o own.toml', 2, "is the input itself")
    status('ln -s own.toml other.toml; "$F" check own.toml -o other.toml', 2, "is the input itself")
    status('cmp "$D" own.toml', 0)
    # A batch under GNU parallel: the same lines in the same order as in one run.
    joints = [str(path) for path in sorted((root / "cli/demo").glob("*.toml"))] * 5
    (folder / "list").write_text("\n".join(joints) + "\n")
    alone = status('"$F" check --batch <list', 0).stdout
    status("parallel --will-cite -k -j 2 --pipe -N 3 '\"$F\" check --batch' <list", 0, alone)
    if len(alone.splitlines()) != len(joints):
        sys.exit("a batch has not a line for each joint")
    if list(folder.glob(".faywright-*")):
        sys.exit("a half-written file was left behind")
    for line in ("check $'a\\e[2Jb\\xff'", "$'ch\\e[2J'", "check \"$D\" --explain $'\\xc2\\x9b31m'", "table $'\\u202ex'", "torque --size $'\\e[2J'"):
        shown = status(f'"$F" {line}', 2).stderr
        if any(ord(c) < 32 and c != "\n" or c in "\x7f\x9b\u202e\ufffd" for c in shown):
            sys.exit(f"{line}: what a terminal would obey is printed: {shown!r}")
print(f"{checked} streams as they should be")
