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
    "abs": "Math.abs",
    # What a loop runs over: a list, or the keys of a dict.
    "each": "function (x) { return typeof x === 'string' || Array.isArray(x) ? x : Object.keys(x); }",
    # A dict may have a column named 'length'.
    "len": "function (x) { return $each(x).length; }",
    "list": "function (x) { return Array.from($each(x)); }",
    # Strict, as 1 and "1" are not equal.
    "op_equals": """function $op_equals(a, b) {
if (a === b) return true;
if (a === null || b === null || typeof a !== "object" || typeof b !== "object") return false;
var k = Object.keys(a);
if (Array.isArray(a) !== Array.isArray(b) || k.length !== Object.keys(b).length) return false;
return k.every(function (n) { return Object.prototype.hasOwnProperty.call(b, n) && $op_equals(a[n], b[n]); });
}""",
    # A word such as 'constructor' is in every object of script.
    "op_contains": """function (a, b) {
if (typeof b === "string") return b.indexOf(a) >= 0;
if (!Array.isArray(b)) return Object.prototype.hasOwnProperty.call(b, a);
return b.some(function (one) { return $op_equals(a, one); });
}""",
    "op_mult": """function (a, b) {
if (typeof a === "number" && typeof b === "number") return a * b;
if (typeof a === "number") return $op_mult(b, a);
if (typeof a === "string") return a.repeat(Math.max(0, b));
var all = [];
for (var i = 0; i < b; i++) all = all.concat(a);
return all;
}""",
    "op_add": "function (a, b) { return Array.isArray(a) ? a.concat(b) : a + b; }",
    "str": 'function (x) { return x === true ? "True" : x === false ? "False" : x === null ? "None" : String(x); }',
    "truthy": "function (v) { return v !== null && typeof v === 'object' ? $len(v) > 0 : v; }",
}

OUR_METHODS = {
    "extend": "function (x) { this.push.apply(this, x); }",
    "get": """function (k, d) {
return Object.prototype.hasOwnProperty.call(this, k) ? this[k] : d === undefined ? null : d;
}""",
    "join": "function (x) { return x.join(this); }",
    "replace": "function (old, by) { return this.split(old).join(by); }",
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
}

CALL = re.compile(r"\b(?:_py(func|meth)|py)_(\w+)")
NOTE = re.compile(r"\s*//[^'\"\n]*$", re.MULTILINE)


LOOP = re.compile(
    r"(stub\d+_seq) = (.*);\n *if \(\(typeof \1 === \"object\"\) && "
    r"\(!Array\.isArray\(\1\)\)\) \{ *\1 = Object\.keys\(\1\);\}"
)
"""How the compiler begins a loop."""
COMPREHENSION = re.compile(
    r"if \(\(typeof (\w*iter0) === \"object\"\) && \(!Array\.isArray\(\1\)\)\) \{\1 = Object\.keys\(\1\);\}"
)


COUNTERS = {"seq": "S", "itr": "I", "tgt": "T", "i0": "J", "iter0": "K", "": "U"}
COUNTER = re.compile(r"\bstub(\d+)_(seq|itr|tgt|i0|iter0|)\b")
"""The names that the compiler makes up, and a letter for each; no other name of ours has a large one."""


def short_names(script: str) -> str:
    """A compiled script with short names for library functions, and short beginnings of loops."""
    script = LOOP.sub(r"\1 = $each(\2);", script)
    script = COMPREHENSION.sub(r"\1 = $each(\1);", script)
    script = COUNTER.sub(lambda found: COUNTERS[found[2]] + found[1], script)
    return CALL.sub(lambda found: ("$$" if found[1] == "meth" else "$") + found[2], script)


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
