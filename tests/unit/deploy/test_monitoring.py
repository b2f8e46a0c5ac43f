"""What is watched: every number that a rule, a chart or the autoscaler asks for is one that the service gives.

References: Prometheus documentation, "Querying basics" (names, matchers, `by`); the operator's ServiceMonitor and
PrometheusRule (from memory: no schema of theirs is packed here); Grafana's dashboard JSON, the same.
"""

import json
import re
from pathlib import Path
from typing import Any

import kubernetes_validate
import pytest
import yaml
from fastapi.testclient import TestClient
from prometheus_client.parser import text_string_to_metric_families

from service.app import create_app
from service.settings import Settings

ROOT = Path(__file__).parents[3]
DEPLOY = ROOT / "deploy"
MONITORING = DEPLOY / "monitoring"
STORY = ROOT / "demo_requests" / "load-fails-at-top-speed.check.json"
# What the scrape adds to each series, beside what the service says.
SCRAPED = {"job", "namespace", "pod", "instance"}
WORDS = {"by", "and", "or", "unless", "on", "le"}


def read(path: Path) -> dict[str, Any]:
    resource: dict[str, Any] = yaml.safe_load(path.read_text(encoding="utf-8"))
    return resource


def rules() -> list[dict[str, Any]]:
    (group,) = read(MONITORING / "alerts.yaml")["spec"]["groups"]
    found: list[dict[str, Any]] = group["rules"]
    return found


def panels() -> list[dict[str, Any]]:
    found: list[dict[str, Any]] = json.loads((MONITORING / "dashboard.json").read_text(encoding="utf-8"))["panels"]
    return found


def queue_scaler() -> dict[str, Any]:
    return read(MONITORING / "autoscaler_by_queue.yaml")


EXPRESSIONS = [rule["expr"] for rule in rules()] + [query["expr"] for panel in panels() for query in panel["targets"]]


def names_in(expression: str) -> set[str]:
    """Return the metrics that an expression names: what is neither a function, a label nor a number."""
    bare = re.sub(r"\{[^}]*\}|\[[^]]*\]|\bby \([^)]*\)", " ", expression)
    return set(re.findall(r"\b[a-z][a-z0-9_]*\b(?!\s*\()", bare)) - WORDS


def labels_in(expression: str) -> set[str]:
    """Return the labels that an expression matches or sums by."""
    matched = re.findall(r'(\w+)\s*(?:=~|!=|!~|=)\s*"', expression)
    grouped = [name for group in re.findall(r"\bby \(([^)]*)\)", expression) for name in re.split(r",\s*", group)]
    return {*matched, *grouped}


@pytest.fixture(scope="module")
def given() -> dict[str, set[str]]:
    """Each series that the service gives, with its labels."""
    found: dict[str, set[str]] = {}
    with TestClient(create_app(Settings(access_log=False))) as client:
        client.post("/v1/fitments/check", content=STORY.read_bytes(), headers={"Content-Type": "application/json"})
        for family in text_string_to_metric_families(client.get("/metrics").text):
            for sample in family.samples:
                found.setdefault(sample.name, set()).update(sample.labels)
    return found


def test_names_and_labels_are_found_in_an_expression() -> None:
    expression = 'sum by (le, a) (rate(some_total{b="1", c=~"x"}[5m])) > 0.01 * other'
    assert names_in(expression) == {"some_total", "other"}
    assert labels_in(expression) == {"le", "a", "b", "c"}


@pytest.mark.parametrize("expression", EXPRESSIONS)
def test_every_number_asked_for_is_given_with_its_labels(expression: str, given: dict[str, set[str]]) -> None:
    names = names_in(expression)
    assert names
    assert names - given.keys() == set()
    assert labels_in(expression) - SCRAPED - set.union(*(given[name] for name in names)) == set()


def test_what_is_refused_or_lost_has_a_series_before_the_first_time() -> None:
    # Prometheus documentation, "Instrumentation", "Avoid missing metrics": `rate` sees no step of a series that begins.
    with TestClient(create_app(Settings(access_log=False))) as client:
        families = list(text_string_to_metric_families(client.get("/metrics").text))
    found = {(sample.name, *sample.labels.values()): sample.value for each in families for sample in each.samples}
    verdicts = ("suitable", "suitable_with_conditions", "undetermined", "not_recommended", "unsuitable")
    for series in (
        ("http_connections_refused_total", "too_many"),
        ("http_connections_refused_total", "unread"),
        ("rate_storage_failures_total",),
        *(("fitment_verdicts_total", verdict) for verdict in verdicts),
    ):
        assert found[series] == 0.0


@pytest.mark.parametrize("name", ["http_connections_refused_total", "rate_storage_failures_total", "log_lines_dropped"])
def test_what_is_refused_or_lost_is_alerted_and_drawn(name: str) -> None:
    assert any(name in names_in(rule["expr"]) for rule in rules())
    assert any(name in names_in(query["expr"]) for panel in panels() for query in panel["targets"])


def test_each_alert_has_a_name_and_says_what_to_do() -> None:
    assert [rule["alert"].removeprefix("FitmentService") for rule in rules()] == [
        *("Absent", "Fails", "Busy", "Full", "CountsAlone", "LosesLog")
    ]
    for rule in rules():
        assert rule["labels"]["severity"] in {"critical", "warning"}
        assert all(rule["annotations"][text].endswith(".") for text in ("summary", "description"))


def test_the_monitor_asks_the_service_where_its_numbers_are() -> None:
    spec, service = read(MONITORING / "service_monitor.yaml")["spec"], read(DEPLOY / "service.yaml")
    (endpoint,) = spec["endpoints"]
    assert service["metadata"]["labels"].items() >= spec["selector"]["matchLabels"].items()
    assert endpoint["port"] in [port["name"] for port in service["spec"]["ports"]]
    paths = [route.path for route in create_app(Settings(access_log=False)).routes if "GET" in (route.methods or ())]
    assert endpoint["path"] in paths


def test_the_job_asked_for_is_the_name_of_the_service() -> None:
    jobs = {job for expression in EXPRESSIONS for job in re.findall(r'job="([^"]*)"', expression)}
    assert jobs == {read(DEPLOY / "service.yaml")["metadata"]["name"]}


def test_the_queue_scales_by_a_number_that_is_given_and_that_a_full_queue_exceeds(given: dict[str, set[str]]) -> None:
    scaler = queue_scaler()
    (asked,) = [metric["pods"] for metric in scaler["spec"]["metrics"] if metric["type"] == "Pods"]
    assert asked["metric"]["name"] in given
    # One job runs beside those that wait.
    assert float(asked["target"]["averageValue"]) < Settings.model_construct().queue_length + 1


def test_the_scaler_by_queue_takes_the_place_of_the_other() -> None:
    own, other = queue_scaler(), read(DEPLOY / "autoscaler.yaml")
    assert own["metadata"] == other["metadata"]
    assert own["spec"]["scaleTargetRef"] == other["spec"]["scaleTargetRef"]
    assert all(metric in own["spec"]["metrics"] for metric in other["spec"]["metrics"])
    assert kubernetes_validate.validate(own, "1.32", strict=True)


def test_what_is_applied_together_is_there() -> None:
    together = read(MONITORING / "kustomization.yaml")
    (dashboard,) = together["configMapGenerator"]
    named = {*together["resources"], *dashboard["files"], "kustomization.yaml", "autoscaler_by_queue.yaml"}
    assert named == {path.name for path in MONITORING.iterdir()}
    # Without the operator its kinds are unknown, and the rest must be applied all the same.
    assert not [name for name in read(DEPLOY / "kustomization.yaml")["resources"] if "monitoring" in name]


def test_no_two_charts_lie_on_one_another() -> None:
    places = [(panel["gridPos"]["x"], panel["gridPos"]["y"]) for panel in panels()]
    assert len(set(places)) == len(places)
    assert len({panel["id"] for panel in panels()}) == len(places)
