"""Nothing runs on import, and the service needs only what requirements.lock names.

They start an interpreter of their own: in this one the test tools have long imported everything.
"""

import json
import os
import re
import subprocess
import sys
from importlib.metadata import packages_distributions
from pathlib import Path

import pytest

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


@pytest.fixture(scope="module")
def imported() -> dict[str, int]:
    """Return what is there after an import of the app, with a setting in the environment that would be refused."""
    code = """
import gc, json, threading
import fastapi, pydantic_settings, service.app
things = gc.get_objects()
print(json.dumps({
    "apps": sum(isinstance(thing, fastapi.FastAPI) for thing in things),
    "settings": sum(isinstance(thing, pydantic_settings.BaseSettings) for thing in things),
    "threads": threading.active_count(),
}))
"""
    found: dict[str, int] = json.loads(_run(code, FITMENT_NO_SUCH_SETTING="1"))
    return found


@pytest.mark.parametrize(("things", "count"), [("apps", 0), ("settings", 0), ("threads", 1)])
def test_importing_the_app_makes_no_app_reads_no_setting_and_starts_no_thread(imported, things, count):
    assert imported[things] == count


def _modules_that_the_runtime_lock_leaves_out() -> set[str]:
    lock = (ROOT / "requirements.lock").read_text(encoding="utf-8")
    pinned = {_normal(name) for name in re.findall(r"^([A-Za-z0-9._-]+)==", lock, re.MULTILINE)}
    owners = packages_distributions()
    return {module for module, names in owners.items() if not pinned & {_normal(name) for name in names}}


def test_the_app_needs_only_what_the_runtime_lock_names():
    # Libraries try optional companions: those must be missing here as they are in the image.
    code = f"""
import sys
for module in {sorted(_modules_that_the_runtime_lock_leaves_out())}:
    sys.modules[module] = None
import service.__main__, service.app
from service.settings import Settings
print(type(service.app.create_app(Settings())).__name__)
"""
    assert _run(code) == "FastAPI"
