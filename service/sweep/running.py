"""Who is sweeping into a folder: a second sweep beside a running one would take its files from under it."""

from __future__ import annotations

import json
import os
import socket
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from threading import Event, Thread
from time import time
from typing import Any
from uuid import uuid4

from service.sweep.job import BadSweep
from service.sweep.place import Place

NAME = ".running.json"
BEAT_S = 5.0
# A sweep that was killed elsewhere is taken for dead after this; on the same machine its process is looked for.
SILENT_S = 30.0


@contextmanager
def only_sweep(out: Place) -> Iterator[None]:
    """Hold a folder for this sweep.

    Raises
    ------
    BadSweep
        When another one is at work in it.
    """
    mark = out / NAME
    _refuse_beside_another(mark)
    mine = {"host": socket.gethostname(), "process": os.getpid(), "token": uuid4().hex}
    _write(mark, mine)
    # Of two that begin in the same moment the later one wins, and the other sees it here.
    if (found := _read(mark)) is None or found["token"] != mine["token"]:
        raise BadSweep(f"another sweep into {out.path} began in the same moment")
    ended = Event()
    beat = Thread(target=_beat, args=(mark, mine, ended), daemon=True)
    beat.start()
    try:
        yield
    finally:
        ended.set()
        beat.join()
        mark.remove()


def _beat(mark: Place, mine: dict[str, Any], ended: Event) -> None:
    while not ended.wait(BEAT_S):
        # A disk that is away for a moment is told by the work itself.
        with suppress(OSError):
            _write(mark, mine)


def _write(mark: Place, mine: dict[str, Any]) -> None:
    mark.write(json.dumps({**mine, "at": time()}).encode())


def _read(mark: Place) -> dict[str, Any] | None:
    try:
        found: dict[str, Any] = json.loads(mark.read())
    except (OSError, ValueError):
        return None
    return found


def _refuse_beside_another(mark: Place) -> None:
    found = _read(mark)
    if found is None or time() - found["at"] > SILENT_S or _is_dead(found):
        return
    folder = mark.path.removesuffix(f"/{NAME}")
    raise BadSweep(
        f"a sweep is at work in {folder} (process {found['process']} on {found['host']}); wait for it, or stop it first"
    )


def _is_dead(found: dict[str, Any]) -> bool:
    """Return whether the process of a mark is surely gone."""
    if found["host"] != socket.gethostname():
        return False
    try:
        os.kill(found["process"], 0)
    except ProcessLookupError:
        return True
    except PermissionError:
        pass
    return False
