"""Functions and constants of the plain subset written as script.

In script each function and constant of every module has a short name of its own, so that modules need no scopes.
"""

from __future__ import annotations

import ast
from collections.abc import Callable, Iterable
from typing import Any

from pscript import JSError, py2js

from build_tools.book.problems import Problem
from build_tools.browser.in_script import data_in_script
from build_tools.browser.kinds import Kind, annotated
from build_tools.browser.library import short_names
from build_tools.browser.lower import LETTERS, lowered
from build_tools.browser.modules import HOST, Module, Name, module, resolve
from build_tools.browser.plain_subset import refusals
from build_tools.browser.plain_traps import traps


class NotPlain(Exception):
    """Code that the page cannot run; ``problems`` says where and what to write instead."""

    def __init__(self, problems: list[Problem]) -> None:
        super().__init__("\n".join(str(problem) for problem in problems))
        self.problems = problems


def named(names: Iterable[Name]) -> dict[Name, str]:
    """The name of each in script: ``_a``, ``_b``, ... ``_a1``, ..., in their order."""
    found: dict[Name, str] = {}
    for at, name in enumerate(names):
        letter, number = LETTERS[at % len(LETTERS)], at // len(LETTERS)
        found[name] = f"_{letter}{number or ''}"
    return found


def emitted(names: Iterable[Name], in_script: dict[Name, str]) -> dict[Name, str]:
    """The script of each function and constant."""
    found = {}
    for name in names:
        if name not in HOST:
            held = module(name[0])
            is_function = name[1] in held.functions
            found[name] = (_function if is_function else _constant)(held, name[1], in_script)
    return found


def refused(names: Iterable[Name]) -> list[Problem]:
    """What of these functions is outside the plain subset."""
    names = set(names)
    problems: list[Problem] = []
    for module_name in sorted({name[0] for name in names}):
        held = module(module_name)
        functions = {name[1] for name in names if name[0] == module_name and name not in HOST} & set(held.functions)
        if functions:
            problems += refusals(held.source, held.file, functions)
            for name in sorted(functions):
                problems += _walked_out_of_order(held, name)
                found = sorted(set(traps(held.functions[name], kinds_outside(held))))
                problems += [Problem(held.file, line, 1, "error", message) for line, message in found]
    return problems


def _walked_out_of_order(held: Module, function: str) -> list[Problem]:
    """Where a function walks through a dict whose keys are figures: script would give them in order of size."""
    tree = held.functions[function]
    looked_up: set[ast.AST] = set()
    for node in ast.walk(tree):
        if isinstance(node, ast.Subscript) or (isinstance(node, ast.Attribute) and node.attr == "get"):
            looked_up.add(node.value)
        elif isinstance(node, ast.Compare):
            looked_up |= {each for op, each in zip(node.ops, node.comparators, strict=True) if isinstance(op, ast.In)}
    found = []
    for node in ast.walk(tree):
        if isinstance(node, ast.Name) and node not in looked_up and _is_reordered(held, node.id):
            message = f"'{node.id}' has figures as keys, which script puts in order of size: walk through a list"
            found.append(Problem(held.file, node.lineno, node.col_offset + 1, "error", message))
    return found


def _is_reordered(held: Module, name: str) -> bool:
    source = resolve(held.name, name)
    if source in HOST or not module(source[0]).has_constant(source[1]):
        return False
    value = module(source[0]).constant(source[1])
    return isinstance(value, dict) and any(isinstance(key, str) and key.isdigit() for key in value)


def _function(held: Module, name: str, in_script: dict[Name, str]) -> str:
    function = held.functions[name]

    def rename(used: str) -> str | None:
        if used in held.math:
            return "Math.PI" if held.math[used] == "pi" else f"Math.{held.math[used]}"
        source = resolve(held.name, used)
        return f"host.{source[1]}" if source in HOST else in_script.get(source)

    try:
        script = py2js(lowered(function, rename, kinds_outside(held)), inline_stdlib=False, docstrings=False)
    except JSError as error:
        raise NotPlain([_problem(held, function, f"'{name}': {str(error).splitlines()[-1]}")]) from error
    unknown = {str(each).split(".")[0] for each in script.meta["vars_unknown"]} - {*in_script.values(), "host", "Math"}
    unknown = {each for each in unknown if not each.startswith("py_")}
    if unknown:
        listed = ", ".join(sorted(unknown))
        raise NotPlain([_problem(held, function, f"'{name}' uses {listed}, which the page has not")])
    return short_names(str(script))


def kinds_outside(held: Module) -> Callable[[str, bool], Kind]:
    """The kinds of a module's constants, and of what the functions that it calls return."""

    def outside(used: str, is_called: bool) -> Kind:
        source = resolve(held.name, used)
        if source in HOST or used in held.math:
            return "unknown"
        origin = module(source[0])
        if is_called:
            found = origin.functions.get(source[1])
            return annotated(found.returns) if found is not None else "unknown"
        return _kind_of(origin.constant(source[1])) if origin.has_constant(source[1]) else "unknown"

    return outside


def _kind_of(value: object) -> Kind:
    kinds: dict[type, Kind] = {int: "int", float: "float", str: "str", list: "list", tuple: "list", dict: "dict"}
    return kinds.get(type(value), "unknown")


def _problem(held: Module, function: ast.FunctionDef, message: str) -> Problem:
    return Problem(held.file, function.lineno, function.col_offset + 1, "error", message)


def _constant(held: Module, name: str, in_script: dict[Name, str]) -> str:
    """A constant, with the value that it has in Python: a figure, a word, a list or a dict by words."""
    value = held.constant(name)
    if not _is_writable(value):
        names = [node for node in ast.walk(ast.parse(held.source)) if isinstance(node, ast.Name)]
        line = next((node.lineno for node in names if node.id == name), 1)
        message = f"'{name}' is no figure, word, list or dict by words: the page cannot have it"
        raise NotPlain([Problem(held.file, line, 1, "error", message)])
    return f"var {in_script[held.name, name]} = {data_in_script(value)};"


def _is_writable(value: Any) -> bool:
    if isinstance(value, list | tuple):
        return all(_is_writable(each) for each in value)
    if isinstance(value, dict):
        return all(isinstance(key, str) and _is_writable(each) for key, each in value.items())
    if isinstance(value, float):
        return value - value == 0
    if isinstance(value, int):
        return abs(value) <= 2**53
    return value is None or isinstance(value, str)
