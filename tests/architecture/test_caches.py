"""Nothing is remembered from one request to the next: cached are tables, packs, pages and the words of the code."""

import functools
import importlib
import pkgutil

import service
from benchmarks.mixes import cold_checks
from tests.support.wire import client

# Each holds what is read or made of the service's own files: by the name of a table, a source, a language, a pack, a
# template of the code.
OF_OWN_FILES = {
    "service.api.render.findings_answer.basis",
    "service.api.render.findings_answer.in_full",
    "service.api.render.findings_answer.placed",
    "service.api.routers.fitments.check_route",
    "service.api.routers.page._content",
    "service.api.routers.tables._document",
    "service.assessment.batch.sizes.grid",
    "service.core.sources.basis",
    "service.core.unfolding._steps",
    "service.locales.speech.catalogue",
    "service.locales.speech.decimal_sign",
    "service.page.rendering.asset",
    "service.page.rendering.environment",
    "service.page.report.policy",
    "service.page.report.style",
    "service.page.try_it.page",
    "service.page.try_it.policy",
    "service.rules.alike.steps",
    "service.rules.reader.default_packs",
    "service.standards.approved_rim_width._rows",
    "service.standards.catalogue._declared",
    "service.standards.catalogue.table",
    "service.standards.commercial_speed_load._factors",
    "service.standards.commercial_speed_load._heading",
    "service.standards.commercial_speed_load._speeds",
    "service.standards.flotation._rows",
    "service.standards.load_index._masses_kg",
    "service.standards.old_series._rows",
    "service.standards.passenger_speed_load._curve",
    "service.standards.pressure_load._cells",
    "service.standards.rim_diameter._nominal_mm",
    "service.standards.rim_width._ladder",
    "service.standards.speed_symbol._speeds",
}
# A sweep is one job on one catalogue, and its process ends with it.
OF_A_SWEEP = "service.sweep."


def caches():
    """Return every function of the service that remembers its results, by module and name."""
    found = {}
    for module in pkgutil.walk_packages(service.__path__, "service."):
        if module.name == "service.__main__":
            continue
        for thing in vars(importlib.import_module(module.name)).values():
            if isinstance(thing, functools._lru_cache_wrapper):
                found[f"{thing.__module__}.{thing.__wrapped__.__name__}"] = thing
    return {name: cache for name, cache in found.items() if not name.startswith(OF_A_SWEEP)}


def test_only_what_stands_in_own_files_is_cached():
    assert set(caches()) == OF_OWN_FILES


def test_no_cache_grows_with_questions_that_were_not_asked_before():
    """Common practice, no source: after some of them nearly every sentence and every table has been met."""

    def ask(checks):
        for body in checks:
            for detail in ("short", "full"):
                answer = client().post("/v1/fitments/check", json={**body, "detail": detail})
                assert answer.status_code == 200, answer.text[:300]
        return {name: cache.cache_info().currsize for name, cache in caches().items()}

    # Templates and sources of rare findings may still come; nothing comes with every question.
    before, asked = ask(cold_checks(60, 5)), 30
    after = ask(cold_checks(asked, 6))
    assert {name: size - before[name] for name, size in after.items() if size - before[name] >= asked // 3} == {}
