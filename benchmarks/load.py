"""Load by wrk: bodies in turn, as fast as they are answered, from a core of its own."""

from __future__ import annotations

import json
import math
import re
import subprocess
import tempfile
from collections.abc import Iterable
from pathlib import Path
from typing import Any, NamedTuple

from benchmarks.place import LOAD_CORE, Service, pinned

# wrk makes the requests before it starts, so that its own work per request is small.
_SCRIPT = """
local requests = {}
local at = 0
function init(args)
  for line in io.lines(args[1]) do
    requests[#requests + 1] = wrk.format("POST", nil, {["Content-Type"] = "application/json"}, line)
  end
end
function request()
  at = at % #requests + 1
  return requests[at]
end
function done(summary, latency, requests)
  local e = summary.errors
  local failed = e.connect + e.read + e.write + e.status + e.timeout
  io.write(string.format("RESULT %d %d %d %.1f %.1f %.1f\\n", summary.requests, summary.duration, failed,
    latency.mean, latency:percentile(50), latency:percentile(99)))
end
"""
_RESULT = re.compile(r"RESULT (\d+) (\d+) (\d+) ([\d.]+) ([\d.]+) ([\d.]+)")


class Load(NamedTuple):
    """What came of a load."""

    requests: int
    seconds: float
    mean_ms: float
    p50_ms: float
    p99_ms: float
    processor_us: float = math.nan
    """Of the server, for each request."""

    @property
    def per_second(self) -> float:
        """Return the requests answered per second."""
        return self.requests / self.seconds


class Bodies:
    """Bodies in a file, as wrk reads them."""

    def __init__(self, bodies: Iterable[Any]) -> None:
        self._folder = tempfile.TemporaryDirectory()
        place = Path(self._folder.name)
        self.file = place / "bodies.jsonl"
        self.script = place / "script.lua"
        with self.file.open("w", encoding="utf-8") as file:
            file.writelines(json.dumps(body) + "\n" for body in bodies)
        self.script.write_text(_SCRIPT, encoding="utf-8")

    def start(self, service: Service, route: str, seconds: float, clients: int) -> subprocess.Popen[str]:
        """Start to ask."""
        command = ["wrk", "-t1", f"-c{clients}", f"-d{seconds:g}s", "--timeout", "30s", "-s", str(self.script)]
        return subprocess.Popen(
            pinned(LOAD_CORE, *command, f"{service.url}{route}", "--", str(self.file)),
            stdout=subprocess.PIPE,
            text=True,
        )

    def ask(self, service: Service, route: str, seconds: float, clients: int = 4) -> Load:
        """Return what came of asking for so long."""
        before = service.processor_s()
        process = self.start(service, route, seconds, clients)
        said, _ = process.communicate(timeout=seconds + 60)
        found = result(said)
        return found._replace(processor_us=1e6 * (service.processor_s() - before) / found.requests)


def result(said: str) -> Load:
    """Return what wrk reports; an answer that is no 200 makes the whole worthless."""
    found = _RESULT.search(said)
    if found is None:
        raise RuntimeError(f"wrk said nothing of use: {said[-500:]}")
    requests, micros, failed = (int(found[at]) for at in (1, 2, 3))
    if failed or not requests:
        raise RuntimeError(f"{failed} requests were not answered as they should be: {said[-500:]}")
    mean, p50, p99 = (float(found[at]) / 1000 for at in (4, 5, 6))
    return Load(requests, micros / 1e6, mean, p50, p99)
