"""The word that was meant."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from calculators.nearness import did_you_mean, distance

WORDS = st.text("abcd", max_size=6)


@given(WORDS, WORDS, WORDS)
def test_a_distance_is_one(one: str, other: str, third: str) -> None:
    """Levenshtein's distance keeps the laws of a metric, and its bounds by length."""
    away = distance(one, other)
    assert (away == 0) == (one == other)
    assert away == distance(other, one)
    assert away <= distance(one, third) + distance(third, other)
    assert abs(len(one) - len(other)) <= away <= max(len(one), len(other))


def test_distances_known_from_textbooks() -> None:
    """kitten and sitting, Saturday and Sunday: the usual worked examples of Levenshtein's distance (from memory)."""
    assert distance("kitten", "sitting") == 3
    assert distance("saturday", "sunday") == 3


def test_the_nearest_of_several_and_none_for_another_word() -> None:
    assert did_you_mean("thik", ["thin", "thick"]) == "; did you mean 'thick'?"
    assert did_you_mean("LAYERS", ["measured", "layers"]) == "; did you mean 'layers'?"
    assert did_you_mean("concrete", ["measured", "layers"]) == ""
    assert did_you_mean("", ["a"]) == ""
    assert did_you_mean("a", []) == ""
