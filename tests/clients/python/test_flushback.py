"""The Python client against the live service on this machine."""

from __future__ import annotations

import collections
import concurrent.futures
import itertools
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

    def test_each_item_of_a_library_is_answered_as_a_single_call_would(self) -> None:
        drawings = sorted(SAMPLES.glob("*.dxf"))

        checked = {path: (answer, error) for path, answer, error in self.service.check_many(drawings, handle={})}

        self.assertEqual(set(drawings), set(checked))
        for path, (answer, error) in checked.items():
            self.assertIsNone(error)
            self.assertEqual(self.service.check(path, handle={}), answer)

    def test_patterns_of_a_library_are_drawn_and_checked(self) -> None:
        pattern = {"blade": {"length_mm": 60}}

        (checked,) = self.service.check_many([{"pattern": {"name": "Stint", "pattern": pattern}}])

        alone = self.service.call("flushback.v1.ProfileExporter/Generate", {"name": "Stint", "pattern": pattern})
        self.assertEqual(alone.report, checked.answer.report)

    def test_an_item_that_is_refused_has_its_error_and_the_others_go_on(self) -> None:
        items = [WAGTAIL, b"nonsense", "/nowhere/knife.dxf", b"0" * 5_000_000, {"pattern": {"wide": 1}}, WAGTAIL]

        checked = list(self.service.check_many(items))

        errors = {str(each.item)[:20]: each.error for each in checked if each.error is not None}
        self.assertEqual(2, sum(1 for each in checked if each.answer is not None))
        self.assertEqual(
            ["INVALID_ARGUMENT", "NOT_FOUND", "RESOURCE_EXHAUSTED", "INVALID_ARGUMENT"],
            [errors[str(item)[:20]].code for item in items[1:5]],
        )
        nonsense = errors["b'nonsense'"]
        self.assertEqual("knife.drawing.dxf", nonsense.violations[0].field)
        self.assertEqual(str(nonsense), nonsense.violations[0].sentence)

    def test_items_are_taken_as_answers_are_so_that_a_library_may_be_endless(self) -> None:
        taken = itertools.count()
        items = (WAGTAIL for _ in taken)

        answers = list(itertools.islice(self.service.check_many(items), 20))

        self.assertEqual(20, len(answers))
        self.assertLessEqual(next(taken), 20 + 16 + 1)

    def test_no_items_have_no_answers(self) -> None:
        self.assertEqual([], list(self.service.check_many([])))

    def test_a_study_says_the_same_as_the_command_line_and_how_far_it_is(self) -> None:
        told = []

        studied = self.service.study(
            WAGTAIL,
            {"pins_mm": 0.02, "profile_mm": 0.03},
            parts=200,
            seed=7,
            spread="NORMAL",
            artifacts=["SPREAD_CSV", "HTML"],
            progress=lambda solved, parts: told.append((solved, parts)),
        )

        options = "--pins 0.02mm --profile 0.03mm --parts 200 --seed 7 --distribution normal"
        expected = by_command_line("tolerance", str(WAGTAIL), *options.split())
        self.assertEqual(expected, json.loads(flushback.to_json(studied.report)))
        self.assertEqual(["spread.csv", "tolerance.html"], [made.file_name for made in studied.artifacts])
        self.assertEqual((200, 200), told[-1])
        self.assertEqual(sorted(told), told)

    def test_a_study_in_which_nothing_varies_is_refused(self) -> None:
        with self.assertRaises(flushback.FlushbackError) as refused:
            self.service.study(WAGTAIL, {})

        self.assertEqual(["NOTHING_VARIES"], [violation.reason for violation in refused.exception.violations])

    def test_what_progress_raises_ends_the_study(self) -> None:
        def give_up(solved: int, parts: int) -> None:
            raise KeyboardInterrupt

        with self.assertRaises(KeyboardInterrupt):
            self.service.study(WAGTAIL, {"pins_mm": 0.02}, parts=20_000, progress=give_up)

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

    def test_a_library_that_is_not_answered_in_time_is_told(self) -> None:
        with self.assertRaises(flushback.FlushbackError) as late:
            list(self.service.check_many([WAGTAIL], deadline_s=0))

        self.assertEqual("DEADLINE_EXCEEDED", late.exception.code)

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


def _field(number: int, content: bytes) -> bytes:
    """A field of bytes or of a message, by the rules of protobuf's encoding."""
    return bytes([number << 3 | 2, len(content)]) + content


# google.rpc.Status of code 14 with a RetryInfo of a second and a half.
BUSY = (
    b"\x08\x0e"
    + _field(2, b"Not now.")
    + _field(
        3,
        _field(1, b"type.googleapis.com/google.rpc.RetryInfo")
        + _field(2, _field(1, b"\x08\x01\x10\x80\xca\xb5\xee\x01")),
    )
)
BUSY_S = 1.5


class _Moody(grpc.GenericRpcHandler):
    """Passes calls on to a service, after having refused the first few of them.

    Of libraries it may also answer the first few items that it has no room, and cut its first stream at an item.
    """

    def __init__(
        self,
        behind: grpc.Channel,
        refusals: int = 0,
        pushback_ms: "int | None" = None,
        details: "bytes | None" = None,
        busy_items: int = 0,
        cut_at: "int | None" = None,
    ) -> None:
        self._behind = behind
        self._refusals = refusals
        self._busy_items = busy_items
        self._cut_at = cut_at
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
        if call.method.endswith("CheckMany"):
            return grpc.stream_stream_rpc_method_handler(
                lambda items, context: self._answer_many(call.method, items, context)
            )
        return grpc.unary_unary_rpc_method_handler(lambda asked, context: self._answer(call.method, asked, context))

    def _answer(self, method: str, asked: bytes, context) -> bytes:
        self._refuse(context)
        return self._behind.unary_unary(method)(asked, timeout=600)

    def _answer_many(self, method: str, items, context):
        self._refuse(context)
        for number, item in enumerate(items):
            if self.calls == 1 and number == self._cut_at:
                context.abort(grpc.StatusCode.UNAVAILABLE, "The service is stopping.")
            if self._busy_items > 0:
                self._busy_items -= 1
                item_id = item[2 : 2 + item[1]]  # Its first field.
                yield _field(1, item_id) + _field(2, BUSY)
            else:
                yield next(self._behind.stream_stream(method)(iter([item]), timeout=600))

    def _refuse(self, context) -> None:
        self.calls += 1
        if self.calls <= self._refusals:
            context.set_trailing_metadata(tuple(self._trailers))
            context.abort(grpc.StatusCode.UNAVAILABLE, "Not now.")


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
        with self._connect(refusals=9, pushback_ms=-1, details=BUSY) as service:
            with self.assertRaises(flushback.FlushbackError) as busy:
                service.check(WAGTAIL)

        self.assertEqual((BUSY_S, "Not now."), (busy.exception.retry_after_s, str(busy.exception)))

    def test_an_item_without_room_is_sent_again_when_the_service_says(self) -> None:
        with self._connect(busy_items=3) as service:
            started = time.monotonic()
            checked = list(service.check_many([WAGTAIL] * 6))

        self.assertEqual([3] * 6, [len(each.answer.report.stops) for each in checked])
        self.assertEqual(1, self.moody.calls)
        self.assertGreaterEqual(time.monotonic() - started, BUSY_S)

    def test_an_item_without_room_is_given_up_after_five_tries(self) -> None:
        with self._connect(busy_items=5) as service:
            (checked,) = service.check_many([WAGTAIL])

        self.assertEqual(("UNAVAILABLE", BUSY_S), (checked.error.code, checked.error.retry_after_s))

    def test_what_a_broken_stream_did_not_answer_goes_over_another(self) -> None:
        with self._connect(cut_at=4) as service:
            checked = list(service.check_many(sorted(SAMPLES.glob("*.dxf")) * 5))

        self.assertEqual(2, self.moody.calls)
        answered = collections.Counter(path for path, answer, _ in checked if answer is not None)
        self.assertEqual(dict.fromkeys(SAMPLES.glob("*.dxf"), 5), dict(answered))

    def test_a_library_that_no_service_takes_is_given_up_after_five_streams(self) -> None:
        with self._connect(refusals=9) as service:
            with self.assertRaises(flushback.FlushbackError) as refused:
                list(service.check_many([WAGTAIL]))

        self.assertEqual(("UNAVAILABLE", 5), (refused.exception.code, self.moody.calls))

    def _connect(self, **mood: "int | bytes | None") -> flushback.Service:
        self.moody = _Moody(self.behind, **mood)
        server = grpc.server(concurrent.futures.ThreadPoolExecutor(4), [self.moody])
        port = server.add_insecure_port("127.0.0.1:0")
        server.start()
        self.addCleanup(lambda: server.stop(None).wait())
        return flushback.connect(f"http://127.0.0.1:{port}")


if __name__ == "__main__":
    os.environ.pop("GRPC_VERBOSITY", None)
    unittest.main()
