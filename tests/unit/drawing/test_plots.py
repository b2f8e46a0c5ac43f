"""Points, bars and outlines of a plot stand where the numbers of `compare` and `check` say.

Read back by the plot's own ticks, and held against the answers that a caller gets for the same candidates. Tolerance:
half of the last decimal of the answer, and a little for the drawing's own thousandth of a millimetre.
"""

from itertools import combinations
from xml.etree.ElementTree import fromstring

import pytest

from service.drawing.balance_plot import draw_balance
from service.drawing.grip_plot import draw_grip
from service.drawing.outlines_plot import draw_outlines
from service.drawing.plot_sheet import LETTERS
from tests.support.cases import changed, saloon
from tests.unit.drawing.plotting import PLACES, WIDER, Axis, checked, middle, plotted, question, rows
from tests.unit.drawing.reading import box, element, ends
from tests.unit.drawing.sheet import Sheet

LITTLE = 0.0022


@pytest.fixture(scope="module")
def compared():
    return rows()


@pytest.fixture(scope="module")
def candidates():
    return plotted(*map(question, PLACES))


@pytest.fixture(scope="module")
def grip(candidates):
    return fromstring(draw_grip(candidates))


@pytest.fixture(scope="module")
def balance(candidates):
    return fromstring(draw_balance(candidates))


@pytest.fixture(scope="module")
def outlines(candidates):
    return fromstring(draw_outlines(candidates))


def within(value, digits):
    return pytest.approx(value, abs=0.5 * 10**-digits + LITTLE)


def lesser(place, name, end):
    return min(checked(place)["axles"][axle]["change"][name][end] for axle in ("front", "rear"))


@pytest.mark.parametrize("place", PLACES)
def test_a_point_stands_at_the_measures_of_compare(grip, compared, place):
    x, y = middle(grip, f"grip-{LETTERS[place]}")
    measures = compared[place]["measures"]
    assert Axis(grip, "grip-across", "x1").value(x) == within(measures["dry_grip_percent"], 2)
    assert Axis(grip, "grip-up", "y1").value(y) == within(measures["wet_margin_percent"], 2)


@pytest.mark.parametrize("place", PLACES)
def test_its_bar_of_grip_spans_the_band_of_the_check(grip, place):
    low, y1, high, y2 = ends(grip, f"grip-{LETTERS[place]}-grip")
    axis = Axis(grip, "grip-across", "x1")
    assert y1 == y2 == pytest.approx(middle(grip, f"grip-{LETTERS[place]}")[1], abs=LITTLE)
    assert axis.value(low) == within(lesser(place, "peak_grip_percent", "low"), 1)
    assert axis.value(high) == within(lesser(place, "peak_grip_percent", "high"), 1)


def reserve_points(place, axle, end):
    """Return the change of an axle's wet reserve from the change of the onset that the check answers.

    W = 1 - (80 / V)^2 at 80 km/h, new tyres: the share that is not lifted (Horne and Dreher, from memory). The onset
    of the present tyre follows from its own reserve, which the check states for the tread of 8 mm that these are on.
    """
    axles = checked(place)["axles"][axle]
    lifted = 1 - axles["present"]["wet_reserve_percent"]["value"] / 100
    factor = 1 + axles["change"]["aquaplaning_onset_percent"][end] / 100
    return 100 * (lifted - min(1.0, lifted / factor**2))


@pytest.mark.parametrize("place", PLACES)
@pytest.mark.parametrize("end", ["low", "high"])
def test_its_bar_of_wet_reserve_spans_the_band_of_the_onset_in_the_check(grip, place, end):
    _, low, _, high = ends(grip, f"grip-{LETTERS[place]}-wet")
    drawn = Axis(grip, "grip-up", "y1").value({"low": low, "high": high}[end])
    axle = "rear" if reserve_points(place, "rear", "value") else "front"
    # A tenth of a per cent of onset and a tenth of a point of reserve, as they are rounded, are 0.35 points at most.
    assert drawn == pytest.approx(reserve_points(place, axle, end), abs=0.35)


def test_the_present_tyres_stand_at_zero(grip):
    ring = element(grip, "grip-present").attrib
    x, y = (float(ring[at]) + float(ring[size]) / 2 for at, size in (("x", "width"), ("y", "height")))
    assert Axis(grip, "grip-across", "x1").value(x) == pytest.approx(0, abs=LITTLE)
    assert Axis(grip, "grip-up", "y1").value(y) == pytest.approx(0, abs=LITTLE)


def test_what_stays_as_it_is_covers_the_present_tyres(grip):
    assert ends(grip, "grip-A-grip")[0] == ends(grip, "grip-A-grip")[2]
    assert middle(grip, "grip-A")[0] == pytest.approx(ends(grip, "grip-A-wet")[0], abs=LITTLE)


@pytest.mark.parametrize("place", PLACES)
def test_a_bar_of_balance_spans_the_band_of_compare(balance, compared, place):
    axis, letter = Axis(balance, "balance-across", "x1"), LETTERS[place]
    told = compared[place]["vehicle"]["understeer_gradient_change_deg_per_g"]
    low, _, high, _ = ends(balance, f"balance-{letter}-band")
    drawn = [axis.value(low), axis.value(middle(balance, f"balance-{letter}")[0]), axis.value(high)]
    assert drawn == [within(told[end], 2) for end in ("low", "value", "high")]


@pytest.mark.parametrize("place", PLACES)
def test_the_hatched_zone_is_where_compare_calls_the_degree_negligible(balance, compared, place):
    letter = LETTERS[place]
    left, _, right, _ = zone(balance, letter)
    x, _ = middle(balance, f"balance-{letter}")
    assert (left < x < right) == (compared[place]["vehicle"]["degree"] == "negligible")


def zone(balance, letter):
    steps = element(balance, f"balance-{letter}-negligible").attrib["d"].split()
    return float(steps[1]), float(steps[2]), float(steps[4]), float(steps[6])


@pytest.mark.parametrize("axle", ["front", "rear"])
@pytest.mark.parametrize("place", PLACES)
def test_an_outline_is_as_wide_and_as_high_as_the_check_says(outlines, candidates, place, axle):
    told = checked(place)["axles"][axle]["proposed"]
    exact = getattr(candidates[place].found.car, axle).then.geometry
    left, top, right, _ = box(outlines, drawn_for(outlines, place, axle))
    assert right - left == within(told["section_width_mm"], 0)
    assert right - left == pytest.approx(exact.section_width_mm, abs=LITTLE)
    assert -2 * top == within(told["overall_diameter_mm"], 0)
    assert -2 * top == pytest.approx(exact.overall_diameter_mm, abs=LITTLE)


@pytest.mark.parametrize("axle", ["front", "rear"])
@pytest.mark.parametrize("place", PLACES)
def test_an_outline_stands_as_far_from_the_hub_face_as_its_offset(outlines, place, axle):
    left, _, right, _ = box(outlines, drawn_for(outlines, place, axle))
    offset = float(question(place)["candidate"][axle]["rim"]["size"].partition("ET")[2])
    assert (left + right) / 2 == pytest.approx(offset, abs=LITTLE)
    assert ends(outlines, f"outlines-{axle}-hub-face")[::2] == (0.0, 0.0)


def drawn_for(outlines, place, axle):
    """Return the outline that is drawn for a candidate: its own, or the first of the same wheel."""
    mine = question(place)["candidate"][axle]
    names = {each.get("id") for each in outlines.iter()}
    (found,) = (
        name
        for other, name in [(question(0)["candidate"][axle], f"outlines-{axle}-present-tyre")]
        + [(question(at)["candidate"][axle], f"outlines-{axle}-{LETTERS[at]}-tyre") for at in PLACES]
        if name in names and other == mine
    )
    return found


def test_a_twin_is_two_outlines_turned_against_each_other():
    twin = changed(saloon(WIDER, WIDER), {"/vehicle/rear/wheels_per_side": 2})
    drawing = fromstring(draw_outlines(plotted(twin)))
    inner, outer = (box(drawing, f"outlines-rear-A-tyre{suffix}") for suffix in ("", "-outer"))
    assert inner[0] + inner[2] == pytest.approx(2 * 38, abs=LITTLE)
    assert outer[0] + outer[2] == pytest.approx(-2 * 38, abs=LITTLE)


def test_both_axles_are_drawn_at_one_scale(outlines):
    # Millimetres of the real thing everywhere: no group is scaled by itself.
    assert "scale" not in element(outlines, "outlines-front").attrib["transform"]
    assert "scale" not in element(outlines, "outlines-rear").attrib["transform"]


def test_twelve_line_types_differ_in_black_and_white():
    many = plotted(*(saloon((f"{185 + 10 * at}/45 R18 99W", "8J x 18 H2 ET45")) for at in range(12)))
    drawing = fromstring(draw_outlines(many))
    samples = [element(drawing, f"outlines-{letter}-sample").attrib for letter in LETTERS]
    assert len({each.get("stroke-dasharray") for each in samples}) == 12
    # All are narrow lines, so that several dashes have room on a sidewall.
    assert {(each["class"], each["stroke-width"]) for each in samples} == {("narrow", samples[0]["stroke-width"])}
    assert float(samples[0]["stroke-width"]) == pytest.approx(1.25 * Sheet(drawing).unit, rel=1e-3)
    for letter, sample in zip(LETTERS, samples, strict=True):
        assert element(drawing, f"outlines-front-{letter}-tyre").get("stroke-dasharray") == sample.get(
            "stroke-dasharray"
        )


def test_no_letter_lies_on_a_point_or_on_another_letter(grip):
    places = [middle(grip, f"grip-{LETTERS[place]}") for place in PLACES]
    letters = [
        (float(each.attrib["x"]), float(each.attrib["y"]))
        for each in grip.iter()
        if each.text and each.text in LETTERS[: len(PLACES)] and each.get("text-anchor") == "middle"
    ]
    assert len(letters) == len(PLACES)
    # A letter is some 2 mm wide and 3 mm high, its base line a third of that beneath its middle.
    assert all(abs(x1 - x2) > 2.0 or abs(y1 - y2) > 2.5 for (x1, y1), (x2, y2) in combinations(letters, 2))
    assert all(abs(x1 - x2) > 1.5 or abs(y1 - 1.1 - y2) > 1.5 for x1, y1 in letters for x2, y2 in places)


def test_what_is_not_known_has_no_point_and_a_sentence():
    # No model speaks of a radial and a diagonal tyre.
    unknown = changed(
        saloon(), {"/candidate/front/tyre/size": "7.00-16 103N", "/candidate/rear/tyre/size": "7.00-16 103N"}
    )
    drawing = fromstring(draw_grip(plotted(question(1), unknown)))
    names = {each.get("id") for each in drawing.iter()}
    assert "grip-A" in names
    assert "grip-B" not in names
    assert "B (" in drawing[1].text
    assert "the change of dry grip is not known" in drawing[1].text


def test_a_trailer_has_no_balance_to_draw():
    trailer = changed(saloon(), {"/rule_pack": "nl", "/vehicle/category": "O2", "/vehicle/max_mass_kg": 1900})
    drawing = fromstring(draw_balance(plotted(trailer)))
    assert "balance-A" not in {each.get("id") for each in drawing.iter()}
    assert "A trailer is not steered" in drawing[1].text


@pytest.mark.parametrize("place", PLACES)
def test_the_line_of_the_car_as_it_is_stands_at_zero(balance, place):
    x1, _, x2, _ = ends(balance, f"balance-{LETTERS[place]}-present")
    assert x1 == x2
    assert Axis(balance, "balance-across", "x1").value(x1) == pytest.approx(0.0, abs=LITTLE / 10)
