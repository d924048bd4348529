"""Checks every drawing in a folder and prints a table: an example of the use of flushback.py.

    python3 check_folder.py FOLDER [--server URL] [--token-file FILE] [--ca FILE]

Readings are in thousandths of an inch and millimetres. Ends with 0 when every pair is clean, 1 when there are findings
above a note, 2 when a drawing was refused, 3 when no service answered.
"""

from __future__ import annotations

import argparse
import pathlib
import sys
from typing import Any

import flushback

THOU_MM = 0.0254
STOPS = (1, 2, 3)  # STOP_OPEN, STOP_HALF_STOP, STOP_CLOSED
NOTE = 1  # SEVERITY_NOTE


def reading(report: Any, stop: int) -> str:
    """The dial at a stop, such as ``+5.0 (+0.127)``, or a stroke where the knife has none."""
    for found in report.stops:
        if found.stop == stop:
            return f"{found.lift_mm / THOU_MM:+.1f} ({found.lift_mm:+.3f})" if found.rests else "no rest"
    return "-"


def row(path: pathlib.Path, report: Any) -> list[str]:
    """A line of the table: the drawing, its readings, and how many findings it has."""
    findings = sum(1 for finding in report.findings if finding.severity > NOTE)
    return [path.name, *(reading(report, stop) for stop in STOPS), str(findings) if findings else "clean"]


def print_table(rows: list[list[str]]) -> None:
    """Prints rows with their columns below each other."""
    widths = [max(map(len, column)) for column in zip(*rows)]
    for cells in rows:
        print("  ".join(cell.ljust(width) for cell, width in zip(cells, widths)).rstrip())


def main() -> int:
    parser = argparse.ArgumentParser(description="Checks every drawing in a folder and prints a table.")
    parser.add_argument("folder", type=pathlib.Path)
    parser.add_argument("--server", default="http://127.0.0.1:5210", metavar="URL")
    parser.add_argument("--token-file", type=pathlib.Path, metavar="FILE")
    parser.add_argument("--ca", type=pathlib.Path, metavar="FILE", help="who vouches for the service, as PEM")
    options = parser.parse_args()
    drawings = sorted(options.folder.glob("*.dxf"))
    if not drawings:
        parser.error(f"{str(options.folder)!r} holds no drawing that ends with .dxf.")
    token = options.token_file.read_text().strip() if options.token_file else None

    try:
        with flushback.connect(options.server, token=token, ca=options.ca) as service:
            # Answers come as they are ready, in any order.
            checked = {path: (answer, error) for path, answer, error in service.check_many(drawings)}
    except flushback.FlushbackError as nobody:
        print(nobody, file=sys.stderr)
        return 3
    rows = [row(path, checked[path][0].report) for path in drawings if checked[path][0]]
    print_table([["drawing", "open, thou (mm)", "half stop", "closed", "findings"], *rows])
    refused = [f"{path.name}: {checked[path][1]}" for path in drawings if checked[path][1]]
    for sentence in refused:
        print(sentence, file=sys.stderr)
    return 2 if refused else int(any(cells[-1] != "clean" for cells in rows))


if __name__ == "__main__":
    sys.exit(main())
