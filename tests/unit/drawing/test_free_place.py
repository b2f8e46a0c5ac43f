"""A letter of a plot stands where it covers nothing, as near to its point as it may (places reckoned by hand)."""

from __future__ import annotations

import pytest

from service.drawing.free_place import around, free_place

BOX = (0.0, 0.0, 100.0, 100.0)


def corner(found, point, size, reach):
    """Return how far the near corner of a box stands from its point, in shares of its reach."""
    return [(abs(c - p) - 0.5 * s) / reach for c, p, s in zip(found, point, size, strict=True)]


def test_a_letter_stands_upper_right_of_a_lone_point_and_as_near_as_it_may():
    """Where nothing is in the way: diagonally, its corner at the reach on both axes (the project's choice)."""
    found = free_place((50.0, 50.0), (8.0, 6.0), 5.0, [], BOX)
    assert found == pytest.approx((50.0 + 5.0 + 4.0, 50.0 - 5.0 - 3.0))


@pytest.mark.parametrize(
    ("taken", "way"),
    [
        ([(50.0, 0.0, 100.0, 50.0)], (-1, -1)),
        ([(0.0, 0.0, 100.0, 50.0)], (1, 1)),
        ([(0.0, 0.0, 100.0, 50.0), (50.0, 50.0, 100.0, 100.0)], (-1, 1)),
    ],
)
def test_a_letter_turns_to_the_quarter_that_is_free(taken, way):
    found = free_place((50.0, 50.0), (8.0, 6.0), 5.0, taken, BOX)
    assert found == pytest.approx((50.0 + way[0] * 9.0, 50.0 + way[1] * 8.0))


@pytest.mark.parametrize(
    ("point", "way"), [((2.0, 50.0), (1, -1)), ((98.0, 50.0), (-1, -1)), ((50.0, 2.0), (1, 1)), ((98.0, 2.0), (-1, 1))]
)
def test_a_letter_stays_within_the_square(point, way):
    found = free_place(point, (8.0, 6.0), 5.0, [], BOX)
    assert found == pytest.approx((point[0] + way[0] * 9.0, point[1] + way[1] * 8.0))


def test_a_letter_goes_no_further_than_it_must():
    """Every quarter is taken as far as 7 from the point: the nearest free distance is the next of its steps."""
    taken = [(43.0, 43.0, 57.0, 57.0)]
    found = free_place((50.0, 50.0), (8.0, 6.0), 5.0, taken, BOX)
    x, y = found
    box = (x - 4.0, y - 3.0, x + 4.0, y + 3.0)
    assert max(box[0] - 57.0, 43.0 - box[2], box[1] - 57.0, 43.0 - box[3]) >= 0.0
    assert max(corner(found, (50.0, 50.0), (8.0, 6.0), 5.0)) < 2.0


def test_a_bar_keeps_its_surroundings_free_on_all_sides():
    assert around((1.0, 5.0), (9.0, 5.0), 2.0) == (-1.0, 3.0, 11.0, 7.0)
    assert around((9.0, 5.0), (1.0, 5.0), 2.0) == (-1.0, 3.0, 11.0, 7.0)
    assert around((4.0, 8.0), (4.0, 2.0), 1.0) == (3.0, 1.0, 5.0, 9.0)


# A square within each of the nearest places that is in none of the others: the diagonals first, since bars run straight
# from a point to all four sides, then beside it, above and beneath it (the project's choice).
PLACES = [
    *(
        ((9.0, -8.0), (61.0, 40.0)),
        ((-9.0, -8.0), (38.0, 40.0)),
        ((9.0, 8.0), (61.0, 59.0)),
        ((-9.0, 8.0), (38.0, 59.0)),
    ),
    *(((9.0, -3.2), (61.5, 46.5)), ((-9.0, -3.2), (37.5, 46.5))),
    *(((9.0, 3.2), (61.5, 52.5)), ((-9.0, 3.2), (37.5, 52.5))),
    *(((3.6, -8.0), (52.0, 40.5)), ((-3.6, -8.0), (47.0, 40.5))),
    *(((3.6, 8.0), (52.0, 58.5)), ((-3.6, 8.0), (47.0, 58.5))),
]


@pytest.mark.parametrize("blocked", range(len(PLACES)))
def test_the_next_place_is_tried_where_those_before_it_are_taken(blocked):
    taken = [(x, y, x + 1.0, y + 1.0) for _, (x, y) in PLACES[:blocked]]
    (across, down), _ = PLACES[blocked]
    assert free_place((50.0, 50.0), (8.0, 6.0), 5.0, taken, BOX) == pytest.approx((50.0 + across, 50.0 + down))
