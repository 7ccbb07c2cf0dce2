"""Files spoiled as a hand, an editor or a disk spoils them. The same number always spoils the same way."""

from __future__ import annotations

import random
import re
from collections.abc import Callable

Chance = random.Random

VALUE = re.compile(r"(?<=: )[^,{}\[\]\n]+|(?<=\[)[^,{}\[\]\n]+|(?<=- )[^,{}\[\]:\n]+$", re.MULTILINE)
NAME = re.compile(r"[A-Za-z_-]+(?=:)")
VALUES = [
    "", "~", "null", "0", "-1", "1e400", "nan", "9" * 30, "25:00", "1:48", "yes", "½ h", "٣ h", "1,200", "$48,613",
    "2026-02-30", "9999-12-31", "11/28/2026", "{}", "[]", "[[[]]]", "{a: b}", "{en: }", "[a, b]", "8 h", "3 ft",
    "1/0 in", "10000 days", "value:none", "-value:none", "space:length", "'\u202e'", '"\\0"', '"\\ud800"', "*a", "&a b",
    "!t x", "! x", "> x", "| x", "@x", "`x", "%x", "#x", "a #b", "a # b", "- x", "? x", "a: b", "'", '"', "'a'b'",
    "[](value:none)", "[](javascript:x)", "![](x)", "<script>", "\\", "\t", "\u00a0", "\ufeff", "\u2028", "\u0085",
    "é" * 90, "x" * 5000,
    "..", "a/b.jpg", "FILL IN", "---", "...",
]  # fmt: skip
"""What somebody may write where something else is wanted."""
PIECES = [
    b"\t", b": ", b"- ", b"\n", b"{", b"}", b"[", b"]", b"'", b'"', b"&a ", b"*a ", b"#", b" #", b"%", b"@", b"|", b">",
    b"!", b",", b"\r", b"\x00", b"\x1b[2J", b"\xff", b"\xc2\x85", b"\xe2\x80\xa8", b"\xef\xbb\xbf", b"\xc2\xa0",
    b"\xed\xa0\x80", b"\xe2\x80\xae", b"---\n", b"...\n", b"%YAML 1.2\n", b"<<: ", b"\\",
]  # fmt: skip
"""What a slip of the hand or of a disk puts into the middle of a file."""
WHOLE = [
    b"", b"\n", b"# x", b"null", b"[]", b"{}", b"a", b'"', b"- a", b"---\n---", b"x: " * 1000, b"[" * 5000,
    b"- " * 3000, b"{a: " * 3000, b"a" * 50_000 + b": b", b"k: v\n" * 2000, b"a: [" + b"1,200," * 2000 + b"]",
    b"x" * 3_000_000,
]  # fmt: skip
"""Whole files that are none."""
LONG = 100_000
"""Bytes from which a file is spoiled enough."""


def spoiled(raw: bytes, number: int) -> bytes:
    """A file with one to three slips."""
    chance = Chance(number)
    for _ in range(chance.choice([1, 1, 1, 2, 3])):
        if len(raw) < LONG:
            raw = chance.choice(SLIPS)(raw, chance)
    return raw


def _lines(change: Callable[[list[str], int, int, Chance], None]) -> Callable[[bytes, Chance], bytes]:
    """A slip in the lines of a text: the lines, the first one, how many, and what else is left to chance."""

    def slip(raw: bytes, chance: Chance) -> bytes:
        lines = raw.decode("utf-8", "replace").split("\n")
        change(lines, chance.randrange(len(lines)), chance.choice([1, 1, 2, 5]), chance)
        return "\n".join(lines).encode("utf-8", "replace")

    return slip


@_lines
def _leave_out(lines: list[str], at: int, count: int, chance: Chance) -> None:
    del lines[at : at + count]


@_lines
def _write_twice(lines: list[str], at: int, count: int, chance: Chance) -> None:
    lines[at:at] = lines[at : at + count]


@_lines
def _move_in(lines: list[str], at: int, count: int, chance: Chance) -> None:
    before = chance.choice([" ", "  ", "    ", "\t"])
    lines[at : at + count] = [before + line for line in lines[at : at + count]]


@_lines
def _move_out(lines: list[str], at: int, count: int, chance: Chance) -> None:
    lines[at : at + count] = [line.removeprefix(" ").removeprefix(" ") for line in lines[at : at + count]]


@_lines
def _swap(lines: list[str], at: int, count: int, chance: Chance) -> None:
    other = chance.randrange(len(lines))
    lines[at], lines[other] = lines[other], lines[at]


def _other_value(raw: bytes, chance: Chance) -> bytes:
    text = raw.decode("utf-8", "replace")
    places = [found.span() for found in VALUE.finditer(text)] or [(0, 0)]
    start, end = chance.choice(places)
    return (text[:start] + chance.choice(VALUES) + text[end:]).encode("utf-8", "replace")


def _other_name(raw: bytes, chance: Chance) -> bytes:
    text = raw.decode("utf-8", "replace")
    start, end = chance.choice([found.span() for found in NAME.finditer(text)] or [(0, 0)])
    name = text[start:end]
    slip = chance.choice([name[1:], f"{name}x", name.upper(), f"{name} ", name.replace("_", "-"), ""])
    return (text[:start] + slip + text[end:]).encode("utf-8", "replace")


def _other_encoding(raw: bytes, chance: Chance) -> bytes:
    text = raw.decode("utf-8", "replace")
    encoding = chance.choice(["utf-16", "utf-32", "latin-1", "utf-8-sig", "utf-7"])
    return chance.choice([text, text.replace("\n", "\r\n"), text.replace("\n", "\r")]).encode(encoding, "replace")


def _piece(raw: bytes, chance: Chance) -> bytes:
    at = chance.randrange(len(raw) + 1)
    return raw[:at] + chance.choice(PIECES) + raw[at + chance.choice([0, 0, 1, 40]) :]


def _whole(raw: bytes, chance: Chance) -> bytes:
    return chance.choice(WHOLE)


SLIPS = [
    _leave_out, _write_twice, _move_in, _move_out, _swap, _other_value, _other_value, _other_value, _other_name,
    _other_encoding, _piece, _piece, _whole,
]  # fmt: skip
