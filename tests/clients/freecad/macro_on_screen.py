"""The macro in FreeCAD with its windows, which nobody sees: runs it on sketches that are selected, and prints as JSON what
its boxes say and what is in the document afterwards.

    python3 macro_on_screen.py ADDRESS LABEL...
"""

from __future__ import annotations

import json
import os
import sys
import types

os.environ["QT_QPA_PLATFORM"] = "offscreen"

import test_macro  # noqa: E402, finds FreeCAD
import FreeCAD  # noqa: E402
import FreeCADGui  # noqa: E402
from PySide2 import QtCore, QtWidgets  # noqa: E402

# FreeCAD brings PySide along, which is PySide2 under one name, in a package of 130 MB.
sys.modules["PySide"] = types.SimpleNamespace(QtGui=QtWidgets)


def main(address: str, *labels: str) -> None:
    FreeCADGui.showMainWindow()
    FreeCAD.ParamGet(test_macro.flushback_macro.SETTINGS).SetString("Server", address)
    document, sketches = test_macro.sketched("wagtail-half-stop.dxf")
    for sketch in sketches:
        if sketch.Label in labels:
            FreeCADGui.Selection.addSelection(sketch)

    said: list[str] = []

    def read_and_close() -> None:
        box = QtWidgets.QApplication.activeModalWidget()
        if box is not None:
            said.append(box.text())
            box.accept()

    timer = QtCore.QTimer()
    timer.timeout.connect(read_and_close)
    timer.start(10)
    macro = test_macro.ROOT / "clients" / "freecad" / "Flushback.FCMacro"
    exec(compile(macro.read_text(), str(macro), "exec"), {"__file__": str(macro)})
    print(json.dumps({"said": said, "labels": [thing.Label for thing in document.Objects]}), flush=True)
    # It was not made to end without its windows.
    os._exit(0)


if __name__ == "__main__":
    main(*sys.argv[1:])
