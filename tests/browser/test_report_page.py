"""The report on a screen: by the rules of axe-core, on a phone, in every language."""

import pytest
from axe_playwright_python.sync_playwright import Axe

from tests.browser.conftest import DESKTOP, PHONE
from tests.browser.test_printing import ANSWERS


@pytest.fixture
def opened(visit):
    """Return the report on a question in a browser with these options."""

    def open_it(question, language="en", **options):
        seen = visit(**options)
        answer = seen.context.request.post(
            f"{seen.address}/v1/fitments/report", data={**question, "language": language}
        )
        seen.page.set_content(answer.text())
        return seen.page

    return open_it


@pytest.mark.parametrize("answer", ["same again", "unsuitable"])
@pytest.mark.parametrize(("scheme", "viewport"), [("light", DESKTOP), ("dark", PHONE)], ids=["desktop", "phone"])
def test_axe_core_finds_no_violation(opened, answer, scheme, viewport):
    found = Axe().run(opened(ANSWERS[answer], color_scheme=scheme, viewport=viewport))
    assert found.violations_count == 0, found.generate_report()


def test_a_phone_needs_no_sideways_scrolling_in_any_language(opened):
    for language in ("en", "de", "fr", "es", "nl"):
        page = opened(ANSWERS["unsuitable"], language, viewport=PHONE)
        assert page.evaluate("document.documentElement.scrollWidth") == PHONE["width"]
        # The table of numbers does without its own, too.
        box = page.locator("section.numbers")
        assert box.evaluate("(each) => each.scrollWidth") <= box.evaluate("(each) => each.clientWidth")
        page.close()


def test_a_table_that_is_laid_out_anew_on_a_phone_is_still_one(opened):
    page = opened(ANSWERS["wider"], viewport=PHONE)
    line = page.get_by_role("row").filter(has=page.get_by_role("rowheader", name="Overall diameter, new")).first
    assert line.get_by_role("cell").all_inner_texts() == ["663 mm", "661 mm", "−0.3 %", "± 1.5 %"]
    assert page.get_by_role("table").first.get_by_role("columnheader").count() == 5


def test_what_is_touched_on_a_phone_is_large_enough(opened):
    # WCAG 2.2, 2.5.5 (from memory): 44 by 44 CSS pixels.
    page = opened(ANSWERS["wider"], viewport=PHONE, has_touch=True, is_mobile=True)
    small = page.evaluate(
        """() => [...document.querySelectorAll("label, summary")].map((each) => each.getBoundingClientRect().height)
          .filter((height) => height < 44)"""
    )
    assert small == []
