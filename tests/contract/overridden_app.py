"""The test application with every overridden name of the server counted; prints what was called when it stops.

Run as `python -m tests.contract.overridden_app`, with the same settings as the service.
"""

import functools
import os
import sys
from collections import Counter
from collections.abc import Callable
from typing import Any

from service.api.transport.patience import WatchedProtocol
from service.api.transport.protocol import GuardedProtocol
from service.api.transport.server import DrainingServer, serve
from service.settings import load_settings
from tests.contract import http_app

CLASSES = (WatchedProtocol, GuardedProtocol, DrainingServer)

called: Counter[str] = Counter()


def overridden(cls: type) -> dict[str, Callable[..., Any]]:
    """Return what the class overrides, as it says itself."""
    return {name: member for name, member in vars(cls).items() if getattr(member, "__override__", False)}


def counted(name: str, method: Callable[..., Any]) -> Callable[..., Any]:
    """Return the method, counting the calls that do not come from our own code.

    The parser is C and has no frame, so its callbacks seem to come from whoever feeds it; a signal comes in between
    whatever runs just then.
    """

    @functools.wraps(method)
    def counting(*args: object, **kwargs: object) -> object:
        from_elsewhere = not sys._getframe(1).f_globals["__name__"].startswith("service.")
        if from_elsewhere or ".on_" in name or name.endswith(".handle_exit"):
            called[name] += 1
        return method(*args, **kwargs)

    return counting


if __name__ == "__main__":
    for each in CLASSES:
        for name, method in overridden(each).items():
            setattr(each, name, counted(f"{each.__name__}.{name}", method))
    chosen = load_settings(os.environ)
    app = http_app.create_app(chosen)
    app.router.routes.extend(http_app.router.routes)
    serve(app, chosen)
    app.state.services.log.info("called", names=dict(called))
