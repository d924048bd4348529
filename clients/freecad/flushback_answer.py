"""From the service's answer to objects of a document: what the dial shows, contacts, blade and spring at each stop.

Everything lies in the plane of the sketches. Lengths are written in the unit that FreeCAD shows lengths in, and in
thousandths of an inch.
"""

from __future__ import annotations

import textwrap
from typing import Any

import FreeCAD
import Part

from flushback_sketches import KnifeSketches

GROUP = "FlushbackAnswer"
THOU_MM = 0.0254
LINE_LENGTH = 44

STOPS = {1: "open", 2: "half stop", 3: "closed"}
VERDICTS = {1: "in the window", 2: "low", 3: "high", 5: "does not rest"}
SEVERITIES = {1: "Note", 2: "Warning", 3: "Fault"}
COLOURS = {1: (0.3, 0.3, 0.3), 2: (0.9, 0.5, 0.0), 3: (0.8, 0.0, 0.0)}


class Answer:
    """Draws an answer into a document."""

    def __init__(self, document: Any, sketches: KnifeSketches) -> None:
        self._document = document
        self._sketches = sketches

    def draw(self, checked: Any, planned: Any) -> Any:
        """Makes the group of the answer anew.

        :param checked: A CheckResponse with the report as text among its files.
        :param planned: A PlanResponse whose corrected outlines are drawn too; None for none.
        :returns: The group.
        """
        self._take_out()
        report = checked.report
        group = self._document.addObject("App::DocumentObjectGroup", GROUP)
        group.Label = f"Flushback, {report.name}"
        for stop in report.stops:
            group.addObject(self._stop(report, stop))
        for number, finding in enumerate(report.findings, 1):
            if finding.HasField("at"):
                group.addObject(self._finding(number, finding))
        if planned is not None:
            group.addObject(self._corrected(planned.report))
        text = self._document.addObject("App::TextDocument", "FlushbackReport")
        text.Label = f"Report, {report.name}"
        text.Text = checked.artifacts[0].content.decode()
        group.addObject(text)
        return group

    def _take_out(self) -> None:
        for earlier in [thing for thing in self._document.Objects if thing.Name.startswith(GROUP)]:
            earlier.removeObjectsFromDocument()
            self._document.removeObject(earlier.Name)

    # --- A stop: its reading, its contacts, blade and spring as they stand ---

    def _stop(self, report: Any, stop: Any) -> Any:
        name = STOPS[stop.stop]
        group = self._document.addObject("App::DocumentObjectGroup", "FlushbackStop")
        group.Label = f"{name.capitalize()}: {lift(stop.lift_mm)}, {VERDICTS.get(stop.verdict, '')}"
        for number, contact in enumerate(stop.contacts, 1):
            group.addObject(self._contact(name, number, contact))
        if stop.contacts:
            group.addObject(self._reading(name, stop))
        for label, shape in self._turned(report, stop):
            group.addObject(self._shape(f"{label}, {name}", shape))
        return group

    def _contact(self, name: str, number: int, contact: Any) -> Any:
        faces = f"{word(contact, 'blade_face')} on {word(contact, 'spring_face')}"
        mark = self._shape(f"Contact {number}, {name}: {faces}", Part.Vertex(self._place(contact.at)))
        if mark.ViewObject:
            mark.ViewObject.PointColor, mark.ViewObject.PointSize = COLOURS[3], 7
        return mark

    def _reading(self, name: str, stop: Any) -> Any:
        lines = [
            f"{name.capitalize()}: {lift(stop.lift_mm)}",
            f"wanted {lift(stop.target_mm - stop.tolerance_mm)} to {lift(stop.target_mm + stop.tolerance_mm)}",
            f"rests at {stop.rest_angle_deg:.2f} deg, {VERDICTS.get(stop.verdict, '')}",
        ]
        return self._text(f"Reading, {name}", lines, stop.contacts[0].at)

    def _finding(self, number: int, finding: Any) -> Any:
        severity = SEVERITIES.get(finding.severity, "")
        lines = textwrap.wrap(f"{number} {severity}: {finding.message}", LINE_LENGTH)
        lines += textwrap.wrap(finding.advice, LINE_LENGTH)
        text = self._text(f"{severity} {number}, {finding.code.replace('_', ' ').lower()}", lines, finding.at)
        if text.ViewObject:
            text.ViewObject.TextColor = COLOURS.get(finding.severity, COLOURS[1])
        return text

    def _turned(self, report: Any, stop: Any) -> "list[tuple[str, Any]]":
        """Blade and spring as they stand at a stop."""
        if not stop.contacts:
            return []
        reading = report.reading
        # The knife frame turns counter-clockwise in a drawing that shows it unmirrored; the blade closes clockwise.
        hand = -1 if reading.mirrored else 1
        pivot = _pivot(reading, stop.contacts[0])
        blade = self._rotated("BLADE", pivot, -hand * (stop.rest_angle_deg - reading.drawn_blade_angle_deg))
        turn = hand * stop.spring_rotation_deg
        on_steel = [FreeCAD.Vector(contact.at.x_mm, contact.at.y_mm, 0) for contact in stop.contacts]

        def off(spring: Any) -> float:
            return sum(spring.distToShape(Part.Vertex(point))[0] for point in on_steel)

        # The centre pin is the one of the circles about which the spring comes to its contacts.
        centres = [circle.Center for circle in self._sketches.circles() if (circle.Center - pivot).Length > 0.1]
        springs = [self._rotated("SPRING", centre, turn) for centre in centres]
        return [("Blade", blade), ("Spring", min(springs, key=off))]

    def _rotated(self, layer: str, about: Any, degrees: float) -> Any:
        shape = Part.Compound(list(self._sketches.edges(layer)))
        shape.rotate(about, FreeCAD.Vector(0, 0, 1), degrees)
        return shape

    # --- Corrected outlines ---

    def _corrected(self, report: Any) -> Any:
        group = self._document.addObject("App::DocumentObjectGroup", "FlushbackCorrected")
        reached = "as wanted" if report.reaches_targets else "as near as removal comes"
        group.Label = f"Corrected, {reached}: {report.removed_mm2:.3f} mm2 off"
        for label, outline in (("Blade", report.blade), ("Spring", report.spring)):
            group.addObject(self._shape(f"{label}, corrected", wire_of(outline)))
        return group

    # --- Objects in the plane of the sketches ---

    def _shape(self, label: str, shape: Any) -> Any:
        made = self._document.addObject("Part::Feature", "Flushback")
        made.Label = label
        made.Shape = shape
        made.Placement = self._sketches.plane.multiply(made.Placement)
        return made

    def _text(self, label: str, lines: "list[str]", at: Any) -> Any:
        text = self._document.addObject("App::Annotation", "FlushbackText")
        text.Label = label
        text.LabelText = lines
        text.Position = self._sketches.plane.multVec(self._place(at))
        return text

    @staticmethod
    def _place(point: Any) -> Any:
        return FreeCAD.Vector(point.x_mm, point.y_mm, 0)


def lift(mm: float) -> str:
    """A reading in the unit that FreeCAD shows, and in thousandths of an inch; plus is proud."""
    # The unit that goes with a tang: for a reading by itself FreeCAD would take micrometres.
    of_a_tang = FreeCAD.Units.Quantity(10, FreeCAD.Units.Length)
    _, unit_mm, unit = FreeCAD.Units.schemaTranslate(of_a_tang, FreeCAD.Units.getSchema())
    places = 3 if unit_mm < 5 else 4
    return f"{mm / unit_mm:+.{places}f} {unit} ({mm / THOU_MM:+.1f} thou)"


def word(message: Any, field: str) -> str:
    """The value of a field as a maker says it: BLADE_FACE_OPEN_CORNER of blade_face as open corner."""
    value = message.DESCRIPTOR.fields_by_name[field].enum_type.values_by_number[getattr(message, field)]
    return value.name.removeprefix(f"{field.upper()}_").replace("_", " ").lower()


def wire_of(outline: Any) -> Any:
    """An Outline of the contract as a closed wire of lines and arcs."""
    vertices = list(outline.vertices)
    edges = []
    for here, next_ in zip(vertices, vertices[1:] + vertices[:1]):
        start, end = FreeCAD.Vector(here.x_mm, here.y_mm, 0), FreeCAD.Vector(next_.x_mm, next_.y_mm, 0)
        if here.bulge == 0:
            edges.append(Part.LineSegment(start, end).toShape())
            continue
        # The middle of the arc lies the bulge times half the chord to the right of it.
        chord = end - start
        middle = (start + end) / 2 + FreeCAD.Vector(chord.y, -chord.x, 0) * (here.bulge / 2)
        edges.append(Part.Arc(start, middle, end).toShape())
    return Part.Wire(edges)


def _pivot(reading: Any, contact: Any) -> Any:
    """Where the origin of the knife frame is in the drawing: a contact is told in both."""
    side = -1 if reading.mirrored else 1
    in_knife = FreeCAD.Vector(contact.at_knife.x_mm, side * contact.at_knife.y_mm, 0)
    turned = FreeCAD.Rotation(FreeCAD.Vector(0, 0, 1), reading.axis_deg).multVec(in_knife)
    return FreeCAD.Vector(contact.at.x_mm, contact.at.y_mm, 0) - turned
