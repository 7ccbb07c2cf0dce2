"""The word that a person most likely meant."""

from __future__ import annotations


def distance(one: str, other: str) -> int:
    """How many letters must be added, left out or changed to make the one word into the other (Levenshtein).

    >>> [distance("tile", "tile"), distance("mesured", "measured"), distance("", "abc")]
    [0, 1, 3]
    """
    before = list(range(len(other) + 1))
    for i in range(len(one)):
        row = [i + 1]
        for j in range(len(other)):
            changed = before[j]
            if one[i] != other[j]:
                changed = changed + 1
            row.append(min(changed, before[j + 1] + 1, row[j] + 1))
        before = row
    return before[len(other)]


def did_you_mean(word: str, words: list[str]) -> str:
    """The end of a message that names the nearest word, where at most two letters in five differ; else nothing.

    >>> [did_you_mean("mesured", ["layers", "measured"]), did_you_mean("xyz", ["layers"])]
    ["; did you mean 'measured'?", '']
    """
    best = ""
    least = 0.4
    for known in words:
        away = distance(word.lower(), known.lower()) / max(1, len(word), len(known))
        if away <= 0.4 and (best == "" or away < least):
            best = known
            least = away
    return "" if best == "" else "; did you mean '" + best + "'?"
