"""The name that was most likely meant, found in an index, so that a thousand slips cost no more than each by itself."""

from __future__ import annotations

from collections.abc import Iterable
from difflib import SequenceMatcher
from functools import lru_cache
from itertools import combinations

LONG = 8
"""Letters from which two may be wrong; up to there one."""
LONGEST = 40
"""Letters beyond which no name is looked for."""


def did_you_mean(given: str, known: Iterable[str]) -> str:
    """A hint with the nearest known name, or an empty text when none is near.

    Near is a name with a letter added, left out, changed or moved, two in a long one; a name with which the given one
    begins; and the only name that has its words in another order, or has it as one of its words.

    >>> did_you_mean("tile-flor", ["tile-floor", "toilet-set"]), did_you_mean("level", ["short-level", "saw"])
    ("did you mean 'tile-floor'?", "did you mean 'short-level'?")
    >>> did_you_mean("foil-tape", ["form-stakes", "floor-tile"])
    ''
    """
    word, names = _plain(given), tuple(known)
    if len(word) > LONGEST:
        return ""
    for wrong in (1, 2) if len(word) >= LONG else (1,):
        index = _shortened_forms(names, wrong)
        near = dict.fromkeys(name for key in _shortened(word, wrong) for name in index.get(key, ()))
        if near:
            return f"did you mean '{_most_like(word, near)}'?"
    parts = _parts(names)
    having = parts.get(word) or parts.get(" ".join(sorted(word.split("-")))) or []
    if len(having) == 1:
        return f"did you mean '{having[0]}'?"
    begins = next((name for end in range(len(word) - 1, 3, -1) for name in parts.get(f"^{word[:end]}", ())), "")
    return f"did you mean '{begins}'?" if begins else ""


def _plain(name: str) -> str:
    return name.lower().replace("_", "-").replace(" ", "-")


def _most_like(word: str, names: Iterable[str]) -> str:
    matcher = SequenceMatcher(b=word, autojunk=False)
    likeness = {}
    for name in names:
        matcher.set_seq1(_plain(name))
        likeness[name] = matcher.ratio()
    return max(likeness, key=likeness.__getitem__)


@lru_cache(maxsize=32)
def _shortened_forms(names: tuple[str, ...], wrong: int) -> dict[str, list[str]]:
    """The names by what is left of each without up to so many letters. Two names with a form in common are near."""
    index: dict[str, list[str]] = {}
    for name in names:
        plain = _plain(name)
        if len(plain) <= LONGEST:
            for key in _shortened(plain, wrong):
                index.setdefault(key, []).append(name)
    return index


def _shortened(word: str, wrong: int) -> set[str]:
    most = min(wrong, len(word) - 1)
    return {"".join(kept) for gone in range(most + 1) for kept in combinations(word, len(word) - gone)}


@lru_cache(maxsize=32)
def _parts(names: tuple[str, ...]) -> dict[str, list[str]]:
    """The names by each of their words, by all of these in order, and as a whole (``^``)."""
    parts: dict[str, list[str]] = {}
    for name in names:
        plain = _plain(name)
        words = plain.split("-")
        for part in {f"^{plain}", " ".join(sorted(words)), *words}:
            parts.setdefault(part, []).append(name)
    return parts
