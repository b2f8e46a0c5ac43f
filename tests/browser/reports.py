"""The reports that are looked at in the browser, and how one is read when it has been printed."""

from __future__ import annotations

import io
import json
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from playwright.sync_api import Page
from pypdf import PageObject, PdfReader

from tests.browser.conftest import Visit
from tests.support.cases import saloon

ROOT = Path(__file__).parents[2]


def story(name: str) -> Any:
    """Return the body of a demo request."""
    return json.loads((ROOT / "demo_requests" / f"{name}.check.json").read_text(encoding="utf-8"))


STORY = story("staggered-one-step-wider")
ANSWERS = {
    "same again": story("staggered-same-sizes"),
    "wider": STORY,
    "unsuitable": saloon(("205/40 R17 80H", "9J x 17 ET20"), ("245/40 R18 97Y XL", "8J x 18 H2 ET38")),
    "van": story("twin-wheel-van"),
}


def written(seen: Visit, question: Any, language: str = "en", units: str = "metric") -> str:
    """Return the report on a question as the service writes it."""
    body = {**question, "language": language, "units": units}
    answer = seen.context.request.post(f"{seen.address}/v1/fitments/report", data=body)
    assert answer.status == 200
    return answer.text()


@dataclass(frozen=True)
class Sheet:
    """A printed page: its size in points, its words, and its lowest line above the margin with each piece of it."""

    size: tuple[float, float]
    words: str
    lowest: frozenset[str]


def read(page: PageObject) -> Sheet:
    """Read a page of paper once for words and places, since that takes a quarter of a second."""
    lines: dict[float, list[str]] = {}

    def note(text: str, at: list[float], matrix: list[float], *_more: object) -> None:
        if text.strip():
            height = round(matrix[4] * at[1] + matrix[5] * at[3] + at[5])
            lines.setdefault(height, []).append(" ".join(text.split()))

    words = " ".join(page.extract_text(visitor_text=note).split())
    # The bottom margin is 10 mm, 28 points.
    pieces = lines[min(height for height in lines if height > 29)]
    return Sheet((page.mediabox.width, page.mediabox.height), words, frozenset({" ".join(pieces), *pieces}))


def pages_of(page: Page, paper: str) -> list[PageObject]:
    """Print a page of the browser, and return the pages of paper unread."""
    return list(PdfReader(io.BytesIO(page.pdf(format=paper))).pages)


def on_paper(page: Page, paper: str) -> list[Sheet]:
    """Print a page of the browser, and read all of it."""
    return [read(each) for each in pages_of(page, paper)]
