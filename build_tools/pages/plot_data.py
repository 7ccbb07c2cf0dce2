"""What a plot of a calculator shows, as numbers in written units: curves, ticks, the crew's own point, the words.

The library that draws is not needed for any of this, so a build whose plots are kept does not load it.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import asdict, dataclass
from typing import Any

from build_tools.book.calls import CallResult, shown_input
from calculators.declaration import Calculator, Input, Output, Plot, Refused
from calculators.run import read_inputs, run
from calculators.units import from_inside
from calculators.ways import with_way
from calculators.writing import decimal, feet_inches, fraction
from calculators.writing_units import write

POINTS = 48
"""Steps along a curve."""
BY_THE_INCH = (1 / 64, 1 / 32, 1 / 16, 0.125, 0.25, 0.5, 1, 2, 3, 4, 6, 12, 24, 48, 72, 96, 120, 240, 480, 960, 1200)
BY_TEN = (1, 2, 2.5, 5)


@dataclass(frozen=True, slots=True)
class Curve:
    """A curve: its name, and its points; y is None where the calculator refuses to answer."""

    name: str
    xs: list[float]
    ys: list[float | None]


@dataclass(frozen=True, slots=True)
class PlotAxis:
    """An axis: what it says, and its ticks with their texts."""

    says: str
    ticks: list[float]
    texts: list[str]


@dataclass(frozen=True, slots=True)
class PlotData:
    """Everything that a plot is drawn from."""

    title: str
    alt: str
    x: PlotAxis
    y: PlotAxis
    curves: list[Curve]
    curves_by: str
    ours: tuple[float, float, str] | None
    limits: list[tuple[float, str]]

    def as_text(self) -> str:
        """The same as JSON, to know a plot again by."""
        return json.dumps(asdict(self))

    @classmethod
    def of(cls, text: str) -> PlotData:
        """What :meth:`as_text` wrote."""
        held = json.loads(text)
        curves = [Curve(**curve) for curve in held["curves"]]
        return cls(**{**held, "x": PlotAxis(**held["x"]), "y": PlotAxis(**held["y"]), "curves": curves})


def plot_data(calculator: Calculator, plot: Plot, called: CallResult) -> PlotData:
    """The curves of a plot; ``called`` holds the inputs at their standards."""
    x, y = calculator.input(plot.x), calculator.output(plot.y)
    if x is None or y is None:
        raise ValueError(
            f"the plot '{plot.title}' of '{calculator.name}' names an input or an output that is not there"
        )
    values = _complete(calculator, called.values)
    by, each_of = (calculator.input(plot.curves[0]), plot.curves[1]) if plot.curves else (None, (None,))
    lines: list[Curve] = []
    sentences: list[str] = []
    for each in each_of:
        one = values.get(each, each) if isinstance(each, str) else each
        given = {**values, by.name: one} if by else values
        name = shown_input(by, one) if by else ""
        found = [_at(calculator, plot, given, each) for each in _inside(plot)]
        ys: list[float | None] = [None if each is None else from_inside(each, y.quantity, y.unit) for each in found]
        lines.append(Curve(name, [from_inside(each, x.quantity, x.unit) for each in _inside(plot)], ys))
        sentences.append(_described(f"{by.label} {name}" if by else y.label, found, plot, x, y))
    ours = None if plot.limits else _ours(calculator, plot, values, x, y)
    limits = [_limit(calculator, name, values, y) for name in plot.limits]
    sentences += [f"{words}." for _, words in limits]
    sentences += [f"Our standard: {ours[2]}."] if ours else []
    xs = [from_inside(end, x.quantity, x.unit) for end in (plot.start, plot.end)]
    heights = [y for line in lines for y in line.ys if y is not None] + ([ours[1]] if ours else [])
    heights += [height for height, _ in limits]
    return PlotData(
        plot.title,
        f"{plot.title}. {' '.join(sentences)}",
        _axis(x, xs),
        _axis(y, heights),
        lines,
        by.label if by else "",
        ours,
        limits,
    )


def _complete(calculator: Calculator, values: Mapping[str, Any]) -> dict[str, Any]:
    """The standards and defaults, and the example's for what has neither."""
    example, _ = read_inputs(calculator, calculator.example)
    return {each.name: values.get(each.name, example.get(each.name, each.default)) for each in calculator.inputs}


def _at(calculator: Calculator, plot: Plot, values: Mapping[str, Any], x: float) -> float | None:
    try:
        return float(run(calculator, {**values, plot.x: x})[plot.y])
    except Refused:
        return None


def _inside(plot: Plot) -> list[float]:
    """Where a curve is worked out."""
    return [plot.start + (plot.end - plot.start) * step / POINTS for step in range(POINTS + 1)]


def _described(name: str, found: list[float | None], plot: Plot, x: Input, y: Output) -> str:
    """A curve in words: where it begins and where it ends."""
    known = [(at, value) for at, value in zip(_inside(plot), found, strict=True) if value is not None]
    if not known:
        return f"{name}: no answer here."
    ends = [f"{_value(value, y)} at {_place(at, x)}" for at, value in (known[0], known[-1])]
    return f"{name}: {ends[0]}, {ends[1]}."


def _place(inside: float, x: Input) -> str:
    """An input as people write it, whole feet without inches."""
    return shown_input(x, inside).removesuffix(' 0"')


def _value(inside: float, y: Output) -> str:
    """An output to its own step, to the nearest: on a plot nothing is rounded up."""
    size = abs(inside) if y.ways else inside
    return with_way(y.ways, inside, write(size, y.quantity, y.unit, y.step, "nearest"))


def _ours(
    calculator: Calculator, plot: Plot, values: Mapping[str, Any], x: Input, y: Output
) -> tuple[float, float, str] | None:
    """The point where everything stands at its standard, and its name; None where it is not on the plot."""
    inside = values.get(plot.x)
    if inside is None or not plot.start <= inside <= plot.end:
        return None
    found = _at(calculator, plot, values, inside)
    if found is None:
        return None
    at, value = from_inside(inside, x.quantity, x.unit), from_inside(found, y.quantity, y.unit)
    return at, value, f"{_value(found, y)} at {_place(inside, x)}"


def _limit(calculator: Calculator, name: str, values: Mapping[str, Any], y: Output) -> tuple[float, str]:
    """The height of a limit, and its name with its figure; the axis says the unit."""
    item = calculator.input(name)
    if item is None or (item.quantity, item.unit) != (y.quantity, y.unit):
        raise ValueError(f"'{name}' of '{calculator.name}' is no limit of '{y.name}': it is not in the same unit")
    figure = shown_input(item, values[name]).removesuffix(f" {item.unit}")
    return from_inside(values[name], y.quantity, y.unit), f"{item.label} {figure}"


def _axis(item: Input | Output, values: list[float]) -> PlotAxis:
    """An axis; that of an input that goes two ways says which lies where, and has no signs."""
    unit = item.unit
    low, high = min(values), max(values)
    step = _step(high - low, unit)
    first = int(low // step)
    ticks = [step * number for number in range(first, first + 12) if low - 1e-9 <= step * number <= high + 1e-9]
    shown = "" if unit == "ft-in" else unit
    label = f"{item.label}, {shown}" if shown else item.label
    if item.ways and isinstance(item, Input):
        label = f"← {item.ways[1]}   {shown}   {item.ways[0]} →"
        return PlotAxis(label, ticks, [tick_text(abs(tick), unit) for tick in ticks])
    return PlotAxis(label, ticks, [tick_text(tick, unit) for tick in ticks])


def _step(span: float, unit: str) -> float:
    """A round step that makes at most six parts.

    >>> [_step(2.5, "in"), _step(192, "ft-in"), _step(17, "%")]
    [0.5, 48, 5.0]
    """
    if unit in ("in", "ft-in"):
        return next((step for step in BY_THE_INCH if span <= step * 6), span)
    steps = (step * 10.0**power for power in range(-6, 12) for step in BY_TEN)
    return next((step for step in steps if span <= step * 6), span)


def tick_text(value: float, unit: str) -> str:
    """A figure at a tick: as the tape says it, whole feet without inches.

    >>> [tick_text(-0.5, "in"), tick_text(144, "ft-in"), tick_text(2.5, "cu yd")]
    ['-1/2', "12'", '2.5']
    """
    if unit == "in":
        return fraction(value, 1 / 64, "nearest")
    if unit == "ft-in":
        return feet_inches(value).removesuffix(' 0"')
    return decimal(value, 4)
