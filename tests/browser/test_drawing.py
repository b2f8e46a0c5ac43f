"""The drawings as a browser measures them, against what a check answers to the same question.

The browser's own geometry (`getBBox` of SVG 2) stands between the drawing's code and this test. Tolerance: half the
last digit that the answer prints.
"""

import json
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
STORY = json.loads((ROOT / "demo_requests" / "staggered-one-step-wider.check.json").read_text(encoding="utf-8"))
PLACES = [(axle, which) for axle in ("front", "rear") for which in ("present", "proposed")]


@pytest.fixture(scope="module")
def seen(lasting):
    return lasting()


def drawn(seen, view):
    """Show a drawing of the question."""
    drawing = seen.context.request.post(f"{seen.address}/v1/fitments/drawing?view={view}", data=STORY)
    seen.page.set_content(drawing.text())
    return seen.page


@pytest.fixture(scope="module")
def answer(seen):
    body = STORY | {"detail": "full"}
    return seen.context.request.post(f"{seen.address}/v1/fitments/check", data=body).json()


def boxes(page):
    """Return the box of every element with an id, in real millimetres."""
    return page.evaluate(
        """() => Object.fromEntries([...document.querySelectorAll("svg [id]")]
          .filter((each) => each.getBBox)
          .map((each) => [each.id, each.getBBox()])
          .map(([id, box]) => [id, [box.x, box.y, box.width, box.height]]))"""
    )


@pytest.fixture(scope="module")
def section(seen, answer):
    return boxes(drawn(seen, "section")), answer


@pytest.fixture(scope="module")
def patches(seen, answer):
    return boxes(drawn(seen, "patches")), answer


@pytest.mark.parametrize(("axle", "which"), PLACES)
def test_the_tyre_is_drawn_as_large_and_as_wide_as_the_answer_says(section, axle, which):
    found, answer = section
    numbers = answer["axles"][axle][which]
    _, top, width, _ = found[f"{axle}-{which}-tyre"]
    assert -2 * top == pytest.approx(numbers["overall_diameter_mm"], abs=0.06)
    assert width == pytest.approx(numbers["section_width_mm"], abs=0.51)


@pytest.mark.parametrize(("axle", "which"), PLACES)
def test_the_ground_is_as_far_below_the_axis_as_the_answer_says(section, axle, which):
    found, answer = section
    radius = answer["axles"][axle][which]["static_loaded_radius_mm"]["value"]
    assert found[f"{axle}-{which}-ground"][1] == pytest.approx(radius, abs=0.06)


@pytest.mark.parametrize("axle", ["front", "rear"])
def test_the_edge_towards_the_strut_moves_as_the_answer_says(section, axle):
    found, answer = section
    # What is left of the measured room, the growth of the tyre in service counted.
    (left,) = [
        each["measured"] for each in answer["findings"] if (each["code"], each["axle"]) == ("clearance.inboard", axle)
    ]
    assert found[f"{axle}-room-inboard"][2] == pytest.approx(left, abs=0.06)


@pytest.mark.parametrize(("axle", "which"), PLACES)
def test_the_patch_is_as_wide_and_as_long_as_the_answer_says(patches, axle, which):
    found, answer = patches
    patch = answer["axles"][axle][which]["contact_patch"]
    _, _, width, length = found[f"{axle}-{which}-outline"]
    sizes = [patch["width_mm"]["value"], patch["length_mm"]["value"]]
    assert [width, length] == [pytest.approx(each, abs=0.51) for each in sizes]


@pytest.mark.parametrize("end", ["low", "high"])
@pytest.mark.parametrize(("axle", "which"), PLACES)
def test_the_band_is_drawn_from_low_to_high(patches, axle, which, end):
    found, answer = patches
    patch = answer["axles"][axle][which]["contact_patch"]
    _, _, width, length = found[f"{axle}-{which}-{end}"]
    sizes = [patch["width_mm"][end], patch["length_mm"][end]]
    assert [width, length] == [pytest.approx(each, abs=0.51) for each in sizes]


@pytest.mark.parametrize("view", ["section", "patches"])
def test_paper_and_ink_follow_the_reader_s_choice(seen, view):
    page = drawn(seen, view)
    for scheme, dark in (("light", False), ("dark", True)):
        page.emulate_media(color_scheme=scheme)
        paper, ink = page.evaluate(
            """() => [getComputedStyle(document.querySelector(".paper")).fill,
              getComputedStyle(document.querySelector("text.words")).fill]
              .map((colour) => colour.match(/[0-9]+/g).map(Number).reduce((a, b) => a + b))"""
        )
        assert (paper < ink) is dark, scheme


@pytest.mark.parametrize("view", ["section", "patches"])
def test_no_words_leave_the_sheet(seen, view):
    outside = drawn(seen, view).evaluate(
        """() => {
          const sheet = document.querySelector("svg").getBoundingClientRect();
          return [...document.querySelectorAll("text")].filter((each) => {
            const box = each.getBoundingClientRect();
            return box.left < sheet.left || box.right > sheet.right || box.bottom > sheet.bottom;
          }).map((each) => each.textContent);
        }"""
    )
    assert outside == []
