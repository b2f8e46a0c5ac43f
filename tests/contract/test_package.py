"""The wheel and the source archive: built, installed into an empty environment outside the tree, asked, stopped.

References: PEP 427 (wheel), PEP 561 (py.typed), PEP 517 (a source archive builds the wheel).
"""

import hashlib
import json
import os
import subprocess
import sys
import tarfile
import venv
import zipfile
from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple

import pytest

from tests.contract.http_wire import ROOT, Server

STORY = ROOT / "demo_requests" / "load-fails-at-top-speed.check.json"
PATIENCE_S = 300.0


def run(command: list[object], folder: Path, question: bytes | None = None) -> bytes:
    """Return what a command prints, run outside the tree without settings; it must succeed."""
    environ = {name: value for name, value in os.environ.items() if not name.startswith(("FITMENT_", "PYTHONPATH"))}
    done = subprocess.run(
        command, cwd=folder, env=environ, input=question, capture_output=True, check=False, timeout=PATIENCE_S
    )
    assert done.returncode == 0, done.stderr.decode()
    return done.stdout


def build(source: Path, target: Path, *options: str) -> None:
    """Build with the tool that pyproject.toml names, as it is locked: no registry is asked."""
    subprocess.run([sys.executable, "-m", "hatchling", "build", "-d", target, *options], cwd=source, check=True)


@pytest.fixture(scope="module")
def built(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder with the wheel and the source archive."""
    folder = tmp_path_factory.mktemp("dist")
    build(ROOT, folder)
    return folder


def the(folder: Path, pattern: str) -> Path:
    """Return the one file of this pattern."""
    (found,) = folder.glob(pattern)
    return found


def members(wheel: Path) -> dict[str, bytes]:
    """Return what a wheel holds."""
    with zipfile.ZipFile(wheel) as archive:
        return {name: archive.read(name) for name in archive.namelist()}


def test_the_wheel_holds_every_file_of_the_service_and_no_other(built: Path) -> None:
    kept = [path for path in (ROOT / "service").rglob("*") if path.is_file() and "__pycache__" not in path.parts]
    held = {name for name in members(the(built, "*.whl")) if not name.startswith("fitment_service-")}
    assert held == {path.relative_to(ROOT).as_posix() for path in kept}
    assert {Path(name).suffix for name in held} >= {".csv", ".toml", ".js", ".typed"}


def test_the_source_archive_makes_the_same_wheel(built: Path, tmp_path: Path) -> None:
    with tarfile.open(the(built, "*.tar.gz")) as archive:
        archive.extractall(tmp_path, filter="data")
    build(the(tmp_path, "fitment_service-*"), tmp_path, "-t", "wheel")
    assert members(the(tmp_path, "*.whl")) == members(the(built, "*.whl"))


class Installed(NamedTuple):
    """An environment that holds the wheel, and an empty folder to work in."""

    programs: Path
    package: Path
    folder: Path


@pytest.fixture(scope="module")
def installed(built: Path, tmp_path_factory: pytest.TempPathFactory) -> Installed:
    """The wheel in an environment that holds what requirements.lock names and nothing else."""
    home = tmp_path_factory.mktemp("environment")
    venv.create(home, with_pip=False)
    pip = [sys.executable, "-m", "pip", "--python", home / "bin" / "python", "install", "--quiet"]
    run([*pip, "--require-hashes", "-r", ROOT / "requirements.lock"], home)
    run([*pip, "--no-index", "--no-deps", the(built, "*.whl")], home)
    return Installed(home / "bin", the(home, "lib/*/site-packages/service"), tmp_path_factory.mktemp("empty"))


@pytest.fixture(scope="module")
def serving(installed: Installed) -> Iterator[Server]:
    """The service as installed, started in an empty folder."""

    class InstalledServer(Server):
        program = (installed.programs / "fitment-service", "serve")
        folder = installed.folder

    with InstalledServer(drain_s=0) as running:
        yield running


def test_a_file_is_checked_at_the_terminal_without_a_server(installed: Installed) -> None:
    printed = run([installed.programs / "fitment-service", "check", STORY], installed.folder).decode()
    # What the story is about: UN R54 and R30 leave a V tyre 92.5 % of its load at 235 km/h, so 91 is too little.
    assert "load.capacity" in printed
    assert "1138 kg at 235 km/h" in printed


def test_the_installed_service_and_its_terminal_answer_alike(installed: Installed, serving: Server) -> None:
    told = run([installed.programs / "fitment-service", "check", "-", "--json"], installed.folder, STORY.read_bytes())
    asked = serving.post("/v1/fitments/check", STORY.read_bytes())
    assert (asked.status, json.loads(told)) == (200, json.loads(asked.body))


@pytest.mark.parametrize("path", ["/", "/docs", "/v1/tables/load-index", "/v1/rule-packs/de"])
def test_the_installed_service_has_its_pages_tables_and_packs(serving: Server, path: str) -> None:
    assert serving.get(path).status == 200


def test_the_installed_contract_is_the_committed_one(installed: Installed) -> None:
    printed = run([installed.programs / "fitment-service", "openapi", "-"], installed.folder)
    assert printed == (ROOT / "openapi" / "openapi.json").read_bytes()


def test_a_notebook_asks_one_function(installed: Installed) -> None:
    code = f"import json, service; print(service.assess(json.load(open({str(STORY)!r})))['verdict'])"
    assert run([installed.programs / "python", "-c", code], installed.folder) == b"unsuitable\n"


def test_nothing_is_written_into_the_installation(installed: Installed) -> None:
    def state() -> dict[Path, str]:
        files = [path for path in installed.package.rglob("*") if path.is_file() and path.suffix != ".pyc"]
        return {path: hashlib.sha256(path.read_bytes()).hexdigest() for path in files}

    before = state()
    run([installed.programs / "fitment-service", "settings"], installed.folder)
    run([installed.programs / "fitment-service", "check", STORY], installed.folder)
    assert state() == before
    assert list(installed.folder.iterdir()) == []
