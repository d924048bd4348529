"""An independent reader and writer of DXF for the tests, on ezdxf (Debian: python3-ezdxf).

    dxf_referee.py dump FILE          read FILE strictly, audit it, print its model space as JSON
    dxf_referee.py sample FILE        print points on everything in the model space of FILE, by layer, as JSON
    dxf_referee.py make DIR           write drawings of every version and entity into DIR, print what they hold as JSON

Coordinates in the JSON are the drawing's own, with all digits; angles are degrees.
"""

import json
import math
import sys
from pathlib import Path

import ezdxf
from ezdxf import recover
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
        if entity.dxf.halign != 0:
            entry |= {"alignment": entity.dxf.halign, "aligned": xy(entity.dxf.align_point)}
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


def samples(entity, sagitta=1e-4) -> list:
    """Points on the true curve of an entity, blocks exploded: one list of points for each primitive in it."""
    kind = entity.dxftype()
    if kind == "INSERT":
        # Points go through the matrices of all blocks above them. ezdxf's own exploding loses the shear of a turned
        # block inside an unequally scaled one.
        return [
            [xy(p) for p in one.matrix44().transform_vertices([(x, y, 0) for x, y in line])]
            for one in (entity.multi_insert() if entity.mcount > 1 else [entity])
            for part in entity.block()
            for line in samples(part, sagitta)
        ]
    if kind in ("LWPOLYLINE", "POLYLINE"):
        return [line for part in entity.virtual_entities() for line in samples(part, sagitta)]
    if kind == "LINE":
        return [[xy(entity.dxf.start), xy(entity.dxf.end)]]
    if kind in ("ARC", "CIRCLE", "ELLIPSE"):
        return [[xy(p) for p in entity.flattening(sagitta)]]
    if kind == "SPLINE":
        tool = entity.construction_tool()
        knots = sorted(set(tool.knots()))
        inner = [k for k in knots if tool.knots()[tool.degree] <= k <= tool.knots()[-tool.degree - 1]]
        steps = [a + (b - a) * i / 200 for a, b in zip(inner, inner[1:]) for i in range(200)] + [inner[-1]]
        return [[xy(p) for p in tool.points(steps)]]
    raise ValueError(kind)


def sample(path: str) -> dict:
    """Points on every curve in model space that is seen, by the layer it is seen on."""
    # Real drawings are not all well-formed: the recovering reader takes what the strict one refuses.
    doc, _ = recover.readfile(path)
    curves = {}
    for entity in doc.modelspace():
        if entity.dxftype() in ("LINE", "ARC", "CIRCLE", "ELLIPSE", "LWPOLYLINE", "POLYLINE", "SPLINE"):
            curves.setdefault(entity.dxf.layer.upper(), []).extend(samples(entity, 1e-3))
        elif entity.dxftype() == "INSERT":
            for one in entity.multi_insert() if entity.mcount > 1 else [entity]:
                for part in one.virtual_entities():
                    layer = one.dxf.layer if part.dxf.layer == "0" else part.dxf.layer
                    if part.dxftype() not in ("TEXT", "MTEXT", "ATTDEF", "POINT", "SOLID", "HATCH"):
                        curves.setdefault(layer.upper(), []).extend(samples(part, 1e-3))
    return {"units": doc.header.get("$INSUNITS", 0), "curves": curves}


def curved_drawing(version: str):
    """One curve a layer, so that each can be compared by itself."""
    doc = ezdxf.new(version)
    doc.header["$INSUNITS"] = 4
    msp = doc.modelspace()
    wave = [(0, 0, 0), (3, 9, 0), (8, -4, 0), (14, 11, 0), (20, 1, 0), (26, 7, 0)]

    def on(name):
        doc.layers.add(name)
        return {"layer": name}

    msp.add_ellipse((4, 5), (20, 7), 0.3, dxfattribs=on("WHOLE_ELLIPSE"))
    msp.add_ellipse((-4, 5), (0, 12), 0.45, 0.5, 5.0, dxfattribs=on("PART_ELLIPSE"))
    msp.add_ellipse((4, 5), (20, 7), 0.3, 1.0, 2.5, dxfattribs=on("ELLIPSE_BEHIND") | {"extrusion": (0, 0, -1)})
    msp.add_ellipse((4, 5), (6, 8), 1.0, dxfattribs=on("ROUND_ELLIPSE"))
    msp.add_open_spline(wave, degree=3, dxfattribs=on("CUBIC"))
    msp.add_open_spline(wave, degree=2, dxfattribs=on("QUADRATIC"))
    msp.add_open_spline(wave, degree=5, dxfattribs=on("QUINTIC"))
    msp.add_spline(dxfattribs=on("CLOSED")).set_closed(wave, degree=3)
    msp.add_rational_spline(wave, weights=[1, 2, 0.5, 3, 1, 1], degree=3, dxfattribs=on("RATIONAL"))
    closed_rational = msp.add_spline(dxfattribs=on("CLOSED_RATIONAL"))
    closed_rational.set_closed_rational(wave, weights=[1, 2, 1, 3, 1, 1], degree=3)
    half = math.sqrt(0.5)
    circle = msp.add_rational_spline(
        [(5, 0), (5, 5), (0, 5), (-5, 5), (-5, 0), (-5, -5), (0, -5), (5, -5), (5, 0)],
        weights=[1, half, 1, half, 1, half, 1, half, 1],
        degree=2,
        knots=[0, 0, 0, 1, 1, 2, 2, 3, 3, 4, 4, 4],
        dxfattribs=on("SPLINE_CIRCLE"),
    )
    circle.closed = True
    kinked = msp.add_open_spline(
        [(0, 0), (1, 4), (4, 4), (5, 0), (9, -3), (9, 6), (12, 0)],
        degree=3,
        knots=[0, 0, 0, 0, 1, 1, 1, 2, 2, 2, 2],
        dxfattribs=on("KINKED"),
    )
    assert kinked.dxf.degree == 3
    fit = msp.add_spline(wave, degree=3, dxfattribs=on("FIT_WITH_TANGENTS"))
    fit.dxf.start_tangent = (1, 2, 0)
    fit.dxf.end_tangent = (1, -1, 0)

    part = doc.blocks.new("PART", base_point=(1, 2))
    part.add_line((0, 0), (10, 0))
    part.add_arc((10, 3), 3, 270, 90)
    part.add_circle((4, 3), 1.5)
    part.add_lwpolyline([(0, 0, 0.4), (0, 6, 0), (10, 6, 0)], format="xyb")
    part.add_ellipse((5, 3), (3, 1), 0.5, 0.3, 4)
    pair = doc.blocks.new("PAIR", base_point=(-3, 0))
    pair.add_blockref("PART", (0, 0), dxfattribs={"rotation": 30})
    pair.add_blockref("PART", (0, 20), dxfattribs={"xscale": -1, "rotation": 15})
    msp.add_blockref("PART", (50, 40), dxfattribs=on("PLACED") | {"rotation": 90})
    msp.add_blockref("PART", (50, 40), dxfattribs=on("SCALED") | {"xscale": 2.5, "yscale": 2.5, "rotation": 33})
    msp.add_blockref("PART", (50, 40), dxfattribs=on("MIRRORED") | {"xscale": -1, "rotation": -20})
    msp.add_blockref("PART", (50, 40), dxfattribs=on("UPSIDE_DOWN") | {"yscale": -2, "xscale": 2, "rotation": 70})
    msp.add_blockref("PART", (50, 40), dxfattribs=on("UNEQUAL") | {"xscale": 3, "yscale": 1.5, "rotation": 25})
    msp.add_blockref("PART", (50, 40), dxfattribs=on("BEHIND") | {"rotation": 40, "extrusion": (0, 0, -1)})
    msp.add_blockref("PAIR", (-50, 40), dxfattribs=on("NESTED") | {"rotation": 10, "xscale": 1.5, "yscale": 1.5})
    msp.add_blockref("PAIR", (-50, 40), dxfattribs=on("NESTED_UNEQUAL") | {"rotation": 10, "xscale": 2, "yscale": -1})
    array = msp.add_blockref("PART", (5, 5), dxfattribs=on("ARRAY") | {"rotation": 20, "xscale": 0.5, "yscale": 0.5})
    array.grid(size=(2, 3), spacing=(15, 25))
    return doc, {e.dxf.layer: samples(e) for e in msp}


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
    for version in ("R2000", "R2018"):
        doc, curves = curved_drawing(version)
        path = target / f"curves_{version}.dxf"
        doc.saveas(path)
        made[path.name] = {"version": doc.dxfversion, "curves": curves}
    return made


def main() -> None:
    command, argument = sys.argv[1:3]
    result = {"dump": dump, "make": make, "sample": sample}[command](argument)
    json.dump(result, sys.stdout)


if __name__ == "__main__":
    main()
