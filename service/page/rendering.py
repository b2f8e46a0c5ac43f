"""Templates that escape whatever is put into them, and the source expressions that admit their styles."""

from __future__ import annotations

import base64
import hashlib
from functools import cache
from importlib import resources

from jinja2 import Environment, PackageLoader, StrictUndefined


@cache
def environment() -> Environment:
    """Return the environment of the templates of this room; a name that a template lacks is an error."""
    return Environment(
        loader=PackageLoader("service.page", "templates"),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )


@cache
def asset(name: str) -> str:
    """Return a file of the room's assets."""
    return (resources.files("service.page") / "assets" / name).read_text(encoding="utf-8")


def source_of(content: str) -> str:
    """Return the source expression by which a content security policy admits this inline text and no other."""
    return f"'sha256-{base64.b64encode(hashlib.sha256(content.encode()).digest()).decode()}'"
