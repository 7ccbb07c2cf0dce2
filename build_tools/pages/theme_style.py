"""What our pages use of the theme's style sheet: it styles some hundred parts, and our frame has a third of them.

A rule stays where every class that it asks for is one of the frame's (``CLASSES``); then keyframes and variables that
nobody names any more go too. A test holds the built pages against the list.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import lru_cache

CLASSES = frozenset(
    """md-container md-content md-content__inner md-copyright md-ellipsis md-footer md-footer-meta
    md-footer-meta__inner md-grid md-header md-header__button md-header__inner md-icon md-logo md-main
    md-main__inner md-nav md-nav--primary md-nav--secondary md-nav__button md-nav__icon md-nav__item
    md-nav__item--active md-nav__item--nested md-nav__link md-nav__link--active md-nav__list md-nav__title
    md-nav__toggle md-overlay md-sidebar md-sidebar--primary md-sidebar--secondary md-sidebar__inner
    md-sidebar__scrollwrap md-skip md-toggle md-typeset no-js js""".split()
)
"""The classes of the theme's frame, as our templates leave it."""
ABSENT = re.compile(r"\[data-md-color-|\[data-md-toggle=search|\[data-md-component=(?:announce|search|tabs)|#__search")
"""Parts of selectors that match nothing on our pages: colour schemes of the theme, its search."""
_CLASS = re.compile(r"\.(-?[a-zA-Z_][\w-]*)")
_URL = r"url\((?:\"[^\"]*\"|'[^']*'|[^)\"'])*\)"
_TEXT = r"\"(?:\\.|[^\"])*\"|'(?:\\.|[^'])*'"
_PIECE = re.compile(rf"{_TEXT}|{_URL}|[{{}};]|[^{{}};\"'u]+|u")
_VARIABLE = re.compile(rf"(?<=[{{;])(--[\w-]+):(?:{_TEXT}|{_URL}|[^;{{}}\"'])*(?:;|(?=}}))")
_NOT = re.compile(r":(?:not|is|where)\((?:[^()]|\([^()]*\))*\)")
_NOTE = re.compile(r"/\*.*?\*/", re.DOTALL)
_EMPTY = re.compile(r"(?<=[{}])[^{}]+\{\}")
_SPLIT = re.compile(r",(?![^(\[]*[)\]])")


@lru_cache
def frame_style(style: str, ours: str = "") -> str:
    """The theme's style sheet as far as our frame uses it; ``ours`` is the sheet whose variables it has to keep."""
    kept = _written(list(_rules(_NOTE.sub("", style))))
    keyframes = re.compile(r"@keyframes ([\w-]+)\{(?:[^{}]*\{[^{}]*\})*\}")
    kept = keyframes.sub(lambda found: found[0] if len(re.findall(rf"\b{found[1]}\b", kept)) > 1 else "", kept)
    while True:
        named = set(re.findall(r"var\(\s*(--[\w-]+)", kept + ours))
        less = _variables(kept, named)
        if less == kept:
            return kept
        kept = less


def tight(style: str) -> str:
    """A style sheet without comments and without the space at the ends of lines."""
    return re.sub(r"\s*\n\s*", "\n", _NOTE.sub("", style)).lstrip()


Rule = tuple[str, "str | list[Rule]"]
"""What stands before the bracket, and what stands in it: declarations, or rules of their own."""


def _rules(style: str) -> Iterator[Rule]:
    pieces = iter(_PIECE.findall(style))
    yield from _until_shut(pieces)


def _until_shut(pieces: Iterator[str]) -> Iterator[Rule]:
    head = ""
    for piece in pieces:
        if piece == "{":
            head = head.strip()
            inside: str | list[Rule]
            holds_rules = head.startswith(("@media", "@supports", "@layer"))
            inside = list(_until_shut(pieces)) if holds_rules else _declarations(pieces)
            yield head, inside
            head = ""
        elif piece == "}":
            return
        elif piece == ";":
            head = ""  # `@charset`, `@import`: neither is of use in the middle of a sheet
        else:
            head += piece


def _declarations(pieces: Iterator[str]) -> str:
    """The text up to the bracket that shuts; keyframes have brackets of their own in it."""
    text, depth = "", 0
    for piece in pieces:
        if piece == "}" and depth == 0:
            return text
        depth += {"{": 1, "}": -1}.get(piece, 0)
        text += piece
    return text


def _written(rules: list[Rule]) -> str:
    text = ""
    for head, inside in rules:
        if isinstance(inside, list):
            held = _written(inside)
            text += f"{head}{{{held}}}" if held else ""
        elif head.startswith("@"):
            text += f"{head}{{{inside}}}"
        else:
            selectors = [each for each in _SPLIT.split(head) if _can_match(each)]
            text += f"{','.join(selectors)}{{{inside}}}" if selectors else ""
    return text


def _can_match(selector: str) -> bool:
    """Whether the selector asks for nothing that our pages never have."""
    plain = _NOT.sub("", selector)
    return set(_CLASS.findall(plain)) <= CLASSES and not ABSENT.search(plain)


def _variables(style: str, named: set[str]) -> str:
    """The sheet without the variables that nobody names."""
    return _EMPTY.sub("", _VARIABLE.sub(lambda found: found[0] if found[1] in named else "", style))
