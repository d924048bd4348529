"""Closed outlines of lines and arcs, in millimetres; points of the plane are complex numbers.

An edge is (start, end, bulge): the bulge is the tangent of a quarter of the included angle, as in DXF, 0 for a line and
positive where the arc runs counter-clockwise. Outlines run counter-clockwise, with the metal on the left.
"""

import cmath
import math
from typing import NamedTuple


class Edge(NamedTuple):
    start: complex
    end: complex
    bulge: float = 0.0

    @property
    def centre(self) -> complex:
        # Left of the chord by chord (1 - b^2) / (4 b).
        chord = self.end - self.start
        return (self.start + self.end) / 2 + 1j * chord * (1 - self.bulge**2) / (4 * self.bulge)

    @property
    def radius(self) -> float:
        return abs(self.start - self.centre)


class Circle(NamedTuple):
    centre: complex
    diameter: float


class Line(NamedTuple):
    """An endless straight face: a point on it and the direction of travel."""

    on: complex
    along: complex

    @staticmethod
    def through(on: complex, degrees: float) -> "Line":
        return Line(on, cmath.rect(1, math.radians(degrees)))

    def meets(self, other: "Line") -> complex:
        return self.on + self.along * cross(other.on - self.on, other.along) / cross(self.along, other.along)

    def at_x(self, x: float) -> complex:
        return self.on + self.along * (x - self.on.real) / self.along.real

    def round_centre(self, run_radius: float, corner_radius: float, ahead: bool) -> complex:
        """Centre of the round between this face and an arc about the pivot, inside both by the round's radius."""
        moved = self.on + 1j * self.along * corner_radius
        along = (moved * self.along.conjugate()).real
        reach = run_radius - corner_radius
        root = math.sqrt(along**2 - abs(moved) ** 2 + reach**2)
        return moved + self.along * ((root if ahead else -root) - along)


def cross(a: complex, b: complex) -> float:
    return (a.conjugate() * b).imag


def edges_through(vertices: list[tuple[complex, float]]) -> list[Edge]:
    """A closed outline through vertices, each with the bulge of the edge that leaves it."""
    following = vertices[1:] + vertices[:1]
    return [Edge(here, there, bulge) for (here, bulge), (there, _) in zip(vertices, following)]


def bulge_over(start: complex, end: complex) -> float:
    """Bulge of the counter-clockwise arc between two directions from its centre."""
    return math.tan((cmath.phase(end / start) % math.tau) / 4)


class Sketch:
    """Draws an outline corner by corner; straight edges may be hollow, corners between them rounded."""

    def __init__(self) -> None:
        self._stations: list[tuple[complex, float, float, float, float]] = []

    def corner(
        self, at: complex, *, radius: float = 0, bulge: float = 0, hollow: float = 0, land: float = 0
    ) -> None:
        """A corner, its radius, and of the edge that leaves it the bulge, or depth and lands of its hollow."""
        self._stations.append((at, radius, bulge, hollow, land))

    def finish(self) -> list[Edge]:
        vertices: list[tuple[complex, float]] = []
        for i, (_, radius, bulge, hollow, land) in enumerate(self._stations):
            enters, leaves, corner_bulge = self._round(i)
            if radius > 0:
                vertices.append((enters, corner_bulge))
            end = self._round((i + 1) % len(self._stations))[0]
            vertices.extend(_edge(leaves, end, bulge, hollow, land))
        return edges_through(vertices)

    def _round(self, i: int) -> tuple[complex, complex, float]:
        at, radius = self._stations[i][:2]
        if radius <= 0:
            return at, at, 0.0
        before = at - self._stations[i - 1][0]
        after = self._stations[(i + 1) % len(self._stations)][0] - at
        turn = cmath.phase(after / before)
        trim = radius * math.tan(abs(turn) / 2)
        return at - trim * before / abs(before), at + trim * after / abs(after), math.tan(turn / 4)


def _edge(start: complex, end: complex, bulge: float, hollow: float, land: float) -> list[tuple[complex, float]]:
    if hollow <= 0:
        return [(start, bulge)]
    length = abs(end - start)
    along = (end - start) / length
    arc = (start + land * along, -2 * hollow / (length - 2 * land))
    return [arc] if land <= 0 else [(start, 0.0), arc, (end - land * along, 0.0)]


class Placing(NamedTuple):
    """Where on the sheet, which way round and how large: mirror (y to -y), turn, scale, shift."""

    shift: complex = 0
    degrees: float = 0
    mirrored: bool = False
    scale: float = 1

    def point(self, p: complex) -> complex:
        turn = cmath.rect(self.scale, math.radians(self.degrees))
        return turn * (p.conjugate() if self.mirrored else p) + self.shift

    def edges(self, edges: list[Edge]) -> list[Edge]:
        sign = -1 if self.mirrored else 1
        return [Edge(self.point(e.start), self.point(e.end), sign * e.bulge) for e in edges]

    def circle(self, c: Circle) -> Circle:
        return Circle(self.point(c.centre), c.diameter * self.scale)
