"""The trench: slopes, spoil, ways out, what is said at each depth, and its drawing."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.concrete.trench import trench
from calculators.concrete.trench_drawing import trench_drawing
from calculators.concrete.trench_rules import BY_LOOK, REQUIRED, ROCK
from calculators.declaration import Refused
from calculators.run import compute, run

depths = st.floats(6, 240)
widths = st.floats(6, 240)
lengths = st.floats(12, 12000)
soils = st.sampled_from(["stable-rock", "a", "b", "c", "fill", "unknown"])


def test_a_trench_by_its_arithmetic() -> None:
    answer = compute(trench, {"depth": "6'", "width": "2'", "length": "60'", "soil": "b", "footing": "20'"})
    assert (answer["top_width"], answer["top_length"]) == (14 * 12, 72 * 12)
    assert answer["bank"] == pytest.approx(6 / 6 * (2 * 60 + 4 * 8 * 66 + 14 * 72))
    assert answer["loose"] == pytest.approx(answer["bank"] * 1.25)
    assert (answer["ladders"], answer["ladders_apart"]) == (2, 30 * 12)
    assert answer["fence"] == 2 * (answer["ground"] + answer["top_length"])
    assert answer["working"] == [
        "top = bottom + 2 x depth x run: 2' 0\" + 2 x 6' 0\" x 1 = 14' 0\" wide, 72' 0\" long",
        "in the ground 120 cu yd; loose, plus 25 %: 150 cu yd",
        "4 ft deep or more: one way out for each 50 ft, 25 ft to either side: 60 ft / 50 ft, rounded up = 2",
        "below the footing by 5' 0\": bottom at least 1 x 5' 0\" = 5' 0\" from it; it is 20' 0\"",
    ]


def test_the_way_to_a_footing_is_asked() -> None:
    with pytest.raises(Refused) as caught:
        run(trench, {"depth": 60.0})
    assert caught.value.input == "footing"


@pytest.mark.parametrize(
    ("footing", "footing_depth", "soil", "stops"),
    [
        (48.0, 12.0, "b", False),
        (47.0, 12.0, "b", True),
        (71.0, 12.0, "c", True),
        (72.0, 12.0, "fill", False),
        (71.0, 12.0, "unknown", True),
        (0.0, 60.0, "c", False),
        (0.0, 12.0, "stable-rock", False),
    ],
)
def test_below_a_footing_it_stops(footing: float, footing_depth: float, soil: str, stops: bool) -> None:
    """5 ft deep: nearer than the slope, or than 45 degrees from the footing's lower edge (IRC P2604.4)."""
    answer = run(trench, {"depth": 60.0, "footing": footing, "footing_depth": footing_depth, "soil": soil})
    assert answer["beside_footing"].startswith("stop") == stops
    assert any("from under a footing" in said for said in answer["cautions"]) == stops


def test_filled_ground_beside_a_house_is_type_c() -> None:
    assert trench(soil="fill", footing=240)["top_width"] == trench(soil="c", footing=240)["top_width"]
    soil = trench.input("soil")
    assert soil is not None
    labels = {choice.name: choice.label for choice in soil.choices}
    assert "dug before" not in labels["b"]
    assert any("type C" in said for said in trench(soil="b", footing=240)["cautions"])


def test_soil_that_nobody_judged_is_dug_as_the_weakest() -> None:
    judged, unknown = trench(soil="c", footing=240), trench(soil="unknown", footing=240)
    assert unknown["top_width"] == judged["top_width"]
    assert "Soil not judged yet: dug as type C, the weakest." in unknown["cautions"]


def test_deeper_than_twenty_feet_is_handed_over() -> None:
    with pytest.raises(Refused) as caught:
        run(trench, {"depth": 241.0, "footing": 240.0})
    assert caught.value.input == "depth"
    assert "registered professional engineer" in caught.value.message
    assert trench(depth=240, footing=400)["protection"] == REQUIRED


def test_a_crew_may_protect_earlier_but_not_later() -> None:
    assert run(trench, {"depth": 50.0, "protect_from": 48.0, "footing": 240.0})["protection"] == REQUIRED
    with pytest.raises(Refused, match=r"looser than the .* of 29 CFR 1926\.652"):
        run(trench, {"protect_from": 61.0, "footing": 240.0})
    with pytest.raises(Refused, match=r"looser than the .* of 29 CFR 1926\.651\(j\)\(2\)"):
        run(trench, {"set_back": 23.0, "footing": 240.0})


@pytest.mark.parametrize(
    ("depth", "soil", "walls", "slope", "protection"),
    [
        (48.0, "b", "sloped", "1 to 1", BY_LOOK),
        (48.0, "b", "by-depth", "upright", BY_LOOK),
        (60.0, "b", "by-depth", "1 to 1", REQUIRED),
        (96.0, "stable-rock", "sloped", "upright", ROCK),
    ],
)
def test_walls_and_protection(depth: float, soil: str, walls: str, slope: str, protection: str) -> None:
    answer = trench(depth=depth, soil=soil, walls=walls, footing=240)
    assert (answer["slope"], answer["protection"]) == (slope, protection)


def test_the_competent_person_is_named_in_every_answer() -> None:
    for depth in (12.0, 59.0, 60.0, 240.0):
        assert trench(depth=depth, footing=240)["cautions"][0].startswith(
            "A competent person looks before anybody goes in"
        )
    assert "competent person decides that on the site" in trench.cannot_decide


@pytest.mark.parametrize(
    ("given", "words"),
    [
        ({"soil": "a"}, "is never type A"),
        ({"depth": 36.0, "walls": "by-depth"}, "bury a man who kneels"),
        ({"depth": 49.0}, "test it before anybody goes down"),
        ({"depth": 72.0}, "guardrail, fence or barricade"),
    ],
)
def test_cautions_stand_where_they_belong(given: dict[str, float | str], words: str) -> None:
    assert any(words in caution for caution in run(trench, {"footing": 240.0, **given})["cautions"])
    assert not any(words in caution for caution in trench(depth=48.0, soil="b", footing=240)["cautions"])


@given(depth=depths, width=widths, length=lengths, soil=soils)
def test_the_heap_holds_the_spoil(depth: float, width: float, length: float, soil: str) -> None:
    answer = trench(depth=depth, width=width, length=length, soil=soil, footing=240)
    heap = answer["heap_width"] * answer["heap_height"] / 2 * answer["top_length"]
    assert heap == pytest.approx(answer["loose"] * 1728)
    assert answer["bank"] >= width * length * depth / 1728 - 1e-9


@given(depth=depths, width=widths, length=lengths)
def test_weaker_soil_never_takes_a_narrower_trench(depth: float, width: float, length: float) -> None:
    order = ["stable-rock", "a", "b", "c"]
    tops = [trench(depth=depth, width=width, length=length, soil=soil, footing=400)["top_width"] for soil in order]
    assert tops == sorted(tops)


@given(depth=st.floats(48, 240), length=lengths)
def test_nobody_is_further_than_25_feet_from_a_way_out(depth: float, length: float) -> None:
    answer = trench(depth=depth, length=length, footing=240)
    assert answer["ladders"] >= 1
    assert answer["ladders_apart"] / 2 <= 300 + 1e-6
    assert answer["ladder_length"] > depth + 36


def drawn(**given: float | str) -> dict[str, object]:
    """The drawing of a trench."""
    values = {"footing": 240.0, **given}
    filled = {item.name: values.get(item.name, item.default) for item in trench.inputs}
    return trench_drawing(filled, run(trench, values))


def test_the_drawing_says_the_figures() -> None:
    sheet = drawn(depth=72.0, soil="b", length=720.0)
    assert sheet["alt"] == (
        "Section: the trench is 6' 0\" deep, 2' 0\" wide at the bottom and 14' 0\" at the top. Its walls are 1 to 1. "
        "Spoil lies on one side, 2' 0\" from the edge. Ladders, ramps or steps: 2, standing 3 ft above the edge."
    )
    texts = [shape["text"] for shape in sheet["shapes"] if "text" in shape]  # type: ignore[attr-defined]
    assert texts == [
        "spoil",
        "ladder, 3 ft above the edge",
        "wall: 1 to 1",
        "6' 0\"",
        "2' 0\"",
        "2' 0\"",
        "14' 0\"",
    ]


def test_a_shallow_trench_is_drawn_without_a_ladder() -> None:
    sheet = drawn(depth=36.0)
    assert "ladder" not in str(sheet["shapes"])
    assert "No ladder is asked for at this depth." in str(sheet["alt"])


@given(depth=st.floats(48, 240), width=widths, soil=soils)
def test_the_ladder_stands_in_the_trench(depth: float, width: float, soil: str) -> None:
    sheet = drawn(depth=depth, width=width, soil=soil)
    areas = [shape for shape in sheet["shapes"] if shape["kind"] == "area"]  # type: ignore[attr-defined]
    foot, head = areas[2]["points"][0], areas[2]["points"][1]
    assert -width / 2 - 1e-6 <= foot[0] <= width / 2 + 1e-6
    assert head[1] == pytest.approx(depth + 36)
