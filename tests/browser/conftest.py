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

    def __init__(self, context: BrowserContext, address: str) -> None:
        self.context, self.address = context, address
        self.asked: list[str] = []
        self.complaints: list[str] = []
        context.set_default_timeout(PATIENCE_S * 1000)
        context.on("request", lambda request: self.asked.append(request.url))
        context.on("console", self._note)
        context.on("weberror", lambda error: self.complaints.append(str(error.error)))
        self.page: Page = context.new_page()

    def _note(self, message) -> None:
        # The browser itself reports every refused request, and refusing is what the service is asked to do there.
        if message.type in ("error", "warning") and "422 (Unprocessable" not in message.text:
            self.complaints.append(message.text)

    def open(self, path: str = "/") -> Page:
        """Open the page, or another path of the service."""
        self.page.goto(f"{self.address}{path}")
        return self.page


@pytest.fixture
def visit(browser: Browser, address: str) -> Iterator[Callable[..., Visit]]:
    """Make a visit with the options of a browser context."""
    contexts: list[BrowserContext] = []

    def make(**options: object) -> Visit:
        contexts.append(browser.new_context(**{"viewport": DESKTOP, **options}))
        return Visit(contexts[-1], address)

    yield make
    for context in contexts:
        context.close()
