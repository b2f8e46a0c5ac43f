"""Drawings of one staggered case, read back as XML."""

from xml.etree.ElementTree import Element, fromstring

import pytest

from service.assessment.answer.assess import Assessment
from service.drawing.patches import draw_patches
from service.drawing.section import draw_section
from tests.support.cases import changed, check, saloon
from tests.unit.drawing.drawn import Case
from tests.unit.drawing.fitments import REQUESTS


@pytest.fixture(scope="session")
def found() -> Assessment:
    """A saloon that gets a wider front axle of lower offset and a wider rear axle still."""
    request = saloon(("245/40 R18 97Y XL", "8J x 18 H2 ET38"), ("255/40 R18 99Y XL", "8.5J x 18 H2 ET41"))
    # Worn, so that rolling circumference and overall diameter cannot be taken for each other.
    return check(changed(request, {"/vehicle/front/fitted/tyre/tread_depth_mm": 3.0}))


@pytest.fixture(scope="session")
def section(found: Assessment) -> Element:
    """The section."""
    return fromstring(draw_section(found))


@pytest.fixture(scope="session")
def patches(found: Assessment) -> Element:
    """The contact patches."""
    return fromstring(draw_patches(found))


class Cases(dict[str, Case]):
    """Each fitment assessed and drawn when it is first asked for."""

    def __missing__(self, name: str) -> Case:
        self[name] = made = Case(name)
        return made


@pytest.fixture(scope="session")
def cases() -> Cases:
    """All fitments, each assessed and drawn once."""
    return Cases()


@pytest.fixture(params=sorted(REQUESTS))
def case(request: pytest.FixtureRequest, cases: Cases) -> Case:
    """Each fitment in turn."""
    return cases[request.param]
