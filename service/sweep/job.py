"""What a sweep was asked, and the part of it that decides the results and goes to every worker."""

from __future__ import annotations

from typing import NamedTuple

from service.assessment.answer.verdict import VERDICTS
from service.assessment.case import Season


class BadSweep(Exception):
    """A sweep that cannot be done as asked; the text says why and is fit for the terminal."""


class Options(NamedTuple):
    """What the command line says; places are paths or URIs."""

    vehicles: str
    candidates: str
    out: str
    pairs: bool = False
    rule_pack: str = "unece"
    season: Season | None = None
    date: str | None = None
    only: tuple[str, ...] = VERDICTS
    partition_rows: int = 250_000
    resume: bool = True
    processes: int | None = None
    threads: int | None = None
    scheduler: str | None = None


class Job(NamedTuple):
    """What the results depend on; a worker needs nothing else, and two equal jobs give equal results."""

    vehicles_sha256: str
    candidates_sha256: str
    pairs: bool
    rule_pack: str
    edition: str
    season: Season | None
    date: str | None
    only: tuple[str, ...]
    partition_rows: int
    version: str
    fingerprint: str
