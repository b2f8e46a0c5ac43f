"""What a basis says in words, by how far its document was read."""

import dataclasses
import datetime as dt

import pytest
from pydantic import TypeAdapter, ValidationError

from service.core.findings import Basis
from service.rules.pack import VehicleFacts, speedometer_asked
from service.rules.provenance import Provenance
from service.rules.reader import default_packs

DAY = dt.date(2026, 11, 24)
READ = TypeAdapter(Provenance)


def basis(source: str, status: str, article: str, checked: dt.date | None = None) -> Basis:
    given = {"source": source, "status": status, "article": article, "checked": checked}
    return READ.validate_python({name: value for name, value in given.items() if value is not None}).basis


@pytest.mark.parametrize(
    ("status", "checked", "kind", "ending"),
    [
        ("read", DAY, "regulation", "art. 5.2.23; checked 2026-11-24"),
        ("second_hand", DAY, "regulation", "art. 5.2.23; checked 2026-11-24"),
        ("derived", DAY, "regulation", "art. 5.2.23; checked 2026-11-24"),
        ("memory", None, "common_practice", "art. 5.2.23; text not read, check the official text"),
    ],
)
def test_a_number_of_a_regulation_says_how_far_it_was_read(status, checked, kind, ending):
    found = basis("NL-RV", status, "art. 5.2.23", checked)
    assert (found.kind, found.source, found.place, found.status) == (kind, "NL-RV", "art. 5.2.23", status)
    assert str(found.reference).endswith(ending)


def test_the_projects_own_judgement_needs_no_text_to_be_checked():
    found = basis("PROJECT", "own", "classes of balance change")
    assert found.kind == "project_estimate"
    assert str(found.reference).endswith(": classes of balance change")


def test_common_practice_has_no_article_and_no_text():
    found = basis("COMMON-PRACTICE", "memory", "no source")
    assert (found.kind, found.place) == ("common_practice", "")
    assert "no source" not in str(found.reference).split(";")[1:]
    assert "text not read" not in str(found.reference)


def test_an_article_that_the_title_names_is_not_told_twice():
    found = basis("UN-R30 6.1.4.2", "memory", "6.1.4.2")
    assert (found.place, str(found.reference).count("6.1.4.2")) == ("", 1)


@pytest.mark.parametrize(("status", "checked"), [("read", None), ("second_hand", None), ("memory", DAY), ("own", DAY)])
def test_a_day_of_comparison_belongs_to_what_was_compared_and_to_nothing_else(status, checked):
    with pytest.raises(ValidationError):
        basis("NL-RV", status, "art. 5.2.23", checked)


def test_speedometer_rules_of_one_article_are_two_where_their_bands_differ():
    # UN R39 lets a car show 4 km/h above its tenth, a motorcycle 8 (5.3, from memory): one article, two bands.
    pack = default_packs()["unece"]
    cars = speedometer_asked(pack, VehicleFacts("M1", mass_kg=1900.0, built="2015-01-01"), pack.edition_date)[0]
    assert cars != dataclasses.replace(cars, most_constant_kmh=8.0)
