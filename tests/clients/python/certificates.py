"""An authority and a certificate for this machine, made for one test by openssl."""

from __future__ import annotations

import pathlib
import subprocess


def make(folder: pathlib.Path, name: str) -> "tuple[pathlib.Path, pathlib.Path]":
    """Writes NAME.pem, signed by itself and good for this machine, and NAME.key; gives their paths."""
    certificate, key = folder / f"{name}.pem", folder / f"{name}.key"
    subprocess.run(
        ["openssl", "req", "-x509", "-newkey", "ec", "-pkeyopt", "ec_paramgen_curve:prime256v1", "-nodes", "-days", "2"]
        + ["-subj", f"/CN={name}", "-addext", "subjectAltName=IP:127.0.0.1,DNS:localhost"]
        + ["-keyout", str(key), "-out", str(certificate)],
        check=True,
        capture_output=True,
    )
    return certificate, key
