"""The words in which a calculator is declared: each input once, in the annotations of its function.

    @calculator(title="Fall of a drain", summary="How far the pipe drops.", outputs=(...), ...)
    def drain_fall(
        run: Annotated[float, length("Run of the pipe", "10 ft, from 1 to 1000 ft, usually 2 to 100 ft")],
        reach: Annotated[float, length("Clear", "36 in"), Law("at least 36 in", "49 CFR 192.353(c)")],
    ) -> Answer:

The name of the calculator is that of its function, its trade the folder. Figures are written as a person says them: the
default, ``from`` the least ``to`` the most, what it ``usually`` is (outside that there is a caution), any of the three
left out. They are read once, at import, by the reader of people's figures; what it does not read stops the import. An
input without a default must be given. Yes or no is written ``yes`` or ``no``, an empty list ``""``.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import KW_ONLY, dataclass, replace
from typing import Annotated, Any, Literal, get_origin, get_type_hints

from calculators.declaration import (
    Answer,
    Calculator,
    Choice,
    Citation,
    Input,
    Output,
    Plot,
    Quantity,
    Refused,
    Rule,
    Sheet,
)
from calculators.reading import found_in
from calculators.run import read_input
from calculators.units import UNITS


@dataclass(frozen=True, slots=True)
class InputAnnotation:
    """An input as its annotation says it: what is a figure is still a text."""

    quantity: Quantity
    label: str
    unit: str = ""
    _: KW_ONLY
    default: str | None = None
    limits: str = ""
    usual: str = ""
    choices: Mapping[str, str] | None = None
    columns: type | None = None
    ways: tuple[str, ...] = ()
    instead: str = ""


@dataclass(frozen=True, slots=True)
class Help:
    """The line of help under an input."""

    text: str


@dataclass(frozen=True, slots=True)
class Law:
    """A limit of the law, ``at least 36 in`` or ``at most 8 %``: a crew's figure may be stricter, never looser."""

    limit: str
    source: str


@dataclass(frozen=True, slots=True)
class Guidance:
    """A published limit that is no law, written like one: a crew's figure that is looser gets a caution."""

    limit: str
    source: str


def measured(quantity: Quantity) -> Callable[..., InputAnnotation]:
    """The word for inputs of a quantity: the label, the figures, and the unit that a bare number means where it is not
    that of the figures; then by keyword what else a :class:`InputAnnotation` has.

    >>> run = measured("length")("Run of the pipe", "10 ft, from 1 to 1000 ft, usually 2 to 100 ft")
    >>> [run.unit, run.default, run.limits, run.usual]
    ['ft', '10 ft', '1 to 1000 ft', '2 to 100 ft']
    """

    def declared(label: str, figures: str = "", unit: str = "", **given: Any) -> InputAnnotation:
        said: dict[str, Any] = {}
        for part in figures.split(", ") if figures else ():
            first, _, rest = part.partition(" ")
            name, figure = {"from": ("limits", rest), "usually": ("usual", rest)}.get(first, ("default", part))
            if name in said:
                raise ValueError(f"'{label}' has two of one kind in '{figures}'")
            said[name] = figure
        ends = (said.get("default", ""), *reversed(said.get("limits", "").split(" to ")))
        return InputAnnotation(quantity, label, unit or next(filter(None, map(_unit, ends)), ""), **said, **given)

    return declared


def _unit(figure: str) -> str:
    return str(found_in(figure)["unit"])


length = measured("length")
area = measured("area")
volume = measured("volume")
slope = measured("slope")
angle = measured("angle")
mass = measured("mass")
time = measured("time")
temperature = measured("temperature")
percent = measured("percent")
count = measured("count")
number = measured("number")


def choice(label: str, choices: Mapping[str, str], *, default: str | None = None) -> InputAnnotation:
    """One of some words, each with the label that people see."""
    return InputAnnotation("choice", label, default=default, choices=choices)


def yes_no(label: str, *, default: Literal["yes", "no"] | None = None) -> InputAnnotation:
    """Yes or no."""
    return InputAnnotation("yes-no", label, default=default)


def text(label: str, *, default: str | None = None) -> InputAnnotation:
    """Words of any kind."""
    return InputAnnotation("text", label, default=default)


def plan(label: str, *, default: str | None = None) -> InputAnnotation:
    """The shapes of rooms."""
    return InputAnnotation("plan", label, default=default)


def rows(label: str, columns: type, *, default: str | None = None, instead: str = "") -> InputAnnotation:
    """A list; ``columns`` is a class whose annotated fields are those of a row."""
    return InputAnnotation("rows", label, default=default, columns=columns, instead=instead)


def calculator(
    *,
    title: str,
    summary: str,
    outputs: tuple[Output, ...],
    formula: str,
    sources: tuple[Citation, ...],
    example: Mapping[str, Any],
    other_names: tuple[str, ...] = (),
    cannot_decide: str = "",
    on_site: bool = True,
    drawing: Callable[[dict[str, Any], Answer], Sheet] | None = None,
    plots: tuple[Plot, ...] = (),
) -> Callable[[Callable[..., Answer]], Calculator]:
    """Makes the function below it a :class:`Calculator`; the arguments are fields of that.

    The calculator is called like the function, by keyword, with the defaults filled in. Raises ValueError for what is
    written and cannot be read.
    """

    def declare(function: Callable[..., Answer]) -> Calculator:
        return Calculator(
            name=function.__name__.replace("_", "-"),
            title=title,
            trade=function.__module__.split(".")[-2],
            summary=summary,
            function=function,
            inputs=inputs_of(function),
            outputs=outputs,
            formula=formula,
            sources=sources,
            example=example,
            other_names=other_names,
            cannot_decide=cannot_decide,
            on_site=on_site,
            drawing=drawing,
            plots=plots,
        )

    return declare


def inputs_of(declared: Callable[..., Any] | type) -> tuple[Input, ...]:
    """The inputs that the annotations of a function, or of the class of a row, declare, in their order."""
    hints = get_type_hints(declared, include_extras=True)
    where = f"{declared.__module__}: {declared.__qualname__}"
    return tuple(_input(where, name, hint) for name, hint in hints.items() if name != "return")


def _input(where: str, name: str, hint: Any) -> Input:
    said = list(hint.__metadata__) if get_origin(hint) is Annotated else []
    if not said or not isinstance(said[0], InputAnnotation):
        raise ValueError(f"{where}: '{name}' does not say what it is: Annotated[float, length('Run', 'ft')]")
    try:
        item = _read(name, said[0])
        for each in said[1:]:
            if isinstance(each, Help):
                item = replace(item, help=each.text)
            elif isinstance(each, Law | Guidance):
                item = replace(item, rule=_rule(item, each))
            else:
                raise ValueError(f"{each!r} is none of Law, Guidance and Help")
    except (Refused, ValueError) as wrong:
        raise ValueError(f"{where}: '{name}': {wrong}") from None
    return item


def _read(name: str, said: InputAnnotation) -> Input:
    choices = tuple(Choice(word, label) for word, label in (said.choices or {}).items())
    columns = inputs_of(said.columns) if said.columns else ()
    item = Input(name, said.label, said.quantity, said.unit, choices=choices, columns=columns)
    item = replace(item, ways=said.ways, instead=said.instead)
    least, most = _range(item, said.limits) if said.limits else (None, None)
    usual = _range(item, said.usual) if said.usual else None
    return replace(item, default=_default(item, said.default), least=least, most=most, usual=usual)


def _default(item: Input, said: str | None) -> Any:
    if said is None:
        return None
    if said == "" and item.quantity == "plan":
        return []
    return (
        read_input(item, said) if item.quantity in ("text", "choice", "yes-no", "plan", "rows") else _figure(item, said)
    )


PLAIN = ("count", "number")
"""The quantities whose figures may stand without a unit."""


def _figure(item: Input, said: str) -> float:
    """A figure with its unit; only a count, a plain number and 0 may stand without one."""
    found = found_in(said)
    is_nothing = found["value"] == 0 and item.quantity != "temperature"
    if found["quantity"] == "bare" and not is_nothing and item.quantity not in PLAIN:
        one_of = "" if item.unit else f", in one of {', '.join(UNITS[item.quantity])}"
        unit = item.unit or next(iter(UNITS[item.quantity]))
        raise ValueError(f"'{said}' says no unit: write '{said} {unit}'{one_of}")
    return float(read_input(item, said))


def _range(item: Input, said: str) -> tuple[float, float]:
    """A range written ``6 to 160 in``, or ``6 in to 12 ft``; the words of a way may hold a ``to`` of their own."""
    parts = said.split(" to ")
    why = f"'{said}' is no range: write '6 to 160 in'"
    for at in range(1, len(parts)):
        least, most = " to ".join(parts[:at]), " to ".join(parts[at:])
        unit = found_in(most)["unit"]
        if found_in(least)["quantity"] == "bare" and unit not in ("", "1:n") and item.quantity not in PLAIN:
            least = f"{least} {unit}"
        try:
            return _figure(item, least), _figure(item, most)
        except Refused as wrong:
            why = wrong.message
    raise ValueError(why)


def _rule(item: Input, said: Law | Guidance) -> Rule:
    for side in ("least", "most"):
        figure = said.limit.removeprefix(f"at {side} ")
        if figure != said.limit:
            return Rule(side, _figure(item, figure), said.source, "law" if isinstance(said, Law) else "guidance")
    raise ValueError(f"'{said.limit}' is no limit: write 'at least 36 in' or 'at most 8 %'")
