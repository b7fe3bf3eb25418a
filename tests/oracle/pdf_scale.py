#!/usr/bin/env python3
"""Measures drawing.pdf with a general PDF tool (pdftocairo): each measured distance is as long on paper as it says.

    pdf_scale.py FOLDER...

Each folder holds draw.json and drawing.pdf of `forecourse draw --out --pdf`. The pages are as large as the paper.
"""

import json
import pathlib
import re
import subprocess
import sys
import tempfile

MM_IN_POINT = 25.4 / 72.0
NEAR = 0.01  # [mm] on paper; the tool writes lengths to about a thousandth
PIECE = re.compile(r"([ML]) (-?[\d.]+) (-?[\d.]+)")


def lengths(svg):
    """Of each straight piece on a page, in mm."""
    for path in re.finditer(r"<path [^>]*>", svg):
        text = path.group(0)
        matrix = re.search(r'transform="matrix\(([^)]*)\)"', text)
        a, b, c, d = [float(value) for value in matrix.group(1).split(",")[:4]] if matrix else (1.0, 0.0, 0.0, 1.0)
        here = None
        for move, x, y in PIECE.findall(text):
            x, y = float(x), float(y)
            there = (a * x + c * y, b * x + d * y)
            if move == "L" and here is not None:
                yield ((there[0] - here[0]) ** 2 + (there[1] - here[1]) ** 2) ** 0.5 * MM_IN_POINT
            here = there


def faults(file, number, drawing):
    with tempfile.TemporaryDirectory() as folder:
        page = pathlib.Path(folder) / "page.svg"
        # Without these two it shrinks a page to whole points.
        subprocess.run(["pdftocairo", "-svg", "-noshrink", "-nocenter", "-f", str(number), "-l", str(number), file, page],
                       check=True)
        svg = page.read_text(encoding="utf-8")
    found = sorted(lengths(svg))
    size = [float(value) * MM_IN_POINT for value in re.search(r'viewBox="0 0 ([\d.]+) ([\d.]+)"', svg).groups()]
    sheet = drawing["sheet"]
    if abs(size[0] - 1000 * sheet["width_m"]) > NEAR or abs(size[1] - 1000 * sheet["height_m"]) > NEAR:
        yield f"page {size} mm"
    for one in drawing["dimensions"]:
        wanted = 1000 * one["value_m"] / sheet["scale"]
        if not any(abs(length - wanted) <= NEAR for length in found):
            yield f"{one['what']}: no line of {wanted:.3f} mm"


def main(folders):
    good = bad = 0
    for folder in map(pathlib.Path, folders):
        document = json.loads((folder / "draw.json").read_text(encoding="utf-8"))
        for number, drawing in enumerate(document["result"]["drawings"], 1):
            found = list(faults(folder / "drawing.pdf", number, drawing))
            for fault in found:
                print(f"{folder} {drawing['id']}: {fault}")
            good, bad = good + (not found), bad + bool(found)
    print(f"sheets that measure what they say: {good} passed, {bad} failed")
    return 1 if bad or not good else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
