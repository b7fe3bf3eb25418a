#!/usr/bin/env python3
"""Holds drawings for programs that draw against an independent library (ezdxf) and against draw.json beside them.

    dxf.py FOLDER...

Each folder holds draw.json and the .dxf files of `forecourse draw --out`. Checked of each file: it opens, the library's
audit finds no error and mends nothing, layers are those of the drawing, each path and circle is where it was meant, the
extents are those of its geometry and those that its head tells, there is one insertion for each part that is placed, at its place and with its path, and each
measured distance between two ticks is as long as it says.
"""

import json
import math
import pathlib
import sys

import ezdxf
from ezdxf import bbox, units

UNIT = {units.IN: 0.0254, units.MM: 0.001}  # [m]
NEAR = 2e-6  # of a unit: coordinates have six decimals


def table_name(name):
    out = "".join(c.upper() if c.isascii() and (c.isalnum() or c in "-_$") else "_" for c in name[:31])
    return out or "_"


def near(a, b, slack=NEAR):
    return all(abs(x - y) <= slack for x, y in zip(a, b))


def points_of(shape):
    if shape.dxftype() == "LINE":
        return [shape.dxf.start, shape.dxf.end]
    return [vertex.dxf.location for vertex in shape.vertices]


def shape_faults(shapes, drawing, unit):
    """Paths and circles are there one by one, in their order and on their layers."""
    wanted = [(table_name(one["layer"]), [[value / unit for value in point] for point in one["points_m"]])
              for one in drawing["paths"] if len(one["points_m"]) > 1]
    straight = [one for one in shapes if one.dxftype() in ("LINE", "POLYLINE")][: len(wanted)]
    if len(straight) < len(wanted):
        yield f"{len(straight)} of {len(wanted)} paths"
    for shape, (layer, points) in zip(straight, wanted):
        found = points_of(shape)
        if shape.dxf.layer != layer or len(found) != len(points) or not all(map(near, found, points)):
            yield f"a path on {layer} is {found}, not {points}"
    circles = [one for one in shapes if one.dxftype() == "CIRCLE"]
    if len(circles) != len(drawing["circles"]):
        yield f"{len(circles)} circles"
    for shape, one in zip(circles, drawing["circles"]):
        there = near(shape.dxf.center, [value / unit for value in one["center_m"]])
        if not there or abs(shape.dxf.radius - one["radius_m"] / unit) > NEAR:
            yield f"a circle on {one['layer']} is elsewhere"


def faults(path, drawing):
    document = ezdxf.readfile(path)
    audit = document.audit()
    yield from (f"audit: {one.message}" for one in audit.errors + audit.fixes)
    unit = UNIT.get(document.header.get("$INSUNITS"))
    if unit is None:
        yield "no unit"
        return
    space = document.modelspace()
    for layer in drawing["layers"]:
        name = table_name(layer["id"])
        if name not in document.layers:
            yield f"no layer {name}"
        elif document.layers.get(name).is_off() == layer["printed"]:
            yield f"layer {name} is {'off' if layer['printed'] else 'on'}"

    shapes = [one for one in space if one.dxftype() in ("LINE", "POLYLINE", "CIRCLE", "ARC")]
    box = bbox.extents(shapes)
    xs, ys = [], []
    for shape in drawing["paths"]:
        xs += [x for x, _ in shape["points_m"]]
        ys += [y for _, y in shape["points_m"]]
    for shape in drawing["circles"]:
        (x, y), r = shape["center_m"], shape["radius_m"]
        xs += [x - r, x + r]
        ys += [y - r, y + r]
    for shape in drawing["arcs"]:
        (x, y), r, begin, end = shape["center_m"], shape["radius_m"], shape["from_rad"], shape["to_rad"]
        quarters = [k * math.pi / 2 for k in range(-8, 9) if begin <= k * math.pi / 2 <= end]
        for angle in [begin, end] + quarters:
            xs.append(x + r * math.cos(angle))
            ys.append(y + r * math.sin(angle))
    low, high = (min(xs) / unit, min(ys) / unit), (max(xs) / unit, max(ys) / unit)
    if not near(box.extmin, low) or not near(box.extmax, high):
        yield f"extents {box.extmin} {box.extmax}, geometry {low} {high}"
    if not near(document.header["$EXTMIN"], low) or not near(document.header["$EXTMAX"], high):
        yield "its head tells other extents"

    yield from shape_faults(shapes, drawing, unit)

    placed = {}
    for mark in drawing["marks"]:
        placed[(table_name(mark["kind"]), mark["part"])] = mark["at_m"]
    inserts = list(space.query("INSERT"))
    if len(inserts) != len(drawing["marks"]):
        yield f"{len(inserts)} insertions for {len(drawing['marks'])} parts"
    for one in inserts:
        key = (one.dxf.name, one.get_attrib_text("PART"))
        if key not in placed:
            yield f"no part {key}"
        elif not near(one.dxf.insert, [value / unit for value in placed[key]]):
            yield f"{key} is elsewhere"
        if one.dxf.name not in document.blocks:
            yield f"no block {one.dxf.name}"

    lines = {(round(one.dxf.start.x, 4), round(one.dxf.start.y, 4), round(one.dxf.end.x, 4), round(one.dxf.end.y, 4))
             for one in space.query('LINE[layer=="DIMENSIONS"]')}
    for one in drawing["dimensions"]:
        a, b = [[value / unit for value in one[end]] for end in ("line_from_m", "line_to_m")]
        if tuple(round(value, 4) for value in a + b) not in lines:
            yield f"no line for {one['what']}"
        if abs(((a[0] - b[0]) ** 2 + (a[1] - b[1]) ** 2) ** 0.5 * unit - one["value_m"]) > 1e-9:
            yield f"{one['what']} is not as long as it says"
    texts = [one.dxf.text for one in space.query("TEXT")]
    if len(texts) != len(drawing["texts"]) + len(drawing["dimensions"]):
        yield f"{len(texts)} texts"


def main(folders):
    good = bad = 0
    for folder in map(pathlib.Path, folders):
        document = json.loads((folder / "draw.json").read_text(encoding="utf-8"))
        for drawing in document["result"]["drawings"]:
            path = folder / f"{drawing['id']}.dxf"
            found = list(faults(path, drawing))
            for fault in found:
                print(f"{path}: {fault}")
            good, bad = good + (not found), bad + bool(found)
    print(f"drawings read by the library as they were meant: {good} passed, {bad} failed")
    return 1 if bad or not good else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
