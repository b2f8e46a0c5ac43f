"""A booking system in small: asks the service through a client made from its document, and says what it learnt."""

import json
import sys

from fitment_client import Client
from fitment_client.api.designations import read_tyre_designation
from fitment_client.api.fitments import (
    check_fitment,
    compare_fitments,
    compare_fitments_csv,
    draw_fitment,
    search_fitments,
)
from fitment_client.api.tables_and_rules import list_rule_packs, read_table
from fitment_client.models import (
    Assessment,
    Candidate,
    CheckRequest,
    CompareRequest,
    OfferedRim,
    OfferedRims,
    Problem,
    SearchRequest,
    StockLine,
    TableName,
)


def drive(client: Client, story: str) -> dict[str, object]:
    asked = CheckRequest.from_dict(json.loads(story))
    check = check_fitment.sync(client=client, body=asked)
    assert isinstance(check, Assessment)
    verdict: str = check.verdict
    worst = check.findings[0]
    drawing = draw_fitment.sync(client=client, body=asked)
    assert drawing.startswith("<svg")
    good = Candidate.from_dict(asked.candidate.to_dict())
    asked.candidate.front.tyre.size = "no tyre"
    bad = asked.candidate
    many = CompareRequest(vehicle=asked.vehicle, candidates=[good, bad], rule_pack=asked.rule_pack)
    compared = compare_fitments.sync(client=client, body=many)
    offer = SearchRequest(
        vehicle=asked.vehicle,
        rims=OfferedRims(front=[OfferedRim.from_dict(good.front.rim.to_dict())]),
        stock=[StockLine(size="205/55 R16 94W XL"), StockLine(size="205/55 R16 91V")],
        rule_pack=asked.rule_pack,
    )
    found = search_fitments.sync(client=client, body=offer).rows
    # What a later version may answer: a word and a member that this client does not know.
    future = Assessment.from_dict(check.to_dict() | {"verdict": "later", "later": {"more": 1}})
    table = compare_fitments_csv.sync(client=client, body=CompareRequest(vehicle=asked.vehicle, candidates=[good]))
    refused = check_fitment.sync_detailed(client=client, body=asked)
    assert isinstance(refused.parsed, Problem)
    return {
        "verdict": verdict,
        "worst": [worst.code, worst.outcome, worst.measured, worst.limit],
        "status": refused.status_code,
        "refused": [[fault.pointer, fault.code, fault.position] for fault in refused.parsed.errors],
        "rows": [row.verdict for row in compared.rows],
        "refused_rows": [[row.index, row.errors[0].pointer] for row in compared.refused],
        "found": [row.fitment.front.tyre for row in found],
        "future": future.verdict,
        "carried": worst.parameters["carried"].value,
        "header": table.split(",", 2)[:2],
        "packs": [pack.id for pack in list_rule_packs.sync(client=client).rule_packs],
        "load_index": read_tyre_designation.sync(client=client, text="205/55 R16 91V").load_index,
        "table_rows": len(read_table.sync(name=TableName.SPEED_SYMBOL, client=client).rows),
    }


with Client(base_url=sys.argv[1]) as opened:
    sys.stdout.write(json.dumps(drive(opened, sys.argv[2])))
