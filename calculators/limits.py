"""Values against the limits of their inputs: hard ones, outside which there is no answer, and the usual range."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from calculators.declaration import Input
from calculators.metric import exactly_in
from calculators.ways import with_way
from calculators.writing import fraction, near
from calculators.writing_units import write

MEASURED = ["length", "area", "volume", "slope", "angle", "mass", "temperature"]
"""The quantities that are taken off the work, so that an odd one is measured again."""


ANSWERS = " that this answers for"


def as_given(item: Input, value: Any, metric: bool) -> str:
    """A value of an input as a person gave it."""
    if len(item.ways) > 0:
        return with_way(item.ways, value, exactly_in(abs(value), item.quantity, item.unit, metric))
    return exactly_in(value, item.quantity, item.unit, metric)


def as_seen(item: Input, value: Any, metric: bool) -> str:
    """A value as people write it: a length in inches is read off a tape, a small one to the nearest 1/64 in.

    >>> [as_seen(Input("gap", "Gap", "length", "in"), x, False) for x in (16 / 25.4, 21 / 32, 5 / 25.4)]
    ['5/8 in', '21/32 in', '13/64 in']
    """
    if metric or item.quantity != "length" or item.unit not in ["in", "ft-in"]:
        return as_given(item, value, metric)
    size = fraction(abs(value), 1 / 64, "nearest") + " in"
    if abs(value) >= 0.25:
        size = write(abs(value), "length", item.unit, 0.0, "tape")
    return with_way(item.ways, value, size) if len(item.ways) > 0 else size


def slack(item: Input, limit: float) -> float:
    """By how little a value may miss a limit: half a millimetre for a length and the published rule of its input."""
    if item.quantity == "length" and item.rule is not None and item.rule.limit == limit:
        return near(limit)
    return 0.0


def looser(item: Input, value: Any, label: str, metric: bool) -> str:
    """What is said of a value that is looser than the published rule of its input; nothing of another one.

    >>> from calculators.declaration import Rule
    >>> gap = Input("gap", "Gap", "length", "in", rule=Rule("least", 36, "the code"))
    >>> [looser(gap, 36, "Gap", False), looser(gap, 35, "Gap", False)]
    ['', 'Gap: 35 in is looser than the 36 in of the code; a crew may be stricter than that, never looser']
    """
    if item.rule is None:
        return ""
    limit = item.rule.limit
    if item.rule.side == "least" and value >= limit - slack(item, limit):
        return ""
    if item.rule.side == "most" and value <= limit + slack(item, limit):
        return ""
    than = as_seen(item, value, metric) + " is looser than the " + as_given(item, limit, metric)
    end = "; keep to it, or ask whoever answers for the work"
    if item.rule.weight == "law":
        end = "; a crew may be stricter than that, never looser"
    return label + ": " + than + " of " + item.rule.source + end


def over_limit(item: Input, value: Any, label: str, metric: bool) -> str:
    """The message for a value outside the hard limits of an input, the law's first; nothing inside them."""
    if item.rule is not None and item.rule.weight == "law":
        message = looser(item, value, label, metric)
        if message != "":
            return message
    if item.most is not None and value > item.most + slack(item, item.most):
        most = as_given(item, item.most, metric)
        return label + ": " + as_given(item, value, metric) + " is more than the " + most + ANSWERS
    if item.least is not None and value < item.least - slack(item, item.least):
        least = as_given(item, item.least, metric)
        than = " is more than the " if len(item.ways) > 0 else " is less than the "
        return label + ": " + as_given(item, value, metric) + than + least + ANSWERS
    return ""


def unusual(item: Input, value: Any, label: str, metric: bool) -> str:
    """The caution for a value that is looser than guidance, or outside the usual range; nothing for another one."""
    message = looser(item, value, label, metric)
    if message != "":
        return message
    if item.usual is None:
        return ""
    low: float = item.usual[0]
    high: float = item.usual[1]
    if low <= value <= high or as_seen(item, value, False) in [as_seen(item, low, False), as_seen(item, high, False)]:
        return ""
    given = label + ": " + as_seen(item, value, metric)
    usual = as_given(item, low, metric) + " to " + as_given(item, high, metric)
    again = "; measure it again" if item.quantity in MEASURED else "; check it"
    return given + " is outside the usual " + usual + again


def each_value(inputs: Sequence[Input], values: Mapping[str, Any]) -> list[dict[str, Any]]:
    """Every single value with its input, the name of the input it came in by, and its label; rows give each cell."""
    found: list[dict[str, Any]] = []
    for item in inputs:
        if item.name not in values:
            continue
        if item.quantity == "rows":
            rows = values[item.name]
            for at in range(len(rows)):
                for column in item.columns:
                    label = item.label + ", row " + str(at + 1) + ", " + column.label
                    found.append({"name": item.name, "input": column, "value": rows[at][column.name], "label": label})
        else:
            found.append({"name": item.name, "input": item, "value": values[item.name], "label": item.label})
    return found


def limits(inputs: Sequence[Input], values: Mapping[str, Any], metric: bool = False) -> list[tuple[str, str]]:
    """Each value outside its hard limits: the input's name and the message.

    >>> rise = Input("rise", "Rise of the finished floor", "length", "in", least=0, most=2)
    >>> limits([rise], {"rise": 3})
    [('rise', 'Rise of the finished floor: 3 in is more than the 2 in that this answers for')]
    """
    found: list[tuple[str, str]] = []
    for one in each_value(inputs, values):
        message = over_limit(one["input"], one["value"], one["label"], metric)
        if message != "":
            found.append((one["name"], message))
    return found


def unusual_values(inputs: Sequence[Input], values: Mapping[str, Any], metric: bool = False) -> list[str]:
    """The cautions for the values outside their usual range.

    >>> unusual_values([Input("recess", "Recess", "length", "in", usual=(0.25, 1))], {"recess": 1.5})
    ['Recess: 1-1/2 in is outside the usual 1/4 in to 1 in; measure it again']
    """
    found: list[str] = []
    for one in each_value(inputs, values):
        caution = unusual(one["input"], one["value"], one["label"], metric)
        if caution != "":
            found.append(caution)
    return found
