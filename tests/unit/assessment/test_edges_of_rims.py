"""Windows of rims by hand: which widths and offsets are looked at, what bounds them, and which rims serve most tyres.

References: 225/45 R17 takes rims of 7 to 8.5 in, 245/40 R17 of 8 to 9.5 in, 155/70 R13 of 4 to 5 in; a tyre gets 0.4 mm
wider for each millimetre of rim and may grow by 4 % in service (ETRTO, from memory). That 5 mm of room are left, that
up to 15 mm nobody measures before ordering, and what a fitter calls near are common practice, no source.
"""

from math import nan

import pytest

from service.assessment.batch.one_window import window_of
from service.assessment.batch.rim_grid import grid_of, least_rating_kg, rim_designation, wanted_rim
from service.assessment.batch.rim_search import RimsAsked, TyrePair, _combined, fitted_on, rims_for
from service.assessment.batch.rim_windows import Reason, windows_of
from service.assessment.batch.rim_words import in_words, subject_of, units_of
from service.assessment.batch.shared_rims import ChosenRim, Demand, RimSet, _Cell, shared_rims, smallest_set
from service.assessment.case import Tyre
from service.core.findings import ADVISORY, NOT_ASSESSED, NOT_MET, NOT_RECOMMENDED
from service.designation.tyre import parse_tyre
from service.rules.reader import pack_named
from tests.support.cases import ABSENT, changed, saloon
from tests.unit.assessment.test_search import case

TYRE = "225/45 R17 94W XL"


def tyre(text=TYRE):
    return Tyre(parse_tyre(text), 8.0)


def car(changes=None):
    return case(changed(saloon(), changes or {}))


def grid(text=TYRE, changes=None):
    one = car(changes)
    return grid_of(one, one.vehicle.front, (tyre(text),))


@pytest.mark.parametrize(
    ("text", "changes", "widths", "offsets"),
    [
        # ET45, 14 mm inboard, 16 outboard; half an inch less of rim leaves 0.5 x 0.4 x 12.7 = 2.54 mm more, and 2 mm
        # further it is seen what touches: 45 - 20.54 to 45 + 18.54.
        (TYRE, {}, [7.0, 7.5, 8.0, 8.5], (24, 64)),
        (TYRE, {"/vehicle/front/clearance/inboard_mm": 3}, [7.0, 7.5, 8.0, 8.5], (24, 53)),
        (TYRE, {"/vehicle/front/clearance/outboard_mm": 3}, [7.0, 7.5, 8.0, 8.5], (37, 64)),
        # 15 mm where nothing was measured.
        (TYRE, {"/vehicle/front/clearance": ABSENT}, [7.0, 7.5, 8.0, 8.5], (25, 65)),
        # None of these is narrower than the present wheel.
        ("245/40 R17 97W XL", {}, [8.0, 8.5, 9.0, 9.5], (27, 61)),
        # 157 mm on 4.5 in are 152 on 4 in: 36.5 mm less than now on each side.
        ("155/70 R13 75T", {}, [4.0, 4.5, 5.0], (-10, 98)),
        # No rim has more offset than 190 mm, nor less than -190.
        (TYRE, {"/vehicle/front/clearance/inboard_mm": 200}, [7.0, 7.5, 8.0, 8.5], (24, 190)),
        (TYRE, {"/vehicle/front/clearance/outboard_mm": 300}, [7.0, 7.5, 8.0, 8.5], (-190, 64)),
        # Both edges of a twin move out together: the strut alone says how far in, nothing here how far out.
        (TYRE, {"/vehicle/front/wheels_per_side": 2}, [7.0, 7.5, 8.0, 8.5], (-190, 64)),
        (TYRE, {"/vehicle/front/fitted/rim/size": "7.5J x 17"}, [7.0, 7.5, 8.0, 8.5], (0, 0)),
    ],
)
def test_offsets_are_looked_at_as_far_as_there_is_room_and_two_millimetres_further(text, changes, widths, offsets):
    found = grid(text, changes)
    assert [each.width_in for each in found.rows] == widths
    low, high = offsets
    assert found.offsets_mm.tolist() == list(range(low, high + 1))
    assert found.shape == found.outcomes.shape == (len(widths), high - low + 1)


@pytest.mark.parametrize(
    ("width", "suitable", "conditions", "best"),
    [
        # 2.54 mm less on each side: 45 - 16 + 5 - 2.54 to 45 + 14 - 5 + 2.54.
        (7.0, (32, 56), (27, 61), 45),
        (7.5, (34, 54), (29, 59), 45),
        # 2.54 mm more, and 4 % of 230 mm for growth: 7.14 mm on each side.
        (8.0, (42, 46), (37, 51), 45),
        # 5.08 and 4.7 mm.
        (8.5, (44, 44), (39, 49), 44),
    ],
)
def test_a_window_goes_as_far_as_the_room_on_either_side(width, suitable, conditions, best):
    (found,) = [each for each in windows_of(grid()) if each.row.width_in == width]
    told = [(each.from_mm, each.to_mm) for each in (found.suitable, found.with_conditions)]
    assert (told, found.best_mm) == ([suitable, conditions], best)
    ends = [found.suitable.from_bound, found.suitable.to_bound]
    ends += [found.with_conditions.from_bound, found.with_conditions.to_bound]
    assert [(each.code, each.where, each.outcome, each.limit) for each in ends] == [
        ("clearance.outboard", "front", ADVISORY, 5.0),
        ("clearance.inboard", "front", ADVISORY, 5.0),
        ("clearance.outboard", "front", NOT_MET, 0.0),
        ("clearance.inboard", "front", NOT_MET, 0.0),
    ]
    # One millimetre further leaves less than the limit and no millimetre less.
    assert all(-1.0 <= each.measured - each.limit < 0.0 for each in ends)


def test_of_what_ends_a_window_the_worst_is_told():
    # 13 mm further out are 26 mm of track, and New South Wales allows 25; of 17 mm of room only 4 are left there.
    one = car({"/vehicle/front/clearance/outboard_mm": 17})._replace(pack=pack_named("au-nsw"))
    (found,) = [each for each in windows_of(grid_of(one, one.vehicle.front, (tyre(),))) if each.row.width_in == 7.5]
    for window in (found.suitable, found.with_conditions):
        bound = window.from_bound
        assert (window.from_mm, bound.code, bound.measured, bound.limit) == (33.0, "law.track_change", 26.0, 25.0)


def test_the_window_of_one_wheel_is_that_of_its_width_and_none_where_it_does_not_go_on():
    one = car()
    front = one.vehicle.front
    found = window_of(one, front, fitted_on(front, tyre(), 8.0, 45.0))
    assert (found.suitable.from_mm, found.suitable.to_mm) == (42, 46)
    assert window_of(one, front, fitted_on(front, tyre(), 6.0, 45.0)) is None
    other = fitted_on(front, tyre("225/40 R18 92W XL"), 8.0, 45.0)
    assert window_of(one, front, other._replace(tyre=tyre())) is None
    assert window_of(one, front, other) is not None


@pytest.mark.parametrize(
    ("text", "width", "offset", "present", "told"),
    [
        (TYRE, 8.0, 40.0, "7.5J x 17 H2 ET45", "8J x 17 H2 ET40"),
        (TYRE, 7.0, 40.5, "7.5J x 17 H2 ET45", "7J x 17 H2 ET40.5"),
        ("155/80 R13 79T", 5.0, None, "7.5J x 17 H2 ET45", "5J x 13 H2"),
        # The flange is that of the present rim; 15 degree rims of code 19.5 have neither flange nor hump.
        (TYRE, 7.0, -5.0, "5B x 17 ET45", "7B x 17 H2 ET-5"),
        ("285/70 R19.5 146/144L", 8.25, 140.0, "7.5J x 17 H2 ET45", "8.25 x 19.5 ET140"),
        (TYRE, 7.0, 0.0, "8.25 x 17.5 ET140", "7J x 17 H2 ET0"),
    ],
)
def test_a_rim_is_spelled_as_the_trade_does(text, width, offset, present, told):
    axle = car({"/vehicle/front/fitted/rim/size": present}).vehicle.front
    assert rim_designation(axle, tyre(text), width, offset).canonical == told


@pytest.mark.parametrize(
    ("mass", "wheels", "rating"), [(960, 1, 480.0), (961, 1, 481.0), (2600, 2, 650.0), (2601, 2, 651.0)]
)
def test_a_rim_carries_its_share_of_the_axle_in_whole_kilograms(mass, wheels, rating):
    made = {"/vehicle/front/max_axle_mass_kg": mass, "/vehicle/front/wheels_per_side": wheels}
    assert least_rating_kg(car(made).vehicle.front) == rating


def test_a_rim_goes_on_the_hub_and_where_nobody_measured_that_it_is_as_the_present_one():
    hub = {"/vehicle/front/hub": {"bolt_circle": "5x108", "centre_bore_mm": 63.4}}
    for changes, circle, bore in ((hub, "5x108", 63.4), ({"/vehicle/front/hub": ABSENT}, "5x112", 66.6)):
        axle = car(changes).vehicle.front
        rim = wanted_rim(axle, axle.fitted.rim.designation)
        assert (rim.bolt_circle.canonical, rim.centre_bore_mm, rim.load_rating_kg) == (circle, bore, 480.0)


ROOM = "room to the strut (front axle)"


@pytest.mark.parametrize(
    ("outcome", "measured", "limit", "unit", "told"),
    [
        (ADVISORY, 4.76, 5.0, "mm", "4.8 mm, the limit is 5 mm"),
        (ADVISORY, 4.76, nan, "mm", "4.8 mm"),
        (ADVISORY, nan, 5.0, "mm", "to be heeded"),
        (NOT_RECOMMENDED, 4.76, 5.0, None, "to be heeded"),
        (NOT_MET, 4.76, 5.0, None, "does not go"),
        (NOT_MET, nan, 5.0, "mm", "does not go"),
        (NOT_ASSESSED, 4.76, 5.0, "mm", "4.8 mm, the limit is 5 mm"),
        (NOT_ASSESSED, 4.76, nan, "mm", "not known"),
        (NOT_ASSESSED, 4.76, 5.0, None, "not known"),
    ],
)
def test_a_reason_has_its_numbers_or_says_what_comes_of_it(outcome, measured, limit, unit, told):
    reason = Reason("clearance.inboard", "front", outcome, measured, limit)
    assert in_words(reason, car(), unit) == f"{ROOM}: {told}"


def test_units_and_subjects_are_those_of_the_questions():
    one = car()
    units = units_of(one)
    assert (units["clearance.inboard", "front"], units["load.capacity", "rear"]) == ("mm", "kg")
    assert units["rim.contour", "front"] is None
    placed = one._replace(pack=pack_named("de"))
    rule = placed.pack.rules[0]
    # A rule of the place goes by its title, a check by its subject, be it asked at that place or not.
    assert (subject_of(rule.code, placed), subject_of("clearance.inboard", placed)) == (rule.title, "room to the strut")


FRONT, WIDER, REAR = Demand("front", 0), Demand("front", 1), Demand("rear", 0)
DEMANDS = (FRONT, WIDER, REAR)


def cell(serves, distance, advice=0, width=0.0, conditions=0):
    return _Cell(serves, conditions, advice, float(distance), width)


def test_neighbouring_rims_that_serve_the_same_tyres_are_one_range_and_what_serves_less_is_left_out():
    cells = {
        # Serves two where its neighbours of that width serve three.
        (17.0, 8.0, 40.0): cell(0b011, 9),
        (17.0, 8.0, 41.0): cell(0b111, 6),
        (17.0, 8.0, 42.0): cell(0b111, 3),
        (17.0, 8.0, 43.0): cell(0b111, 5),
        # The same tyres beyond a gap, with advice.
        (17.0, 8.0, 45.0): cell(0b111, 0, advice=1),
        # One alone is served by no shared rim, be there better ones of that width or not.
        (17.0, 8.0, 46.0): cell(0b100, 0),
        (19.0, 8.0, 46.0): cell(0b100, 0),
        # Another width, then another diameter, nearer than that
        (17.0, 8.5, 43.0): cell(0b101, 4),
        # at its best, though not at its worst.
        (18.0, 8.5, 43.0): cell(0b110, 9),
        (18.0, 8.5, 44.0): cell(0b110, 2, width=0.5),
        (18.0, 8.5, 45.0): cell(0b110, 2),
    }
    assert [tuple(each) for each in shared_rims(cells, DEMANDS)] == [
        (17.0, 8.0, 41.0, 43.0, 42.0, DEMANDS),
        (17.0, 8.0, 45.0, 45.0, 45.0, DEMANDS),
        (18.0, 8.5, 43.0, 45.0, 45.0, (WIDER, REAR)),
        (17.0, 8.5, 43.0, 43.0, 43.0, (FRONT, REAR)),
    ]


def test_at_most_forty_ranges_are_listed():
    cells = {(17.0, 8.0, float(offset)): cell(0b11, offset) for offset in range(0, 100, 2)}
    assert [each.best_mm for each in shared_rims(cells, DEMANDS)] == [float(each) for each in range(0, 80, 2)]


def test_the_fewest_rims_are_those_with_the_least_advice_then_the_nearest():
    cells = {
        (17.0, 8.0, 40.0): cell(0b011, 1, advice=1, conditions=0b010),
        (17.0, 8.0, 41.0): cell(0b011, 9),
        (17.0, 8.0, 42.0): cell(0b011, 8),
        (17.0, 8.5, 42.0): cell(0b001, 0),
    }
    (rim,) = smallest_set(cells, DEMANDS).rims
    assert (rim.offset_mm, rim.serves, rim.with_conditions) == (42.0, (FRONT, WIDER), ())
    assert smallest_set(cells, DEMANDS).unserved == (REAR,)
    only = {(17.0, 8.0, 40.0): cells[17.0, 8.0, 40.0]}
    assert smallest_set(only, DEMANDS).rims[0].with_conditions == (WIDER,)


def test_a_combination_has_the_rims_of_its_tyres_and_keeps_an_axle_that_is_not_named():
    wide, high = tyre("245/40 R17 95W XL"), tyre("225/40 R18 92W XL")
    asked = (TyrePair(None, wide, "behind"), TyrePair(high, tyre("155 R13 78S"), "none"), TyrePair(wide, high))
    one = car()
    found = rims_for(one, RimsAsked((tyre(), wide), (), asked))
    assert [each.tyres_at for each in found.combinations] == [(None, 0), (2, 1), (1, 2)]
    behind, none, last = found.combinations
    assert behind.rims[0] is None
    assert behind.candidate.front == one.vehicle.front.fitted
    assert (behind.candidate.rear.tyre, behind.candidate.label) == (wide, "behind")
    assert behind.rims[1] in found.smallest.rims
    # No rim takes 155 R13 to this car, whose brake needs 16 in.
    assert (none.rims, none.candidate, none.verdict) == ((None, None), None, None)
    assert Demand("rear", 1) in found.smallest.unserved
    assert [each.diameter_code for each in last.rims] == [17.0, 18.0]


def test_what_a_rim_serves_without_conditions_has_none():
    # 14 and 16 mm leave 5; of 2 mm on either side even the narrowest rim, half an inch less, leaves only 4.5.
    for room_mm, conditions in ((14, ()), (2, (FRONT,))):
        rooms = {"/vehicle/front/clearance": {"inboard_mm": room_mm, "outboard_mm": room_mm}}
        found = rims_for(car(rooms), RimsAsked())
        told = {each: rim.offset_mm for rim in found.smallest.rims for each in rim.serves}
        assert set(told) == {FRONT, REAR}
        conditional = tuple(each for rim in found.smallest.rims for each in rim.with_conditions)
        assert conditional == conditions


@pytest.mark.parametrize(
    ("text", "fitted", "width"),
    [
        # Nobody has to buy the present rim; 245/40 R17 is measured on 8.5 in (ETRTO, from memory).
        (TYRE, "8J x 17 H2 ET45", 8.0),
        (TYRE, "7J x 17 H2 ET45", 7.0),
        ("245/40 R17 97W XL", "8J x 17 H2 ET45", 8.5),
    ],
)
def test_of_rims_that_do_alike_the_set_has_the_present_or_the_measuring_width(text, fitted, width):
    rooms = {"inboard_mm": 60, "outboard_mm": 60, "radial_mm": 60}
    one = car({"/vehicle/front/fitted/rim/size": fitted, "/vehicle/front/clearance": rooms})
    # Another diameter behind, so that no rim is to serve both.
    found = rims_for(one, RimsAsked((tyre(text),), (tyre("225/40 R18 92W XL"),)))
    (rim,) = [each for each in found.smallest.rims if FRONT in each.serves]
    assert rim.width_in == width


# 14 mm of room towards the strut: 15 further in touches, 1 does not.
@pytest.mark.parametrize("offsets", [(46.0, 60.0), (60.0, 46.0)])
def test_of_two_rims_that_a_set_has_for_a_tyre_the_one_that_a_check_likes_best_is_combined(offsets):
    one, both = car(), (Demand("front", 0), Demand("rear", 0))
    grids = tuple(grid_of(one, axle, (tyre(),)) for axle in (one.vehicle.front, one.vehicle.rear))
    rims = tuple(ChosenRim(17.0, 7.5, offset, both, ()) for offset in offsets)
    (found,) = _combined(one, [TyrePair(tyre(), tyre())], grids, RimSet(rims, (), exact=True))
    assert [each.offset_mm for each in found.rims] == [46.0, 46.0]
