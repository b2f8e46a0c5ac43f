"""`python -m tests.mutants`: break a seeded sample of lines and values, room by room, and list what no test noticed."""

from __future__ import annotations

import argparse
import os
import random
import re
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path
from typing import NamedTuple

from tests.mutants.data_values import data_sites
from tests.mutants.python_lines import Site, python_sites

ROOT = Path(__file__).parents[2]
COPIED = (
    "service",
    "tests",
    "demo_requests",
    "openapi",
    "deploy",
    "README.md",
    "DEVELOPERS.md",
    "pyproject.toml",
    "SECURITY.md",
)
# Longer than the tests of any room take; what hangs is noticed.
PATIENCE_S = 900


class Room(NamedTuple):
    """What is broken, and the tests that ought to notice, the quickest first."""

    broken: tuple[str, ...]
    tests: tuple[str, ...]


ROOMS = {
    "core": Room(("service/core/*.py",), ("unit/core", "unit/assessment", "reference")),
    "standards": Room(
        ("service/standards/*.py", "service/standards/data/*.csv"),
        ("unit/standards", "reference", "property/test_tables_laws.py"),
    ),
    "designation": Room(
        ("service/designation/*.py",), ("unit/designation", "reference", "property/test_designation_laws.py")
    ),
    "physics": Room(
        ("service/physics/*.py",),
        ("unit/physics", "reference", "property/test_physics_laws.py", "property/test_physics_driving_laws.py"),
    ),
    "packs": Room(("service/rules/packs/*.toml",), ("unit/rules", "reference", "unit/assessment")),
    "practice": Room(("service/rules/common_practice.toml",), ("unit/rules", "reference", "unit/assessment")),
    "rules": Room(("service/rules/*.py",), ("unit/rules", "reference", "unit/assessment")),
    "checks": Room(
        ("service/assessment/checks/*.py",),
        (
            "unit/assessment",
            "reference",
            "property/test_verdict_laws.py",
            "property/test_verdict_monotony.py",
            "property/test_verdict_silence.py",
            "property/test_verdict_job_card.py",
            "property/test_assessment_laws.py",
        ),
    ),
    "assessment": Room(
        ("service/assessment/*.py", "service/assessment/[abvl]*/*.py"),
        (
            "unit/assessment",
            "reference",
            "property/test_verdict_laws.py",
            "property/test_verdict_silence.py",
            "property/test_verdict_job_card.py",
            "property/test_both_paths.py",
            "property/test_rim_windows.py",
            "property/test_verdict_callers.py",
        ),
    ),
    "drawing": Room(("service/drawing/*.py",), ("unit/drawing",)),
    "page": Room(("service/page/*.py",), ("unit/page",)),
    "sweep": Room(("service/sweep/*.py",), ("unit/sweep",)),
    "api": Room(
        ("service/api/inbound/*.py", "service/api/render/*.py", "service/api/errors/*.py", "service/api/schemas/*.py"),
        (
            "unit/api",
            "contract/test_compare_http.py",
            "contract/test_detail.py",
            "contract/test_search_http.py",
            "contract/test_rims_http.py",
            "contract/test_plan_http.py",
            "contract/test_stories_curl.py",
            "contract/test_tyres_by_numbers.py",
            "contract/test_overrides.py",
            "contract/test_demo_requests.py",
            "contract/test_fields_have_effect.py",
            "contract/test_language.py",
            "contract/test_readme_stories.py",
        ),
    ),
    "words": Room(("service/locales/*.py",), ("unit/locales", "unit/core", "unit/assessment")),
    "terminal": Room(("service/terminal/*.py",), ("unit/terminal", "contract/test_terminal.py")),
}
# They hold what is written, not whether it is right: what only they notice counts as slipped.
BLIND = ("tests/unit/rules/test_golden.py", "tests/contract/test_openapi.py")


def sites_of(room: Room) -> list[Site]:
    """Return every place of a room that can be broken."""
    paths = sorted(path for pattern in room.broken for path in ROOT.glob(pattern))
    return [site for path in paths for site in (python_sites(path) if path.suffix == ".py" else data_sites(path))]


def noticed_by(site: Site, room: Room, tree: Path) -> str:
    """Return the first test that notices the broken place; empty where none does."""
    target = tree / site.path.relative_to(ROOT)
    whole = site.path.read_bytes()
    target.write_bytes(whole[: site.start] + site.after.encode() + whole[site.end :])
    command = [
        sys.executable,
        "-B",
        "-m",
        "pytest",
        "-x",
        "-q",
        "--no-header",
        "-p",
        "no:cacheprovider",
        "-p",
        "no:xdist",
    ]
    command += [f"--deselect={each}" for each in BLIND]
    command += [f"tests/{each}" for each in room.tests if (tree / "tests" / each).exists()]
    try:
        run = subprocess.run(
            command,
            cwd=tree,
            env=os.environ | {"PYTHONPATH": str(tree)},
            capture_output=True,
            text=True,
            check=False,
            timeout=PATIENCE_S,
        )
    except subprocess.TimeoutExpired:
        return "none ended"
    finally:
        target.write_bytes(whole)
    if run.returncode == 0:
        return ""
    told = re.findall(r"^(?:FAILED|ERROR) (\S+)", run.stdout, re.MULTILINE)
    return told[0] if told else "the start"


def main() -> None:
    """Break a sample of each room and print what was noticed."""
    asked = argparse.ArgumentParser(prog="python -m tests.mutants", description=__doc__)
    asked.add_argument("--seed", type=int, default=1)
    asked.add_argument("--sample", type=int, default=20, help="how many places of each room")
    asked.add_argument("--room", action="append", choices=ROOMS, help="only these rooms")
    options = asked.parse_args()
    with tempfile.TemporaryDirectory() as made:
        tree = Path(made)
        for name in COPIED:
            origin = ROOT / name
            (shutil.copytree if origin.is_dir() else shutil.copy)(origin, tree / name)
        for name in options.room or ROOMS:
            room = ROOMS[name]
            sites = sites_of(room)
            chosen = random.Random(f"{options.seed} {name}").sample(sites, min(options.sample, len(sites)))
            slipped = 0
            for site in sorted(chosen):
                by = noticed_by(site, room, tree)
                slipped += not by
                place = f"{site.path.relative_to(ROOT)}:{site.line}"
                change = f"{site.before[:60]!r} -> {site.after[:60]!r}"
                print(f"{'  noticed' if by else '! SLIPPED'}  {place}  {change}  {by}", flush=True)
            print(f"{name}: {len(chosen) - slipped} of {len(chosen)} noticed, {len(sites)} places\n", flush=True)


if __name__ == "__main__":
    main()
