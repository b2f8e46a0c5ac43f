"""Starts the service on a free port, posts every request of this folder, prints the answers as tables, stops it."""

from __future__ import annotations

import sys
from http import HTTPStatus

from local_service import HERE, Answer, Json, Service, read, running
from printed_table import table

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
# One saloon, staggered 225 and 255 now: what other widths do to it.
COMBINATIONS = (
    "staggered-same-sizes",
    "staggered-one-step-wider",
    "square-all-round",
    "narrow-all-round",
    "wide-at-the-back-only",
)
# One car, three candidates that the law of one place takes otherwise than that of another.
CANDIDATES = ("further-out", "taller-tyre", "exact-speedometer")
# Questions about many fitments: title, story, operation.
MANY = (
    ("Widths of a saloon, compared", "widths-of-a-saloon", "compare"),
    ("Found in the stock of a shop, for a car with 205/55 R16", "stock-of-a-shop", "search"),
)
MANY_HEADS = ("change", "verdict", "set [kPa]", "what stands against it")


def worst(finding: Json) -> str:
    """Return a finding with its number and limit, in one line."""
    where = "" if finding["axle"] == "vehicle" else f", {finding['axle']}"
    unit = f" {finding['unit']}" if "unit" in finding else ""
    told = []
    if "measured" in finding or finding["outcome"] == "not_assessed":
        told.append(f"{finding['measured']:g}{unit}" if "measured" in finding else "not known")
    if "limit" in finding:
        told.append(f"limit {finding['limit']:g}{unit}")
    today = ", as it is today" if finding["already"] else ""
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


def told(operation: str, answer: Answer) -> tuple[str, str, str]:
    """Return an answer as a verdict, what stands behind it, and how many findings came out how."""
    if answer.status != HTTPStatus.OK:
        fault = (answer.data.get("errors") or [{"pointer": "", "detail": answer.data["detail"]}])[0]
        return f"refused ({answer.status})", f"{fault['pointer']}: {fault['detail']}", ""
    if operation == "check":
        findings = answer.data["findings"]
        reason = "nothing" if _kind(findings[0]) in ("met", "open") else worst(findings[0])
        return WORDS[answer.data["verdict"]], reason, counted(findings)
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
    """Return a row for each combination of widths: balance and the onset of aquaplaning."""
    rows: list[tuple[str, ...]] = []
    for story in COMBINATIONS:
        asked = read(story)
        found = service.ask("/v1/fitments/check", asked).data
        balance = found["vehicle"]["balance"]
        onset = [found["axles"][axle]["change"]["aquaplaning_onset_percent"] for axle in ("front", "rear")]
        rows.append(
            (
                " / ".join(asked["candidate"][axle]["tyre"]["size"].split()[0] for axle in ("front", "rear")),
                balance["direction"].replace("_", " "),
                balance["degree"],
                _band(balance["understeer_gradient_change_deg_per_g"], 2),
                *(_band(each, 0) for each in onset),
            )
        )
    return rows


def _band(estimate: dict[str, float], digits: int) -> str:
    value, low, high = (f"{estimate[name] + 0.0:+.{digits}f}" for name in ("value", "low", "high"))
    return f"{value} ({low} to {high})"


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
            ("front / rear", "balance", "degree", "deg/g (band)", "floats, front [%]", "floats, rear [%]"),
            (15, 18, 11, 22, 20, 20),
            combinations(service),
        )
        for title, story, operation in MANY:
            table(title, MANY_HEADS, (38, 20, 9, 44), many(service, story, operation))
        table(
            "What the search of the shop's stock leaves out of the pairs of front and rear tyres",
            ("pairs", "for", ""),
            (7, 70, 10),
            left_out(service, "stock-of-a-shop"),
        )
    print("\nGradient: positive is towards understeer. Floats: change of the aquaplaning speed, negative is lower.")


if __name__ == "__main__":
    main()
