"""An annotated function declares its inputs: figures as a person says them, read once; mistakes stop the import."""

from __future__ import annotations

from collections.abc import Callable
from typing import Annotated, Any, TypedDict

import pytest

from calculators.declaration import CREW_RULE, Answer, Choice, Input, Output, Rule
from calculators.declaring import (
    Guidance,
    Help,
    InputAnnotation,
    Law,
    calculator,
    choice,
    count,
    inputs_of,
    length,
    percent,
    plan,
    rows,
    slope,
    temperature,
    text,
    time,
    volume,
    yes_no,
)

WAYS = ("falling to the curb", "rising to the curb")


class Board(TypedDict):
    """Boards of one length."""

    long: Annotated[float, length("Length", "from 6 in to 16 ft", "in")]
    name: Annotated[str, text("Name", default=""), Help("Left out, it has none.")]


@calculator(
    title="Invented", summary="", outputs=(Output("out", "Out", "count"),), formula="", sources=(CREW_RULE,), example={}
)
def an_invention(
    run: Annotated[float, length("Run", "10 ft, from 1 in to 1000 ft, usually 2 to 100 ft")],
    gutter: Annotated[
        float,
        slope(
            "Gutter",
            "2 % rising to the curb, from 10 % rising to the curb to 1:8 falling to the curb",
            "%",
            ways=WAYS,
        ),
    ],
    wait: Annotated[float, time("Wait", "1 days, from 0 to 4 weeks"), Law("at least 12 h", "a code")],
    wet: Annotated[
        float, percent("Moisture", unit="%", instead="run"), Guidance("at most 12 %", "a guide"), Help("Read it.")
    ],
    frost: Annotated[float, temperature("Frost", "0 C", "F")],
    many: Annotated[float, count("Boards", "3, from 0 to 40")],
    kind: Annotated[str, choice("Kind", {"a": "A kind", "b": "B kind"}, default="b")],
    open: Annotated[bool, yes_no("Open", default="no")],
    rooms: Annotated[list[Any], plan("Rooms", default="")],
    boards: Annotated[list[dict[str, Any]], rows("Boards", Board, default="")],
) -> Answer:
    """What it was called with."""
    return {"out": [run, gutter, wait, wet, frost, many, kind, open, rooms, boards], "cautions": [], "working": []}


def test_every_word_of_an_annotation_comes_into_the_input() -> None:
    assert an_invention.inputs == (
        Input("run", "Run", "length", "ft", default=120.0, least=1, most=12000, usual=(24, 1200)),
        Input("gutter", "Gutter", "slope", "%", default=-0.02, least=-0.1, most=0.125, ways=WAYS),
        Input("wait", "Wait", "time", "days", default=24.0, least=0, most=672, rule=Rule("least", 12, "a code")),
        Input(
            "wet",
            "Moisture",
            "percent",
            "%",
            rule=Rule("most", 12, "a guide", "guidance"),
            help="Read it.",
            instead="run",
        ),
        Input("frost", "Frost", "temperature", "F", default=32.0),
        Input("many", "Boards", "count", default=3.0, least=0, most=40),
        Input("kind", "Kind", "choice", default="b", choices=(Choice("a", "A kind"), Choice("b", "B kind"))),
        Input("open", "Open", "yes-no", default=False),
        Input("rooms", "Rooms", "plan", default=[]),
        Input(
            "boards",
            "Boards",
            "rows",
            default=[],
            columns=(
                Input("long", "Length", "length", "in", least=6, most=192),
                Input("name", "Name", "text", default="", help="Left out, it has none."),
            ),
        ),
    )


def test_name_and_trade_are_those_of_the_function_and_its_folder() -> None:
    assert (an_invention.name, an_invention.trade) == ("an-invention", __name__.split(".")[-2])


def test_it_is_called_like_the_function_with_the_defaults_filled_in() -> None:
    assert an_invention(wet=9.0, run=1.0)["out"] == [1.0, -0.02, 24.0, 9.0, 32.0, 3.0, "b", False, [], []]
    assert an_invention.__doc__ == "What it was called with."
    with pytest.raises(TypeError, match="wet"):
        an_invention()
    with pytest.raises(TypeError, match="unknown"):
        an_invention(wet=9.0, unknown=1)


def declares(*said: object) -> Callable[..., Answer]:
    """A function with one input that is declared so."""

    def function(depth: object) -> Answer:
        return {"depth": depth}

    function.__annotations__["depth"] = Annotated[(float, *said)] if said else float
    return function


@pytest.mark.parametrize(
    ("said", "why"),
    [
        ([], "does not say what it is: Annotated[float, length('Run', 'ft')]"),
        ([Help("x")], "does not say what it is"),
        ([length("Depth", "80", "in")], "'80' says no unit: write '80 in'"),
        ([length("Depth", "from 6 in to 160")], "'160' says no unit: write '160 in'"),
        ([volume("Depth", "from 2 to 9 jars")], "'2' says no unit: write '2 cu in', in one of cu in, cu ft"),
        ([length("Depth", "from 160 in")], "'160 in' is no range: write '6 to 160 in'"),
        ([length("Depth", "3 lb")], "Depth: '3 lb' is a mass; a length is wanted"),
        ([length("Depth", "usually 1 in to 3 lb", "in")], "Depth: '3 lb' is a mass; a length is wanted"),
        (
            [length("Depth", unit="in"), Law("36 in", "a code")],
            "'36 in' is no limit: write 'at least 36 in' or 'at most 8 %'",
        ),
        ([length("Depth", unit="in"), Guidance("at least 36", "a guide")], "'36' says no unit: write '36 in'"),
        ([length("Depth", "1 in"), "help"], "'help' is none of Law, Guidance and Help"),
        ([temperature("Depth", "0", "F")], "'0' says no unit: write '0 F'"),
        ([InputAnnotation("yes-no", "Depth", default="maybe")], "Depth: 'maybe' is neither yes nor no"),
        ([choice("Depth", {"a": "A"}, default="b")], "Depth: 'b' is not one of a"),
    ],
)
def test_what_cannot_be_read_stops_the_import_and_names_the_input(said: list[object], why: str) -> None:
    with pytest.raises(ValueError) as wrong:
        inputs_of(declares(*said))
    assert "declares.<locals>.function: 'depth'" in str(wrong.value)
    assert why in str(wrong.value)


def test_figures_that_say_one_thing_twice_are_refused() -> None:
    with pytest.raises(ValueError, match="'Depth' has two of one kind in '1 in, 2 in'"):
        length("Depth", "1 in, 2 in")
