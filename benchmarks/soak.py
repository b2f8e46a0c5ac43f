"""Memory of a service process over many requests.

`python -m benchmarks.soak [--requests N] [--wrong-paths N]`. wrk sends checks of rotating bodies, no two of them alike,
and the resident memory is read from /proc every tenth of the way; then come distinct wrong paths. What the service
remembers of earlier requests is bounded and fills up first: what counts is the growth over the second half.
"""

from __future__ import annotations

import argparse
import json
import subprocess
import sys
import tempfile
from pathlib import Path

from benchmarks.hostile import Service
from benchmarks.hostile_requests import well_meant
from tests.contract.http_wire import head, receive

TENTHS = 10
# wrk stops at a time, not at a number of requests: it is run again and again until there were enough.
RUN_S = 2
SCRIPT = """
local bodies = {{}}
for line in io.lines("{bodies}") do bodies[#bodies + 1] = line end
local number = 0
wrk.method = "POST"
wrk.headers["Content-Type"] = "application/json"
local own = os.time() % 1000 * 10000000
function setup(thread) threads = (threads or 0) + 1; thread:set("first", threads * 5000000) end
function request()
  number = number + 1
  local body = bodies[number % #bodies + 1]
  -- A fraction that no request before had: what the service remembers of numbers cannot help it.
  local fraction = string.format("%%1.%010d", own + first + number)
  for _, name in ipairs({{"pressure_kpa", "inboard_mm", "tread_depth_mm", "max_axle_mass_kg"}}) do
    body = body:gsub('("' .. name .. '": %d+)[.%d]*', fraction)
  end
  return wrk.format(nil, "/v1/fitments/check", nil, body)
end
function done(summary, latency)
  io.write(string.format("%d %d %d\\n", summary.requests, summary.errors.status, summary.errors.connect +
    summary.errors.read + summary.errors.write + summary.errors.timeout))
end
"""


def main() -> int:
    """Measure, write the table, return 1 where memory grew or a request failed."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--requests", type=int, default=200_000)
    parser.add_argument("--wrong-paths", type=int, default=10_000)
    asked = parser.parse_args()
    with tempfile.TemporaryDirectory() as folder, Service(access_log=False) as server:
        pid = server.process.pid
        print(f"{'after':>10} {'kind':16} {'resident MiB':>12}  failed")
        print(f"{0:10} {'start':16} {resident_mib(pid):12.1f}")
        bodies = Path(folder) / "bodies"
        bodies.write_text("\n".join(rotating_bodies(server)))
        script = Path(folder) / "checks.lua"
        script.write_text(SCRIPT.format(bodies=bodies))
        sent, failed, seen = 0, 0, []
        for tenth in range(1, TENTHS + 1):
            while sent < asked.requests * tenth // TENTHS:
                count, refused, broken = run_wrk(server.port, script)
                sent, failed = sent + count, failed + refused + broken
            seen.append(resident_mib(pid))
            print(f"{sent:10} {'checks':16} {seen[-1]:12.1f}  {failed}", flush=True)
        for part in range(TENTHS):
            ask_wrong_paths(server, part * asked.wrong_paths // TENTHS, (part + 1) * asked.wrong_paths // TENTHS)
            if part in (0, TENTHS // 2 - 1, TENTHS - 1):
                asked_so_far = (part + 1) * asked.wrong_paths // TENTHS
                print(f"{asked_so_far:10} {'wrong paths':16} {resident_mib(pid):12.1f}", flush=True)
        grown = resident_mib(pid) - seen[TENTHS // 2 - 1]
        series = len(server.get("/metrics").body.splitlines())
    print(f"growth from the middle on: {grown:+.1f} MiB; lines of /metrics: {series}; failed: {failed}")
    # Pools of the interpreter and of the C library settle within a few MiB; a leak of ten bytes a request shows.
    return 1 if failed or grown > 4.0 else 0


def rotating_bodies(server: Service) -> list[str]:
    """Return the check requests of the demo that are answered with 200."""
    bodies = [(item.path, json.dumps(item.body)) for item in well_meant() if item.path == "/v1/fitments/check"]
    return [body for path, body in bodies if server.post(path, body.encode()).status == 200]


def run_wrk(port: int, script: Path) -> tuple[int, int, int]:
    """Return how many requests were answered, how many refused and how many broke."""
    ran = subprocess.run(
        ["wrk", "-t2", "-c16", f"-d{RUN_S}s", "-s", str(script), f"http://127.0.0.1:{port}"],
        check=True,
        capture_output=True,
        text=True,
        timeout=60,
    )
    answered, refused, broken = ran.stdout.strip().splitlines()[-1].split()
    return int(answered), int(refused), int(broken)


def ask_wrong_paths(server: Service, first: int, end: int) -> None:
    """Ask for distinct paths that lead nowhere, on one connection."""
    with server.connect() as connection:
        for number in range(first, end):
            connection.sendall(head("GET", f"/wrong/{number}/{'x' * (number % 97)}"))
            assert receive(connection).status == 404


def resident_mib(pid: int) -> float:
    """Return the resident memory of a process."""
    lines = Path(f"/proc/{pid}/status").read_text(encoding="ascii").splitlines()
    return next(int(line.split()[1]) for line in lines if line.startswith("VmRSS")) / 1024


if __name__ == "__main__":
    sys.exit(main())
