"""The fields of the page: where each stands in a request, what it is called, and where its number is found."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final, NamedTuple

from service.core.saying import Said, say

AXLES: Final = ("front", "rear")


class Field(NamedTuple):
    """A field: its pointer, label and unit, an example of what to type, and where the number stands.

    The pointer of a wheel's field leads on from one axle's fitment, any other from the request. `choices` are the
    values of a menu with their words.
    """

    pointer: str
    label: Said
    unit: str = ""
    example: str = ""
    where: Said | None = None
    choices: tuple[tuple[str, Said], ...] = ()

    def at(self, root: str) -> Field:
        """Return the field below another pointer."""
        return self._replace(pointer=root + self.pointer)


NOT_GIVEN: Final = say("not given")

# The codes of registration papers are those of Directive 1999/37/EC, Annex I, from memory.
WHEEL: Final = (
    Field("/tyre/size", say("Tyre"), example="205/55 R16 91V", where=say("side of the tyre")),
    Field("/rim/size", say("Rim with offset"), example="6.5J x 16 ET50", where=say("back of the wheel, or a spoke")),
    Field("/pressure_kpa", say("Pressure, cold"), "kPa", where=say("door pillar or fuel flap")),
)
_DATA: Final = say("scales, or the maker's data")
MORE_WHEEL: Final = (
    Field("/tyre/tread_depth_mm", say("Tread depth"), "mm", where=say("gauge, in the main grooves")),
    Field("/rim/bolt_circle", say("Bolt circle"), example="5x112", where=say("back of the wheel")),
    Field("/rim/centre_bore_mm", say("Centre bore"), "mm", where=say("caliper, at the back of the wheel")),
    Field("/rim/load_rating_kg", say("Load rating of the rim"), "kg", where=say("back of the wheel")),
    Field("/spacer_mm", say("Spacer"), "mm", where=say("caliper; empty: none")),
    Field("/tyre/reference_pressure_kpa", say("Pressure on the tyre"), "kPa", where=say("vans: beside the load index")),
    Field("/tyre/mass_kg", say("Mass of the tyre"), "kg", where=_DATA),
    Field("/rim/mass_kg", say("Mass of the rim"), "kg", where=_DATA),
)

DRIVEN: Final = (("", NOT_GIVEN), ("front", say("front")), ("rear", say("rear")), ("all", say("all")))
SEASONS: Final = (("", NOT_GIVEN), ("summer", say("summer")), ("winter", say("winter")))
CATEGORIES: Final = tuple(
    (each, Said(each, {})) for each in ("M1", "M1G", "M2", "M3", "N1", "N2", "N3", "O1", "O2", "O3", "O4")
)
TWIN: Final = (("", say("one")), ("2", say("two, twin wheels")))

CAR: Final = (
    Field("/vehicle/max_speed_kmh", say("Top speed"), "km/h", where=say("papers: T")),
    Field("/vehicle/front/max_axle_mass_kg", say("Maximum axle mass, front"), "kg", where=say("papers: N.1; plate: 1")),
    Field("/vehicle/rear/max_axle_mass_kg", say("Maximum axle mass, rear"), "kg", where=say("papers: N.2; plate: 2")),
    Field("/vehicle/driven_axle", say("Driven axle"), choices=DRIVEN),
    Field("/rule_pack", say("Rules of"), choices=(("", say("UN Regulations")),)),
    Field("/season", say("Season"), choices=SEASONS),
)
MORE_CAR: Final = (
    Field("/vehicle/category", say("Category"), choices=(("", NOT_GIVEN), *CATEGORIES), where=say("papers: J")),
    Field("/vehicle/built", say("Built on"), example="2019-05-20", where=say("papers: B; year, month, day")),
    Field("/vehicle/wheelbase_mm", say("Wheelbase"), "mm", where=say("papers: M")),
    Field("/vehicle/max_mass_kg", say("Maximum mass"), "kg", where=say("papers: F.1")),
    Field("/vehicle/centre_of_gravity_height_mm", say("Height of centre of gravity"), "mm", where=say("test report")),
    Field("/vehicle/speedometer/displayed_kmh", say("Speedometer shows"), "km/h", where=say("read at a steady speed")),
    Field("/vehicle/speedometer/true_kmh", say("At a true speed of"), "km/h", where=say("satellite receiver")),
)
MORE_AXLE: Final = (
    Field("/wheels_per_side", say("Wheels on each side"), choices=TWIN),
    Field("/kerb_axle_mass_kg", say("Axle mass, ready to drive"), "kg", where=say("scales")),
    Field("/track_mm", say("Track"), "mm", where=say("papers, or tape: tread to tread")),
    Field("/min_rim_diameter_in", say("Least rim over the brake"), "in", where=say("maker's list of wheels")),
    Field("/clearance/inboard_mm", say("Room to strut"), "mm", where=say("ruler, at the scarcest place")),
    Field("/clearance/outboard_mm", say("Room to wing edge"), "mm", where=say("plumb line and ruler")),
    Field("/clearance/radial_mm", say("Room to arch"), "mm", where=say("at full bump")),
    Field("/hub/bolt_circle", say("Bolt circle of the hub"), example="5x112", where=say("caliper, or the wheel")),
    Field("/hub/centre_bore_mm", say("Spigot of the hub"), "mm", where=say("caliper")),
)


def every_field() -> list[Field]:
    """Return every field with its full pointer and a label that says of which axle and which wheels it is."""
    front = [each.at("/vehicle/front")._replace(label=say("Front axle: {what}", what=each.label)) for each in MORE_AXLE]
    rear = [each.at("/vehicle/rear")._replace(label=say("Rear axle: {what}", what=each.label)) for each in MORE_AXLE]
    return [*CAR, *MORE_CAR, *front, *rear, *_wheel_fields()]


def _wheel_fields() -> Iterator[Field]:
    for each in (*WHEEL, *MORE_WHEEL):
        what = each.label
        for root, label in (
            ("/vehicle/front/fitted", say("Front axle, present: {what}", what=what)),
            ("/vehicle/rear/fitted", say("Rear axle, present: {what}", what=what)),
            ("/candidate/front", say("Front axle, candidate: {what}", what=what)),
            ("/candidate/rear", say("Rear axle, candidate: {what}", what=what)),
        ):
            yield each.at(root)._replace(label=label)
