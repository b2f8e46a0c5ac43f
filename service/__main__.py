"""Serve, answer a question, show the contract and the settings, sweep a catalogue."""

from __future__ import annotations

import argparse
import io
import os
import sys
from collections.abc import Sequence
from pathlib import Path

from service.rules.faults import PackError
from service.settings import BadSettings, Settings, load_settings, shown
from service.terminal import QUESTIONS, add_questions, answer_question

# Where the project keeps it; an installation has no such folder, and nothing is written into it.
DOCUMENT = Path("openapi/openapi.json")


def main(arguments: Sequence[str]) -> int:
    """Return the exit code of the command: 0 done, 1 not as it should be, 2 wrongly asked."""
    if arguments[:1] == ["sweep"]:
        # It has options of its own.
        from service.sweep import main as sweep

        return int(sweep(arguments[1:]))
    parser = argparse.ArgumentParser(prog="fitment-service", description=__doc__)
    commands = parser.add_subparsers(dest="command", required=True)
    serving = commands.add_parser("serve", help="run the service")
    serving.add_argument("--host", help="address to listen on (default: FITMENT_HOST or 127.0.0.1)")
    serving.add_argument("--port", type=int, help="port to listen on (default: FITMENT_PORT, PORT or 8000)")
    add_questions(commands)
    writing = commands.add_parser("openapi", help="write the contract, an OpenAPI document")
    writing.add_argument("file", nargs="?", metavar="FILE", help=f"where to (default: {DOCUMENT}), or - to print it")
    writing.add_argument("--check", action="store_true", help="write nothing, fail when the file is out of step")
    commands.add_parser("settings", help="show the settings in force, without secrets")
    commands.add_parser("sweep", help="grade a catalogue of vehicles and fitments, file in, file out")
    asked = parser.parse_args(arguments)
    if asked.command in QUESTIONS:
        return answer_question(asked)
    if asked.command == "openapi":
        return _openapi(asked.file, check=asked.check)
    try:
        return _serve(asked.host, asked.port) if asked.command == "serve" else _settings()
    except (BadSettings, PackError) as error:
        print(error, file=sys.stderr)
        return 2


def _settings() -> int:
    from service.app import create_app

    settings = load_settings(os.environ)
    # What ends the start of the service must not look right here.
    create_app(settings)
    print(shown(settings))
    return 0


def _serve(host: str | None, port: int | None) -> int:
    from service.api.transport.server import serve
    from service.app import create_app

    given = {name: value for name, value in (("host", host), ("port", port)) if value is not None}
    settings = load_settings(os.environ, **given)
    serve(create_app(settings), settings)
    return 0


def _openapi(name: str | None, *, check: bool) -> int:
    from service.api.contract.openapi_document import document_bytes
    from service.app import create_app

    # The contract does not depend on where it is written: no setting of this machine may show in it.
    made = document_bytes(create_app(Settings.model_construct()))
    path = DOCUMENT if name is None else Path(name)
    if name == "-":
        sys.stdout.buffer.write(made)
        return 0
    try:
        if not check:
            path.write_bytes(made)
            print(f"wrote {path}")
            return 0
        if path.read_bytes() == made:
            return 0
    except OSError as error:
        print(f"{path}: {error.strerror}; name a file, or - to print the document", file=sys.stderr)
        return 2
    print(f"{path} is out of step with the routes; run: python -m service openapi", file=sys.stderr)
    return 1


def run() -> int:
    """Return the exit code of the command that the process was started with."""
    if isinstance(sys.stdout, io.TextIOWrapper):
        # A label may have letters that the terminal lacks.
        sys.stdout.reconfigure(errors="replace")
    try:
        return main(sys.argv[1:])
    except BrokenPipeError:
        # Whoever read the output has enough of it; what is left in the buffer must not complain at the end.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return 0


if __name__ == "__main__":
    sys.exit(run())
