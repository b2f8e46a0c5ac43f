"""A fitter, a customer and a tester do their work from an empty page, in as few strokes as it takes.

The verdicts are those of the trade's own tables: rim diameters and rim widths of a size (ETRTO Standards Manual), load
capacity by load index (UN R30, annex 4). The ceilings are what the work took when counted, and a few strokes more.
"""

import pytest

from tests.browser.hands import PRESENT, Hands, field

TYRE, THEN, RIM_THEN = f"{PRESENT}/tyre/size", "/candidate/front/tyre/size", "/candidate/front/rim/size"


@pytest.fixture
def hands(visit):
    return Hands(visit().open())


def test_a_fitter_with_the_car_on_the_lift_and_its_papers(hands):
    # He reads both wheels as they are marked, then T, N.1 and N.2 of the papers.
    hands.click(field(TYRE))
    hands.spell("205/55r16 91v 6.5jx16 et50 5x112 57.1")
    hands.press("Tab")
    hands.spell("225/45r17 91w 7.5jx17 et45 5x112 57.1 690kg")
    hands.click(field("/vehicle/max_speed_kmh"))
    hands.spell("210")
    for mass in ("980", "920"):
        hands.press("Tab")
        hands.spell(mass)
    # A load index of 91 carries 615 kg, and each wheel has to carry 490; the wing's room is left to be measured.
    assert hands.answer() == "It fits, with conditions"
    assert "wing edge" in hands.page.inner_text("#summary")
    assert hands.page.locator("[data-kind=look]").count() == 0
    assert hands.strokes <= 100


def test_a_customer_who_wants_18_inch(hands):
    hands.into(TYRE, "205/55r16 91v 6.5jx16 et50 5x112 57.1")
    hands.press("Tab")
    hands.type("225/40r18 92y")
    # A tyre of 18 inch is not for a rim of 16 inch.
    assert hands.answer() == "Do not fit"
    assert hands.strokes <= 55
    page = hands.page
    hands.click("#wheels-fold > summary")
    # ETRTO takes this size on rims of 7.5 to 9 in.
    wide = page.locator("#wheels-charts table >> nth=0 >> tbody tr", has_text="8 in")
    hands.strokes += 1
    wide.first.locator(".offer").click()
    hands.answer()
    # The marking of the wheel that the shop offers.
    hands.click(field(RIM_THEN, page.evaluate("import('/state.js').then(({ state }) => state.chosen)")))
    hands.press("End")
    hands.type(" 5x112 57.1 690kg")
    hands.press("Tab")
    assert hands.answer() in ("It fits", "It fits, with conditions")
    assert hands.strokes <= 80


def test_a_tester_with_three_widths(hands):
    hands.into(TYRE, "225/40r18 92y 8jx18 et45")
    hands.press("Tab")
    hands.type("235/40r18 95y")
    assert hands.answer() == "It fits"
    assert hands.strokes <= 42
    for size in ("245/35r18 92y", "255/35r18 94y"):
        hands.click("#add")
        hands.type(size)
    hands.press("Tab")
    # ETRTO takes the widest on rims from 8.5 in, the other two from 8 in.
    assert hands.answer() == "Do not fit"
    verdicts = [each.inner_text().strip() for each in hands.page.locator("#table tbody tr >> nth=0 >> td").all()]
    assert verdicts[-3:] == ["It fits", "It fits, with conditions", "Do not fit"]
    assert hands.strokes <= 75


@pytest.fixture(autouse=True)
def counted(hands, record_property):
    """What the work took, for whoever runs this with a report."""
    yield
    record_property("strokes", hands.strokes)
    record_property("waited_s", hands.waited_s)
