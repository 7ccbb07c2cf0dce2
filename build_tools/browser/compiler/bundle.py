"""The calculators compiled to script: one file that all pages share, one for each calculator.

The shared file holds ``script/python.js``, the shared modules as far as any calculator or the run core needs them, and
the interface ``crew`` (``script/core.js``). A calculator's file holds the modules of its trade that it needs.
``draw.js`` comes when something is drawn anew: a page that answers does not need it. Each file
is a scope of its own; what others need of a file is handed over in ``crew.given``.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from pathlib import Path

from build_tools.book.diagnostics import Diagnostic
from build_tools.browser.compiler.helpers import PYTHON
from build_tools.browser.compiler.program import compile_names
from build_tools.browser.compiler.sources import HOST, Name, place, script_name
from build_tools.browser.shorten import shorter
from calculators.declaration import Calculator

SCRIPT = Path(__file__).parents[1] / "script"
LAY_OUT: Name = ("calculators.drawing_layout", "lay_out")
"""What ``script/draw.js`` calls."""
ENTRIES: tuple[Name, ...] = tuple(
    (f"calculators.{name}", function)
    for name, function in (
        ("answering", "read_one"),
        ("answering", "filled"),
        ("answering", "keep_limits"),
        ("answering", "with_cautions"),
        ("answering", "shown_lines"),
        ("limits", "as_given"),
        ("metric", "unit_in"),
        ("reading", "read"),
        ("writing_units", "exactly"),
        ("writing_units", "write"),
    )
)
"""What ``script/core.js`` calls."""
PLANS: Name = ("calculators.shapes", "read_plan")
"""What it calls for an input that is a plan."""
ROWS: tuple[Name, Name] = (("calculators.answering", "split_rows"), ("calculators.answering", "read_rows"))
"""What it calls for an input of rows."""
BY_FEW = ("calculators.distances", "calculators.drawing_scale", "calculators.polygons", "calculators.shapes")
"""Shared modules that few pages need: each calculator that does brings them along."""
FEW = 4
"""So many drawings at most bring what they use of the shared modules along, instead of all that are redrawn."""


class NotPlain(Exception):
    """Code that the page cannot run; ``problems`` says where and what to write instead."""

    def __init__(self, problems: list[Diagnostic]) -> None:
        super().__init__("\n".join(str(problem) for problem in problems))
        self.problems = problems


@dataclass(frozen=True)
class Scripts:
    """The shared script, each calculator's with its drawing and without its declaration, and the one that draws."""

    core: str
    functions: Mapping[str, str]
    draw: str


_COMPILED: dict[tuple[int, ...], tuple[list[Calculator], Scripts]] = {}
"""What was compiled in this run, by the very calculators; a preview reads no Python anew."""


def compile_calculators(calculators: Iterable[Calculator]) -> Scripts:
    """Compile the on-site calculators among those given; raises NotPlain."""
    on_site = sorted((each for each in calculators if each.on_site), key=lambda each: each.name)
    key = tuple(id(each) for each in on_site)
    if key not in _COMPILED:
        _COMPILED[key] = (on_site, _Bundle(on_site).scripts())
    return _COMPILED[key][1]


class _Bundle:
    """What goes into which file."""

    def __init__(self, calculators: list[Calculator]) -> None:
        self.calculators = calculators
        self.drawings = {each.name: place(each.drawing) for each in calculators if each.drawing is not None}
        answers = [start for each in calculators for start in starts(each)]
        self.program = compile_names([*ENTRIES, LAY_OUT, *answers, *self.drawings.values()])
        if self.program.problems:
            raise NotPlain(self.program.problems)
        self.shared = self._shared([*ENTRIES, *answers])
        """What the shared file has."""
        by_drawing = Counter(use for each in self.drawings.values() for use in self.program.reached([each]))
        by_few = {name for name, drawings in by_drawing.items() if drawings <= FEW} - self.program.reached([LAY_OUT])
        self.drawn = self._shared([LAY_OUT, *self.drawings.values()]) - self.shared - by_few
        """What the file that draws has beside that."""
        owns = [*(self._own(starts(each), self.shared) for each in calculators), *map(self._drawing_own, calculators)]
        owns.append(self.drawn)
        used = {use for own in owns for use in self._used(own)}
        self.given = [*sorted((self.shared | HOST) & used), *sorted(self.drawn & used)]
        """What files hand over, in the order of ``crew.given``: the shared one first, then the one that draws."""

    def _shared(self, needed: Iterable[Name]) -> set[Name]:
        """What of all this is in modules that calculators share, with the helpers of that."""
        names = self.program.reached(needed) & self.program.written.keys() - {*ROWS}
        shared = {name for name in names if name[0].count(".") == 1 and name[0] not in BY_FEW}
        return shared | {name for name in self.program.reached(shared) if name[0] == PYTHON}

    def _own(self, needed: Iterable[Name], others: set[Name]) -> set[Name]:
        return (self.program.reached(needed) & self.program.written.keys()) - others

    def _used(self, own: set[Name]) -> set[Name]:
        return {use for name in own for use in self.program.written[name].uses} - own

    def scripts(self) -> Scripts:
        """The files."""
        core = [self.program.code(self.shared), _text("core"), f"crew.given = [{self._given(self.shared | HOST)}];"]
        draw = [_text("draw"), f"crew.given.push({self._given(self.drawn)});"]
        short = iter(
            shorter(
                "\n".join(["var crew = (() => {", '"use strict";', *core, "return crew;", "})();"]),
                self._file(self.drawn, draw),
                *(self._file(self._own(starts(one), self.shared), [self._call(one)]) for one in self.calculators),
            )
        )
        shared, draws = next(short), next(short)
        return Scripts(shared, {one.name: next(short) for one in self.calculators}, draws)

    def _drawing_own(self, calculator: Calculator) -> set[Name]:
        """What a drawing needs that neither the shared files nor its calculator have."""
        if calculator.name not in self.drawings:
            return set()
        others = self.shared | self.drawn | self._own(starts(calculator), self.shared)
        return self._own([self.drawings[calculator.name]], others)

    def _call(self, calculator: Calculator) -> str:
        """The call into a calculator; ``DECLARATION`` stands for the declaration. Its drawing is made of what the file
        that draws hands over, once that is there."""
        readers = ", ".join(f"{key}: {script_name(name)}" for key, name in _readers(calculator).items())
        call = f"crew.add(DECLARATION, {script_name(place(calculator.function))}, {{{readers}}}"
        if calculator.name not in self.drawings:
            return f"{call});"
        own, start = self._drawing_own(calculator), self.drawings[calculator.name]
        return f"{call}, () => {{\n{self._taken(own)}\n{self.program.code(own)}\nreturn {script_name(start)};\n}});"

    def _file(self, own: set[Name], last: list[str]) -> str:
        """A file beside the shared one: what it takes from others, what it needs itself, what it does with it."""
        return "\n".join(["(() => {", '"use strict";', self._taken(own), self.program.code(own), *last, "})();"])

    def _taken(self, own: set[Name]) -> str:
        """What these take from other files."""
        used = self._used(own)
        return f"const [{', '.join(script_name(name) if name in used else '' for name in self.given)}] = crew.given;"

    def _given(self, names: set[Name]) -> str:
        return ", ".join(script_name(name) for name in self.given if name in names)


def _text(name: str) -> str:
    return (SCRIPT / f"{name}.js").read_text(encoding="utf-8")


def starts(calculator: Calculator) -> list[Name]:
    """What the page calls of a calculator to answer."""
    return [place(calculator.function), *_readers(calculator).values()]


def _readers(calculator: Calculator) -> dict[str, Name]:
    """What reads its inputs that few calculators have."""
    inputs = [*calculator.inputs, *(column for each in calculator.inputs for column in each.columns)]
    quantities = {each.quantity for each in inputs}
    plans = {"plan": PLANS} if "plan" in quantities else {}
    return plans | ({"split": ROWS[0], "rows": ROWS[1]} if "rows" in quantities else {})
