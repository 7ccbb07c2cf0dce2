"""Modules of the plain subset written as script, each in a scope of its own."""

from __future__ import annotations

import ast
import json
from typing import Any

from pscript import JSError, py2js

from build_tools.book.problems import Problem
from build_tools.browser.kinds import Kind, annotated
from build_tools.browser.library import short_names
from build_tools.browser.lower import lowered, safe
from build_tools.browser.modules import HOST, Module, Name, module, resolve, used_names
from build_tools.browser.plain_subset import refusals


class NotPlain(Exception):
    """Code that the page cannot run; ``problems`` says where and what to write instead."""

    def __init__(self, problems: list[Problem]) -> None:
        super().__init__("\n".join(str(problem) for problem in problems))
        self.problems = problems


def refused(names: list[Name]) -> list[Problem]:
    """What of these functions is outside the plain subset."""
    problems: list[Problem] = []
    for module_name in sorted({name[0] for name in names}):
        held = module(module_name)
        functions = {name[1] for name in names if name[0] == module_name and name not in HOST} & set(held.functions)
        if functions:
            problems += refusals(held.source, held.file, functions)
            problems += [problem for name in sorted(functions) for problem in _walked_out_of_order(held, name)]
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


def _in_order(names: list[Name]) -> list[str]:
    """The modules of names, each after those that it imports."""
    wanted = sorted({name[0] for name in names if name not in HOST})
    done: list[str] = []

    def put(module_name: str) -> None:
        for used in sorted(name for _, names in _imports(module(module_name)).items() for name in [names[0]]):
            if used in wanted and used != module_name and used not in done:
                put(used)
        if module_name not in done:
            done.append(module_name)

    for each in wanted:
        put(each)
    return done


def _imports(held: Module) -> dict[str, Name]:
    return {name: resolve(held.name, name) for name in held.imports}


def modules_script(names: list[Name]) -> str:
    """The modules of these names, each after those that it imports."""
    return "\n".join(
        _module_script(module(each), [name[1] for name in names if name[0] == each and name not in HOST])
        for each in _in_order(names)
    )


def _module_script(held: Module, names: list[str]) -> str:
    """A module in its own scope: what it imports, its constants, its functions."""
    functions = [name for name in names if name in held.functions]
    used = sorted({name for function in functions for name in used_names(held.functions[function])})
    lines = []
    outside = []
    for name in used:
        if name in held.imports or (held.name, name) in HOST:
            source, original = resolve(held.name, name)
            path = "host" if (source, original) in HOST else f"modules.{key(source)}"
            outside.append(f"{safe(name)} = {path}.{safe(original)}")
        elif name in held.math:
            value = "PI" if held.math[name] == "pi" else held.math[name]
            outside.append(f"{safe(name)} = Math.{value}")
    if outside:
        lines.append(f"var {', '.join(outside)};")
    for name in names:
        if name not in held.functions:
            lines.append(f"var {safe(name)} = {_constant(held, name)};")
    known = {*held.functions, *held.imports, *held.math, *names}
    lines += [_function_script(held, name, known) for name in functions]
    exported = ", ".join(f"{safe(name)}: {safe(name)}" for name in names)
    body = "\n".join(lines)
    place = f"modules.{key(held.name)}"
    return f"{place} = {place} || (function () {{\n{body}\nreturn {{{exported}}};\n}})();"


def _function_script(held: Module, name: str, known: set[str]) -> str:
    function = held.functions[name]

    def outside(name: str, is_called: bool) -> Kind:
        source = resolve(held.name, name)
        if source in HOST or not known_in(source):
            return "unknown"
        if not is_called:
            return kind_of_value(module(source[0]).constant(source[1]))
        found = module(source[0]).functions.get(source[1])
        return annotated(found.returns) if found is not None else "unknown"

    try:
        script = py2js(lowered(function, known, outside), inline_stdlib=False, docstrings=False)
    except JSError as error:
        raise NotPlain(
            [_problem(held, function, f"'{name}' cannot be compiled: {str(error).splitlines()[-1]}")]
        ) from error
    unknown = {str(each).split(".")[0] for each in script.meta["vars_unknown"]} - {safe(each) for each in known}
    unknown = {each for each in unknown if not each.startswith("py_")}
    if unknown:
        raise NotPlain(
            [_problem(held, function, f"'{name}' uses {', '.join(sorted(unknown))}, which the page has not")]
        )
    return short_names(str(script))


def known_in(name: Name) -> bool:
    """Whether a module defines a name."""
    held = module(name[0])
    return name[1] in held.functions or held.has_constant(name[1])


def kind_of_value(value: object) -> Kind:
    """The kind of a constant."""
    kinds: dict[type, Kind] = {int: "int", float: "float", str: "str", list: "list", tuple: "list", dict: "dict"}
    return kinds.get(type(value), "unknown")


def _problem(held: Module, function: ast.FunctionDef, message: str) -> Problem:
    return Problem(held.file, function.lineno, function.col_offset + 1, "error", message)


def _constant(held: Module, name: str) -> str:
    """A constant as script: figures, words, lists and dicts by words."""
    value = held.constant(name)
    if not _writable(value):
        line = next(
            (
                node.lineno
                for node in ast.walk(ast.parse(held.source))
                if isinstance(node, ast.Name) and node.id == name
            ),
            1,
        )
        message = f"'{name}' is no figure, word, list or dict by words: the page cannot have it"
        raise NotPlain([Problem(held.file, line, 1, "error", message)])
    return as_script(value)


def _writable(value: Any) -> bool:
    if isinstance(value, list | tuple):
        return all(_writable(each) for each in value)
    if isinstance(value, dict):
        return all(isinstance(key, str) and _writable(each) for key, each in value.items())
    if isinstance(value, float):
        return value - value == 0
    if isinstance(value, int):
        return abs(value) <= 2**53
    return value is None or isinstance(value, str)


def as_script(value: Any) -> str:
    """A value as JSON that a script can hold anywhere: in plain letters, and no end of a script element in it."""
    return json.dumps(value, separators=(",", ":"), allow_nan=False).replace("</", "<\\/")


def key(module_name: str) -> str:
    """The name of a module in script.

    >>> key("calculators.plumbing.wax_ring")
    'plumbing_wax_ring'
    """
    return module_name.removeprefix("calculators.").replace(".", "_")
