"""The page to try the service on: one form, filled in with a story, and its script, style and icon."""

from __future__ import annotations

import json
from functools import cache
from typing import Any, Final, NamedTuple

from service.core.version import VERSION
from service.drawing import paper
from service.drawing.marks import MARKS
from service.page import report
from service.page.rendering import asset, environment, source_of


class Field(NamedTuple):
    """A field of the form: where in the request, its label, unit and hint; numbers are sent as numbers."""

    pointer: str
    label: str
    unit: str = ""
    hint: str = ""
    number: bool = True
    required: bool = False

    @property
    def id(self) -> str:
        """Return the field's id in the page."""
        return "field" + self.pointer.replace("/", "-")


FILES: Final = {
    "/page.css": ("text/css", "page.css"),
    "/page.js": ("text/javascript", "page.js"),
    "/page-answer.js": ("text/javascript", "page-answer.js"),
    "/page.svg": ("image/svg+xml", "page.svg"),
}


def fit_fields(root: str) -> list[Field]:
    """Return the fields of tyre, rim and pressure below a pointer."""
    return [
        Field(f"{root}/tyre/size", "Tyre", hint="225/40 R19 93Y XL", number=False, required=True),
        Field(f"{root}/rim/size", "Rim, with ET", hint="8J x 19 H2 ET45", number=False, required=True),
        Field(f"{root}/pressure_kpa", "Pressure, cold", "kPa"),
        Field(f"{root}/tyre/tread_depth_mm", "Tread depth", "mm"),
    ]


def more_fit_fields(root: str) -> list[Field]:
    """Return the fields of rim and tyre that only some questions need."""
    return [
        Field(f"{root}/rim/bolt_circle", "Bolt circle", hint="5x112", number=False),
        Field(f"{root}/rim/centre_bore_mm", "Centre bore", "mm"),
        Field(f"{root}/rim/load_rating_kg", "Load rating", "kg"),
        Field(f"{root}/tyre/reference_pressure_kpa", "Tyre reference pressure", "kPa"),
    ]


def axle_fields(axle: str) -> list[Field]:
    """Return the fields of an axle that only some questions need."""
    root = f"/vehicle/{axle}"
    return [
        Field(f"{root}/kerb_axle_mass_kg", "Kerb axle mass", "kg"),
        Field(f"{root}/track_mm", "Track", "mm"),
        Field(f"{root}/min_rim_diameter_in", "Least rim, brake", "in"),
        Field(f"{root}/clearance/inboard_mm", "Room to strut", "mm"),
        Field(f"{root}/clearance/outboard_mm", "Room to wing edge", "mm"),
        Field(f"{root}/clearance/radial_mm", "Room to arch", "mm"),
        Field(f"{root}/hub/bolt_circle", "Hub bolt circle", hint="5x112", number=False),
        Field(f"{root}/hub/centre_bore_mm", "Hub spigot", "mm"),
    ]


CAR_FIELDS: Final = (
    Field("/vehicle/wheelbase_mm", "Wheelbase", "mm"),
    Field("/vehicle/centre_of_gravity_height_mm", "Height of centre of gravity", "mm"),
    Field("/vehicle/max_mass_kg", "Maximum mass", "kg"),
    Field("/vehicle/built", "Built on", hint="2019-05-20", number=False),
    Field("/vehicle/speedometer/displayed_kmh", "Speedometer shows", "km/h"),
    Field("/vehicle/speedometer/true_kmh", "At a true speed of", "km/h"),
)


@cache
def page() -> str:
    """Return the page."""
    story = json.loads(asset("story.json"))

    def start(pointer: str) -> str:
        return _at(story, pointer)

    return (
        environment()
        .get_template("index.html.j2")
        .render(
            start=start,
            field=Field,
            fit_fields=fit_fields,
            more_fit_fields=more_fit_fields,
            axle_fields=axle_fields,
            car_fields=CAR_FIELDS,
            marks=MARKS,
            version=VERSION,
        )
    )


@cache
def policy() -> str:
    """Return the content security policy of the page.

    The style of a report and that of a drawing are admitted because what a page opens from memory inherits its policy.
    """
    styles = f"'self' {source_of(report.style())} {paper.style_hash()}"
    return (
        f"default-src 'none'; script-src 'self'; style-src {styles}; img-src 'self' blob:; connect-src 'self'; "
        "frame-ancestors 'none'; base-uri 'none'; form-action 'none'"
    )


def _at(story: Any, pointer: str) -> str:  # noqa: ANN401 - JSON is of any type
    value = story
    for step in pointer.split("/")[1:]:
        value = value.get(step, {})
    return "" if value == {} else str(value)
