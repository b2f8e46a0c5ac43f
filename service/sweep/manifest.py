"""The manifest of an output folder: what its files are results of, so that only the same job goes on in it."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Mapping
from pathlib import Path
from typing import Any
from uuid import uuid4

from service.sweep.job import BadSweep, Job
from service.sweep.partition import FOLDER

NAME = "manifest.json"
# Where a file lies does not change what is in it.
_PLACES = frozenset({"vehicles", "candidates"})
_READ_BYTES = 1 << 20


def sha256(path: Path) -> str:
    """Return the hash of a file's bytes."""
    found = hashlib.sha256()
    with path.open("rb") as file:
        while piece := file.read(_READ_BYTES):
            found.update(piece)
    return found.hexdigest()


def begin(out: Path, job: Job, *, resume: bool) -> None:
    """Make an output folder this job's.

    Raises
    ------
    BadSweep
        When it holds the results of another job.
    """
    try:
        (out / FOLDER).mkdir(parents=True, exist_ok=True)
    except OSError:
        raise BadSweep(f"{out} cannot be written to") from None
    manifest = out / NAME
    if not resume:
        manifest.unlink(missing_ok=True)
        for path in (out / FOLDER).glob("part-*.parquet"):
            path.unlink()
    elif manifest.exists():
        _refuse_another(manifest, job)
        return
    elif any((out / FOLDER).glob("part-*.parquet")):
        raise BadSweep(f"{out} holds results without a {NAME}; choose another folder, or --no-resume")
    _write(manifest, {"job": job._asdict(), "complete": False})


def finish(out: Path, job: Job, verdicts: Mapping[str, int]) -> None:
    """Note that all is done, and clear away what lost workers left half-written."""
    for draft in (out / FOLDER).glob(".part-*.tmp"):
        draft.unlink(missing_ok=True)
    _write(out / NAME, {"job": job._asdict(), "complete": True, "verdicts": dict(verdicts)})


def _refuse_another(manifest: Path, job: Job) -> None:
    try:
        known = json.loads(manifest.read_text(encoding="utf-8"))["job"]
    except (ValueError, KeyError, TypeError):
        raise BadSweep(f"{manifest} cannot be read; choose another folder, or --no-resume") from None
    for name, value in job._asdict().items():
        if name not in _PLACES and known.get(name) != value:
            what = name.removesuffix("_sha256").replace("_", "-")
            changed = "are not the same" if name.endswith("_sha256") else f"was {known.get(name)} and now is {value}"
            raise BadSweep(
                f"{manifest.parent} holds results of another sweep: its {what} {changed}; "
                "choose another folder, or --no-resume to throw them away"
            )


def _write(target: Path, content: Mapping[str, Any]) -> None:
    draft = target.with_name(f".{NAME}.{uuid4().hex}.tmp")
    draft.write_text(json.dumps(content, indent=2) + "\n", encoding="utf-8")
    draft.replace(target)
