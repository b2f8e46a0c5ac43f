"""What a finding is about in two or three words, so that a line of the job card can name several of them."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from types import MappingProxyType

from service.core.findings import Finding
from service.core.saying import Said, capital, joined, say

SUBJECTS: Mapping[str, Said] = MappingProxyType(
    {
        "rim.diameter": say("tyre and rim of different diameters"),
        "rim.width": say("width of the rim for this tyre"),
        "rim.contour": say("contour of the rim"),
        "rim.load_rating": say("load rating of the rim"),
        "rim.bolt_circle": say("bolt circle"),
        "rim.centre_bore": say("centre bore"),
        "rim.brake_clearance": say("room for the brake"),
        "load.capacity": say("load capacity of the tyres"),
        "load.pressure": say("tyre pressure"),
        "load.towing": say("tyre load when towing"),
        "load.below_present": say("less load capacity than now"),
        "speed.capability": say("speed of the tyres"),
        "diameter.deviation": say("overall diameter"),
        "diameter.speedometer": say("speedometer"),
        "diameter.axle_ratio": say("front against rear circumference"),
        "clearance.inboard": say("room to the strut"),
        "clearance.outboard": say("room to the wing edge"),
        "clearance.radial": say("room to the wheel arch"),
        "clearance.twin": say("gap between the twin tyres"),
        "track.change": say("track"),
        "tyre.structure": say("radial and diagonal tyres together"),
        "tyre.season_mix": say("winter tyres on one axle only"),
        "tyre.run_flat_mix": say("run-flat against ordinary tyres"),
        "tyre.tread_depth": say("tread depth"),
        "tyre.tread_difference": say("new and worn tyres together"),
        "tyre.temporary_spare": say("temporary spare tyre"),
        "balance.change": say("balance of the car"),
        "balance.grip_order": say("grip of the rear axle"),
        "wet.aquaplaning": say("aquaplaning"),
        "wet.axle_order": say("aquaplaning of the rear axle"),
        "wet.reserve": say("reserve in standing water"),
    }
)
# The same of a rule of a place: the first of these that is part of its code.
_OF_RULES: Mapping[str, Said] = MappingProxyType(
    {
        "track": say("track"),
        "offset": say("offset"),
        "rim_width": say("rim width"),
        "rim_diameter": say("rim diameter"),
        "diameter": say("overall diameter"),
        "circumference": say("rolling circumference"),
        "distance_counter": say("distance counter"),
        "speedometer": say("speedometer"),
        "structure": say("radial and diagonal tyres"),
        "radial": say("radial and diagonal tyres"),
        "winter": say("winter tyres"),
        "width": say("tyre width"),
        "load": say("load"),
        "speed": say("speed of the tyres"),
        "same_size": say("tyres on one axle"),
        "sidewall": say("load"),
        "spacers": say("spacers"),
    }
)
PLACES: Mapping[str, str] = MappingProxyType(
    {"front": say("front axle"), "rear": say("rear axle"), "vehicle": "", "both": say("both axles")}
)


def subject(code: str) -> Said:
    """Return what a finding is about; of one that is not known here, what its code says."""
    if code.startswith("law."):
        name = code.removeprefix("law.")
        # What a caller's own pack calls a rule no catalogue knows.
        what = next((words for part, words in _OF_RULES.items() if part in name), name.replace("_", " "))
        return say("local rule on {subject}", subject=what)
    if code in SUBJECTS:
        return SUBJECTS[code]
    return say("{code}", code=code.rpartition(".")[2].replace("_", " "))


def where(findings: Sequence[Finding]) -> str:
    """Return the place of findings: `front axle`, `both axles`; nothing where any of them is about the vehicle."""
    axles = {each.axle for each in findings}
    return PLACES["vehicle" if "vehicle" in axles else "both" if len(axles) > 1 else axles.pop()]


def way_of(finding: Finding) -> str:
    """Return what settles a finding; what it says where nothing does."""
    return finding.message if finding.remedy is None else finding.remedy.text


def asked(finding: Finding) -> str:
    """Return the same with its full stop, to stand behind a colon."""
    return finding.message if finding.remedy is None else say("{remedy}.", remedy=finding.remedy.text)


def together(findings: Iterable[Finding]) -> list[list[Finding]]:
    """Return the findings in their order, those of both axles together where they say the same."""
    found: dict[tuple[str, str, str], list[Finding]] = {}
    for each in findings:
        advice = "" if each.remedy is None else each.remedy.text
        found.setdefault((each.code, each.message, advice), []).append(each)
    return list(found.values())


def named(findings: Iterable[Finding]) -> Said:
    """Return the subjects of findings in a row: `bolt circle (both axles), speedometer`."""
    places: dict[str, list[Finding]] = {}
    for each in findings:
        places.setdefault(subject(each.code), []).append(each)
    return joined(_at_place(subject(group[0].code), where(group)) for group in places.values())


def _at_place(what: Said, place: str) -> Said:
    return say("{subject} ({place})", subject=what, place=place) if place else what


def placed(group: Sequence[Finding]) -> str:
    """Return the sentence of findings that say the same, with their place before it."""
    place = where(group)
    return say("{place}: {message}", place=capital(place), message=group[0].message) if place else group[0].message


def on_axle(name: str, sentence: str) -> Said:
    """Return a sentence with its axle before it."""
    return (
        say("Front: {sentence}", sentence=sentence) if name == "front" else say("Rear: {sentence}", sentence=sentence)
    )
