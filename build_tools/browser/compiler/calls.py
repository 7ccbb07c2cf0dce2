"""Calls: functions and records of the modules, functions of ``math``, methods of texts, lists and dicts."""

from __future__ import annotations

import ast
from dataclasses import MISSING, fields

from build_tools.browser.compiler.builtins import Builtins
from build_tools.browser.compiler.expressions import Js
from build_tools.browser.compiler.sources import HOST, Module, Name, script_name
from build_tools.browser.compiler.types import (
    ANY,
    BOOL,
    FLOAT,
    INT,
    NONE,
    NUMBERS,
    STR,
    Type,
    fields_of,
    joined,
    list_of,
    literal,
)

MATH = {
    "acos": FLOAT, "asin": FLOAT, "atan": FLOAT, "atan2": FLOAT, "ceil": INT, "cos": FLOAT, "exp": FLOAT, "floor": INT,
    "log": FLOAT, "sin": FLOAT, "sqrt": FLOAT, "tan": FLOAT, "trunc": INT,
}  # fmt: skip
"""Functions of ``math`` that script has by the same name, and what they give."""
METHODS: dict[str, dict[str, tuple[int, int, str, Type]]] = {
    "str": {
        "endswith": (1, 1, "{0}.endsWith({1})", BOOL),
        "find": (1, 1, "$find", INT),
        "join": (1, 1, "{1}.join({0})", STR),
        "lower": (0, 0, "{0}.toLowerCase()", STR),
        "lstrip": (0, 1, "$lstrip", STR),
        "removeprefix": (1, 1, "$removeprefix", STR),
        "removesuffix": (1, 1, "$removesuffix", STR),
        "replace": (2, 2, "$replace", STR),
        "rstrip": (0, 1, "$rstrip", STR),
        "split": (0, 1, "$split", list_of(STR)),
        "startswith": (1, 1, "{0}.startsWith({1})", BOOL),
        "strip": (0, 1, "$strip", STR),
        "upper": (0, 0, "{0}.toUpperCase()", STR),
    },
    "list": {
        "append": (1, 1, "{0}.push({1})", NONE),
        "copy": (0, 0, "{0}.slice()", ANY),
        "extend": (1, 1, "{0}.push(...{1})", NONE),
        "insert": (2, 2, "{0}.splice({1}, 0, {2})", NONE),
        "pop": (0, 1, "$pop", ANY),
        "reverse": (0, 0, "{0}.reverse()", NONE),
    },
    "dict": {"copy": (0, 0, "({{...{0}}})", ANY), "get": (1, 2, "$get", ANY)},
}
"""By kind and name: the fewest and the most arguments, the script or its helper, and the type that it gives."""
CHANGES = ("append", "extend", "insert", "pop", "reverse")
INSTEAD = {
    "format": "use an f-string", "items": "walk through it at once", "keys": "walk through the dict",
    "setdefault": "look, then put", "sort": "use sorted()", "update": "write {**one, **other}",
    "values": "walk through it at once",
}  # fmt: skip


class Calls(Builtins):
    """Writes calls."""

    def visit_Call(self, node: ast.Call) -> Js:
        if any(isinstance(each, ast.Starred) for each in node.args) or any(each.arg is None for each in node.keywords):
            return self.refuse(node, "'*' or '**' in a call: write the arguments out")
        if isinstance(node.func, ast.Attribute):
            return self._method(node, node.func)
        if not isinstance(node.func, ast.Name) or self.local(node.func.id) is not None:
            return self.refuse(node, "a call of something that is no function of a module")
        name = node.func.id
        if name in self.module.math:
            return self._math(node, self.module.math[name])
        source, origin = self.module.resolve(name)
        record = origin.record(source[1])
        if source in HOST or source[1] in origin.functions:
            return self._function(node, source, origin)
        if record is not None:
            return self._record(node, record)
        if origin.has_constant(source[1]):
            return self.refuse(node, f"'{name}()', which is no function of the calculators' modules")
        return self.own_call(node, name)

    def _math(self, node: ast.Call, name: str) -> Js:
        if name not in MATH:
            fix = ": write sqrt(x * x + y * y)" if name == "hypot" else ""
            return self.refuse(node, f"math.{name}, which script has not or works out another way{fix}")
        count = 2 if name == "atan2" else 1
        given, _ = self.arguments(node, count, count)
        return Js(f"{self.math(name)}({', '.join(self.expr(each).code for each in given)})", MATH[name])

    def _function(self, node: ast.Call, source: Name, origin: Module) -> Js:
        taken = origin.functions[source[1]].args
        names = [each.arg for each in (*taken.posonlyargs, *taken.args, *taken.kwonlyargs)]
        hints = origin.hints(source[1])
        given = self._given(node, names, hints)
        if given.keys() - set(names) or len(node.args) > len(names):
            self.refuse(node, "an argument that the function does not take")
        before = ""
        if [name for name in names if name in given] != list(given) and not all(map(_is_simple, node.keywords)):
            kept = {name: self.temp() for name in given}
            before = "".join(f"{kept[name]} = {code}, " for name, code in given.items())
            given = kept
        last = max((names.index(name) + 1 for name in given if name in names), default=0)
        first, *rest = [given.get(name, "undefined") for name in names[:last]] or [""]
        self.uses.add(source)
        arguments = ", ".join([f"({before}{first})" if before else first, *rest])
        return Js(f"{script_name(source)}({arguments})", hints.get("return", ANY))

    def _given(self, node: ast.Call, names: list[str], hints: dict[str, Type]) -> dict[str, str]:
        """The arguments by the names of the parameters, in the order in which they are written."""
        written = [*zip(names, node.args, strict=False), *((str(each.arg), each.value) for each in node.keywords)]
        return {name: self.fitting(value, self.expr(value), hints.get(name, ANY)).code for name, value in written}

    def _record(self, node: ast.Call, record: type) -> Js:
        """A frozen dataclass, as an object with its fields."""
        known = {each.name: each for each in fields(record)}
        if not record.__dataclass_params__.frozen or hasattr(record, "__post_init__"):  # type: ignore[attr-defined]
            return self.refuse(node, f"'{record.__name__}' is no plain frozen dataclass")
        given = self._given(node, list(known), fields_of(record))
        for name, each in known.items():
            if name not in given and each.default is not MISSING:
                given[name] = literal(each.default)
        if given.keys() != known.keys():
            return self.refuse(node, f"'{record.__name__}' without all of its fields")
        return Js(f"({{{', '.join(f'{name}: {code}' for name, code in given.items())}}})", Type("record", (), record))

    def fitting(self, node: ast.expr, given: Js, wanted: Type) -> Js:
        """A value where another type is declared for it, which must not say more than there is."""
        if given.type == BOOL and wanted in NUMBERS:
            return self.refuse(node, "yes or no where a figure is declared: write 1 if ... else 0")
        if given.type.digits:
            return self.refuse(node, "a dict with figures as keys can only be looked up")
        return given

    # Methods

    def _method(self, node: ast.Call, called: ast.Attribute) -> Js:
        owner, name = self.expr(called.value), called.attr
        having = [
            kind for kind in ("str", "list", "dict") if hasattr({"str": str, "list": list, "dict": dict}[kind], name)
        ]
        kind = {"tuple": "list", "any": (having or ["any"])[0], "never": (having or ["any"])[0]}.get(
            owner.type.kind, owner.type.kind
        )
        if owner.type.kind in ("any", "never") and len(having) > 1:
            return self.refuse(node, f"'.{name}()' of what may be a {' or a '.join(having)}: annotate its type")
        if name not in METHODS.get(kind, {}) or (owner.type.kind == "tuple" and name in CHANGES):
            return self.refuse(node, f"'.{name}()'" + (f": {INSTEAD[name]}" if name in INSTEAD else ""))
        fewest, most, code, made = METHODS[kind][name]
        places, _ = self.arguments(node, fewest, most)
        given = [self.array(places[0])] if name in ("join", "extend") else [self.expr(each) for each in places]
        if name in ("startswith", "endswith") and given[0].type.kind == "tuple":
            return self.refuse(node, f"'.{name}()' of several texts: ask for each")
        if name in CHANGES:
            self._changed(called.value, name, given)
        if name == "copy":
            made = owner.type
        elif name == "pop":
            made = owner.type.item
        elif name == "get" and len(given) > 1:
            made = joined((owner.type.at(None), given[1].type))
        codes = [owner.code, *(each.code for each in given)]
        if name == "split" and places and isinstance(places[0], ast.Constant) and places[0].value:
            code = "{0}.split({1})"
        return Js(self.helper(code[1:], *codes) if code.startswith("$") else code.format(*codes), made)

    def _changed(self, owner: ast.expr, name: str, given: list[Js]) -> None:
        """A list that gets more or less: a constant must not, and what a new list holds is seen here."""
        self.must_be_own(owner)
        if isinstance(owner, ast.Name) and name in ("append", "extend", "insert"):
            self.note(owner.id, list_of(given[-1].type.item if name == "extend" else given[-1].type))

    def must_be_own(self, changed: ast.expr) -> None:
        """Refuse what would change a constant of a module."""
        while isinstance(changed, ast.Subscript | ast.Attribute):
            changed = changed.value
        if isinstance(changed, ast.Name) and self.local(changed.id) is None:
            self.refuse(changed, f"'{changed.id}' is changed: copy a constant first")

    def note(self, name: str, type: Type) -> None:
        """A name is given a value of that type."""
        raise NotImplementedError


def _is_simple(each: ast.keyword) -> bool:
    return isinstance(each.value, ast.Name | ast.Constant)
