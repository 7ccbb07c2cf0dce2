"""A function of the plain subset written more plainly still, so that the compiler cannot get it wrong.

What differs between Python and the compiler's script is rewritten here where that is safe: f-strings become sums of
texts, ``==`` with a figure or a word becomes the strict comparison, ``len`` asks the library (a dict has no length in
script), variables of comprehensions get names of their own, and names that mean something in script get other ones.
"""

from __future__ import annotations

import ast
from collections.abc import Callable

from pscript.parser2 import RESERVED
from pscript.parser3 import Parser3

BUILT_IN = {name.removeprefix("function_") for name in dir(Parser3) if name.startswith("function_")}
"""Names that the compiler takes for Python's own functions."""

TAKEN = RESERVED | set(
    """abstract arguments Array boolean Boolean byte char crew double Error eval final float goto i0 Infinity int iter0
    iter1 JSON long Math NaN native null Number Object RawJS res self short String synchronized this throws transient
    undefined volatile window""".split()
)
"""Names that mean something in script or in what the compiler writes around a comprehension."""


def safe(name: str, defined: bool = True) -> str:
    """The name in script. ``defined`` tells that the book's code gives it a meaning, not Python.

    >>> [safe("rise"), safe("default"), safe("round"), safe("max", False)]
    ['rise', 'default_', 'round_', 'max']
    """
    if defined and (name in TAKEN or name in BUILT_IN):
        return f"{name}_"
    return name


def lowered(function: ast.FunctionDef, knows: set[str], gives_text: Callable[[str], bool]) -> str:
    """The source of a function for the compiler.

    ``knows`` holds the names of the module; ``gives_text`` says of a called name whether it always gives text.
    """
    copy = ast.parse(ast.unparse(function)).body[0]
    assert isinstance(copy, ast.FunctionDef)
    if ast.get_docstring(copy) is not None:
        copy.body = copy.body[1:] or [ast.Pass()]
    own = {node.id for node in ast.walk(copy) if isinstance(node, ast.Name) and isinstance(node.ctx, ast.Store)}
    own |= {argument.arg for argument in copy.args.args}
    result = _Lower(knows | own, gives_text).visit(copy)
    return ast.unparse(ast.fix_missing_locations(result))


class _Lower(ast.NodeTransformer):
    def __init__(self, defined: set[str], gives_text: Callable[[str], bool]) -> None:
        self.defined = defined
        self.gives_text = gives_text
        self.comprehensions = 0
        self.renamed: dict[str, str] = {}

    def visit_FunctionDef(self, node: ast.FunctionDef) -> ast.AST:
        node.name = safe(node.name)
        node.returns = None
        self.generic_visit(node)
        return node

    def visit_arg(self, node: ast.arg) -> ast.AST:
        return ast.arg(safe(node.arg))

    def visit_AnnAssign(self, node: ast.AnnAssign) -> ast.AST | None:
        if node.value is None:
            return None
        return self.visit(ast.Assign([node.target], node.value))  # type: ignore[no-any-return]

    def visit_Name(self, node: ast.Name) -> ast.AST:
        name = self.renamed.get(node.id, node.id)
        return ast.Name(safe(name, node.id in self.defined), node.ctx)

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
        is_text = isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and self.gives_text(node.func.id)
        visited = self.visit(node)
        assert isinstance(visited, ast.expr)
        return visited if is_text else ast.Call(ast.Name("str"), [visited], [])

    def visit_Compare(self, node: ast.Compare) -> ast.AST:
        sides = [node.left, *node.comparators]
        for at, op in enumerate(node.ops):
            if isinstance(op, ast.Eq | ast.NotEq) and (_plain(sides[at]) or _plain(sides[at + 1])):
                node.ops[at] = ast.Is() if isinstance(op, ast.Eq) else ast.IsNot()
        self.generic_visit(node)
        return node

    def visit_Call(self, node: ast.Call) -> ast.AST:
        self.generic_visit(node)
        if isinstance(node.func, ast.Name) and node.func.id == "len":
            node.func = ast.Name("py_len")
        return node

    def visit_ListComp(self, node: ast.ListComp) -> ast.AST:
        before = self.renamed
        part = node.generators[0]
        part.iter = self.visit(part.iter)
        self.comprehensions += 1
        targets = [each.id for each in ast.walk(part.target) if isinstance(each, ast.Name)]
        self.renamed = before | {name: f"{name}_of{self.comprehensions}" for name in targets}
        part.target = self.visit(part.target)
        part.ifs = [self.visit(each) for each in part.ifs]
        node.elt = self.visit(node.elt)
        self.renamed = before
        return node


def _plain(node: ast.expr) -> bool:
    """A figure or a word: script compares it strictly as Python does."""
    if isinstance(node, ast.UnaryOp) and isinstance(node.op, ast.USub):
        return _plain(node.operand)
    return isinstance(node, ast.Constant) and type(node.value) in (int, float, str)
