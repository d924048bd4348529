"""Writes drawings as DXF text: R12 (AC1009) and R2000 (AC1015), lines, arcs, circles, polylines and a title.

Group codes after the public DXF reference, from memory; checked by reading the files back with ezdxf.
"""

import cmath
import math

from outlines import Circle, Edge

INCHES, MILLIMETRES = 1, 4
MODEL_SPACE = "1F"


class Drawing:
    """A model space of entities. `flavour` is "R12" or "R2000"; `units` is None for a file that does not say."""

    def __init__(self, flavour: str, units: int | None, layers: dict[str, int]) -> None:
        self.modern = flavour == "R2000"
        self.units = units
        self.layers = layers
        self._entities: list[tuple[int, object]] = []
        self._next_handle = 0x100

    def edge(self, layer: str, edge: Edge, *, backwards: bool = False) -> None:
        """One loose LINE or ARC; an ARC always runs counter-clockwise in a file."""
        if edge.bulge == 0:
            start, end = (edge.end, edge.start) if backwards else (edge.start, edge.end)
            self._entity("LINE", layer, "AcDbLine")
            self._point(10, start)
            self._point(11, end)
            return
        start, end = (edge.start, edge.end) if edge.bulge > 0 else (edge.end, edge.start)
        self._entity("ARC", layer, "AcDbCircle")
        self._point(10, edge.centre)
        self._add(40, edge.radius)
        self._marker("AcDbArc")
        self._add(50, math.degrees(cmath.phase(start - edge.centre)) % 360)
        self._add(51, math.degrees(cmath.phase(end - edge.centre)) % 360)

    def circle(self, layer: str, circle: Circle) -> None:
        self._entity("CIRCLE", layer, "AcDbCircle")
        self._point(10, circle.centre)
        self._add(40, circle.diameter / 2)

    def polyline(self, layer: str, edges: list[Edge]) -> None:
        """A closed outline in one entity: LWPOLYLINE in R2000, POLYLINE with its VERTEX entities in R12."""
        if self.modern:
            self._entity("LWPOLYLINE", layer, "AcDbPolyline")
            self._add(90, len(edges))
            self._add(70, 1)
            for edge in edges:
                self._add(10, edge.start.real)
                self._add(20, edge.start.imag)
                self._bulge(edge)
            return
        self._entity("POLYLINE", layer, "")
        self._add(66, 1)
        self._point(10, 0)
        self._add(70, 1)
        for edge in edges:
            self._entity("VERTEX", layer, "")
            self._point(10, edge.start)
            self._bulge(edge)
        self._entity("SEQEND", layer, "")

    def text(self, layer: str, at: complex, height: float, words: str) -> None:
        self._entity("TEXT", layer, "AcDbText")
        self._point(10, at)
        self._add(40, height)
        self._add(1, words)
        self._marker("AcDbText")

    def spline(self, layer: str, controls: list[complex]) -> None:
        """A cubic through its end points, pulled by the two between: a single span, R2000 only."""
        self._entity("SPLINE", layer, "AcDbSpline")
        for code, value in [(70, 8), (71, 3), (72, 8), (73, 4), (74, 0)]:
            self._add(code, value)
        for knot in [0.0] * 4 + [1.0] * 4:
            self._add(40, knot)
        for control in controls:
            self._point(10, control)

    def to_text(self) -> str:
        tags = self._header()
        if self.modern:
            tags += [(0, "SECTION"), (2, "CLASSES"), (0, "ENDSEC")]
        tags += self._tables()
        if self.modern:
            tags += _blocks()
        tags += [(0, "SECTION"), (2, "ENTITIES"), *self._entities, (0, "ENDSEC")]
        if self.modern:
            tags += _objects()
        tags.append((0, "EOF"))
        return "".join(f"{code:>3}\n{_value(value)}\n" for code, value in tags)

    def _entity(self, kind: str, layer: str, marker: str) -> None:
        self._add(0, kind)
        if self.modern:
            self._add(5, f"{self._next_handle:X}")
            self._next_handle += 1
            self._add(330, MODEL_SPACE)
            self._marker("AcDbEntity")
        self._add(8, layer)
        self._marker(marker)

    def _marker(self, name: str) -> None:
        if self.modern:
            self._add(100, name)

    def _point(self, code: int, p: complex) -> None:
        p = complex(p)
        self._entities += [(code, p.real), (code + 10, p.imag), (code + 20, 0.0)]

    def _bulge(self, edge: Edge) -> None:
        # Some readers take any bulge that is written for an arc, and fail on one of no bend.
        if edge.bulge != 0:
            self._add(42, edge.bulge)

    def _add(self, code: int, value: object) -> None:
        self._entities.append((code, value))

    def _header(self) -> list[tuple[int, object]]:
        tags: list[tuple[int, object]] = [(0, "SECTION"), (2, "HEADER")]
        tags += [(9, "$ACADVER"), (1, "AC1015" if self.modern else "AC1009")]
        if self.modern:
            tags += [(9, "$DWGCODEPAGE"), (3, "ANSI_1252"), (9, "$HANDSEED"), (5, f"{self._next_handle:X}")]
        if self.units is not None:
            tags += [(9, "$INSUNITS"), (70, self.units)]
            tags += [(9, "$MEASUREMENT"), (70, 0 if self.units == INCHES else 1)]
        return tags + [(0, "ENDSEC")]

    def _tables(self) -> list[tuple[int, object]]:
        def record(kind: str, handle: int, owner: str, marker: str, name: str) -> list[tuple[int, object]]:
            head: list[tuple[int, object]] = [(0, kind)]
            if self.modern:
                head += [(5, f"{handle:X}"), (330, owner), (100, "AcDbSymbolTableRecord"), (100, marker)]
                return head + [(2, name), (70, 0)]
            # Some readers skip what comes first in a record of R12, expecting a handle there.
            return head + [(70, 0), (2, name)]

        def table(name: str, handle: str, records: list[list[tuple[int, object]]]) -> list[tuple[int, object]]:
            head: list[tuple[int, object]] = [(0, "TABLE"), (2, name)]
            if self.modern:
                head += [(5, handle), (330, "0"), (100, "AcDbSymbolTable")]
            return head + [(70, len(records)), *(tag for r in records for tag in r), (0, "ENDTAB")]

        solid: list[tuple[int, object]] = [(3, "Solid line"), (72, 65), (73, 0), (40, 0.0)]
        names = ["ByBlock", "ByLayer", "CONTINUOUS"] if self.modern else ["CONTINUOUS"]
        line_types = [
            record("LTYPE", 0x14 + i, "5", "AcDbLinetypeTableRecord", name) + solid for i, name in enumerate(names)
        ]
        layers = [
            record("LAYER", 0x40 + i, "2", "AcDbLayerTableRecord", name) + [(62, colour), (6, "CONTINUOUS")]
            for i, (name, colour) in enumerate({"0": 7, **self.layers}.items())
        ]
        font: list[tuple[int, object]] = [(40, 0.0), (41, 1.0), (50, 0.0), (71, 0), (42, 2.5), (3, "txt"), (4, "")]
        styles = [record("STYLE", 0x11, "3", "AcDbTextStyleTableRecord", "Standard") + font]
        tags = [(0, "SECTION"), (2, "TABLES"), *table("LTYPE", "5", line_types), *table("LAYER", "2", layers)]
        tags += table("STYLE", "3", styles)
        if self.modern:
            tags += table("VPORT", "8", []) + table("VIEW", "6", []) + table("UCS", "7", [])
            tags += table("APPID", "9", [record("APPID", 0x12, "9", "AcDbRegAppTableRecord", "ACAD")])
            tags += table("DIMSTYLE", "A", [])
            spaces = [("1F", "*Model_Space"), ("1B", "*Paper_Space")]
            records = [record("BLOCK_RECORD", int(h, 16), "1", "AcDbBlockTableRecord", n)[:-1] for h, n in spaces]
            tags += table("BLOCK_RECORD", "1", records)
        return tags + [(0, "ENDSEC")]


def _blocks() -> list[tuple[int, object]]:
    tags: list[tuple[int, object]] = [(0, "SECTION"), (2, "BLOCKS")]
    for owner, begin, end, name in [("1F", "20", "21", "*Model_Space"), ("1B", "1C", "1D", "*Paper_Space")]:
        head = [(330, owner), (100, "AcDbEntity"), (8, "0")]
        tags += [(0, "BLOCK"), (5, begin), *head, (100, "AcDbBlockBegin"), (2, name), (70, 0)]
        tags += [(10, 0.0), (20, 0.0), (30, 0.0), (3, name), (1, "")]
        tags += [(0, "ENDBLK"), (5, end), *head, (100, "AcDbBlockEnd")]
    return tags + [(0, "ENDSEC")]


def _objects() -> list[tuple[int, object]]:
    root = [(0, "DICTIONARY"), (5, "C"), (330, "0"), (100, "AcDbDictionary"), (281, 1), (3, "ACAD_GROUP"), (350, "D")]
    group = [(0, "DICTIONARY"), (5, "D"), (330, "C"), (100, "AcDbDictionary"), (281, 1)]
    return [(0, "SECTION"), (2, "OBJECTS"), *root, *group, (0, "ENDSEC")]


def _value(value: object) -> str:
    if isinstance(value, float):
        # Twelve decimals keep neighbours together to a hundredth of a nanometre; no minus before a zero.
        text = f"{value:.12f}".rstrip("0")
        text += "0" if text.endswith(".") else ""
        return "0.0" if text == "-0.0" else text
    return str(value)
