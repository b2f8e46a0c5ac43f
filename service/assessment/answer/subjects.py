"""What a finding is about in two or three words, so that a line of the job card can name several of them."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from types import MappingProxyType

from service.core.findings import Finding

SUBJECTS = MappingProxyType(
    {
        "rim.diameter": "tyre and rim of different diameters",
        "rim.width": "width of the rim for this tyre",
        "rim.contour": "contour of the rim",
        "rim.load_rating": "load rating of the rim",
        "rim.bolt_circle": "bolt circle",
        "rim.centre_bore": "centre bore",
        "rim.brake_clearance": "room for the brake",
        "load.capacity": "load capacity of the tyres",
        "load.pressure": "tyre pressure",
        "load.below_present": "less load capacity than now",
        "speed.capability": "speed of the tyres",
        "diameter.deviation": "overall diameter",
        "diameter.speedometer": "speedometer",
        "diameter.axle_ratio": "front against rear circumference",
        "clearance.inboard": "room to the strut",
        "clearance.outboard": "room to the wing edge",
        "clearance.radial": "room to the wheel arch",
        "clearance.twin": "gap between the twin tyres",
        "track.change": "track",
        "tyre.structure": "radial and diagonal tyres together",
        "tyre.season_mix": "winter tyres on one axle only",
        "tyre.run_flat_mix": "run-flat against ordinary tyres",
        "tyre.tread_depth": "tread depth",
        "tyre.tread_difference": "new and worn tyres together",
        "tyre.temporary_spare": "temporary spare tyre",
        "balance.change": "balance of the car",
        "balance.grip_order": "grip of the rear axle",
        "wet.aquaplaning": "aquaplaning",
        "wet.axle_order": "aquaplaning of the rear axle",
        "wet.reserve": "reserve in standing water",
    }
)
# The same of a rule of a place: the first of these that is part of its code.
_OF_RULES = MappingProxyType(
    {
        "track": "track",
        "offset": "offset",
        "rim_width": "rim width",
        "rim_diameter": "rim diameter",
        "diameter": "overall diameter",
        "circumference": "rolling circumference",
        "distance_counter": "distance counter",
        "speedometer": "speedometer",
        "structure": "radial and diagonal tyres",
        "radial": "radial and diagonal tyres",
        "winter": "winter tyres",
        "width": "tyre width",
        "load": "load",
        "speed": "speed of the tyres",
        "same_size": "tyres on one axle",
        "sidewall": "load",
    }
)
PLACES = MappingProxyType({"front": "front axle", "rear": "rear axle", "vehicle": "", "both": "both axles"})


def subject(code: str) -> str:
    """Return what a finding is about; of one that is not known here, what its code says."""
    if code.startswith("law."):
        name = code.removeprefix("law.")
        what = next((words for part, words in _OF_RULES.items() if part in name), name.replace("_", " "))
        return f"local rule on {what}"
    return SUBJECTS.get(code, code.rpartition(".")[2].replace("_", " "))


def where(findings: Sequence[Finding]) -> str:
    """Return the place of findings on one question: `front axle`, `both axles`, or nothing for the vehicle."""
    axles = dict.fromkeys(each.axle for each in findings)
    return PLACES["both" if len(axles) > 1 else next(iter(axles))]


def way_of(finding: Finding) -> str:
    """Return what settles a finding; what it says where nothing does."""
    return finding.message.rstrip(".") if finding.remedy is None else finding.remedy.text


def together(findings: Iterable[Finding]) -> list[list[Finding]]:
    """Return the findings in their order, those of both axles together where they say the same."""
    found: dict[tuple[str, str, str], list[Finding]] = {}
    for each in findings:
        advice = "" if each.remedy is None else each.remedy.text
        found.setdefault((each.code, each.message, advice), []).append(each)
    return list(found.values())


def named(findings: Iterable[Finding]) -> str:
    """Return the subjects of findings in a row: `bolt circle (both axles), speedometer`."""
    places: dict[str, list[Finding]] = {}
    for each in findings:
        places.setdefault(subject(each.code), []).append(each)
    return ", ".join(f"{name} ({place})" if (place := where(group)) else name for name, group in places.items())


def placed(group: Sequence[Finding]) -> str:
    """Return the sentence of findings that say the same, with their place before it."""
    place = where(group)
    return f"{place[0].upper()}{place[1:]}: {group[0].message}" if place else group[0].message
