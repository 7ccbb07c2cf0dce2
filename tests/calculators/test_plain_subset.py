"""The functions of calculators keep to the subset of Python that compiles to script."""

from __future__ import annotations

import pytest

from build_tools.browser.compile import ENTRIES
from build_tools.browser.emit import refused
from build_tools.browser.modules import place, reached
from build_tools.browser.plain_subset import refusals
from calculators.registry import CALCULATORS

ON_SITE = [each for each in CALCULATORS.values() if each.on_site]
FUNCTIONS = {each.name: [each.function, *([each.drawing] if each.drawing else [])] for each in ON_SITE}
STARTS = {name: [place(one) for one in them] for name, them in FUNCTIONS.items()} | {"every page": list(ENTRIES)}


@pytest.mark.parametrize("what", STARTS)
def test_what_the_page_runs_keeps_to_the_plain_subset(what: str) -> None:
    found = refused(reached(STARTS[what]))
    assert not found, "\n".join(str(problem) for problem in found)


def said(source: str) -> list[str]:
    """The problems of a source as `file:line: message`."""
    return [f"{found.file}:{found.line}: {found.message}" for found in refusals(source, "a.py")]


@pytest.mark.parametrize(
    ("body", "message"),
    [
        ("return x % 2", "'%': its sign differs in script; use floor()"),
        ("x %= 2", "'%': its sign differs in script; use floor()"),
        ("return round(x)", "'round()'"),
        ("return sum(y)", "'sum()'"),
        ("return sorted(y)", "'sorted()'"),
        ("y.sort()", "'.sort()'"),
        ("return int(-x)", "'int()' of a negative number: use floor() or ceil()"),
        ("return math.hypot(x, x)", "'.hypot()'"),
        ("try:\n        return 1\n    except KeyError:\n        return 2", "'try': look before, and refuse in words"),
        ("raise ValueError(x)", "'raise': call refuse()"),
        ("return [a for a in y for b in y]", "a comprehension with several 'for': use loops"),
        ("return max(a for a in y)", "a generator: build a list"),
        ("return {**y}", "'**' unpacking: write the keys out"),
        ("return [*y]", "'*' unpacking: write the values out"),
        ("return {1, 2}", "a set: use a list"),
        ("return {(1, 2): 3}", "a tuple as a key: use a string"),
        ("return y[1, 2]", "a tuple as a key: use a string"),
        ("return y[::2]", "a slice with a step"),
        ("return f'{x:.2f}'", "a format in an f-string: call decimal() or another writer"),
        ("return f'{x!r}'", "a format in an f-string: call decimal() or another writer"),
        ("return f'{x + 1}'", "arithmetic in an f-string: give it a name first"),
        ("return '{}'.format(x)", "'.format()'"),
        ("return own(x=1)", "keyword arguments in a call: give them in order"),
        ("if y:\n        return 1", "'y' as a condition: compare it (write len(x) == 0, x != \"\", x != 0)"),
        ("if len(y):\n        return 1", "a number, text or list as a condition: compare it"),
        ("if own(1, 2):\n        return 1", "a number, text or list as a condition: compare it"),
        ("return not y", "'y' as a condition: compare it (write len(x) == 0, x != \"\", x != 0)"),
        ("return x or 1", "'x' as a condition: compare it (write len(x) == 0, x != \"\", x != 0)"),
        ("if x + 1:\n        return 1", "something that is not yes or no as a condition: compare it"),
        ("if (z := x) > 1:\n        return z", "':=': assign on a line of its own"),
        ("return (lambda: 1)()", "'lambda': write a function of the module"),
        ("global z", "'global': hand the value in and out"),
        ("from math import sqrt", "an import inside a function"),
        ("def inner() -> None:\n        return None", "a function inside a function"),
        ("assert x > 1", "'assert': refuse in words"),
    ],
)
def test_the_rule_refuses(body: str, message: str) -> None:
    source = f"def own(x: float, y: list[float]) -> object:\n    {body}\n"
    assert f"a.py:2: {message}" in said(source)


@pytest.mark.parametrize(
    ("source", "found"),
    [
        ("import math\n", "a.py:1: 'import' of a module: import its names"),
        ("from math import hypot\n", "a.py:1: math.hypot"),
        ("def f(x=[]):\n    return x\n", "a.py:1: a default that can change: give None or a constant"),
        ("def f(*x):\n    return x\n", "a.py:1: '*args', '**kwargs' or a decorator"),
    ],
)
def test_the_rule_refuses_in_a_module(source: str, found: str) -> None:
    assert said(source) == [found]


def test_the_rule_allows_the_subset() -> None:
    source = """
from math import sqrt
from calculators.writing import decimal
LIST = [1, 2]

def helper(x: float, flag: bool) -> bool:
    if flag and x > 0:
        return True
    return not flag

def main(width: float, rows: list[dict[str, float]], tight: bool) -> dict[str, object]:
    total = 0.0
    for row in rows:
        total = total + row["width"] * width
    for i in range(len(rows)):
        total += i
    wide = total > 3 and width >= 2
    if wide or helper(total, tight) or not tight:
        total = sqrt(total)
    while 0 < total < 10:
        total = total * 2
    words = [decimal(row["width"], 2) for row in rows if "width" in row]
    text = f"{decimal(total, 2)} by {width}"
    least = total if total < 3 else min(total, 5, abs(width))
    return {"total": total, "least": least, "words": ", ".join(words[0:2]), "text": text}
"""
    assert said(source) == []
