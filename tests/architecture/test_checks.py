"""A check that is written is asked, and the job card has words for what it is about."""

from importlib import import_module
from pathlib import Path

import pytest

from service.assessment import checks
from service.assessment.answer.subjects import SUBJECTS
from service.assessment.checks.grade import AxleCheck, CarCheck
from service.assessment.law import towing

WRITTEN = {
    f"{path.stem}.{name}": value
    for path in sorted(Path(checks.__file__).parent.glob("[!_]*.py"))
    for name, value in vars(import_module(f"service.assessment.checks.{path.stem}")).items()
    if isinstance(value, AxleCheck | CarCheck)
}
ASKED = (*checks.AXLE_CHECKS, *checks.CAR_CHECKS)


@pytest.mark.parametrize("place", WRITTEN)
def test_a_check_that_is_written_is_asked(place):
    assert WRITTEN[place] in ASKED, f"name {place} in AXLE_CHECKS or CAR_CHECKS of checks/__init__.py"


@pytest.mark.parametrize("code", sorted({check.code for check in ASKED}))
def test_the_job_card_has_words_for_what_a_check_is_about(code):
    assert code in SUBJECTS, f"give {code} its two or three words in answer/subjects.py"


def test_no_words_are_left_of_a_check_that_is_gone():
    # A law asks what a towing car's tyres carry, without a code of its own kind.
    assert set(SUBJECTS) - {check.code for check in ASKED} - {towing.CODE} == set()
