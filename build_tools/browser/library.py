"""The few functions of Python that compiled code calls, in script.

Most are the compiler's own. Where those differ from Python, ours stand in their place.
"""

from __future__ import annotations

import re
from collections.abc import Iterable

from pscript import stdlib

BLANKS = r"[\t-\r\x1c-\x20\x85\xa0\u1680\u2000-\u200a\u2028\u2029\u202f\u205f\u3000]"
"""What Python takes for a space when it strips and splits."""

OURS = {
    # A dict may have a column named 'length'.
    "len": """function (x) {
return typeof x === "string" || Array.isArray(x) ? x.length : Object.keys(x).length;
}""",
    # Strict, as 1 and "1" are not equal.
    "op_equals": """function $op_equals(a, b) {
if (a === b) return true;
if (a === null || b === null || typeof a !== "object" || typeof b !== "object") return false;
var k = Object.keys(a);
if (Array.isArray(a) !== Array.isArray(b) || k.length !== Object.keys(b).length) return false;
for (var i = 0; i < k.length; i++) {
if (!Object.prototype.hasOwnProperty.call(b, k[i]) || !$op_equals(a[k[i]], b[k[i]])) return false;
}
return true;
}""",
    # A word such as 'constructor' is in every object of script.
    "op_contains": """function (a, b) {
if (typeof b === "string") return b.indexOf(a) >= 0;
if (!Array.isArray(b)) return Object.prototype.hasOwnProperty.call(b, a);
for (var i = 0; i < b.length; i++) if ($op_equals(a, b[i])) return true;
return false;
}""",
    "str": """function (x) {
return x === true ? "True" : x === false ? "False" : x === null ? "None" : String(x);
}""",
}

OUR_METHODS = {
    "get": """function (k, d) {
return Object.prototype.hasOwnProperty.call(this, k) ? this[k] : d === undefined ? null : d;
}""",
    "split": f"""function (by) {{
if (by !== undefined) return this.split(by);
return this.split(/{BLANKS}+/).filter(function (word) {{ return word !== ""; }});
}}""",
    "strip": f"""function (signs) {{
if (signs === undefined) return this.replace(/^{BLANKS}+|{BLANKS}+$/g, "");
var from = 0, to = this.length;
while (from < to && signs.indexOf(this[from]) >= 0) from++;
while (to > from && signs.indexOf(this[to - 1]) >= 0) to--;
return this.slice(from, to);
}}""",
    "startswith": "function (x) { return this.slice(0, x.length) === x; }",
    "endswith": "function (x) { return x.length <= this.length && this.slice(this.length - x.length) === x; }",
}

CALL = re.compile(r"\b_py(func|meth)_(\w+)")
NOTE = re.compile(r"\s*//[^'\"\n]*$", re.MULTILINE)


def short_names(script: str) -> str:
    """The compiler's names of library functions, shortened."""
    return CALL.sub(lambda found: ("$" if found[1] == "func" else "$$") + found[2], script).replace("py_len(", "$len(")


def called(script: str) -> set[str]:
    """The library functions that a script with short names calls."""
    return set(re.findall(r"\$\$?[a-z_]+", script))


def library(names: Iterable[str]) -> dict[str, str]:
    """Short name to script, for those named and what they call in turn."""
    found: dict[str, str] = {}
    waiting = sorted(names)
    while waiting:
        name = waiting.pop()
        if name not in found:
            found[name] = _code(name)
            waiting += sorted(called(found[name]))
    return {name: found[name] for name in sorted(found)}


def _code(name: str) -> str:
    plain = name.lstrip("$")
    ours, theirs = (OUR_METHODS, stdlib.METHODS) if name.startswith("$$") else (OURS, stdlib.FUNCTIONS)
    return ours[plain] if plain in ours else NOTE.sub("", short_names(theirs[plain]))
