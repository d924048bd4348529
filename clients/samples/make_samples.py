#!/usr/bin/env python3
"""Draws the sample knives as DXF files beside this script: the same bytes every time, nothing but the standard library.

    python3 clients/samples/make_samples.py [folder]
"""

import sys
from dataclasses import dataclass
from pathlib import Path

from dxf_text import INCHES, MILLIMETRES, Drawing
from outlines import Edge, Placing
from patterns import Pattern

LAYERS = {"BLADE": 5, "SPRING": 1, "HANDLE": 8, "PINS": 3, "NOTES": 7}


@dataclass(frozen=True)
class Sample:
    """A pattern and how it is drawn. `closed` turns the blade to 180 degrees; `whole` parts are drawn as polylines."""

    file: str
    pattern: Pattern
    flavour: str = "R2000"
    units: int = MILLIMETRES
    placing: Placing = Placing()
    closed: bool = False
    whole: tuple[str, ...] = ("HANDLE",)


SAMPLES = [
    Sample("wagtail-half-stop.dxf", Pattern("Wagtail"), flavour="R12", placing=Placing(shift=120 + 80j)),
    Sample(
        "dunlin-no-half-stop.dxf",
        Pattern(
            "Dunlin",
            underside=3.8,
            reach=4.0,
            nose_radius=0.1,
            front_stock=0.25,
            centre_pin=-30 + 4.2j,
            rear_pin=-66 + 5.4j,
            half_stop=False,
            open_tilt=1.2,
            open_radius=0.45,
            closed_radius=0.5,
            kick=6.2,
            run_start=2.6,
            length=70,
        ),
        placing=Placing(shift=40 - 25j, degrees=30),
    ),
    Sample(
        "sandpiper-relieved.dxf",
        Pattern(
            "Sandpiper",
            end_face=82,
            nose_radius=0.25,
            front_stock=0.4,
            open_hollow=(0.06, 0.6),
            open_radius=0.3,
            half_reading=0.0792,
            half_hollow=(0.07, 0.0),
            closed_radius=0.35,
            closed_reading=0.3332,
            closed_hollow=(0.07, 0.0),
            kick_radius=0.7,
            shoulder_radius=0.2,
            corner_relief=0.4,
        ),
        whole=("BLADE", "HANDLE"),
    ),
    Sample(
        "godwit-inch-closed-mirrored.dxf",
        Pattern(
            "Godwit",
            underside=4.2,
            reach=4.5,
            depth=3.2,
            nose_radius=0.15,
            centre_pin=-42 + 4.8j,
            rear_pin=-83 + 6j,
            open_drop=0.353,
            half_reading=-0.254,
            closed_reading=0.0,
            open_radius=0.18,
            closed_radius=0.25,
            kick=7,
            kick_radius=0.5,
            shoulder_gap=-0.07,
            handle_turn=-0.52,
            length=68,
        ),
        flavour="R12",
        units=INCHES,
        placing=Placing(shift=3 + 2j, mirrored=True, scale=1 / 25.4),
        closed=True,
        whole=("SPRING",),
    ),
    Sample(
        "lapwing-reads-badly.dxf",
        Pattern(
            "Lapwing",
            reach=4.8,
            end_face=90,
            front_stock=-0.3,
            open_tilt=0,
            half_reading=0.4,
            half_hollow=(0.0, 0.0),
            closed_reading=-0.1,
            closed_hollow=(0.0, 0.0),
            kick=6,
            kick_radius=0.2,
            undercut=90,
            shoulder=2.6,
            edge=2.2,
            over_tip=-1.1,
        ),
        placing=Placing(degrees=180, shift=10 + 10j),
    ),
    Sample(
        "whimbrel-reads-high.dxf",
        Pattern(
            "Whimbrel",
            kick_radius=1.0,
            open_tilt=3.0,
            open_hollow=(0.1, 0.0),
            half_reading=0.25,
            half_hollow=(0.06, 0.9),
            closed_reading=0.55,
            closed_hollow=(0.06, 0.9),
            corner_relief=0.4,
        ),
        placing=Placing(shift=90 + 30j, degrees=-15),
    ),
]


def draw(sample: Sample) -> str:
    """The text of one sample's file."""
    pattern = sample.pattern
    placing = sample.placing
    turn = Placing(degrees=-180 if sample.closed else 0)
    parts = {
        "HANDLE": placing.edges(pattern.handle()),
        "SPRING": placing.edges(pattern.spring()),
        "BLADE": placing.edges(turn.edges(pattern.blade())),
    }
    drawing = Drawing(sample.flavour, sample.units, LAYERS)
    for layer, edges in parts.items():
        if layer in sample.whole:
            drawing.polyline(layer, edges)
        else:
            for index, edge in enumerate(_as_drawn(edges)):
                drawing.edge(layer, edge, backwards=index % 3 == 1)
    for pin in pattern.pins:
        drawing.circle("PINS", placing.circle(pin))
    title = placing.point(complex(-40, -16))
    drawing.text("NOTES", title, 3 * placing.scale, f"{pattern.name.upper()} - sample pattern")
    return drawing.to_text()


def _as_drawn(edges: list[Edge]) -> list[Edge]:
    """Mixed up, as edges lie in a file after some trimming and filleting: every so many steps round the outline."""
    stride = next(s for s in range(5, len(edges) + 6) if _coprime(s, len(edges)))
    return [edges[i * stride % len(edges)] for i in range(len(edges))]


def _coprime(a: int, b: int) -> bool:
    while b:
        a, b = b, a % b
    return a == 1


def main() -> None:
    folder = Path(sys.argv[1]) if len(sys.argv) > 1 else Path(__file__).parent
    for sample in SAMPLES:
        (folder / sample.file).write_bytes(draw(sample).encode("ascii"))


if __name__ == "__main__":
    main()
