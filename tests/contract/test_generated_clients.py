"""The document as others read it: two linters, and a generated client in three languages against a live service.

The clients are made by the commands of the README as printed. References: Spectral's set spectral:oas, Redocly's set
recommended, `tsc --strict`, openapi-python-client, openapi-generator (java, native).
"""

import importlib.util
import json
import os
import re
import shlex
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
# Each program runs for seconds only, so that what Java spends on making itself fast does not come back.
SHORT = {"JAVA_TOOL_OPTIONS": "-XX:TieredStopAtLevel=1 -XX:+UseSerialGC"}
README = (ROOT / "README.md").read_text(encoding="utf-8")
# What generates, and for which language: the first words of each command.
GENERATING = re.findall(
    r"^(?:npx|openapi-\S+) .+$", README.split("## Make a client", 1)[1].split("\n## ")[0], re.MULTILINE
)
# Longer than anything here may take on two busy cores.
PATIENCE_S = 300


def run(command, folder, **environ):
    search = os.pathsep.join((str(Path(sys.executable).parent), os.environ["PATH"]))
    done = subprocess.run(
        [str(part) for part in command],
        cwd=folder,
        env=os.environ | {"PATH": search} | QUIET | SHORT | environ,
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


def printed(*words):
    """Return the arguments of the one command in the README that has these words."""
    (command,) = [command for command in map(shlex.split, GENERATING) if set(words) <= set(command)]
    return command


def with_sources(folder):
    """Return a folder in which the files that the commands of the README name lie where they name them."""
    for name in ("openapi", "tests"):
        (folder / name).symlink_to(ROOT / name)
    return folder


@pytest.fixture(scope="module")
def workshop():
    with tempfile.TemporaryDirectory(dir=PACKAGES) as folder:
        yield with_sources(Path(folder))


@pytest.fixture(scope="module")
def typescript_client(workshop):
    for name in ("drive.ts", "tsconfig.json", "package.json"):
        shutil.copy(CLIENTS / name, workshop)
    said = run([node_tool("openapi-typescript"), *printed("npx", "openapi-typescript@7")[2:]], workshop)
    assert "warn" not in said.lower()
    run([node_tool("tsc"), "--project", "."], workshop)
    return workshop / "drive.js"


@pytest.fixture(scope="module")
def python_client(tmp_path_factory):
    folder = with_sources(tmp_path_factory.mktemp("python"))
    said = run([*printed("openapi-python-client"), "--fail-on-warning"], folder)
    assert "warn" not in said.lower()
    run([sys.executable, "-W", "error", "-m", "compileall", "-q", "fitment_client"], folder)
    return folder


@pytest.fixture(scope="module")
def java_client(tmp_path_factory):
    """The class path of a compiled client: what it needs to read JSON lies in the generator's own archive."""
    folder = with_sources(tmp_path_factory.mktemp("java"))
    # The one annotation that Maven would fetch is taken from the platform instead.
    run([*printed("openapi-generator-cli", "java"), "-t", CLIENTS / "java_templates"], folder)
    archive = Path(importlib.util.find_spec("openapi_generator_cli").origin).parent / "openapi-generator.jar"
    sources = [*(folder / "fitment_java" / "src" / "main").rglob("*.java"), CLIENTS / "Drive.java"]
    run(["javac", "-d", "classes", "-cp", archive, *sources], folder)
    return os.pathsep.join((str(archive), str(folder / "classes")))


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


@pytest.fixture(scope="module")
def by_java(java_client, server: Server):
    address = f"http://127.0.0.1:{server.port}"
    command = ["java", "-cp", java_client, "Drive", address, STORY.read_text(encoding="utf-8")]
    return learnt(run(command, CLIENTS))


@pytest.fixture(params=["by_typescript", "by_python", "by_java"])
def answers(request):
    return request.getfixturevalue(request.param)


def test_there_is_a_command_for_each_language():
    assert len(GENERATING) == 4
    assert [printed("openapi-generator-cli", language)[0] for language in ("java", "go")]


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


@pytest.mark.parametrize("client", ["by_typescript", "by_python"])
def test_a_generated_client_has_a_table_as_text(client, request):
    assert request.getfixturevalue(client)["header"] == ["rank", "index"]


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
