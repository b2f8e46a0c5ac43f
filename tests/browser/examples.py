"""What a reader does on the page with one of its examples, and what the service answered to it."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any

from playwright.sync_api import Locator, Page

from tests.browser.conftest import Visit
from tests.browser.hands import put

SALOON, VAN, HATCHBACK = range(3)
CHECK = "/v1/fitments/check"


class Reader:
    """Somebody before the page with an example loaded."""

    def __init__(self, seen: Visit, example: int) -> None:
        self.page, self._responses = seen.page, []
        seen.hear("response", self._note)
        self.page.goto(f"{seen.address}/")
        # On a phone the examples are folded away.
        if not self.page.is_visible(f"[data-example='{example}']"):
            self.page.click("#tools > summary")
        with self.asking():
            self.page.click(f"[data-example='{example}']")

    def _note(self, response: Any) -> None:
        if response.url.endswith(CHECK) and response.ok:
            self._responses.append(response)

    def answer(self, letter: str = "A") -> Any:
        """Return the service's last answer to a column."""
        told = [each for each in self._responses if each.request.post_data_json["candidate"]["id"] == letter]
        return told[-1].json()

    def finding(self, code: str, axle: str) -> Any:
        """Return what the last answer to the first column says to a question."""
        (found,) = [each for each in self.answer()["findings"] if (each["code"], each["axle"]) == (code, axle)]
        return found

    @contextmanager
    def asking(self) -> Iterator[None]:
        """Do something that asks the service, and wait until its answer, or the one that is held, stands there."""
        self.page.evaluate(
            """() => {
              const place = document.getElementById("answer");
              const busy = { attributeFilter: ["aria-busy"] };
              window.answered = new Promise((done) => {
                new MutationObserver(() => place.hasAttribute("aria-busy") || done()).observe(place, busy);
              });
            }"""
        )
        yield
        self.page.evaluate("() => window.answered")

    def field(self, pointer: str, column: int | None = None) -> Locator:
        """Return the field at a pointer; of a column where it is a candidate's."""
        own = "" if column is None else f"[data-column='{column}']"
        return self.page.locator(f"#question [data-pointer='{pointer}']{own}")

    def type(self, *entries: tuple[str, str], column: int | None = None) -> None:
        """Type into fields, unfolded or not, and wait for the answer."""
        with self.asking():
            put(self.page, dict(entries), column)

    @property
    def verdict(self) -> str:
        """The words of the verdict."""
        return self.page.inner_text("#verdict-words")


def focused(page: Page) -> str | None:
    """Return the pointer of the field that has the focus."""
    return page.evaluate("document.activeElement.dataset.pointer")
