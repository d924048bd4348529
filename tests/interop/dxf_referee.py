"""An independent reader and writer of DXF for the tests, on ezdxf (Debian: python3-ezdxf).

    dxf_referee.py dump FILE          read FILE strictly, audit it, print its model space as JSON
    dxf_referee.py make DIR           write drawings of every version and entity into DIR, print what they hold as JSON

Coordinates in the JSON are the drawing's own, with all digits; angles are degrees.
"""

import json
import math
import sys
from pathlib import Path

import ezdxf
from ezdxf.entities import DXFGraphic
from ezdxf.lldxf.encoding import decode_dxf_unicode

VERSIONS = ["R12", "R2000", "R2004", "R2007", "R2010", "R2013", "R2018"]


def xy(point):
    return [float(point[0]), float(point[1])]


def described(entity: DXFGraphic) -> dict:
    kind = entity.dxftype()
    entry = {"type": kind, "handle": entity.dxf.handle or "", "layer": entity.dxf.layer}
    if kind == "LINE":
        entry |= {"start": xy(entity.dxf.start), "end": xy(entity.dxf.end)}
    elif kind == "CIRCLE":
        entry |= {"centre": xy(entity.dxf.center), "radius": entity.dxf.radius}
    elif kind == "ARC":
        entry |= {
            "centre": xy(entity.dxf.center),
            "radius": entity.dxf.radius,
            "from": entity.dxf.start_angle,
            "to": entity.dxf.end_angle,
        }
    elif kind == "LWPOLYLINE":
        entry |= {
            "vertices": [list(map(float, v)) for v in entity.get_points("xyb")],
            "closed": bool(entity.closed),
        }
    elif kind == "POLYLINE":
        entry |= {
            "vertices": [[*xy(v.dxf.location), float(v.dxf.get("bulge", 0))] for v in entity.vertices],
            "closed": bool(entity.is_closed),
        }
    elif kind == "POINT":
        entry |= {"at": xy(entity.dxf.location)}
    elif kind == "TEXT":
        entry |= {"at": xy(entity.dxf.insert), "text": decode_dxf_unicode(entity.dxf.text), "height": entity.dxf.height}
    return entry


def dump(path: str) -> dict:
    doc = ezdxf.readfile(path)
    auditor = doc.audit()
    handles = [h for h in doc.entitydb.keys()]
    return {
        "version": doc.dxfversion,
        "units": doc.header.get("$INSUNITS", 0),
        "handseed": doc.header.get("$HANDSEED", "0"),
        "handles": len(handles),
        "highest": max((int(h, 16) for h in handles), default=0),
        "errors": [str(e.message) for e in auditor.errors],
        "fixes": [str(e.message) for e in auditor.fixes],
        "layers": [
            {"name": layer.dxf.name, "colour": abs(layer.dxf.color), "on": layer.is_on(), "frozen": layer.is_frozen()}
            for layer in doc.layers
        ],
        "blocks": sorted(b.name for b in doc.blocks if not b.name.startswith("*")),
        "entities": [described(e) for e in doc.modelspace()],
    }


def basic_drawing(version: str):
    doc = ezdxf.new(version, setup=True)
    doc.header["$INSUNITS"] = 4
    doc.header["$MEASUREMENT"] = 1
    for name, colour in (("BLADE", 1), ("SPRING", 3), ("PINS", 5), ("NOTES", 8), ("HIDDEN", 6), ("COLD", 4), ("Griffschale_\u00e4\u00df", 2)):
        doc.layers.add(name, color=colour)
    doc.layers.get("HIDDEN").off()
    doc.layers.get("COLD").freeze()
    msp = doc.modelspace()
    # A slot of loose lines and arcs, out of order and in mixed directions.
    blade = {"layer": "BLADE"}
    third = 1 / 3
    msp.add_line((third, 0), (30 + third, 0), dxfattribs=blade)
    msp.add_arc((third, 5), 5, 90, 270, dxfattribs=blade)
    msp.add_line((third, 10), (30 + third, 10), dxfattribs=blade)
    msp.add_arc((30 + third, 5), 5, 270, 90, dxfattribs=blade)
    # A closed polyline with bulges, mirrored in sign, far from the origin.
    points = [(-1000.1, 2000.2, 0.1), (-900.7, 2000.2, -0.41421356237309503), (-900.7, 2012.345678901234, 0), (-1000.1, 2011, 0.9)]
    if version == "R12":
        msp.add_polyline2d(points, format="xyb", close=True, dxfattribs={"layer": "SPRING"})
    else:
        msp.add_lwpolyline(points, format="xyb", close=True, dxfattribs={"layer": "SPRING"})
    msp.add_circle((math.pi, math.e), 1.1875, dxfattribs={"layer": "PINS"})
    # The same pin hole seen from behind, as a mirror command leaves it.
    msp.add_circle((10, 5), 2, dxfattribs={"layer": "PINS", "extrusion": (0, 0, -1)})
    msp.add_text("heat treat to 58", dxfattribs={"layer": "NOTES", "height": 2})
    msp.add_circle((0, 0), 9, dxfattribs={"layer": "Griffschale_\u00e4\u00df"})
    msp.add_line((0, 0), (1, 1), dxfattribs={"layer": "HIDDEN"})
    msp.add_line((0, 0), (1, 1), dxfattribs={"layer": "COLD"})
    return doc, points


def make(folder: str) -> dict:
    target = Path(folder)
    target.mkdir(parents=True, exist_ok=True)
    made = {}
    for version in VERSIONS:
        doc, points = basic_drawing(version)
        for form in ("asc", "bin"):
            path = target / f"basic_{version}_{form}.dxf"
            doc.saveas(path, fmt=form)
            made[path.name] = {"version": doc.dxfversion, "spring": points}
    return made


def main() -> None:
    command, argument = sys.argv[1:3]
    result = {"dump": dump, "make": make}[command](argument)
    json.dump(result, sys.stdout)


if __name__ == "__main__":
    main()
