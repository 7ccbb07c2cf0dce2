"""Everything that some functions need, in script."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cache

from build_tools.book.diagnostics import Diagnostic
from build_tools.browser.compiler.functions import WrittenFunction, write_function
from build_tools.browser.compiler.helpers import PYTHON, helpers
from build_tools.browser.compiler.sources import HOST, Module, Name, module, script_name
from build_tools.browser.compiler.types import literal


@dataclass(frozen=True, slots=True)
class Program:
    """Functions, constants and helpers by name, and what of them the page cannot run."""

    written: Mapping[Name, WrittenFunction]
    problems: list[Diagnostic]

    def reached(self, starts: Iterable[Name]) -> set[Name]:
        """What these need, themselves included, with the functions of the host."""
        found: set[Name] = set()
        waiting = set(starts)
        while waiting:
            found |= waiting
            waiting = {used for name in waiting if name in self.written for used in self.written[name].uses} - found
        return found

    def code(self, names: Iterable[Name]) -> str:
        """The script of those that are written here, in the order of their names."""
        return "\n".join(self.written[name].code for name in sorted(names) if name in self.written)


def compile_names(starts: Iterable[Name]) -> Program:
    """Write functions, and all that they use in turn."""
    written: dict[Name, WrittenFunction] = {}
    problems: list[Diagnostic] = []
    waiting = list(starts)
    while waiting:
        name = waiting.pop()
        if name not in written and name not in HOST:
            written[name], refused = _written(name)
            problems += refused
            waiting += written[name].uses
    return Program(written, sorted(problems, key=lambda problem: (problem.file, problem.line, problem.column)))


@cache
def _written(name: Name) -> tuple[WrittenFunction, list[Diagnostic]]:
    if name[0] == PYTHON:
        return WrittenFunction(*helpers()[name]), []
    holder = module(name[0])
    return write_function(holder, name[1]) if name[1] in holder.functions else _constant(holder, name[1])


def _constant(holder: Module, name: str) -> tuple[WrittenFunction, list[Diagnostic]]:
    """A constant, with the value that it has in Python."""
    try:
        return WrittenFunction(f"const {script_name((holder.name, name))} = {literal(holder.constant(name))};"), []
    except (TypeError, ValueError):
        message = f"'{name}' is no figure, word, list or dict by words: the page cannot have it"
        return WrittenFunction(""), [Diagnostic(holder.file, holder.line_of(name), 1, "error", message)]
