"""Feed generated text to the designation readers: each must answer or raise a DomainError, nothing else.

Run by `make fuzz`; the arguments are those of libFuzzer, the first a folder that keeps the texts that reached new code.
"""

from __future__ import annotations

import sys
from pathlib import Path

import atheris

with atheris.instrument_imports(include=["service"]):
    from service.core.errors import DomainError
    from service.designation.bolt_circle import parse_bolt_circle
    from service.designation.rim import parse_rim
    from service.designation.tyre import parse_tyre

READERS = (parse_tyre, parse_rim, parse_bolt_circle)
# Well-formed texts to start from: pure noise seldom gets past the first character.
FIRST_TEXTS = (
    "215/45 R18 93W XL",
    "P205/60R15 90H M+S",
    "195/70R15C 104/102R (98T)",
    "LT245/75 R16 120/116Q",
    "31x10.50R15LT 109S",
    "185 R14 C 102/100Q",
    "T125/70 D15 95M",
    "255/35 ZR19 (96Y)",
    "7.5J x 18 ET45",
    "6½Jx16H2 ET-12,5",
    "17.5x6.75",
    "5x112",
    "5/114,3",
    '112 x 4.5"',
    "6.50-16 6PR TT Meadow",
    "12R22.5 152/148L 150/145M",
    "185/70 VR 14",
    "205/55-16",
    "7Jx16x50",
    "8.25 x 22.5 ET175",
)


def read(data: bytes) -> None:
    """Read one generated text with each reader; only a DomainError may come out."""
    text = data.decode("utf-8", "replace")
    for reader in READERS:
        try:
            reader(text)
        except DomainError:
            continue


if __name__ == "__main__":
    for number, first in enumerate(FIRST_TEXTS):
        (Path(sys.argv[1]) / f"first-{number}").write_text(first, encoding="utf-8")
    atheris.Setup(sys.argv, read)
    atheris.Fuzz()
