"""Knives of our own invention, by their dimensions; the pattern names are invented too.

Knife frame: pivot at the origin, open blade along +x with its spine towards +y, spring above the tang and running to
-x; millimetres and degrees.
"""

import cmath
import math
from dataclasses import dataclass, field

from outlines import Circle, Edge, Line, Sketch, bulge_over, edges_through


@dataclass(frozen=True)
class Pattern:
    """Dimensions of a slip joint. A face lies at `underside` plus its reading from the pivot."""

    name: str

    # Spring.
    underside: float = 4.0
    reach: float = 4.2
    depth: float = 3.0
    end_face: float = 80.0
    nose_radius: float = 0.0
    pad_end: float = 10.0
    belly: float = 0.5
    front_stock: float = 0.2
    rear_stock: float = 0.0
    centre_pin: complex = -43 + 4.4j
    rear_pin: complex = -83 + 5.6j
    pin_diameter: float = 1.6

    # Tang.
    half_stop: bool = True
    open_drop: float = 0.0
    open_tilt: float = 1.0
    open_hollow: tuple[float, float] = (0.0, 0.0)
    open_radius: float = 0.0
    half_reading: float = 0.127
    half_hollow: tuple[float, float] = (0.08, 0.0)
    closed_radius: float = 0.0
    closed_reading: float = 0.381
    closed_hollow: tuple[float, float] = (0.08, 0.0)
    kick: float = 6.5
    kick_radius: float = 0.4
    run_start: float = 2.4

    # Blade and handle.
    undercut: float = 70.0
    shoulder: float = 2.8
    shoulder_radius: float = 0.0
    shoulder_gap: float = 0.0
    corner_relief: float = 0.0
    length: float = 68.0
    edge: float = 2.0
    tip: float = 1.5
    over_tip: float = 2.2
    handle_turn: float = 0.0
    pins: list[Circle] = field(init=False)

    def __post_init__(self) -> None:
        centres = (0, self.centre_pin, self.rear_pin)
        object.__setattr__(self, "pins", [Circle(c, self.pin_diameter) for c in centres])

    def spring(self) -> list[Edge]:
        back = self.underside + self.depth
        front = back + self.front_stock
        rear = back + self.rear_stock
        tail = self.rear_pin.real - 4
        pin_x = self.centre_pin.real
        pin_low = self.centre_pin.imag - 2
        pad_end = complex(-self.pad_end, self.underside)
        belly_end = complex(pin_x + 4, pin_low)
        sketch = Sketch()
        sketch.corner(complex(self.reach, self.underside), radius=self.nose_radius)
        sketch.corner(complex(self._end_face_x(front), front))
        if front != rear:
            sketch.corner(complex(-8, front))
            sketch.corner(complex(pin_x - 6, rear))
        sketch.corner(complex(tail, rear))
        sketch.corner(complex(tail, self.rear_pin.imag - 2))
        sketch.corner(complex(pin_x - 4, pin_low))
        sketch.corner(belly_end, bulge=-2 * self.belly / abs(pad_end - belly_end))
        sketch.corner(pad_end)
        return sketch.finish()

    def blade(self) -> list[Edge]:
        sketch = Sketch()
        open_flat = self._notch(sketch)
        closed = self._closed_face()
        if self.half_stop:
            half = self._half_stop_face()
            hollow, land = self.half_hollow
            sketch.corner(open_flat.meets(half), radius=self.open_radius, hollow=hollow, land=land)
            hollow, land = self.closed_hollow
            sketch.corner(half.meets(closed), radius=self.closed_radius, hollow=hollow, land=land)
        else:
            self._run(sketch, open_flat, closed)
        spine = self.underside + self.shoulder
        sketch.corner(closed.at_x(self.kick), radius=self.kick_radius)
        sketch.corner(complex(self.kick + 1.4, 0.6 - self.edge), bulge=-0.5)
        sketch.corner(complex(self.kick + 3, -self.edge))
        sketch.corner(complex(0.7 * self.length, -self.edge), bulge=0.08)
        sketch.corner(complex(self.length, self.tip), bulge=0.06)
        sketch.corner(complex(0.55 * self.length, spine))
        return sketch.finish()

    def handle(self) -> list[Edge]:
        """Turned about the centre pin where the spring is drawn lifted, out of line with the handle."""
        back = self.underside + self.depth
        rear = min(-self.length - 6, self.rear_pin.real - 8)
        low = -self.tip - self.over_tip
        sketch = Sketch()
        sketch.corner(complex(2, back))
        sketch.corner(complex(rear + 3, back), bulge=0.3)
        sketch.corner(complex(rear + 3, low))
        sketch.corner(complex(rear + 20, low), bulge=0.08)
        sketch.corner(complex(2, low), bulge=0.25)
        turn = cmath.rect(1, math.radians(self.handle_turn))
        turned = [(self.centre_pin + turn * (e.start - self.centre_pin), e.bulge) for e in sketch.finish()]
        return edges_through(turned)

    def _end_face_x(self, y: float) -> float:
        return self.reach - (y - self.underside) / math.tan(math.radians(self.end_face))

    def _half_stop_face(self) -> Line:
        return Line.through(complex(-self.underside - self.half_reading, 0), -90)

    def _closed_face(self) -> Line:
        return Line.through(complex(0, -self.underside - self.closed_reading), 0)

    def _notch(self, sketch: Sketch) -> Line:
        """Shoulder, inner corner and the start of the open flat, which is handed back."""
        lean = 1 / math.tan(math.radians(self.undercut))
        common = min(self.shoulder, self.depth + self.front_stock)
        foot = self.shoulder_gap + max(self.reach, self._end_face_x(self.underside + common) + common * lean)
        shoulder = Line.through(complex(foot, self.underside), -self.undercut)
        sketch.corner(
            complex(foot - self.shoulder * lean, self.underside + self.shoulder), radius=self.shoulder_radius
        )
        height = self.underside - self.open_drop
        bears_at = self._half_stop_face().on.real if self.half_stop else -self.run_start
        open_flat = Line.through(complex(bears_at, height), 180 - self.open_tilt)
        start = shoulder.meets(open_flat)
        if self.corner_relief > 0:
            # Deep enough to swallow the corner.
            sketch.corner(
                start - shoulder.along * self.corner_relief,
                bulge=-1.25 / math.tan(math.radians(self.undercut / 2)),
            )
            start += open_flat.along * self.corner_relief
        hollow, land = self.open_hollow
        sketch.corner(start, hollow=hollow, land=land)
        return open_flat

    def _run(self, sketch: Sketch, open_flat: Line, closed: Line) -> None:
        """The round of a tang without a half stop: an arc about the pivot with a round at either end."""
        radius = abs(open_flat.at_x(-self.run_start))
        opens = open_flat.round_centre(radius, self.open_radius, ahead=True)
        closes = closed.round_centre(radius, self.closed_radius, ahead=False)
        down, under = -1j * open_flat.along, -1j * closed.along
        sketch.corner(opens + down * self.open_radius, bulge=bulge_over(down, opens))
        sketch.corner(opens / abs(opens) * radius, bulge=bulge_over(opens, closes))
        sketch.corner(closes / abs(closes) * radius, bulge=bulge_over(closes, under))
        hollow, land = self.closed_hollow
        sketch.corner(closes + under * self.closed_radius, hollow=hollow, land=land)
