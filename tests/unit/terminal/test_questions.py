"""A question read from a file and answered: text or JSON, and the exit code (0 answered, 2 not to be read)."""

from __future__ import annotations

import json
from argparse import ArgumentParser
from pathlib import Path

import pytest

from service.terminal import QUESTIONS, add_questions, answer_question

STORY = Path(__file__).parents[3] / "demo_requests" / "further-out.check.json"


def asked(*arguments: str) -> int:
    parser = ArgumentParser()
    add_questions(parser.add_subparsers(dest="command"))
    return answer_question(parser.parse_args(arguments))


def test_there_is_a_command_for_each_question_of_the_contract() -> None:
    assert list(QUESTIONS) == ["check", "compare", "search", "rims", "plan"]


def test_an_answer_is_printed_as_text(capsys: pytest.CaptureFixture[str]) -> None:
    assert asked("check", str(STORY)) == 0
    printed = capsys.readouterr()
    assert "It fits, with conditions\n" in printed.out
    assert printed.err == ""


def test_an_answer_is_printed_as_the_service_gives_it(capsysbinary: pytest.CaptureFixture[bytes]) -> None:
    assert asked("check", str(STORY), "--json") == 0
    assert json.loads(capsysbinary.readouterr().out)["verdict"] == "suitable_with_conditions"


def test_what_cannot_be_read_is_told_and_no_answer(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    assert asked("check", str(tmp_path / "none.json")) == 2
    assert capsys.readouterr() == ("", f"{tmp_path / 'none.json'}: No such file or directory\n")
    (tmp_path / "empty.json").write_text("{}")
    assert asked("check", str(tmp_path / "empty.json")) == 2
    printed = capsys.readouterr()
    assert (printed.out, '/vehicle: The field "vehicle" is required.' in printed.err) == ("", True)
