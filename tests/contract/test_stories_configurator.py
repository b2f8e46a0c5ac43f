"""A shop's configurator: from a vehicle, a stock list and some rims to three offers with reasons.

References: a tyre's overall diameter is its rim's plus two section heights (UN Regulation No. 30, para. 6.1.2.1), the
rim's being the code times 25.4 mm; load indices and speed symbols of the sizes offered (UN Regulation No. 30, annex 4
and para. 2.29.3); RFC 9110 section 13 (If-None-Match, 304) and 12.5.5 (Vary); RFC 4180; the WHATWG Fetch standard, 3.2.
"""

import csv
import io
import json
import re
import threading
from collections.abc import Iterator
from typing import Any

import pytest

from tests.contract.callers import Json, Service, answered, asked, patiently
from tests.contract.http_wire import Answer, Server, head
from tests.support.cases import at, saloon

CHECK, COMPARE, SEARCH = (f"/v1/fitments/{name}" for name in ("check", "compare", "search"))
ORIGIN = "https://shop.example"
FROM_SHOP = b"Origin: " + ORIGIN.encode()
AXLES = ("front", "rear")
VEHICLE = saloon()["vehicle"]

_ON_HUB = {"bolt_circle": "5x112", "centre_bore_mm": 66.6, "load_rating_kg": 700}
RIMS = [{"size": size, **_ON_HUB} for size in ("7J x 16 H2 ET47", "7.5J x 17 H2 ET45", "8J x 18 H2 ET42")]
BAD = ("205/5O R17 93W XL", "hello", "225/45", "", "225/45 R17 9AW XL")
GOOD = tuple(
    f"{width}/{aspect} R{code} {service}"
    for width in range(185, 266, 10)
    for aspect in range(35, 61, 5)
    for code in (16, 17, 18)
    for service in ("91V", "94W XL")
)
# A bad one after every fiftieth, as they turn up in a shop's list.
STOCK = list(GOOD)
for _place, _text in enumerate(BAD):
    STOCK.insert(50 * (_place + 1), _text)

# UN Regulation No. 30, annex 4 (kg) and para. 2.29.3 (km/h).
MASS_KG = {"91": 615, "94": 670}
SPEED_KMH = {"V": 240, "W": 270}


def search_question(**more: object) -> Json:
    stock = [{"id": f"A-{place}", "size": text} for place, text in enumerate(STOCK)]
    return {"vehicle": VEHICLE, "rims": {"front": RIMS}, "stock": stock, **more}


def title(row: Json) -> str:
    fitted, rim = row["candidate"]["front"], RIMS[row["fitment"]["front"]["rim_index"]]
    return f"{fitted['tyre']['size']} on {rim['size']}"


def as_candidate(row: Json) -> Json:
    """Return a row of the search as `compare` takes it: the shop puts its own title on it."""
    return {**row["candidate"], "label": title(row)}


@pytest.fixture(scope="module")
def service() -> Iterator[Service]:
    """The service with a short queue, for pages of the shop."""
    with Service(cors_origins=ORIGIN, queue_length=1, retry_after_s=1, access_log=False) as running:
        yield running


@pytest.fixture(scope="module")
def found(service: Service) -> Any:
    return answered(service, SEARCH, search_question(limits={"stagger": "square"}, explain_first=20))


@pytest.fixture(scope="module")
def offers(found: Any) -> list[Json]:
    """The three best that are better in something than what is fitted, and that nothing else beats."""
    return [row for row in found["rows"] if row["not_bettered"] and row["gains"]][:3]


@pytest.fixture(scope="module")
def compared(service: Service, offers: list[Json]) -> Any:
    return answered(service, COMPARE, {"vehicle": VEHICLE, "candidates": [as_candidate(row) for row in offers]})


@pytest.fixture(scope="module")
def checked(service: Service, offers: list[Json]) -> list[Json]:
    return [answered(service, CHECK, {"vehicle": VEHICLE, "candidate": as_candidate(row)}) for row in offers]


def test_the_bad_entries_of_the_stock_are_named_by_their_places_and_no_other(found):
    places = [STOCK.index(text) for text in BAD]
    assert [each["pointer"] for each in found["refused"]] == [f"/stock/{place}/size" for place in places]
    assert [each["id"] for each in found["refused"]] == [f"A-{place}" for place in places]
    assert found["refused_count"] == len(BAD)


def test_three_offers_are_found_that_may_be_fitted(offers):
    assert [row["verdict"] for row in offers] == ["suitable"] * 3


def test_each_offer_names_an_article_of_the_stock_and_a_rim(offers):
    for row in offers:
        for axle in AXLES:
            named = row["fitment"][axle]
            assert STOCK[named["stock_index"]] == named["tyre"]
            assert named["stock_id"] == f"A-{named['stock_index']}"
            assert RIMS[named["rim_index"]] == row["candidate"][axle]["rim"]


MEASURED = {"dry_grip": "dry_grip_percent", "wet_margin": "wet_margin_percent"}


def test_each_row_gives_its_reasons_with_numbers_that_bear_them_out(found):
    rows = found["rows"]
    for row in rows:
        assert row["summary"]
        assert all(row["measures"][MEASURED[each]] > 0 for each in row["gains"] if each in MEASURED)
        assert all(row["measures"][MEASURED[each]] < 0 for each in row["losses"] if each in MEASURED)
    assert any(set(row["gains"]) & set(MEASURED) for row in rows)
    assert any(set(row["losses"]) & set(MEASURED) for row in rows)


def test_an_offer_with_conditions_says_each_and_what_would_settle_it(found):
    rows = found["rows"]
    conditional = [row for row in rows if row["verdict"] == "suitable_with_conditions"]
    assert len(conditional) > 3
    for row in conditional:
        for finding in row["findings"]:
            assert finding["message"]
            # The field itself, or the part of the candidate in which it is to be stated.
            assert at({"candidate": row["candidate"]}, finding["remedy"]["pointer"].rsplit("/", 1)[0]) is not None


def test_each_offer_is_as_tall_as_its_designation_says(offers):
    """The present 225/45 R17 is 431.8 + 2 x 101.25 mm; two decimals are shown."""
    present_mm = 17 * 25.4 + 2 * 225 * 0.45
    for row in offers:
        width, aspect, code = map(int, re.findall(r"\d+", row["fitment"]["front"]["tyre"])[:3])
        percent = 100.0 * ((code * 25.4 + 2 * width * aspect / 100.0) / present_mm - 1.0)
        # The section height is rounded to a whole millimetre: at most half of one at each side of both tyres.
        assert row["axles"]["front"]["overall_diameter_percent"] == pytest.approx(percent, abs=2.0 / present_mm * 100.0)
        assert abs(percent) < 1.5


def test_each_offer_carries_the_axles_and_is_fast_enough(offers):
    for row in offers:
        for axle in AXLES:
            index, symbol = re.fullmatch(r"\S+ R\d+ (\d+)([VW])(?: XL)?", row["fitment"][axle]["tyre"]).groups()
            assert SPEED_KMH[symbol] >= VEHICLE["max_speed_kmh"]
            assert 2 * MASS_KG[index] >= VEHICLE[axle]["max_axle_mass_kg"]


def test_the_comparison_ranks_the_offers_as_the_search_did(offers, compared):
    assert [row["label"] for row in compared["rows"]] == [title(row) for row in offers]


@pytest.mark.parametrize(
    "member",
    ["verdict", "measures", "gains", "losses", "axles", "vehicle", "findings", "finding_counts", "summary"],
)
def test_the_comparison_says_of_an_offer_what_the_search_said(offers, compared, member):
    assert [row[member] for row in compared["rows"]] == [row[member] for row in offers]


def test_the_check_of_an_offer_gives_the_verdict_of_search_and_comparison(offers, compared, checked):
    told = [each["verdict"] for each in checked]
    assert told == [row["verdict"] for row in offers] == [row["verdict"] for row in compared["rows"]]


def test_the_check_of_an_offer_gives_the_key_numbers_of_the_search(offers, checked):
    for row, single in zip(offers, checked, strict=True):
        for axle in AXLES:
            change, shown = single["axles"][axle]["change"], row["axles"][axle]
            # The comparison adds one number of its own to those of the check.
            assert set(shown) - set(change) == {"load_margin_percent"}
            assert {name: change[name] for name in shown if name in change} == {
                name: value for name, value in shown.items() if name in change
            }


def test_the_check_of_an_offer_gives_the_balance_of_the_search(offers, checked):
    told = ("understeer_gradient_change_deg_per_g", "direction", "degree")
    for row, single in zip(offers, checked, strict=True):
        assert [single["vehicle"]["balance"][name] for name in told] == [row["vehicle"][name] for name in told]


def test_the_check_of_an_offer_has_as_many_findings_of_each_kind(offers, checked):
    for row, single in zip(offers, checked, strict=True):
        outcomes = [each["outcome"] for each in single["findings"]]
        assert {kind: outcomes.count(kind) for kind in row["finding_counts"]} == row["finding_counts"]


def test_the_check_of_an_offer_asks_for_the_pressure_of_the_offer(offers, checked):
    for row, single in zip(offers, checked, strict=True):
        for axle in AXLES:
            asked_kpa = row["fitment"][axle]["pressure_kpa"]
            assert single["axles"][axle]["proposed"]["pressure_kpa"] == asked_kpa
            assert single["axles"][axle]["proposed"]["minimum_pressure_kpa"] <= asked_kpa


def test_the_check_of_an_offer_tells_the_customer_what_is_gained_and_lost(checked):
    assert all(each["trade_offs_text"] for each in checked)


# Under load


def heavy_question(offers: list[Json]) -> Json:
    """Return a comparison that takes long enough for others to queue behind it."""
    return {"vehicle": VEHICLE, "candidates": [as_candidate(row) for row in offers] * 100, "explain_first": 300}


@pytest.fixture(scope="module")
def rush(service: Service, offers: list[Json]) -> tuple[list[tuple[int, Answer]], list[Answer], list[Json]]:
    """Six clients at once, each with five questions: what each got in the end, every refusal, and the questions."""
    questions = [
        (COMPARE, heavy_question(offers)),
        (CHECK, {"vehicle": VEHICLE, "candidate": as_candidate(offers[0])}),
        (SEARCH, search_question()),
        (CHECK, {"vehicle": VEHICLE, "candidate": as_candidate(offers[1])}),
        (COMPARE, {"vehicle": VEHICLE, "candidates": [as_candidate(row) for row in offers]}),
    ]
    got: list[tuple[int, Answer]] = []
    refused: list[Answer] = []
    together = threading.Barrier(6)

    def client() -> None:
        together.wait(10)
        for number, (path, body) in enumerate(questions):
            answer, refusals = patiently(service, path, body, FROM_SHOP)
            got.append((number, answer))
            refused.extend(refusals)

    clients = [threading.Thread(target=client) for _ in range(6)]
    for each in clients:
        each.start()
    for each in clients:
        each.join()
    alone = [answered(service, path, body) for path, body in questions]
    return got, refused, alone


def test_no_answer_is_lost_in_the_rush(rush):
    got, _, alone = rush
    assert sorted(number for number, _ in got) == [number for number in range(len(alone)) for _ in range(6)]


def test_every_answer_in_the_rush_is_the_one_of_a_quiet_hour(rush):
    got, _, alone = rush
    assert all((answer.status, json.loads(answer.body)) == (200, alone[number]) for number, answer in got)


def test_the_full_queue_refuses_with_a_time_to_come_back_that_the_page_may_read(rush):
    _, refused, _ = rush
    # Two of six comparisons find a place, one at work and one waiting.
    assert len(refused) >= 1
    for answer in refused:
        assert (answer.status, answer.headers["retry-after"]) == (503, "1")
        assert answer.problem["type"] == "/problems/busy"
        assert answer.headers["access-control-allow-origin"] == ORIGIN
        assert "Retry-After" in answer.headers["access-control-expose-headers"]


# The page of the shop


@pytest.mark.parametrize(
    ("path", "method", "headers"),
    [
        (SEARCH, "POST", "content-type"),
        (CHECK, "POST", "content-type,x-api-key,x-request-id"),
        ("/v1/tables/load-index", "GET", "if-none-match"),
    ],
)
def test_the_browser_lets_the_page_ask(service: Service, path: str, method: str, headers: str) -> None:
    answer = service.send(
        head(
            "OPTIONS",
            path,
            FROM_SHOP,
            b"Access-Control-Request-Method: " + method.encode(),
            b"Access-Control-Request-Headers: " + headers.encode(),
        )
    )
    allowed = {name.strip().lower() for name in answer.headers["access-control-allow-headers"].split(",")}
    assert (answer.status, answer.headers["access-control-allow-origin"]) == (200, ORIGIN)
    assert method in answer.headers["access-control-allow-methods"]
    assert set(headers.split(",")) <= allowed


@pytest.mark.parametrize(
    ("body", "status"),
    [(saloon(), 200), ({}, 422)],
    ids=["an answer", "an error"],
)
def test_the_browser_lets_the_page_read(service: Service, body: Json, status: int) -> None:
    answer = asked(service, CHECK, body, FROM_SHOP)
    assert (answer.status, answer.headers["access-control-allow-origin"]) == (status, ORIGIN)
    assert "Origin" in answer.headers["vary"]


def test_the_browser_lets_the_page_read_a_failure() -> None:
    with Server(cors_origins=ORIGIN) as server:
        answer = server.get("/v1/broken", FROM_SHOP)
    assert (answer.status, answer.headers["access-control-allow-origin"]) == (500, ORIGIN)
    assert answer.problem["type"] == "/problems/failure"


def test_a_copy_of_the_comparison_is_kept_apart_by_form_and_origin(service: Service) -> None:
    answer = asked(service, COMPARE, {"vehicle": VEHICLE, "candidates": [{}]}, FROM_SHOP)
    assert {each.strip() for each in answer.headers["vary"].split(",")} == {"Accept", "Accept-Language", "Origin"}


KEPT = ["/v1/tables/load-index", "/v1/tables/rim-width", "/v1/rule-packs", "/v1/rule-packs/nl"]


@pytest.mark.parametrize("path", KEPT)
def test_a_table_or_pack_that_the_page_has_is_not_sent_again(service: Service, path: str) -> None:
    tag = service.get(path, FROM_SHOP).headers["etag"]
    again = service.get(path, FROM_SHOP, b"If-None-Match: " + tag.encode())
    assert (again.status, again.body, again.headers["etag"]) == (304, b"", tag)
    assert again.headers["access-control-allow-origin"] == ORIGIN


@pytest.mark.parametrize("path", KEPT)
def test_a_table_or_pack_that_the_page_has_of_another_edition_is_sent(service: Service, path: str) -> None:
    answer = service.get(path, FROM_SHOP, b'If-None-Match: "older"')
    assert (answer.status, answer.body) == (200, service.get(path).body)
    assert "ETag" in answer.headers["access-control-expose-headers"]


# The table for the category manager


def leaves(part: Json, prefix: str = "") -> Iterator[tuple[str, Any]]:
    """Yield each number, word and list of a row by the name of its column."""
    for name, value in part.items():
        if isinstance(value, dict):
            yield from leaves(value, f"{prefix}{name}.")
        else:
            yield prefix + name, value


@pytest.fixture(scope="module")
def listed(service: Service, offers: list[Json]) -> tuple[list[Json], list[dict[str, str]]]:
    """The rows of one comparison, an unreadable candidate among them, as JSON and as CSV."""
    unreadable = {**as_candidate(offers[0]), "label": "unreadable; a typing error, or two"}
    unreadable["front"] = {**unreadable["front"], "tyre": {"size": "225/4S R17"}}
    candidates = [as_candidate(row) for row in offers]
    question = {"vehicle": VEHICLE, "candidates": [candidates[0], unreadable, *candidates[1:]]}
    answer = asked(service, COMPARE, question, b"Accept: text/csv")
    assert answer.headers["content-type"] == "text/csv; charset=utf-8"
    lines = csv.DictReader(io.StringIO(answer.body.decode("utf-8"), newline=""), strict=True)
    found = answered(service, COMPARE, question)
    return [*found["rows"], *found["refused"]], list(lines)


def test_the_table_has_the_rows_of_the_answer_in_their_order(listed):
    rows, lines = listed
    assert [line["label"] for line in lines] == [row["label"] for row in rows]
    assert len(lines) == 4


def test_every_number_of_the_answer_stands_in_the_table(listed):
    rows, lines = listed
    for row, line in zip(rows[:-1], lines, strict=False):
        numbers = {
            name: value
            for name, value in leaves(row)
            if isinstance(value, (int, float)) and not isinstance(value, bool) and "finding_counts" not in name
        }
        assert len(numbers) > 30
        assert {name: float(line[name]) for name in numbers} == numbers


def test_every_word_of_the_answer_stands_in_the_table(listed):
    rows, lines = listed
    for row, line in zip(rows[:-1], lines, strict=False):
        words = {name: value for name, value in leaves(row) if isinstance(value, str)}
        assert {"label", "verdict", "change", "summary", "vehicle.direction", "vehicle.degree"} == set(words)
        assert {name: line[name] for name in words} == words
        assert [line["gains"], line["losses"]] == ["; ".join(row["gains"]), "; ".join(row["losses"])]
        assert line["not_bettered"] == {True: "true", False: "false"}[row["not_bettered"]]


def test_the_table_says_of_an_unreadable_candidate_what_is_wrong_with_it(listed):
    rows, lines = listed
    (fault,) = rows[-1]["errors"]
    assert lines[-1]["errors"] == f"{fault['pointer']}: {fault['detail']}"
    assert (lines[-1]["rank"], lines[-1]["index"]) == ("", "1")


def test_no_line_of_the_table_has_more_cells_than_the_header(listed):
    _, lines = listed
    # DictReader keeps what is beyond the header under None and fills what is missing with None.
    assert not any(None in line or None in line.values() for line in lines)
