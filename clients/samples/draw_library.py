#!/usr/bin/env python3
"""Draws the DXF files of the library anew from their pages in drawings/: the same bytes every time.

    python3 clients/samples/draw_library.py [folder [program ...]]

The folder is library/ where none is named. The program is the command line of Flushback, built and run by dotnet where
none is named.
"""

import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

HERE = Path(__file__).resolve().parent
BUILT_ANEW = ["dotnet", "run", "--project", str(HERE.parent / "cli"), "--"]

# Each page, and the form of its drawing.
DRAWINGS = {
    "ruff": ["--dxf", "2018"],
    "stilt": ["--dxf", "r12", "--units", "in"],
    "whinchat": ["--dxf", "2000"],
    "yellowhammer": ["--dxf", "2007", "--units", "in"],
}


def main() -> None:
    folder = Path(sys.argv[1]) if len(sys.argv) > 1 else HERE / "library"
    program = sys.argv[2:] or BUILT_ANEW
    for name, form in DRAWINGS.items():
        page = HERE / "drawings" / f"{name}.yaml"
        with tempfile.TemporaryDirectory() as out:
            subprocess.run(
                [*program, "generate", "--pattern", str(page), *form, "--out", out, "--quiet"],
                check=True,
            )
            shutil.copyfile(Path(out) / "pattern.dxf", folder / f"{name}.dxf")


if __name__ == "__main__":
    main()
