#!/usr/bin/python3
"""dxf_entities.py - what ezdxf reads from DXF files, as numbers to compare with.

usage: dxf_entities.py FILE.dxf...
Prints one JSON list, one item a file: "units" ($INSUNITS), "release", "entities" of model space in file order. An entity has
"type", "layer", "numbers" (lengths in drawing units, angles in degrees) and, if it is a text, "text":
  LINE       start x y, end x y
  CIRCLE     centre x y, radius
  ARC        centre x y, radius, start angle, end angle
  POINT      x y
  SOLID      three corners x y
  POLYLINE   closed 0 or 1, then x y bulge of each vertex (an LWPOLYLINE too)
  TEXT       alignment point x y, height, rotation, horizontal and vertical justification
exit: 0; 2 wrong call or ezdxf missing
needs: apt-get install python3-ezdxf
"""
import json
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
    return []


def main():
    if len(sys.argv) < 2:
        sys.exit(__doc__)
    try:
        import ezdxf
    except ImportError:
        sys.stderr.write("python3-ezdxf is not installed\n")
        sys.exit(2)
    files = []
    for path in sys.argv[1:]:
        doc = ezdxf.readfile(path)
        entities = []
        for e in doc.modelspace():
            item = {"type": e.dxftype().replace("LWPOLYLINE", "POLYLINE"), "layer": e.dxf.layer, "numbers": numbers(e)}
            if e.dxftype() == "TEXT":
                item["text"] = e.dxf.text
            entities.append(item)
        files.append({"units": doc.header.get("$INSUNITS"), "release": doc.dxfversion, "entities": entities})
    json.dump(files, sys.stdout)
    print()


if __name__ == "__main__":
    main()
