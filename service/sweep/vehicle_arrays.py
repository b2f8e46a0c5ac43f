"""Vehicles as arrays: those alike in all that decides which questions are asked are graded together.

What is alike are words and flags: category, driven axle, twin wheels, and between which of the pack's bounds mass, day
of building and speed lie. Masses, speeds, rooms and present wheels are numbers, one for each row.
"""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Sequence
from typing import NamedTuple

import numpy as np

from service.assessment.case import Axle, Case, Season, Vehicle
from service.assessment.view.axle_view import Hub
from service.assessment.view.conditions import law_speed_kmh
from service.core.numeric import FloatArray, Number
from service.rules.alike import steps
from service.rules.pack import RulePack
from service.sweep.catalogue_rows import candidate, vehicle
from service.sweep.pair_columns import CANDIDATE_PREFIX, ReadTable
from service.sweep.read_columns import Places, Texts
from service.sweep.wheel_arrays import circles, distinct


class Question(NamedTuple):
    """Under which rules, for which season and on which ISO day everything is graded."""

    pack: RulePack
    season: Season | None = None
    date: str | None = None


class Group(NamedTuple):
    """Rows whose vehicles are alike, and the case of the first of them."""

    rows: Places
    case: Case


def groups(read: ReadTable, question: Question) -> list[Group]:
    """Return the rows of a table by the kind of their vehicle."""
    return [Group(rows, _case(read.row(int(rows[0])), question)) for rows in alike_rows(read, question.pack)]


def alike_rows(read: ReadTable, pack: RulePack) -> list[Places]:
    """Return the rows whose vehicles are alike, kind by kind."""
    if not read.rows:
        return []
    codes, _ = distinct(*_kind(read, pack))
    order = np.argsort(codes, kind="stable")
    return np.split(order, np.cumsum(np.bincount(codes))[:-1])


def _kind(read: ReadTable, pack: RulePack) -> list[np.ndarray]:
    """Return the columns in which vehicles of one kind are alike."""
    bounds = steps(pack)
    built = read.text("built")
    return [
        read.text("category").places,
        read.text("driven_axle").places,
        read.number("towing"),
        # Standing passengers matter to reliefs alone.
        *([read.number("seats_standing")] if pack.allowances else []),
        wheels_per_side(read, "front"),
        wheels_per_side(read, "rear"),
        _step(read.number("max_mass_kg"), bounds.masses_kg),
        _step(read.number("speed_limited_kmh"), bounds.limited_kmh),
        _step(read.number("max_speed_kmh"), bounds.top_speeds_kmh),
        _day_step(built, bounds.built_from, "right"),
        _day_step(built, bounds.built_to, "left"),
    ]


def _step(values: FloatArray, bounds: Sequence[float]) -> FloatArray:
    """Return between which bounds each value lies, the upper one included; NaN where it is not given.

    Without any bound nobody asks, and all values are alike.
    """
    if not bounds:
        return np.zeros(len(values))
    return np.where(np.isnan(values), np.nan, np.searchsorted(np.array(bounds), values, "left"))


def _day_step(days: Texts, bounds: Sequence[str], side: str) -> Places:
    if not bounds:
        return np.zeros(len(days.places), np.int64)
    find = bisect_right if side == "right" else bisect_left
    return np.array([*(find(bounds, each) for each in days.distinct), -1], np.int64)[days.places]


def wheels_per_side(read: ReadTable, axle: str) -> FloatArray:
    """Return the wheels on each side of an axle, 1 where nothing is said."""
    return read.number_or(f"{axle}_wheels_per_side", 1.0)


def _case(row: dict[str, object], question: Question) -> Case:
    fitted = {
        name.removeprefix(CANDIDATE_PREFIX): value for name, value in row.items() if name.startswith(CANDIDATE_PREFIX)
    }
    return Case(vehicle(row), candidate(fitted), question.pack, question.season, question.date)


def law_speeds_kmh(read: ReadTable, found: Sequence[Group]) -> FloatArray:
    """Return the speed at which the law reads the load of each row, NaN where that is the vehicle's own."""
    made = np.full(read.rows, np.nan)
    for group in found:
        made[group.rows] = law_speed_kmh(group.case)
    return made


def with_numbers(case: Case, read: ReadTable) -> Case[Number]:
    """Return the case of a kind of vehicle with the numbers of all rows of a table in the place of its own."""
    known = case.vehicle
    many = Vehicle(
        max_speed_kmh=read.number("max_speed_kmh"),
        front=_axle(known.front, read),
        rear=_axle(known.rear, read),
        category=known.category,
        driven_axle=known.driven_axle,
        wheelbase_mm=read.number("wheelbase_mm"),
        centre_of_gravity_height_mm=read.number("centre_of_gravity_height_mm"),
        displayed_kmh=read.number("displayed_kmh"),
        true_kmh=read.number("true_kmh"),
        built=known.built,
        max_mass_kg=known.max_mass_kg,
        seats_standing=known.seats_standing,
        speed_limited_kmh=known.speed_limited_kmh,
        towing=known.towing,
        speedometer_tolerance_percent=read.number_or("speedometer_tolerance_percent", 0.0),
    )
    return Case(many, case.candidate, case.pack, case.season, case.date)


def _axle(axle: Axle, read: ReadTable) -> Axle[Number]:
    def number(name: str) -> FloatArray:
        return read.number(f"{axle.name}_{name}")

    return Axle(
        name=axle.name,
        max_axle_mass_kg=number("max_axle_mass_kg"),
        fitted=axle.fitted,
        kerb_axle_mass_kg=number("kerb_axle_mass_kg"),
        track_mm=number("track_mm"),
        wheels_per_side=axle.wheels_per_side,
        hub_bolt_circle=axle.hub_bolt_circle,
        hub_centre_bore_mm=number("hub_centre_bore_mm"),
        clearance_inboard_mm=number("clearance_inboard_mm"),
        clearance_outboard_mm=number("clearance_outboard_mm"),
        clearance_radial_mm=number("clearance_radial_mm"),
        min_rim_diameter_in=number("min_rim_diameter_in"),
        clearance_tolerance_mm=read.number_or(f"{axle.name}_clearance_tolerance_mm", 0.0),
        track_tolerance_mm=read.number_or(f"{axle.name}_track_tolerance_mm", 0.0),
    )


def hub(read: ReadTable, axle: str) -> Hub[Number]:
    """Return the hubs of an axle."""
    return Hub(*circles(read.text(f"{axle}_hub_bolt_circle")))
