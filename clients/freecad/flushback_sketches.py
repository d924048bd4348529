"""From sketches, wires and other objects with edges to a drawing that the service reads.

FreeCAD keeps lengths in millimetres whatever unit it shows them in, and so does the drawing.
"""

from __future__ import annotations

import math
from typing import Any, Iterable, Iterator

import FreeCAD
import Part

# A label that says pin is a pin's, even where it says whose: "blade pin".
LAYERS = (("PINS", ("pin", "pivot")), ("BLADE", ("blade",)), ("SPRING", ("spring",)), ("HANDLE", ("handle", "liner")))

# As far as edges may lie out of the plane of the first sketch.
FLAT_MM = 1e-4


class UnclearSketches(Exception):
    """What objects are cannot be told, or they are no drawing of a knife: one sentence with what to do."""


class KnifeSketches:
    """The objects of a knife, each on the layer its label names, in the plane they lie in."""

    def __init__(self, objects: Iterable[Any]) -> None:
        """
        :param objects: Sketches or other objects with edges.
        :raises UnclearSketches: A label does not tell, blade or spring is missing, or they lie in several planes.
        """
        self.shapes: dict[str, list[Any]] = {layer: [] for layer, _ in LAYERS}
        """Shapes by layer, where they lie in the document."""
        shapes = [(thing, _shape_of(thing)) for thing in objects]
        shapes = [(thing, shape) for thing, shape in shapes if shape is not None and shape.Edges]
        for thing, shape in shapes:
            self.shapes[_layer_of(thing)].append(shape)
        missing = [layer.lower() for layer in ("BLADE", "SPRING") if not self.shapes[layer]]
        if missing:
            raise UnclearSketches(
                f"Nothing with edges is selected whose label says {' or '.join(missing)}; select the sketches of "
                "blade, spring and pins, and give each a label that says which it is."
            )
        self.plane = _plane_of(shapes)
        """Placement of the plane: its own x and y are those of the drawing."""
        self._refuse_what_is_not_flat(shapes)

    def edges(self, layer: str) -> Iterator[Any]:
        """Edges of a layer in the plane, as the drawing has them."""
        back = self.plane.inverse().toMatrix()
        for shape in self.shapes[layer]:
            # As edges of the plane, so that arcs stay arcs.
            yield from shape.transformed(back, copy=True).Edges

    def circles(self) -> Iterator[Any]:
        """Whole circles of all layers in the plane: the pins, and whatever else is round."""
        for layer in self.shapes:
            yield from (edge.Curve for edge in self.edges(layer) if _is_circle(edge))

    def to_dxf(self) -> bytes:
        """The drawing: a text DXF in millimetres."""
        groups: list[tuple[int, object]] = [(0, "SECTION"), (2, "HEADER"), (9, "$ACADVER"), (1, "AC1015")]
        groups += [(9, "$INSUNITS"), (70, 4), (0, "ENDSEC"), (0, "SECTION"), (2, "ENTITIES")]
        for layer in self.shapes:
            for edge in self.edges(layer):
                groups += _entity(layer, edge)
        groups += [(0, "ENDSEC"), (0, "EOF")]
        return "".join(f"{code}\n{value}\n" for code, value in groups).encode("ascii")

    def _refuse_what_is_not_flat(self, shapes: list[tuple[Any, Any]]) -> None:
        back = self.plane.inverse().toMatrix()
        for thing, shape in shapes:
            box = shape.transformed(back, copy=True).BoundBox
            if max(abs(box.ZMin), abs(box.ZMax)) > FLAT_MM:
                raise UnclearSketches(
                    f"{thing.Label!r} does not lie in the plane of {shapes[0][0].Label!r}; draw the knife in one plane."
                )


def _shape_of(thing: Any) -> Any:
    """The shape where it lies in the document, also inside a body that was moved; None where there is none."""
    if not hasattr(thing, "Shape"):
        return None
    shape = thing.Shape.copy()
    if hasattr(thing, "getGlobalPlacement"):
        shape.Placement = thing.getGlobalPlacement()
    return shape


def _layer_of(thing: Any) -> str:
    label = thing.Label.lower()
    for layer, words in LAYERS:
        if any(word in label for word in words):
            return layer
    raise UnclearSketches(
        f"The label {thing.Label!r} does not say what it is; give it one with blade, spring, handle or pin in it, or "
        "select it no more."
    )


def _plane_of(shapes: list[tuple[Any, Any]]) -> Any:
    """The plane of the first sketch; without a sketch that of the document's x and y."""
    for thing, shape in shapes:
        if thing.isDerivedFrom("Sketcher::SketchObject"):
            return shape.Placement
    return FreeCAD.Placement()


def _is_circle(edge: Any) -> bool:
    return edge.Curve.TypeId == "Part::GeomCircle" and edge.isClosed()


def _entity(layer: str, edge: Any) -> "list[tuple[int, object]]":
    """An edge as an entity; what is none of line, circle and ellipse as a spline."""
    curve, (first, last) = edge.Curve, edge.ParameterRange
    if curve.TypeId == "Part::GeomLine":
        start, end = edge.valueAt(first), edge.valueAt(last)
        return [(0, "LINE"), (8, layer), *_at(10, start), *_at(11, end)]
    if curve.TypeId == "Part::GeomCircle":
        round_ = [(8, layer), *_at(10, curve.Center), (40, curve.Radius)]
        if edge.isClosed():
            return [(0, "CIRCLE"), *round_]
        angles = [_degrees(edge.valueAt(at) - curve.Center) for at in (first, last)]
        # An arc of DXF runs counter-clockwise seen from above.
        start_deg, end_deg = angles if curve.Axis.z > 0 else reversed(angles)
        return [(0, "ARC"), *round_, (50, start_deg), (51, end_deg)]
    return _spline(layer, curve.toBSpline(first, last))


def _spline(layer: str, curve: Any) -> "list[tuple[int, object]]":
    knots = [knot for knot, times in zip(curve.getKnots(), curve.getMultiplicities()) for _ in range(times)]
    poles, weights = curve.getPoles(), curve.getWeights()
    groups: list[tuple[int, object]] = [(0, "SPLINE"), (8, layer), (70, 12 if curve.isRational() else 8)]
    groups += [(71, curve.Degree), (72, len(knots)), (73, len(poles)), (74, 0)]
    groups += [(40, float(knot)) for knot in knots]
    if curve.isRational():
        groups += [(41, float(weight)) for weight in weights]
    for pole in poles:
        groups += _at(10, pole)
    return groups


def _at(code: int, point: Any) -> "list[tuple[int, object]]":
    return [(code, float(point.x)), (code + 10, float(point.y)), (code + 20, 0.0)]


def _degrees(direction: Any) -> float:
    return math.degrees(math.atan2(direction.y, direction.x)) % 360
