#!/usr/bin/python3
"""dxf_twin.py - writes the drawing of MixedDrawing.cs with ezdxf.

usage: dxf_twin.py COUNT FILE.dxf
Prints the seconds writing took, without those of building the drawing, and the size of the file in bytes.
needs: apt-get install python3-ezdxf
"""
import math
import os
import sys
import time

import ezdxf

LAYERS = ["OUTLINE", "BORE_500", "HIDDEN", "NOTES"]
state = 1


def number(below):
    global state
    state = state * 48271 % 2147483647
    return state * 997 % (below * 1000000) / 1e6


def place():
    x = number(2440)
    return x, number(1220)


def rounded(x, y, w, h, r):
    b = math.tan(math.pi / 8)
    return [(x + r, y, 0), (x + w - r, y, b), (x + w, y + r, 0), (x + w, y + h - r, b),
            (x + w - r, y + h, 0), (x + r, y + h, b), (x, y + h - r, 0), (x, y + r, b)]


def main():
    count, path = int(sys.argv[1]), sys.argv[2]
    doc = ezdxf.new("R2000")
    doc.units = ezdxf.units.MM
    for name in LAYERS:
        doc.layers.add(name)
    space = doc.modelspace()
    for i in range(count):
        kind, a = i % 20, {"layer": LAYERS[i // 5 % 4]}
        if kind < 7:
            p = place()
            space.add_line(p, place(), a)
        elif kind < 12:
            p = place()
            space.add_circle(p, 1 + number(40), a)
        elif kind < 14:
            p = place()
            space.add_arc(p, 1 + number(400), 0, 90, dxfattribs=a)
        elif kind < 16:
            p = place()
            w, h = 50 + number(400), 50 + number(400)
            space.add_lwpolyline(rounded(*p, w, h, 1 + number(20)), format="xyb", close=True, dxfattribs=a)
        elif kind < 19:
            space.add_text("Panel %d" % i, dxfattribs={**a, "height": 3.5, "insert": place()})
        else:
            space.add_point(place(), a)
    start = time.perf_counter()
    doc.saveas(path)
    print(time.perf_counter() - start, os.path.getsize(path))


if __name__ == "__main__":
    main()
