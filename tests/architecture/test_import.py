"""Nothing runs on import, and the service needs only what requirements.lock names.

Each test starts an interpreter of its own: in this one the test tools have long imported everything.
"""

import os
import re
import subprocess
import sys
from importlib.metadata import packages_distributions
from pathlib import Path

ROOT = Path(__file__).parents[2]


def _run(code: str, **environment: str) -> str:
    run = subprocess.run(
        [sys.executable, "-c", code],
        cwd=ROOT,
        env={**os.environ, **environment},
        capture_output=True,
        text=True,
        check=False,
    )
    assert run.returncode == 0, run.stderr
    return run.stdout.strip()


def _normal(name: str) -> str:
    return re.sub(r"[-_.]+", "-", name).lower()


def test_importing_the_app_makes_no_app():
    code = """
import gc, fastapi, service.app
print(sum(isinstance(thing, fastapi.FastAPI) for thing in gc.get_objects()))
"""
    assert _run(code) == "0"


def test_importing_the_app_makes_no_settings():
    code = """
import gc, pydantic_settings, service.app
print(sum(isinstance(thing, pydantic_settings.BaseSettings) for thing in gc.get_objects()))
"""
    assert _run(code) == "0"


def test_importing_the_app_reads_no_setting():
    assert _run("import service.app; print('imported')", FITMENT_NO_SUCH_SETTING="1") == "imported"


def test_importing_the_app_starts_no_thread():
    assert _run("import threading, service.app; print(threading.active_count())") == "1"


def test_the_app_needs_only_what_the_runtime_lock_names():
    lock = (ROOT / "requirements.lock").read_text(encoding="utf-8")
    pinned = {_normal(name) for name in re.findall(r"^([A-Za-z0-9._-]+)==", lock, re.MULTILINE)}
    code = "import sys, service.__main__, service.app; print(*sys.modules)"
    loaded = {module.partition(".")[0] for module in _run(code).split()}
    owners = packages_distributions()
    strangers = {
        module for module in loaded if module in owners and not pinned & {_normal(name) for name in owners[module]}
    }
    # What the interpreter loads by itself, whatever is imported.
    by_itself = {module.partition(".")[0] for module in _run("import sys; print(*sys.modules)").split()}
    assert strangers - by_itself == set()
