"""A pair of hands at keyboard and mouse: every key and every click is counted."""

from __future__ import annotations

import time

from playwright.sync_api import Page

CHECK = "/v1/fitments/check"
PRESENT = "/vehicle/front/fitted"


class Hands:
    """Somebody who types and clicks on the page; `strokes` counts keys and clicks, a menu costs two."""

    def __init__(self, page: Page) -> None:
        self.page = page
        self.strokes = 0
        # How long the service and the page took from the last stroke to the answer.
        self.waited_s: list[float] = []

    def click(self, selector: str) -> None:
        """Click once."""
        self.page.click(selector)
        self.strokes += 1

    def press(self, key: str, times: int = 1) -> None:
        """Press a key."""
        for _ in range(times):
            self.page.keyboard.press(key)
        self.strokes += times

    def type(self, text: str) -> None:
        """Enter a text, a stroke each character; capitals need no shift, since the page reads small letters too.

        It arrives at once, since the browser's own form filling looks at the whole form again after each key.
        """
        self.page.keyboard.insert_text(text)
        self.strokes += len(text)

    def spell(self, text: str) -> None:
        """Type a text key by key, as a person does, while answers come in."""
        self.page.keyboard.type(text)
        self.strokes += len(text)

    def into(self, pointer: str, text: str, column: int | None = None) -> None:
        """Click a field and type into it."""
        self.click(field(pointer, column))
        self.type(text)

    def answer(self) -> str:
        """Wait for the answer to what was typed last, and return its verdict."""
        started = time.perf_counter()
        self.page.wait_for_timeout(300)
        self.page.wait_for_selector("#answer:not([aria-busy]):not(.stale)")
        self.page.wait_for_selector("#told:not([hidden])")
        self.waited_s.append(time.perf_counter() - started)
        return self.verdict

    @property
    def verdict(self) -> str:
        """The words of the verdict."""
        return self.page.inner_text("#verdict-words")


def field(pointer: str, column: int | None = None) -> str:
    """Return the selector of the field at a pointer."""
    own = "" if column is None else f"[data-column='{column}']"
    return f"#question [data-pointer='{pointer}']{own}"


def put(page: Page, entries: dict[str, str], column: int | None = None) -> None:
    """Put texts into fields, unfolded or not, all at once, where the typing is not what is tried."""
    page.evaluate(
        """(entries) => entries.forEach(([selector, text]) => {
          const place = document.querySelector(selector);
          place.value = text;
          place.dispatchEvent(new Event("input", { bubbles: true }));
        })""",
        [(field(pointer, column), text) for pointer, text in entries.items()],
    )
