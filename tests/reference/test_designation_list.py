"""Three hundred tyres and a hundred rims as they are printed or typed in the trade, and what a fitter takes them for.

Written by hand before they were read by the service. The column `source` says where the form is known from: `standard`
(ISO 4000, UN R30, UN R54, DIN 7817 and the sizes of the Tire and Rim Association, their forms mostly from memory),
`sidewall practice` or `memory` of what is typed. Pattern names and approval marks are invented. Of a refused text the
column `canonical` holds what may have been meant.
"""

import re

import pytest

from service.core.errors import UnreadableDesignation
from service.designation.rim import RIM_PATTERN, parse_rim
from service.designation.tyre import TYRE_PATTERN, parse_tyre
from tests.support.designations import printed

TYRES, RIMS = printed("tyre"), printed("rim")
READERS = {"tyre": (parse_tyre, TYRE_PATTERN), "rim": (parse_rim, RIM_PATTERN)}
ROWS = [("tyre", row) for row in TYRES] + [("rim", row) for row in RIMS]
READ = [pytest.param(kind, row, id=row["text"]) for kind, row in ROWS if row["outcome"] == "read"]
REFUSED = [pytest.param(kind, row, id=row["text"]) for kind, row in ROWS if row["outcome"] == "refused"]


def test_the_list_has_three_hundred_tyres_and_a_hundred_rims_each_once():
    assert len({row["text"] for row in TYRES}) == len(TYRES) >= 300
    assert len({row["text"] for row in RIMS}) == len(RIMS) >= 100


@pytest.mark.parametrize("rows", [TYRES, RIMS])
def test_every_row_says_where_its_form_is_known_from(rows):
    assert {row["source"] for row in rows} == {"standard", "sidewall practice", "memory"}


@pytest.mark.parametrize(("kind", "row"), READ)
def test_a_designation_of_the_trade_is_read_as_a_fitter_reads_it(kind, row):
    found = READERS[kind][0](row["text"])
    assert found.canonical == row["canonical"]
    assert len(found.assumed) == int(row["assumed"]), found.assumed


@pytest.mark.parametrize("row", [row for row in TYRES if row["outcome"] == "read"], ids=lambda row: row["text"])
def test_words_that_are_not_known_come_back_as_they_were_written(row):
    assert " ".join(parse_tyre(row["text"]).unread) == row["unread"]


@pytest.mark.parametrize(("kind", "row"), REFUSED)
def test_what_is_refused_names_the_character_the_reason_and_what_may_have_been_meant(kind, row):
    with pytest.raises(UnreadableDesignation) as caught:
        READERS[kind][0](row["text"])
    assert caught.value.position == int(row["position"])
    assert row["reason"] in caught.value.detail
    assert (caught.value.did_you_mean or "") == row["canonical"]


@pytest.mark.parametrize(("kind", "row"), READ + REFUSED)
def test_the_published_pattern_admits_what_is_read_of_the_list_and_no_more(kind, row):
    assert bool(re.fullmatch(READERS[kind][1], row["text"])) == (row["outcome"] == "read")
