"""The Python client against the live service on this machine."""

from __future__ import annotations

import concurrent.futures
import json
import os
import pathlib
import subprocess
import sys
import tempfile
import time
import unittest

import grpc

import certificates
from live_service import ROOT, SAMPLES, LiveService

sys.path.insert(0, str(ROOT / "clients" / "python"))
import flushback  # noqa: E402

WAGTAIL = SAMPLES / "wagtail-half-stop.dxf"
TOKEN = "0123456789abcdef0123456789abcdef"
THOU_MM = 0.0254

# What the command line says of the same drawing is the other witness.
CLIENT = ROOT / "artifacts" / "bin" / "Flushback.Cli" / "release" / "flushback.dll"


def by_command_line(*args: str) -> dict:
    done = subprocess.run(["dotnet", str(CLIENT), *args, "--json"], capture_output=True, text=True)
    assert done.stderr == "", done.stderr
    return json.loads(done.stdout)


class AnswersTests(unittest.TestCase):
    @classmethod
    def setUpClass(cls) -> None:
        cls.running = LiveService()
        cls.service = flushback.connect(cls.running.address, deadline_s=600)

    @classmethod
    def tearDownClass(cls) -> None:
        cls.service.close()
        cls.running.close()

    def test_a_check_says_the_same_as_the_command_line(self) -> None:
        report = self.service.check(WAGTAIL).report

        self.assertEqual(json.loads(flushback.to_json(report)), by_command_line("check", str(WAGTAIL)))

    def test_a_drawing_may_be_bytes_with_a_name(self) -> None:
        report = self.service.check(WAGTAIL.read_bytes(), name="Wagtail two").report

        self.assertEqual("Wagtail two", report.name)
        # The sample was drawn to read 5 and 15 thou: clients/samples/README.md.
        self.assertEqual([0.0, 5.0, 15.0], [round(stop.lift_mm / THOU_MM, 2) for stop in report.stops])

    def test_settings_and_files_reach_the_service(self) -> None:
        answer = self.service.check(
            WAGTAIL,
            bench={"target_set": "TARGET_SET_FINISHED", "closed": {"lift_mm": 0.4}, "step_deg": 1},
            handle={"width_mm": 3.2},
            artifacts=["HTML", "HANDLE_CSV"],
        )

        self.assertEqual([0, 0, 0.4], [stop.target_mm for stop in answer.report.stops])
        self.assertEqual(["report.html", "handle-curve.csv"], [made.file_name for made in answer.artifacts])
        self.assertTrue(answer.artifacts[0].content.startswith(b"<!DOCTYPE html>"))
        self.assertTrue(answer.report.HasField("handle"))

    def test_empty_settings_of_the_handle_still_ask_for_it(self) -> None:
        self.assertTrue(self.service.check(WAGTAIL, handle={}).report.HasField("handle"))
        self.assertFalse(self.service.check(WAGTAIL).report.HasField("handle"))

    def test_another_unit_and_other_layers_are_heard(self) -> None:
        with self.assertRaises(flushback.FlushbackError) as metres:
            self.service.check(WAGTAIL, unit="METRE")
        with self.assertRaises(flushback.FlushbackError) as layers:
            self.service.check(WAGTAIL, layers={"blade": "KLINGE"})

        self.assertEqual("INVALID_ARGUMENT", metres.exception.code)
        self.assertIn("KLINGE", str(layers.exception))

    def test_outlines_take_the_place_of_a_drawing(self) -> None:
        square = {"vertices": [{"x_mm": x, "y_mm": y} for x, y in ((0, 0), (1, 0), (1, 1), (0, 1))]}

        with self.assertRaises(flushback.FlushbackError) as refused:
            self.service.check(b"", knife={"outlines": {"blade": square, "spring": square}})

        self.assertIn("knife.outlines.pivot", [violation.field for violation in refused.exception.violations])

    def test_an_inspection_says_the_same_as_the_command_line(self) -> None:
        sheet = SAMPLES / "inspection" / "snipe-bad-sheet.dxf"

        answer = self.service.inspect(sheet, settings={"kerf_mm": 0.2}, artifacts=["CUT_PATH_DXF"])

        expected = by_command_line("inspect", str(sheet), "--kerf", "0.2mm")
        self.assertEqual(expected, json.loads(flushback.to_json(answer.report)))
        self.assertEqual(["cut-path.dxf"], [made.file_name for made in answer.artifacts])

    def test_a_simulation_says_the_same_as_the_command_line(self) -> None:
        corner = {"blade_face": "BLADE_FACE_OPEN_CORNER"}
        passes = [{"round_corner": {"corner": corner, "radius_mm": 0.3}}]

        answer = self.service.simulate(SAMPLES / "whimbrel-reads-high.dxf", passes)

        expected = by_command_line(
            "simulate", str(SAMPLES / "whimbrel-reads-high.dxf"), "--pass", "round open-corner radius=0.3mm"
        )
        self.assertEqual(expected, json.loads(flushback.to_json(answer.report)))

    def test_a_plan_says_the_same_as_the_command_line(self) -> None:
        whimbrel = SAMPLES / "whimbrel-reads-high.dxf"

        answer = self.service.plan(whimbrel, artifacts=["CORRECTED_DXF"])

        report = json.loads(flushback.to_json(answer.report))
        expected = by_command_line("plan", str(whimbrel))
        # Where the corrected outlines are is told only beside the drawing that holds them.
        self.assertEqual(expected, {name: value for name, value in report.items() if name != "layers"})
        self.assertTrue(answer.report.reaches_targets)
        self.assertIn(b"FLUSHBACK_", answer.artifacts[0].content)

    def test_any_method_can_be_called_and_plain_data_made_of_its_answer(self) -> None:
        answer = self.service.call(
            "flushback.v1.ProfileChecker/Check", {"knife": {"drawing": {"dxf": WAGTAIL.read_bytes()}}}
        )

        self.assertEqual("STOP_CLOSED", flushback.to_dict(answer)["report"]["stops"][2]["stop"])

    def test_calls_from_several_threads_are_answered(self) -> None:
        with flushback.connect(self.running.address) as service:
            with concurrent.futures.ThreadPoolExecutor(8) as threads:
                checks = threads.map(lambda _: service.check(WAGTAIL), range(24))
                answers = [answer.SerializeToString(deterministic=True) for answer in checks]

        self.assertEqual(1, len(set(answers)))

    def test_the_example_prints_a_line_for_each_drawing(self) -> None:
        done = self._example(str(SAMPLES), "--server", self.running.address)

        # Of the samples one reads badly and one reads high: 1, as the command line would end.
        self.assertEqual((1, ""), (done.returncode, done.stderr))
        self.assertEqual(len(list(SAMPLES.glob("*.dxf"))) + 1, len(done.stdout.splitlines()))
        readings = r"\+0\.0 \(\+0\.000\) +\+5\.0 \(\+0\.127\) +\+15\.0 \(\+0\.381\)"
        self.assertRegex(done.stdout, rf"wagtail-half-stop\.dxf +{readings} +clean")

    def test_the_example_goes_on_after_a_drawing_that_is_none(self) -> None:
        with tempfile.TemporaryDirectory() as folder:
            pathlib.Path(folder, "a.dxf").write_text("nonsense")
            pathlib.Path(folder, "b.dxf").write_bytes(WAGTAIL.read_bytes())
            done = self._example(folder, "--server", self.running.address)

        self.assertEqual(2, done.returncode)
        self.assertIn("b.dxf", done.stdout)
        self.assertTrue(done.stderr.startswith("a.dxf: This is no DXF file"), done.stderr)

    @staticmethod
    def _example(*args: str) -> "subprocess.CompletedProcess[str]":
        program = ROOT / "clients" / "python" / "check_folder.py"
        return subprocess.run([sys.executable, str(program), *args], capture_output=True, text=True)


class RefusalTests(unittest.TestCase):
    @classmethod
    def setUpClass(cls) -> None:
        cls.running = LiveService("--Limits:Vertices=8")
        cls.service = flushback.connect(cls.running.address, deadline_s=600)

    @classmethod
    def tearDownClass(cls) -> None:
        cls.service.close()
        cls.running.close()

    def test_a_file_that_is_no_drawing_is_told_with_its_field(self) -> None:
        error = self._refused(lambda: self.service.check(b"nonsense"))

        self.assertEqual("INVALID_ARGUMENT", error.code)
        self.assertEqual(["knife.drawing.dxf"], [violation.field for violation in error.violations])
        self.assertEqual(str(error), error.violations[0].sentence)
        self.assertEqual("DXF_NOT_DXF", error.violations[0].reason)

    def test_several_violations_are_a_sentence_each(self) -> None:
        error = self._refused(
            lambda: self.service.check(WAGTAIL, bench={"step_deg": 90, "least_tip_depth_mm": -1})
        )

        self.assertEqual(["bench.step_deg", "bench.least_tip_depth_mm"], [each.field for each in error.violations])
        self.assertEqual(2, len(str(error).splitlines()))

    def test_more_than_is_allowed_is_told_with_the_limit(self) -> None:
        error = self._refused(lambda: self.service.check(WAGTAIL))

        self.assertEqual("RESOURCE_EXHAUSTED", error.code)
        self.assertEqual(("Vertices", "8"), (error.limit["limit"], error.limit["allowed"]))

    def test_a_message_that_is_too_large_is_told_with_the_limit(self) -> None:
        error = self._refused(lambda: self.service.check(b"0" * 5_000_000))

        self.assertEqual(("RESOURCE_EXHAUSTED", "MessageBytes"), (error.code, error.limit["limit"]))

    def test_a_path_that_leads_nowhere_is_told(self) -> None:
        error = self._refused(lambda: self.service.check("/nowhere/knife.dxf"))

        self.assertEqual("NOT_FOUND", error.code)
        self.assertIn("/nowhere/knife.dxf", str(error))

    def test_a_field_that_is_none_is_told_with_those_there_are(self) -> None:
        error = self._refused(lambda: self.service.check(WAGTAIL, bench={"step": 1}))

        self.assertIn("step_deg", str(error))

    def test_a_value_of_another_kind_is_told(self) -> None:
        for wrong in ({"step_deg": "wide"}, {"open": 3}, {"target_set": "TARGET_SET_NONE"}):
            error = self._refused(lambda: self.service.check(WAGTAIL, bench=wrong))

            self.assertIn(next(iter(wrong)), str(error))

    def test_a_deadline_that_passes_is_told(self) -> None:
        error = self._refused(lambda: self.service.check(WAGTAIL, deadline_s=0.0001))

        self.assertEqual("DEADLINE_EXCEEDED", error.code)
        self.assertIn("deadline_s", str(error))

    def test_a_method_that_the_service_does_not_have_is_told(self) -> None:
        error = self._refused(lambda: self.service.call("flushback.v1.ProfileChecker/Grind", {}))

        self.assertEqual("UNIMPLEMENTED", error.code)

    def test_where_nobody_listens_it_is_told(self) -> None:
        with flushback.connect("http://127.0.0.1:1") as nobody:
            error = self._refused(lambda: nobody.check(WAGTAIL))

        self.assertEqual("UNAVAILABLE", error.code)
        self.assertIn("http://127.0.0.1:1", str(error))

    def test_an_address_that_is_none_is_refused(self) -> None:
        for address in ("127.0.0.1:5210", "http://127.0.0.1", "ftp://127.0.0.1:1", "http://127.0.0.1:1/path"):
            with self.assertRaises(ValueError):
                flushback.connect(address)

    def _refused(self, call) -> flushback.FlushbackError:
        with self.assertRaises(flushback.FlushbackError) as refused:
            call()
        return refused.exception


class SafeTests(unittest.TestCase):
    @classmethod
    def setUpClass(cls) -> None:
        folder = tempfile.TemporaryDirectory()
        cls.addClassCleanup(folder.cleanup)
        cls.certificate, key = certificates.make(pathlib.Path(folder.name), "server")
        cls.stranger, _ = certificates.make(pathlib.Path(folder.name), "stranger")
        cls.tokens = pathlib.Path(folder.name, "tokens")
        cls.tokens.write_text(TOKEN)
        cls.running = LiveService(
            f"--Security:CertificateFile={cls.certificate}",
            f"--Security:KeyFile={key}",
            f"--Security:TokenFile={cls.tokens}",
            scheme="https",
        )
        cls.addClassCleanup(cls.running.close)

    def test_by_tls_and_with_the_token_it_is_let_in(self) -> None:
        with flushback.connect(self.running.address, token=TOKEN, ca=self.certificate) as service:
            self.assertEqual(3, len(service.check(WAGTAIL).report.stops))

    def test_without_the_token_or_with_another_it_is_not(self) -> None:
        for token in (None, "fedcba9876543210fedcba9876543210"):
            with flushback.connect(self.running.address, token=token, ca=self.certificate) as service:
                with self.assertRaises(flushback.FlushbackError) as refused:
                    service.check(WAGTAIL)

            self.assertEqual("UNAUTHENTICATED", refused.exception.code)
            self.assertIn("token", str(refused.exception))

    def test_a_certificate_of_another_authority_is_not_trusted(self) -> None:
        with flushback.connect(self.running.address, token=TOKEN, ca=self.stranger) as service:
            with self.assertRaises(flushback.FlushbackError) as refused:
                service.check(WAGTAIL)

        self.assertEqual("UNAVAILABLE", refused.exception.code)

    def test_a_token_is_not_sent_in_the_clear_beyond_this_machine(self) -> None:
        with self.assertRaisesRegex(ValueError, "in the clear"):
            flushback.connect("http://192.0.2.1:5210", token=TOKEN)

    def test_certificates_have_no_use_without_tls(self) -> None:
        with self.assertRaisesRegex(ValueError, "https://"):
            flushback.connect("http://127.0.0.1:5210", ca=self.certificate)

    def test_the_example_takes_token_and_authority_from_files(self) -> None:
        done = subprocess.run(
            [sys.executable, str(ROOT / "clients" / "python" / "check_folder.py"), str(SAMPLES)]
            + ["--server", self.running.address, "--token-file", str(self.tokens), "--ca", str(self.certificate)],
            capture_output=True,
            text=True,
        )

        self.assertEqual((1, ""), (done.returncode, done.stderr))


class _Moody(grpc.GenericRpcHandler):
    """Passes calls on to a service, after having refused the first few of them."""

    def __init__(
        self, behind: grpc.Channel, refusals: int, pushback_ms: "int | None", details: "bytes | None"
    ) -> None:
        self._behind = behind
        self._refusals = refusals
        self._trailers: "list[tuple[str, str | bytes]]" = []
        if pushback_ms is not None:
            self._trailers.append(("grpc-retry-pushback-ms", str(pushback_ms)))
        if details is not None:
            self._trailers.append(("grpc-status-details-bin", details))
        self.calls = 0

    def service(self, call):
        if "reflection" in call.method:
            through = self._behind.stream_stream(call.method)
            return grpc.stream_stream_rpc_method_handler(lambda asked, _: through(asked, timeout=600))
        return grpc.unary_unary_rpc_method_handler(lambda asked, context: self._answer(call.method, asked, context))

    def _answer(self, method: str, asked: bytes, context) -> bytes:
        self.calls += 1
        if self.calls <= self._refusals:
            context.set_trailing_metadata(tuple(self._trailers))
            context.abort(grpc.StatusCode.UNAVAILABLE, "Not now.")
        return self._behind.unary_unary(method)(asked, timeout=600)


class TryAgainTests(unittest.TestCase):
    @classmethod
    def setUpClass(cls) -> None:
        cls.running = LiveService()
        cls.addClassCleanup(cls.running.close)

    def setUp(self) -> None:
        self.behind = grpc.insecure_channel(self.running.address.removeprefix("http://"))
        self.addCleanup(self.behind.close)

    def test_an_unavailable_service_is_asked_again_until_it_answers(self) -> None:
        with self._connect(refusals=3) as service:
            self.assertEqual(3, len(service.check(WAGTAIL).report.stops))

        self.assertEqual(4, self.moody.calls)

    def test_after_five_tries_it_gives_up(self) -> None:
        with self._connect(refusals=9) as service:
            with self.assertRaises(flushback.FlushbackError) as refused:
                service.check(WAGTAIL)

        self.assertEqual(("UNAVAILABLE", 5), (refused.exception.code, self.moody.calls))

    def test_it_waits_as_long_as_the_service_says(self) -> None:
        with self._connect(refusals=1, pushback_ms=3000) as service:
            started = time.monotonic()
            service.check(WAGTAIL)

        # By itself it would wait a tenth of a second at most.
        self.assertEqual(2, self.moody.calls)
        self.assertGreaterEqual(time.monotonic() - started, 3)

    def test_a_service_that_says_never_again_is_not_asked_again(self) -> None:
        with self._connect(refusals=9, pushback_ms=-1) as service:
            with self.assertRaises(flushback.FlushbackError):
                service.check(WAGTAIL)

        self.assertEqual(1, self.moody.calls)

    def test_a_busy_service_says_when_it_will_have_room(self) -> None:
        def field(number: int, content: bytes) -> bytes:
            return bytes([number << 3 | 2, len(content)]) + content

        # google.rpc.Status of code 14 with a RetryInfo of a second and a half, by the rules of protobuf's encoding.
        delay = field(1, b"\x08\x01\x10\x80\xca\xb5\xee\x01")
        detail = field(1, b"type.googleapis.com/google.rpc.RetryInfo") + field(2, delay)
        status = b"\x08\x0e" + field(2, b"Not now.") + field(3, detail)

        with self._connect(refusals=9, pushback_ms=-1, details=status) as service:
            with self.assertRaises(flushback.FlushbackError) as busy:
                service.check(WAGTAIL)

        self.assertEqual((1.5, "Not now."), (busy.exception.retry_after_s, str(busy.exception)))

    def _connect(
        self, refusals: int, pushback_ms: "int | None" = None, details: "bytes | None" = None
    ) -> flushback.Service:
        self.moody = _Moody(self.behind, refusals, pushback_ms, details)
        server = grpc.server(concurrent.futures.ThreadPoolExecutor(4), [self.moody])
        port = server.add_insecure_port("127.0.0.1:0")
        server.start()
        self.addCleanup(lambda: server.stop(None).wait())
        return flushback.connect(f"http://127.0.0.1:{port}")


if __name__ == "__main__":
    os.environ.pop("GRPC_VERBOSITY", None)
    unittest.main()
