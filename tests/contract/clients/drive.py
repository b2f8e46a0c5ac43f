"""A booking system in small: asks the service through a client made from its document, and says what it learnt."""

import json
import sys

from fitment_client import Client
from fitment_client.api.designations import read_tyre_designation
from fitment_client.api.fitments import check_fitment
from fitment_client.api.tables_and_rules import list_rule_packs, read_table
from fitment_client.models import Assessment, CheckRequest, Problem, ReadTableName, Verdict


def drive(client: Client, story: str) -> dict[str, object]:
    asked = CheckRequest.from_dict(json.loads(story))
    check = check_fitment.sync(client=client, body=asked)
    assert isinstance(check, Assessment)
    verdict: Verdict = check.verdict
    worst = check.findings[0]
    asked.candidate.front.tyre.size = "no tyre"
    refused = check_fitment.sync_detailed(client=client, body=asked)
    assert isinstance(refused.parsed, Problem)
    return {
        "verdict": verdict.value,
        "worst": [worst.code, worst.outcome.value, worst.measured, worst.limit],
        "status": refused.status_code,
        "refused": [[fault.pointer, fault.code.value, fault.position] for fault in refused.parsed.errors],
        "packs": [pack.id for pack in list_rule_packs.sync(client=client).rule_packs],
        "load_index": read_tyre_designation.sync(client=client, text="205/55 R16 91V").load_index,
        "rows": len(read_table.sync(name=ReadTableName.SPEED_SYMBOL, client=client).rows),
    }


with Client(base_url=sys.argv[1]) as opened:
    sys.stdout.write(json.dumps(drive(opened, sys.argv[2])))
