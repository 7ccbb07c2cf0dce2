"""Remembers what was worked out from an entry, so that a preview works out again only what was edited."""

from __future__ import annotations

from collections.abc import Callable, Hashable
from typing import Any, TypeVar

Result = TypeVar("Result")


class Memo:
    """Results by kind of work and by the very item they were made from.

    A result holds as long as the item is the same object and ``given`` (what else it was made from) is equal.
    Reading makes a new object of an edited file, so nothing stale is ever found.
    """

    def __init__(self) -> None:
        self._kept: dict[tuple[str, int], tuple[object, Hashable, Any]] = {}
        self._named: dict[str, tuple[object, Any]] = {}

    def of(self, work: str, item: object, given: Hashable, make: Callable[[], Result]) -> Result:
        """The result for that item, made now if it is not held."""
        key = (work, id(item))
        held = self._kept.get(key)
        if held is not None and held[0] is item and held[1] == given:
            return held[2]  # type: ignore[no-any-return]
        result = make()
        self._kept[key] = (item, given, result)
        return result

    def holds(self, work: str, item: object, given: Hashable) -> bool:
        """Whether the result for that item is held."""
        held = self._kept.get((work, id(item)))
        return held is not None and held[0] is item and held[1] == given

    def keep(self, work: str, item: object, given: Hashable, result: object) -> None:
        """Hold a result that was made elsewhere."""
        self._kept[work, id(item)] = (item, given, result)

    def named(self, work: str, given: object, make: Callable[[], Result]) -> Result:
        """The result of a work that there is once, made now if what it was made from is no longer equal."""
        held = self._named.get(work)
        if held is not None and held[0] == given:
            return held[1]  # type: ignore[no-any-return]
        result = make()
        self._named[work] = (given, result)
        return result

    def forget(self, alive: set[int]) -> None:
        """Drop what was made from items that are gone; ``alive`` holds the ids of those that are not."""
        self._kept = {key: held for key, held in self._kept.items() if key[1] in alive}
