"""The sources of the calculators: what each module holds, and what a function needs of it."""

from __future__ import annotations

import ast
import importlib
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, field
from functools import cache
from pathlib import Path
from typing import Any

Name = tuple[str, str]
"""A module and a name in it."""

HOST: set[Name] = {
    ("calculators.declaration", "refuse"),
    ("calculators.scanning", "unreadable"),
    ("calculators.attempts", "read_or_why"),
}
"""The functions that stop or catch: the page has its own of these in `script/core.js`."""


@dataclass
class Module:
    """A module's functions by name, the names it imports from other calculators' modules and from ``math``."""

    name: str
    file: str
    source: str
    functions: dict[str, ast.FunctionDef] = field(default_factory=dict)
    imports: dict[str, Name] = field(default_factory=dict)
    math: dict[str, str] = field(default_factory=dict)

    def constant(self, name: str) -> Any:
        """The value of a constant."""
        return getattr(importlib.import_module(self.name), name)

    def has_constant(self, name: str) -> bool:
        """Whether the module itself gives that name a value."""
        known = (*self.functions, *self.imports, *self.math)
        return name not in known and hasattr(importlib.import_module(self.name), name)


@cache
def module(name: str) -> Module:
    """A module of the calculators, read."""
    path = Path(str(importlib.import_module(name).__file__))
    source = path.read_text(encoding="utf-8")
    found = Module(name, f"{name.replace('.', '/')}.py", source)
    for part in ast.parse(source).body:
        if isinstance(part, ast.FunctionDef):
            found.functions[part.name] = part
        elif isinstance(part, ast.ImportFrom):
            for each in part.names:
                if part.module == "math":
                    found.math[each.asname or each.name] = each.name
                elif part.module is not None and part.module.startswith("calculators"):
                    found.imports[each.asname or each.name] = (part.module, each.name)
    return found


def resolve(module_name: str, name: str) -> Name:
    """Where a name that a module uses comes from, through re-exports."""
    while (module_name, name) not in HOST and name in module(module_name).imports:
        module_name, name = module(module_name).imports[name]
    return (module_name, name)


def used_names(function: ast.FunctionDef) -> set[str]:
    """The names that a function reads and does not give a value itself; annotations are none."""
    arguments = [*function.args.args, *function.args.kwonlyargs]
    own = {argument.arg for argument in arguments}
    read: set[str] = set()
    for node in _walk([*function.args.defaults, *function.body]):
        if isinstance(node, ast.Name):
            (read if isinstance(node.ctx, ast.Load) else own).add(node.id)
    return read - own


def _walk(nodes: Iterable[ast.AST]) -> Iterator[ast.AST]:
    for node in nodes:
        yield node
        children: Iterable[ast.AST] = ast.iter_child_nodes(node)
        if isinstance(node, ast.AnnAssign):
            children = [child for child in (node.target, node.value) if child is not None]
        yield from _walk(children)


def needs(name: Name) -> list[Name]:
    """What a function uses of the calculators' modules: functions, constants and functions of the host."""
    holder = module(name[0])
    found = []
    for used in sorted(used_names(holder.functions[name[1]])):
        if used in holder.functions or used in holder.imports or holder.has_constant(used):
            found.append(resolve(name[0], used))
    return found


def reached(starts: Iterable[Name]) -> list[Name]:
    """Everything that functions need, themselves included, in the order of the alphabet."""
    found: set[Name] = set()
    waiting = list(starts)
    while waiting:
        name = waiting.pop()
        if name in found:
            continue
        found.add(name)
        if name not in HOST and name[1] in module(name[0]).functions:
            waiting += needs(name)
    return sorted(found)


def place(function: Callable[..., Any]) -> Name:
    """The module and the name of a function."""
    return (function.__module__, function.__name__)
