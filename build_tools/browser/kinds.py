"""What kind of value an expression of the plain subset has, as far as that can be seen: figure, text, yes or no.

In script ``+``, ``*``, ``==`` and conditions are only Python's where the kinds are known; elsewhere a library function
has to look. The type checker keeps a float from being multiplied with a text, so one known side is often enough.
"""

from __future__ import annotations

import ast
from collections.abc import Callable
from typing import Literal

Kind = Literal["int", "float", "number", "str", "bool", "list", "dict", "unknown"]
NUMBERS = ("int", "float", "number")

ANNOTATED: dict[str, Kind] = {"int": "int", "float": "float", "str": "str", "bool": "bool"}
CALLS: dict[str, Kind] = {
    "len": "int", "int": "int", "floor": "int", "ceil": "int", "float": "float", "sqrt": "float", "sin": "float",
    "cos": "float", "tan": "float", "atan": "float", "exp": "float", "log": "float", "str": "str", "bool": "bool",
    "list": "list", "range": "list", "enumerate": "list", "zip": "list",
}  # fmt: skip
METHODS: dict[str, Kind] = {
    "strip": "str", "lower": "str", "upper": "str", "replace": "str", "join": "str", "find": "int",
    "startswith": "bool", "endswith": "bool", "split": "list",
}  # fmt: skip


def annotated(node: ast.expr | None) -> Kind:
    """The kind that an annotation declares."""
    if isinstance(node, ast.Name):
        return ANNOTATED.get(node.id, "unknown")
    if isinstance(node, ast.Subscript) and isinstance(node.value, ast.Name):
        return {"list": "list", "Sequence": "list", "dict": "dict", "Mapping": "dict"}.get(node.value.id, "unknown")  # type: ignore[return-value]
    return "unknown"


class Kinds:
    """The kinds in one function; ``outside`` gives those of the module's constants and of what its functions return."""

    def __init__(self, function: ast.FunctionDef, outside: Callable[[str, bool], Kind]) -> None:
        self._outside = outside
        self._local: dict[str, Kind] = {each.arg: annotated(each.annotation) for each in function.args.args}
        given: dict[str, list[ast.expr | Kind]] = {}
        for node in ast.walk(function):
            for name, value in _givings(node):
                given.setdefault(name, []).append(value)
        for name in self._local.keys() & given.keys():
            given[name].append(self._local[name])
        # A name is at first of any kind; each round takes back what the values given to it do not bear out.
        open_: dict[str, Kind] = {}
        for _ in range(len(given) + 1):
            self._local |= open_
            open_ = {name: self._of_all(name, values) for name, values in given.items()}
            if all(self._local.get(name) == kind for name, kind in open_.items()):
                break

    def _of_all(self, name: str, values: list[ast.expr | Kind]) -> Kind:
        kinds = {value if isinstance(value, str) else self.of(value) for value in values}
        return _joined(kinds)

    def of(self, node: ast.expr) -> Kind:
        """The kind of an expression."""
        if isinstance(node, ast.Constant):
            return {bool: "bool", int: "int", float: "float", str: "str"}.get(type(node.value), "unknown")  # type: ignore[return-value]
        if isinstance(node, ast.Name):
            return self._local[node.id] if node.id in self._local else self._outside(node.id, False)
        if isinstance(node, ast.BinOp):
            return self._sum(node.op, self.of(node.left), self.of(node.right))
        if isinstance(node, ast.UnaryOp):
            return "bool" if isinstance(node.op, ast.Not) else self.of(node.operand)
        if isinstance(node, ast.IfExp):
            return _joined({self.of(node.body), self.of(node.orelse)})
        if isinstance(node, ast.BoolOp):
            return _joined({self.of(value) for value in node.values})
        if isinstance(node, ast.Call):
            return self._call(node)
        simple: dict[type[ast.expr], Kind] = {
            ast.Compare: "bool", ast.JoinedStr: "str", ast.List: "list", ast.Tuple: "list", ast.ListComp: "list",
            ast.Dict: "dict",
        }  # fmt: skip
        return simple.get(type(node), "unknown")

    def _call(self, node: ast.Call) -> Kind:
        if isinstance(node.func, ast.Attribute):
            return METHODS.get(node.func.attr, "unknown")
        if not isinstance(node.func, ast.Name):
            return "unknown"
        name = node.func.id
        if name in ("abs", "min", "max") and node.args:
            return _joined({self.of(each) for each in node.args}) if len(node.args) > 1 or name == "abs" else "unknown"
        known = self._outside(name, True)
        return known if known != "unknown" else CALLS.get(name, "unknown")

    @staticmethod
    def _sum(op: ast.operator, left: Kind, right: Kind) -> Kind:
        if isinstance(op, ast.Div):
            return "float"
        if isinstance(op, ast.Add) and "str" in (left, right):
            return "str"
        if "float" in (left, right):
            return "float"
        if left == right == "int" and not isinstance(op, ast.Pow):
            return "int"
        if isinstance(op, ast.Add):
            return "number" if left in NUMBERS or right in NUMBERS else left if left == right else "unknown"
        if isinstance(op, ast.Mult) and not (left in NUMBERS and right in NUMBERS):
            return "unknown"
        return "number"


def _joined(kinds: set[Kind]) -> Kind:
    if len(kinds) == 1:
        return next(iter(kinds))
    return "number" if kinds and kinds <= set(NUMBERS) else "unknown"


def _givings(node: ast.AST) -> list[tuple[str, ast.expr | Kind]]:
    """Every name that a node gives a value, with the value or, where it cannot be seen, its kind."""
    if isinstance(node, ast.Assign):
        return [pair for target in node.targets for pair in _into(target, node.value)]
    if isinstance(node, ast.AnnAssign) and isinstance(node.target, ast.Name):
        declared = annotated(node.annotation)
        return (
            [(node.target.id, declared)]
            if node.value is None or declared != "unknown"
            else _into(node.target, node.value)
        )
    if isinstance(node, ast.AugAssign) and isinstance(node.target, ast.Name):
        return [(node.target.id, ast.BinOp(ast.Name(node.target.id), node.op, node.value))]
    if isinstance(node, ast.For | ast.comprehension):
        over = node.iter
        is_range = isinstance(over, ast.Call) and isinstance(over.func, ast.Name) and over.func.id == "range"
        kind: Kind = "int" if is_range else "unknown"
        return [(each.id, kind) for each in ast.walk(node.target) if isinstance(each, ast.Name)]
    return []


def _into(target: ast.expr, value: ast.expr) -> list[tuple[str, ast.expr | Kind]]:
    if isinstance(target, ast.Name):
        return [(target.id, value)]
    if isinstance(target, ast.Tuple):
        if isinstance(value, ast.Tuple) and len(value.elts) == len(target.elts):
            return [pair for one, other in zip(target.elts, value.elts, strict=True) for pair in _into(one, other)]
        return [(each.id, "unknown") for each in target.elts if isinstance(each, ast.Name)]
    return []
