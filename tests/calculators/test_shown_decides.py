"""What is shown rounded is what decided: 15 in is never told as short of 15 in, nor 14-31/32 in as reaching it."""

from __future__ import annotations

from typing import Any

import pytest

from build_tools.book.calls import shown_input
from calculators.answering import shown_row
from calculators.declaration import Calculator, Refused
from calculators.limits import unusual
from calculators.metric import write_in
from calculators.reading import read
from calculators.registry import CALCULATORS
from calculators.run import compute, read_inputs, run, shown
from calculators.writing import SIXTEENTH, near, tape

CHECKED = ("alarm-spot", "gas-meter-place", "trap-arm", "water-closet-place")
"""The calculators that hold distances against limits, a row each."""
MARKS = [n / 64 for n in range(-4, 5)]
"""Inches from a limit, as a person reads a tape."""


def rows_of(
    calculator: Calculator, values: dict[str, Any]
) -> list[tuple[dict[str, Any], dict[str, str], dict[str, str]]]:
    """Each row of an answer, as it is and as it is shown in inches and in millimetres."""
    try:
        answer = run(calculator, values)
    except Refused:
        return []
    output = next(each for each in calculator.outputs if each.name in ("checks", "distances", "rows"))
    columns = output.columns
    return [(row, shown_row(columns, row, False), shown_row(columns, row, True)) for row in answer[output.name]]


def bounds(limit: str) -> tuple[float, float]:
    """The least and the most of a limit as it is written."""
    if limit.endswith(" or more"):
        return read(limit.removesuffix(" or more"), "length", "in"), float("inf")
    if limit.endswith(" or less"):
        return 0.0, read(limit.removesuffix(" or less"), "length", "in")
    if " to " in limit:
        low, _, high = limit.partition(" to ")
        return read(low, "length", "in"), read(high, "length", "in")
    return read(limit, "length", "in"), float("inf")


def around(row: dict[str, Any]) -> list[float]:
    """Lengths near the limits of a row: marks of the tape, and whole millimetres."""
    limit = row["limit"] if isinstance(row["limit"], str) else tape(row["limit"])
    ends = [end for end in bounds(limit) if 0 < end < 10000]
    return [
        length
        for end in ends
        for length in (*(end + mark for mark in MARKS), *((round(end * 25.4) + n) / 25.4 for n in range(-2, 3)))
    ]


@pytest.mark.parametrize("name", CHECKED)
def test_a_row_passes_as_its_shown_figure_does(name: str) -> None:
    """Each distance put near each of its limits: the figure that is shown says the same as the verdict beside it."""
    calculator = CALCULATORS[name]
    given, _ = read_inputs(calculator, calculator.example)
    wrong = []
    seen = 0
    for item in calculator.inputs:
        if item.quantity != "length":
            continue
        for length in {length for row, _, _ in rows_of(calculator, given) for length in around(row)}:
            for row, inches, metric in rows_of(calculator, {**given, item.name: length}):
                passes = row.get("passes", row.get("result") == "passes")
                low, high = bounds(inches["limit"])
                told = [(inches["measured"], low, high), (metric["measured"], _to_mm(low), _to_mm(high))]
                for text, least, most in told:
                    figure = read(text, "length", "in")
                    seen += 1
                    if (least - 1e-6 <= figure <= most + 1e-6) != passes and near(low) > 1e-6:
                        wrong.append(f"{item.name} {length:.4f}: {text} against {inches['limit']}: {passes}")
    assert wrong == []
    assert seen > 300


def _to_mm(end: float) -> float:
    """A limit as a page in metres shows it."""
    return (
        end if end == float("inf") else read(write_in(end, "length", "in", SIXTEENTH, "nearest", True), "length", "in")
    )


@pytest.mark.parametrize(
    ("rise", "squeeze", "fit"),
    [
        ("5/8 in", "1/4 in", "fits"),
        ("16 mm", "1/4 in", "fits"),
        ("21/32 in", "7/32 in", "too thin: will not seal"),
        ("17 mm", "3/16 in", "too thin: will not seal"),
    ],
)
def test_sixteen_millimetres_are_five_eighths(rise: str, squeeze: str, fit: str) -> None:
    """The thick ring fits where it is shown to be squeezed by a quarter inch, in either units; not by less."""
    ring = CALCULATORS["wax-ring"]
    answer = shown(ring, compute(ring, {"rise": f"{rise} floor above flange", "ring": "1-1/2 in"}))
    assert (answer["squeeze"], answer["fit"]) == (squeeze, fit)
    assert (answer["ring_to_use"] == "1-1/2 in ring") == (fit == "fits")


def test_a_limit_of_the_law_may_be_written_in_millimetres() -> None:
    """Codes print 36 in as 914 mm: a crew that writes so is not looser than the code."""
    meter = CALCULATORS["gas-meter-place"]
    ruled = next(item for item in meter.inputs if item.rule is not None and item.rule.limit == 36)
    assert compute(meter, {**meter.example, ruled.name: "914 mm"})["verdict"]
    with pytest.raises(Refused):
        compute(meter, {**meter.example, ruled.name: "913 mm"})


def test_a_ring_too_thin_is_short_by_what_a_tape_shows() -> None:
    """16 mm are 5/8 in in the squeeze, the working and the cautions alike; what is beyond it is said as on a tape."""
    ring = CALCULATORS["wax-ring"]
    answer = compute(ring, {"rise": "16 mm floor above flange", "ring": "1 in"})
    assert (shown(ring, answer)["squeeze"], shown(ring, answer)["gap"]) == ("1/4 in short", "1-1/4 in")
    assert not [caution for caution in answer["cautions"] if "outside the usual" in caution]
    (beyond,) = [text for text in compute(ring, {"rise": "17 mm floor above flange"})["cautions"] if "usual" in text]
    assert "11/16 in floor above flange is outside the usual" in beyond
    assert shown_input(ring.inputs[1], 21 / 32) == "21/32 in floor above flange"


@pytest.mark.parametrize("name", sorted(CALCULATORS))
def test_what_a_tape_shows_as_usual_is_usual(name: str) -> None:
    """Half a millimetre beyond a usual length is that length, in every calculator."""
    for item in CALCULATORS[name].inputs:
        if item.quantity == "length" and item.unit in ("in", "ft-in") and item.usual and item.rule is None:
            for end, way in zip(item.usual, (-1, 1), strict=True):
                assert unusual(item, end + way * 0.4 / 25.4 * (abs(end) >= 0.3), item.label, False) == ""
                if abs(end) >= 0.3:
                    assert "0." not in unusual(item, end + way * 1.1 / 25.4, item.label, False)
