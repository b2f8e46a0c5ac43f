"""A workshop's booking system: check before the slot is confirmed, make a job card, attach the report, come back later.

References: RFC 9110 (401, 429, 503, Retry-After), RFC 6585 (429), RFC 9457; the diameters and pressures are those that
the request itself states. Bolts are tightened again after 50 to 100 km: common practice, no source.
"""

import hashlib
import json
import threading
from collections.abc import Iterator
from html.parser import HTMLParser
from select import select
from typing import Any, NamedTuple

import pytest

from tests.contract.callers import Json, Service, answered, asked, patiently
from tests.contract.http_wire import post, receive
from tests.support.cases import ABSENT, at, changed, on_both_axles, saloon

CHECK, COMPARE, REPORT = (f"/v1/fitments/{name}" for name in ("check", "compare", "report"))
KEY = "3f0c8c1e5b7d4f2a9e6b1d0c7a8f5e42"
WITH_KEY = b"X-API-Key: " + KEY.encode()

# Wheels of another maker: 72.6 mm bore on a 66.6 mm hub, one step wider, 260 and 250 kPa.
ORDERED = changed(
    saloon(("235/45 R17 97W XL", "8J x 17 H2 ET45"), ("235/45 R17 97W XL", "8J x 17 H2 ET45")),
    {
        **on_both_axles({"/candidate/{axle}/rim/centre_bore_mm": 72.6}),
        "/candidate/front/pressure_kpa": 260,
        "/candidate/label": "order 4711 <summer>",
    },
)
WINTER = changed(
    saloon(), {"/season": "winter", **on_both_axles({"/candidate/{axle}/tyre/size": "225/45 R17 94T XL 3PMSF"})}
)
REFUSED = changed(ORDERED, on_both_axles({"/candidate/{axle}/rim/bolt_circle": "5x108"}))
OPEN = changed(ORDERED, on_both_axles({"/candidate/{axle}/tyre/size": "235/45 R17"}))


@pytest.fixture(scope="module")
def service() -> Iterator[Service]:
    """The service with room for one long job and none that waits."""
    with Service(queue_length=0, retry_after_s=1, drain_s=0) as running:
        yield running


# Before the slot is confirmed


class JobCard(NamedTuple):
    """What the workshop is told: made of codes and numbers, without reading a sentence."""

    may_start: bool
    pressures_kpa: dict[str, float]
    rings_mm: dict[str, tuple[float, float]]
    label_kmh: float | None
    steps: list[str]


def job_card(answer: Json) -> JobCard:
    actions = {each["code"]: each["numbers"] for each in answer["actions"]}
    named = {
        axle: (actions.get(f"set_pressure_{axle}", {}), actions.get(f"spigot_rings_{axle}", {}))
        for axle in ("front", "rear")
    }
    return JobCard(
        may_start=answer["verdict"] in ("suitable", "suitable_with_conditions"),
        pressures_kpa={axle: each["pressure_kpa"] for axle, (each, _) in named.items() if "pressure_kpa" in each},
        rings_mm={axle: (each["ring_outer_mm"], each["ring_inner_mm"]) for axle, (_, each) in named.items() if each},
        label_kmh=actions.get("speed_label", {}).get("speed_kmh"),
        steps=[code for code in actions if not code.startswith(("set_pressure", "spigot_rings", "speed_label"))],
    )


@pytest.mark.parametrize(
    ("question", "verdict", "may_start"),
    [
        (ORDERED, "suitable_with_conditions", True),
        (WINTER, "suitable_with_conditions", True),
        (saloon(), "suitable", True),
        (OPEN, "undetermined", False),
        (REFUSED, "unsuitable", False),
    ],
    ids=["conditions", "winter", "the same again", "open", "refused"],
)
def test_the_slot_is_confirmed_only_for_what_may_be_fitted(service: Service, question, verdict, may_start) -> None:
    answer = answered(service, CHECK, question)
    assert (answer["verdict"], job_card(answer).may_start) == (verdict, may_start)


def test_a_job_card_has_the_pressures_of_both_axles(service: Service) -> None:
    assert job_card(answered(service, CHECK, ORDERED)).pressures_kpa == {"front": 260, "rear": 250}


def test_a_job_card_has_a_pressure_where_the_order_states_none(service: Service) -> None:
    """Nothing is known of it but that it must not be below the present 250 kPa and must carry the axle."""
    question = changed(ORDERED, on_both_axles({"/candidate/{axle}/pressure_kpa": ABSENT}))
    answer = answered(service, CHECK, question)
    for axle, pressure_kpa in job_card(answer).pressures_kpa.items():
        assert pressure_kpa >= answer["axles"][axle]["proposed"]["minimum_pressure_kpa"]
        assert pressure_kpa >= at(question, f"/vehicle/{axle}/fitted/pressure_kpa")
    assert len(job_card(answer).pressures_kpa) == 2


def test_a_job_card_has_the_rings_to_take_from_the_shelf(service: Service) -> None:
    assert job_card(answered(service, CHECK, ORDERED)).rings_mm == {"front": (72.6, 66.6), "rear": (72.6, 66.6)}


def test_a_job_card_has_no_rings_where_the_bore_fits(service: Service) -> None:
    assert job_card(answered(service, CHECK, saloon())).rings_mm == {}


def test_a_job_card_has_the_label_of_a_slow_winter_tyre(service: Service) -> None:
    """T is 190 km/h (UN Regulation No. 30, para. 2.29.3), on a car of 228 km/h."""
    assert job_card(answered(service, CHECK, WINTER)).label_kmh == 190


def test_a_job_card_has_the_second_tightening_and_the_trial_fit(service: Service) -> None:
    assert {"torque", "trial_fit", "papers", "insurer"} <= set(job_card(answered(service, CHECK, ORDERED)).steps)


def test_a_job_card_of_what_must_not_be_fitted_says_that_and_nothing_else(service: Service) -> None:
    card = job_card(answered(service, CHECK, REFUSED))
    # Spigot rings and the like are named for later, and nothing is ordered.
    assert (card.steps, card.pressures_kpa, card.rings_mm) == (["do_not_fit", "mind_too"], {}, {})


def test_a_job_card_of_an_open_question_begins_with_settling_it(service: Service) -> None:
    assert job_card(answered(service, CHECK, OPEN)).steps[0] == "settle_first"


def test_the_customer_is_asked_for_what_the_open_question_needs(service: Service) -> None:
    """The form marks the field at the pointer; given the load index and a symbol, the question is no longer open."""
    first = next(each for each in answered(service, CHECK, OPEN)["findings"] if each["outcome"] == "not_assessed")
    pointer = first["remedy"]["pointer"]
    settled = changed(OPEN, {pointer: "235/45 R17 97W XL", pointer.replace("front", "rear"): "235/45 R17 97W XL"})
    assert at(OPEN, pointer) == "235/45 R17"
    assert answered(service, CHECK, settled)["verdict"] == "suitable_with_conditions"


# The report is attached


class Page(HTMLParser):
    """The words of a page, what it refers to, and the kinds of its parts."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.references: list[str] = []
        self.kinds: set[str] = set()
        self.styles: list[str] = []
        self._words: list[str] = []
        self._in = ""
        self.feed(text)
        self.close()

    @property
    def words(self) -> str:
        return " ".join("".join(self._words).split())

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.kinds.add(tag)
        self._in = tag
        for name, value in attrs:
            if name in ("href", "xlink:href", "src", "srcset", "data", "action", "poster", "background"):
                self.references.append(value or "")
            elif name == "style" or "url(" in (value or ""):
                self.styles.append(value or "")

    def handle_endtag(self, _: str) -> None:
        self._in = ""

    def handle_data(self, data: str) -> None:
        if self._in == "style":
            self.styles.append(data)
        else:
            self._words.append(data)


@pytest.fixture(
    scope="module", params=[ORDERED, WINTER, REFUSED, OPEN], ids=["conditions", "winter", "refused", "open"]
)
def attached(request: pytest.FixtureRequest, service: Service) -> tuple[Page, Any]:
    """A report and the check that it tells of."""
    answer = asked(service, REPORT, request.param)
    assert (answer.status, answer.headers["content-type"]) == (200, "text/html; charset=utf-8")
    return Page(answer.body.decode("utf-8")), answered(service, CHECK, {**request.param, "detail": "full"})


VERDICTS = {
    "suitable_with_conditions": "It fits, with conditions",
    "unsuitable": "Do not fit",
    "undetermined": "Not known yet",
}


def test_the_report_refers_to_nothing_outside_itself(attached):
    page, _ = attached
    assert [each for each in page.references if not each.startswith("#")] == []
    assert [each for each in page.styles if "@import" in each or "url(" in each.replace("url(#", "")] == []
    assert page.kinds & {"script", "link", "iframe", "object", "embed", "img", "base", "form"} == set()


def test_the_report_says_the_verdict(attached):
    page, check = attached
    assert VERDICTS[check["verdict"]] in page.words


def test_the_report_tells_every_finding(attached):
    page, check = attached
    assert len(check["findings"]) > 30
    assert [each["code"] for each in check["findings"] if " ".join(each["message"].split()) not in page.words] == []


def test_the_report_tells_every_action_and_caution(attached):
    page, check = attached
    told = [*(each["text"] for each in check["actions"]), *check["cautions"]]
    assert [each for each in told if each not in page.words] == []


def test_the_report_writes_what_the_customer_wrote_as_text(attached):
    page, check = attached
    assert check["label"] in page.words
    assert "summer" not in page.kinds


# Another try after a full queue


def options(count: int) -> Json:
    """Return the comparison of the ordered wheels in some steps of pressure."""
    steps = [changed(ORDERED, {"/candidate/rear/pressure_kpa": 250 + step})["candidate"] for step in range(count)]
    return {"vehicle": ORDERED["vehicle"], "candidates": steps, "explain_first": count}


@pytest.fixture(scope="module")
def crowded(service: Service) -> tuple[bytes, bytes]:
    """What a comparison was answered after it was refused, and what an undisturbed instance answers."""
    question, long_work = options(3), options(500)
    finished = threading.Event()

    def keep_busy() -> None:
        while not finished.is_set():
            asked(service, COMPARE, long_work)

    others = [threading.Thread(target=keep_busy) for _ in range(2)]
    for other in others:
        other.start()
    try:
        # As long as the others keep the worker busy, every attempt may be refused.
        refused = next(each for each in (asked(service, COMPARE, question) for _ in range(50)) if each.status != 200)
    finally:
        finished.set()
        for other in others:
            other.join()
    assert (refused.status, refused.headers["retry-after"]) == (503, "1")
    late, _ = patiently(service, COMPARE, question)
    with Service(drain_s=0) as undisturbed:
        return late.body, asked(undisturbed, COMPARE, question).body


def test_the_answer_after_a_refusal_has_the_bytes_of_an_undisturbed_one(crowded):
    late, undisturbed = crowded
    assert late == undisturbed
    assert json.loads(late)["compared"] == 3


def is_busy(service: Service) -> bool:
    lines = service.get("/metrics").body.decode().splitlines()
    return "work_queue_length 1.0" in lines


def test_a_check_does_not_wait_behind_long_work(service: Service) -> None:
    """The customer at the counter is answered while a comparison of 500 is at work, and the same as always."""
    alone = asked(service, CHECK, ORDERED).body
    with service.connect() as long_work:
        long_work.sendall(post(COMPARE, json.dumps(options(500)).encode()))
        assert any(is_busy(service) for _ in range(500))
        assert asked(service, CHECK, ORDERED).body == alone
        assert select([long_work], [], [], 0)[0] == []
        assert receive(long_work).status == 200


@pytest.mark.parametrize("path", [CHECK, REPORT, "/v1/fitments/drawing"])
def test_two_instances_give_the_same_bytes(service: Service, other: Service, path: str) -> None:
    assert asked(service, path, ORDERED).body == asked(other, path, ORDERED).body


@pytest.fixture(scope="module")
def other() -> Iterator[Service]:
    """Another instance, as the balancer might choose."""
    with Service(drain_s=0) as running:
        yield running


# The key


@pytest.fixture(scope="module")
def guarded() -> Iterator[Service]:
    """An instance that knows one key, which may ask three times a second."""
    entry = "booking:" + hashlib.sha256(KEY.encode()).hexdigest()
    with Service(api_keys=entry, api_key_rate="3/second", drain_s=0) as running:
        yield running


@pytest.mark.parametrize(
    "lines", [(), (b"X-API-Key: " + KEY.upper().encode(),), (b"Authorization: Bearer " + KEY.encode(),)]
)
def test_without_the_key_the_answer_names_the_header_to_send(guarded: Service, lines: tuple[bytes, ...]) -> None:
    answer = asked(guarded, CHECK, ORDERED, *lines)
    assert answer.status == 401
    assert answer.problem["detail"] == "Send a valid key in the header X-API-Key."
    assert 'header="X-API-Key"' in answer.headers["www-authenticate"]


def test_beyond_its_rate_the_key_is_told_when_to_come_back_and_then_served(guarded: Service) -> None:
    answers = [asked(guarded, CHECK, ORDERED, WITH_KEY) for _ in range(12)]
    refused = [each for each in answers if each.status != 200]
    assert {each.status for each in refused} == {429}
    assert {each.problem["type"] for each in refused} == {"/problems/too-many-requests"}
    # A window of one second is over within two.
    assert all(1 <= int(each.headers["retry-after"]) <= 2 for each in refused)
    later, _ = patiently(guarded, CHECK, ORDERED, WITH_KEY)
    assert (later.status, later.body) == (200, answers[0].body)


def test_whether_the_service_is_well_may_be_asked_without_the_key(guarded: Service) -> None:
    assert guarded.get("/health/ready").status == 200
