"""`check`, `compare` and the other questions at the terminal: tables for a reader, JSON for a program, no server."""

import io
import json
import os
import subprocess
import sys
from contextlib import redirect_stderr, redirect_stdout
from pathlib import Path
from typing import NamedTuple

import pytest

from service.__main__ import main
from tests.contract.http_wire import ROOT, Server

STORIES = ROOT / "demo_requests"


class Ended(NamedTuple):
    """What a command came to."""

    returncode: int
    stdout: bytes
    stderr: bytes


@pytest.fixture
def run(monkeypatch):
    """Run a command as a process would, without the seconds that one needs to start."""

    def ended(*arguments: object, question: bytes = b"") -> Ended:
        monkeypatch.setattr(sys, "stdin", io.TextIOWrapper(io.BytesIO(question), "utf-8"))
        said, complained = (io.TextIOWrapper(io.BytesIO(), "utf-8", write_through=True) for _ in range(2))
        with redirect_stdout(said), redirect_stderr(complained):
            code = main([str(each) for each in arguments])
        return Ended(code, said.buffer.getvalue(), complained.buffer.getvalue())

    return ended


def process(*arguments: object, question: bytes = b"", **variables: str) -> subprocess.CompletedProcess[bytes]:
    """Run a command in a process of its own."""
    return subprocess.run(
        [sys.executable, "-m", "service", *arguments],
        cwd=ROOT,
        env=os.environ | variables,
        input=question,
        capture_output=True,
        timeout=60,
        check=False,
    )


def test_a_check_is_printed_as_tables() -> None:
    printed = process("check", STORIES / "load-fails-at-top-speed.check.json").stdout.decode()
    for part in ("Do not fit", "Speaks against it", "load.capacity", "What to do", "now", "proposed", "To know"):
        assert part in printed
    assert max(map(len, printed.splitlines())) <= 120


@pytest.mark.parametrize(
    ("story", "parts"),
    [
        ("widths-of-a-saloon.compare.json", ("It fits", "not read", "a typing error in one of them")),
        ("stock-of-a-shop.search.json", ("It fits", "Not read", "/stock/11/size")),
        ("five-combinations.rims.json", ("It asks for", "best ET", "30 to 60", "The fewest rims for all", "To know")),
        ("five-combinations.plan.json", ("present wheels", "Rims to buy", "255 and 285", "Drive: ", "To know")),
    ],
)
def test_many_fitments_are_printed_as_rows(run, story: str, parts: tuple[str, ...]) -> None:
    printed = run(story.split(".")[1], STORIES / story).stdout.decode()
    assert [part for part in parts if part not in printed] == []
    assert max(map(len, printed.splitlines())) <= 120


@pytest.mark.parametrize("detail", ["short", "standard", "full"])
@pytest.mark.parametrize("story", ["further-out.check.json", "stock-of-a-shop.search.json"])
def test_as_much_is_printed_as_is_asked_for(run, story: str, detail: str) -> None:
    question = json.loads((STORIES / story).read_bytes()) | {"detail": detail}
    ended = run(story.split(".")[1], "-", question=json.dumps(question).encode())
    assert (ended.returncode, ended.stderr) == (0, b"")
    assert b"It fits" in ended.stdout


@pytest.mark.parametrize(
    "story",
    [
        "plus-one-inch.check.json",
        "widths-of-a-saloon.compare.json",
        "five-combinations.rims.json",
        "five-combinations.plan.json",
    ],
)
def test_json_is_the_answer_of_the_service(run, server: Server, story: str) -> None:
    operation, question = story.split(".")[1], (STORIES / story).read_bytes()
    told = run(operation, "-", "--json", question=question)
    assert json.loads(told.stdout) == json.loads(server.post(f"/v1/fitments/{operation}", question).body)


@pytest.mark.parametrize(
    ("question", "said"),
    [
        (b"", "The body is empty"),
        (b'{"vehicle": NaN}', "not valid JSON"),
        (b"{}", '/vehicle: The field "vehicle" is required.'),
        (b"[" * 9000, "not valid JSON"),
        (b'{"a": "' + b"a" * 4_000_000 + b'"}', "bytes at most here"),
    ],
)
def test_what_cannot_be_read_is_said_on_the_error_output(run, question: bytes, said: str) -> None:
    ended = run("check", "-", question=question)
    assert (ended.returncode, ended.stdout) == (2, b"")
    assert said in ended.stderr.decode()
    assert "Traceback" not in ended.stderr.decode()


def test_a_file_that_is_not_there_is_named(tmp_path: Path) -> None:
    ended = process("check", tmp_path / "none.json")
    assert (ended.returncode, ended.stderr.decode()) == (2, f"{tmp_path / 'none.json'}: No such file or directory\n")


def test_a_terminal_with_few_letters_gets_what_it_can_show() -> None:
    question = json.loads((STORIES / "further-out.check.json").read_bytes())
    question["candidate"]["label"] = "für den Winter"
    ended = process("check", "-", question=json.dumps(question).encode(), PYTHONIOENCODING="ascii")
    assert (ended.returncode, ended.stderr) == (0, b"")
    assert ended.stdout.startswith(b"f?r den Winter: It fits, with conditions\n")
