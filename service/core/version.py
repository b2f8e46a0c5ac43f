"""The version, for those who may not ask the package above them."""

from typing import Final

VERSION: Final = "0.2.0"
