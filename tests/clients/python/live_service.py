"""The built service as a process of its own on this machine, for the tests of clients."""

from __future__ import annotations

import os
import pathlib
import re
import subprocess

ROOT = pathlib.Path(__file__).resolve().parents[3]
SAMPLES = ROOT / "clients" / "samples"
PROGRAM = ROOT / "artifacts" / "bin" / "Flushback.Service" / "release" / "Flushback.Service.dll"


class LiveService:
    """A service that listens until ``close``."""

    def __init__(self, *args: str, scheme: str = "http") -> None:
        if not PROGRAM.exists():
            raise FileNotFoundError(f"{PROGRAM} is not there; build it: dotnet build -c Release src/Flushback.Service")
        self._process = subprocess.Popen(
            ["dotnet", str(PROGRAM), "--urls", f"{scheme}://127.0.0.1:0", "--Limits:Seconds=600", *args],
            stdout=subprocess.PIPE,
            stderr=subprocess.STDOUT,
            text=True,
            env={**os.environ, "Logging__LogLevel__Microsoft": "Information"},
        )
        self.address = self._wait()

    def _wait(self) -> str:
        printed = ""
        assert self._process.stdout is not None
        for line in self._process.stdout:
            printed += line
            if found := re.search(r"Now listening on: (\S+)", line):
                return found.group(1)
        self._process.kill()
        raise RuntimeError(f"The service did not start:\n{printed}")

    def close(self) -> None:
        self._process.terminate()
        self._process.communicate()

    def __enter__(self) -> "LiveService":
        return self

    def __exit__(self, *_: object) -> None:
        self.close()
