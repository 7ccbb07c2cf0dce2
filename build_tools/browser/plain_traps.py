"""The traps of the plain subset: what compiles, runs, and means something else in script."""

from __future__ import annotations

import ast
from collections.abc import Callable, Iterator

from build_tools.browser.kinds import Kind, Kinds

CHANGES = {"append", "extend", "insert", "pop"}
FEW_ARGUMENTS = {"split": 1, "replace": 2, "find": 2, "startswith": 1, "endswith": 1}
LARGEST = 2**53
NAMELESS = (ast.BinOp, ast.BoolOp, ast.Compare, ast.IfExp, ast.JoinedStr, ast.UnaryOp)


def traps(function: ast.FunctionDef, outside: Callable[[str, bool], Kind]) -> Iterator[tuple[int, str]]:
    """The traps in a function, as line and message; ``outside`` as in :class:`Kinds`."""
    arguments = [*function.args.args, *function.args.kwonlyargs]
    own = {each.arg for each in arguments}
    own |= {node.id for node in ast.walk(function) if isinstance(node, ast.Name) and isinstance(node.ctx, ast.Store)}
    if function.args.kwonlyargs:
        yield function.lineno, "'*' before a parameter: give all parameters in order"
    kinds = Kinds(function, outside)
    for node in ast.walk(function):
        if isinstance(node, ast.For | ast.While):
            yield from _loop(node, function)
        if isinstance(node, ast.expr | ast.stmt):
            for message in (*_figures_and_keys(node), *_calls(node), *_places(node), *_changed(node, own)):
                yield node.lineno, message
            for text in _texts(node):
                if kinds.of(text) == "float":
                    yield node.lineno, "a figure with a point as text: call decimal() or another writer"


def _loop(loop: ast.For | ast.While, function: ast.FunctionDef) -> Iterator[tuple[int, str]]:
    if loop.orelse:
        yield loop.lineno, "'else' of a loop: use a yes-or-no"
    if isinstance(loop, ast.While):
        return
    if isinstance(loop.target, ast.Tuple) and not all(isinstance(each, ast.Name) for each in loop.target.elts):
        yield loop.lineno, "a pair in a pair: take it apart on a line of its own"
    if not (isinstance(loop.iter, ast.Call) and isinstance(loop.iter.func, ast.Name) and loop.iter.func.id == "range"):
        return
    counter = {each.id for each in ast.walk(loop.target) if isinstance(each, ast.Name)}
    inside = [node for statement in loop.body for node in ast.walk(statement)]
    if any(_stores(node) & counter for node in inside):
        yield loop.lineno, "a loop's counter that is changed inside: use 'while'"
    if counter & _read_behind(loop, function):
        yield loop.lineno, "a loop's counter that is read behind the loop: give it another name inside"
    asked = {each.id for argument in loop.iter.args for each in ast.walk(argument) if isinstance(each, ast.Name)}
    if any((_stores(node) | _grows(node)) & asked for node in inside):
        yield loop.lineno, "range() of what the loop changes: give it a name before the loop"
    if any(isinstance(argument, ast.IfExp | ast.BoolOp | ast.Compare) for argument in loop.iter.args):
        yield loop.lineno, "a choice inside range(): give it a name first"
    if len(loop.iter.args) == 3 and not _is_figure(loop.iter.args[2]):
        yield loop.lineno, "a step of range() that is no plain figure: use 'while'"


def _stores(node: ast.AST) -> set[str]:
    return {node.id} if isinstance(node, ast.Name) and isinstance(node.ctx, ast.Store) else set()


def _grows(node: ast.AST) -> set[str]:
    """The name of a list that a call makes longer or shorter."""
    if isinstance(node, ast.Call) and isinstance(node.func, ast.Attribute) and node.func.attr in CHANGES:
        return {node.func.value.id} if isinstance(node.func.value, ast.Name) else set()
    return set()


def _read_behind(loop: ast.For, function: ast.FunctionDef) -> set[str]:
    """The names that are read behind a loop before they are given another value there."""
    inside = {id(node) for node in ast.walk(loop)}
    behind = [node for node in ast.walk(function) if isinstance(node, ast.Name) and id(node) not in inside]
    behind = [node for node in behind if node.lineno > (loop.end_lineno or loop.lineno)]
    first: dict[str, ast.Name] = {}
    for node in sorted(behind, key=lambda node: (node.lineno, isinstance(node.ctx, ast.Load), node.col_offset)):
        first.setdefault(node.id, node)
    own = {
        each.id for part in ast.walk(function) if isinstance(part, ast.comprehension) for each in _names(part.target)
    }
    return {name for name, node in first.items() if isinstance(node.ctx, ast.Load)} - own


def _names(node: ast.AST) -> list[ast.Name]:
    return [each for each in ast.walk(node) if isinstance(each, ast.Name)]


def _is_figure(node: ast.expr) -> bool:
    if isinstance(node, ast.UnaryOp) and isinstance(node.op, ast.USub):
        return _is_figure(node.operand)
    return isinstance(node, ast.Constant) and type(node.value) in (int, float)


def _figures_and_keys(node: ast.expr | ast.stmt) -> Iterator[str]:
    if isinstance(node, ast.Constant) and isinstance(node.value, int) and abs(node.value) > LARGEST:
        yield "a whole number that script cannot hold"
    if isinstance(node, ast.Constant) and isinstance(node.value, float) and node.value - node.value != 0:
        yield "a figure without end: give it a limit"
    if isinstance(node, ast.Dict):
        for key in node.keys:
            if isinstance(key, ast.Constant) and not isinstance(key.value, str):
                yield "a key that is no text: use a text"
            if isinstance(key, ast.Constant) and isinstance(key.value, str) and key.value.isdigit():
                yield "a key of digits, which script puts in order of size: begin it with a letter"


def _calls(node: ast.expr | ast.stmt) -> Iterator[str]:
    if not isinstance(node, ast.Call):
        return
    if isinstance(node.func, ast.Attribute):
        name = node.func.attr
        if len(node.args) > FEW_ARGUMENTS.get(name, 9):
            yield f"'.{name}()' with so many arguments"
        if name in ("startswith", "endswith") and any(isinstance(each, ast.Tuple) for each in node.args):
            yield f"'.{name}()' of several texts: ask for each"
    elif isinstance(node.func, ast.Name) and node.func.id in ("float", "int"):
        text = node.args[0] if node.args else None
        if isinstance(text, ast.Constant) and isinstance(text.value, str):
            yield f"'{node.func.id}()' of a text: write the figure"


def _places(node: ast.expr | ast.stmt) -> Iterator[str]:
    if not isinstance(node, ast.Subscript):
        return
    if isinstance(node.value, NAMELESS):
        yield "a place in a sum or a choice: give it a name first"
    if not isinstance(node.slice, ast.Slice):
        leftmost = node.slice
        while isinstance(leftmost, ast.BinOp):
            leftmost = leftmost.left
        if isinstance(leftmost, ast.UnaryOp) and not _is_figure(node.slice):
            yield "a place that begins with a minus: count from len()"


def _changed(node: ast.expr | ast.stmt, own: set[str]) -> Iterator[str]:
    """Constants that are changed, and lists that are made longer by ``+=``."""
    if isinstance(node, ast.Subscript) and isinstance(node.ctx, ast.Store) and isinstance(node.value, ast.Name):
        if node.value.id not in own:
            yield f"'{node.value.id}' is changed: copy a constant first"
    elif isinstance(node, ast.expr) and _grows(node) - own:
        yield f"'{_grows(node).pop()}' is changed: copy a constant first"
    if isinstance(node, ast.AugAssign) and isinstance(node.value, ast.List | ast.ListComp):
        yield "'+=' of a list: use extend()"


def _texts(node: ast.expr | ast.stmt) -> list[ast.expr]:
    """What is made into text."""
    if isinstance(node, ast.FormattedValue):
        return [node.value]
    if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id == "str":
        return node.args
    return []
