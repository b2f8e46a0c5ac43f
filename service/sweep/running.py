"""Who is sweeping into a folder: a second sweep beside a running one would take its files from under it.

A mark in the folder tells it everywhere, a lock of the operating system besides on one machine: two sweeps that begin
in the same moment may both have seen no mark.
"""

from __future__ import annotations

import errno
import fcntl
import json
import os
import socket
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from threading import Event, Thread
from time import time
from typing import NamedTuple
from uuid import uuid4

import pyarrow.fs as pafs

from service.sweep.job import BadSweep
from service.sweep.place import Place

NAME = ".running.json"
LOCK = ".running.lock"
BEAT_S = 5.0
# A sweep that was killed elsewhere is taken for dead after this; on the same machine its process is looked for.
SILENT_S = 30.0


class Mark(NamedTuple):
    """Who sweeps, and when he last said so [s since the epoch]."""

    host: str
    process: int
    token: str
    at: float


@contextmanager
def only_sweep(out: Place) -> Iterator[None]:
    """Hold a folder for this sweep.

    Raises
    ------
    BadSweep
        When another one is at work in it.
    """
    with _locked(out):
        mark = out / NAME
        _refuse_beside_another(mark)
        mine = Mark(socket.gethostname(), os.getpid(), uuid4().hex, time())
        _write(mark, mine)
        # Of two that begin in the same moment elsewhere the later one wins, and the other sees it here.
        if (found := _read(mark)) is None or found.token != mine.token:
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


@contextmanager
def _locked(out: Place) -> Iterator[None]:
    """Hold the lock of a folder of this machine; it ends with the process, however that ends."""
    if not isinstance(out.files, pafs.LocalFileSystem):
        yield
        return
    lock = os.open((out / LOCK).path, os.O_RDWR | os.O_CREAT, 0o644)
    try:
        _lock(lock, out)
        yield
    finally:
        os.close(lock)


def _lock(file: int, out: Place) -> None:
    try:
        fcntl.flock(file, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except BlockingIOError:
        found = _read(out / NAME)
        who = f" (process {found.process} on {found.host})" if found else ""
        raise BadSweep(f"a sweep is at work in {out.path}{who}; wait for it, or stop it first") from None
    except OSError as error:
        # A shared disk may know no locks: the mark alone has to do there.
        if error.errno not in (errno.ENOLCK, errno.EOPNOTSUPP, errno.ENOSYS, errno.EINVAL):
            raise


def _beat(mark: Place, mine: Mark, ended: Event) -> None:
    while not ended.wait(BEAT_S):
        # A disk that is away for a moment is told by the work itself.
        with suppress(OSError):
            _write(mark, mine)


def _write(mark: Place, mine: Mark) -> None:
    mark.write(json.dumps(mine._replace(at=time())._asdict()).encode())


def _read(mark: Place) -> Mark | None:
    """Return what a mark says; None where there is none or it says nothing."""
    try:
        found = json.loads(mark.read())
        return Mark(str(found["host"]), int(found["process"]), str(found["token"]), float(found["at"]))
    except (OSError, ValueError, KeyError, TypeError):
        return None


def _refuse_beside_another(mark: Place) -> None:
    folder = mark.path.removesuffix(f"/{NAME}")
    found = _read(mark)
    if found is None:
        written = mark.written_s()
        if written is not None and time() - written <= SILENT_S:
            raise BadSweep(f"{mark.path} was written a moment ago and cannot be read; try again in {SILENT_S:.0f} s")
        return
    if time() - found.at > SILENT_S or _is_dead(found):
        return
    raise BadSweep(
        f"a sweep is at work in {folder} (process {found.process} on {found.host}); wait for it, or stop it first"
    )


def _is_dead(found: Mark) -> bool:
    """Return whether the process of a mark is surely gone."""
    if found.host != socket.gethostname():
        return False
    try:
        os.kill(found.process, 0)
    except (ProcessLookupError, OverflowError):
        return True
    except PermissionError:
        pass
    return False
