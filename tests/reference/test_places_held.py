"""Each line of each place against a table copied by hand: limit, side, unit, for whom, document, status, day checked.

The tables (`data/places`, one a place) were written from the project's notes on standards and regulations, which name
the documents as the lines do: the Regeling voertuigen, StVZO, SI 2001/25, VSI 9, rules 46 and 52, reg. 40A, 49 CFR
393.82, FMVSS 110 and 120, the VIRM, the EU summary mi0081 and directive 75/443 (read); the inspection manual, the
Traficom regulation, VSI 9 revision 4, the South Australian guidance, VSB 14 off-road, ADR 18/03, art. 148 to 2006
(quotations); UN R142, R64, R30 6.1.4.2, R39 5.2.5, VSB 14 on cars and art. 148 from 2007 (memory).

Held as entered, source as the pack names it, and so a guard against slips of the pen only: the limits of
`common_practice.csv` except those tried at the end, the reach down to 26 mm of VSB 14 on cars (the notes give
15 mm both ways, from memory), the speeds at which the project tries reg. 40A, the words for a place in a document,
and which categories stand for the classes of Australia, New Zealand and the United States (this project's reading).
"""

import csv
from pathlib import Path

import pytest

from service.rules.limits import LIMIT_NAMES
from service.rules.reader import default_packs
from tests.support.place_tables import PRINTED, held, held_limit, held_on_winter, printed

PACKS = default_packs()
LOADS = Path(__file__).parent / "data" / "pressure_load_standard.csv"

# Where UN R142 and R39 are law, by the notes; what a place says in its own words it does not inherit.
OF_THE_UN = {
    "unece": {"law.structure", "law.same_size_on_axle", "speedometer"},
    "de": {"law.structure", "law.same_size_on_axle", "speedometer"},
    "es": {"law.structure", "law.same_size_on_axle", "speedometer"},
    "fi": {"law.structure", "law.same_size_on_axle", "speedometer"},
    "nl": {"law.structure", "speedometer"},
    "gb": {"speedometer"},
} | {place: set() for place in ("au-nsw", "au-sa", "au-wa", "jp", "nz", "us")}


def lines(place, *beginnings):
    return {line.what: line for line in printed(place) if line.what.startswith(beginnings)}


def test_every_place_has_its_table():
    assert {path.stem for path in PRINTED.glob("*.csv")} == {*PACKS, "common_practice"}


@pytest.mark.parametrize("place", PACKS)
def test_a_place_holds_the_rules_that_its_table_prints(place):
    assert {line.what: line for line in held(PACKS[place])} == lines(place, "law.", "speedo", "test", "relief.")


@pytest.mark.parametrize("place", PACKS)
def test_a_place_holds_of_the_united_nations_rules_what_is_law_there(place):
    found = {rule.code for rule in PACKS[place].rules if rule.pack == "unece"}
    found |= {"speedometer" for rule in PACKS[place].speedometers if rule.pack == "unece"}
    assert found == OF_THE_UN[place]


@pytest.mark.parametrize("place", PACKS)
def test_a_place_counts_the_winter_tyres_that_its_table_prints_or_those_of_the_united_nations(place):
    assert {line.what: line for line in held_on_winter(PACKS[place])} == (
        lines(place, "winter") or lines("unece", "winter")
    )


@pytest.mark.parametrize("place", PACKS)
def test_a_place_has_the_limits_of_its_table_those_of_the_united_nations_and_common_practice_in_this_order(place):
    expected = lines("common_practice", "limit") | lines("unece", "limit") | lines(place, "limit")
    found = [held_limit(PACKS[place], name) for name in LIMIT_NAMES]
    assert {line.what: line for line in found} == expected


def test_the_least_pressure_is_the_lowest_that_the_table_prints():
    """ETRTO loads by pressure: the columns begin at 1.5 bar (read)."""
    with LOADS.open(encoding="utf-8") as file:
        header = next(row for row in csv.reader(line for line in file if not line.startswith("#")))
    assert PACKS["unece"].limits.least_pressure_kpa.value == 100.0 * min(map(float, header[1:]))


def test_a_snow_tyre_may_have_a_hundredth_more_diameter():
    """Automotive Engineering, ch. 10.1, p. 297: a 1 % larger outside diameter with an M & S profile (read)."""
    assert PACKS["unece"].limits.snow_diameter_growth_percent.value == 1.0


def test_a_section_may_be_higher_by_the_factor_b_of_the_regulation():
    """UN R30 6.1.5, b = 1.04 for radial tyres of normal use (memory)."""
    assert PACKS["unece"].limits.service_height_growth_percent.value == pytest.approx(100.0 * (1.04 - 1.0))
