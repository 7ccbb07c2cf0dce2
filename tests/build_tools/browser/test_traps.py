"""What would mean something else in script stops the build, with the line and what to write instead."""

from __future__ import annotations

from pathlib import Path

import pytest

from build_tools.browser.emit import NotPlain, emitted, named, refused
from build_tools.browser.modules import reached
from tests.build_tools.browser.probe import Probe

HEAD = """LIMITS = {'low': 1}

def helper(x: float) -> float:
    return x

def main(x: float, y: list[float]) -> object:
"""


def problems(source: str, folder: Path, patch: pytest.MonkeyPatch) -> list[str]:
    """The problems of a module's ``main``, without the file."""
    probe = Probe(source, folder, patch)
    return [f"{found.line}: {found.message}" for found in refused(reached([(probe.name, "main")]))]


@pytest.mark.parametrize(
    ("body", "message"),
    [
        ("for i in y:\n        x += i\n    else:\n        x = 0\n    return x", "'else' of a loop: use a yes-or-no"),
        ("for i, (a, b) in y:\n        x = a\n    return x", "a pair in a pair: take it apart on a line of its own"),
        ("for i in range(9):\n        i = i + 1\n    return x", "a loop's counter that is changed inside: use 'while'"),
        (
            "for i in range(9):\n        x = i\n    return i",
            "a loop's counter that is read behind the loop: give it another name inside",
        ),
        (
            "for i in range(len(y)):\n        y.append(i)\n    return y",
            "range() of what the loop changes: give it a name before the loop",
        ),
        (
            "for i in range(9 if x > 1 else 2):\n        x += i\n    return x",
            "a choice inside range(): give it a name first",
        ),
        (
            "for i in range(0, 9, len(y)):\n        x += i\n    return x",
            "a step of range() that is no plain figure: use 'while'",
        ),
        ("return x < 9007199254740993", "a whole number that script cannot hold"),
        ("return x < 1e999", "a figure without end: give it a limit"),
        ("return {1: x}", "a key that is no text: use a text"),
        ("return {'1': x}", "a key of digits, which script puts in order of size: begin it with a letter"),
        ("return 'a b c'.split(' ', 1)", "'.split()' with so many arguments"),
        ("return 'abc'.startswith(('a', 'b'))", "'.startswith()' of several texts: ask for each"),
        ("return float('inf')", "'float()' of a text: write the figure"),
        ("return (y + y)[0]", "a place in a sum or a choice: give it a name first"),
        ("return y[-1 + len(y)]", "a place that begins with a minus: count from len()"),
        ("LIMITS['low'] = 2\n    return x", "'LIMITS' is changed: copy a constant first"),
        ("y += [x]\n    return y", "'+=' of a list: use extend()"),
        ("return f'{x} ft'", "a figure with a point as text: call decimal() or another writer"),
        ("half = len(y) / 2\n    return str(half)", "a figure with a point as text: call decimal() or another writer"),
        ("return f'{helper(x)}'", "a figure with a point as text: call decimal() or another writer"),
    ],
)
def test_a_trap_is_refused(body: str, message: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    found = problems(f"{HEAD}    {body}\n", tmp_path, monkeypatch)
    assert message in [one.partition(": ")[2] for one in found]
    assert all(int(one.partition(":")[0]) >= 7 for one in found)


@pytest.mark.parametrize(
    "body",
    [
        "for i in range(9):\n        x += i\n    for i in range(2):\n        x += i\n    return x",
        "for i in range(len(y) - 1, -1, -1):\n        x += y[i]\n    return y[-1] + y[len(y) - 1]",
        "for i in range(9):\n        x += i\n    i = 3\n    return i",
        "copy = list(y)\n    copy[0] = x\n    copy.append(x)\n    return {'1:48': x, 'a1': copy}",
        "return f'{len(y)} of {str(len(y))}'",
    ],
)
def test_what_is_the_same_in_script_is_let_through(body: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    assert problems(f"{HEAD}    {body}\n", tmp_path, monkeypatch) == []


def test_a_parameter_that_needs_its_name_is_refused(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    found = problems("def main(x, *, y):\n    return x + y\n", tmp_path, monkeypatch)
    assert found == ["1: '*' before a parameter: give all parameters in order"]


def test_a_dict_by_figures_is_looked_up_but_not_walked(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    source = "BORE = {'1.5': 1.61, '2': 2.067}\n\ndef main(size):\n    if size in BORE:\n        return BORE[size]\n"
    assert problems(source, tmp_path, monkeypatch) == []
    found = problems(f"{source}    for name in BORE:\n        size = name\n    return size\n", tmp_path, monkeypatch)
    assert found == ["6: 'BORE' has figures as keys, which script puts in order of size: walk through a list"]


@pytest.mark.parametrize(
    ("source", "said"),
    [
        ("import os\n\ndef main():\n    return os\n", "4:1: error: 'os' is no figure, word, list or dict by words"),
        ("LIMIT = float('inf')\n\ndef main():\n    return LIMIT\n", "1:1: error: 'LIMIT' is no figure, word"),
        ("WORDS = {'a', 'b'}\n\ndef main():\n    return WORDS\n", "1:1: error: 'WORDS' is no figure, word"),
        ("def main(x):\n    return open(x)\n", "1:1: error: 'main' uses open, which the page has not"),
        ("def main(x):\n    for pair in x.items():\n        x = pair\n    return x\n", "1:1: error: 'main': Iteration"),
    ],
)
def test_what_cannot_be_compiled_is_an_error(
    source: str, said: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    probe = Probe(source, tmp_path, monkeypatch)
    names = reached([(probe.name, "main")])
    with pytest.raises(NotPlain) as stopped:
        emitted(names, named(names))
    assert str(stopped.value).startswith(f"{probe.name}.py:{said}")
