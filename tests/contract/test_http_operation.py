"""What an operator sees: metrics that cannot be made to grow, logs without payload and keys, the documentation page.

Reference: the Prometheus text exposition format.
"""

import hashlib
import json
import re

from prometheus_client.parser import text_string_to_metric_families

from tests.contract.http_wire import VALID, Server, head


def series(server: Server) -> dict[str, float]:
    text = server.get("/metrics").body.decode()
    return {
        f"{sample.name}{json.dumps(sample.labels, sort_keys=True)}": sample.value
        for family in text_string_to_metric_families(text)
        for sample in family.samples
    }


def test_requests_are_counted_by_template_status_and_outcome(server: Server) -> None:
    labels = {"route": "/v1/echo", "method": "POST", "status": "200", "outcome": "answered"}
    name = f"http_requests_total{json.dumps(labels, sort_keys=True)}"
    before = series(server).get(name, 0.0)
    server.post("/v1/echo", VALID)
    assert series(server)[name] == before + 1.0


def test_verdicts_are_counted(server: Server) -> None:
    before = series(server).get('fitment_verdicts_total{"verdict": "suitable"}', 0.0)
    server.get("/v1/verdict")
    assert series(server)['fitment_verdicts_total{"verdict": "suitable"}'] == before + 1.0


def test_wrong_paths_and_methods_make_no_series(server: Server) -> None:
    server.get("/wrong")
    server.send(head("PROPFIND", "/wrong"))
    before = set(series(server))
    for number in range(300):
        server.get(f"/wrong/{number}")
    server.send(head("REPORT", "/wrong"))
    server.send(head("LOCK", "/wrong"))
    assert set(series(server)) == before


def test_the_build_is_named(server: Server) -> None:
    assert any(name.startswith("fitment_build_info") for name in series(server))


def test_the_log_has_a_line_for_each_request_and_nothing_that_was_sent() -> None:
    key = "a-key-that-must-not-be-logged"
    with Server(api_keys="shop:" + hashlib.sha256(key.encode()).hexdigest()) as server:
        lines = (b"X-API-Key: " + key.encode(), b"X-Request-ID: mine")
        server.get("/v1/echo?text=hidden-in-the-query", *lines)
        server.post("/v1/echo", VALID.replace(b"}}", b', "label": "hidden-in-the-body"}}'), *lines)
        server.get("/v1/broken", *lines)
        _, logged = server.stop()
    requests = [line for line in logged if line["event"] == "request"]
    assert [(line["route"], line["status"], line["request_id"]) for line in requests] == [
        ("/v1/echo", 200, "mine"),
        ("/v1/echo", 200, "mine"),
        ("/v1/broken", 500, "mine"),
    ]
    assert not re.search("hidden|secret|must-not", json.dumps(logged))


def test_a_failure_is_logged_with_the_place_it_came_from() -> None:
    with Server() as server:
        server.get("/v1/broken")
        _, logged = server.stop()
    failures = [line for line in logged if line["event"] == "failure"]
    assert failures[0]["error"] == "ValueError"
    assert failures[0]["trace"][-1].endswith(" broken")


def test_the_documentation_page_asks_nobody_else(server: Server) -> None:
    page = server.get("/docs")
    used = re.findall(r'(?:src|href)="([^"]*)"', page.body.decode())
    assert used == ["docs/page.css", "docs/page.js", "docs/start.js"]
    assert [server.get(f"/{path}").status for path in used] == [200, 200, 200]


def test_the_openapi_document_is_served(server: Server) -> None:
    assert json.loads(server.get("/openapi.json").body)["openapi"].startswith("3.1")
