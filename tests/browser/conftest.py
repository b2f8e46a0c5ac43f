"""The service on the loopback address, and Debian's Chromium that looks at it."""

import json
import os
import subprocess
import sys
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, sync_playwright

ROOT = Path(__file__).parents[2]
# Longer than anything here may take, shorter than anybody would wait for a hung test.
PATIENCE_S = 20.0
CHROMIUM = "/usr/bin/chromium"
# Headless, as root in a container, and silent: the browser itself must ask for nothing from elsewhere.
FLAGS = (
    "--headless",
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
)
DESKTOP = {"width": 1440, "height": 900}
PHONE = {"width": 360, "height": 740}


@pytest.fixture(scope="session")
def address() -> Iterator[str]:
    """Where the service answers, in a process of its own on a port that the system chose."""
    environ = {name: value for name, value in os.environ.items() if not name.startswith(("FITMENT_", "PORT"))}
    environ |= {"FITMENT_ACCESS_LOG": "false", "FITMENT_DRAIN_S": "0"}
    command = [sys.executable, "-m", "service", "serve", "--port", "0"]
    process = subprocess.Popen(command, cwd=ROOT, env=environ, stdout=subprocess.PIPE)
    try:
        first = json.loads(process.stdout.readline())
        assert first["event"] == "serving"
        yield f"http://127.0.0.1:{first['port']}"
    finally:
        process.terminate()
        try:
            process.communicate(timeout=PATIENCE_S)
        except subprocess.TimeoutExpired:
            process.kill()
            process.communicate()


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """The browser."""
    with sync_playwright() as playwright:
        running = playwright.chromium.launch(executable_path=CHROMIUM, args=list(FLAGS))
        yield running
        running.close()


class Visit:
    """A look at the service's page, which notes what the browser asked for and complained of."""

    def __init__(self, page: Page, address: str) -> None:
        self.page, self.context, self.address = page, page.context, address
        self.asked: list[str] = []
        self.complaints: list[str] = []
        self._before, self._heard = self.context.pages, []
        self.context.set_default_timeout(PATIENCE_S * 1000)
        self.hear("request", lambda request: self.asked.append(request.url))
        self.hear("console", self._note)
        self.hear("weberror", lambda error: self.complaints.append(str(error.error)))

    def hear(self, event: str, listener: Callable[..., None]) -> None:
        """Listen to the browser for the time of this visit."""
        self._heard.append((event, listener))
        self.context.on(event, listener)

    def _note(self, message) -> None:
        # The browser itself reports every refused request, and refusing is what the service is asked to do there.
        if message.type in ("error", "warning") and "422 (Unprocessable" not in message.text:
            self.complaints.append(message.text)

    def open(self, path: str = "/") -> Page:
        """Open the page, or another path of the service."""
        self.page.goto(f"{self.address}{path}")
        return self.page

    def leave(self) -> None:
        """Close the tabs that this visit opened, and leave its own as a new one is."""
        for event, listener in self._heard:
            self.context.remove_listener(event, listener)
        for each in self.context.pages:
            if each not in self._before:
                each.close()
        if not self.page.is_closed():
            self.page.goto("about:blank")
            self.page.set_viewport_size(DESKTOP)
            self.page.emulate_media(media="null", color_scheme="null")


@pytest.fixture(scope="session")
def room(browser: Browser) -> Iterator[BrowserContext]:
    """One context for all visits that can do with it, since a new context or a new tab costs more than most tests."""
    context = browser.new_context(viewport=DESKTOP)
    yield context
    # What makes it safe: no visit leaves anything in the browser that the next could find.
    assert context.storage_state() == {"cookies": [], "origins": []}
    context.close()


@pytest.fixture(scope="session")
def tab(room: BrowserContext) -> Page:
    """The tab that one test after the other looks at."""
    return room.new_page()


@pytest.fixture
def visit(browser: Browser, room: BrowserContext, tab: Page, address: str) -> Iterator[Callable[..., Visit]]:
    """Make a visit for one test: `own` gives it a context without a past, as every other option but these two does."""
    made: list[Visit] = []

    def make(
        *, viewport: dict[str, int] = DESKTOP, color_scheme: str = "light", own: bool = False, **options: object
    ) -> Visit:
        context = browser.new_context(**options) if own or options else room
        page = tab if context is room and not made and not tab.is_closed() else context.new_page()
        made.append(Visit(page, address))
        page.set_viewport_size(viewport)
        page.emulate_media(color_scheme=color_scheme)
        return made[-1]

    yield make
    for each in made:
        each.leave()
        if each.context is not room:
            each.context.close()


@pytest.fixture(scope="module")
def lasting(browser: Browser, address: str) -> Iterator[Callable[..., Visit]]:
    """Make a visit, with the options of a browser context, for all tests of a file that look at the same page."""
    contexts: list[BrowserContext] = []

    def make(**options: object) -> Visit:
        contexts.append(browser.new_context(**{"viewport": DESKTOP, **options}))
        return Visit(contexts[-1].new_page(), address)

    yield make
    for each in contexts:
        each.close()
