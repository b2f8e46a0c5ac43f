"""Reading a page as a person would: its words without the markup, and its elements with their attributes."""

from html.parser import HTMLParser
from typing import NamedTuple

_SILENT = frozenset({"style", "script", "svg"})


class Tag(NamedTuple):
    """One opening tag."""

    name: str
    attributes: dict[str, str | None]


class Page(HTMLParser):
    """A page that was read: `words` with single spaces, and `tags` in order; drawings and styles say no words."""

    def __init__(self, text: str) -> None:
        super().__init__(convert_charrefs=True)
        self.tags: list[Tag] = []
        self._pieces: list[str] = []
        self._silent = 0
        self.feed(text)
        self.close()
        self.words = " ".join("".join(self._pieces).split())

    def handle_starttag(self, tag, attrs):
        self.tags.append(Tag(tag, dict(attrs)))
        self._silent += tag in _SILENT

    def handle_endtag(self, tag):
        self._silent -= tag in _SILENT

    def handle_data(self, data):
        if not self._silent:
            self._pieces.append(data)

    def named(self, name: str) -> list[dict[str, str | None]]:
        """Return the attributes of every tag of this name."""
        return [each.attributes for each in self.tags if each.name == name]
