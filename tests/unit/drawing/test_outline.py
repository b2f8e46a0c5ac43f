"""The outlines of tyre and rim: alike on both sides, widest where they are measured, unbroken, joined to each other."""

from __future__ import annotations

from itertools import pairwise

import pytest

from service.drawing import outline
from service.drawing.scene import scenes
from tests.unit.drawing.drawn import AXLES, Case
from tests.unit.drawing.reading import element
from tests.unit.drawing.sheet import flattened

NEAR = 0.003
FLANGE_MM, FLANGE_HEIGHT_MM, WELL_MM = 12.7, 17.3, 20.0


def tyres(case, part=""):
    for axle in AXLES:
        for which in ("present", "proposed"):
            yield flattened(element(case.section, f"{axle}-{which}-tyre{part}").attrib["d"])


def rims(case):
    for axle in AXLES:
        for which in ("present", "proposed"):
            yield flattened(element(case.section, f"{axle}-{which}-rim").attrib["d"])


def test_a_tyre_is_its_own_mirror_image(case):
    for part in ("", "-loaded"):
        for steps in tyres(case, part):
            middle = 0.5 * (steps[0][0] + steps[-1][0])
            mirrored = [(2 * middle - x, y) for x, y in reversed(steps)]
            assert steps == [pytest.approx(each, abs=NEAR) for each in mirrored]


def test_a_sidewall_goes_up_without_a_kink_to_its_widest_place_and_on_to_the_crown(case):
    for steps in tyres(case):
        half = steps[: len(steps) // 2 + 1]
        rising = [other[1] <= one[1] + NEAR for one, other in pairwise(half)]
        assert all(rising)
        widest = max(index for index, (x, _) in enumerate(half) if x < min(each for each, _ in half) + NEAR)
        share = (half[widest][1] - half[0][1]) / (half[-1][1] - half[0][1])
        # A radial tyre is widest a little above the middle of its height (common practice, no source).
        assert 0.4 < share < 0.6
        outwards = [other[0] <= one[0] + NEAR for one, other in pairwise(half[: widest + 1])]
        inwards = [other[0] >= one[0] - NEAR for one, other in pairwise(half[widest:])]
        assert (all(outwards[:1]), all(inwards)) == (True, True)


def test_a_crown_is_round(case):
    """The arc of a flat circle drops with the square of the distance from its middle, down to the shoulders."""
    for steps in tyres(case):
        top, middle = min(y for _, y in steps), 0.5 * (steps[0][0] + steps[-1][0])
        height = steps[0][1] - top
        crown = [(abs(x - middle), y - top) for x, y in steps if y - top < 0.0699 * height]
        reach, drop = max(crown)
        for far, fallen in crown:
            assert fallen == pytest.approx(drop * (far / reach) ** 2, abs=0.02 * drop)


def test_a_tyre_stands_flat_on_its_ground_and_round_where_there_is_none(case):
    for axle in AXLES:
        for which in ("present", "proposed"):
            steps = flattened(element(case.section, f"{axle}-{which}-tyre-loaded").attrib["d"])
            lowest = max(y for _, y in steps)
            flat = [x for x, y in steps if y > lowest - NEAR]
            assert (max(flat) - min(flat) > 50.0) == (f"{axle}-{which}-ground" in case.ids)


def test_a_rim_has_its_flanges_and_its_well(case):
    """Heights in millimetres: a J flange of 17.3 (DIN 7817, from memory) and an indicative well of 20."""
    for steps, tyre in zip(rims(case), tyres(case), strict=True):
        bead = -tyre[0][1]
        xs, ys = zip(*steps, strict=True)
        assert ys[0] == ys[-1] == pytest.approx(-bead - 0.55 * FLANGE_HEIGHT_MM, abs=0.6)
        assert -bead - FLANGE_HEIGHT_MM - 0.6 < min(ys) < -bead - 0.6 * FLANGE_HEIGHT_MM
        assert max(ys) == pytest.approx(WELL_MM - bead, abs=0.6)
        assert (xs[0], xs[-1]) == (min(xs), max(xs))
        depth = [x for x, y in steps if y > max(ys) - NEAR]
        assert min(xs) < min(depth) < max(depth) < max(xs)
        # Both flanges are alike, down to the seats of the beads.
        middle, seat, half = 0.5 * (min(xs) + max(xs)), -bead + NEAR, len(steps) // 2
        sides = steps[:half], [*reversed(steps)][:half]
        left, right = ([(x, y) for x, y in each if y < seat] for each in sides)
        assert len(left) == len(right) > 10
        assert left == [pytest.approx((2 * middle - x, y), abs=NEAR) for x, y in right]


def test_the_bead_sits_on_the_rim(case):
    for steps, tyre in zip(rims(case), tyres(case), strict=True):
        xs = [x for x, _ in steps]
        half = 0.5 * (max(xs) - min(xs)) - FLANGE_MM
        assert 0.5 * (tyre[-1][0] - tyre[0][0]) <= half + NEAR


def test_twins_are_mirror_images_about_the_hub_face(case):
    for axle in filter(case.twin, AXLES):
        for which in ("present", "proposed"):
            for part in ("tyre", "tyre-loaded", "rim"):
                inner, outer = (
                    flattened(element(case.section, f"{axle}-{which}{wheel}-{part}").attrib["d"])
                    for wheel in ("", "-outer")
                )
                mirrored = sorted((-x, y) for x, y in inner)
                assert sorted(outer) == [pytest.approx(each, abs=NEAR) for each in mirrored]


def shapes(case):
    for scene in scenes(case.found, "both"):
        for _, wheel in (*scene.now.both, *scene.then.both):
            yield scene, wheel


def below(steps):
    """Return a half above the axis turned over below it."""
    return [pytest.approx((x, -y), abs=NEAR) for x, y in steps]


def test_a_wheel_is_below_its_axis_what_it_is_above():
    """A body of revolution: its cut is its own mirror image about the axis."""
    for scene, wheel in shapes(Case("twins as they are")):
        halves = [flattened(outline.tyre(wheel, wheel.radius_mm, side, flat=False)) for side in (-1, 1)]
        assert halves[1] == below(halves[0])
        # Where it stands on the ground the tread is cut off, and the sidewalls are those of a lower tyre.
        halves = [flattened(outline.tyre(wheel, wheel.lowest_mm, side, flat=True)) for side in (-1, 1)]
        assert halves[1] == below(halves[0])
        assert max(y for _, y in halves[1]) == pytest.approx(wheel.lowest_mm, abs=NEAR)
        halves = [flattened(outline.rim(wheel, side)) for side in (-1, 1)]
        assert halves[1] == below(halves[0])
        for face_mm in (0.0, outline.DISC_MM):
            halves = [flattened(outline.disc(wheel, scene.hub_radius_mm, face_mm, side)) for side in (-1, 1)]
            assert halves[1] == below(halves[0])


def test_a_disc_leads_from_the_hub_to_the_rim_it_belongs_to(case):
    """Welded to its rim, bolted to the hub; the outer one of a twin lies back to back against the inner one."""
    for scene, wheel in shapes(case):
        rim = flattened(outline.rim(wheel, 1))
        faces = [flattened(outline.disc(wheel, scene.hub_radius_mm, each, 1)) for each in (0.0, outline.DISC_MM)]
        feet = sorted(face[0][0] for face in faces)
        outboard = wheel.facing < 0
        assert feet == [pytest.approx(each - (11.0 if outboard else 0.0), abs=NEAR) for each in (-11.0, 0.0)]
        assert [face[0][1] for face in faces] == [pytest.approx(scene.hub_radius_mm, abs=NEAR)] * 2
        for face in faces:
            assert min(apart(face[-1], one, other) for one, other in pairwise(rim)) < 0.5
            assert all(other[1] >= one[1] for one, other in pairwise(face))


def apart(point, one, other):
    """Return how far a point is from a straight piece."""
    (x, y), (x1, y1), (x2, y2) = point, one, other
    long = (x2 - x1) ** 2 + (y2 - y1) ** 2
    share = 0.0 if long == 0.0 else min(1.0, max(0.0, ((x - x1) * (x2 - x1) + (y - y1) * (y2 - y1)) / long))
    return ((x - x1 - share * (x2 - x1)) ** 2 + (y - y1 - share * (y2 - y1)) ** 2) ** 0.5
