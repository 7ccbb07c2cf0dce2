"""How a calculator says what it takes and what it gives.

A calculator is one plain function and one :class:`Calculator` that declares it. The function gets its inputs
in the units of the inside (see :data:`INSIDE_UNIT`), and returns a dict with one entry for each declared output
and two more: ``cautions`` (what to watch, as sentences) and ``working`` (the arithmetic, one line a step).

Hard limits of a single input are declared and checked before the function runs. A limit that depends on two
inputs is checked in the function, which calls :func:`refuse`.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import KW_ONLY, dataclass, field
from typing import Any, Literal, NoReturn

Quantity = Literal[
    "length",
    "area",
    "volume",
    "slope",
    "angle",
    "mass",
    "time",
    "temperature",
    "percent",
    "count",
    "number",
    "choice",
    "yes-no",
    "text",
    "plan",
    "rows",
]
Direction = Literal["nearest", "up", "down", "tape"]

INSIDE_UNIT: dict[Quantity, str] = {
    "length": "in",
    "area": "sq ft",
    "volume": "cu ft",
    "slope": "in/in",
    "angle": "deg",
    "mass": "lb",
    "time": "h",
    "temperature": "F",
    "percent": "%",
    "count": "",
    "number": "",
}
"""The unit in which a function receives and returns each quantity."""

Answer = dict[str, Any]


class Refused(ValueError):
    """An input that the calculator does not answer for.

    ``input`` is the input's name; the text names the value, the limit and the unit, in words for the person
    who typed it.
    """

    def __init__(self, input: str, message: str) -> None:
        super().__init__(message)
        self.input = input
        self.message = message


def refuse(input: str, message: str) -> NoReturn:
    """Stop with a plain message beside the input it concerns."""
    raise Refused(input, message)


@dataclass(frozen=True, slots=True)
class Choice:
    """One of the words that a choice input takes."""

    name: str
    label: str


@dataclass(frozen=True, slots=True)
class Rule:
    """A published limit for a figure that a crew sets for itself: the crew may be stricter, never looser.

    ``limit`` is in the unit of the inside; the crew's figure is at ``least`` or at ``most`` that. A figure looser
    than a ``law`` is refused, one looser than ``guidance`` gets a caution. ``source`` names the rule in the message.

    >>> Rule("least", 36, "49 CFR 192.353(c)").weight
    'law'
    """

    side: Literal["least", "most"]
    limit: float
    source: str
    weight: Literal["law", "guidance"] = "law"


@dataclass(frozen=True, slots=True)
class Input:
    """One input of a calculator.

    ``unit`` is what a bare number means when a person writes it, and how the value is shown. ``default``,
    ``least``, ``most`` (hard limits, both allowed values) and ``usual`` (outside it the answer carries a caution)
    are in the unit of the inside. An input with ``default=None`` must be given. ``columns`` is for ``rows`` alone:
    each row is a dict with those names. ``rule`` is the published limit that a figure of the crew stays inside.
    ``instead`` names the input that this one may be given in place of: an area that is measured, for rooms.

    ``ways`` is for a figure that goes two ways from nothing, such as one floor above or below another: the words for
    more than 0 and for less. People write a plain figure and the words (`1/2 in floor above flange`), never a sign,
    which the next person would take the other way.
    """

    name: str
    label: str
    quantity: Quantity
    unit: str = ""
    _: KW_ONLY
    default: Any = None
    least: float | None = None
    most: float | None = None
    usual: tuple[float, float] | None = None
    rule: Rule | None = None
    choices: tuple[Choice, ...] = ()
    columns: tuple[Input, ...] = ()
    help: str = ""
    ways: tuple[str, ...] = ()
    instead: str = ""


@dataclass(frozen=True, slots=True)
class Output:
    """One output of a calculator.

    ``step`` is the field's precision in ``unit`` (0.0625 for a sixteenth of an inch, 0.25 for a quarter yard;
    0 for four significant figures) and ``rounds`` the direction that is safe, or ``tape`` for a length that is held
    against a limit: what is shown is then what decided. Rounding is done once, when the
    value is shown or ordered. ``columns`` is for ``rows`` alone, ``ways`` as those of an input; one that goes without
    saying has no words.
    """

    name: str
    label: str
    quantity: Quantity
    unit: str = ""
    _: KW_ONLY
    step: float = 0.0
    rounds: Direction = "nearest"
    columns: tuple[Output, ...] = ()
    help: str = ""
    ways: tuple[str, ...] = ()


def output_rows(name: str, label: str, *columns: Output) -> Output:
    """An output that is a list: what stands in each of its columns."""
    return Output(name, label, "rows", columns=columns)


@dataclass(frozen=True, slots=True)
class Citation:
    """A published source by its id in the book, with the clause; or one of the two labels for none."""

    source: str
    clause: str = ""


COMMON_PRACTICE = Citation("common practice")
CREW_RULE = Citation("this crew's rule")


Sheet = dict[str, Any]
"""A drawing as numbers: ``title``, ``alt`` (the same said in words), ``shapes`` (see ``calculators.drawing``)."""


@dataclass(frozen=True, slots=True)
class Plot:
    """A curve of a calculator: the output ``y`` over the input ``x``, the other inputs at their standards.

    ``start`` and ``end`` are in the unit of the inside. ``curves`` is an input with the values that each give a curve
    of their own, a value or the name of an input at whose standard it stands; None for a single curve. ``limits`` are
    inputs that ``y`` is judged by: each is drawn across, at its standard, and the crew's own point is left out.
    """

    title: str
    _: KW_ONLY
    x: str
    y: str
    start: float
    end: float
    curves: tuple[str, tuple[Any, ...]] | None = None
    limits: tuple[str, ...] = ()


@dataclass(frozen=True)
class Calculator:
    """The one declaration from which page, form, tables, schema, command line and checks are made.

    ``calculators.declaring.calculator`` makes one of an annotated function. It is called like that function, by
    keyword, with the defaults filled in, and keeps no limits: ``run`` does.

    ``on_site`` calculators are compiled to script and answer on the page; heavy ones run at build time alone.
    ``drawing`` makes a drawing from the values of all inputs and the answer.
    ``example`` gives inputs as people write them; ``formula`` is Markdown, in words and signs a tradesman reads.
    ``cannot_decide`` says what the answer does not settle and who does (the local code, the inspector, the
    licensed person).
    """

    name: str
    title: str
    trade: str
    summary: str
    function: Callable[..., Answer]
    inputs: tuple[Input, ...]
    outputs: tuple[Output, ...]
    formula: str
    sources: tuple[Citation, ...]
    example: Mapping[str, Any] = field(default_factory=dict)
    other_names: tuple[str, ...] = ()
    cannot_decide: str = ""
    on_site: bool = True
    drawing: Callable[[dict[str, Any], Answer], Sheet] | None = None
    plots: tuple[Plot, ...] = ()

    def __post_init__(self) -> None:
        # As functools.wraps leaves them, for what runs the examples of docstrings or looks for types.
        self.__dict__.update(
            __wrapped__=self.function, __doc__=self.function.__doc__, __module__=self.function.__module__
        )

    def __call__(self, **given: Any) -> Answer:
        """The function's answer for values of the inside."""
        defaults = {item.name: item.default for item in self.inputs if item.default is not None}
        return self.function(**defaults | given)

    def input(self, name: str) -> Input | None:
        """The input of that name, or None."""
        return next((i for i in self.inputs if i.name == name), None)

    def output(self, name: str) -> Output | None:
        """The output of that name, or None."""
        return next((o for o in self.outputs if o.name == name), None)
