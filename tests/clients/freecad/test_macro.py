"""The macro for FreeCAD, in FreeCAD without its windows, against the live service on this machine."""

from __future__ import annotations

import json
import os
import pathlib
import subprocess
import sys
import tempfile
import unittest

ROOT = pathlib.Path(__file__).resolve().parents[3]
sys.path[:0] = [str(ROOT / "tests" / "clients" / "python"), str(ROOT / "clients" / "samples")]
sys.path[:0] = [str(ROOT / "clients" / folder) for folder in ("python", "freecad")]
# What FreeCAD remembers goes into a folder that is thrown away.
_HOME = tempfile.TemporaryDirectory()
os.environ["HOME"] = _HOME.name
sys.path.append("/usr/lib/freecad-python3/lib")

import FreeCAD  # noqa: E402
import Part  # noqa: E402
import Sketcher  # noqa: E402, F401, without it documents have no sketches

import flushback  # noqa: E402
import flushback_macro  # noqa: E402
from flushback_sketches import KnifeSketches, UnclearSketches  # noqa: E402
from live_service import LiveService  # noqa: E402
from make_samples import SAMPLES as KNIVES  # noqa: E402
from outlines import Edge, Placing  # noqa: E402

SAMPLES = ROOT / "clients" / "samples"
INCH_MM = 25.4

# Sketches hold what the scripts compute, the samples what they print of it: 6 to 9 places of millimetres or inches.
PRINTED_MM = 2e-5


def vector(point: complex) -> "FreeCAD.Vector":
    return FreeCAD.Vector(point.real, point.imag, 0)


def geometry(edge: Edge) -> object:
    """An edge of an outline as geometry of a sketch."""
    if edge.bulge == 0:
        return Part.LineSegment(vector(edge.start), vector(edge.end))
    chord = edge.end - edge.start
    middle = (edge.start + edge.end) / 2 - 1j * chord * edge.bulge / 2
    return Part.Arc(vector(edge.start), vector(middle), vector(edge.end))


def sketched(file: str, plane: "FreeCAD.Placement | None" = None) -> "tuple[object, list[object]]":
    """A document with the knife of a sample as sketches, in millimetres, and the sketches."""
    sample = next(sample for sample in KNIVES if sample.file == file)
    inch = Placing(scale=INCH_MM if sample.placing.scale != 1 else 1)
    closed = Placing(degrees=-180 if sample.closed else 0)
    pattern, placing = sample.pattern, sample.placing
    parts = {
        "Blade": placing.edges(closed.edges(pattern.blade())),
        "Backspring": placing.edges(pattern.spring()),
        "Handle": placing.edges(pattern.handle()),
    }
    document = FreeCAD.newDocument("Knife")
    document.Label = file.removesuffix(".dxf")
    sketches = []
    for label, edges in parts.items():
        sketches.append(add_sketch(document, label, [geometry(edge) for edge in inch.edges(edges)], plane))
    circles = [inch.circle(placing.circle(pin)) for pin in pattern.pins]
    rounds = [Part.Circle(vector(pin.centre), FreeCAD.Vector(0, 0, 1), pin.diameter / 2) for pin in circles]
    sketches.append(add_sketch(document, "Pins", rounds, plane))
    document.recompute()
    return document, sketches


def add_sketch(document: object, label: str, drawn: "list[object]", plane: object) -> object:
    sketch = document.addObject("Sketcher::SketchObject", "Sketch")
    sketch.Label = label
    sketch.Placement = plane or FreeCAD.Placement()
    sketch.addGeometry(drawn, False)
    return sketch


def named(group: object, beginning: str) -> "list[object]":
    """Everything in a group and the groups in it whose label begins so."""
    found = []
    for thing in group.Group:
        if thing.Label.startswith(beginning):
            found.append(thing)
        if hasattr(thing, "Group"):
            found += named(thing, beginning)
    return found


class MacroTests(unittest.TestCase):
    @classmethod
    def setUpClass(cls) -> None:
        cls.running = LiveService()
        cls.addClassCleanup(cls.running.close)
        cls.service = flushback.connect(cls.running.address, deadline_s=600)
        cls.addClassCleanup(cls.service.close)

    def tearDown(self) -> None:
        for name in list(FreeCAD.listDocuments()):
            FreeCAD.closeDocument(name)

    def test_sketches_read_as_the_drawing_of_the_same_knife(self) -> None:
        for sample in KNIVES:
            with self.subTest(sample.file):
                document, sketches = sketched(sample.file)
                by_sketches = self.service.check(KnifeSketches(sketches).to_dxf()).report
                by_drawing = self.service.check(SAMPLES / sample.file).report

                self.assertEqual(
                    [(stop.stop, stop.verdict, len(stop.contacts)) for stop in by_drawing.stops],
                    [(stop.stop, stop.verdict, len(stop.contacts)) for stop in by_sketches.stops],
                )
                for drawn, asked in zip(by_drawing.stops, by_sketches.stops):
                    self.assertAlmostEqual(drawn.lift_mm, asked.lift_mm, delta=PRINTED_MM)
                FreeCAD.closeDocument(document.Name)

    def test_readings_contacts_and_findings_of_the_service_are_in_the_document(self) -> None:
        for file in ("wagtail-half-stop.dxf", "lapwing-reads-badly.dxf", "godwit-inch-closed-mirrored.dxf"):
            with self.subTest(file):
                document, sketches = sketched(file)
                report = self.service.check(SAMPLES / file).report

                group = flushback_macro.check(document, sketches, self.service)

                scale = INCH_MM if report.reading.unit == 4 else 1
                self.assertEqual(f"Flushback, {document.Label}", group.Label)
                for stop, name in zip(report.stops, self._names(report)):
                    marks = named(group, "Contact ")
                    marks = [mark for mark in marks if f", {name}:" in mark.Label]
                    self.assertEqual(len(stop.contacts), len(marks))
                    for contact, mark in zip(stop.contacts, marks):
                        point = mark.Shape.Point
                        self.assertAlmostEqual(contact.at.x_mm, point.x, delta=PRINTED_MM * scale)
                        self.assertAlmostEqual(contact.at.y_mm, point.y, delta=PRINTED_MM * scale)
                    lines = named(group, f"Reading, {name}")[0].LabelText
                    self.assertIn(f"({stop.lift_mm / 0.0254:+.1f} thou)", lines[0])
                placed = [finding for finding in report.findings if finding.HasField("at")]
                texts = [text for word in ("Warning ", "Fault ", "Note ") for text in named(group, word)]
                self.assertEqual(len(placed), len(texts))
                text = named(group, "Report, ")[0].Text
                self.assertTrue(text.startswith(document.Label), text[:80])
                FreeCAD.closeDocument(document.Name)

    def test_the_modeller_finds_blade_and_spring_touching_where_the_service_says(self) -> None:
        for file in ("wagtail-half-stop.dxf", "godwit-inch-closed-mirrored.dxf", "dunlin-no-half-stop.dxf"):
            with self.subTest(file):
                document, sketches = sketched(file)

                group = flushback_macro.check(document, sketches, self.service)

                blades, springs = named(group, "Blade, "), named(group, "Spring, ")
                marks = named(group, "Contact ")
                standing = [pair for pair in zip(blades, springs) if not pair[0].Label.endswith("corrected")]
                self.assertGreaterEqual(len(standing), 2)
                for blade, spring in standing:
                    stop = blade.Label.removeprefix("Blade, ")
                    self.assertAlmostEqual(0, blade.Shape.distToShape(spring.Shape)[0], delta=1e-4)
                    for mark in [mark for mark in marks if f", {stop}:" in mark.Label]:
                        # Touching is up to 0.002 mm apart: BenchSettings.contact_tolerance_mm.
                        self.assertAlmostEqual(0, blade.Shape.distToShape(mark.Shape)[0], delta=0.003)
                        self.assertAlmostEqual(0, spring.Shape.distToShape(mark.Shape)[0], delta=0.003)
                FreeCAD.closeDocument(document.Name)

    def test_corrected_outlines_are_drawn_and_read_as_wanted(self) -> None:
        document, sketches = sketched("whimbrel-reads-high.dxf")
        plan = self.service.plan(KnifeSketches(sketches).to_dxf(), name=document.Label).report

        group = flushback_macro.check(document, sketches, self.service)

        blade, spring = named(group, "Blade, corrected")[0], named(group, "Spring, corrected")[0]
        # What came off, by the modeller's own areas; with the plan's, to its 1e-6 of the blade's.
        before = Part.Face(Part.Wire(Part.__sortEdges__(sketches[0].Shape.Edges))).Area
        spring_before = Part.Face(Part.Wire(Part.__sortEdges__(sketches[1].Shape.Edges))).Area
        after = Part.Face(blade.Shape).Area + Part.Face(spring.Shape).Area
        self.assertAlmostEqual(plan.removed_mm2, before + spring_before - after, delta=1e-3)
        corrected = KnifeSketches([blade, spring, sketches[3]]).to_dxf()
        report = self.service.check(corrected).report
        self.assertEqual([1, 1, 1], [stop.verdict for stop in report.stops])  # VERDICT_GOOD

    def test_a_knife_in_another_plane_reads_the_same_and_its_answer_lies_there(self) -> None:
        plane = FreeCAD.Placement(FreeCAD.Vector(3, -7, 11), FreeCAD.Rotation(FreeCAD.Vector(1, 0, 0), 90))
        document, sketches = sketched("wagtail-half-stop.dxf", plane)

        group = flushback_macro.check(document, sketches, self.service)

        report = self.service.check(SAMPLES / "wagtail-half-stop.dxf").report
        contact = report.stops[0].contacts[0].at
        expected = plane.multVec(FreeCAD.Vector(contact.x_mm, contact.y_mm, 0))
        found = named(group, "Contact 1, open")[0].Shape.Point
        self.assertLess((found - expected).Length, PRINTED_MM)
        self.assertLess((named(group, "Reading, open")[0].Position - expected).Length, PRINTED_MM)
        self.assertIn("(+5.0 thou)", named(group, "Half stop")[0].Label)

    def test_readings_are_in_the_unit_that_is_shown(self) -> None:
        document, sketches = sketched("wagtail-half-stop.dxf")
        FreeCAD.Units.setSchema(3)
        self.addCleanup(FreeCAD.Units.setSchema, 0)

        group = flushback_macro.check(document, sketches, self.service)

        # 0.127 mm by the definition of the inch.
        self.assertIn("+0.0050 in (+5.0 thou)", named(group, "Half stop")[0].Label)

    def test_running_it_again_takes_the_earlier_answer_out_and_leaves_the_sketches(self) -> None:
        document, sketches = sketched("wagtail-half-stop.dxf")
        before = {sketch.Name: sketch.Shape.Length for sketch in sketches}

        flushback_macro.check(document, sketches, self.service)
        first = len(document.Objects)
        flushback_macro.check(document, sketches, self.service)

        self.assertEqual(first, len(document.Objects))
        self.assertEqual(before, {sketch.Name: sketch.Shape.Length for sketch in sketches})

    def test_splines_and_ellipses_are_sent_as_curves(self) -> None:
        document, sketches = sketched("wagtail-half-stop.dxf")
        handle = sketches[2]
        ends = FreeCAD.Vector(200, 200, 0), FreeCAD.Vector(230, 215, 0), FreeCAD.Vector(260, 200, 0)
        spline = Part.BSplineCurve()
        spline.interpolate(list(ends))
        ellipse = Part.Ellipse(FreeCAD.Vector(0, 0, 0), 20, 10)

        other = add_sketch(document, "Liner", [spline, ellipse], None)
        document.recompute()
        text = KnifeSketches([*sketches[:2], sketches[3], other]).to_dxf().decode()

        self.assertEqual(2, text.count("\nSPLINE\n"))
        self.assertEqual("Handle", handle.Label)

    def test_labels_that_do_not_tell_and_parts_that_are_missing_are_told(self) -> None:
        document, sketches = sketched("wagtail-half-stop.dxf")
        sketches[1].Label = "Sketch 7"
        with self.assertRaisesRegex(UnclearSketches, "'Sketch 7' does not say what it is"):
            flushback_macro.check(document, sketches, self.service)
        with self.assertRaisesRegex(UnclearSketches, "label says spring"):
            flushback_macro.check(document, sketches[:1], self.service)

    def test_a_knife_in_two_planes_is_told(self) -> None:
        document, sketches = sketched("wagtail-half-stop.dxf")
        sketches[3].Placement = FreeCAD.Placement(FreeCAD.Vector(0, 0, 1), FreeCAD.Rotation())
        document.recompute()

        with self.assertRaisesRegex(UnclearSketches, "'Pins' does not lie in the plane of 'Blade'"):
            flushback_macro.check(document, sketches, self.service)

    def test_what_the_service_refuses_leaves_the_document_as_it_was(self) -> None:
        document, sketches = sketched("wagtail-half-stop.dxf")
        count = len(document.Objects)

        with self.assertRaises(flushback.FlushbackError) as refused:
            flushback_macro.check(document, sketches[:3], self.service)

        self.assertEqual("INVALID_ARGUMENT", refused.exception.code)
        self.assertEqual(count, len(document.Objects))

    def test_the_settings_of_freecad_say_which_service_is_asked(self) -> None:
        document, sketches = sketched("wagtail-half-stop.dxf")
        FreeCAD.ParamGet(flushback_macro.SETTINGS).SetString("Server", self.running.address)
        self.addCleanup(FreeCAD.ParamGet(flushback_macro.SETTINGS).RemString, "Server")

        with flushback_macro.connect() as service:
            group = flushback_macro.check(document, sketches, service)

        self.assertEqual(3, len(named(group, "Reading, ")))

    def test_the_macro_itself_runs_where_it_lies(self) -> None:
        macro = ROOT / "clients" / "freecad" / "Flushback.FCMacro"

        exec(compile(macro.read_text(), str(macro), "exec"), {"__file__": str(macro)})

    @staticmethod
    def _names(report: object) -> "list[str]":
        return [{1: "open", 2: "half stop", 3: "closed"}[stop.stop] for stop in report.stops]


class OnScreenTests(unittest.TestCase):
    """The macro in FreeCAD with its windows, drawn where nobody sees them."""

    def test_a_box_says_when_no_service_answers(self) -> None:
        shown = self._run("http://127.0.0.1:1", "Blade", "Backspring", "Pins")

        self.assertEqual(1, len(shown["said"]))
        self.assertIn("The service at http://127.0.0.1:1 cannot be reached", shown["said"][0])

    def test_a_box_says_what_is_not_selected(self) -> None:
        shown = self._run("http://127.0.0.1:1", "Pins")

        self.assertEqual(1, len(shown["said"]))
        self.assertIn("select the sketches of blade, spring and pins", shown["said"][0])

    def test_the_answer_is_drawn_without_a_box(self) -> None:
        with LiveService() as running:
            shown = self._run(running.address, "Blade", "Backspring", "Handle", "Pins")

        self.assertEqual([], shown["said"])
        self.assertIn("Flushback, wagtail-half-stop", shown["labels"])

    def _run(self, *args: str) -> "dict[str, list[str]]":
        program = pathlib.Path(__file__).with_name("macro_on_screen.py")
        done = subprocess.run([sys.executable, str(program), *args], capture_output=True, text=True)
        self.assertEqual(0, done.returncode, done.stderr)
        return json.loads(done.stdout)


if __name__ == "__main__":
    unittest.main()
