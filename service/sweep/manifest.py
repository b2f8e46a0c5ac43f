"""The manifest of an output folder: what its files are results of, so that only the same job goes on in it."""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from typing import Any

from service.sweep.job import BadSweep, Job
from service.sweep.partition import FOLDER, NOTES, Done
from service.sweep.place import Place

NAME = "manifest.json"
_WORDS = {"fingerprint": "code, tables and packs", "only": "--only"}


def begin(out: Place, job: Job, *, resume: bool) -> None:
    """Make an output folder this job's.

    Raises
    ------
    BadSweep
        When it holds the results of another job.
    """
    manifest = out / NAME
    if not resume:
        manifest.remove()
        for folder in (FOLDER, NOTES):
            _clear(out / folder, "part-")
    elif manifest.is_file():
        _refuse_another(manifest, job)
        return
    elif any(name.startswith("part-") for name in (out / FOLDER).names()):
        raise BadSweep(f"{out.path} holds results without a {NAME}; choose another folder, or --no-resume")
    _write(manifest, {"job": job._asdict(), "complete": False})


def finish(out: Place, job: Job, verdicts: Mapping[str, int], done: Sequence[Done]) -> None:
    """Note that all is done, and clear away what lost workers left half-written."""
    for folder in (FOLDER, NOTES):
        _clear(out / folder, ".part-")
    files = {each.name: {"rows": each.rows, "sha256": each.sha256} for each in done}
    _write(out / NAME, {"job": job._asdict(), "complete": True, "verdicts": dict(verdicts), "files": files})


def _clear(folder: Place, beginning: str) -> None:
    for name in folder.names():
        if name.startswith(beginning):
            (folder / name).remove()


def _refuse_another(manifest: Place, job: Job) -> None:
    try:
        known = json.loads(manifest.read())["job"]
        known = {**known, "only": tuple(known["only"])}
    except (ValueError, KeyError, TypeError):
        raise BadSweep(f"{manifest.path} cannot be read; choose another folder, or --no-resume") from None
    for name, value in job._asdict().items():
        if known.get(name) != value:
            what = _WORDS.get(name, name.removesuffix("_sha256").replace("_", "-"))
            same = name.endswith("_sha256") or name == "fingerprint"
            changed = "are not the same" if same else f"was {_said(known.get(name))} and now is {_said(value)}"
            raise BadSweep(
                f"{manifest.path.removesuffix(f'/{NAME}')} holds results of another sweep: its {what} {changed}; "
                "choose another folder, or --no-resume to throw them away"
            )


def _said(value: object) -> str:
    return ",".join(map(str, value)) if isinstance(value, tuple) else str(value)


def _write(target: Place, content: Mapping[str, Any]) -> None:
    target.write((json.dumps(content, indent=2) + "\n").encode())
