"""Questions at the terminal, `check`, `compare` and others: read from a file, the answer as tables or as it is."""

from __future__ import annotations

import argparse
import sys
from pathlib import Path
from typing import Any, Final

import orjson

from service.core.errors import RefusedRequest

# Beyond the largest question that the service reads over HTTP.
_MOST_BYTES: Final = 64 * 1024 * 1024
QUESTIONS: Final = {
    "check": "assess one candidate on one vehicle",
    "compare": "compare candidates on one vehicle",
    "search": "find sizes that would suit a vehicle",
    "rims": "find the rims that would do for the tyres of a vehicle",
    "plan": "plan a comparison of combinations on one vehicle",
}


def add_questions(commands: argparse._SubParsersAction[argparse.ArgumentParser]) -> None:
    """Add a command for each question."""
    for name, said in QUESTIONS.items():
        command = commands.add_parser(name, help=f"{said}, without a server")
        command.add_argument("file", metavar="FILE", help="the request as JSON, or - for standard input")
        command.add_argument("--json", action="store_true", help="print the answer as the service gives it")


def answer_question(asked: argparse.Namespace) -> int:
    """Print the answer to the question in a file; return the exit code: 0 answered, 2 not to be read."""
    from service.ask import answer
    from service.terminal.answers import shown

    try:
        question = _read(asked.file)
        found: dict[str, Any] = answer(asked.command, question)
    except OSError as error:
        print(f"{asked.file}: {error.strerror}", file=sys.stderr)
        return 2
    except RefusedRequest as error:
        print(error, file=sys.stderr)
        return 2
    if asked.json:
        # In UTF-8 whatever the terminal's letters are: a program reads it.
        sys.stdout.buffer.write(orjson.dumps(found, option=orjson.OPT_INDENT_2 | orjson.OPT_APPEND_NEWLINE))
    else:
        print(shown(asked.command, found))
    return 0


def _read(name: str) -> bytes:
    if name == "-":
        return sys.stdin.buffer.read(_MOST_BYTES)
    with Path(name).open("rb") as file:
        return file.read(_MOST_BYTES)
