"""Where measurements are made: the machine, its two cores, and servers pinned to one of them."""

from __future__ import annotations

import os
import subprocess
import sys
import sysconfig
import time
import urllib.error
import urllib.request
from contextlib import AbstractContextManager
from pathlib import Path
from types import TracebackType
from typing import Self

ROOT = Path(__file__).parents[1]
FIRST_PORT, PORTS = 8260, 20
_CORES = sorted(os.sched_getaffinity(0))
# The server has a core of its own, and whoever asks it another, where there are two.
SERVER_CORE, LOAD_CORE = _CORES[0], _CORES[-1]
START_S = 30.0


def described() -> str:
    """Return what the machine is and how busy it is right now."""
    model = next(
        (
            line.partition(":")[2].strip()
            for line in Path("/proc/cpuinfo").read_text(encoding="ascii").splitlines()
            if line.startswith("model name")
        ),
        "unknown processor",
    )
    load = ", ".join(f"{each:.2f}" for each in os.getloadavg())
    shared = "" if SERVER_CORE != LOAD_CORE else "; one core only: server and load share it"
    return f"{model}, {len(_CORES)} cores; {interpreter()}; load average {load}{shared}"


def interpreter() -> str:
    """Return which Python runs, and whether it was built with what it learnt from a run of its own tests (PGO)."""
    options = str(sysconfig.get_config_var("CONFIG_ARGS") or "")
    built = "with PGO" if "--enable-optimizations" in options else "without PGO"
    return f"{sys.implementation.name} {sys.version.split()[0]} {built}"


def pinned(core: int, *command: str) -> list[str]:
    """Return a command that runs on one core."""
    return ["taskset", "-c", str(core), *command]


def python(*arguments: str, core: int = SERVER_CORE) -> str:
    """Return what a Python module prints, run on one core; its errors go to the terminal."""
    command = pinned(core, sys.executable, "-m", *arguments)
    run = subprocess.run(command, cwd=ROOT, stdout=subprocess.PIPE, text=True, check=True, timeout=600)
    return run.stdout


class Service(AbstractContextManager["Service"]):
    """A service in a process of its own, pinned to the server's core; its log is thrown away."""

    _next = 0

    def __init__(self, *module: str) -> None:
        self.port = FIRST_PORT + Service._next % PORTS
        Service._next += 1
        kept = {name: value for name, value in os.environ.items() if not name.startswith("FITMENT_")}
        self.process = subprocess.Popen(
            pinned(SERVER_CORE, sys.executable, "-m", *(module or ("service", "serve"))),
            cwd=ROOT,
            env={**kept, "FITMENT_PORT": str(self.port), "FITMENT_DRAIN_S": "0"},
            stdout=subprocess.DEVNULL,
        )

    @property
    def url(self) -> str:
        """Return where it listens."""
        return f"http://127.0.0.1:{self.port}"

    def __enter__(self) -> Self:
        """Wait until it answers."""
        until = time.monotonic() + START_S
        while True:
            try:
                urllib.request.urlopen(f"{self.url}/health/live", timeout=5).close()
            except (urllib.error.URLError, ConnectionError):
                if self.process.poll() is not None or time.monotonic() > until:
                    self.process.kill()
                    raise RuntimeError("the service did not start") from None
                time.sleep(0.05)
            else:
                return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        """Stop it."""
        self.process.terminate()
        try:
            self.process.wait(15)
        except subprocess.TimeoutExpired:
            self.process.kill()
            self.process.wait()

    def memory_mib(self) -> tuple[float, float]:
        """Return resident and proportional memory."""
        rollup = Path(f"/proc/{self.process.pid}/smaps_rollup").read_text(encoding="ascii")
        sizes = {line.split()[0]: int(line.split()[1]) for line in rollup.splitlines()[1:]}
        return sizes["Rss:"] / 1024, sizes["Pss:"] / 1024

    def processor_s(self) -> float:
        """Return the processor time spent so far: unlike time by the clock, it does not mind a busy machine."""
        stat = Path(f"/proc/{self.process.pid}/stat").read_text(encoding="ascii").rpartition(")")[2].split()
        return (int(stat[11]) + int(stat[12])) / os.sysconf("SC_CLK_TCK")
