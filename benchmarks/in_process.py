"""What the work itself costs, without HTTP: `python -m benchmarks.in_process` prints it as JSON, in one process."""

from __future__ import annotations

import gc
import json
import statistics
from collections.abc import Callable
from time import perf_counter_ns

import numpy as np
import orjson
from pydantic import TypeAdapter

from benchmarks.bodies import demo_checks, new_checks
from service.api.inbound import translate
from service.api.render import assessment_answer as render
from service.api.schemas.request import CheckRequest
from service.assessment.answer.assess import assess
from service.assessment.batch.grading import grade_all
from service.assessment.view.views import candidate_facts
from service.assessment.view.wheel_facts import columns, table_of

SECONDS = 2.0
NEW_QUESTIONS = 4000
KERNEL_SIZES = (500, 16_384)


def _rounds(work: Callable[[], object], seconds: float) -> float:
    """Return the median seconds of one call, over as many as fit."""
    work()
    spent: list[int] = []
    until = perf_counter_ns() + int(seconds * 1e9)
    while perf_counter_ns() < until or len(spent) < 5:
        start = perf_counter_ns()
        work()
        spent.append(perf_counter_ns() - start)
    return statistics.median(spent) / 1e9


def kernel_per_second(size: int) -> float:
    """Return the axle assessments per second of the array path, with so many candidates at a time."""
    asked = TypeAdapter(CheckRequest).validate_python(demo_checks()[0])
    case = translate.case(asked)
    # Candidates that differ: equal ones could be kinder to the processor than real ones.
    scale = 1.0 + 0.05 * np.random.default_rng(1).random((1, size))
    front, rear = (columns(table_of([row]) * scale) for row in candidate_facts(case, case.candidate))
    return 2 * size / _rounds(lambda: grade_all(case, front, rear), SECONDS)


def domain_us(bodies: list[dict[str, object]]) -> tuple[float, float]:
    """Return the median time of translate, assess and render for these questions in turn, and of the answer's bytes."""
    adapter = TypeAdapter(CheckRequest)
    asked = [adapter.validate_python(body) for body in bodies]
    work, dumps = [], []
    gc.collect()
    gc.freeze()
    for each in asked:
        start = perf_counter_ns()
        answer = render.assessment(assess(translate.case(each)))
        between = perf_counter_ns()
        orjson.dumps(answer)
        work.append(between - start)
        dumps.append(perf_counter_ns() - between)
    return statistics.median(work) / 1000, statistics.median(dumps) / 1000


def main() -> None:
    """Print the measurements."""
    demo = demo_checks()
    new = domain_us(list(new_checks(NEW_QUESTIONS)))
    again = domain_us([demo[at % len(demo)] for at in range(NEW_QUESTIONS)])
    kernel = {str(size): kernel_per_second(size) for size in KERNEL_SIZES}
    print(json.dumps({"new_us": new, "again_us": again, "kernel": kernel}))


if __name__ == "__main__":
    main()
