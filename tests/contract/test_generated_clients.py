"""The document as others read it: two linters, and a generated client in two languages against a live service.

References: Spectral's set spectral:oas, Redocly's set recommended, `tsc --strict`, openapi-python-client.
"""

import json
import os
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

import pytest

from tests.contract.http_wire import ROOT, Server

CLIENTS = Path(__file__).parent / "clients"
# Made by `make test` from package.json and its lock; node looks for packages from a script's folder upwards.
PACKAGES = ROOT / "build" / "clients"
DOCUMENT = ROOT / "openapi" / "openapi.json"
STORY = ROOT / "demo_requests" / "load-fails-at-top-speed.check.json"
QUIET = {"REDOCLY_TELEMETRY": "off", "REDOCLY_SUPPRESS_UPDATE_NOTICE": "true"}
# Longer than anything here may take on two busy cores.
PATIENCE_S = 120


def run(command, folder, **environ):
    search = os.pathsep.join((str(Path(sys.executable).parent), os.environ["PATH"]))
    done = subprocess.run(
        [str(part) for part in command],
        cwd=folder,
        env=os.environ | {"PATH": search} | QUIET | environ,
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        text=True,
        check=False,
        timeout=PATIENCE_S,
    )
    assert done.returncode == 0, done.stdout
    return done.stdout


def node_tool(name):
    tool = PACKAGES / "node_modules" / ".bin" / name
    assert tool.exists(), "the node packages are not there; `make test` installs them"
    return tool


@pytest.fixture(scope="module")
def workshop():
    with tempfile.TemporaryDirectory(dir=PACKAGES) as folder:
        yield Path(folder)


@pytest.fixture(scope="module")
def typescript_client(workshop):
    for name in ("drive.ts", "tsconfig.json", "package.json"):
        shutil.copy(CLIENTS / name, workshop)
    # By itself the generator takes a field with a default for one that callers must send.
    command = [node_tool("openapi-typescript"), DOCUMENT, "--default-non-nullable", "false"]
    said = run([*command, "--output", "contract.d.ts"], workshop)
    assert "warn" not in said.lower()
    run([node_tool("tsc"), "--project", "."], workshop)
    return workshop / "drive.js"


@pytest.fixture(scope="module")
def python_client(tmp_path_factory):
    folder = tmp_path_factory.mktemp("python")
    command = ["openapi-python-client", "generate", "--path", DOCUMENT, "--output-path", "fitment_client"]
    said = run([*command, "--config", CLIENTS / "python.yaml", "--meta", "none", "--fail-on-warning"], folder)
    assert "warn" not in said.lower()
    run([sys.executable, "-W", "error", "-m", "compileall", "-q", "fitment_client"], folder)
    return folder


def learnt(said):
    return json.loads(said.splitlines()[-1])


@pytest.fixture(scope="module")
def by_typescript(typescript_client, server: Server):
    address = f"http://127.0.0.1:{server.port}"
    return learnt(run(["node", typescript_client, address, STORY.read_text(encoding="utf-8")], PACKAGES))


@pytest.fixture(scope="module")
def by_python(python_client, server: Server):
    address = f"http://127.0.0.1:{server.port}"
    command = [sys.executable, "-W", "error", CLIENTS / "drive.py", address, STORY.read_text(encoding="utf-8")]
    return learnt(run(command, python_client, PYTHONPATH=str(python_client)))


@pytest.fixture(params=["by_typescript", "by_python"])
def answers(request):
    return request.getfixturevalue(request.param)


def test_spectral_reports_nothing():
    command = [node_tool("spectral"), "lint", "--ruleset", CLIENTS / "spectral.yaml", "--fail-severity", "hint"]
    run([*command, "--fail-on-unmatched-globs", DOCUMENT], PACKAGES)


def test_redocly_reports_nothing():
    command = [node_tool("redocly"), "lint", "--config", CLIENTS / "redocly.yaml", "--format", "json"]
    said = run([*command, DOCUMENT], PACKAGES)
    totals = json.JSONDecoder().raw_decode(said[said.index("{") :])[0]["totals"]
    assert totals == {"errors": 0, "warnings": 0, "ignored": 0}


def test_a_generated_client_checks_a_fitment(answers):
    # 615 kg by load index 91, of which a V tyre keeps 92.5 % at 235 km/h (UN Regulation No. 30, para. 2.31), twice.
    assert answers["verdict"] == "unsuitable"
    assert answers["worst"] == ["load.capacity", "not_met", pytest.approx(1137.75, abs=0.01), 1180]


def test_a_generated_client_compares_and_tells_a_refused_row_from_the_others(answers):
    assert answers["rows"] == ["unsuitable"]
    assert answers["refused_rows"] == [[1, "/candidates/1/front/tyre/size"]]


def test_a_generated_client_takes_what_a_later_version_adds(answers):
    assert answers["future"] == "later"


def test_a_generated_client_has_what_fills_a_sentence(answers):
    assert answers["carried"] == pytest.approx(1137.75, abs=0.01)


def test_a_generated_client_has_a_table_as_text(answers):
    assert answers["header"] == ["rank", "index"]


def test_a_generated_client_searches_a_stock(answers):
    # In front load index 91 carries too little at top speed, as above; 94 is 670 kg, 1,340 kg on the axle.
    assert set(answers["found"]) == {"205/55 R16 94W XL"}


def test_a_generated_client_reads_an_error(answers):
    assert answers["status"] == 422
    assert answers["refused"] == [["/candidate/front/tyre/size", "unreadable_designation", 0]]


def test_a_generated_client_reads_designations_tables_and_packs(answers):
    assert answers["load_index"] == 91
    assert answers["table_rows"] > 20
    assert {"unece", "nl", "de"} <= set(answers["packs"])


def test_the_lock_of_the_node_packages_has_hashes_and_names_no_registry():
    lock = json.loads((CLIENTS / "package-lock.json").read_text(encoding="utf-8"))
    fetched = [package for path, package in lock["packages"].items() if path]
    assert len(fetched) > 100
    assert all(package["integrity"].startswith("sha512-") and "resolved" not in package for package in fetched)
