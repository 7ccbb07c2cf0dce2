"""Figures, texts, conditions and names do in script what they do in Python: small modules, run in both."""

from __future__ import annotations

from pathlib import Path
from random import Random
from typing import Any

import pytest

from tests.build_tools.browser.compiler.probe import Probe

CASES: list[tuple[str, str, list[Any]]] = [
    ("names that script keeps for itself", """
def main(default, function):
    var = default + 1.0
    new, this = var, function
    return [var, new, this, arguments(this)]
def arguments(eval):
    return eval * 2.0
""", [1.5, 2.5]),
    ("names of Python's own functions", """
def main(x):
    return [round(x), time(x), sum(x)]
def round(x):
    return x + 1.0
def time(x):
    return x + 2.0
def sum(x):
    return x + 3.0
""", [1]),
    ("sums of texts, lists and figures", """
def main(a, b, n: int):
    both = a + b
    text = "x" * n
    few = [1, 2] * n
    total = 0
    total += n
    texts = ["1"]
    texts = texts + [str(total)]
    return [both, text, few, total, texts, f"{n} of {total}: {text}", [1] + [2]]
""", [[1], [2, 3], 3]),
    ("equal only to its like", """
def main(one, text):
    return [one == text, one == 1, text == "1", one != text, [1, [2]] == [1, [2]], {"a": 1} == {"a": 1}, [1] == ["1"],
            one in ["1"], text in ["1"], one in [1, 2], "b" in "abc", one is None, None == one]
""", [1, "1"]),
    ("conditions of what may be empty", """
def main(row):
    found = "no"
    if row["rooms"]:
        found = "rooms"
    if not row["less"] and found == "no":
        found = "neither"
    return [found, "yes" if row["flag"] and not row["rooms"] else "no"]
""", [{"rooms": [], "less": {}, "flag": True}]),
    ("texts", """
def main(text):
    return [text.strip(), text.lower(), text.upper(), text.split(), text.strip().split(" "), text.find("b"),
            text.startswith(" "), text.endswith("x"), text.replace("b", "$&"), text.strip(" a"), text[0:2], text[-1],
            "-".join(text.split()), text.strip()[0]]
""", ["\u2003 a  b\x1cC \x85 "]),
    ("truths, nothing and negative figures as text", """
def main(yes, no, nothing, x):
    return [f"{yes} {no} {nothing}", str(yes), f"{abs(x)}", -(-x), - -x, x - -1, (x - 1) - (x - 2), -x // 2, 2 ** -x]
""", [True, False, None, -3]),
    ("constants as Python worked them out", """
SIDES = [12 * foot for foot in (1, 2, 3)]
NAMES = dict(a="½", b="</script>")
SMALL = 1 / 3
def main(x):
    return [SIDES, NAMES, SMALL, x / SMALL, min(SIDES[0], x), max(x, 0.5, SMALL)]
""", [7]),
    ("whole numbers divided, and what is left", """
def main(pairs):
    return [[a // b, a % b, a / b] for a, b in pairs]
""", [[[7, 2], [-7, 2], [7, -2], [-7, -2], [6, -3], [0.7, 0.1], [-0.7, 0.1], [1, 0.1], [9007199254740991, 2]]]),
    ("halves go to the even one", """
def main(figures):
    return [round(x) for x in figures]
""", [[0.5, 1.5, 2.5, -0.5, -1.5, -2.5, 0.49999999999999994, 2.6, -2.6, 4503599627370497.5, 1e300, 3]]),
    ("figures as they are written", """
def main():
    return [0.1, 1e-7, 1e21, 123456789.123, 5e-324, 0.30000000000000004, 100000, 1000000, 0.001,
            9007199254740991, 1.0,
            1 / 3, -0.5, 2 ** 0.5, 10 ** -3, (-2) ** 2, -2 ** 2, 2 ** 3 ** 2, 1_000]
""", []),
    ("roots and powers", """
from math import sqrt, floor, ceil, trunc, pi
def main(x: float, y: float):
    return [sqrt(x), x ** 0.5, x ** y, floor(-x), ceil(-x), trunc(-x), int(-x), pi, floor(x * 1e10), -x ** 2]
""", [2.5, 3.25]),
    ("what is empty is not true", """
def main(empty: list[int], few: list[int], nothing, zero: float, text: str, table: dict[str, int]):
    found = []
    for one in (empty, few, nothing, zero, text, table, [], {}, [0], "", "0", 0, False):
        found.append("yes" if one else "no")
    found.append("empty" if not empty and few and not zero and not text and not table else "no")
    found.append([empty or few, zero or 2, text or "none", nothing or zero, few and text, bool(empty),
            bool(few), bool("a")])
    while few:
        few.pop()
    return found + [few]
""", [[], [1], None, 0, "", {}]),
    ("mixed types are not alike", """
def main(one, text, yes, nothing):
    return [one == text, one == yes, yes == 1, text == "1", nothing == 0, nothing == False, one in [True],
            yes in [1], text in [1],
            nothing in ["", 0], one is None, nothing is None, yes is True, one == 1.0, [one] == [yes],
            yes + yes, -yes, yes < 2]
""", [1, "1", True, None]),
    ("signs that script counts twice", """
def main(text: str):
    return [len(text), text[1], text[-1], text[1:3], [sign for sign in text], text.find("b"), list(reversed(text)),
            text.strip("\U0001f6bd"), text < "\uff5e", text.upper(), text.replace("", "."), "\u00df".upper(),
            text * 2, text[::]]
""", ["\U0001f6bda\u00e9b\U0001f6bd"]),
    ("texts with values in them", """
def main(n: int, yes: bool, nothing, word: str):
    return [f"{n} of {n + 1}: `{word}` ${{x}} {yes} {nothing} {{}} \\\\ \\n </script> <!-- ${word}",
            str(n) + str(yes), f"{-n}",
            f"{len(word)}{n // 2}", f"{word if yes else n}", "a" "b", word + f"{word}"]
""", [3, True, None, "½ \"`\\"]),
    ("the ends of texts", """
def main(text: str):
    return [text.removeprefix("1"), text.removesuffix("in"), text.removesuffix(""), text.lstrip(), text.rstrip("n"),
            text.lstrip("1 "), text.split("/"), text[2:], text[:-1], text[-3:-1], text[5:2], text[:100]]
""", ["1 1/2 in"]),
    ("names that begin in one branch, and loops' names behind the loop", """
def main(n: int):
    if n > 1:
        word = "many"
    else:
        word = "few"
    last = 0
    for i in range(n):
        for j in range(i):
            last = j
        i = i * 10
    total = 0
    while True:
        total += 1
        step = total * 2
        if step > n:
            break
    return [word, last, i, total, step]
""", [4]),
    ("nothing at the end", """
def look(x: float) -> float | None:
    if x > 1:
        return x
def main(x: float):
    return [look(x), look(0), look(0) is None, {"a": look(0)}]
""", [2.5]),
    ("a choice is worked out once", """
def note(seen: list[int], x: int) -> int:
    seen.append(x)
    return x
def main(n: int):
    seen: list[int] = []
    chosen = note(seen, 0) or note(seen, n) or note(seen, 9)
    both = note(seen, n) and note(seen, 0)
    return [chosen, both, seen, 0 < n <= len(seen), [note(seen, i) or i + 10 for i in range(2)]]
""", [3]),
]  # fmt: skip


@pytest.mark.parametrize(("source", "arguments"), [case[1:] for case in CASES], ids=[case[0] for case in CASES])
def test_the_same_in_script(source: str, arguments: list[Any], tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    probe = Probe(source, tmp_path, monkeypatch)
    assert probe.in_script(*arguments) == probe.in_python(*arguments)


DRAWN = """
def main(pairs: list[list[float]]) -> list[object]:
    return [[a // b, a % b, round(a), a * b - a, int(a), a < b, -a // b, round(a * 2) / 2] for a, b in pairs]
"""


def test_drawn_figures_come_out_alike_to_the_last_place(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    random = Random(3)
    figures = [
        random.choice((1, -1)) * random.choice((1, 0.5, 0.1, 0.0625, 7.3e5)) * random.randint(1, 400)
        for _ in range(4000)
    ]
    pairs = [list(pair) for pair in zip(figures[::2], figures[1::2], strict=True)]
    probe = Probe(DRAWN, tmp_path, monkeypatch)
    assert probe.in_script(pairs) == probe.in_python(pairs)


def test_drawn_constants_stay_what_they_are(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The minifier writes figures shorter."""
    random = Random(4)
    written = [repr(random.random() * 10 ** random.randint(-12, 15)) for _ in range(500)]
    written += [str(random.randint(0, 2**53)) for _ in range(100)] + [str(10**n) for n in range(16)]
    probe = Probe(f"def main():\n    return [{', '.join(written)}]\n", tmp_path, monkeypatch)
    assert probe.in_script() == probe.in_python()
