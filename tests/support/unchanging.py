"""Which data of a package could be changed in place: requests share what was read once."""

from __future__ import annotations

import dataclasses
import importlib
import inspect
import pkgutil
from collections.abc import Iterator
from types import ModuleType


def data_classes(package: ModuleType) -> Iterator[type]:
    """Yield the data classes that the modules of a package define."""
    for info in pkgutil.walk_packages(package.__path__, f"{package.__name__}."):
        module = importlib.import_module(info.name)
        for _, each in inspect.getmembers(module, inspect.isclass):
            if each.__module__ == info.name and dataclasses.is_dataclass(each):
                yield each


def takes_another_value(kind: type) -> bool:
    """Return whether a field of an instance can be set a second time."""
    made = object.__new__(kind)
    try:
        setattr(made, dataclasses.fields(kind)[0].name, None)
    except dataclasses.FrozenInstanceError:
        return False
    return True


def takes_another_field(kind: type) -> bool:
    """Return whether an instance has room for a field that nobody declared, as after a slip in a name."""
    return hasattr(object.__new__(kind), "__dict__")
