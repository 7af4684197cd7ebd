#!/usr/bin/python3
"""dxf_entities.py - what ezdxf reads from DXF files, as numbers to compare with.

usage: dxf_entities.py FILE.dxf...             dxf_entities.py --picture FILE.dxf...
Prints one JSON list, one item a file: "units" ($INSUNITS), "release", "entities" of model space in file order. An entity has
"type", "layer", "numbers" (lengths in drawing units, angles in degrees) and, if it is a text, "text":
  LINE       start x y, end x y
  CIRCLE     centre x y, radius
  ARC        centre x y, radius, start angle, end angle
  POINT      x y
  SOLID      three corners x y
  POLYLINE   closed 0 or 1, then x y bulge of each vertex (an LWPOLYLINE too)
  TEXT       alignment point x y, height, rotation, horizontal and vertical justification
  ELLIPSE    centre x y, major axis x y, ratio, start and end parameter in radians
  LEADER     x y of each vertex
  HATCH      solid 0 or 1, number of paths, of each path the number of vertices and their x y bulge; of a pattern the angle, base point x y
             and offset x y of its line
  INSERT     x y, scale, rotation; "text" is the block's name
  DIMENSION  type, measurement stored in the file (in R12 that of the points), measurement computed from the points as read,
             dimension style's text height; "text" is the text, "block" what its block draws, as entities
An entity of paper space is in "paper", the number of entities of every block in "blocks".
With --picture an item's "entities" are what a person sees: each a "layer" and "points" x y along it, at most 0.001 off; blocks, dimensions,
leaders and hatch lines are taken apart by the reader. A text is its point, with "text".
exit: 0; 2 wrong call or ezdxf missing
needs: apt-get install python3-ezdxf
"""
import json
import math
import sys


def plane(p):
    return [float(p[0]), float(p[1])]


def numbers(e):
    t, d = e.dxftype(), e.dxf
    if t == "LINE":
        return plane(d.start) + plane(d.end)
    if t == "CIRCLE":
        return plane(d.center) + [d.radius]
    if t == "ARC":
        return plane(d.center) + [d.radius, d.start_angle, d.end_angle]
    if t == "POINT":
        return plane(d.location)
    if t == "SOLID":
        return plane(d.vtx0) + plane(d.vtx1) + plane(d.vtx2)
    if t == "LWPOLYLINE":
        return [float(e.closed)] + [n for x, y, b in e.get_points("xyb") for n in (x, y, b)]
    if t == "POLYLINE":
        return [float(e.is_closed)] + [n for v in e.vertices for n in plane(v.dxf.location) + [v.dxf.get("bulge", 0.0)]]
    if t == "TEXT":
        at = d.align_point if d.hasattr("align_point") else d.insert
        return plane(at) + [d.height, d.get("rotation", 0.0), float(d.get("halign", 0)), float(d.get("valign", 0))]
    if t == "ELLIPSE":
        return plane(d.center) + plane(d.major_axis) + [d.ratio, d.start_param, d.end_param]
    if t == "LEADER":
        return [n for v in e.vertices for n in plane(v)]
    if t == "HATCH":
        out = [float(d.solid_fill), float(len(e.paths))]
        for p in e.paths:
            out += [float(len(p.vertices))] + [float(n) for v in p.vertices for n in v]
        for line in e.pattern.lines if e.pattern else []:
            out += [line.angle] + plane(line.base_point) + plane(line.offset)
        return out
    if t == "INSERT":
        return plane(d.insert) + [d.get("xscale", 1.0), d.get("rotation", 0.0)]
    if t == "DIMENSION":
        kind, value = d.dimtype & 7, e.get_measurement()
        if kind == 1:       # ezdxf measures along x
            value = math.dist(plane(d.defpoint2), plane(d.defpoint3))
        if kind == 6:
            value = abs(value.x if d.dimtype & 64 else value.y)
        stored = d.get("actual_measurement", None)
        if stored is not None and kind == 5:
            stored = math.degrees(stored)
        return [float(kind), float(value if stored is None else stored), float(value), e.override().get("dimtxt")]
    if t == "VIEWPORT":
        return plane(d.center) + [d.width, d.height] + plane(d.view_center_point) + [d.view_height]
    return []


def item_of(e):
    item = {"type": e.dxftype().replace("LWPOLYLINE", "POLYLINE"), "layer": e.dxf.layer, "numbers": numbers(e)}
    if e.dxftype() in ("TEXT", "DIMENSION"):
        item["text"] = e.dxf.text
    if e.dxftype() == "INSERT":
        item["text"] = e.dxf.name
    if e.dxftype() == "DIMENSION":
        item["block"] = [item_of(v) for v in e.get_geometry_block()]
    return item


def picture(e):
    from ezdxf.path import make_path
    from ezdxf.render import hatching
    t, layer = e.dxftype(), e.dxf.layer
    if t in ("INSERT", "DIMENSION", "LEADER"):
        for v in e.virtual_entities():
            yield from picture(v)
    elif t == "HATCH" and not e.dxf.solid_fill:
        for line in hatching.hatch_entity(e):
            yield {"layer": layer, "points": plane(line[0]) + plane(line[1])}
    elif t == "HATCH":
        yield {"layer": layer, "points": []}
    elif t == "TEXT":
        yield {"layer": layer, "points": numbers(e)[:2], "text": e.dxf.text}
    elif t == "POINT":
        yield {"layer": layer, "points": plane(e.dxf.location)}
    else:
        yield {"layer": layer, "points": [n for p in make_path(e).flattening(0.001, 16) for n in plane(p)]}


def main():
    if len(sys.argv) < 2:
        sys.exit(__doc__)
    try:
        import ezdxf
    except ImportError:
        sys.stderr.write("python3-ezdxf is not installed\n")
        sys.exit(2)
    files = []
    whole = sys.argv[1] == "--picture"
    for path in sys.argv[2 if whole else 1:]:
        doc = ezdxf.readfile(path)
        entities = [i for e in doc.modelspace() for i in (picture(e) if whole else [item_of(e)])]
        paper = [item_of(e) for layout in doc.layouts if layout.name != "Model" for e in layout]
        blocks = {b.name: len(b) for b in doc.blocks if not b.is_any_layout}
        files.append({"units": doc.header.get("$INSUNITS"), "release": doc.dxfversion, "entities": entities, "paper": paper, "blocks": blocks})
    json.dump(files, sys.stdout)
    print()


if __name__ == "__main__":
    main()
