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


@pytest.fixture(scope="session")
def room(browser: Browser) -> Iterator[BrowserContext]:
    """One context for every visit without wishes of its own: a new tab in it costs half of what a new context does."""
    context = browser.new_context(viewport=DESKTOP)
    yield context
    # What makes it safe: no visit leaves anything in the browser that the next could find.
    assert context.storage_state() == {"cookies": [], "origins": []}
    context.close()


class Visit:
    """A look at the service's page, which notes what the browser asked for and complained of."""

    def __init__(self, context: BrowserContext, address: str) -> None:
        self.context, self.address = context, address
        self.asked: list[str] = []
        self.complaints: list[str] = []
        context.set_default_timeout(PATIENCE_S * 1000)
        # The tabs of others.
        self._others = context.pages
        self._heard = {"request": self._ask, "console": self._note, "weberror": self._fail}
        for event, listener in self._heard.items():
            context.on(event, listener)
        self.page: Page = context.new_page()

    def _ask(self, request) -> None:
        self.asked.append(request.url)

    def _note(self, message) -> None:
        # The browser itself reports every refused request, and refusing is what the service is asked to do there.
        if message.type in ("error", "warning") and "422 (Unprocessable" not in message.text:
            self.complaints.append(message.text)

    def _fail(self, error) -> None:
        self.complaints.append(str(error.error))

    def leave(self) -> None:
        """Close every tab that was opened since, and note nothing more."""
        for event, listener in self._heard.items():
            self.context.remove_listener(event, listener)
        for page in self.context.pages:
            if page not in self._others:
                page.close()

    def open(self, path: str = "/") -> Page:
        """Open the page, or another path of the service."""
        self.page.goto(f"{self.address}{path}")
        return self.page


def visits(browser: Browser, room: BrowserContext, address: str) -> Iterator[Callable[..., Visit]]:
    """Make visits; those with options of a browser context have a context of their own."""
    made: list[Visit] = []

    def make(**options: object) -> Visit:
        context = browser.new_context(**{"viewport": DESKTOP, **options}) if options else room
        made.append(Visit(context, address))
        return made[-1]

    yield make
    for each in made:
        if each.context is room:
            each.leave()
        else:
            each.context.close()


# A test's own visits, and those that all tests of a file look at.
visit = pytest.fixture(visits, name="visit")
lasting = pytest.fixture(visits, scope="module", name="lasting")
