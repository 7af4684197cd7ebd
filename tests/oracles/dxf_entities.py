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
With --picture an item's "entities" are what a person sees: each a "layer" and "points" x y along it, at most 0.001 off; dimensions and
leaders are taken apart by the reader, hatch lines drawn from what it read. A text is its point, with "text". Blocks are drawn as they are
defined and then turned and scaled by the reader's matrix (its own parts of an insert leave hatch lines and arrows as they were).
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


def edges(hatch):
    """Start, end, centre (None of a line) of every edge of a hatch; centre by the bulge: sagitta over half the chord."""
    for path in hatch.paths:
        v = path.vertices
        for (x, y, b), (u, w, _) in zip(v, v[1:] + v[:1]):
            c = None
            if b:
                k = (1 - b * b) / (4 * b)
                c = ((x + u) / 2 - k * (w - y), (y + w) / 2 + k * (u - x))
            yield (x, y), (u, w), b, c


def hatch_lines(hatch):
    """The pattern's lines cut at the edges, exact for arcs (the reader's own go by curves fitted to them, 0.1 mm off)."""
    for line in hatch.pattern.lines:
        a = math.radians(line.angle)
        d, n = (math.cos(a), math.sin(a)), (-math.sin(a), math.cos(a))
        base, step = line.base_point, line.offset[0] * n[0] + line.offset[1] * n[1]
        all_edges = list(edges(hatch))
        reach = [(p[0] - base[0]) * n[0] + (p[1] - base[1]) * n[1] + s
                 for p, q, b, c in all_edges for s in ((0,) if c is None else (-2 * math.dist(p, c), 2 * math.dist(p, c)))]
        for k in range(math.ceil(min(reach) / abs(step)), math.floor(max(reach) / abs(step)) + 1):
            o = (base[0] + n[0] * k * step, base[1] + n[1] * k * step)
            at = sorted(t for edge in all_edges for t in crossings(o, d, n, *edge))
            for t, u in zip(at[::2], at[1::2]):
                yield (o[0] + d[0] * t, o[1] + d[1] * t), (o[0] + d[0] * u, o[1] + d[1] * u)


def crossings(o, d, n, p, q, b, c):
    """Where the line through o along d (n square to it) crosses an edge, as distances from o."""
    if c is None:
        s, t = ((v[0] - o[0]) * n[0] + (v[1] - o[1]) * n[1] for v in (p, q))
        if (s < 0) != (t < 0):
            f = s / (s - t)
            x, y = p[0] + f * (q[0] - p[0]), p[1] + f * (q[1] - p[1])
            yield (x - o[0]) * d[0] + (y - o[1]) * d[1]
        return
    r, off = math.dist(p, c), (c[0] - o[0]) * n[0] + (c[1] - o[1]) * n[1]
    if abs(off) >= r:
        return
    along = (c[0] - o[0]) * d[0] + (c[1] - o[1]) * d[1]
    for t in (along - math.sqrt(r * r - off * off), along + math.sqrt(r * r - off * off)):
        x, y = o[0] + t * d[0], o[1] + t * d[1]
        # an anticlockwise arc lies to the right of its chord
        side = (q[0] - p[0]) * (y - p[1]) - (q[1] - p[1]) * (x - p[0])
        if (side < 0) == (b > 0):
            yield t


def curve(e, off):
    """Points of an arc, circle or ellipse whose chords are at most so much off (the reader's own are coarser, and none for some ellipses)."""
    d, c = e.dxf, plane(e.dxf.center)
    if e.dxftype() == "ELLIPSE":
        major, ratio, a, b = plane(d.major_axis), d.ratio, d.start_param, d.end_param
    elif e.dxftype() == "ARC":
        major, ratio, a, b = [d.radius, 0.0], 1.0, math.radians(d.start_angle), math.radians(d.end_angle)
    else:
        major, ratio, a, b = [d.radius, 0.0], 1.0, 0.0, 2 * math.pi
    if b <= a:
        b += 2 * math.pi
    n = max(8, math.ceil((b - a) / (2 * math.acos(1 - min(0.5, off / math.hypot(*major))))))
    out = []
    for i in range(n + 1):
        t = a + (b - a) * i / n
        out += [c[0] + math.cos(t) * major[0] - math.sin(t) * ratio * major[1], c[1] + math.cos(t) * major[1] + math.sin(t) * ratio * major[0]]
    return out


def picture(e, off=0.0005):
    from ezdxf.path import make_path
    t, layer = e.dxftype(), e.dxf.layer
    if t == "INSERT":
        m = e.matrix44()
        for v in e.block():
            for item in picture(v, off / e.dxf.get("xscale", 1.0)):
                p = item["points"]
                yield {**item, "points": [n for q in m.transform_vertices([(x, y, 0) for x, y in zip(p[::2], p[1::2])]) for n in plane(q)]}
    elif t in ("DIMENSION", "LEADER", "LWPOLYLINE", "POLYLINE"):
        for v in e.virtual_entities():
            yield from picture(v, off)
    elif t == "HATCH" and not e.dxf.solid_fill:
        for p, q in hatch_lines(e):
            yield {"layer": layer, "points": [p[0], p[1], q[0], q[1]]}
    elif t == "HATCH":
        yield {"layer": layer, "points": []}
    elif t == "TEXT":
        yield {"layer": layer, "points": numbers(e)[:2], "text": e.dxf.text}
    elif t == "POINT":
        yield {"layer": layer, "points": plane(e.dxf.location)}
    elif t in ("ARC", "CIRCLE", "ELLIPSE"):
        yield {"layer": layer, "points": curve(e, off)}
    else:
        yield {"layer": layer, "points": [n for p in make_path(e).flattening(0.001) for n in plane(p)]}


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
