"""The wax ring: what it says at every height of the flange."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.declaration import Refused
from calculators.plumbing.wax_ring import FITS, LOWER, REPAIR, TOO_THICK, TOO_THIN, wax_ring
from calculators.writing import inches

sixteenths = st.integers(-32, 64).map(lambda n: n / 16)
recesses = st.integers(2, 32).map(lambda n: n / 16)
rings = st.sampled_from([1.0, 1.5, 2.0])


def test_layers_build_up_the_rise() -> None:
    answer = wax_ring(rise_from="layers", floor_layers=0.75, flange_above_subfloor=0.25)
    assert answer["rise_used"] == 0.5
    assert answer["ring_to_use"] == "1-1/2 in ring"
    assert answer["working"][0] == "floor layers 3/4 in, 1/4 in flange above subfloor: 1/2 in floor above flange"


def test_measured_rise_leaves_the_layers_alone() -> None:
    assert wax_ring(rise=0.0, floor_layers=3.0)["rise_used"] == 0.0


def test_working_says_the_arithmetic() -> None:
    assert wax_ring(rise=0.5, ring=1.5)["working"] == [
        "gap = recess + floor above flange: 5/8 in + 1/2 in = 1-1/8 in",
        "squeeze = ring less gap: 1-1/2 in - 1-1/8 in = 3/8 in",
        "the seal wants a squeeze of 1/4 in to 7/8 in",
    ]


@pytest.mark.parametrize(
    ("rise", "ring", "fit"),
    [
        (-0.625, 1.0, TOO_THICK),
        (-0.5, 1.0, FITS),
        (0.125, 1.0, FITS),
        (0.1875, 1.0, TOO_THIN),
        (-0.0625, 1.5, TOO_THICK),
        (0.0, 1.5, FITS),
        (0.625, 1.5, FITS),
        (0.6875, 1.5, TOO_THIN),
    ],
)
def test_each_ring_has_its_band(rise: float, ring: float, fit: str) -> None:
    assert wax_ring(rise=rise, ring=ring)["fit"] == fit


@pytest.mark.parametrize(
    ("rise", "use", "spacer"),
    [
        (-0.625, LOWER, 0.0),
        (-0.25, "1 in ring", 0.0),
        (0.25, "1-1/2 in ring", 0.0),
        (0.75, "raise the flange: 3/4 in of spacer ring, then a 1 in ring", 0.75),
        (1.125, "raise the flange: 1 in of spacer ring, then a 1 in ring", 1.0),
        (1.25, REPAIR, 0.0),
    ],
)
def test_what_to_use(rise: float, use: str, spacer: float) -> None:
    answer = wax_ring(rise=rise)
    assert (answer["ring_to_use"], answer["spacer"]) == (use, spacer)


@pytest.mark.parametrize("eighths", range(-4, 6))
def test_every_floor_from_half_an_inch_below_the_flange_to_five_eighths_above_has_a_stock_ring(eighths: int) -> None:
    assert wax_ring(rise=eighths / 8)["ring_to_use"] in ("1 in ring", "1-1/2 in ring")


@pytest.mark.parametrize(
    ("rise", "order"), [(-0.25, (1, 0, 0)), (0.5, (0, 1, 0)), (0.75, (1, 0, 3)), (1.25, (1, 0, 0)), (-0.75, (1, 0, 0))]
)
def test_one_ring_is_ordered_and_the_spacers_below_it(rise: float, order: tuple[int, int, int]) -> None:
    answer = wax_ring(rise=rise)
    assert (answer["standard_rings"], answer["thick_rings"], answer["spacer_rings"]) == order


def test_rings_and_spacers_are_those_that_the_supplier_has() -> None:
    """A thick ring of 1-3/4 in reaches a floor 3/4 in above the flange; the usual one does not."""
    assert wax_ring(rise=0.75, thick_ring=1.75)["ring_to_use"] == "1-3/4 in ring"
    assert (wax_ring(rise=0.75, thick_ring=1.75)["thick_rings"], wax_ring(rise=0.75)["spacer_rings"]) == (1, 3)
    raised = wax_ring(rise=0.75, spacer_ring=0.5, standard_ring=1.125)
    assert raised["ring_to_use"] == "raise the flange: 1/2 in of spacer ring, then a 1-1/8 in ring"
    assert (raised["spacer"], raised["spacer_rings"]) == (0.5, 1)
    assert "raise it to stand 3/8 in above" in wax_ring(rise=0.5, flange_height=0.375)["cautions"][0]


@pytest.mark.parametrize(("recess", "thick", "most"), [(0.625, 1.5, 0.625), (0.625, 1.75, 0.875), (1.5, 1.5, 0.0)])
def test_how_far_the_thick_ring_reaches(recess: float, thick: float, most: float) -> None:
    """At that height of the floor it fits, and no higher; a deep bowl leaves it nothing above the flange."""
    assert wax_ring(recess=recess, thick_ring=thick)["thick_reach"] == most
    fits = [wax_ring(rise=most + more, recess=recess, ring=thick)["fits"] for more in (0, 0.0625)]
    assert fits == [most > 0, False]


def test_a_thick_ring_that_is_the_thinner_one_is_refused() -> None:
    with pytest.raises(Refused) as caught:
        wax_ring(standard_ring=1.25, thick_ring=1.0)
    assert caught.value.message == "The thick ring, 1 in, is thinner than the other, 1-1/4 in."


def test_cautions_stand_where_they_belong() -> None:
    assert wax_ring(rise=-0.25)["cautions"] == []
    assert "Set the bowl dry" in wax_ring(rise=-0.375)["cautions"][0]
    assert "The flange comes down" in wax_ring(rise=-0.625)["cautions"][0]
    assert "raise it to stand 1/4 in above" in wax_ring(rise=0.5)["cautions"][0]
    assert "Two rings stacked" in wax_ring(rise=0.75)["cautions"][1]


def test_limits_the_wrong_way_round_are_refused() -> None:
    with pytest.raises(Refused) as caught:
        wax_ring(least_squeeze=0.75, most_squeeze=0.5)
    assert caught.value.input == "least_squeeze"
    assert caught.value.message == "The least squeeze, 3/4 in, is more than the most, 1/2 in."


@given(rise=sixteenths, recess=recesses, ring=rings)
def test_gap_and_squeeze_make_up_the_ring(rise: float, recess: float, ring: float) -> None:
    answer = wax_ring(rise=rise, recess=recess, ring=ring)
    assert answer["gap"] + answer["squeeze"] == ring
    assert answer["gap"] == rise + recess


@given(rise=sixteenths, recess=recesses, ring=rings)
def test_a_higher_floor_never_squeezes_a_ring_more(rise: float, recess: float, ring: float) -> None:
    lower = wax_ring(rise=rise, recess=recess, ring=ring)
    higher = wax_ring(rise=rise + 0.125, recess=recess, ring=ring)
    assert higher["squeeze"] < lower["squeeze"]
    assert not (lower["fit"] == TOO_THIN and higher["fit"] != TOO_THIN)


@given(rise=sixteenths, recess=recesses)
def test_the_ring_that_is_named_fits(rise: float, recess: float) -> None:
    answer = wax_ring(rise=rise, recess=recess)
    thickness = {"1 in ring": 1.0, "1-1/2 in ring": 1.5}.get(answer["ring_to_use"])
    if thickness is not None:
        assert wax_ring(rise=rise, recess=recess, ring=thickness)["fit"] == FITS
    elif answer["spacer"] > 0:
        assert wax_ring(rise=rise - answer["spacer"], recess=recess, ring=1.0)["fit"] == FITS
    else:
        assert answer["ring_to_use"] in (LOWER, REPAIR)


@given(rise=sixteenths, recess=recesses)
def test_what_is_said_of_a_ring_is_of_the_one_to_use(rise: float, recess: float) -> None:
    """No ring given: squeeze and fit are those of the ring under 'Use', on its spacers, or of one that is named."""
    answer = wax_ring(rise=rise, recess=recess)
    named = answer["ring_to_use"] not in (LOWER, REPAIR)
    assert answer["fits"] == named
    if named:
        assert answer["ring_to_use"].endswith(f"{inches(answer['ring_judged'])} ring")
    assert answer["gap"] + answer["squeeze"] == answer["ring_judged"] + answer["spacer"]


def test_a_ring_that_is_given_is_judged_by_its_name() -> None:
    answer = wax_ring(rise=0.5, ring=1.0)
    assert (answer["ring_to_use"], answer["ring_judged"], answer["fit"]) == ("1-1/2 in ring", 1.0, TOO_THIN)
