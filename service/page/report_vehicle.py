"""Before and after of the whole vehicle: speedometer, circumferences, braking, balance."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from service.assessment.answer.assess import Assessment
from service.assessment.checks.speedometer_lead import lead_after_percent, present_lead, r39
from service.assessment.view.change import percent
from service.core.numeric import known
from service.core.saying import Amount, say
from service.page.report_cells import NOTHING, Writer
from service.page.report_table import Lines, ReportLine

NOT_READ: Final = say("not read")
# Where a speedometer is told: a round speed that every such rule tries or lies between.
TOLD_KMH: Final = 100.0


def vehicle_lines(found: Assessment, write: Writer) -> Iterator[ReportLine]:
    """Yield the lines of the vehicle; a trailer has none of these."""
    car = found.car
    if car.vehicle.is_trailer:
        return
    lines = Lines(found, "vehicle", write)
    yield _speedometer(found, lines)
    yield lines.line(
        say("Front to rear circumference"),
        (NOTHING, NOTHING),
        write.change(car.change.axle_ratio_percent, "%"),
        write.either_way(lines.limit("diameter.axle_ratio"), "%"),
        "diameter.axle_ratio",
    )
    yield lines.line(
        say("Braking distance, dry"), (NOTHING, NOTHING), write.estimate(car.driving.braking_distance_percent, "%")
    )
    yield lines.line(
        say("Balance in the dry (plus: understeer)"),
        (NOTHING, NOTHING),
        write.estimate(car.change.gradient_deg_per_g, "deg/g", 2),
        write.either_way(lines.limit("balance.change"), "deg/g", 2),
        "balance.change",
    )


def _speedometer(found: Assessment, lines: Lines) -> ReportLine:
    """Return what the speedometer shows at a true speed, now and then, beside what UN R39 admits there."""
    write, car, rule = lines.write, found.car, r39()
    lead = present_lead(car.vehicle)
    now, then = TOLD_KMH * lead, TOLD_KMH * (1.0 + lead_after_percent(car) / 100.0)
    return lines.line(
        say("Speedometer at {speed}", speed=Amount(TOLD_KMH, "km/h")),
        (write.amount(now, "km/h", 1, NOT_READ), write.amount(then, "km/h", 1) if known(now) else NOTHING),
        write.change(percent(car.change.driven_circumference_ratio, 1.0), "%"),
        write.between(rule.least_displayed_kmh(TOLD_KMH), rule.most_displayed_kmh(TOLD_KMH), "km/h"),
        "diameter.speedometer law.speedometer",
    )
