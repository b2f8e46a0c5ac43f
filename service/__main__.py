"""`python -m service`: serve, write the OpenAPI document, show the settings, sweep a catalogue."""

from __future__ import annotations

import argparse
import os
import sys
from collections.abc import Sequence
from pathlib import Path

from service.rules.faults import PackError
from service.settings import BadSettings, Settings, load_settings, shown

DOCUMENT = Path(__file__).parent.parent / "openapi" / "openapi.json"


def main(arguments: Sequence[str]) -> int:
    """Return the exit code of the command: 0 done, 1 not as it should be, 2 wrongly asked."""
    if arguments[:1] == ["sweep"]:
        # It has options of its own.
        from service.sweep import main as sweep

        return int(sweep(arguments[1:]))
    parser = argparse.ArgumentParser(prog="python -m service", description=__doc__)
    commands = parser.add_subparsers(dest="command", required=True)
    serving = commands.add_parser("serve", help="run the service")
    serving.add_argument("--host", help="address to listen on (default: FITMENT_HOST or 127.0.0.1)")
    serving.add_argument("--port", type=int, help="port to listen on (default: FITMENT_PORT, PORT or 8000)")
    writing = commands.add_parser("openapi", help="write openapi/openapi.json")
    writing.add_argument("--check", action="store_true", help="write nothing, fail when the file is out of step")
    commands.add_parser("settings", help="show the settings in force, without secrets")
    commands.add_parser("sweep", help="grade a catalogue of vehicles and fitments, file in, file out")
    asked = parser.parse_args(arguments)
    try:
        settings = load_settings(os.environ)
        if asked.command == "serve":
            return _serve(settings, asked.host, asked.port)
    except (BadSettings, PackError) as error:
        print(error, file=sys.stderr)
        return 2
    if asked.command == "settings":
        print(shown(settings))
        return 0
    return _openapi(check=asked.check)


def _serve(settings: Settings, host: str | None, port: int | None) -> int:
    from service.api.transport.server import serve
    from service.app import create_app

    settings = settings.model_copy(
        update={name: value for name, value in (("host", host), ("port", port)) if value is not None}
    )
    serve(create_app(settings), settings)
    return 0


def _openapi(*, check: bool) -> int:
    from service.api.contract.openapi_document import document_bytes
    from service.app import create_app

    # The contract does not depend on where it is written: no setting of this machine may show in it.
    made = document_bytes(create_app(Settings.model_construct()))
    if not check:
        DOCUMENT.parent.mkdir(exist_ok=True)
        DOCUMENT.write_bytes(made)
        print(f"wrote {DOCUMENT.name}")
        return 0
    if DOCUMENT.exists() and DOCUMENT.read_bytes() == made:
        return 0
    print("openapi/openapi.json is out of step with the routes; run: python -m service openapi", file=sys.stderr)
    return 1


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
