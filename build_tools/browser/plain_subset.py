"""The plain subset of Python that calculators keep to, as rules over the syntax tree.

The functions are compiled to script, where some of Python means something else (`%` of a negative number, `round`,
sorting numbers, an empty list as false) or nothing at all. Each rule names what it refuses and what to write instead.
"""

from __future__ import annotations

import ast
from collections.abc import Iterator
from dataclasses import dataclass, field

from build_tools.book.problems import Problem

MATH = {"sqrt", "sin", "cos", "tan", "atan", "pi", "floor", "ceil", "exp", "log"}
BUILTINS = {"abs", "bool", "enumerate", "float", "int", "len", "list", "max", "min", "range", "str", "zip"}
METHODS = {
    "append", "endswith", "extend", "find", "get", "insert", "items", "join", "keys", "lower", "pop", "replace",
    "split", "startswith", "strip", "upper", "values",
}  # fmt: skip
NODES: dict[type[ast.AST], str] = {
    ast.Try: "'try': look before, and refuse in words",
    ast.ClassDef: "a class: use a dict",
    ast.Lambda: "'lambda': write a function of the module",
    ast.Yield: "a generator: build a list",
    ast.YieldFrom: "a generator: build a list",
    ast.GeneratorExp: "a generator: build a list",
    ast.Await: "'await'",
    ast.AsyncFunctionDef: "'async'",
    ast.DictComp: "a dict comprehension: fill a dict in a loop",
    ast.SetComp: "a set: use a list",
    ast.Set: "a set: use a list",
    ast.NamedExpr: "':=': assign on a line of its own",
    ast.Starred: "'*' unpacking: write the values out",
    ast.Global: "'global': hand the value in and out",
    ast.Nonlocal: "'nonlocal': hand the value in and out",
    ast.With: "'with'",
    ast.Match: "'match': use if and elif",
    ast.Delete: "'del'",
    ast.Assert: "'assert': refuse in words",
    ast.Raise: "'raise': call refuse()",
    ast.Import: "an import inside a function",
    ast.ImportFrom: "an import inside a function",
}


@dataclass
class Module:
    """What a module's functions may call: its own functions, and the names it imports."""

    functions: dict[str, ast.FunctionDef] = field(default_factory=dict)
    imported: set[str] = field(default_factory=set)


def refusals(source: str, file: str, only: set[str] | None = None) -> list[Problem]:
    """Every use of what is outside the subset, with what to write instead; ``only`` some functions, or all."""
    tree = ast.parse(source)
    for node in ast.walk(tree):
        if isinstance(node, ast.AnnAssign):
            node.annotation = ast.Name("object")
    module = Module()
    found: list[tuple[int, str]] = []
    for part in tree.body:
        if isinstance(part, ast.FunctionDef):
            module.functions[part.name] = part
        elif isinstance(part, ast.ImportFrom):
            module.imported |= {name.asname or name.name for name in part.names}
            if part.module == "math":
                found += [(part.lineno, f"math.{name.name}") for name in part.names if name.name not in MATH]
        elif isinstance(part, ast.Import):
            found.append((part.lineno, "'import' of a module: import its names"))
    for function in module.functions.values():
        if only is None or function.name in only:
            found += _in_function(function, module)
    return [Problem(file, line, 1, "error", message) for line, message in sorted(set(found))]


def _in_function(function: ast.FunctionDef, module: Module) -> Iterator[tuple[int, str]]:
    args = function.args
    if args.vararg or args.kwarg or function.decorator_list:
        yield function.lineno, "'*args', '**kwargs' or a decorator"
    if any(not isinstance(default, ast.Constant | ast.Name | ast.BinOp | ast.UnaryOp) for default in args.defaults):
        yield function.lineno, "a default that can change: give None or a constant"
    truths = _truths(function)
    for statement in function.body:
        for node in ast.walk(statement):
            if isinstance(node, ast.expr | ast.stmt):
                for message in (*_refused(node), *_refused_call(node, module), *_refused_test(node, truths, module)):
                    yield node.lineno, message


def _refused(node: ast.expr | ast.stmt) -> Iterator[str]:
    for kind, message in NODES.items():
        if isinstance(node, kind):
            yield message
    if isinstance(node, ast.FunctionDef):
        yield "a function inside a function"
    if isinstance(node, ast.BinOp | ast.AugAssign) and isinstance(node.op, ast.Mod):
        yield "'%': its sign differs in script; use floor()"
    if isinstance(node, ast.ListComp) and len(node.generators) > 1:
        yield "a comprehension with several 'for': use loops"
    if isinstance(node, ast.Dict):
        if any(key is None for key in node.keys):
            yield "'**' unpacking: write the keys out"
        if any(isinstance(key, ast.Tuple | ast.List) for key in node.keys):
            yield "a tuple as a key: use a string"
    if isinstance(node, ast.Subscript):
        if isinstance(node.slice, ast.Slice) and node.slice.step is not None:
            yield "a slice with a step"
        if isinstance(node.slice, ast.Tuple):
            yield "a tuple as a key: use a string"
    if isinstance(node, ast.FormattedValue):
        if node.format_spec is not None or node.conversion != -1:
            yield "a format in an f-string: call decimal() or another writer"
        if not isinstance(node.value, ast.Name | ast.Call | ast.Attribute | ast.Subscript | ast.Constant):
            yield "arithmetic in an f-string: give it a name first"


def _refused_call(node: ast.expr | ast.stmt, module: Module) -> Iterator[str]:
    if not isinstance(node, ast.Call):
        return
    if node.keywords:
        yield "keyword arguments in a call: give them in order"
    if isinstance(node.func, ast.Attribute):
        if node.func.attr not in METHODS:
            yield f"'.{node.func.attr}()'"
    elif isinstance(node.func, ast.Name):
        name = node.func.id
        if name not in module.functions and name not in module.imported and name not in BUILTINS:
            yield f"'{name}()'"
        if name == "int" and any(isinstance(arg, ast.UnaryOp) for arg in node.args):
            yield "'int()' of a negative number: use floor() or ceil()"
    else:
        yield "a call of something that has no name"


def _truths(function: ast.FunctionDef) -> set[str]:
    """The names in a function that hold yes or no: declared bool, or given nothing but comparisons."""
    parameters = [*function.args.args, *function.args.kwonlyargs]
    truths = {arg.arg for arg in parameters if isinstance(arg.annotation, ast.Name) and arg.annotation.id == "bool"}
    given: dict[str, list[ast.expr]] = {}
    for node in ast.walk(function):
        if isinstance(node, ast.Assign):
            for target in node.targets:
                if isinstance(target, ast.Name):
                    given.setdefault(target.id, []).append(node.value)
    known = -1
    while known != len(truths):
        known = len(truths)
        truths |= {name for name, values in given.items() if all(_is_truth(value, truths) for value in values)}
    return truths


def _is_truth(node: ast.expr, truths: set[str]) -> bool:
    """Whether an expression is yes or no; a call or an item of a dict is taken to be."""
    if isinstance(node, ast.BoolOp):
        return all(_is_truth(value, truths) for value in node.values)
    if isinstance(node, ast.UnaryOp) and isinstance(node.op, ast.Not):
        return True
    if isinstance(node, ast.IfExp):
        return _is_truth(node.body, truths) and _is_truth(node.orelse, truths)
    if isinstance(node, ast.Constant):
        return isinstance(node.value, bool)
    if isinstance(node, ast.Name):
        return node.id in truths
    return isinstance(node, ast.Compare | ast.Call | ast.Subscript)


def _refused_test(node: ast.expr | ast.stmt, truths: set[str], module: Module) -> Iterator[str]:
    tests: list[ast.expr] = []
    if isinstance(node, ast.If | ast.While | ast.IfExp):
        tests = [node.test]
    elif isinstance(node, ast.BoolOp):
        tests = node.values
    elif isinstance(node, ast.UnaryOp) and isinstance(node.op, ast.Not):
        tests = [node.operand]
    for test in tests:
        if isinstance(test, ast.Call) and isinstance(test.func, ast.Name):
            own = module.functions.get(test.func.id)
            returns = own.returns if own else None
            if test.func.id in BUILTINS - {"bool"} or (isinstance(returns, ast.Name) and returns.id != "bool"):
                yield "a number, text or list as a condition: compare it"
        elif isinstance(test, ast.Name) and test.id not in truths:
            yield f"'{test.id}' as a condition: compare it (write len(x) == 0, x != \"\", x != 0)"
        elif not isinstance(test, ast.BoolOp) and not _is_truth(test, truths):
            yield "something that is not yes or no as a condition: compare it"
