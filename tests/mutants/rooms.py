"""What is broken, and the tests that ought to notice."""

from __future__ import annotations

from typing import NamedTuple


class Room(NamedTuple):
    """The files of a room and the tests that hold it, as patterns below the root and below `tests`."""

    broken: tuple[str, ...]
    tests: tuple[str, ...]


_ASSESSED = ("unit/assessment/*", "reference/*", "property/test_verdict_*")
_OVER_HTTP = (
    "unit/api/*",
    "contract/test_[acdfl]*",
    "contract/test_o[rtv]*",
    "contract/test_p*",
    "contract/test_r[ei]*",
    "contract/test_sa*",
    "contract/test_se*",
    "contract/test_stories_*",
    "contract/test_t[ey]*",
)
ROOMS = {
    "core": Room(("service/core/*.py",), ("unit/core/*", "unit/assessment/*", "reference/*")),
    "standards": Room(
        ("service/standards/*.py", "service/standards/data/*"),
        ("unit/standards/*", "reference/*", "property/test_tables_laws.py"),
    ),
    "designation": Room(
        ("service/designation/*.py",), ("unit/designation/*", "reference/*", "property/test_designation_laws.py")
    ),
    "physics": Room(("service/physics/*.py",), ("unit/physics/*", "reference/*", "property/test_physics_*laws.py")),
    "packs": Room(("service/rules/packs/*.toml",), ("unit/rules/*", "reference/*", "unit/assessment/*")),
    "practice": Room(("service/rules/common_practice.toml",), ("unit/rules/*", "reference/*", "unit/assessment/*")),
    "rules": Room(("service/rules/*.py",), ("unit/rules/*", "reference/*", "unit/assessment/*")),
    "checks": Room(("service/assessment/checks/*.py",), (*_ASSESSED, "property/test_assessment_laws.py")),
    "law": Room(("service/assessment/law/*.py",), _ASSESSED),
    "view": Room(
        ("service/assessment/*.py", "service/assessment/view/*.py"),
        (*_ASSESSED, "property/test_both_paths.py", "unit/test_assess_in_process.py"),
    ),
    "answer": Room(("service/assessment/answer/*.py",), _ASSESSED),
    "batch": Room(
        ("service/assessment/batch/*.py",),
        (
            *_ASSESSED,
            "property/test_both_paths.py",
            "property/test_rim_windows.py",
            "property/test_many_vehicles.py",
            "contract/test_rims_http.py",
            "contract/test_plan_http.py",
        ),
    ),
    "drawing": Room(("service/drawing/*.py",), ("unit/drawing/*",)),
    "page": Room(("service/page/[!pr]*.py", "service/page/rendering.py"), ("unit/page/*",)),
    "sweep": Room(("service/sweep/*.py",), ("unit/sweep/*",)),
    "inbound": Room(("service/api/inbound/*.py", "service/api/errors/*.py", "service/api/schemas/*.py"), _OVER_HTTP),
    "render": Room(("service/api/render/*.py",), _OVER_HTTP),
    "report": Room(
        ("service/page/report*.py", "service/page/plan_report.py"),
        ("unit/page/*", "contract/test_plan_http.py", "contract/test_problem_pages.py"),
    ),
    "routers": Room(
        ("service/*.py", "service/api/routers/*.py", "service/api/contract/*.py"),
        (*_OVER_HTTP, "unit/test_*.py", "contract/test_http_*", "contract/test_mea*"),
    ),
    "transport": Room(("service/api/transport/*.py",), (*_OVER_HTTP, "contract/test_http_*", "contract/test_raw*")),
    "words": Room(("service/locales/*.py",), ("unit/locales/*", "unit/core/*", "unit/assessment/*")),
    "terminal": Room(("service/terminal/*.py",), ("unit/terminal/*", "contract/test_terminal.py")),
}
# The first two hold what is written, not whether it is right: what only they notice counts as slipped. The third asks
# for chores, which the copied tree has not: it would notice whatever is broken.
BLIND = ("tests/unit/rules/test_golden.py", "tests/contract/test_openapi.py", "tests/contract/test_readme.py")
