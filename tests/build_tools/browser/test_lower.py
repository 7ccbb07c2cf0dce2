"""Compiled functions do what Python does, where the two languages part."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from tests.build_tools.browser.probe import Probe

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
    ("sums of texts, lists and figures", """
def main(a, b, n):
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
    ("constants as Python worked them out", """
SIDES = [12 * foot for foot in (1, 2, 3)]
NAMES = dict(a="½", b="</script>")
SMALL = 1 / 3
def main(x):
    return [SIDES, NAMES, SMALL, x / SMALL, min(SIDES[0], x), max(x, 0.5, SMALL)]
""", [7]),
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
]  # fmt: skip


@pytest.mark.parametrize(("source", "arguments"), [case[1:] for case in CASES], ids=[case[0] for case in CASES])
def test_the_same_in_script(source: str, arguments: list[Any], tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    probe = Probe(source, tmp_path, monkeypatch)
    assert probe.in_script(*arguments) == probe.in_python(*arguments)
