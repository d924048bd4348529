"""Calls Flushback, the service that reads a slip-joint knife's dial off the drawing, from Python.

    import flushback

    with flushback.connect("http://127.0.0.1:5210") as service:
        report = service.check("wagtail.dxf").report
        for stop in report.stops:
            print(stop.stop, round(stop.lift_mm, 3), "mm")

This one file is all there is to copy. It needs grpc and protobuf (Debian: python3-grpcio) and nothing generated: what
the messages look like is asked of the service itself, by gRPC reflection, so that this file and a service always fit
each other. Answers are protobuf messages with the names of the contract, protos/flushback/v1; ``to_dict`` and
``to_json`` turn them into plain data.
"""

from __future__ import annotations

import concurrent.futures
import inspect
import json
import os
import pathlib
import queue
import time
from types import TracebackType
from typing import Any, Callable, Iterable, Iterator, Mapping, NamedTuple, Optional, Type, Union
from urllib.parse import urlsplit

import grpc
from google.protobuf import descriptor_pb2, descriptor_pool, json_format, message_factory
from google.protobuf.message import DecodeError, Message

__all__ = ["Checked", "connect", "FlushbackError", "Service", "Studied", "to_dict", "to_json", "Violation"]

Drawing = Union[str, "os.PathLike[str]", bytes]
"""A drawing: the path of a DXF, or its bytes."""

Fields = Union[Message, Mapping[str, Any], None]
"""A message of the contract, or a mapping with its fields, such as ``{"width_mm": 3.2}``."""

Item = Union[Drawing, Message, Mapping[str, Any]]
"""An item of a library: a drawing; or the fields of CheckManyRequest, ``{"check": {...}}`` or ``{"pattern": {...}}``."""

DEADLINE_S = 60.0
"""How long a call waits for its answer, in seconds, tries included, unless told otherwise."""

_LARGEST_ANSWER = 256 * 1024 * 1024  # A page, a fine curve and a drawing go beyond gRPC's own 4 MB.
_LARGEST_KEPT = 80 * 1024 * 1024  # A request can only be sent again when it was kept.

# Nothing changes on the service, so that it may be asked again whenever none answered. A service that is busy says by
# itself when (grpc-retry-pushback-ms), which gRPC goes by. Every other status is an answer and would be the same again.
# A library is sent again here, since less than all of it is left to be answered.
_TRIES = 5
_FIRST_PAUSE_S, _LONGEST_PAUSE_S = 0.1, 2.0
_SERVICE_CONFIG = {
    "methodConfig": [
        {"name": [{"service": "flushback.v1.ProfileChecker", "method": "CheckMany"}]},
        {
            "name": [{}],
            "retryPolicy": {
                "maxAttempts": _TRIES,
                "initialBackoff": f"{_FIRST_PAUSE_S}s",
                "maxBackoff": f"{_LONGEST_PAUSE_S}s",
                "backoffMultiplier": 2,
                "retryableStatusCodes": ["UNAVAILABLE"],
            },
        },
    ]
}

# A service takes in so many items of a library before it has answered the first (Limits:StreamItems).
_ITEMS_AHEAD = 16


class Violation(NamedTuple):
    """One thing that is wrong with a request."""

    field: str
    """Path of the field in the request, such as ``knife.drawing.dxf``."""
    sentence: str
    """What is wrong, where, and what to do."""
    reason: str
    """A stable word for it, such as ``NO_OUTLINE``."""


class FlushbackError(Exception):
    """A request was refused, or no service answered. As text: one sentence for each thing that is wrong."""

    def __init__(
        self,
        code: str,
        sentences: Iterable[str],
        violations: Iterable[Violation] = (),
        limit: Optional[Mapping[str, str]] = None,
        retry_after_s: Optional[float] = None,
    ) -> None:
        super().__init__("\n".join(sentences))
        self.code = code
        """Status of gRPC: ``INVALID_ARGUMENT`` for input that is no knife, ``RESOURCE_EXHAUSTED`` over a limit,
        ``NOT_FOUND`` for a drawing that cannot be read from disk, ``UNAVAILABLE``, ``DEADLINE_EXCEEDED`` or
        ``UNAUTHENTICATED`` where no answer came."""
        self.violations = tuple(violations)
        """What is wrong with the request, each with its field; empty for any other status."""
        self.limit = dict(limit or {})
        """The limit that was reached: its name as ``limit``, what it allows as ``allowed``, and more that the service
        says; empty for any other error."""
        self.retry_after_s = retry_after_s
        """When a busy service will have room, in seconds; None for any other error."""


class Checked(NamedTuple):
    """What became of an item of a library: an answer or an error, exactly one of the two."""

    item: Item
    """The item, as it was given."""
    answer: Any
    """A CheckResponse, as of ``Service.check``; None where there is an error."""
    error: Optional[FlushbackError]
    """Why there is no answer: what a single call would have raised."""


class Studied(NamedTuple):
    """What random parts of a knife read."""

    report: Any
    """A StudyReport."""
    artifacts: list[Any]
    """The files asked for, in the order asked, with ``file_name`` and ``content``."""


def connect(
    address: str = "http://127.0.0.1:5210",
    token: Optional[str] = None,
    ca: Optional[Union[str, "os.PathLike[str]"]] = None,
    certificate: Optional[Union[str, "os.PathLike[str]"]] = None,
    key: Optional[Union[str, "os.PathLike[str]"]] = None,
    deadline_s: float = DEADLINE_S,
) -> "Service":
    """Opens a way to a running service. Nothing is sent before the first call.

    :param address: Where it listens: ``http://host:port``, or ``https://host:port`` for TLS.
    :param token: The token it asks for. Beyond this machine it is sent by TLS only.
    :param ca: File with the certificates, as PEM, of who vouches for the service; those gRPC brings along without it.
    :param certificate: File with your own certificate, as PEM, where the service asks for one.
    :param key: File with the key of that certificate, as PEM.
    :param deadline_s: How long each call waits for its answer, in seconds, tries included.
    :raises ValueError: The address is none, or does not go with the rest.
    :raises OSError: A file cannot be read.
    """
    parts = urlsplit(address)
    if parts.scheme not in ("http", "https") or not parts.hostname or not parts.port or parts.path.strip("/"):
        raise ValueError(f"{address!r} is not the address of a service: write http://host:port or https://host:port.")
    if parts.scheme == "http" and (ca or certificate or key):
        raise ValueError(f"Certificates have no use with {address}, which is called without TLS; write https://.")
    if parts.scheme == "http" and token and not _is_this_machine(parts.hostname):
        raise ValueError(f"The token would travel in the clear to {address}; write https://.")
    options = [
        ("grpc.service_config", json.dumps(_SERVICE_CONFIG)),
        ("grpc.enable_retries", 1),
        ("grpc.per_rpc_retry_buffer_size", _LARGEST_KEPT),
        ("grpc.max_receive_message_length", _LARGEST_ANSWER),
        # A proxy is for the world outside; a service on this machine or in this shop is called by its address.
        ("grpc.enable_http_proxy", 0),
    ]
    if parts.scheme == "https":
        credentials = grpc.ssl_channel_credentials(
            *(pathlib.Path(file).read_bytes() if file else None for file in (ca, key, certificate))
        )
        channel = grpc.secure_channel(parts.netloc, credentials, options)
    else:
        channel = grpc.insecure_channel(parts.netloc, options)
    return Service(channel, address, token, deadline_s)


class Service:
    """A running service. ``with connect(...) as service`` closes it at the end."""

    def __init__(self, channel: grpc.Channel, address: str, token: Optional[str], deadline_s: float) -> None:
        self._channel = channel
        self._address = address
        self._metadata = (("authorization", f"Bearer {token}"),) if token else ()
        self._deadline_s = deadline_s
        self._contract = _Contract()

    def check(
        self,
        drawing: Drawing,
        *,
        name: Optional[str] = None,
        unit: str = "UNSPECIFIED",
        layers: Fields = None,
        knife: Fields = None,
        bench: Fields = None,
        handle: Fields = None,
        artifacts: Iterable[str] = (),
        deadline_s: Optional[float] = None,
    ) -> Any:
        """Reads the dial off a drawing of a blade and its spring.

        :param drawing: Path of a DXF, or its bytes.
        :param name: What the knife is called; the name of the file without it.
        :param unit: ``MILLIMETRE``, ``CENTIMETRE``, ``METRE``, ``INCH`` or ``THOU``, over what the file says.
        :param layers: Other names of the layers, as LayerRoles: ``{"blade": "Klinge"}``.
        :param knife: More of Knife, such as ``{"drawn_blade_angle_deg": 180}``; also whole outlines in place of a
            drawing, which is then left empty: ``check(b"", knife={"outlines": ...})``.
        :param bench: Targets and tolerances, as BenchSettings: ``{"target_set": "TARGET_SET_FINISHED"}``.
        :param handle: Spring and steel, as HandleSettings, to have the knife in its handle reported too: ``{}`` takes
            every default, ``{"width_mm": 3.2}`` a width in millimetres.
        :param artifacts: Files to make: ``TEXT``, ``HTML``, ``CSV``, ``JSON``, ``DXF``, ``HANDLE_CSV``.
        :param deadline_s: How long to wait, in seconds, in place of what was said to connect.
        :returns: A CheckResponse: ``report`` with stops, findings and so on; ``artifacts`` with ``file_name`` and
            ``content``. A knife that reads badly is no error but a report with findings.
        :raises FlushbackError: The drawing is no knife, is over a limit, or no service answered.
        """
        request = self._of_knife(drawing, name, unit, layers, knife, bench, artifacts)
        if handle is not None:
            request["handle"] = handle
        return self.call("flushback.v1.ProfileChecker/Check", request, deadline_s)

    def check_many(
        self,
        items: Iterable[Item],
        *,
        unit: str = "UNSPECIFIED",
        layers: Fields = None,
        knife: Fields = None,
        bench: Fields = None,
        handle: Fields = None,
        artifacts: Iterable[str] = (),
        deadline_s: Optional[float] = None,
    ) -> Iterator[Checked]:
        """Checks a library over one call, and gives each answer as soon as it is there, in any order.

        Items are taken from the iterable as answers are, sixteen ahead of them at most, so that a library may be of any
        size. An item that is refused gets its error, and the others go on. One for which a busy service has no room is
        sent again when the service says, five times in all, and what is not answered when a stream breaks goes over
        another one.

        :param items: Drawings, each a path or bytes; or fields of CheckManyRequest, which say all of the item by
            themselves: ``{"pattern": {"pattern": {"blade": {"length_mm": 60}}}}``.
        :param deadline_s: How long to wait for the next answer, in seconds, in place of what was said to connect.
        :param unit: For the drawings among the items, as all that follows; as in ``check``.
        :returns: What became of each item, while it is read; break off, and the call ends.
        :raises FlushbackError: No service answered five times in a row, or for longer than the deadline.
        """
        kinds = list(artifacts)

        def to_fields(item: Item) -> Fields:
            if isinstance(item, (Message, Mapping)):
                return item
            check = self._of_knife(item, None, unit, layers, knife, bench, kinds)
            return {"check": check if handle is None else check | {"handle": handle}}

        return self._check_many(items, to_fields, self._deadline_s if deadline_s is None else deadline_s)

    def _check_many(self, items: Iterable[Item], to_fields: Callable[[Item], Fields], wait_s: float) -> Iterator[Checked]:
        method = "flushback.v1.ProfileChecker/CheckMany"
        asked, answered = self._types_of(method, wait_s)
        stream = self._channel.stream_stream(
            f"/{method}", request_serializer=asked.SerializeToString, response_deserializer=answered.FromString
        )
        yield from _Library(
            items,
            lambda item: _fill(asked(), to_fields(item)),
            lambda requests: stream(requests, metadata=self._metadata),
            wait_s,
            self._address,
        ).answers()

    def inspect(
        self,
        drawing: Drawing,
        *,
        name: Optional[str] = None,
        unit: str = "UNSPECIFIED",
        guess_unit: bool = False,
        settings: Fields = None,
        artifacts: Iterable[str] = (),
        deadline_s: Optional[float] = None,
    ) -> Any:
        """Looks at a drawing as the shop that is to cut it does.

        :param drawing: Path of a DXF, or its bytes.
        :param name: What the drawing is called; the name of the file without it.
        :param unit: As in ``check``.
        :param guess_unit: Whether the unit of a drawing that states none may be guessed from its size.
        :param settings: What to hold it against, as InspectionSettings, in millimetres: ``{"kerf_mm": 0.2}``.
        :param artifacts: Files to make: ``TEXT``, ``HTML``, ``JSON``, ``REPAIRED_DXF``, ``CUT_PATH_DXF``.
        :param deadline_s: As in ``check``.
        :returns: An InspectResponse.
        :raises FlushbackError: The file is no drawing, is over a limit, or no service answered.
        """
        content, title = _read(drawing, name)
        request = {
            "name": title,
            "dxf": content,
            "unit": f"LENGTH_UNIT_{unit}",
            "settings": settings,
            "guess_unit": guess_unit,
            "artifacts": _kinds(artifacts),
        }
        return self.call("flushback.v1.ProfileInspector/Inspect", request, deadline_s)

    def simulate(
        self,
        drawing: Drawing,
        passes: Iterable[Fields],
        *,
        name: Optional[str] = None,
        unit: str = "UNSPECIFIED",
        layers: Fields = None,
        knife: Fields = None,
        bench: Fields = None,
        remains: Fields = None,
        artifacts: Iterable[str] = (),
        deadline_s: Optional[float] = None,
    ) -> Any:
        """Takes metal off on the drawing and reads the dial after every pass.

        :param passes: The passes in their order, each as Pass, in millimetres:
            ``{"round_corner": {"corner": {"blade_face": "BLADE_FACE_OPEN_CORNER"}, "radius_mm": 0.5}}``.
        :param remains: What has to be left, as PassSettings.
        :param artifacts: Files to make: ``TEXT``, ``HTML``, ``JSON``, ``DXF``.
        :returns: A SimulateResponse, with the dial after each of ``report.steps``. The rest as in ``check``.
        :raises FlushbackError: A pass cannot be made, or as in ``check``.
        """
        request = self._of_knife(drawing, name, unit, layers, knife, bench, artifacts)
        request |= {"passes": list(passes), "remains": remains}
        return self.call("flushback.v1.BenchSimulator/Simulate", request, deadline_s)

    def plan(
        self,
        drawing: Drawing,
        *,
        name: Optional[str] = None,
        unit: str = "UNSPECIFIED",
        layers: Fields = None,
        knife: Fields = None,
        bench: Fields = None,
        plan: Fields = None,
        remains: Fields = None,
        measured: Fields = None,
        artifacts: Iterable[str] = (),
        deadline_s: Optional[float] = None,
    ) -> Any:
        """Plans the least metal to take off so that every stop reads as wanted.

        :param plan: Windows and corners wanted and what may be taken, as PlanSettings.
        :param measured: What the dial really read, as MeasuredReadings, in millimetres: ``{"closed_mm": 0.5}``.
        :param artifacts: Files to make, as the contract says of PlanRequest.
        :returns: A PlanResponse. The rest as in ``simulate``.
        :raises FlushbackError: As in ``check``; ``UNIMPLEMENTED`` by a service that does not plan.
        """
        request = self._of_knife(drawing, name, unit, layers, knife, bench, artifacts)
        request |= {"plan": plan, "remains": remains, "measured": measured}
        return self.call("flushback.v1.BenchSimulator/Plan", request, deadline_s)

    def study(
        self,
        drawing: Drawing,
        tolerances: Fields,
        *,
        name: Optional[str] = None,
        unit: str = "UNSPECIFIED",
        layers: Fields = None,
        knife: Fields = None,
        bench: Fields = None,
        handle: Fields = None,
        spread: str = "UNIFORM",
        parts: Optional[int] = None,
        seed: Optional[int] = None,
        artifacts: Iterable[str] = (),
        progress: Optional[Callable[[int, int], None]] = None,
        deadline_s: Optional[float] = None,
    ) -> Studied:
        """Reads random parts of a knife, each made within its tolerances.

        :param tolerances: What may vary, as Tolerances, in millimetres: ``{"pins_mm": 0.02, "profile_mm": 0.03}``.
        :param handle: As in ``check``, to have pull and stress studied too.
        :param spread: ``UNIFORM`` or ``NORMAL``, between the limits.
        :param parts: How many parts; 10,000 without it.
        :param seed: Which parts: the same seed draws the same parts.
        :param artifacts: Files to make: ``TEXT``, ``HTML``, ``JSON``, ``SPREAD_CSV``.
        :param progress: Is told now and then how many parts are read, and of how many.
        :returns: The report and the files. The rest as in ``check``.
        :raises FlushbackError: Nothing varies, or as in ``check``.
        """
        request = self._of_knife(drawing, name, unit, layers, knife, bench, artifacts)
        request |= {"tolerances": tolerances, "spread": f"SPREAD_KIND_{spread}", "parts": parts, "seed": seed}
        if handle is not None:
            request["handle"] = handle
        method = "flushback.v1.ToleranceStudy/Study"
        wait_s = self._deadline_s if deadline_s is None else deadline_s
        asked, answered = self._types_of(method, wait_s)
        stream = self._channel.unary_stream(
            f"/{method}", request_serializer=asked.SerializeToString, response_deserializer=answered.FromString
        )
        call = stream(_fill(asked(), request), timeout=wait_s, metadata=self._metadata)
        report, made = None, []
        try:
            for told in call:
                content = told.WhichOneof("content")
                if content == "report":
                    report = told.report
                elif content == "artifact":
                    made.append(told.artifact)
                elif progress is not None:
                    progress(told.progress.solved, told.progress.parts)
        except grpc.RpcError as refused:
            raise _told(refused, self._address) from None
        finally:
            call.cancel()
        return Studied(report, made)

    def call(self, method: str, request: Fields, deadline_s: Optional[float] = None) -> Any:
        """Calls any method of the contract that takes one message and gives one.

        :param method: Its name, such as ``flushback.v1.ProfileChecker/Check``.
        :param request: The request, or its fields; those that are None are left out.
        :param deadline_s: As in ``check``.
        :returns: The answer, a message of the contract.
        :raises FlushbackError: As in ``check``.
        """
        wait_s = self._deadline_s if deadline_s is None else deadline_s
        asked, answered = self._types_of(method, wait_s)
        call = self._channel.unary_unary(
            f"/{method}", request_serializer=asked.SerializeToString, response_deserializer=answered.FromString
        )
        try:
            return call(_fill(asked(), request), timeout=wait_s, metadata=self._metadata)
        except grpc.RpcError as refused:
            raise _told(refused, self._address) from None

    def close(self) -> None:
        """Hangs up."""
        self._channel.close()

    def __enter__(self) -> "Service":
        return self

    def __exit__(
        self, kind: Optional[Type[BaseException]], fault: Optional[BaseException], trace: Optional[TracebackType]
    ) -> None:
        self.close()

    def _of_knife(
        self,
        drawing: Drawing,
        name: Optional[str],
        unit: str,
        layers: Fields,
        knife: Fields,
        bench: Fields,
        artifacts: Iterable[str],
    ) -> dict[str, Any]:
        content, title = _read(drawing, name)
        if not isinstance(knife, Message):
            drawn = {"drawing": {"dxf": content, "layers": layers, "unit": f"LENGTH_UNIT_{unit}"}}
            knife = (drawn if content else {}) | dict(knife or {})
        return {
            "name": title,
            "knife": knife,
            "bench": bench,
            "artifacts": _kinds(artifacts),
        }

    def _types_of(self, method: str, wait_s: float) -> tuple[Any, Any]:
        """Classes of a method's request and answer."""
        try:
            return self._contract.types_of(method, lambda: self._reflect(wait_s))
        except grpc.RpcError as refused:
            raise _told(refused, self._address) from None

    def _reflect(self, wait_s: float) -> Iterator[bytes]:
        """The files of the contract that the service is built from, each after those it needs."""
        stream = self._channel.stream_stream(
            "/grpc.reflection.v1alpha.ServerReflection/ServerReflectionInfo",
            request_serializer=_Words.ReflectionRequest.SerializeToString,
            response_deserializer=_Words.ReflectionResponse.FromString,
        )

        def ask(**question: str) -> Any:
            asked = iter([_Words.ReflectionRequest(**question)])
            return next(stream(asked, timeout=wait_s, metadata=self._metadata))

        seen: set[str] = set()
        for listed in ask(list_services="*").list_services_response.service:
            if not listed.name.startswith("flushback."):
                continue
            answer = ask(file_containing_symbol=listed.name).file_descriptor_response
            for content in answer.file_descriptor_proto:
                name = descriptor_pb2.FileDescriptorProto.FromString(content).name
                if name not in seen:
                    seen.add(name)
                    yield content


def to_dict(message: Message) -> dict[str, Any]:
    """A message as plain data, with the names of the contract; fields that are not set are left out."""
    plain: dict[str, Any] = json_format.MessageToDict(message, preserving_proto_field_name=True)
    return plain


def to_json(message: Message) -> str:
    """A message in the JSON form of the contract, as the service writes it into report.json."""
    text: str = json_format.MessageToJson(message, **{_ALL_FIELDS: True})
    return text


# The one name is of protobuf 5 and later, the other of what came before.
_ALL_FIELDS = next(
    name
    for name in ("always_print_fields_with_no_presence", "including_default_value_fields")
    if name in inspect.signature(json_format.MessageToJson).parameters
)


def _read(drawing: Drawing, name: Optional[str]) -> tuple[bytes, str]:
    if isinstance(drawing, bytes):
        return drawing, name or ""
    path = pathlib.Path(drawing)
    try:
        return path.read_bytes(), name or path.stem
    except OSError as fault:
        raise FlushbackError("NOT_FOUND", [f"The drawing {str(path)!r} cannot be read: {fault.strerror}."]) from None


def _kinds(artifacts: Iterable[str]) -> list[str]:
    return [f"ARTIFACT_KIND_{kind}" for kind in artifacts]


def _is_this_machine(host: str) -> bool:
    return host in ("localhost", "::1") or host.startswith("127.")


# --- A library over streams ---


class _Sent:
    """An item that is not answered yet."""

    def __init__(self, item: Item, request: Any) -> None:
        self.item = item
        self.request = request
        self.tries = 0
        self.due_s: Optional[float] = None
        """When it is to be sent again, by the monotonic clock; None while the service has it."""


class _Library:
    """Items on their way to their answers, over one stream after another."""

    def __init__(
        self,
        items: Iterable[Item],
        to_request: Callable[[Item], Any],
        open_stream: Callable[[Iterator[Any]], Any],
        wait_s: float,
        address: str,
    ) -> None:
        self._items = enumerate(items)
        self._to_request = to_request
        self._open_stream = open_stream
        self._wait_s = wait_s
        self._address = address
        self._open: dict[str, _Sent] = {}  # By id, in the order sent.
        self._read_to_end = False

    def answers(self) -> Iterator[Checked]:
        lost_in_a_row = 0
        while True:
            try:
                for checked in self._over_one_stream():
                    lost_in_a_row = 0
                    yield checked
                if not self._open:
                    return
                error = _error("UNAVAILABLE", "", b"", self._address)
            except grpc.RpcError as lost:
                error = _told(lost, self._address)
            to_blame = next((number for number, sent in self._open.items() if sent.due_s is None), None)
            if to_blame is not None and error.code in ("RESOURCE_EXHAUSTED", "INVALID_ARGUMENT"):
                # A stream ends so when the first sent of those unanswered cannot be taken in (the contract says).
                yield Checked(self._open.pop(to_blame).item, None, error)
                continue
            lost_in_a_row += 1
            # A service that stops may be seen as a connection that was cut.
            if error.code not in ("UNAVAILABLE", "INTERNAL", "UNKNOWN", "CANCELLED") or lost_in_a_row == _TRIES:
                raise error
            time.sleep(min(_FIRST_PAUSE_S * 2 ** (lost_in_a_row - 1), _LONGEST_PAUSE_S))

    def _over_one_stream(self) -> Iterator[Checked]:
        sending: queue.SimpleQueue[Any] = queue.SimpleQueue()
        for sent in self._open.values():
            sent.due_s = None
            sending.put(sent.request)
        call = self._open_stream(iter(sending.get, None))
        with concurrent.futures.ThreadPoolExecutor(1) as reader:
            try:
                while True:
                    yield from self._send_further(sending)
                    if not self._open:
                        sending.put(None)
                    answer = self._next(reader.submit(lambda: next(call, None)), sending)
                    if answer is None:
                        return
                    yield from self._settle(answer)
            finally:
                sending.put(None)
                call.cancel()

    def _send_further(self, sending: "queue.SimpleQueue[Any]") -> Iterator[Checked]:
        while len(self._open) < _ITEMS_AHEAD and not self._read_to_end:
            taken = next(self._items, None)
            if taken is None:
                self._read_to_end = True
                return
            number, item = taken
            try:
                sent = _Sent(item, self._to_request(item))
            except FlushbackError as error:
                yield Checked(item, None, error)
                continue
            sent.request.item_id = str(number)
            self._open[sent.request.item_id] = sent
            sending.put(sent.request)

    def _next(self, answer: "concurrent.futures.Future[Any]", sending: "queue.SimpleQueue[Any]") -> Any:
        """The next answer; while it is waited for, items that are due are sent again."""
        until_s = time.monotonic() + self._wait_s
        while True:
            next_s = min([until_s, *(sent.due_s or until_s for sent in self._open.values())])
            try:
                return answer.result(max(0, next_s - time.monotonic()))
            except concurrent.futures.TimeoutError:
                now_s = time.monotonic()
                if now_s >= until_s:
                    raise _error("DEADLINE_EXCEEDED", "", b"", self._address) from None
                for number, sent in list(self._open.items()):
                    if sent.due_s is not None and sent.due_s <= now_s:
                        sent.due_s = None
                        self._open[number] = self._open.pop(number)
                        sending.put(sent.request)

    def _settle(self, answer: Any) -> Iterator[Checked]:
        sent = self._open.get(answer.item_id)
        if sent is None:
            return
        error = None
        if answer.WhichOneof("outcome") == "error":
            # On the wire it has the form of google.rpc.Status.
            status = answer.error.SerializeToString()
            error = _error(_CODES[answer.error.code], answer.error.message, status, self._address)
            sent.tries += 1
            if error.code == "UNAVAILABLE" and error.retry_after_s is not None and sent.tries < _TRIES:
                sent.due_s = time.monotonic() + error.retry_after_s
                return
        del self._open[answer.item_id]
        yield Checked(sent.item, None if error else answer.check, error)


_CODES = {code.value[0]: code.name for code in grpc.StatusCode}


# --- From fields to messages ---


def _fill(message: Message, fields: Fields) -> Message:
    """Puts fields into a message; bytes and messages as they are, all else as in the JSON form of the contract."""
    if isinstance(fields, Message):
        message.CopyFrom(fields)
        return message
    for name, value in (fields or {}).items():
        field = message.DESCRIPTOR.fields_by_name.get(name)
        if field is None:
            known = ", ".join(message.DESCRIPTOR.fields_by_name)
            raise FlushbackError(
                "INVALID_ARGUMENT", [f"{message.DESCRIPTOR.name} has no field {name!r}; it has {known}."]
            )
        if value is None:
            continue
        _put(message, field, value)
    return message


def _put(message: Message, field: Any, value: Any) -> None:
    holds_messages = field.message_type is not None
    try:
        if field.label == field.LABEL_REPEATED and holds_messages:
            for item in value:
                _fill(getattr(message, field.name).add(), item)
        elif holds_messages:
            getattr(message, field.name).SetInParent()
            _fill(getattr(message, field.name), value)
        elif isinstance(value, bytes):
            setattr(message, field.name, value)
        else:
            json_format.ParseDict({field.name: value}, message)
    except (json_format.ParseError, TypeError, ValueError, AttributeError):
        raise FlushbackError(
            "INVALID_ARGUMENT", [f"{value!r} is no value for {field.name} of {message.DESCRIPTOR.name}."]
        ) from None


class _Contract:
    """The messages of the contract, as the service describes them when first asked."""

    def __init__(self) -> None:
        self._pool: Optional[Any] = None

    def types_of(self, method: str, describe: Any) -> tuple[Any, Any]:
        """Classes of a method's request and answer."""
        if self._pool is None:
            pool = descriptor_pool.DescriptorPool()
            _add_all(pool, list(describe()))
            self._pool = pool
        service, _, name = method.rpartition("/")
        try:
            found = self._pool.FindServiceByName(service).methods_by_name[name]
        except KeyError:
            raise FlushbackError(
                "UNIMPLEMENTED", [f"This service does not know {method}; it is not of the version for that."]
            ) from None
        return _class_of(found.input_type), _class_of(found.output_type)


def _add_all(pool: Any, files: list[bytes]) -> None:
    """Adds files to a pool, each after those it imports, in whatever order they came."""
    waiting = {file.name: file for file in map(descriptor_pb2.FileDescriptorProto.FromString, files)}

    def add(name: str) -> None:
        file = waiting.pop(name, None)
        if file is not None:
            for needed in file.dependency:
                add(needed)
            pool.Add(file)

    for name in list(waiting):
        add(name)


def _class_of(descriptor: Any) -> Any:
    # The one name is of protobuf 4.22 and later, the other of what came before.
    if hasattr(message_factory, "GetMessageClass"):
        return message_factory.GetMessageClass(descriptor)
    return message_factory.MessageFactory(descriptor.file.pool).GetPrototype(descriptor)


# --- The few messages that are not of the contract: reflection and the details of errors ---


def _words() -> Any:
    text, number, raw = "TYPE_STRING", "TYPE_INT32", "TYPE_BYTES"
    messages: dict[str, dict[str, tuple[int, str]]] = {
        "ReflectionRequest": {"file_containing_symbol": (4, text), "list_services": (7, text)},
        "ReflectionResponse": {
            "file_descriptor_response": (4, "Files"),
            "list_services_response": (6, "Services"),
        },
        "Files": {"file_descriptor_proto": (1, raw + "*")},
        "Services": {"service": (1, "Named*")},
        "Named": {"name": (1, text)},
        "Status": {"code": (1, number), "message": (2, text), "details": (3, "Detail*")},
        "Detail": {"type_url": (1, text), "value": (2, raw)},
        "BadRequest": {"field_violations": (1, "FieldViolation*")},
        "FieldViolation": {"field": (1, text), "description": (2, text), "reason": (3, text)},
        "ErrorInfo": {"reason": (1, text), "domain": (2, text), "metadata": (3, "Entry*")},
        "Entry": {"key": (1, text), "value": (2, text)},
        "RetryInfo": {"retry_delay": (1, "Duration")},
        "Duration": {"seconds": (1, "TYPE_INT64"), "nanos": (2, number)},
    }
    file = descriptor_pb2.FileDescriptorProto(name="words.proto", package="words", syntax="proto3")
    for name, fields in messages.items():
        made = file.message_type.add(name=name)
        for field_name, (field_number, kind) in fields.items():
            field = made.field.add(name=field_name, number=field_number)
            field.label = field.LABEL_REPEATED if kind.endswith("*") else field.LABEL_OPTIONAL
            kind = kind.rstrip("*")
            if kind.startswith("TYPE_"):
                field.type = field.Type.Value(kind)
            else:
                field.type, field.type_name = field.TYPE_MESSAGE, f".words.{kind}"
    pool = descriptor_pool.DescriptorPool()
    pool.Add(file)
    classes = {name: _class_of(pool.FindMessageTypeByName(f"words.{name}")) for name in messages}
    return type("_Words", (), classes)


_Words: Any = _words()


def _told(refused: Any, address: str) -> FlushbackError:
    """What a service answers when it does not answer with a report, as the one exception."""
    trailers = dict(refused.trailing_metadata() or ()) if hasattr(refused, "trailing_metadata") else {}
    status = trailers.get("grpc-status-details-bin", b"")
    return _error(refused.code().name, refused.details() or "", status, address)


def _error(code: str, said: str, status: bytes, address: str) -> FlushbackError:
    """The exception for a code, a sentence, and a google.rpc.Status with details."""
    details = _details(status)
    bad, info, retry = (details.get(kind) for kind in ("BadRequest", "ErrorInfo", "RetryInfo"))
    violations = [Violation(v.field, v.description, v.reason) for v in bad.field_violations] if bad else []
    if violations:
        sentences = [violation.sentence for violation in violations]
    elif code == "UNAVAILABLE" and not retry:
        sentences = [f"The service at {address} cannot be reached; start it, or look at address and certificates."]
    elif code == "DEADLINE_EXCEEDED":
        sentences = [f"The service at {address} did not answer in time; try again, or give it longer by deadline_s."]
    else:
        sentences = [said]
    return FlushbackError(
        code,
        sentences,
        violations,
        {entry.key: entry.value for entry in info.metadata} if info else {},
        retry.retry_delay.seconds + retry.retry_delay.nanos / 1e9 if retry else None,
    )


def _details(status: bytes) -> dict[str, Any]:
    """The details of google.rpc.Status that this file knows, by their names."""
    found = {}
    try:
        for detail in _Words.Status.FromString(status).details:
            kind = detail.type_url.rpartition(".")[2]
            if kind in ("BadRequest", "ErrorInfo", "RetryInfo"):
                found[kind] = getattr(_Words, kind).FromString(detail.value)
    except DecodeError:
        return {}  # Details that cannot be read are none; the status still tells.
    return found
