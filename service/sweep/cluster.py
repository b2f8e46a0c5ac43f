"""The parts of a sweep on a Dask cluster, and whether all of it has the package that began the sweep."""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterable, Iterator
from concurrent.futures import CancelledError, ThreadPoolExecutor
from contextlib import contextmanager
from typing import Any

from dask.delayed import Delayed
from distributed import Client, KilledWorker, progress
from distributed.comm.core import CommClosedError

from service.sweep.job import BadSweep
from service.sweep.partition import Done
from service.sweep.place import one_line

# The part of a lost worker goes to another by itself; this is for errors such as a disk that was full for a moment.
RETRIES = 2
WORKERS_S = 10
ANSWER_S = 10
# As a text, since a function of this package could not even be read where the package is absent.
_ASK = "__import__('service.sweep.fingerprint', fromlist=['fingerprint']).fingerprint()"


def check(scheduler: str, expected: str) -> None:
    """Ask scheduler and workers for their fingerprints.

    Raises
    ------
    BadSweep
        When there is no scheduler or no worker, or one has another package or none.
    """
    with _client(scheduler) as client:
        try:
            client.wait_for_workers(1, timeout=WORKERS_S)
        except TimeoutError:
            raise BadSweep(f"the scheduler at {scheduler} has no workers") from None
        on_scheduler = _asked(lambda: client.run_on_scheduler(eval, _ASK), f"the scheduler at {scheduler}")
        _compare(f"the scheduler at {scheduler}", on_scheduler, expected)
        told = _asked(lambda: client.run(eval, _ASK, on_error="return"), "a worker")
        if isinstance(told, BaseException):
            raise BadSweep(f"the workers could not be asked: {one_line(told)}")
        for address, found in sorted(told.items()):
            _compare(f"the worker at {address}", found, expected)


def _asked(ask: Callable[[], Any], who: str) -> Any:  # noqa: ANN401 - whatever the cluster answers
    """Return what the cluster answers, or the error that came instead."""
    pool = ThreadPoolExecutor(1)
    try:
        return pool.submit(ask).result(ANSWER_S)
    except TimeoutError:
        raise BadSweep(f"{who} does not answer within {ANSWER_S} s") from None
    except Exception as error:  # noqa: BLE001 - what was raised there comes back as whatever it was
        return error
    finally:
        pool.shutdown(wait=False)


def _compare(who: str, found: object, expected: str) -> None:
    if isinstance(found, ImportError):
        raise BadSweep(f"{who} lacks this package or its extra `sweep`: {one_line(found)}")
    if isinstance(found, BaseException):
        raise BadSweep(f"{who} cannot tell which package it has: {one_line(found)}")
    if found != expected:
        raise BadSweep(f"{who} has other code, tables or packs than this sweep: give all the same package")


@contextmanager
def _client(scheduler: str) -> Iterator[Client]:
    try:
        client = Client(scheduler, timeout="10s")
    except (OSError, TimeoutError, ValueError):
        raise BadSweep(f"there is no Dask scheduler at {scheduler}") from None
    with client:
        yield client


def on_cluster(scheduler: str, tasks: list[Delayed]) -> Iterable[Done]:
    """Return what the tasks return, run by the workers of a scheduler.

    Raises
    ------
    BadSweep
        When there is no scheduler, when it goes away, or when a part kills every worker that takes it.
    """
    with _client(scheduler) as client:
        try:
            futures = client.compute(tasks, retries=RETRIES)
            if sys.stdout.isatty():
                progress(futures, notebook=False)
            found: Iterable[Done] = client.gather(futures)
        except ImportError as error:
            raise BadSweep(f"the workers need this package and its extra `sweep`: {one_line(error)}") from None
        except KilledWorker:
            raise BadSweep("workers died of a part, perhaps for want of memory: try fewer --partition-rows") from None
        except (CancelledError, CommClosedError):
            raise BadSweep("the scheduler is gone; the same command goes on from here") from None
        return found
