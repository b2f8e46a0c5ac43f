"""What a pair costs in a sweep by how many candidates each vehicle has; in a process of its own."""

from __future__ import annotations

import json
from time import process_time

from benchmarks.catalogue import pairs
from service.sweep.batches import grade_batches

PAIRS = 100_000
CANDIDATES_EACH = (1, 20, 1000)
# As engines hand them over.
BATCH_ROWS = 10_000


def us_a_pair(candidates_each: int) -> float:
    """Return the processor time of a pair in microseconds, each vehicle with so many candidates."""
    batches = pairs(PAIRS, candidates_each).to_batches(max_chunksize=BATCH_ROWS)
    start = process_time()
    rows = sum(each.num_rows for each in grade_batches(batches))
    return (process_time() - start) / rows * 1e6


def main() -> None:
    """Print the measurements."""
    # The first has every designation to read, as any worker has once.
    print(json.dumps({each: us_a_pair(each) for each in CANDIDATES_EACH}))


if __name__ == "__main__":
    main()
