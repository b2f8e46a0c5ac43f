"""What a process that is asked for its health answers."""

from __future__ import annotations

from typing import Literal

from service.api.schemas.base import Wire, part, text


class Health(Wire):
    """A process that answers."""

    status: Literal["ok"] = part("Always `ok`; a process that is not answers with a problem.", "ok")
    version: str = text("The version of the service.", 40, "1.0.0")
