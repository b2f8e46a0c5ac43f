"""The caller's own name of a candidate comes back with what is said of it, whichever route is asked."""

import copy

from tests.support.cases import saloon
from tests.support.wire import check, client, post


def _asked(name):
    asked = copy.deepcopy(saloon())
    asked["candidate"]["id"] = name
    return asked


def test_the_id_of_a_candidate_comes_back_from_check_as_from_compare():
    asked = _asked("offer 17")
    assert check(asked)["id"] == "offer 17"
    compared = {"vehicle": asked["vehicle"], "candidates": [asked["candidate"]]}
    assert post("/v1/fitments/compare", compared)["rows"][0]["id"] == "offer 17"


def test_a_candidate_without_an_id_has_none_in_the_answer():
    assert "id" not in check(saloon())


def test_an_id_that_is_no_name_is_refused_by_its_field():
    answer = client().post("/v1/fitments/check", json=_asked("a\u0000b"))
    assert answer.status_code == 422
    assert [each["pointer"] for each in answer.json()["errors"]] == ["/candidate/id"]
