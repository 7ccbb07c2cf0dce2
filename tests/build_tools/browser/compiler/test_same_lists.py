"""Lists, dicts, loops and calls do in script what they do in Python: small modules, run in both."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from tests.build_tools.browser.compiler.probe import Probe

CASES: list[tuple[str, str, list[Any]]] = [
    ("a comprehension's variable is its own", """
def main(rows):
    row = "outside"
    res = "kept"
    doubled = [row * 2 for row in rows if row > 1]
    said = ", ".join([res + str(row) for row in rows])
    return [row, doubled, said]
""", [[1, 2, 3]]),
    ("a dict with a column named length", """
def main(row):
    found = []
    for name in row:
        found.append(name)
    return [len(row), found, len(found), len("abc"), "width" in row, row.get("width"), row.get("nothing", 3)]
""", [{"length": 3, "width": 4}]),
    ("words that every object of script knows", """
KNOWN = {"in": 1, "ft": 2}
def main(words):
    return [[word in KNOWN, KNOWN.get(word), KNOWN.get(word, 0)] for word in words]
""", [["in", "constructor", "toString", "__proto__", "hasOwnProperty"]]),
    ("loops", """
def main(n):
    found = []
    for i in range(n):
        if i == 1:
            continue
        if i == 5:
            break
        found.append(i)
    for i in range(2, -3, -2):
        found.append(i)
    for at, (name) in enumerate(["a", "b"]):
        found.append([at, name])
    for one, other in zip([1, 2, 3], ["x", "y"]):
        found.append([one, other])
    for key, value in {"b": 1, "a": 2}.items():
        found.append([key, value])
    while len(found) > 0 and found[len(found) - 1] != 1:
        found.pop()
        found.insert(0, "z")
        if len(found) > 40 or found[0] == "z" and len(found) < 3:
            break
        found = found[1 : len(found)]
    return found
""", [9]),
    ("several at once, and what is swapped", """
def pair(x):
    return (x, x + 1)
def main(x):
    a, b = pair(x)
    a, b = b, a
    rows = [1, 2, 3]
    rows[0], rows[2] = rows[2], rows[0]
    c = d = 4
    return [a, b, rows, c + d, 1 < a <= 3 < 5, (a if a > b else b) + 1]
""", [1]),
    ("sorting keeps the order of what is alike", """
def length(word: str) -> int:
    return len(word)
def main(words: list[str], rows: list[dict[str, float]]):
    by_length = sorted(words, key=length)
    turned = sorted(words, key=length, reverse=True)
    by_two = sorted(rows, key=lambda row: (row["a"], -row["b"]))
    return [sorted(words), by_length, turned, by_two, sorted([3, 1, 2], reverse=True), sorted(words,
            key=lambda w: w[-1:]),
            sorted([[2, "b"], [2, "a"], [1, "z"], [1]]), sorted({"b": 1, "a": 2}), sorted([10, 9, 1.5, True])]
""", [["bb", "a", "ab", "B", "\u00e9", "\U0001f6bd", "\uff5e", "ccc", ""], [{"a": 1, "b": 2}, {"a": 0, "b": 5},
            {"a": 1, "b": 3}]]),
    ("the least, the most, the sum", """
def size(word: str) -> int:
    return len(word)
def main(figures: list[float], words: list[str]):
    return [min(figures), max(figures), sum(figures), sum(figures, 10), sum([]), min(words), max(words),
            max(words, key=size),
            min(words, key=size), min([], default=4), max([w for w in words if w == "no"], default="none"),
            max(2, 1.5),
            min("b", "a"), max(len(w) for w in words), sum(1 for w in words if "a" in w), max([1, 2], [1, 3]),
            min(True, 2),
            sum([True, True]), max(words, key=lambda word: word[0])]
""", [[2.5, -1, 3], ["aa", "b", "ca", "d"]]),
    ("numbered and in pairs", """
def main(words: list[str], figures: list[int]):
    found = [f"{number} {word}" for number, word in enumerate(words, start=1)]
    found = found + [f"{word} {figure}" for word, figure in zip(words, figures, strict=True)]
    found.extend(f"{at} {one} {other}" for at, (one, other) in enumerate(zip(words, reversed(words))))
    pairs = list(enumerate(figures))
    return [found, pairs, list(range(3)), list(reversed(figures)), dict(zip(words, figures)), list(range(5, 0, -2))]
""", [["a", "b"], [3, 4]]),
    ("comprehensions", """
def main(rows: list[list[int]], table: dict[str, int]):
    flat = [x for row in rows for x in row if x > 1]
    crossed = [(a, b) for a in range(3) if a != 1 for b in range(a)]
    by_name = {name + "!": value * 2 for name, value in table.items() if value > 1}
    kept = {**table, "z": 1}
    return [flat, crossed, by_name, kept, any(x > 3 for row in rows for x in row),
            all(x > 0 for row in rows for x in row),
            any(rows), all(rows), [[y for y in row] for row in rows], ",".join(name for name in table), [*flat, *[9]],
            {key: key for key in "ba"}, [len(row) for row in rows if row], any([]), all([])]
""", [[[1, 2], [], [3, 4]], {"b": 1, "a": 2, "c": 3}]),
    ("arguments by name", """
def helper(a: float, b: float = 2, *, c: float = 3, d: str = "d") -> list[object]:
    return [a, b, c, d]
def note(seen: list[str], word: str) -> str:
    seen.append(word)
    return word
def main(x: float):
    seen: list[str] = []
    last = helper(x, d=note(seen, "1"), c=len(note(seen, "2")))
    return [helper(x), helper(x, c=9), helper(b=x, a=1), helper(1, d="e"), last, seen]
""", [7]),
    ("records", """
from dataclasses import dataclass
@dataclass(frozen=True)
class Board:
    name: str
    length: float = 96
def found(name: str) -> Board | None:
    if name == "2x4":
        return Board(name)
def main():
    one, other = Board("2x4", length=92.5), found("none")
    return [one.name, one.length, Board(length=1, name="a").length, other is None, one == Board("2x4", 92.5),
            "yes" if other else "no", [each.name for each in (one, Board("b"))]]
""", []),
    ("the order of a dict", """
def main(words: list[str]):
    count: dict[str, int] = {}
    for word in words:
        count[word] = count.get(word, 0) + 1
        count["all"] = 0
    count["b"] += 5
    again = {"z": 1, "a": 2, "z": 3}
    return [list(count), list(count.values()), [[k, v] for k, v in count.items()], list(again), again, "b" in count,
            list({**again, "q": 1, "a": 5}.items()), len(count), list({"1.5": 1, "-1": 2, "1/2": 3})]
""", [["b", "a", "b", "constructor"]]),
    ("lists against lists", """
def main(one: list[object], other: list[object]):
    return [one == other, one != other, [1, 2.0] == [1.0, 2], [True] == [1], [[]] == [[]], ["1"] == [1], [1,
            2] < [1, 3],
            [1] < [1, 0], [2] > [1, 9], [] < [0], (1, "b") > (1, "a"), one in [other], [1] in [[1], [2]],
            [None] == [None]]
""", [[1, "a", [2]], [1, "a", [2]]]),
    ("places from behind, and what is changed in place", """
def main(rows: list[list[int]], row: list[int]):
    alias = row
    row += [5]
    rows[0][-1] = 9
    rows[-1].extend([7, 8])
    row[-2] *= 10
    copy = list(row)
    copy.append(1)
    copy.insert(-1, 2)
    copy.reverse()
    last = copy.pop(0)
    return [alias, rows, row, copy, last, copy.pop(), row[-1], rows[1:], row[-2:], [0] * 3, [[1]] * 2, (1, 2) + (3,)]
""", [[[1, 2], [3]], [3, 4]]),
]  # fmt: skip


@pytest.mark.parametrize(("source", "arguments"), [case[1:] for case in CASES], ids=[case[0] for case in CASES])
def test_the_same_in_script(source: str, arguments: list[Any], tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    probe = Probe(source, tmp_path, monkeypatch)
    assert probe.in_script(*arguments) == probe.in_python(*arguments)
