"""A function of the plain subset written more plainly still, so that the compiler cannot get it wrong.

What differs between Python and the compiler's script is rewritten here where that is safe: f-strings become sums of
texts, ``==`` with a figure or a word becomes the strict comparison, ``len`` asks the library (a dict has no length in
script), variables of comprehensions get names of their own, and names that mean something in script get other ones.
"""

from __future__ import annotations

import ast
from collections.abc import Callable
from itertools import count, pairwise

from build_tools.browser.kinds import NUMBERS, Kind, Kinds

SAME_METHODS = {
    "append": "push", "endswith": "endsWith", "find": "indexOf", "lower": "toLowerCase", "startswith": "startsWith",
    "upper": "toUpperCase",
}  # fmt: skip
"""Methods that script has by another name."""
LETTERS = "abcdefghijklmnopqrstuvwxyz"


def lowered(
    function: ast.FunctionDef, rename: Callable[[str], str | None], outside: Callable[[str, bool], Kind]
) -> str:
    """The source of a function for the compiler.

    ``rename`` gives the name in script of a name of the module, None for Python's own; ``outside`` gives the kind of a
    constant, or of what a function returns.
    """
    copy = ast.parse(ast.unparse(function)).body[0]
    assert isinstance(copy, ast.FunctionDef)
    if ast.get_docstring(copy) is not None:
        copy.body = copy.body[1:] or [ast.Pass()]
    own = {node.id for node in ast.walk(copy) if isinstance(node, ast.Name) and isinstance(node.ctx, ast.Store)}
    own |= {argument.arg for argument in copy.args.args}
    result = _Lower(own, rename, Kinds(copy, outside)).visit(copy)
    _Short(result).visit(result)
    # The compiler is told to leave +, *, == and conditions alone: they are written as the kinds ask for.
    result.body.insert(0, ast.Assign([ast.Name("PSCRIPT_OVERLOAD", ast.Store())], ast.Constant(False)))
    return ast.unparse(ast.fix_missing_locations(result))


class _Short(ast.NodeTransformer):
    """Gives what a function holds of its own short names: a, b, ... z, a1, b1, ..."""

    def __init__(self, function: ast.FunctionDef) -> None:
        names = [node for node in ast.walk(function) if isinstance(node, ast.Name)]
        own = [each.arg for each in function.args.args]
        own += [node.id for node in names if isinstance(node.ctx, ast.Store)]
        kept = {node.id for node in names} - set(own)
        free = (f"{letter}{number or ''}" for number in count() for letter in LETTERS)
        free = (name for name in free if name not in kept)
        self.short = {name: next(free) for name in dict.fromkeys(own)}

    def visit_Name(self, node: ast.Name) -> ast.AST:
        return ast.Name(self.short.get(node.id, node.id), node.ctx)

    def visit_arg(self, node: ast.arg) -> ast.AST:
        return ast.arg(self.short[node.arg])


def _library(name: str, *arguments: ast.expr) -> ast.Call:
    return ast.Call(ast.Name(f"py_{name}", ast.Load()), list(arguments), [])


class _Lower(ast.NodeTransformer):
    def __init__(self, own: set[str], rename: Callable[[str], str | None], kinds: Kinds) -> None:
        self.own = own
        self.rename = rename
        self.kinds = kinds
        self.comprehensions = 0
        self.renamed: dict[str, str] = {}

    def _seen(self, node: ast.expr) -> ast.expr:
        visited = self.visit(node)
        assert isinstance(visited, ast.expr)
        return visited

    def visit_FunctionDef(self, node: ast.FunctionDef) -> ast.AST:
        node.name = self.rename(node.name) or node.name
        node.returns = None
        self.generic_visit(node)
        return node

    def visit_arg(self, node: ast.arg) -> ast.AST:
        return ast.arg(node.arg)

    def visit_AnnAssign(self, node: ast.AnnAssign) -> ast.AST | None:
        if node.value is None:
            return None
        return ast.Assign([self._seen(node.target)], self._seen(node.value))

    def visit_AugAssign(self, node: ast.AugAssign) -> ast.AST:
        load = ast.parse(ast.unparse(node.target), mode="eval").body
        return ast.Assign([self._seen(node.target)], self._seen(ast.BinOp(load, node.op, node.value)))

    def visit_Name(self, node: ast.Name) -> ast.AST:
        if node.id in self.own:
            return ast.Name(self.renamed.get(node.id, node.id), node.ctx)
        return ast.Name(self.rename(node.id) or node.id, node.ctx)

    def visit_JoinedStr(self, node: ast.JoinedStr) -> ast.AST:
        parts: list[ast.expr] = []
        for value in node.values:
            parts.append(self._text(value.value) if isinstance(value, ast.FormattedValue) else value)
        if not parts or not (isinstance(parts[0], ast.Constant) and isinstance(parts[0].value, str)):
            parts.insert(0, ast.Constant(""))
        whole = parts[0]
        for part in parts[1:]:
            whole = ast.BinOp(whole, ast.Add(), part)
        return whole

    def _text(self, node: ast.expr) -> ast.expr:
        is_text = self.kinds.of(node) == "str"
        return self._seen(node) if is_text else _library("str", self._seen(node))

    def visit_BinOp(self, node: ast.BinOp) -> ast.AST:
        left, right = self.kinds.of(node.left), self.kinds.of(node.right)
        both = (self._seen(node.left), self._seen(node.right))
        if isinstance(node.op, ast.Add) and not {left, right} & {*NUMBERS, "str"}:
            return _library("op_add", *both)
        if isinstance(node.op, ast.Mult) and "float" not in (left, right) and not {left, right} <= set(NUMBERS):
            return _library("op_mult", *both)
        return ast.BinOp(both[0], node.op, both[1])

    def visit_Compare(self, node: ast.Compare) -> ast.AST:
        sides = [node.left, *node.comparators]
        strict = [
            {self.kinds.of(one), self.kinds.of(other)} & {*NUMBERS, "str", "bool"} for one, other in pairwise(sides)
        ]
        seen = [self._seen(side) for side in sides]
        if len(node.ops) == 1 and isinstance(node.ops[0], ast.Eq | ast.NotEq) and not strict[0]:
            same = _library("op_equals", *seen)
            return same if isinstance(node.ops[0], ast.Eq) else ast.UnaryOp(ast.Not(), same)
        ops = [
            ast.Is() if isinstance(op, ast.Eq) else ast.IsNot() if isinstance(op, ast.NotEq) else op for op in node.ops
        ]
        return ast.Compare(seen[0], ops, seen[1:])

    def _condition(self, node: ast.expr) -> ast.expr:
        """A condition; what may be a list or a dict is asked whether it is empty."""
        is_known = self.kinds.of(node) in (*NUMBERS, "str", "bool") or isinstance(node, ast.BoolOp)
        return self._seen(node) if is_known else _library("truthy", self._seen(node))

    def visit_If(self, node: ast.If) -> ast.AST:
        test = self._condition(node.test)
        return ast.If(test, [self.visit(each) for each in node.body], [self.visit(each) for each in node.orelse])

    def visit_While(self, node: ast.While) -> ast.AST:
        return ast.While(self._condition(node.test), [self.visit(each) for each in node.body], [])

    def visit_IfExp(self, node: ast.IfExp) -> ast.AST:
        return ast.IfExp(self._condition(node.test), self._seen(node.body), self._seen(node.orelse))

    def visit_BoolOp(self, node: ast.BoolOp) -> ast.AST:
        return ast.BoolOp(node.op, [self._condition(value) for value in node.values])

    def visit_UnaryOp(self, node: ast.UnaryOp) -> ast.AST:
        operand = self._condition(node.operand) if isinstance(node.op, ast.Not) else self._seen(node.operand)
        return ast.UnaryOp(node.op, operand)

    def visit_Call(self, node: ast.Call) -> ast.AST:
        self.generic_visit(node)
        if isinstance(node.func, ast.Name) and node.func.id in ("len", "str"):
            node.func = ast.Name(f"py_{node.func.id}", ast.Load())
        elif isinstance(node.func, ast.Attribute):
            node.func.attr = SAME_METHODS.get(node.func.attr, node.func.attr)
        return node

    def visit_ListComp(self, node: ast.ListComp) -> ast.AST:
        before = self.renamed
        part = node.generators[0]
        part.iter = self._seen(part.iter)
        self.comprehensions += 1
        targets = [each.id for each in ast.walk(part.target) if isinstance(each, ast.Name)]
        self.renamed = before | {name: f"{name}_of{self.comprehensions}" for name in targets}
        part.target = self._seen(part.target)
        part.ifs = [self._condition(each) for each in part.ifs]
        node.elt = self._seen(node.elt)
        self.renamed = before
        return node
