"""The lock schedule: a function for each opening, the totals, the key groups and the keys."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.declaration import Refused
from calculators.doors.lock_schedule import FUNCTIONS, REASONS, lock_schedule
from calculators.run import compute, run, shown


def opening(name: str, use: str, **more: Any) -> dict[str, Any]:
    return {"name": name, "use": use, "group": "", "deadbolt": "by-use", "inside_key": False, **more}


def scheduled(openings: list[dict[str, Any]], keys: int, screws: int) -> dict[str, Any]:
    return run(lock_schedule, {"openings": openings, "keys_each": keys, "screws_each": screws})


FRONT = opening("Front door", "outside-door", group="house")
BACK = opening("Back door", "outside-door", group="House")
SHED = opening("Shed", "outside-door")
BEDROOM = opening("Bedroom", "bedroom")
BATH = opening("Bath", "bathroom")
CLOSET = opening("Closet", "closet")


def test_a_small_dwelling() -> None:
    found = scheduled([FRONT, BACK, SHED, BEDROOM, BATH, CLOSET], 2, 4)
    assert [line["function"] for line in found["schedule"]] == [
        *("keyed entry", "keyed entry", "keyed entry"),
        *("privacy", "privacy", "passage"),
    ]
    assert (found["keyed_entry"], found["privacy"], found["passage"], found["deadbolts"]) == (3, 2, 1, 3)
    assert (found["cylinders"], found["keys"], found["strike_screws"]) == (6, 12, 12)
    assert found["cautions"] == []


def test_the_example_is_read_and_shown_as_people_write() -> None:
    texts = shown(lock_schedule, compute(lock_schedule, lock_schedule.example))
    assert [(line["name"], line["function"], line["deadbolt"]) for line in texts["schedule"]] == [
        ("Front door", "keyed entry", "yes"),
        ("Back door", "keyed entry", "yes"),
        ("Bedroom 1", "privacy", "no"),
        ("Bath", "privacy", "no"),
        ("Hall closet", "passage", "no"),
    ]
    assert texts["key_groups"] == [{"group": "house", "openings": "2", "cylinders": "4", "keys": "8"}]


def test_one_word_makes_one_key_group_capitals_or_not() -> None:
    groups = scheduled([FRONT, BACK, SHED], 3, 4)["key_groups"]
    assert groups == [
        {"group": "house", "openings": 2, "cylinders": 4, "keys": 12},
        {"group": "Shed (own key)", "openings": 1, "cylinders": 2, "keys": 6},
    ]


def test_every_use_that_can_be_chosen_has_a_function_and_a_reason() -> None:
    uses = next(c for c in lock_schedule.inputs[0].columns if c.name == "use")
    assert {choice.name for choice in uses.choices} == set(FUNCTIONS) == set(REASONS)


@pytest.mark.parametrize("use", sorted(FUNCTIONS))
def test_a_key_on_the_inside_is_refused_on_every_door(use: str) -> None:
    with pytest.raises(Refused, match="without a key") as refused:
        scheduled([FRONT, opening("Other", use, inside_key=True)], 2, 4)
    assert refused.value.input == "openings"
    assert "'Other'" in refused.value.message


def test_a_key_group_makes_a_utility_room_keyed_and_asks_for_a_try_from_inside() -> None:
    found = scheduled([FRONT, opening("Meter room", "utility-room", group="owner")], 2, 4)
    line = found["schedule"][1]
    assert (line["function"], line["deadbolt"], line["group"]) == ("keyed entry", False, "owner")
    assert found["cautions"] == [
        "'Meter room' is keyed from outside: try it from inside, locked, before anybody uses it."
    ]


def test_a_bathroom_keeps_its_privacy_lock_whatever_group_it_is_given() -> None:
    found = scheduled([FRONT, opening("Bath", "bathroom", group="owner")], 2, 4)
    assert found["schedule"][1]["function"] == "privacy"
    assert found["groups"] == 1
    assert "its key group is not used" in found["cautions"][0]


def test_a_deadbolt_inside_the_dwelling_is_a_caution() -> None:
    found = scheduled([FRONT, opening("Bedroom", "bedroom", deadbolt="yes")], 2, 4)
    assert found["deadbolts"] == 2
    assert "can shut somebody in" in found["cautions"][0]


def test_an_outside_door_without_a_deadbolt_is_a_caution() -> None:
    found = scheduled([opening("Front door", "outside-door", deadbolt="no")], 2, 4)
    assert (found["deadbolts"], found["cylinders"]) == (0, 1)
    assert found["cautions"] == ["'Front door' is a way in from outside and has no deadbolt."]


def test_a_list_without_an_outside_door_asks_for_the_way_out() -> None:
    assert scheduled([BATH], 2, 4)["cautions"] == ["No outside door is in the list: is the way out on another list?"]


@pytest.mark.parametrize(
    ("openings", "words"),
    [
        ([], "no opening"),
        ([opening("  ", "bedroom")], "no name"),
        ([BATH, opening("bath", "bathroom")], "two openings are named 'bath'"),
    ],
)
def test_a_list_that_cannot_be_read_is_refused(openings: list[dict[str, Any]], words: str) -> None:
    with pytest.raises(Refused, match=words):
        scheduled(openings, 2, 4)


ROW = st.fixed_dictionaries(
    {
        "use": st.sampled_from(sorted(FUNCTIONS)),
        "group": st.sampled_from(["", "house", "House", "owner"]),
        "deadbolt": st.sampled_from(["by-use", "yes", "no"]),
    }
)


@given(st.lists(ROW, min_size=1, max_size=12), st.integers(1, 10), st.integers(2, 8), st.randoms())
def test_the_parts_add_up_in_any_order(rows: list[dict[str, Any]], keys: int, screws: int, random: Any) -> None:
    openings = [{"name": f"Door {n}", "inside_key": False, **row} for n, row in enumerate(rows)]
    found = scheduled(openings, keys, screws)
    assert found["keyed_entry"] + found["privacy"] + found["passage"] == len(openings) == len(found["schedule"])
    assert sum(group["cylinders"] for group in found["key_groups"]) == found["cylinders"]
    assert sum(group["keys"] for group in found["key_groups"]) == found["keys"] == keys * found["cylinders"]
    assert found["cylinders"] == found["keyed_entry"] + found["deadbolts"]
    assert found["strike_screws"] == screws * sum(line["deadbolt"] for line in found["schedule"])
    shuffled = list(openings)
    random.shuffle(shuffled)
    again = scheduled(shuffled, keys, screws)
    for name in ("keyed_entry", "privacy", "passage", "deadbolts", "cylinders", "groups", "keys"):
        assert again[name] == found[name]
