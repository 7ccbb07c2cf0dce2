"""What the page cannot run, and what to write instead."""

from __future__ import annotations

import ast

INSTEAD: dict[type[ast.AST], str] = {
    ast.Assert: "'assert': refuse in words",
    ast.AsyncFor: "'async'",
    ast.AsyncFunctionDef: "'async'",
    ast.AsyncWith: "'async'",
    ast.Await: "'await'",
    ast.ClassDef: "a class inside a function: write it in the module",
    ast.Delete: "'del': build what is left",
    ast.FunctionDef: "a function inside a function: write it in the module",
    ast.GeneratorExp: "a generator that is kept: build a list",
    ast.Global: "'global': hand the value in and out",
    ast.Import: "an import inside a function",
    ast.ImportFrom: "an import inside a function",
    ast.Lambda: "'lambda' elsewhere than as key=: write a function of the module",
    ast.Match: "'match': use if and elif",
    ast.NamedExpr: "':=': assign on a line of its own",
    ast.Nonlocal: "'nonlocal': hand the value in and out",
    ast.Raise: "'raise': call refuse()",
    ast.Set: "a set: use a list",
    ast.SetComp: "a set: use a list",
    ast.Starred: "'*' here: write the values out",
    ast.Try: "'try': look before, and refuse in words",
    ast.TryStar: "'try': look before, and refuse in words",
    ast.With: "'with'",
    ast.Yield: "a function that yields: build a list",
    ast.YieldFrom: "a function that yields: build a list",
}
OPERATORS: dict[type[ast.AST], str] = {
    ast.Add: "+", ast.BitAnd: "&", ast.BitOr: "|", ast.BitXor: "^", ast.Div: "/", ast.FloorDiv: "//", ast.Invert: "~",
    ast.LShift: "<<", ast.MatMult: "@", ast.Mod: "%", ast.Mult: "*", ast.Pow: "**", ast.RShift: ">>", ast.Sub: "-",
    ast.UAdd: "+", ast.USub: "-",
}  # fmt: skip


def instead(node: ast.AST) -> str:
    """The message for a piece of syntax that is refused.

    >>> instead(ast.parse("{1, 2}", mode="eval").body)
    'a set: use a list'
    """
    if type(node) in OPERATORS:
        return f"'{OPERATORS[type(node)]}' of such values: it works on figures"
    return INSTEAD.get(type(node), f"'{type(node).__name__}'")
