"""The table of stories beside the demo requests lists each once, with the verdict that the service gives."""

import json
import re
import subprocess

import pytest

from service import RefusedRequest, assess
from tests.contract.http_wire import ROOT, Server

FOLDER = ROOT / "demo_requests"
PAGE = (FOLDER / "README.md").read_text(encoding="utf-8")
ROWS = [[cell.strip(" `") for cell in row.split("|")[1:-1]] for row in re.findall(r"^\| `.*$", PAGE, re.MULTILINE)]
CHECKS = [(name, verdict) for name, _, verdict in ROWS if name.endswith(".check.json")]


def test_every_story_is_told_once():
    assert sorted(name for name, _, _ in ROWS) == sorted(path.name for path in FOLDER.glob("*.json"))
    assert len({story for _, story, _ in ROWS}) == len(ROWS)


def test_only_a_check_has_a_verdict():
    assert {name for name, _, verdict in ROWS if verdict} == {name for name, _ in CHECKS}


@pytest.mark.parametrize(("name", "verdict"), CHECKS)
def test_the_verdict_told_is_the_one_given(name, verdict):
    question = json.loads((FOLDER / name).read_bytes())
    try:
        given = assess(question)["verdict"]
    except RefusedRequest:
        given = "refused"
    assert given == verdict


def test_the_command_is_answered(server: Server):
    (command,) = re.findall(r"^curl .*$", PAGE, re.MULTILINE)
    command = command.replace("http://127.0.0.1:8000", f"http://127.0.0.1:{server.port}")
    done = subprocess.run(["bash", "-c", command], cwd=ROOT, capture_output=True, check=True, timeout=60)
    assert json.loads(done.stdout)["verdict"] == dict(CHECKS)["plus-one-inch.check.json"]
