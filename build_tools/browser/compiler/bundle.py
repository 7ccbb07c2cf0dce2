"""The calculators compiled to script: one file that all pages share, one for each calculator; so for drawings.

The shared file holds ``script/python.js``, the shared modules as far as any calculator or the run core needs them, and
the interface ``crew`` (``script/core.js``). A calculator's file holds the modules of its trade that it needs.
``draw.js`` and a file for each drawing come when something is drawn anew: a page that answers needs neither. Each file
is a scope of its own; what others need of a file is handed over in ``crew.given``.
"""

from __future__ import annotations

import inspect
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path

from build_tools.book.problems import Problem
from build_tools.browser.compiler.helpers import helpers
from build_tools.browser.compiler.program import Program, compile_names
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
        ("answering", "read_rows"),
        ("answering", "split_rows"),
        ("answering", "filled"),
        ("answering", "keep_limits"),
        ("answering", "with_cautions"),
        ("answering", "shown_lines"),
        ("limits", "as_given"),
        ("metric", "unit_in"),
        ("reading", "read"),
        ("writing", "exactly"),
        ("writing", "write"),
    )
)
"""What ``script/core.js`` calls."""
PLANS: Name = ("calculators.shapes", "read_plan")
"""What it calls for an input that is a plan."""
BY_FEW = ("calculators.polygons", "calculators.shapes")
"""Shared modules that few pages need: each calculator that does brings them along."""


class NotPlain(Exception):
    """Code that the page cannot run; ``problems`` says where and what to write instead."""

    def __init__(self, problems: list[Problem]) -> None:
        super().__init__("\n".join(str(problem) for problem in problems))
        self.problems = problems


@dataclass(frozen=True)
class Scripts:
    """The shared script, each calculator's without its declaration; the one that draws, and each drawing's."""

    core: str
    functions: Mapping[str, str]
    draw: str
    drawings: Mapping[str, str]


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
        self.starts = {each.name: starts(each) for each in calculators}
        self.drawings = {each.name: place(each.drawing) for each in calculators if each.drawing is not None}
        everything = [
            *ENTRIES,
            LAY_OUT,
            *self.drawings.values(),
            *(one for all_ in self.starts.values() for one in all_),
        ]
        self.program = compile_names(everything)
        if self.program.problems:
            raise NotPlain(self.program.problems)

    @cached_property
    def shared(self) -> set[Name]:
        """What the shared file has."""
        return _shared(self.program, [*ENTRIES, *(start for starts in self.starts.values() for start in starts)])

    @cached_property
    def drawn(self) -> set[Name]:
        """What the file that draws has beside that."""
        return _shared(self.program, [LAY_OUT, *self.drawings.values()]) - self.shared

    @cached_property
    def handed(self) -> dict[Name, str]:
        """What files hand over, and under which short key of ``crew.given``."""
        own = [self.program.reached(starts) - self.shared for starts in self.starts.values()]
        own += [
            self.drawn,
            *(self.program.reached([drawing]) - self.shared - self.drawn for drawing in self.drawings.values()),
        ]
        used = {
            use
            for names in own
            for name in names
            if name in self.program.written
            for use in self.program.written[name].uses
        }
        given = (self.shared | self.drawn | HOST) & used | {name for name in used if name[0] == "python"}
        return {name: f"_{at}" for at, name in enumerate(sorted(given))}

    def scripts(self) -> Scripts:
        """The files."""
        parts = [helpers(self.program.helpers), self.program.code(self.shared), _text("core")]
        given = self._given(self.shared | HOST | {name for name in self.handed if name[0] == "python"})
        core = "var crew = (() => {\n" + "\n".join(
            ['"use strict";', *parts, f"crew.given = {{{given}}};", "return crew;"]
        )
        draw = [_text("draw"), f"Object.assign(crew.given, {{{self._given(self.drawn)}}});"]
        functions = [self._file(self.starts[one.name], self.shared, [_call(one)]) for one in self.calculators]
        drawings = [
            self._file([start], self.shared | self.drawn, [f'crew.addDrawing("{name}", {script_name(start)});'])
            for name, start in self.drawings.items()
        ]
        draws = self._file([LAY_OUT], self.shared, draw, self.drawn)
        short = iter(shorter(f"{core}\n}})();\n", draws, *functions, *drawings))
        core, draws = next(short), next(short)
        by_name = {one.name: next(short) for one in self.calculators}
        return Scripts(core, by_name, draws, dict(zip(self.drawings, short, strict=True)))

    def _given(self, names: set[Name]) -> str:
        return ", ".join(f"{key}: {script_name(name)}" for name, key in self.handed.items() if name in names)

    def _file(self, starts: Iterable[Name], others: set[Name], last: list[str], all_: set[Name] | None = None) -> str:
        """A file beside the shared one: what it takes from others, what it needs itself, what it does with it."""
        written = self.program.written
        own = (self.program.reached(starts) & written.keys()) - others if all_ is None else all_
        used = {use for name in own for use in written[name].uses} - own
        lines = ['"use strict";', f"const {{{self._given(used)}}} = crew.given;", self.program.code(own), *last]
        return "(() => {\n" + "\n".join(lines) + "\n})();\n"


def _text(name: str) -> str:
    return (SCRIPT / f"{name}.js").read_text(encoding="utf-8")


def starts(calculator: Calculator) -> list[Name]:
    """What the page calls of a calculator to answer."""
    inputs = [*calculator.inputs, *(column for each in calculator.inputs for column in each.columns)]
    return [place(calculator.function), *([PLANS] if any(each.quantity == "plan" for each in inputs) else [])]


def _shared(program: Program, starts: Iterable[Name]) -> set[Name]:
    """What of these is in modules that calculators share."""
    names = program.reached(starts) & program.written.keys()
    return {name for name in names if name[0].count(".") == 1 and name[0] not in BY_FEW}


def _call(calculator: Calculator) -> str:
    """The call into a calculator; ``DECLARATION`` stands for the declaration."""
    wanted = ", ".join(f"values.{name}" for name in inspect.signature(calculator.function).parameters)
    plan = script_name(PLANS) if PLANS in starts(calculator) else "null"
    return f"crew.add(DECLARATION, (values) => {script_name(place(calculator.function))}({wanted}), {plan});"
