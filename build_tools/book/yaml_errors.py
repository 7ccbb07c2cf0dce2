"""What is wrong where the YAML parser gives up, in words that somebody can act on who never heard of YAML.

The parser says what it expected at the place where it noticed. Here the lines around that place are looked at for the
few slips that people make: a tab, a colon or a quote inside a text, a text that begins with a sign, an indentation.
"""

from __future__ import annotations

import re
from typing import Any

Explanation = tuple[int, int, str, str]
"""Line and column from 1, message, hint."""

FIELD = re.compile(r"(?P<before>[ ]*(?:- +)*)(?:(?P<name>[^\s'\"#\[\]{},&*!|>%@`:-][^:]*?):[ \t]+)?(?P<text>.*)")
LIKE_A_FIELD = re.compile(r" *(?:- +)*([A-Za-z_][\w-]*):(\S.*)")
LONG = "or after '>-' on lines of its own"
MISSED = "indent the further lines of a long text deeper than its name, after '>-'"
SIGNS = "@`%&*!|>?-,]}[{"
"""Signs with which a plain text cannot begin."""


def explain_error(text: str, error: Any) -> Explanation:
    """Where the slip is, what it is and how it is mended, for an error of the parser with its marks."""
    lines = text.splitlines() or [""]
    said, context = str(error.problem), str(error.context)
    mark = error.problem_mark or error.context_mark
    line, column = mark.line, mark.column
    opened = error.context_mark
    written = lines[line] if line < len(lines) else ""
    tab = re.match(r" *\t", written)
    if tab:
        return line + 1, tab.end(), "is indented with a tab", "indent with spaces, two for each level"
    if "quoted scalar" in context:
        if "escape" in said:
            return line + 1, column + 1, "a backslash in double quotes begins a code", "put the text in single quotes"
        return opened.line + 1, opened.column + 1, "a quote opens here and is never closed", "close it after its text"
    if "nesting" in said:
        return line + 1, column + 1, "is nested too deep", ""
    if "expected ':'" in said:
        return _no_field(lines, opened.line)
    if "mapping values" in said:
        return _colon(lines, line, column)
    if "',' or" in said:
        sign = _at(lines, opened.line, opened.column)
        hint = f"close it, and put a comma between two items; put a text that begins with '{sign}' in quotes"
        return opened.line + 1, opened.column + 1, f"the '{sign}' that opens here is not closed", hint
    if "'-' indicator" in said:
        hint = "start it with '- ', or indent it like the rest of the item above"
        return line + 1, column + 1, "this line stands in a list but starts no item", hint
    if "block scalar" in context or "alias" in context or "anchor" in context or "tag" in context:
        return _sign(lines, opened.line, opened.column)
    if "start any token" in said or "not allowed in this context" in said or "node content" in said:
        return _sign(lines, line, column)
    if "directive" in context:
        return _sign(lines, opened.line, opened.column)
    return _expected_a_field(lines, line, column)


def _at(lines: list[str], line: int, column: int) -> str:
    written = lines[line] if line < len(lines) else ""
    return written[column : column + 1]


def _sign(lines: list[str], line: int, column: int) -> Explanation:
    sign = _at(lines, line, column)
    if sign == "\ufeff" or sign not in SIGNS or not sign:
        return _expected_a_field(lines, line, column)
    return line + 1, column + 1, f"text cannot begin with '{sign}'", in_quotes(lines, line, lines[line][column:])


def _colon(lines: list[str], line: int, column: int) -> Explanation:
    """A colon where none may stand: inside a text, in a line indented too deep, or below a line without one."""
    written = lines[line]
    found = FIELD.match(written)
    assert found is not None  # it matches any line
    if found["name"] is not None and column >= found.start("text"):
        return line + 1, column + 1, "': ' stands inside a text", in_quotes(lines, line, found["text"])
    above = line - 1
    while above > 0 and not lines[above].strip():
        above -= 1
    indent = len(written) - len(written.lstrip(" "))
    if above >= 0 and len(lines[above]) - len(lines[above].lstrip(" ")) >= indent:
        return _no_field(lines, above)
    hint = "start a field in the column of the field above it; put text that holds ': ' in quotes"
    return line + 1, column + 1, "this line is indented as part of the text above it, and holds ': '", hint


def _no_field(lines: list[str], line: int) -> Explanation:
    """A line that is no ``name: ...`` where one is wanted."""
    written = lines[line] if line < len(lines) else ""
    column = len(written) - len(written.lstrip(" ")) + 1
    close = LIKE_A_FIELD.fullmatch(written)
    if close:
        return line + 1, close.end(1) + 1, "a space is missing after the colon", f"write {close[1]}: {close[2]}"
    if re.match(r" *-\S", written):
        return line + 1, column, "a space is missing after the hyphen", f"write - {written.strip()[1:]}"
    return line + 1, column, "this line has no name followed by a colon and a space", MISSED


def _expected_a_field(lines: list[str], line: int, column: int) -> Explanation:
    written = lines[line] if line < len(lines) else ""
    if "\ufeff" in written:
        place = written.index("\ufeff") + 1
        return line + 1, place, "holds a byte order mark (U+FEFF) that is not at the start of the file", "take it out"
    opened = _quote_open(lines, line)
    if opened is not None and opened[0] < line:
        message = f"a quote opens here and closes only in line {line + 1}"
        return opened[0] + 1, opened[1] + 1, message, "close it after its own text"
    found = FIELD.match(written)
    assert found is not None  # it matches any line
    text = found["text"]
    if column > found.start("text"):
        if text[:1] in ("'", '"'):
            inside = text[1:-1] if len(text) > 1 and text[-1] == text[0] else text
            return line + 1, column + 1, "the text goes on after its closing quote", in_quotes(lines, line, inside)
        if text[:1] in ("[", "{"):
            message = f"text cannot begin with '{text[0]}'"
            return line + 1, found.start("text") + 1, message, in_quotes(lines, line, text)
    if written.lstrip(" ").startswith(":"):
        return line + 1, column + 1, "there is no name before the colon", ""
    hint = "indent it like the field that it belongs next to, and close the quotes and brackets above it"
    return line + 1, column + 1, "this line lines up with no line above it", hint


def _quote_open(lines: list[str], last: int) -> tuple[int, int] | None:
    """Where the quote was opened that closes in the line ``last``, or None where none runs into that line."""
    sign, place = "", (0, 0)
    for number, written in enumerate(lines[: last + 1]):
        at = 0
        if not sign:
            found = FIELD.match(written)
            if found is None or found["text"][:1] not in ("'", '"') or not found["text"]:
                continue
            sign, place, at = found["text"][0], (number, found.start("text")), found.start("text") + 1
        closed = _closing(written, at, sign)
        if closed is not None:
            if number == last:
                return place
            sign = ""
    return None


def _closing(written: str, at: int, sign: str) -> int | None:
    """Where a quoted text ends in a line: a quote that is neither doubled nor behind a backslash."""
    while at < len(written):
        if written[at] == "\\" and sign == '"':
            at += 2
        elif written[at] != sign:
            at += 1
        elif sign == "'" and written[at + 1 : at + 2] == "'":
            at += 2
        else:
            return at
    return None


def in_quotes(lines: list[str], line: int, text: str) -> str:
    """The hint that shows a text of that line in quotes, where the text ends with its line."""
    indent = len(lines[line]) - len(lines[line].lstrip(" -"))
    below = next((each for each in lines[line + 1 :] if each.strip()), "")
    if len(below) - len(below.lstrip(" ")) > indent:
        return f"put the whole text in quotes, {LONG}"
    return f"write it in quotes: {quoted(text.rstrip())}"


def quoted(text: str) -> str:
    """A text in the quotes that it does not hold itself.

    >>> print(quoted("the rise: 1 in"), quoted('a 2" pipe'))
    "the rise: 1 in" 'a 2" pipe'
    """
    if '"' not in text and "\\" not in text:
        return f'"{text}"'
    doubled = text.replace("'", "''")
    return f"'{doubled}'"
