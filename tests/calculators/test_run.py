"""Reading inputs, keeping limits, running, and writing the answer."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import pytest

from calculators.declaration import CREW_RULE, Answer, Calculator, Choice, Input, Output, Refused
from calculators.registry import CALCULATORS
from calculators.run import compute, limits, read_inputs, run, shown

CUTS = (
    Input("width", "Width", "length", "in", least=1, usual=(2, 12)),
    Input("count", "Count", "count", "", default=1, least=1),
)


def invented(
    rise: float, waste: float, kind: str, tight: bool, note: str, room: list[Any], cuts: list[dict[str, Any]]
) -> Answer:
    """A calculator of no use, with an input of each sort."""
    return {
        "height": rise * 2,
        "volume": rise * (1 + waste / 100),
        "fits": tight,
        "word": kind + note,
        "list": [{"width": cut["width"], "count": cut["count"]} for cut in cuts],
        "cautions": ["from the function"] if tight else [],
        "working": [f"{len(room)} shapes"],
    }


INVENTED = Calculator(
    name="invented",
    title="Invented",
    trade="invented",
    summary="Invented.",
    function=invented,
    inputs=(
        Input("rise", "Rise of the finished floor", "length", "in", least=0, most=2, usual=(0.25, 1)),
        Input("waste", "Waste", "percent", "%", default=10.0, least=0, most=50, usual=(5, 15)),
        Input(
            "kind", "Kind", "choice", default="thin", choices=(Choice("thin", "Thin ring"), Choice("thick", "Thick"))
        ),
        Input("tight", "Tight", "yes-no", default=False),
        Input("note", "Note", "text", default="-"),
        Input("room", "Room", "plan", default=[{"name": "", "less": False, "points": [[0, 0], [9, 0], [0, 9]]}]),
        Input("cuts", "Cuts", "rows", default=[], columns=CUTS),
    ),
    outputs=(
        Output("height", "Height", "length", "in"),
        Output("volume", "Volume", "volume", "cu yd", step=0.25, rounds="up"),
        Output("fits", "Fits", "yes-no"),
        Output("word", "Word", "text"),
        Output(
            "list",
            "List",
            "rows",
            columns=(Output("width", "Width", "length", "ft-in"), Output("count", "Count", "count", "boards", step=1)),
        ),
    ),
    formula="",
    sources=(CREW_RULE,),
)


def test_inputs_are_read_by_their_declaration() -> None:
    values, refused = read_inputs(
        INVENTED,
        {
            "rise": "1/2 in",
            "waste": 12,
            "kind": "Thick",
            "tight": "yes",
            "note": " under the sill ",
            "room": "3' x 2'",
            "cuts": [{"width": "6 in", "count": "2"}, {"width": "12.7 cm"}],
        },
    )
    assert refused == []
    assert values == {
        "rise": 0.5,
        "waste": 12,
        "kind": "thick",
        "tight": True,
        "note": "under the sill",
        "room": [{"name": "", "less": False, "points": [[0, 0], [36, 0], [36, 24], [0, 24]]}],
        "cuts": [{"width": 6, "count": 2}, {"width": 5, "count": 1}],
    }


@pytest.mark.parametrize(
    ("written", "read"),
    [
        ({"rise": 0.375}, {"rise": 0.375}),
        ({"rise": 1}, {"rise": 1}),
        ({"rise": "1", "waste": None, "kind": None}, {"rise": 1}),
        ({"rise": "1", "note": "", "cuts": ""}, {"rise": 1, "note": "", "cuts": []}),
        ({"rise": "1", "kind": "thin ring"}, {"rise": 1, "kind": "thin"}),
        ({"rise": "1", "tight": False}, {"rise": 1, "tight": False}),
        ({"rise": "1", "tight": "No"}, {"rise": 1, "tight": False}),
        (
            {"rise": "1", "cuts": "6 in, 2; 5"},
            {"rise": 1, "cuts": [{"width": 6, "count": 2}, {"width": 5, "count": 1}]},
        ),
        ({"rise": "1", "cuts": "6 in\n\n"}, {"rise": 1, "cuts": [{"width": 6, "count": 1}]}),
        ({"rise": "1", "room": [{"points": []}]}, {"rise": 1, "room": [{"points": []}]}),
        (
            {"rise": "1", "room": [{"name": "hall: up", "length": "2 ft", "width": "1 ft"}]},
            {"rise": 1, "room": [{"name": "hall up", "less": False, "points": [[0, 0], [24, 0], [24, 12], [0, 12]]}]},
        ),
    ],
)
def test_other_ways_to_give_inputs(written: Mapping[str, object], read: dict[str, Any]) -> None:
    assert read_inputs(INVENTED, written) == (read, [])


@pytest.mark.parametrize(
    ("written", "input", "message"),
    [
        ({}, "rise", "Rise of the finished floor is not given, and has no default"),
        ({"rise": "1", "wast": "5"}, "wast", "'wast' is not an input of 'invented'; did you mean 'waste'?"),
        (
            {"rise": "1", "xyz": "5"},
            "xyz",
            "'xyz' is not an input of 'invented'; its inputs are rise, waste, kind, tight, note, room, cuts",
        ),
        (
            {"rise": "5 foo"},
            "rise",
            "Rise of the finished floor: '5 foo' is not a length: write 5' 3-1/2\", 63-1/2 in or 1613 mm",
        ),
        ({"rise": True}, "rise", "Rise of the finished floor: a single figure or word is wanted"),
        ({"rise": ["1"]}, "rise", "Rise of the finished floor: a single figure or word is wanted"),
        ({"rise": float("inf")}, "rise", "Rise of the finished floor: a single figure or word is wanted"),
        ({"rise": "1", "kind": "thik"}, "kind", "Kind: 'thik' is not one of thin, thick; did you mean 'thick'?"),
        ({"rise": "1", "tight": "perhaps"}, "tight", "Tight: 'perhaps' is neither yes nor no"),
        ({"rise": "1", "room": "3 x 2"}, "room", "Room: '3' has no unit: write 3' or 3 in"),
        ({"rise": "1", "room": [3]}, "room", "Room: room 1 has no fields: write {length: 12 ft, width: 4 ft}"),
        (
            {"rise": "1", "room": [{"points": "x"}]},
            "room",
            "Room: room 1 has no 'points'; it has name, length, width, less",
        ),
        (
            {"rise": "1", "room": [{"lenght": "2 ft", "width": "1 ft"}]},
            "room",
            "Room: room 1 has no 'lenght'; did you mean 'length'?",
        ),
        (
            {"rise": "1", "room": [{"length": "2 ft"}]},
            "room",
            "Room: room 1 has no width: write {length: 12 ft, width: 4 ft}",
        ),
        ({"rise": "1", "room": [{"length": "2", "width": "1 ft"}]}, "room", "Room: '2' has no unit: write 2' or 2 in"),
        (
            {"rise": "1", "room": [{"length": "2 ft", "width": "1 ft", "less": "maybe"}]},
            "room",
            "Room: room 1 is taken off or not: 'less' is yes or no",
        ),
        ({"rise": ""}, "rise", "Rise of the finished floor is empty: put in a figure"),
        ({"rise": "1", "waste": " "}, "waste", "Waste is empty: put in a figure"),
        ({"rise": "1", "kind": ""}, "kind", "Kind is empty: choose one"),
        ({"rise": "1", "tight": ""}, "tight", "Tight is empty: choose one"),
        ({"rise": "1", "room": ""}, "room", "Room is empty: put in a shape, like 14' x 12'"),
        ({"rise": "1", "cuts": 3}, "cuts", "Cuts: a list of rows is wanted, each with width, count"),
        ({"rise": "1", "cuts": [3]}, "cuts", "Cuts, row 1: fields are wanted: width, count"),
        ({"rise": "1", "cuts": [{"count": "2"}]}, "cuts", "Cuts, row 1, Width is not given, and has no default"),
        (
            {"rise": "1", "cuts": [{"width": "6"}, {"widht": "6"}]},
            "cuts",
            "Cuts, row 2: 'widht' is not one of width, count; did you mean 'width'?",
        ),
        (
            {"rise": "1", "cuts": [{"width": "6 lb"}]},
            "cuts",
            "Cuts, row 1, Width: '6 lb' is a mass; a length is wanted: write 5' 3-1/2\", 63-1/2 in or 1613 mm",
        ),
        ({"rise": "1", "cuts": "6, 2, 1"}, "cuts", "Cuts, row 1: '6, 2, 1' has more columns than width, count"),
    ],
)  # fmt: skip
def test_refused_inputs(written: Mapping[str, object], input: str, message: str) -> None:
    refused = read_inputs(INVENTED, written)[1]
    assert [(refusal.input, refusal.message) for refusal in refused] == [(input, message)]


@pytest.mark.parametrize("calculator", CALCULATORS.values(), ids=list(CALCULATORS))
def test_an_empty_list_of_rooms_is_refused_where_rooms_are_wanted(calculator: Calculator) -> None:
    """As an emptied field is."""
    for item in calculator.inputs:
        if item.quantity == "plan" and item.default != []:
            _, refusals = read_inputs(calculator, {**calculator.example, item.name: []})
            assert [(one.input, " is empty: " in one.message) for one in refusals] == [(item.name, True)]


def test_every_mistake_is_named_in_one_go() -> None:
    refused = read_inputs(INVENTED, {"wast": "5", "kind": "fat", "cuts": [{"width": "x"}]})[1]
    assert [refusal.input for refusal in refused] == ["wast", "rise", "kind", "cuts"]


@pytest.mark.parametrize(
    ("values", "expected"),
    [
        ({"rise": 2, "waste": 0}, []),
        ({"rise": 3}, [("rise", "Rise of the finished floor: 3 in is more than the 2 in that this answers for")]),
        ({"rise": 2.01}, [("rise", "Rise of the finished floor: 2.01 in is more than the 2 in that this answers for")]),
        (
            {"rise": -0.125, "waste": 60},
            [
                ("rise", "Rise of the finished floor: -1/8 in is less than the 0 in that this answers for"),
                ("waste", "Waste: 60 % is more than the 50 % that this answers for"),
            ],
        ),
        (
            {"cuts": [{"width": 6, "count": 1}, {"width": 0.5, "count": 1}]},
            [("cuts", "Cuts, row 2, Width: 1/2 in is less than the 1 in that this answers for")],
        ),
    ],
)
def test_limits(values: dict[str, Any], expected: list[tuple[str, str]]) -> None:
    assert limits(INVENTED.inputs, values) == expected


def test_run_fills_defaults_and_puts_its_cautions_first() -> None:
    answer = run(INVENTED, {"rise": 1.5, "tight": True, "waste": 20, "cuts": [{"width": 24, "count": 2}]})
    assert answer["volume"] == pytest.approx(1.8)
    assert answer["word"] == "thin-"
    assert answer["cautions"] == [
        "Rise of the finished floor: 1-1/2 in is outside the usual 1/4 in to 1 in; measure it again",
        "Waste: 20 % is outside the usual 5 % to 15 %; check it",
        "Cuts, row 1, Width: 24 in is outside the usual 2 in to 12 in; measure it again",
        "from the function",
    ]


def test_run_has_no_caution_inside_the_usual_range() -> None:
    assert run(INVENTED, {"rise": 0.25})["cautions"] == []
    assert run(INVENTED, {"rise": 1})["cautions"] == []


@pytest.mark.parametrize(
    ("values", "input"),
    [
        ({}, "rise"),
        ({"rise": 3}, "rise"),
        ({"rise": float("nan")}, "rise"),
        ({"rise": 1, "kind": "fat"}, "kind"),
        ({"rise": 1, "wast": 3}, "wast"),
    ],
)
def test_run_refuses(values: dict[str, Any], input: str) -> None:
    with pytest.raises(Refused) as caught:
        run(INVENTED, values)
    assert caught.value.input == input


def test_compute_and_show() -> None:
    answer = compute(INVENTED, {"rise": "1 in", "cuts": "63-1/2 in, 1; 12, 3"})
    assert shown(INVENTED, answer) == {
        "height": "2 in",
        "volume": "1/4 cu yd",
        "fits": "no",
        "word": "thin-",
        "list": [{"width": "5' 3-1/2\"", "count": "1 board"}, {"width": "1' 0\"", "count": "3 boards"}],
    }
    with pytest.raises(Refused, match="is more than the 2 in that this answers for"):
        compute(INVENTED, {"rise": "3 in"})
    with pytest.raises(Refused, match="'5 foo' is not a length"):
        compute(INVENTED, {"rise": "5 foo"})


GOOD: Answer = {"n": 1, "t": "a", "y": True, "r": [{"n": 2}], "cautions": [], "working": []}


@pytest.mark.parametrize(
    ("change", "message"),
    [
        ({"n": None}, "calculator 'broken': output 'n' is not a finite number: None"),
        ({"n": float("nan")}, "calculator 'broken': output 'n' is not a finite number: nan"),
        ({"n": True}, "calculator 'broken': output 'n' is not a finite number: True"),
        ({"t": 3}, "calculator 'broken': output 't' is no text: 3"),
        ({"y": 1}, "calculator 'broken': output 'y' is neither yes nor no: 1"),
        ({"r": [{"n": float("inf")}]}, "calculator 'broken.r': output 'n' is not a finite number: inf"),
        ({"r": 3}, "calculator 'broken': output 'r' is not a list of rows: 3"),
        ({"cautions": None}, "calculator 'broken': 'cautions' is not a list of sentences"),
        ({"working": [3]}, "calculator 'broken': 'working' is not a list of sentences"),
    ],
)
def test_a_function_that_breaks_its_declaration_is_named(change: Answer, message: str) -> None:
    number = Output("n", "N", "number")
    outputs = (
        number,
        Output("t", "T", "text"),
        Output("y", "Y", "yes-no"),
        Output("r", "R", "rows", columns=(number,)),
    )
    broken = Calculator("broken", "", "", "", lambda: {**GOOD, **change}, (), outputs, "", (CREW_RULE,))
    with pytest.raises(RuntimeError) as caught:
        run(broken, {})
    assert str(caught.value) == message


def test_cautions_of_the_function_are_left_alone() -> None:
    """The list that a function returns is not the one that grows."""
    kept: list[str] = []
    calculator = Calculator(
        "kept", "", "", "", lambda a: {"cautions": kept, "working": []},
        (Input("a", "A", "number", usual=(0, 1)),), (), "", (CREW_RULE,),
    )  # fmt: skip
    assert run(calculator, {"a": 2})["cautions"] == ["A: 2 is outside the usual 0 to 1; check it"]
    assert kept == []
