"""What a task takes: by the sizes of the job and never by the book's example, and by what each material serves."""

from __future__ import annotations

import re
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from build_tools.book.checks.context import Context
from build_tools.book.references import figure_of
from build_tools.plan.checks import check_jobs
from build_tools.plan.needs import TakeOff
from build_tools.plan.take_off import take_off
from tests.build_tools.plan.drawn_jobs import job_of
from tests.build_tools.plan.fit_out_jobs import BATH, PAD, PEOPLE, ROOM, TILE, book
from tests.builds import change, context_of, copy_book
from tests.jobs import two_rooms

AREA = re.compile(r"\d (sq )?(ft|yd)$")
COUNTED = re.compile(r"\b(door|doorway|doorways|coat|downspout|riser|tub|toilet|bath|wall end|cover|box|post)\b")


def taken(task: dict[str, Any], space: dict[str, Any] = ROOM) -> TakeOff:
    """The take-off of one task in one space."""
    entry = job_of({"it": task}, spaces={"room": space}, people=PEOPLE)
    here = replace(book().book, jobs={"drawn": entry}, _standards=None)
    return take_off(Context.of(here, book().memo), entry, "it")


def amounts(task: dict[str, Any], space: dict[str, Any] = ROOM) -> dict[str, float]:
    """What it takes of each material."""
    made = taken(task, space)
    assert made.diagnostics == []
    return {need.material: need.number for need in made.materials}


def complaints(task: dict[str, Any], space: dict[str, Any] = ROOM) -> list[tuple[str, str]]:
    """The messages, each with what to write."""
    return [(diagnostic.message, diagnostic.hint) for diagnostic in taken(task, space).diagnostics]


@pytest.mark.parametrize(
    ("task", "message", "write"),
    [
        (
            {"procedure": "flooring-receiving"},
            "gives 'strip-floor-take-off' no 'rooms': the book's own example would be ordered",
            "write 'inputs: {strip-floor-take-off: {rooms: 'space:rooms'}}'",
        ),
        (
            {"procedure": "closet-shelf-pole"},
            "gives 'closet' no 'width': the book's own example would be ordered",
            "write 'inputs: {closet: {width: 'space:width'}}'",
        ),
        (
            {
                "procedure": "base-and-shoe",
                "quantity": "space:perimeter",
                "inputs": {"trim-take-off": {"rooms": "space:rooms"}},
            },
            "gives 'trim-take-off' no 'openings': the book's own example would be ordered",
            "write 'inputs: {trim-take-off: {openings: ...}}'",
        ),
        (
            {"procedure": "parking-pad", "inputs": {"slab-concrete": {"length": "20'"}}},
            "gives 'slab-concrete' no 'width', 'ends' and 'reinforced': the book's own example would be ordered",
            "write 'inputs: {slab-concrete: {width: 'space:width', ends: ..., reinforced: ...}}'",
        ),
        (
            {"procedure": "switch-device", "count": 6},
            "gives 'device-for-place' no 'device' and 'room': the book's own example would be ordered",
            "write 'inputs: {device-for-place: {device: ..., room: ...}}'",
        ),
    ],
)
def test_a_task_without_its_sizes_is_a_mistake(task: dict[str, Any], message: str, write: str) -> None:
    assert complaints(task) == [(message, write)]


@pytest.mark.slow
def test_check_names_the_line_of_the_task(tmp_path: Path) -> None:
    book = two_rooms(tmp_path)
    file = book / "jobs" / "two-rooms.yaml"
    change(file, "    inputs: {floor-finish: {rooms: 'space:rooms'}}\n    serves: {doors: '1'}\n", "")
    assert [str(diagnostic) for diagnostic in check_jobs(context_of(book))] == [
        "procedures/jobs/two-rooms.yaml:20:5: error: does not say its 'doors': materials of 'floor-recoat' are counted "
        "by that\n    write 'serves: {doors: ...}', 0 where there are none; or measures of these names in its space",
        "procedures/jobs/two-rooms.yaml:20:5: error: gives 'floor-finish' no 'rooms': the book's own example would be "
        "ordered\n    write 'inputs: {floor-finish: {rooms: 'space:rooms'}}'",
    ]


def test_nothing_of_the_example_is_ordered_for_a_task_that_says_a_part() -> None:
    """Neither the other side of the example's pad nor its bars."""
    made = taken({"procedure": "parking-pad", "inputs": {"slab-concrete": {"length": "90'"}}})
    assert {need.material: need.number for need in made.materials}["ready-mix-concrete"] == 0
    plain = amounts({"procedure": "parking-pad", "inputs": {"slab-concrete": PAD}})
    assert plain["reinforcing-bar"] == plain["bar-supports"] == plain["tie-wire"] == 0
    barred = amounts({"procedure": "parking-pad", "inputs": {"slab-concrete": {**PAD, "reinforced": "yes"}}})
    assert barred["bar-supports"] == 50
    assert 0 < barred["tie-wire"] <= 1


def test_an_area_stands_for_the_rooms_and_not_beside_those_of_the_example() -> None:
    by_area = {"procedure": "floor-filling", "inputs": {"strip-floor-take-off": {"measured_area": "300 sq ft"}}}
    by_rooms = {"procedure": "floor-filling", "inputs": {"strip-floor-take-off": {"rooms": "space:rooms"}}}
    assert amounts(by_area) == amounts(by_rooms)


def finish(space: dict[str, Any], procedure: str = "floor-finishing") -> TakeOff:
    """The finish of a room with two doors."""
    return taken(
        {"procedure": procedure, "inputs": {"floor-finish": {"rooms": "space:rooms"}}, "serves": {"doors": "2"}}, space
    )


def test_hours_are_those_of_the_room_without_the_example_s_100_sq_ft() -> None:
    """Three coats of 0.33 h for each 100 sq ft, over 300 sq ft."""
    assert finish(ROOM).hours == pytest.approx(3 * 0.33 * 3)
    assert finish({**ROOM, "length": "40 ft"}).hours == pytest.approx(6 * 0.33 * 3)


def test_a_setting_of_the_book_holds_for_every_task() -> None:
    """A recoat is one coat, whatever the crew's standard for a new floor."""
    ones = {need.material: need.number for need in finish(ROOM, "floor-recoat").materials}
    threes = {need.material: need.number for need in finish(ROOM).materials}
    assert ones["floor-finish"] * 3 == pytest.approx(threes["floor-finish"])
    assert (ones["finish-strainers"], threes["finish-strainers"]) == (1, 3)


def test_what_a_doorway_takes_does_not_grow_with_the_floor() -> None:
    nail = {
        "procedure": "floor-nailing",
        "inputs": {"strip-floor-take-off": {"rooms": "space:rooms"}},
        "serves": {"lower-doorways": "2", "turned-rows": "6 ft"},
    }
    small, large = amounts(nail), amounts(nail, {**ROOM, "length": "41 ft"})
    assert small["reducer-strip"] == large["reducer-strip"] == 6
    assert small["slip-tongue-strip"] == large["slip-tongue-strip"] == 6
    assert small["floor-cleats"] < large["floor-cleats"]


def test_a_space_s_own_measure_says_what_is_served_and_the_task_goes_before_it() -> None:
    tile = {key: value for key, value in TILE.items() if key != "serves"}
    bath = {**BATH, "measures": {"doorways": "2", "sealed-joints": "10 ft"}}
    assert amounts(tile, bath)["tile-edge-trim"] == 6
    assert amounts({**tile, "serves": {"doorways": "1"}}, bath)["tile-edge-trim"] == 3
    assert amounts({**tile, "serves": {"doorways": "0", "sealed-joints": "40 ft"}}, bath)["tile-sealant"] == 2
    assert amounts({**tile, "serves": {"doorways": "1", "sealed-joints": "0"}}, bath)["tile-sealant"] == 0


@pytest.mark.parametrize(
    ("serves", "message", "write"),
    [
        (
            {},
            "does not say its 'doorways' and 'sealed-joints': materials of 'tile-floor' are counted by that",
            "write 'serves: {doorways: ..., sealed-joints: ...}', 0 where there are none; "
            "or measures of these names in its space",
        ),
        (
            {"doorways": "1", "sealed-joints": "8 ft", "dorways": "1"},
            "no material of 'tile-floor' is counted by it",
            "did you mean 'doorways'?",
        ),
        (
            {"doorways": "3 ft", "sealed-joints": "8 ft"},
            "'3 ft' does not fit: 'tile-edge-trim' goes by a number of doorways",
            "",
        ),
        (
            {"doorways": "1", "sealed-joints": "2"},
            "'2' does not fit: 'tile-sealant' goes by 20 ft of sealed-joints",
            "",
        ),
        ({"doorways": "1", "sealed-joints": "space:tub"}, "the space 'room' has no 'tub'", ""),
        ({"doorways": "-1", "sealed-joints": "8 ft"}, "'-1' is less than nothing", ""),
    ],
)
def test_what_a_task_serves_is_said_in_full(serves: dict[str, str], message: str, write: str) -> None:
    found = complaints({**TILE, "serves": serves}, BATH)
    assert (message, write) in found


def test_no_material_of_the_book_that_goes_by_things_is_scaled_by_a_size() -> None:
    """A doorway, a coat, a riser: what is named so in a material's own words is counted, not measured with the work."""
    context = book()
    wrong = []
    for id, entry in context.book.procedures.items():
        for line in entry.item.materials:
            size = figure_of(line.work, context.book) if line.work else None
            words = line.per.inside() + " " + (line.note.inside() if line.note else "")
            if size and AREA.search(size) and not line.serves and COUNTED.search(words):
                wrong.append(f"{id}: {line.material}, {words.strip()}")
    assert wrong == []


@pytest.mark.slow
def test_an_opening_without_a_size_is_asked_for_it(tmp_path: Path) -> None:
    """At the opening's line, whatever tasks order by it; a row that says the size itself is whole."""
    file = copy_book(tmp_path / "book") / "jobs" / "garden-studio.yaml"
    change(file, "lock: bathroom, width: 30 in, height: 80 in}", "lock: bathroom}")
    diagnostics = [str(diagnostic) for diagnostic in check_jobs(context_of(file.parent.parent))]
    assert [diagnostic.partition("garden-studio.yaml")[2] for diagnostic in diagnostics] == [
        ":46:14: error: has no 'width' and 'height': 'trim-take-off' orders by that\n"
        "    write 'width: ..., height: ...'"
    ]


def test_a_row_without_a_size_is_asked_for_it() -> None:
    """In a list, and in a list that is written as a text; what is given is not asked for."""
    task = {"procedure": "interior-trim", "inputs": {"trim-take-off": {"openings": [{"width": "30 in"}]}}}
    asked = [("has no 'height': 'trim-take-off' orders by that", "write 'height: ...'")]
    assert complaints(task) == asked
    assert complaints({**task, "inputs": {"trim-take-off": {"openings": "Door, door, 30 in"}}}) == asked
    whole = {"openings": "Door, door, 30 in, 80 in"}
    assert complaints({**task, "inputs": {"trim-take-off": whole}}) == []
