"""Every command of the README is run as printed, and what it is said to answer is what it answers."""

import json
import os
import re
import shlex
import shutil
import subprocess
import sys
from itertools import pairwise
from pathlib import Path
from typing import NamedTuple

import pandas as pd
import pytest

from service.assessment.checks import AXLE_CHECKS, CAR_CHECKS
from service.core.errors import UnreadableDesignation
from service.designation.tyre import parse_tyre
from service.physics import aquaplaning, contact_patch, cornering_stiffness, inertia, rolling, vertical_stiffness
from service.settings import Settings
from tests.contract.http_wire import ROOT, Server
from tests.unit.sweep.small_catalogue import candidates, vehicles

README = (ROOT / "README.md").read_text(encoding="utf-8")
PATIENCE_S = 60
PRINTED_ADDRESS = "http://127.0.0.1:8000"


class Block(NamedTuple):
    """One fenced block: its language and its lines."""

    language: str
    text: str

    @property
    def commands(self) -> list[str]:
        return [line for line in self.text.splitlines() if line and not line.startswith("#")]


BLOCKS = [Block(*found) for found in re.findall(r"^```(\w*)\n(.*?)^```$", README, re.MULTILINE | re.DOTALL)]
COMMANDS = [command for block in BLOCKS if block.language == "sh" for command in block.commands]
ASKING = [command for command in COMMANDS if "curl" in command]
MAKING = [command.split("#")[0].strip() for command in COMMANDS if command.startswith("make ")]
# A command, and the part of its answer that is printed below it.
PRINTED = [
    (block.commands[-1], json.loads(below.text))
    for block, below in pairwise(BLOCKS)
    if block.language == "sh" and below.language == "json"
]
CHECK = ".venv/bin/python -m service check demo_requests/load-fails-at-top-speed.check.json"
SWEEP = ".venv/bin/python -m service sweep --vehicles vehicles.parquet --candidates candidates.parquet --out graded"
# What is said to be read, and what is said not to be: a point of the list each.
POINTS = README.split("**Read a designation.**", 1)[1].split("```", 1)[0].split("\n- ")
READ, NOT_READ = (
    [text for point in POINTS if point.startswith(start) for text in re.findall("`([^`]+)`", point)]
    for start in ("Read:", "Not read:")
)
STORIES = sorted(path.name for path in (ROOT / "demo_requests").glob("*.json"))


def said(command, server):
    """Return what a command of the README prints, the address replaced by that of the running service."""
    command = command.replace(PRINTED_ADDRESS, f"http://127.0.0.1:{server.port}")
    done = subprocess.run(
        ["bash", "-o", "pipefail", "-c", command], cwd=ROOT, capture_output=True, timeout=PATIENCE_S, check=False
    )
    assert done.returncode == 0, done.stderr
    return done.stdout


def holds(answer, part):
    """Return whether all of the part stands in the answer; items of a list in their order, with others between."""
    if isinstance(part, dict):
        return isinstance(answer, dict) and all(key in answer and holds(answer[key], part[key]) for key in part)
    if isinstance(part, list) and isinstance(answer, list):
        rest = iter(answer)
        return all(any(holds(item, wanted) for item in rest) for wanted in part)
    return answer == part


def table_rows(heading):
    """Return the rows of the first table below a heading."""
    below = README.split(f"\n{heading}\n", 1)[1].split("\n## ")[0]
    rows = [line for line in below.splitlines() if line.startswith("| ")]
    return [[cell.strip() for cell in re.split(r"(?<!\\)\|", row)[1:-1]] for row in rows[2:]]


def test_every_command_is_one_that_is_tried():
    others = [command for command in COMMANDS if "curl" not in command and not command.startswith("make ")]
    assert others == [
        CHECK,
        ".venv/bin/python -m service sweep --columns",
        SWEEP,
        ".venv/bin/python -m service settings",
    ]


@pytest.mark.parametrize("command", ASKING)
def test_a_question_is_answered(command, server: Server):
    body = said(command, server)
    refused = body.startswith(b'{"type":"/problems')
    assert body
    assert refused == ("typing-error" in command)


@pytest.mark.parametrize(("command", "part"), PRINTED, ids=[command for command, _ in PRINTED])
def test_an_answer_is_as_printed(command, part, server: Server):
    assert holds(json.loads(said(command, server)), part)


def test_answers_are_printed():
    assert len(PRINTED) >= 6


@pytest.mark.parametrize("command", MAKING)
def test_a_chore_exists(command):
    make = shutil.which("make")
    done = subprocess.run([make, "-n", *command.split()[1:]], cwd=ROOT, capture_output=True, check=False)
    assert done.returncode == 0, done.stderr


def test_the_settings_in_force_are_shown():
    command = [sys.executable, "-m", "service", "settings"]
    shown = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, timeout=PATIENCE_S, check=True).stdout
    assert "FITMENT_PORT=" in shown


def test_a_question_is_answered_at_the_terminal():
    command = [sys.executable, *shlex.split(CHECK)[1:]]
    shown = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, timeout=PATIENCE_S, check=True).stdout
    assert "1138 kg at 235 km/h" in shown


def test_the_function_for_notebooks_answers(monkeypatch, capsys):
    (code,) = [block.text for block in BLOCKS if block.language == "python"]
    monkeypatch.chdir(ROOT)
    exec(compile(code, "README.md", "exec"), {})
    shown = capsys.readouterr().out
    assert shown.startswith("unsuitable The axle's tyres carry 1138 kg at 235 km/h")


def test_the_columns_of_a_sweep_are_shown():
    command = [sys.executable, "-m", "service", "sweep", "--columns"]
    shown = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, timeout=PATIENCE_S, check=True).stdout
    assert "max_speed_kmh" in shown


def test_the_sweep_grades_a_catalogue(tmp_path):
    vehicles(2).to_parquet(tmp_path / "vehicles.parquet")
    candidates(3).to_parquet(tmp_path / "candidates.parquet")
    command = [sys.executable, *shlex.split(SWEEP)[1:]]
    subprocess.run(
        command,
        cwd=tmp_path,
        env={**os.environ, "PYTHONPATH": str(ROOT)},
        capture_output=True,
        timeout=PATIENCE_S,
        check=True,
    )
    assert len(pd.read_parquet(tmp_path / "graded" / "pairs")) == 2 * 3


def test_it_is_said_what_is_read_and_what_is_not():
    assert len(READ) >= 5
    assert len(NOT_READ) >= 3


@pytest.mark.parametrize("text", READ)
def test_what_is_said_to_be_read_is_read(text):
    assert parse_tyre(text).rim_code > 0


@pytest.mark.parametrize("text", NOT_READ)
def test_what_is_said_not_to_be_read_is_refused(text):
    with pytest.raises(UnreadableDesignation):
        parse_tyre(text)


@pytest.fixture(scope="module")
def told():
    """Return what the demo prints."""
    command = [sys.executable, Path("demo_requests") / "run.py"]
    return subprocess.run(command, cwd=ROOT, capture_output=True, text=True, timeout=PATIENCE_S, check=True).stdout


def test_the_demo_tells_every_story(told):
    assert [name for name in STORIES if name.split(".")[0] not in told] == []


def test_the_demo_fits_a_terminal_of_120_columns(told):
    assert [line for line in told.splitlines() if len(line) > 120] == []


def test_every_demo_request_that_is_asked_with_is_there():
    assert set(re.findall(r"demo_requests/(\S+\.json)", README)) <= set(STORIES)


@pytest.mark.parametrize("page", ["README.md", "DEVELOPERS.md", "SECURITY.md", "demo_requests/README.md"])
def test_what_a_page_links_to_is_there(page):
    path = ROOT / page
    links = re.findall(r"\]\(([^)#:]+)\)", path.read_text(encoding="utf-8"))
    assert [link for link in links if not (path.parent / link).exists()] == []


def test_every_check_is_in_the_table_and_no_other():
    told = {
        code
        for row in table_rows("## What is checked, and what that rests on")
        for code in re.findall(r"`([^`]+)`", row[0])
    }
    asked = {check.code for check in (*AXLE_CHECKS, *CAR_CHECKS)} | {"law.*"}
    assert asked - told == set(), "give each a line in the README's table of checks"
    assert told - asked == set(), "no check has these codes"


def test_every_setting_is_in_the_table_with_its_default():
    rows = {row[0].strip("`"): row[1].strip("`") for row in table_rows("## Configuration")}
    defaults = Settings.model_construct()
    assert list(rows) == [f"FITMENT_{name.upper()}" for name in Settings.model_fields]
    for name in Settings.model_fields:
        value = getattr(defaults, name)
        text = ",".join(value) or "empty" if isinstance(value, tuple) else "empty" if value is None else str(value)
        if hasattr(value, "get_secret_value"):
            text = value.get_secret_value()
        assert rows[f"FITMENT_{name.upper()}"] == (text.lower() if isinstance(value, bool) else text)


def test_no_other_setting_is_spoken_of():
    spoken = set(re.findall(r"FITMENT_[A-Z_]+", README))
    assert spoken <= {f"FITMENT_{name.upper()}" for name in Settings.model_fields}


@pytest.mark.parametrize(
    ("estimate", "bands"),
    [
        ("rolling circumference", [rolling.BAND]),
        (
            "contact patch, length / width / area",
            [contact_patch.LENGTH_BAND, contact_patch.WIDTH_BAND, contact_patch.AREA_BAND],
        ),
        ("cornering stiffness, level", [cornering_stiffness.LEVEL_BAND]),
        ("aquaplaning onset, level", [aquaplaning.ONSET_BAND]),
        ("mass of the tyre", [inertia.MASS_BAND]),
    ],
)
def test_the_bands_are_those_of_the_formulas(estimate, bands):
    rows = {row[0]: row[1] for row in table_rows("## How good the estimates are")}
    assert rows[estimate] == " / ".join(f"± {100 * band:g} %" for band in bands)


def test_the_other_bands_are_those_of_the_formulas():
    rows = {row[0]: row[1] for row in table_rows("## How good the estimates are")}
    assert rows["static loaded radius"] == f"± {vertical_stiffness.LOADED_RADIUS_BAND_MM:g} mm"
    low, high = aquaplaning.CHANGE_BAND
    assert rows["aquaplaning onset, change"] == f"{low:g} to {high:g} times the value"
