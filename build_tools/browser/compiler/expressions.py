"""Expressions of the subset as script, each with its type: names, places, arithmetic, conditions, comparisons.

Every part is put in brackets; the minifier takes those away that are not needed. What this cannot write is refused.
"""

from __future__ import annotations

import ast
from itertools import pairwise
from types import ModuleType
from typing import NamedTuple

from build_tools.browser.compiler.helpers import PYTHON
from build_tools.browser.compiler.refusals import instead
from build_tools.browser.compiler.sources import HOST, Module, Name, local_name, script_name
from build_tools.browser.compiler.types import (
    ANY,
    BOOL,
    FLOAT,
    INT,
    NEVER,
    NUMBERS,
    STR,
    Type,
    families_of,
    fields_of,
    figure_of,
    joined,
    literal,
    of_value,
)

COMPARED = {ast.Lt: "<", ast.LtE: "<=", ast.Gt: ">", ast.GtE: ">="}
SIGNS: dict[type[ast.operator], str] = {
    ast.Add: "+", ast.Sub: "-", ast.Mult: "*", ast.Div: "/", ast.Pow: "**", ast.Mod: "mod", ast.FloorDiv: "floordiv",
}  # fmt: skip
"""Operators in script; those of a word are helpers."""
SCALARS = ("int", "float", "bool", "none", "record")


class Js(NamedTuple):
    """Script, and the type of its value."""

    code: str
    type: Type


class Expressions(ast.NodeVisitor):
    """Writes the expressions of one function; ``refused`` collects what the page cannot run."""

    def __init__(self, module: Module) -> None:
        self.module = module
        self.locals: dict[str, Type] = {}
        self.scopes: list[dict[str, Type]] = []
        self.temps = 0
        self.uses: set[Name] = set()
        self.refused: list[tuple[ast.AST, str]] = []

    def refuse(self, node: ast.AST, message: str) -> Js:
        """Note what is refused, and go on: a run names everything."""
        self.refused.append((node, message))
        return Js("0", NEVER)

    def expr(self, node: ast.expr) -> Js:
        """An expression."""
        found: Js = self.visit(node)
        return found

    def generic_visit(self, node: ast.AST) -> Js:
        return self.refuse(node, instead(node))

    def helper(self, name: str, *arguments: str) -> str:
        """A call of a helper of ``script/python.js``."""
        self.uses.add((PYTHON, name))
        return f"${name}({', '.join(arguments)})"

    def math(self, name: str) -> str:
        """A function or a figure of ``Math``, where the minifier does not see that it is one."""
        self.uses.add((PYTHON, "math"))
        return f"$math.{name}"

    def temp(self) -> str:
        """A new name of our own."""
        self.temps += 1
        return f"${self.temps}"

    # Names and constants

    def visit_Constant(self, node: ast.Constant) -> Js:
        if node.value is not None and not isinstance(node.value, str | int | float):
            return self.refuse(node, f"{node.value!r} is no figure and no word")
        try:
            written = literal(node.value)
            return Js(f"({written})" if written.startswith("-") else written, of_value(node.value))
        except ValueError:
            return self.refuse(node, "a figure that script cannot hold: give it a limit")

    def local(self, name: str) -> Type | None:
        """The type of a name of the function or of a comprehension; None for one from outside."""
        scopes = (scope[name] for scope in reversed(self.scopes) if name in scope)
        return next(scopes, self.locals.get(name))

    def visit_Name(self, node: ast.Name) -> Js:
        known = self.local(node.id)
        if known is not None:
            return Js(local_name(node.id), known)
        if node.id in self.module.math:
            is_pi = self.module.math[node.id] == "pi"
            return Js(self.math("PI"), FLOAT) if is_pi else self.refuse(node, f"'{node.id}' as a value: call it")
        source, origin = self.module.resolve(node.id)
        if source in HOST or source[1] in origin.functions:
            return self.refuse(node, f"'{node.id}' as a value: call it")
        if not origin.has_constant(source[1]):
            return self.refuse(node, f"'{node.id}' is not in the modules of the calculators")
        value = origin.constant(source[1])
        if isinstance(value, ModuleType):
            return self.refuse(node, f"'{node.id}' is a module: import the name that is used of it")
        if isinstance(value, int | float):
            return self.visit(ast.copy_location(ast.Constant(value), node))  # type: ignore[no-any-return]
        self.uses.add(source)
        return Js(script_name(source), of_value(value))

    def builtin(self, node: ast.Call) -> str:
        """The name of a function of Python's own that is called; nothing for another call."""
        if (
            not isinstance(node.func, ast.Name)
            or self.local(node.func.id) is not None
            or node.func.id in self.module.math
        ):
            return ""
        source, origin = self.module.resolve(node.func.id)
        return "" if source[1] in origin.functions or origin.has_constant(source[1]) else node.func.id

    def visit_Attribute(self, node: ast.Attribute) -> Js:
        owner = self.expr(node.value)
        fields = fields_of(owner.type.cls) if owner.type.kind == "record" else {}
        if node.attr not in fields:
            return self.refuse(node, f"'.{node.attr}' of what is not known to have it: annotate its type")
        return Js(f"{owner.code}.{node.attr}", fields[node.attr])

    # Places and slices

    def visit_Subscript(self, node: ast.Subscript) -> Js:
        owner = self.expr(node.value)
        kind = owner.type.kind
        if kind in SCALARS:
            return self.refuse(node, f"a place in a {kind}")
        if isinstance(node.slice, ast.Slice):
            return self._slice(node, node.slice, owner)
        place = self.expr(node.slice)
        if place.type.kind in ("bool", "float", "none", "tuple", "list", "dict"):
            return self.refuse(node.slice, f"a {place.type.kind} as a place or a key: use a whole number or a text")
        written = node.slice.value if isinstance(node.slice, ast.Constant) else None
        is_plain = kind == "dict" or (kind == "any" and place.type == STR)
        if is_plain or (kind in ("list", "tuple") and isinstance(written, int)):
            return Js(f"{owner.code}[{place.code}]", owner.type.at(written))
        return Js(self.helper("at", owner.code, place.code), owner.type.at(written))

    def _slice(self, node: ast.Subscript, part: ast.Slice, owner: Js) -> Js:
        if owner.type.kind == "dict" or part.step is not None:
            return self.refuse(node, "a slice of a dict, or with a step: use reversed() or a loop")
        last = part.upper
        if (
            isinstance(last, ast.Call)
            and self.builtin(last) == "len"
            and ast.dump(last.args[0]) == ast.dump(node.value)
        ):
            last = None
        start, end = (None if each is None else self.expr(each) for each in (part.lower, last))
        if any(each is not None and each.type not in (INT, ANY, NEVER) for each in (start, end)):
            return self.refuse(node, "an end of a slice that is no whole number")
        given = [start.code if start else "0", *([end.code] if end else [])]
        if owner.type.kind in ("list", "tuple"):
            return Js(f"{owner.code}.slice({', '.join(given)})", Type(owner.type.kind, (owner.type.item,)))
        return Js(self.helper("slice", owner.code, *given), owner.type)

    # Arithmetic

    def visit_BinOp(self, node: ast.BinOp) -> Js:
        return self.binary(node, node.op, self.expr(node.left), self.expr(node.right))

    def binary(self, node: ast.AST, op: ast.operator, left: Js, right: Js) -> Js:
        """An operation on two values."""
        kinds, families = {left.type.kind, right.type.kind}, families_of(left.type, right.type)
        others = families - {"number"}
        is_sum, is_product = isinstance(op, ast.Add), isinstance(op, ast.Mult) and "float" not in kinds
        fits = not others or (others in ({"text"}, {"list"}) and (is_product or (is_sum and len(families) == 1)))
        if type(op) not in SIGNS or not fits:
            return self.refuse(node, instead(op))
        if is_sum and families in (set(), {"list"}):
            is_plain = families and left.type.kind == right.type.kind
            code = f"{left.code}.concat({right.code})" if is_plain else self.helper("add", left.code, right.code)
            return Js(code, joined((left.type, right.type)))
        if is_product and not kinds <= {"int", "bool"}:
            made = next((each.type for each in (left, right) if each.type.kind in ("str", "list", "tuple")), ANY)
            return Js(self.helper("times", left.code, right.code), NEVER if "never" in kinds else made)
        made = (
            STR
            if others
            else NEVER
            if "never" in kinds
            else figure_of(isinstance(op, ast.Div | ast.Pow), left.type, right.type)
        )
        if isinstance(op, ast.Mod | ast.FloorDiv):
            return Js(self.helper(SIGNS[type(op)], left.code, right.code), made)
        return Js(f"({left.code} {SIGNS[type(op)]} {right.code})", made)

    def visit_UnaryOp(self, node: ast.UnaryOp) -> Js:
        if isinstance(node.op, ast.Not):
            return Js(f"!{self.truth(node.operand)}", BOOL)
        inner = self.expr(node.operand)
        if isinstance(node.op, ast.Invert) or inner.type.kind in ("str", "list", "tuple", "dict", "none", "record"):
            return self.refuse(node, instead(node.op))
        made = INT if inner.type == BOOL else inner.type
        return Js(f"({'-' if isinstance(node.op, ast.USub) else '+'}{inner.code})", made)

    # Truths

    def truth(self, node: ast.expr) -> str:
        """An expression as a condition."""
        if isinstance(node, ast.BoolOp):
            sign = " && " if isinstance(node.op, ast.And) else " || "
            return f"({sign.join(self.truth(each) for each in node.values)})"
        return self.truth_of(self.expr(node))

    def truth_of(self, given: Js) -> str:
        """Whether Python takes a value for true."""
        kind = given.type.kind
        if kind in ("bool", "str"):
            return given.code
        if kind in ("int", "float"):
            return f"({given.code} !== 0)"
        if kind in ("list", "tuple"):
            return f"({given.code}.length > 0)"
        return f"({given.code} !== null)" if kind == "record" else self.helper("truth", given.code)

    def visit_BoolOp(self, node: ast.BoolOp) -> Js:
        """A value that stands for the choice: the first that decides, as it is."""
        found = self.expr(node.values[0])
        is_and = isinstance(node.op, ast.And)
        for each in node.values[1:]:
            other = self.expr(each)
            made = joined((found.type, other.type))
            if found.type.kind in ("bool", "str"):
                found = Js(f"({found.code} {'&&' if is_and else '||'} {other.code})", made)
            else:
                kept = self.temp()
                test = self.truth_of(Js(f"({kept} = {found.code})", found.type))
                found = Js(f"({test} ? {other.code if is_and else kept} : {kept if is_and else other.code})", made)
        return found

    def visit_IfExp(self, node: ast.IfExp) -> Js:
        test, body, other = self.truth(node.test), self.expr(node.body), self.expr(node.orelse)
        return Js(f"({test} ? {body.code} : {other.code})", joined((body.type, other.type)))

    # Comparisons

    def visit_Compare(self, node: ast.Compare) -> Js:
        if any(isinstance(part, ast.Call) for each in node.comparators[:-1] for part in ast.walk(each)):
            return self.refuse(node, "a call in the middle of a comparison: give it a name first")
        sides = [self.expr(each) for each in (node.left, *node.comparators)]
        tests = [self._compared(node, op, *pair) for pair, op in zip(pairwise(sides), node.ops, strict=True)]
        return Js(tests[0] if len(tests) == 1 else f"({' && '.join(tests)})", BOOL)

    def _compared(self, node: ast.Compare, op: ast.cmpop, left: Js, right: Js) -> str:
        if isinstance(op, ast.In | ast.NotIn):
            return ("" if isinstance(op, ast.In) else "!") + self._contains(node, right, left)
        if isinstance(op, ast.Is | ast.IsNot):
            if right.code not in ("null", "true", "false"):
                return self.refuse(node, "'is' of anything but None, True and False: use ==").code
            return f"({left.code} {'===' if isinstance(op, ast.Is) else '!=='} {right.code})"
        if isinstance(op, ast.Eq | ast.NotEq):
            return self._same(node, left, right, isinstance(op, ast.Eq))
        families = families_of(left.type, right.type)
        if len(families) > 1 or families & {"none", "dict", "record"}:
            return self.refuse(node, f"'{COMPARED[type(op)]}' between {left.type.kind} and {right.type.kind}").code
        if families == {"number"}:
            return f"({left.code} {COMPARED[type(op)]} {right.code})"
        return f"({self.helper('cmp', left.code, right.code)} {COMPARED[type(op)]} 0)"

    def _same(self, node: ast.AST, left: Js, right: Js, is_same: bool) -> str:
        """Whether two values are equal, or are not."""
        kinds = {left.type.kind, right.type.kind}
        if kinds in ({"list", "tuple"}, {"dict", "record"}):
            return self.refuse(node, f"a {' against a '.join(sorted(kinds))}, which are never equal").code
        if kinds & {"str", "none"} or kinds <= {"int", "float"} or kinds == {"bool"}:
            return f"({left.code} {'===' if is_same else '!=='} {right.code})"
        return ("" if is_same else "!") + self.helper("eq", left.code, right.code)

    def _contains(self, node: ast.AST, owner: Js, item: Js) -> str:
        """Whether a value is in a text, a list or a dict."""
        kind, inside = owner.type.kind, owner.type.item
        if kind in SCALARS:
            return self.refuse(node, f"'in' of a {kind}").code
        if kind == "dict":
            return self.helper("own", owner.code, item.code)
        if kind == "str" or (kind in ("list", "tuple") and (inside == STR or {inside, item.type} <= set(NUMBERS))):
            return f"{owner.code}.includes({item.code})"
        return self.helper("has", owner.code, item.code)
