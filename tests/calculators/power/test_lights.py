"""Lights of a room, on a circuit, in a closet, and what recessed ones lose."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.declaration import Refused
from calculators.power.can_heat_loss import can_heat_loss
from calculators.power.closet_light_place import CLEARANCE, closet_light_place
from calculators.power.closet_light_place_drawing import closet_light_place_drawing
from calculators.power.lighting_load import lighting_load
from calculators.power.lumen_layout import lumen_layout
from calculators.power.lumen_layout_drawing import lumen_layout_drawing
from calculators.run import run

rooms = st.floats(60, 480)


@given(length=rooms, width=rooms, light=st.floats(5, 60), lumens=st.floats(400, 4000))
def test_layout_is_enough_and_stands_close_enough(length: float, width: float, light: float, lumens: float) -> None:
    answer = lumen_layout(length=length, width=width, light=light, lumens=lumens)
    assert answer["count"] == answer["along"] * answer["across"]
    assert answer["count"] >= answer["by_formula"] - 1e-6
    assert answer["gained"] >= light * (1 - 1e-6)
    assert max(answer["spacing_along"], answer["spacing_across"]) <= answer["most_spacing"] * (1 + 1e-9)


@given(length=rooms, width=rooms)
def test_the_fewest_in_full_rows(length: float, width: float) -> None:
    answer = lumen_layout(length=length, width=width)
    most = answer["most_spacing"]
    fewest = min(
        along * across
        for along in range(1, 60)
        for across in range(1, 60)
        if along * across >= answer["by_formula"] - 1e-6
        and length / along <= most * (1 + 1e-9)
        and width / across <= most * (1 + 1e-9)
    )
    assert answer["count"] == fewest


def test_layout_refuses_and_cautions() -> None:
    with pytest.raises(Refused) as caught:
        lumen_layout(ceiling=72, work_plane=60.5)
    assert caught.value.input == "work_plane"
    with pytest.raises(Refused) as caught:
        lumen_layout(length=2400, width=2400)
    assert caught.value.input == "lumens"
    with pytest.raises(Refused) as caught:
        lumen_layout(length=2400, width=2400, light=1, lumens=50000, most_ratio=0.4)
    assert caught.value.input == "most_ratio"
    assert "weaker lights" in lumen_layout(length=60, width=60, lumens=5000)["cautions"][0]


def test_layout_drawing_has_every_light() -> None:
    values = {item.name: item.default for item in lumen_layout.inputs}
    answer = run(lumen_layout, values)
    drawn = lumen_layout_drawing(values, answer)
    circles = [shape for shape in drawn["shapes"] if shape["kind"] == "circle"]
    assert len(circles) == answer["count"]
    assert f"with {answer['count']} lights" in drawn["alt"]


@given(count=st.integers(1, 200), watts=st.floats(1, 100), cut=st.floats(0, 50), dimmer=st.floats(250, 1000))
def test_no_dimmer_and_no_circuit_is_loaded_over(count: int, watts: float, cut: float, dimmer: float) -> None:
    answer = lighting_load(count=count, watts=watts, dimmer=dimmer, cut=cut)
    assert answer["most_on_dimmer"] * watts <= answer["dimmer_holds"] + 1e-6
    assert (answer["most_on_dimmer"] + 1) * watts > answer["dimmer_holds"] - 1e-6
    assert answer["dimmers"] * answer["most_on_dimmer"] >= count > (answer["dimmers"] - 1) * answer["most_on_dimmer"]
    assert answer["fits"] == (count <= answer["most_on_circuit"])


def test_load_refuses_a_dimmer_that_is_too_small_and_says_when_a_circuit_is_full() -> None:
    with pytest.raises(Refused) as caught:
        lighting_load(watts=200)
    assert caught.value.message == "The dimmer's 150 W do not carry one light of 200 W."
    assert "part the lights" in lighting_load(count=100, watts=20)["cautions"][0]
    assert lighting_load(other=5000)["most_on_circuit"] == 0


@given(
    kind=st.sampled_from([kind for kind, clearance in CLEARANCE.items() if clearance > 0]),
    ceiling=st.integers(80, 144),
    hangs=st.integers(0, 12),
    shelf=st.integers(0, 24),
    rod=st.integers(60, 80),
)
def test_the_nearest_place_is_clear_and_nearer_is_not(
    kind: str, ceiling: int, hangs: int, shelf: int, rod: int
) -> None:
    place = closet_light_place(
        kind=kind, ceiling=ceiling, hangs=hangs, from_back=200, from_side=200, shelf_depth=shelf, rod=rod
    )
    least = place["least_from_back"]
    assert closet_light_place(
        kind=kind, ceiling=ceiling, hangs=hangs, from_back=least, from_side=200, shelf_depth=shelf, rod=rod
    )["fits"]
    assert not closet_light_place(
        kind=kind, ceiling=ceiling, hangs=hangs, from_back=least - 0.1, from_side=200, shelf_depth=shelf, rod=rod
    )["fits"]


def test_the_side_counts_as_the_back_does() -> None:
    answer = closet_light_place(from_back=40, from_side=20)
    assert (answer["back"], answer["side"], answer["fits"]) == (pytest.approx((16**2 + 22**2) ** 0.5), 8, False)
    assert answer["verdict"] == "too near: 8 in where 12 in is least"


def test_open_lamps_are_allowed_nowhere_and_identified_ones_anywhere() -> None:
    assert closet_light_place(kind="open", from_back=200, from_side=200)["verdict"] == "not allowed in a closet"
    inside = closet_light_place(kind="identified", from_back=0, from_side=0)
    assert inside["fits"]
    assert "identified for use" in inside["cautions"][0]


@pytest.mark.parametrize(("given", "name"), [({"hangs": 96.0}, "hangs"), ({"rod": 97.0}, "rod")])
def test_closet_light_refuses_what_does_not_go_in(given: dict[str, float], name: str) -> None:
    with pytest.raises(Refused) as caught:
        closet_light_place(**given)
    assert caught.value.input == name


def test_closet_light_drawing_says_the_distance() -> None:
    values: dict[str, Any] = {"ceiling": 96.0, "from_back": 18.0, "hangs": 0.0}
    answer = closet_light_place(kind="recessed-led", hangs=0, from_back=18)
    drawn = closet_light_place_drawing(values, answer)
    assert "18 in from the back wall, 6 in clear where 6 in is needed" in drawn["alt"]
    assert [12.0, 96.0] in drawn["shapes"][0]["points"]


@given(count=st.integers(1, 50), diameter=st.floats(4, 12), can=st.floats(1, 20), leak=st.floats(0, 5))
def test_heat_grows_with_lights_and_leaks_and_surface_is_never_worse(
    count: int, diameter: float, can: float, leak: float
) -> None:
    answer = can_heat_loss(
        count=count, kind="contact", diameter=diameter, r_ceiling=38, r_can=can, leak=leak, degree_days=5000
    )
    assert answer["times"] >= 1
    assert answer["recessed"] - answer["surface"] == pytest.approx(answer["more"])
    twice = can_heat_loss(
        count=2 * count, kind="contact", diameter=diameter, r_ceiling=38, r_can=can, leak=leak, degree_days=5000
    )
    assert twice["recessed"] == pytest.approx(2 * answer["recessed"])
    colder = can_heat_loss(
        count=count, kind="contact", diameter=diameter, r_ceiling=38, r_can=can, leak=leak, degree_days=10000
    )
    assert colder["more"] == pytest.approx(2 * answer["more"])
    assert (
        can_heat_loss(
            count=count, kind="no-contact", diameter=diameter, r_ceiling=38, r_can=can, leak=leak, degree_days=5000
        )["recessed"]
        > answer["recessed"]
    )


def test_heat_cautions_and_refusal() -> None:
    assert can_heat_loss(leak=0)["cautions"] == []
    assert "set the ceiling on fire" in can_heat_loss(kind="no-contact", leak=0)["cautions"][0]
    assert "moisture" in can_heat_loss(leak=1)["cautions"][0]
    with pytest.raises(Refused) as caught:
        can_heat_loss(r_ceiling=3)
    assert caught.value.input == "r_can"
