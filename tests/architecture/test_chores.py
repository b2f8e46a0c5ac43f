"""What runs outside `make` runs the same: the workflow, the hooks before a commit, the steps of a release."""

import re
from pathlib import Path

import yaml

ROOT = Path(__file__).parents[2]
MAKEFILE = (ROOT / "Makefile").read_text(encoding="utf-8")
# The recipes of `lint` and of `test`.
LINT, TEST = (
    [line.strip().replace("$(PY)", ".venv/bin/python") for line in found.splitlines()]
    for found in re.findall(r"^(?:lint|test): .*\n((?:\t.*\n)+)", MAKEFILE, re.MULTILINE)[::-1]
)


def read(name):
    return yaml.safe_load((ROOT / name).read_text(encoding="utf-8"))


def test_the_workflow_runs_the_tests_and_may_change_nothing():
    workflow = read(".github/workflows/test.yml")
    assert workflow["permissions"] == {"contents": "read"}
    (job,) = workflow["jobs"].values()
    assert job["steps"][-1] == {"run": "make test"}


def test_the_workflow_is_started_by_every_change():
    # YAML 1.1 reads the bare word `on` as true.
    assert set(read(".github/workflows/test.yml")[True]) == {"push", "pull_request"}


def test_the_hooks_are_the_lines_of_make_lint_and_the_check_of_the_document():
    (local,) = read(".pre-commit-config.yaml")["repos"]
    assert local["repo"] == "local"
    assert [hook["entry"] for hook in local["hooks"]] == [*LINT, *(line for line in TEST if "openapi" in line)]


def test_every_chore_that_developers_are_told_of_exists():
    text = "".join((ROOT / name).read_text(encoding="utf-8") for name in ("DEVELOPERS.md", "SECURITY.md", "README.md"))
    told = set(re.findall(r"`make ([a-z]+)", text))
    assert told >= {"test", "lint", "dist", "audit", "sbom"}
    assert told - set(re.findall(r"^([a-z]+):", MAKEFILE, re.MULTILINE)) == set()


def test_the_steps_of_a_release_are_named_in_their_order():
    steps = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8").split("## How to release", 1)[1].split("\n## ")[0]
    order = [steps.index(word) for word in ("CHANGELOG.md", "git tag", "make dist", "docker build", "make sbom")]
    assert order == sorted(order)
