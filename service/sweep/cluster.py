"""The parts of a sweep on a Dask cluster."""

from __future__ import annotations

from collections.abc import Iterable
from concurrent.futures import CancelledError

from dask.delayed import Delayed
from distributed import Client, KilledWorker, progress
from distributed.comm.core import CommClosedError

from service.sweep.job import BadSweep

# The part of a lost worker goes to another by itself; this is for errors such as a disk that was full for a moment.
RETRIES = 2
WORKERS_S = 30


def on_cluster(scheduler: str, tasks: list[Delayed]) -> Iterable[int]:
    """Return what the tasks return, run by the workers of a scheduler.

    Raises
    ------
    BadSweep
        When there is no scheduler or no worker, when one goes away, or when a part kills every worker that takes it.
    """
    try:
        client = Client(scheduler, timeout="10s")
    except (OSError, TimeoutError, ValueError):
        raise BadSweep(f"there is no Dask scheduler at {scheduler}") from None
    with client:
        try:
            client.wait_for_workers(1, timeout=WORKERS_S)
            futures = client.compute(tasks, retries=RETRIES)
            progress(futures, notebook=False)
            found: Iterable[int] = client.gather(futures)
        except TimeoutError:
            raise BadSweep(f"the scheduler at {scheduler} has no workers") from None
        except ImportError as error:
            raise BadSweep(f"the workers need this package and its extra `sweep`: {error}") from None
        except KilledWorker:
            raise BadSweep("workers died of a part, perhaps for want of memory: try fewer --partition-rows") from None
        except (CancelledError, CommClosedError):
            raise BadSweep("the scheduler is gone; the same command goes on from here") from None
        return found
