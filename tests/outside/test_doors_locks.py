"""Locks against published standards: one table of cases a source, the source named beside it."""

from __future__ import annotations

from typing import Any

import pint
import pytest
from shapely.geometry import LineString, Polygon

from calculators.declaration import Refused
from calculators.doors.lock_preparation import lock_preparation
from calculators.doors.lock_schedule import lock_schedule
from calculators.run import run

DEFAULTS = {declared.name: declared.default for declared in lock_preparation.inputs}


def prepared(**inputs: Any) -> dict[str, Any]:
    return run(lock_preparation, {"thickness": 1.75, **inputs})


def scheduled(*uses: str, **more: Any) -> dict[str, Any]:
    rows = [{"name": use, "use": use, "group": "", "deadbolt": "by-use", "inside_key": False, **more} for use in uses]
    return run(lock_schedule, {"openings": rows})


# ANSI/BHMA A156.115, series 160 and 161, as the Lock Industry Standards and Training Council's dictionary gives them:
# cross bore, backset, edge bore, width and height of the mortise. Inches; prepared to 1/64 in.
@pytest.mark.parametrize(
    ("series", "backset", "cross_bore", "centre", "edge_bore", "width", "height"),
    [
        ("160", 2.375, 2.125, 2.375, 1.0, 1.0, 2.25),
        ("161", 2.75, 2.125, 2.75, 1.0, 1.125, 2.25),
    ],
)
def test_the_standard_preparations(
    series: str, backset: float, cross_bore: float, centre: float, edge_bore: float, width: float, height: float
) -> None:
    found = prepared(backset=backset)
    names = ("cross_bore_diameter", "cross_bore_centre", "edge_bore_diameter", "faceplate_width", "faceplate_height")
    wanted = (cross_bore, centre, edge_bore, width, height)
    assert [found[name] for name in names] == pytest.approx(wanted, abs=1 / 64), series


# The metric names of the two backsets: 60.3 mm and 69.9 mm (trade practice; conversion by the library pint).
@pytest.mark.parametrize(("backset", "millimetres"), [(2.375, 60.3), (2.75, 69.9)])
def test_the_backsets_in_millimetres(backset: float, millimetres: float) -> None:
    found = prepared(backset=backset)["cross_bore_centre"]
    units: Any = pint.UnitRegistry()
    assert (found * units.inch).to("mm").magnitude == pytest.approx(millimetres, abs=0.06)


# 2010 ADA Standards 404.2.7: operable parts of door hardware 34 in least and 48 in most above the floor.
@pytest.mark.parametrize(
    ("height", "within"),
    [(33.5, False), (33.9375, False), (34, True), (36, True), (48, True), (48.0625, False), (50, False)],
)
def test_the_reach_of_an_accessible_door(height: float, within: bool) -> None:
    assert prepared(height=height, accessible=True)["fits"] is within
    assert prepared(height=height, accessible=False)["fits"] is True


def test_the_crews_height_and_deadbolt_are_both_within_reach() -> None:
    """2010 ADA Standards 404.2.7, for the knob and for the deadbolt above it."""
    assert prepared(accessible=True)["fits"] is True
    assert prepared(kind="deadbolt", accessible=True)["fits"] is True


def test_the_crews_height_is_the_usual_one() -> None:
    """NAVEDTRA 14044, chapter 6: knob 36 to 38 in above the floor line, 36 in usual."""
    assert 36 <= prepared()["centre_height"] <= 38


# Bevels as published: 1/8 in in 2-1/4 in (Building Trades Pocketbook, 1905); 1/8 in in 2 in is common practice. Seen in
# section the door is a polygon, and shapely measures the hole's centre line from each face's edge.
@pytest.mark.parametrize(("rise", "run"), [(0.125, 2.25), (0.125, 2.0)])
@pytest.mark.parametrize("thickness", [1.375, 1.75, 2.25])
def test_the_centre_from_both_edges(rise: float, run: float, thickness: float) -> None:
    slope = rise / run
    door = Polygon([(0, 0), (12, 0), (12, thickness), (thickness * slope, thickness)])
    found = prepared(thickness=thickness, bevel=slope)
    for at, name in ((0.0, "cross_bore_centre"), (thickness, "low_edge")):
        face = LineString([(-1, at), (found["cross_bore_centre"], at)]).intersection(door)
        assert found[name] == pytest.approx(face.length, abs=1e-9)


def test_a_bevel_of_the_pocketbook_over_its_own_thickness_takes_off_an_eighth() -> None:
    """Building Trades Pocketbook, 1905, doors: the bevel that locks are made to, 1/8 in in 2-1/4 in."""
    found = prepared(thickness=2.25, bevel=0.125 / 2.25)
    assert found["cross_bore_centre"] - found["low_edge"] == pytest.approx(0.125)


def test_the_gap_at_the_lock_edge() -> None:
    """Architectural Woodwork Standards, 1st edition 2009, appendix B section 9: 1/8 in at the lock edge."""
    assert DEFAULTS["reveal"] == 0.125


# A municipal security code (Sioux Falls, South Dakota, 1992 Code section 11-63): strike plates on four No. 8 by 3 in
# screws, at least 3/4 in in the stud; a deadbolt of 1 in throw.
@pytest.mark.parametrize(
    ("screw", "to_stud", "passes"), [(3.0, 1.25, True), (3.0, 2.25, True), (3.0, 2.375, False), (2.0, 1.5, False)]
)
def test_the_screws_of_a_deadbolt_strike(screw: float, to_stud: float, passes: bool) -> None:
    found = prepared(kind="deadbolt", strike_screw=screw, to_stud=to_stud)
    assert found["fits"] is passes
    assert found["strike_screws"].startswith("4 wood screws, No. 8 or heavier")


def test_the_throw_of_a_deadbolt() -> None:
    """IPMC 304.18.1 (from memory; the municipal code above says the same): a throw of 1 in or more."""
    found = prepared(kind="deadbolt", reveal=0.125)
    assert found["engagement"] + 0.125 == 1.0
    assert found["strike_bore_depth"] >= 1.0


# IRC R311.2: the door on the way out opens from inside without a key. The same for each door of the dwelling.
@pytest.mark.parametrize("use", ["outside-door", "garage-to-house"])
def test_a_way_out_that_needs_a_key_is_refused(use: str) -> None:
    with pytest.raises(Refused, match=r"IRC R311\.2"):
        scheduled(use, inside_key=True)


# Another municipal security code (St. Charles, Illinois, 15.08.230): outside doors and doors from the garage into a
# private dwelling have a deadlock.
@pytest.mark.parametrize(
    ("use", "deadbolt"), [("outside-door", 1), ("garage-to-house", 1), ("bedroom", 0), ("bathroom", 0), ("closet", 0)]
)
def test_which_doors_have_a_deadbolt(use: str, deadbolt: int) -> None:
    assert scheduled(use)["deadbolts"] == deadbolt


# Common practice, no published standard: entry at outside doors, privacy at bedrooms and baths, passage at closets.
@pytest.mark.parametrize(
    ("use", "function"),
    [
        ("outside-door", "keyed entry"),
        ("bedroom", "privacy"),
        ("bathroom", "privacy"),
        ("closet", "passage"),
        ("hall-or-other-room", "passage"),
    ],
)
def test_the_usual_function_of_a_room(use: str, function: str) -> None:
    assert scheduled(use)["schedule"][0]["function"] == function
