"""The sources of the calculators: what each module holds, and where a name in it comes from."""

from __future__ import annotations

import ast
import importlib
from collections.abc import Callable
from dataclasses import dataclass, field, is_dataclass
from functools import cache, cached_property
from inspect import unwrap
from pathlib import Path
from types import SimpleNamespace
from typing import Any, get_type_hints

from build_tools.browser.compiler.types import Type, of_hint

Name = tuple[str, str]
"""A module and a name in it."""

HOST: set[Name] = {
    ("calculators.declaration", "refuse"),
    ("calculators.scanning", "unreadable"),
    ("calculators.attempts", "read_or_why"),
}
"""The functions that stop or catch: the page has its own of these in `script/core.js`."""

KEPT_BY_SCRIPT = set(
    "arguments await break case catch class const continue crew debugger default delete do else enum eval export "
    "extends false finally for function if implements import in Infinity instanceof interface let NaN new null package "
    "private protected public return static super switch this throw true try typeof undefined var void while with "
    "yield Array JSON Math Number Object String Symbol".split()
)


@dataclass
class Module:
    """A module's functions by name, the names it imports from other calculators' modules and from ``math``."""

    name: str
    file: str
    source: str
    functions: dict[str, ast.FunctionDef] = field(default_factory=dict)
    imports: dict[str, Name] = field(default_factory=dict)
    math: dict[str, str] = field(default_factory=dict)
    signatures: dict[str, dict[str, Type]] = field(default_factory=dict)

    @cached_property
    def names(self) -> dict[str, Any]:
        """What the module itself holds when it is imported."""
        return vars(importlib.import_module(self.name))

    def constant(self, name: str) -> Any:
        """The value of a constant, or a class."""
        return self.names[name]

    def has_constant(self, name: str) -> bool:
        """Whether the module itself gives that name a value."""
        return name not in (*self.functions, *self.imports, *self.math) and name in self.names

    def record(self, name: str) -> type | None:
        """The frozen dataclass of that name."""
        found = self.names.get(name)
        return found if isinstance(found, type) and is_dataclass(found) else None

    def line_of(self, name: str) -> int:
        """The line on which a name is first written; the first where it is not."""
        names = (node for node in ast.walk(ast.parse(self.source)) if isinstance(node, ast.Name) and node.id == name)
        return next((node.lineno for node in names), 1)

    def hints(self, function: str) -> dict[str, Type]:
        """The types of a function's parameters by name, and of what it returns as `return`."""
        if function not in self.signatures:
            hints = get_type_hints(unwrap(self.names[function]))
            self.signatures[function] = {name: of_hint(hint) for name, hint in hints.items()}
        return self.signatures[function]

    def hint(self, annotation: ast.expr) -> Type:
        """The type that an annotation inside a function declares."""
        written = SimpleNamespace(__annotations__={"it": ast.unparse(annotation)})
        return of_hint(get_type_hints(written, self.names)["it"])

    def resolve(self, name: str) -> tuple[Name, Module]:
        """Where a name that the module uses comes from, through re-exports."""
        found = (self.name, name)
        while found not in HOST and found[1] in module(found[0]).imports:
            found = module(found[0]).imports[found[1]]
        return found, module(found[0])


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


def place(function: Callable[..., Any]) -> Name:
    """The module and the name of a function."""
    return (function.__module__, function.__name__)


def script_name(name: Name) -> str:
    """The name of a function or a constant in script; a helper of `script/python.js` has no module.

    >>> script_name(("calculators.doors.closet", "closet")), script_name(("python", "at"))
    ('doors$closet$closet', '$at')
    """
    if name[0] == "python":
        return f"${name[1]}"
    return "$".join([*name[0].removeprefix("calculators.").split("."), name[1]])


def local_name(name: str) -> str:
    """A local name in script."""
    return f"{name}$" if name in KEPT_BY_SCRIPT else name
