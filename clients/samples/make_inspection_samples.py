#!/usr/bin/env python3
"""Draws the sample sheets for an inspection before cutting: the same bytes every time, nothing but the standard library.

    python3 clients/samples/make_inspection_samples.py [folder]
"""

import cmath
import math
import sys
from pathlib import Path

from dxf_text import MILLIMETRES, Drawing
from outlines import Circle, Edge, Placing, Sketch

LAYERS = {"BLADE": 5, "SPRING": 1, "LINER": 3, "FINISHED": 4, "NOTES": 7}

SPRING_AT = Placing(shift=70 + 22j)
LINER_AT = Placing(shift=-6 + 36j)

# Holes in the middle of an H7 fit: pins of 2.4 mm, a tube of 3.2 mm, bolster pins of 1.6 mm.
PIN, TUBE, BOLSTER_PIN = 2.405, 3.206, 1.605


def blade(finished: float = 0.0) -> list[Edge]:
    """A blade about its pivot; `finished` moves every straight side in, as grinding after heat treatment does."""
    f = finished
    sketch = Sketch()
    sketch.corner(complex(-4.2 + f, -3.8 + f), radius=0.6)
    sketch.corner(complex(6 - f, -3.8 + f), radius=0.5)
    sketch.corner(complex(8 - f, -2 + f), radius=0.8)
    sketch.corner(complex(52, -2 + f), bulge=0.08)
    sketch.corner(complex(76 - 2 * f, 3), bulge=0.06)
    sketch.corner(complex(48, 8 - f))
    sketch.corner(complex(5.6 + f, 8 - f), radius=0.4)
    sketch.corner(complex(4.6 + f, 4 - f), radius=0.6)
    sketch.corner(complex(-4.2 + f, 4 - f), radius=0.6)
    return sketch.finish()


def spring() -> list[Edge]:
    """A backspring; its pins lie at -28 and -62."""
    sketch = Sketch()
    sketch.corner(complex(4.2, 0), radius=0.3)
    sketch.corner(complex(3.7, 3), radius=0.2)
    sketch.corner(complex(-67, 3), radius=0.5)
    sketch.corner(complex(-67, -2), radius=0.5)
    sketch.corner(complex(-23, -2.2), radius=1.5)
    sketch.corner(complex(-18, 0), radius=3)
    return sketch.finish()


def liner() -> list[Edge]:
    """A liner with round ends."""
    return [
        Edge(0 + 0j, 78 + 0j),
        Edge(78 + 0j, 78 + 14j, 1.0),
        Edge(78 + 14j, 0 + 14j),
        Edge(0 + 14j, 0 + 0j, 1.0),
    ]


def shield() -> list[Edge]:
    """A slot with round ends, for a shield."""
    return [
        Edge(30 + 5j, 42 + 5j),
        Edge(42 + 5j, 42 + 9j, 1.0),
        Edge(42 + 9j, 30 + 9j),
        Edge(30 + 9j, 30 + 5j, 1.0),
    ]


SPRING_PINS = [Circle(-28 + 0.4j, PIN), Circle(-62 + 0.5j, PIN)]
LINER_HOLES = [Circle(c, PIN) for c in (4 + 7j, 66 + 7j)] + [Circle(78 + 7j, TUBE)]
BOLSTER_HOLES = [Circle(c, BOLSTER_PIN) for c in (0 + 3j, 0 + 11j)]


def sound_sheet() -> str:
    """Everything a shop could wish for."""
    drawing = Drawing("R2000", MILLIMETRES, LAYERS)
    _loose(drawing, "BLADE", blade())
    drawing.circle("BLADE", Circle(0, PIN))
    drawing.polyline("SPRING", SPRING_AT.edges(spring()))
    for pin in SPRING_PINS:
        drawing.circle("SPRING", SPRING_AT.circle(pin))
    _loose(drawing, "LINER", LINER_AT.edges(liner()))
    _loose(drawing, "LINER", LINER_AT.edges(shield()))
    for hole in LINER_HOLES + BOLSTER_HOLES:
        drawing.circle("LINER", LINER_AT.circle(hole))
    drawing.text("NOTES", -6 - 14j, 3, "HERON - sample sheet, 2.5 mm")
    return drawing.to_text()


def bad_sheet() -> str:
    """The same sheet as it comes at times: one of each fault."""
    drawing = Drawing("R2000", MILLIMETRES, LAYERS)

    # A gap: the spine ends 0.15 mm short of the tip.
    edges = blade()
    spine = next(i for i, edge in enumerate(edges) if edge.end == complex(48, 8))
    edges[spine] = edges[spine]._replace(start=edges[spine].start + complex(-0.15, 0.03))
    _loose(drawing, "BLADE", edges)
    drawing.circle("BLADE", Circle(0, PIN))

    # The back of the spring is a spline, its underside is drawn twice, and a pin lies near the edge. The other pin's hole
    # lies between pins: too wide for 3/32 in, too tight for 2.4 mm.
    edges = SPRING_AT.edges(spring())
    back = max(range(len(edges)), key=lambda i: abs(edges[i].end - edges[i].start))
    longest = edges.pop(back)
    third = (longest.end - longest.start) / 3
    drawing.spline("SPRING", [longest.start, longest.start + third + 0.4j, longest.end - third + 0.4j, longest.end])
    _loose(drawing, "SPRING", edges)
    drawing.edge("SPRING", max(edges, key=lambda edge: abs(edge.end - edge.start)))
    drawing.circle("SPRING", SPRING_AT.circle(Circle(-28 - 0.6j, PIN)))
    drawing.circle("SPRING", SPRING_AT.circle(Circle(-62 + 0.5j, 2.395)))

    # The liner's corner is nibbled into micro segments, a hole is a polygon, and a word lies on the layer.
    edges = LINER_AT.edges(liner())
    nibbled = _nibbled(edges[0], pieces=20, length=0.012)
    for edge in nibbled + edges[1:]:
        drawing.edge("LINER", edge)
    _loose(drawing, "LINER", LINER_AT.edges(_polygon(Circle(4 + 7j, PIN), 36)))
    for hole in LINER_HOLES[1:]:
        drawing.circle("LINER", LINER_AT.circle(hole))
    drawing.text("LINER", LINER_AT.point(24 + 5j), 3, "SNIPE")
    return drawing.to_text()


def sheet_without_unit() -> str:
    """A blade in inches, in a file that does not say so."""
    drawing = Drawing("R12", None, LAYERS)
    inches = Placing(shift=2 + 1j, scale=1 / 25.4)
    _loose(drawing, "BLADE", inches.edges(blade()))
    drawing.circle("BLADE", inches.circle(Circle(0, 25.4 * 3 / 32 + 0.005)))
    return drawing.to_text()


def blade_with_stock() -> str:
    """A blank to cut, with the blade it is ground to after heat treatment beside it on a layer of its own."""
    drawing = Drawing("R2000", MILLIMETRES, LAYERS)
    _loose(drawing, "BLADE", blade())
    drawing.circle("BLADE", Circle(0, PIN))
    drawing.polyline("FINISHED", blade(finished=0.2))
    return drawing.to_text()


def _loose(drawing: Drawing, layer: str, edges: list[Edge]) -> None:
    """Edge by edge, every third one backwards, as trimming and filleting leave them."""
    for index, edge in enumerate(edges):
        drawing.edge(layer, edge, backwards=index % 3 == 1)


def _nibbled(edge: Edge, pieces: int, length: float) -> list[Edge]:
    """A line whose first stretch is in short pieces."""
    along = (edge.end - edge.start) / abs(edge.end - edge.start)
    ends = [edge.start + along * length * i for i in range(pieces + 1)] + [edge.end]
    return [Edge(a, b) for a, b in zip(ends, ends[1:])]


def _polygon(circle: Circle, sides: int) -> list[Edge]:
    corners = [
        circle.centre + cmath.rect(circle.diameter / 2, math.tau * i / sides) for i in range(sides)
    ]
    return [Edge(a, b) for a, b in zip(corners, corners[1:] + corners[:1])]


SAMPLES = {
    "heron-sound-sheet.dxf": sound_sheet,
    "snipe-bad-sheet.dxf": bad_sheet,
    "plover-no-unit.dxf": sheet_without_unit,
    "rail-stock-to-grind.dxf": blade_with_stock,
}


def main() -> None:
    folder = Path(sys.argv[1]) if len(sys.argv) > 1 else Path(__file__).parent / "inspection"
    for file, draw in SAMPLES.items():
        (folder / file).write_bytes(draw().encode("ascii"))


if __name__ == "__main__":
    main()
