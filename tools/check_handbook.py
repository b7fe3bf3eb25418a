#!/usr/bin/env python3
"""Runs what the handbook shows and looks for what it shows.

    tools/check_handbook.py PROGRAM PAGE...

A fenced block that begins with `$ forecourse ARGUMENTS` holds a call and its output; a line `...` stands for lines
left out. The output, standard error after standard output, must hold the stretches between in their order. Calls are
made from the root, those of a file in docs/handbook/files from there.
"""

import os
import pathlib
import re
import shlex
import subprocess
import sys

ROOT = pathlib.Path(__file__).resolve().parent.parent
FILES = ROOT / "docs" / "handbook" / "files"


def plain(text):
    """No-break spaces as spaces: they do not show."""
    return text.replace("\u00a0", " ")


def blocks(text):
    """(line, call, shown lines) of each fenced block that begins with a call."""
    for block in re.finditer(r"^```text\n\$ forecourse ([^\n]*)\n(.*?)^```", text, re.M | re.S):
        yield text.count("\n", 0, block.start()) + 2, block.group(1), plain(block.group(2)).splitlines()


def stretches(shown):
    """The runs of lines between lines `...`."""
    parts, part = [], []
    for line in shown + ["..."]:
        if line.strip() == "...":
            if part:
                parts.append(part)
            part = []
        else:
            part.append(line.rstrip())
    return parts


def output_of(program, call):
    """What a call prints on a terminal of 80 columns."""
    words = shlex.split(call)
    folder = FILES if any((FILES / word).is_file() for word in words) else ROOT
    environment = dict(os.environ, COLUMNS="80", NO_COLOR="1")
    done = subprocess.run([program, *words], cwd=folder, env=environment, capture_output=True, text=True)
    return [line.rstrip() for line in plain(done.stdout + done.stderr).splitlines()]


def place_of(part, printed, start):
    """Where a stretch begins at or after `start`, or None."""
    for at in range(start, len(printed) - len(part) + 1):
        if printed[at : at + len(part)] == part:
            return at
    return None


def first_missing(shown, printed):
    """The first stretch that is not printed, or None."""
    at = 0
    for part in stretches(shown):
        found = place_of(part, printed, at)
        if found is None:
            return part
        at = found + len(part)
    return None


def main(program, pages):
    wrong = passed = 0
    for page in pages:
        for line, call, shown in blocks(pathlib.Path(page).read_text(encoding="utf-8")):
            missing = first_missing(shown, output_of(program, call))
            if missing is None:
                passed += 1
                continue
            wrong += 1
            print(f"{page}:{line}: `forecourse {call}` does not print:\n    " + "\n    ".join(missing))
    print(f"handbook: {passed} calls print what is shown, {wrong} do not")
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main(str(pathlib.Path(sys.argv[1]).resolve()), sys.argv[2:]))
