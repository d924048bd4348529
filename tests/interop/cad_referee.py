"""A CAD program of the big sort for the tests: opens a text DXF without a screen and tells what it made of it.

    cad_referee.py FILE               print the edges of FILE, in the order of the file, as JSON, in millimetres

Debian: libfreecad-python3-0.20, of which only the importer written in C++ and the modeller below it are used. What it
remembers goes into a folder that is thrown away.
"""

import json
import os
import sys
import tempfile

LIBRARY = "/usr/lib/freecad-python3/lib"


def xy(point) -> list:
    return [point.x, point.y]


def described(edge) -> dict:
    first, last = edge.ParameterRange
    entry = {
        "kind": edge.Curve.TypeId.removeprefix("Part::Geom").lower(),
        "closed": edge.isClosed(),
        "ends": [xy(edge.valueAt(first)), xy(edge.valueAt(last))],
        "middle": xy(edge.valueAt((first + last) / 2)),
        "length": edge.Length,
    }
    if entry["kind"] == "circle":
        entry |= {"centre": xy(edge.Curve.Center), "radius": edge.Curve.Radius}
    return entry


def main() -> None:
    with tempfile.TemporaryDirectory() as home:
        os.environ["HOME"] = home
        sys.path.append(LIBRARY)
        import FreeCAD
        import Import
        import Part  # noqa: F401, without it shapes have no edges

        document = FreeCAD.newDocument("drawing")
        Import.readDXF(sys.argv[1], "drawing", False)
        edges = [described(edge) for part in document.Objects for edge in part.Shape.Edges]
    json.dump(edges, sys.stdout)


if __name__ == "__main__":
    main()
