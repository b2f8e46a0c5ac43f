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
