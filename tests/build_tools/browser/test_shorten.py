"""Scripts made shorter do what they did."""

from __future__ import annotations

import json

import pytest

from build_tools.browser.shorten import shorter
from tests.script_engine import new_engine


@pytest.mark.parametrize(
    ("script", "short"),
    [
        ("  // a note\nvar a = 'a // b';\n/** another */\n", 'var a="a // b";\n'),
        ("a = b\n+ c;", "a=b+c;\n"),
        ("if (((a > b))) f((g(1)), ((h)(2)), ')((');", 'a>b&&f(g(1),h(2),")((");\n'),
        ("x = y.replace(/a \"b/g, '\u00bd \U0001f6bd')", 'x=y.replace(/a "b/g,"\\u00bd \\ud83d\\udebd");\n'),
        ("", ";\n"),
    ],
)
def test_a_script_is_made_shorter(script: str, short: str) -> None:
    assert shorter(script) == [short]


@pytest.mark.parametrize(
    "expression",
    [
        "[0.1 + 0.2, 1e21, 1e-7, 123456789012345680000, 0.000001, 5e-324, 1 / 3, 9007199254740991, -0.5, 1.50, 0x1f]",
        "[2 ** 10, (-2) ** 2, 2 ** -1, 2 ** 3 ** 2, (2 ** 3) ** 2, -(2 ** 2)]",
        "[1 - -1, 1 + +1, - -1, 7 % -2, -7 % 2, 5 / 2 * 3, 5 / (2 * 3), 1 - (2 - 3), 2 * (3 % 2)]",
        "[1 < 2 === true, !(1 < 2), !(1 <= 2) || 3, null ?? 4, 0 || 5, 0 ?? 5, (0, 6)]",
        "[`a${1 + 1}b`, 'c\\u00bd\\n' + \"d'\", `\\``, 'x' + 1 + 2, 1 + 2 + 'x', 'a' < 'b']",
        "[[...'ab'], [...[1], 2], Object.keys({ ...{ a: 1 }, b: 2 }), ((a, b = 2) => a + b)(1), [3, 1].sort()]",
    ],
)
def test_what_is_written_shorter_is_worth_the_same(expression: str) -> None:
    """Figures folded, brackets and blanks taken away."""
    script = f"var made = (() => {{ const long = {expression}; return JSON.stringify(long); }})();"
    plain, short = new_engine(), new_engine()
    plain.eval(script)
    short.eval(shorter(script)[0])
    assert json.loads(str(short.eval("made"))) == json.loads(str(plain.eval("made")))


@pytest.mark.parametrize(
    "script", ["a = '</script>'", "a = '</SCRIPT >'", "a = Math.pow(b, c)", "a = Math.sqrt(b)", "a = Math.trunc(b)"]
)
def test_what_would_not_stay_the_same_is_refused(script: str) -> None:
    """The end of a script element, and calls that are written as operators of another last place."""
    with pytest.raises(ValueError, match="in it"):
        shorter(script)


def test_what_is_no_script_is_an_error() -> None:
    with pytest.raises(ValueError, match="unexpected"):
        shorter("a = (")
