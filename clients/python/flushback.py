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

import inspect
import json
import os
import pathlib
from types import TracebackType
from typing import Any, Iterable, Iterator, Mapping, NamedTuple, Optional, Type, Union
from urllib.parse import urlsplit

import grpc
from google.protobuf import descriptor_pb2, descriptor_pool, json_format, message_factory
from google.protobuf.message import DecodeError, Message

__all__ = ["connect", "FlushbackError", "Service", "to_dict", "to_json", "Violation"]

Drawing = Union[str, "os.PathLike[str]", bytes]
"""A drawing: the path of a DXF, or its bytes."""

Fields = Union[Message, Mapping[str, Any], None]
"""A message of the contract, or a mapping with its fields, such as ``{"width_mm": 3.2}``."""

DEADLINE_S = 60.0
"""How long a call waits for its answer, in seconds, tries included, unless told otherwise."""

_LARGEST_ANSWER = 256 * 1024 * 1024  # A page, a fine curve and a drawing go beyond gRPC's own 4 MB.
_LARGEST_KEPT = 80 * 1024 * 1024  # A request can only be sent again when it was kept.

# Nothing changes on the service, so that it may be asked again whenever none answered. A service that is busy says by
# itself when (grpc-retry-pushback-ms), which gRPC goes by. Every other status is an answer and would be the same again.
_SERVICE_CONFIG = {
    "methodConfig": [
        {
            "name": [{}],
            "retryPolicy": {
                "maxAttempts": 5,
                "initialBackoff": "0.1s",
                "maxBackoff": "2s",
                "backoffMultiplier": 2,
                "retryableStatusCodes": ["UNAVAILABLE"],
            },
        }
    ]
}


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

    def call(self, method: str, request: Fields, deadline_s: Optional[float] = None) -> Any:
        """Calls any method of the contract that takes one message and gives one.

        :param method: Its name, such as ``flushback.v1.ProfileChecker/Check``.
        :param request: The request, or its fields; those that are None are left out.
        :param deadline_s: As in ``check``.
        :returns: The answer, a message of the contract.
        :raises FlushbackError: As in ``check``.
        """
        wait_s = self._deadline_s if deadline_s is None else deadline_s
        try:
            asked, answered = self._contract.types_of(method, lambda: self._reflect(wait_s))
            call = self._channel.unary_unary(
                f"/{method}", request_serializer=asked.SerializeToString, response_deserializer=answered.FromString
            )
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
    code: str = refused.code().name
    details = _details(refused)
    bad, info, retry = (details.get(kind) for kind in ("BadRequest", "ErrorInfo", "RetryInfo"))
    violations = [Violation(v.field, v.description, v.reason) for v in bad.field_violations] if bad else []
    said: str = refused.details() or ""
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


def _details(refused: Any) -> dict[str, Any]:
    """The details of google.rpc.Status that this file knows, by their names."""
    trailers = dict(refused.trailing_metadata() or ()) if hasattr(refused, "trailing_metadata") else {}
    found = {}
    try:
        for detail in _Words.Status.FromString(trailers.get("grpc-status-details-bin", b"")).details:
            kind = detail.type_url.rpartition(".")[2]
            if kind in ("BadRequest", "ErrorInfo", "RetryInfo"):
                found[kind] = getattr(_Words, kind).FromString(detail.value)
    except DecodeError:
        return {}  # Details that cannot be read are none; the status still tells.
    return found
