"""Starts the service on a free port, posts every request of this folder, prints the answers as tables, stops it."""

from __future__ import annotations

import json
import os
import signal
import subprocess
import sys
import time
import urllib.error
import urllib.request
from collections.abc import Iterator
from contextlib import contextmanager
from http import HTTPStatus
from pathlib import Path
from typing import Any, NamedTuple

from combinations import COMBINATIONS, HEADS, LEGEND, WIDTHS, cells

HERE = Path(__file__).parent
sys.path.insert(0, str(HERE.parent))

from service.terminal.text_table import lines_of  # noqa: E402 - a script beside the package finds it only now

START_PATIENCE_S = 30.0
ANSWER_PATIENCE_S = 20.0
WORDS = {
    "suitable": "fits",
    "suitable_with_conditions": "fits with conditions",
    "undetermined": "not known yet",
    "not_recommended": "we advise against it",
    "unsuitable": "does not fit",
}
# How many findings came out how; what is open decides nothing, what is to be settled does.
COUNTS = {
    "not_met": "against it",
    "not_recommended": "advised against",
    "to_settle": "to settle",
    "advisory": "to mind",
    "open": "open",
    "met": "met",
}
# One car, three candidates that the law of one place takes otherwise than that of another.
CANDIDATES = ("further-out", "taller-tyre", "exact-speedometer")

# Questions about many fitments: title, story, operation.
MANY = (
    ("Widths of a saloon, compared", "widths-of-a-saloon", "compare"),
    ("Found in the stock of a shop, for a car with 205/55 R16", "stock-of-a-shop", "search"),
)
MANY_HEADS = ("change", "verdict", "set [kPa]", "what stands against it")

Json = dict[str, Any]


class Answer(NamedTuple):
    """What came back."""

    status: int
    media_type: str
    body: bytes

    @property
    def data(self) -> Json:
        """Return the body as plain data."""
        found: Json = json.loads(self.body)
        return found


class Service:
    """The running service."""

    def __init__(self, port: int) -> None:
        self._root = f"http://127.0.0.1:{port}"

    def ask(self, path: str, body: object = None) -> Answer:
        """Return the answer to a POST of the body, or to a GET without one."""
        content = None if body is None else json.dumps(body).encode()
        request = urllib.request.Request(self._root + path, content, {"Content-Type": "application/json"})
        try:
            with urllib.request.urlopen(request, timeout=ANSWER_PATIENCE_S) as got:
                return Answer(got.status, got.headers.get_content_type(), got.read())
        except urllib.error.HTTPError as error:
            return Answer(error.code, error.headers.get_content_type(), error.read())


@contextmanager
def running() -> Iterator[Service]:
    """Give the service, ready; it is stopped however the block ends."""
    environ = {name: value for name, value in os.environ.items() if not name.startswith(("FITMENT_", "PORT"))}
    process = subprocess.Popen(
        [sys.executable, "-m", "service", "serve", "--port", "0"],
        cwd=HERE.parent,
        env=environ | {"FITMENT_ACCESS_LOG": "false", "FITMENT_DRAIN_S": "0"},
        stdout=subprocess.PIPE,
        text=True,
    )
    try:
        service = Service(_port(process))
        _wait(service)
        yield service
    finally:
        process.send_signal(signal.SIGTERM)
        try:
            process.communicate(timeout=ANSWER_PATIENCE_S)
        except subprocess.TimeoutExpired:
            process.kill()


def _port(process: subprocess.Popen[str]) -> int:
    """Return the port that the service says it listens on."""
    for line in process.stdout or ():
        logged = json.loads(line)
        if logged["event"] == "serving":
            return int(logged["port"])
    sys.exit("the service did not start")


def _wait(service: Service) -> None:
    end = time.monotonic() + START_PATIENCE_S
    while time.monotonic() < end:
        try:
            if service.ask("/health/ready").status == HTTPStatus.OK:
                return
        except urllib.error.URLError:
            pass
        time.sleep(0.05)
    sys.exit("the service did not become ready")


def read(story: str, operation: str = "check") -> Json:
    """Return the request of a story."""
    asked: Json = json.loads((HERE / f"{story}.{operation}.json").read_text(encoding="utf-8"))
    return asked


def worst(finding: Json) -> str:
    """Return a finding with its number and limit, in one line."""
    where = "" if finding["axle"] == "vehicle" else f", {finding['axle']}"
    unit = f" {finding['unit']}" if "unit" in finding else ""
    told = []
    if "measured" in finding or finding["outcome"] == "not_assessed":
        told.append(f"{finding['measured']:g}{unit}" if "measured" in finding else "not known")
    if "limit" in finding:
        told.append(f"limit {finding['limit']:g}{unit}")
    today = ", as it is today" if finding.get("already") else ""
    return f"{finding['code']}{where}" + (f": {', '.join(told)}" if told else "") + today


def counted(findings: list[Json]) -> str:
    """Return how many findings came out how, worst first."""
    kinds = [_kind(each) for each in findings]
    return ", ".join(f"{kinds.count(kind)} {words}" for kind, words in COUNTS.items() if kind in kinds)


def _kind(finding: Json) -> str:
    if finding["outcome"] != "not_assessed":
        return str(finding["outcome"])
    return "to_settle" if finding["decides"] else "open"


def named(row: Json) -> str:
    """Return what a row of many candidates is called: by its label, or by the tyres that were found."""
    if "label" in row:
        return str(row["label"])
    return " / ".join(row["fitment"][axle]["tyre"] for axle in ("front", "rear"))


def _several(operation: str, data: Json) -> tuple[str, str, str]:
    """Return the answer to a question about several fitments at once in the same three parts."""
    if operation == "plan":
        planned = data["combinations"]
        first = ", ".join(f"{each['label']} ({WORDS[each['verdict']]})" for each in planned[:2])
        return f"{len(planned)} combinations", f"first: {first}", ""
    rims = data["smallest_set"]["rims"]
    named_rims = ", ".join(f"{each['width_in']:g} x {each['diameter_in']:g} ET{each['offset_mm']:g}" for each in rims)
    return f"{len(rims)} rims do", f"the fewest: {named_rims}", ""


def told(operation: str, answer: Answer) -> tuple[str, str, str]:
    """Return an answer as a verdict, what stands behind it, and how many findings came out how."""
    if answer.status != HTTPStatus.OK:
        fault = (answer.data.get("errors") or [{"pointer": "", "detail": answer.data["detail"]}])[0]
        return f"refused ({answer.status})", f"{fault['pointer']}: {fault['detail']}", ""
    if operation == "check":
        findings = answer.data["findings"]
        reason = "nothing" if _kind(findings[0]) in ("met", "open") else worst(findings[0])
        return WORDS[answer.data["verdict"]], reason, counted(findings)
    if operation in ("rims", "plan"):
        return _several(operation, answer.data)
    if answer.media_type == "application/json":
        rows = answer.data["rows"]
        if not rows:
            return "no rows", answer.data["why_none"], ""
        return f"{len(rows)} rows", f"best: {named(rows[0])} ({WORDS[rows[0]['verdict']]})", ""
    return "done", f"{answer.media_type}, {len(answer.body) / 1024:.0f} KiB", ""


def stories(service: Service) -> list[tuple[str, ...]]:
    """Return a row for each request of this folder."""
    rows: list[tuple[str, ...]] = []
    for path in sorted(HERE.glob("*.json")):
        story, operation, _ = path.name.split(".")
        answer = service.ask(f"/v1/fitments/{operation}", read(story, operation))
        if answer.status >= HTTPStatus.INTERNAL_SERVER_ERROR:
            sys.exit(f"{path.name}: {answer.status}")
        rows.append((story if operation == "check" else f"{story} ({operation})", *told(operation, answer)))
    return rows


def places(service: Service) -> list[tuple[str, ...]]:
    """Return a row for each rule pack: the verdict on the same candidates, and what its law says against them."""
    rows: list[tuple[str, ...]] = []
    for pack in service.ask("/v1/rule-packs").data["rule_packs"]:
        cells = []
        for story in CANDIDATES:
            found = service.ask("/v1/fitments/check", read(story) | {"rule_pack": pack["id"]}).data
            law = [
                each
                for each in found["findings"]
                if each["code"].startswith("law.") and _kind(each) not in ("met", "open")
            ]
            cells.append(WORDS[found["verdict"]] + (f"; {worst(law[0])}" if law else ""))
        rows.append((f"{pack['id']} ({pack['title']})", *cells))
    return rows


def many(service: Service, story: str, operation: str) -> list[tuple[str, ...]]:
    """Return a row for each candidate of a comparison or result of a search: what it changes and what it takes."""
    found = service.ask(f"/v1/fitments/{operation}", read(story, operation)).data
    rows: list[tuple[str, ...]] = []
    for row in found["rows"]:
        if "errors" in row:
            rows.append((row["label"], "not read", "", row["errors"][0]["detail"]))
            continue
        pressures = row.get("set_pressure_kpa", {})
        to_set = " / ".join(f"{pressures[axle]:g}" if axle in pressures else "-" for axle in ("front", "rear"))
        what = row.get("reason", "")
        if "first_remedy" in row:
            what = f"{what} To settle it: {row['first_remedy']}."
        rows.append((row["change"], WORDS[row["verdict"]], to_set, what))
    return rows


def left_out(service: Service, story: str) -> list[tuple[str, ...]]:
    """Return a row for each reason for which a search leaves pairs of tyres out."""
    pairs = service.ask("/v1/fitments/search", read(story, "search")).data["sieves"]["pairs"]
    return [
        (f"{each['count']}", each["text"], "by default" if each["by_default"] else "") for each in pairs["removed_by"]
    ]


def combinations(service: Service) -> list[tuple[str, ...]]:
    """Return a row for each combination of widths: what it does on the road."""
    asked = [read(story) for story in COMBINATIONS]
    return [cells(each, service.ask("/v1/fitments/check", each).data) for each in asked]


def table(title: str, heads: tuple[str, ...], widths: tuple[int, ...], rows: list[tuple[str, ...]]) -> None:
    """Print a table under its title."""
    print("\n".join(["", title, "", *lines_of(tuple(zip(heads, widths, strict=True)), rows)]))


def main() -> None:
    """Print the tables."""
    with running() as service:
        table(
            "Stories, each a file in demo_requests (a check where nothing else is said)",
            ("story", "verdict", "what speaks against it most", "findings"),
            (34, 20, 36, 24),
            stories(service),
        )
        table(
            "The same three candidates under every rule pack",
            ("rule pack", *CANDIDATES),
            (27, 29, 29, 29),
            places(service),
        )
        table(
            "Five combinations on a saloon that has 225 in front and 255 at the rear",
            HEADS,
            WIDTHS,
            combinations(service),
        )
        for title, story, operation in MANY:
            table(title, MANY_HEADS, (34, 20, 11, 49), many(service, story, operation))
        table(
            "What the search of the shop's stock leaves out of the pairs of front and rear tyres",
            ("pairs", "for", ""),
            (7, 70, 10),
            left_out(service, "stock-of-a-shop"),
        )
    print(f"\n{LEGEND}")


if __name__ == "__main__":
    main()
