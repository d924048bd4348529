"""The macro: selected sketches to the service, its answer into the document."""

from __future__ import annotations

import os
from typing import Any, Iterable, Optional

import FreeCAD

import flushback
from flushback_answer import Answer
from flushback_sketches import KnifeSketches, UnclearSketches

SETTINGS = "User parameter:BaseApp/Preferences/Macros/Flushback"
"""Where FreeCAD keeps what the macro is set to, under Tools > Edit parameters: Server, TokenFile, AuthorityFile."""

USUAL_SERVER = "http://127.0.0.1:5210"


def check(document: Any, objects: Iterable[Any], service: flushback.Service, name: Optional[str] = None) -> Any:
    """Checks a knife and draws what the dial would show.

    :param document: The document that the answer is drawn into, as one step that can be undone.
    :param objects: Sketches, wires or other objects with edges, whose labels say what they are.
    :param service: The service to ask.
    :param name: What the knife is called; the document's label without it.
    :returns: The group with the answer. One from an earlier run is taken out.
    :raises UnclearSketches: What the objects are cannot be told, or they do not lie in one plane.
    :raises flushback.FlushbackError: The service refuses the knife, or does not answer.
    """
    sketches = KnifeSketches(objects)
    drawing, title = sketches.to_dxf(), name or document.Label
    checked = service.check(drawing, name=title, artifacts=["TEXT"])
    planned = _plan(service, drawing, title)
    document.openTransaction("Flushback")
    try:
        group = Answer(document, sketches).draw(checked, planned)
        document.recompute()
    except Exception:
        document.abortTransaction()
        raise
    document.commitTransaction()
    return group


def connect() -> flushback.Service:
    """Opens a way to the service that the settings name."""
    settings = FreeCAD.ParamGet(SETTINGS)
    token_file = settings.GetString("TokenFile", "")
    token = None
    if token_file:
        with open(os.path.expanduser(token_file), encoding="ascii") as file:
            token = file.readline().strip()
    return flushback.connect(
        settings.GetString("Server", USUAL_SERVER) or USUAL_SERVER,
        token=token,
        ca=os.path.expanduser(settings.GetString("AuthorityFile", "")) or None,
    )


def run_on_selection() -> None:
    """What the macro does: a sentence in a box where something is wrong, else the answer in the document."""
    import FreeCADGui
    from PySide import QtGui

    try:
        with connect() as service:
            check(FreeCAD.ActiveDocument, FreeCADGui.Selection.getSelection(), service)
    except (UnclearSketches, flushback.FlushbackError, ValueError, OSError) as wrong:
        QtGui.QMessageBox.warning(FreeCADGui.getMainWindow(), "Flushback", str(wrong))


def _plan(service: flushback.Service, drawing: bytes, name: str) -> Any:
    """A plan of what to take off, by a service that plans; None by one that does not, or finds nothing to take off."""
    try:
        planned = service.plan(drawing, name=name)
    except flushback.FlushbackError as refused:
        if refused.code == "UNIMPLEMENTED":
            return None
        raise
    return planned if planned.report.steps else None
