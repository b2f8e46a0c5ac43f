"""The printed plan in another language: every word of it said, numbers as they are written there."""

from __future__ import annotations

import re
from html import unescape

import pytest

from service.locales.speech import Speech, Units, speech
from service.page.plan_report import render_plan
from tests.support.cases import ABSENT, changed
from tests.support.plans import F225, F255, F285, asked, request, wheel
from tests.support.pseudo import bracketed, outside
from tests.unit.page.reading import Page

BARE = {"/vehicle/wheelbase_mm": ABSENT, "/vehicle/front/clearance": {}}
LOOSE = {"/vehicle/front/clearance/tolerance_mm": 4, "/combinations": [{"front": wheel(F255, "8.5J x 19 H2 ET44")}]}
SCATTER = {"braking_distance_percent": 1.0, "rear_wet_reserve_points": 1.0}
PLANS = {
    "scatter stated": request((F255, F285), (F225, F285), repeatability=SCATTER),
    "scatter not stated": request((F255, F285), (F255, F285), pressure_rule="load_over_capacity"),
    "facts are missing": changed(request((F285, None)), BARE),
    "measured loosely": changed(request((F255, None)), LOOSE),
    "rims to buy": request((None, "265/35 R18 97Y XL"), ("275/35 R18 99Y XL", None)),
    "nothing goes": request(("155 R13", None)),
}
# Units that read the same in all languages of the house.
ALIKE = {"mm", "kPa", "kg", "km/h", "deg/g", "ET"}


def page(name: str, said: Speech) -> str:
    return render_plan(*asked(PLANS[name]), said)


def unsaid(printed: str, name: str) -> set[str]:
    """Return the words that a reader meets outside all brackets, but for designations and the name of the pack."""
    labels = re.findall(r'aria-label="([^"]*)"', printed)
    read = re.sub(r"<style>.*?</style>|<svg.*?</svg>", " ", printed, flags=re.DOTALL)
    left = " ".join(outside(unescape(" ".join([re.sub(r"<[^>]+>", " ", read), *labels]))).split())
    return set(re.findall(r"[A-Za-z][a-z/]{2,}", left)) - ALIKE - {PLANS[name]["rule_pack"]}


@pytest.mark.parametrize("units", ["metric", "imperial"])
@pytest.mark.parametrize("name", PLANS)
def test_no_word_is_left_unsaid(name: str, units: Units) -> None:
    assert unsaid(page(name, bracketed(units)), name) == set()


def test_what_was_never_said_would_be_found() -> None:
    assert unsaid(page("rims to buy", speech("en")), "rims to buy") >= {"plan", "Driver", "present", "rims", "edition"}


@pytest.mark.parametrize("language", ["en", "de", "fr", "es", "nl"])
def test_the_page_names_its_language(language) -> None:
    assert Page(page("rims to buy", speech(language))).named("html") == [{"lang": language}]


def test_numbers_are_written_as_the_language_and_the_units_ask() -> None:
    # 250 kPa are 36.3 psi: the pound and the inch of 1959.
    assert "36,3 psi" in Page(page("scatter stated", speech("de", "imperial"))).words
