"""What the page cannot run, or would run to another end, stops the build by file and line, and says what to write."""

from __future__ import annotations

import ast
from pathlib import Path

import pytest

from build_tools.browser.compiler.refusals import INSTEAD
from tests.build_tools.browser.compiler.probe import Probe

HEAD = """from __future__ import annotations
import math, os
from dataclasses import dataclass
from math import cosh, hypot, sqrt
LIMITS = {'low': 1, 'two': {'a': 1}}
LIST = [1]
BORE = {'1.5': 1.61, '2': 2.067}

@dataclass
class Loose:
    a: int

@dataclass(frozen=True)
class Board:
    a: int
    b: int = 2

def helper(x: float, unit: str = 'in') -> float:
    return x

def main(x: float, y: list[float], n: int, t: str, d: dict[str, float], u: tuple[float, ...], z, b: Board) -> object:
"""
FIRST = HEAD.count("\n") + 1

REFUSED = [
    # Statements
    ("try:\n        return 1\n    except KeyError:\n        return 2", "'try': look before, and refuse in words"),
    ("raise ValueError(x)", "'raise': call refuse()"),
    ("assert x > 1", "'assert': refuse in words"),
    ("with open(t) as f:\n        return f", "'with'"),
    ("del y[0]", "'del': build what is left"),
    ("global LIST", "'global': hand the value in and out"),
    ("match n:\n        case 1:\n            return 2", "'match': use if and elif"),
    ("yield x", "a function that yields: build a list"),
    ("import math", "an import inside a function"),
    ("from math import sqrt", "an import inside a function"),
    ("def inner() -> None:\n        return None", "a function inside a function: write it in the module"),
    ("class Inner:\n        pass", "a class inside a function: write it in the module"),
    ("for a in y:\n        x += a\n    else:\n        x = 0", "'else' of a loop: use a yes-or-no"),
    ("while x > 1:\n        x -= 1\n    else:\n        x = 0", "'else' of a loop: use a yes-or-no"),
    ("a, *c = y", "'*' here: write the values out"),
    ("b.a = 2", "b.a is changed: build a new record"),
    ("b.a += 2", "a target that is no name and no plain place"),
    ("y[0:1] = [2]", "a part of a list is changed: build a new one"),
    ("t[0] = 'a'", "a part of a str is changed: build a new one"),
    ("LIMITS['low'] = 2", "'LIMITS' is changed: copy a constant first"),
    ("LIMITS['two']['a'] = 2", "'LIMITS' is changed: copy a constant first"),
    ("LIMITS['low'] += 2", "'LIMITS' is changed: copy a constant first"),
    ("LIST.append(2)", "'LIST' is changed: copy a constant first"),
    ("z += z", "'+=' of what may be a list: annotate it, or write the sum out"),
    ("z += [1]", "'+=' of what may be a list: annotate it, or write the sum out"),
    # Expressions
    ("if (w := x) > 1:\n        return w", "':=': assign on a line of its own"),
    ("return (lambda: 1)()", "a call of something that is no function of a module"),
    ("f = lambda: 1", "'lambda' elsewhere than as key=: write a function of the module"),
    ("return {1, 2}", "a set: use a list"),
    ("return {a for a in y}", "a set: use a list"),
    ("return (a for a in y)", "a generator that is kept: build a list"),
    ("return y[::2]", "a slice of a dict, or with a step: use reversed() or a loop"),
    ("return y[x:]", "an end of a slice that is no whole number"),
    ("return y[1, 2]", "a tuple as a place or a key: use a whole number or a text"),
    ("return y[x > 1]", "a bool as a place or a key: use a whole number or a text"),
    ("return x[0]", "a place in a float"),
    ("return n & 1", "'&' of such values: it works on figures"),
    ("return ~n", "'~' of such values: it works on figures"),
    ("return n << 2", "'<<' of such values: it works on figures"),
    ("return t % n", "'%' of such values: it works on figures"),
    ("return t + n", "'+' of such values: it works on figures"),
    ("return t * 1.5", "'*' of such values: it works on figures"),
    ("return t - t", "'-' of such values: it works on figures"),
    ("return d + d", "'+' of such values: it works on figures"),
    ("return d | d", "'|' of such values: it works on figures"),
    ("return None + x", "'+' of such values: it works on figures"),
    ("return -t", "'-' of such values: it works on figures"),
    ("return 0 < helper(x) < 3", "a call in the middle of a comparison: give it a name first"),
    ("return n < t", "'<' between int and str"),
    ("return y > n", "'>' between list and int"),
    ("return d < d", "'<' between dict and dict"),
    ("return None < n", "'<' between none and int"),
    ("return n is n", "'is' of anything but None, True and False: use =="),
    ("return u == y", "a list against a tuple, which are never equal"),
    ("return b == d", "a dict against a record, which are never equal"),
    ("return 1 in x", "'in' of a float"),
    ("return b'a'", "b'a' is no figure and no word"),
    ("return 2j", "2j is no figure and no word"),
    ("return x < 9007199254740993", "a figure that script cannot hold: give it a limit"),
    ("return x < 1e999", "a figure that script cannot hold: give it a limit"),
    ("return b.length", "'.length' of what is not known to have it: annotate its type"),
    ("return z.a", "'.a' of what is not known to have it: annotate its type"),
    ("return unknown", "'unknown' is not in the modules of the calculators"),
    ("return helper", "'helper' as a value: call it"),
    ("return sqrt", "'sqrt' as a value: call it"),
    ("return math.sqrt(x)", "'math' is a module: import the name that is used of it"),
    ("return os.name", "'os' is a module: import the name that is used of it"),
    # Texts
    ("return f'{x} ft'", "a figure with a point as text: call decimal() or another writer"),
    ("half = len(y) / 2\n    return str(half)", "a figure with a point as text: call decimal() or another writer"),
    ("return f'{helper(x)}'", "a figure with a point as text: call decimal() or another writer"),
    ("return f'{y}'", "a list as text: write its parts"),
    ("return str(b)", "a record as text: write its parts"),
    ("return f'{n:3d}'", "a format in an f-string: call decimal() or another writer"),
    ("return f'{t!r}'", "a format in an f-string: call decimal() or another writer"),
    ("return '{}'.format(n)", "'.format()': use an f-string"),
    ("return t.title()", "'.title()'"),
    ("return 'a b c'.split(' ', 1)", "''a b c'.split()' with these arguments"),
    ("return t.startswith(('a', 'b'))", "'.startswith()' of several texts: ask for each"),
    # Lists and dicts
    ("y.sort()", "'.sort()': use sorted()"),
    ("return z.pop()", "'.pop()' of what may be a list or a dict: annotate its type"),
    ("u.append(x)", "'.append()'"),
    ("d.update(d)", "'.update()': write {**one, **other}"),
    ("return d.items()", "'.items()': walk through it at once"),
    ("return d.keys() == ['a']", "'.keys()': walk through the dict"),
    ("return {1: x}", "a key that is no text: use a text"),
    ("return {'1': x}", "a key that script would put elsewhere in the dict: begin it with a letter"),
    ("return {'__proto__': x}", "a key that script would put elsewhere in the dict: begin it with a letter"),
    ("d['12'] = x", "a key that script would put elsewhere in the dict: begin it with a letter"),
    ("z['12'] = x", "a key that script would put elsewhere in the dict: begin it with a letter"),
    ("return {a: 1 for a in y}", "a key that is no text: use a text"),
    ("return {**d, t: x}", "'**' beside keys that are worked out: fill the dict line by line"),
    (
        "for name in BORE:\n        t = name",
        "a dict with figures as keys, which script puts in order of size: walk through a list",
    ),
    ("return BORE.items()", "'.items()': walk through it at once"),
    ("return [a for a in BORE.items()]", "'.items()' of what is no dict with words as keys"),
    ("return {**BORE}", "a dict with figures as keys can only be looked up"),
    ("for a in x:\n        n = 1", "a float is nothing to walk through"),
    # Calls
    ("return helper(*y)", "'*' or '**' in a call: write the arguments out"),
    ("return helper(**d)", "'*' or '**' in a call: write the arguments out"),
    ("return helper(x, size=1)", "an argument that the function does not take"),
    ("return helper(x, 'in', 3)", "an argument that the function does not take"),
    ("return helper(x > 1)", "yes or no where a figure is declared: write 1 if ... else 0"),
    ("return helper(x)(1)", "a call of something that is no function of a module"),
    ("return Loose(1)", "'Loose' is no plain frozen dataclass"),
    ("return Board(b=1)", "'Board' without all of its fields"),
    ("return hypot(x, x)", "math.hypot, which script has not or works out another way: write sqrt(x * x + y * y)"),
    ("return cosh(x)", "math.cosh, which script has not or works out another way"),
    ("return sqrt(x, x)", "'sqrt()' with these arguments"),
    ("return round(x, 2)", "'round()' to places: call rounded() or decimal() of calculators.writing"),
    ("return int(t)", "'int()' of a text: call float(), whose text is looked at before"),
    ("return float('inf')", "'float()' of a written text: write the figure"),
    ("return len(n)", "'len()' of int"),
    ("return isinstance(x, float)", "'isinstance()': annotate the type"),
    ("return list(map(abs, y))", "'map()': write a comprehension"),
    ("print(x)", "'print()': give the text back"),
    ("return set(y)", "'set()': use a list"),
    ("return divmod(n, 2)", "'divmod()'"),
    ("return open(t)", "'open()'"),
    ("return range(3)", "'range()': walk through it at once, or put list() around it"),
    ("pairs = zip(y, y)", "'zip()': walk through it at once, or put list() around it"),
    ("return 2 in range(3)", "'range()': walk through it at once, or put list() around it"),
    ("return list(enumerate(y, 1, 2))", "'enumerate()' with these arguments"),
    ("return sorted(y, cmp=1)", "'sorted()' with these arguments"),
    ("return sorted(y, key=abs)", "'key=' of something else: give a lambda or a function of a module"),
    ("return sorted(y, key=lambda a, c=1: a)", "'key=' of something else: give a lambda or a function of a module"),
    ("return sum([t])", "'sum()' of what are no figures: use a loop"),
    ("return sum([y], [])", "'sum()' of what are no figures: use a loop"),
    ("return sum()", "'sum()' with these arguments"),
    ("return dict(a=1)", "'dict()' with these arguments"),
]


@pytest.mark.parametrize(("body", "message"), REFUSED, ids=[case[0].splitlines()[0] for case in REFUSED])
def test_it_is_refused(body: str, message: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    found = Probe(f"{HEAD}    {body}\n", tmp_path, monkeypatch).problems
    assert message in [each.partition(": ")[2] for each in found]
    assert all(FIRST <= int(each.partition(":")[0]) <= FIRST + body.count("\n") for each in found)


@pytest.mark.parametrize(
    ("source", "found"),
    [
        ("def main(x=[]):\n    return x\n", ["1: a default that can change: give None or a constant"]),
        ("def main(*x):\n    return 1\n", ["1: '*args', '**kwargs' or a decorator: write the parameters out"]),
        ("def main(**x):\n    return 1\n", ["1: '*args', '**kwargs' or a decorator: write the parameters out"]),
        (
            "WORDS = {'a'}\n\ndef main():\n    return len(WORDS)\n",
            ["1: 'WORDS' is no figure, word, list or dict by words"],
        ),
        ("END = {'a': 1e999}\n\ndef main():\n    return END\n", ["1: 'END' is no figure, word, list or dict by words"]),
        ("FAR = [2**53 + 2]\n\ndef main():\n    return FAR\n", ["1: 'FAR' is no figure, word, list or dict by words"]),
        ("DICT = {1: 'a'}\n\ndef main():\n    return DICT\n", ["1: 'DICT' is no figure, word, list or dict by words"]),
        ("def main(x):\n    return low(x)\n\ndef low(x):\n    return {x}\n", ["5: a set: use a list"]),
    ],
)
def test_it_is_refused_in_a_module(
    source: str, found: list[str], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    problems = Probe(source, tmp_path, monkeypatch).problems
    assert [each.partition(": the page")[0] for each in problems] == found


def test_every_refusal_of_a_function_is_named_at_once(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    source = "def main(x: float):\n    a = {x}\n    for b in x:\n        return f'{x}'\n    return a\n"
    found = Probe(source, tmp_path, monkeypatch).program.problems
    assert [(each.line, each.column) for each in found] == [(2, 9), (3, 14), (4, 19)]


def test_every_statement_and_expression_of_python_is_written_or_refused(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Also those of a Python that is still to come: what no method writes has a message of its own or its name."""
    from build_tools.browser.compiler.functions import _Function

    kinds = [each for each in vars(ast).values() if isinstance(each, type) and issubclass(each, ast.stmt | ast.expr)]
    kinds = [each for each in kinds if each.__module__ in ("ast", "_ast") and not each.__subclasses__()]
    inside = {"Slice", "FormattedValue", "Num", "Str", "Bytes", "NameConstant", "Ellipsis"}
    open_ = {each.__name__ for each in kinds if not hasattr(_Function, f"visit_{each.__name__}")} - inside
    assert open_ <= {each.__name__ for each in INSTEAD}


@pytest.mark.parametrize("key", ["1", "__proto__", 1, 1.5])
def test_a_key_that_script_would_move_stops_the_page(
    key: object, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """One that is seen only when the function runs."""
    probe = Probe("def main(key):\n    made = {}\n    made[key] = 1\n    return made\n", tmp_path, monkeypatch)
    with pytest.raises(Exception, match=f"key {key}"):
        probe.in_script(key)
