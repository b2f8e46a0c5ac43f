"""What an operator sees: metrics that cannot be made to grow, logs without payload and keys, the documentation page.

References: the Prometheus text exposition format; Prometheus documentation, "Metric and label naming" (from memory).
"""

import hashlib
import json
import re
import socket

import pytest
from prometheus_client.parser import text_string_to_metric_families

from tests.contract.http_wire import VALID, Server, head, post, receive, wait_until


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


def test_requests_in_flight_are_those_whose_answer_is_not_out() -> None:
    with Server() as server:
        assert series(server)["http_requests_in_flight{}"] == 1.0
        with server.connect() as connection:
            connection.sendall(post("/v1/toil", VALID.replace(b"120.5", b"50")))
            # Half a second of work; asked before it is done, this question is the second.
            wait_until(lambda: series(server)["work_queue_length{}"] > 0.0)
            assert series(server)["http_requests_in_flight{}"] == 2.0
            assert receive(connection).status == 200
        server.get("/v1/broken")
        with server.connect() as connection:
            connection.sendall(post("/v1/echo", VALID)[:-5])
            server.get("/health/live")
        # Neither a failure nor a caller who left half-way stays in the count.
        wait_until(lambda: series(server)["http_requests_in_flight{}"] == 1.0)


def test_names_keep_the_conventions_of_prometheus(server: Server) -> None:
    families = list(text_string_to_metric_families(server.get("/metrics").body.decode()))
    for family in families:
        assert family.documentation
        assert re.fullmatch("[a-z][a-z0-9_]*", family.name)
        # Base units, whole words: no name ends in another unit, and what counts up ends in `_total`.
        assert not re.search("milli|micro|minute|hour|kilo|mega|_(ms|us|kb|mb|kib|mib|percent)(_|$)", family.name)
        if family.type == "counter":
            assert all(sample.name.endswith(("_total", "_created")) for sample in family.samples)
        else:
            assert not family.name.endswith(("_total", "_count", "_sum"))


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
    assert [(line["route"], line["status"], line["request_id"], line["key"]) for line in requests] == [
        ("/v1/echo", 200, "mine", "shop"),
        ("/v1/echo", 200, "mine", "shop"),
        ("/v1/broken", 500, "mine", "shop"),
    ]
    assert not re.search("hidden|secret|must-not", json.dumps(logged))


@pytest.mark.parametrize("named", [b"mine", None])
def test_a_request_that_breaks_the_rules_is_logged_by_the_id_of_its_answer(named: bytes | None) -> None:
    lines = () if named is None else (b"X-Request-ID: " + named,)
    with Server() as server:
        answers = [
            server.send(
                head("POST", "/v1/echo", b"Transfer-Encoding: chunked", b"Content-Type: application/json", *lines)
                + b"zz\r\n"
            ),
            server.send(b"GET /v1/echo HTTP/1.1\r\n\r\n"),
        ]
        _, logged = server.stop()
    ids = [answer.headers["x-request-id"] for answer in answers]
    requests = [line for line in logged if line["event"] == "request"]
    assert [answer.status for answer in answers] == [400, 400]
    assert named is None or ids[0] == named.decode()
    assert [line["request_id"] for line in requests if line["status"] == 400] == ids
    # Half a body is a request whose end never came.
    assert [line["request_id"] for line in requests if line["status"] == 499] == ids[:1]


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
    assert {"docs/page.css", "docs/page.js", "docs/start.js"} <= set(used)
    assert not [path for path in used if ":" in path or path.startswith("/")]
    assert {path: server.get(f"/{path.removeprefix('./')}").status for path in used} == dict.fromkeys(used, 200)


def test_the_openapi_document_is_served(server: Server) -> None:
    assert json.loads(server.get("/openapi.json").body)["openapi"].startswith("3.1")


def test_metrics_on_a_port_of_their_own_are_to_be_had_there_alone_and_the_probes_at_both() -> None:
    with socket.create_server(("127.0.0.1", 0)) as free:
        port = free.getsockname()[1]
    with Server(metrics_port=port, trusted_hosts="shop.example", drain_s=0) as server:
        asked = ("/metrics", "/health/ready", "/v1/verdict", "/nowhere")
        host = b"Host: shop.example"
        assert [server.get(path, host).status for path in asked] == [404, 200, 200, 404]
        server.port = port
        # Collectors come by address.
        assert [server.get(path).status for path in asked] == [200, 200, 404, 404]


def test_a_log_that_nobody_reads_holds_up_no_answer() -> None:
    with Server(drain_s=0, read_log=False) as server:
        with server.connect() as connection, connection.makefile("rb") as answers:
            # Twice what the pipe holds and what may wait.
            for _ in range(30):
                connection.sendall(head("GET", "/health/live") * 100)
                for _ in range(100):
                    while b"HTTP/1.1 200 " not in answers.readline():
                        pass
        assert series(server)["log_lines_dropped{}"] > 1000
