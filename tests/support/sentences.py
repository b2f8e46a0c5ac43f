"""The sentences that the catalogues must have, looked up once for all tests of a process: that takes a second."""

import functools

from babel.messages.catalog import Catalog

from service.locales import messages


@functools.cache
def sentences() -> Catalog:
    """Return the template of all catalogues; nobody changes it."""
    return messages.messages()
