"""The order of the work: the graph that the ``before`` links make, from the first stake to the keys.

:func:`links` is the graph itself, :func:`direct` the same without the links that follow from others, and
:func:`in_order` a way to do everything, each after what comes before it.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from graphlib import TopologicalSorter
from heapq import heappop, heappush
from typing import Any

from build_tools.book.book import Book

Graph = Mapping[str, list[str]]
"""Each procedure to those that come directly before it."""


def links(book: Book) -> dict[str, list[str]]:
    """Each procedure of the book to those that its ``before`` names."""
    return {
        id: list(dict.fromkeys(line.procedure for line in entry.item.before if line.procedure in book.procedures))
        for id, entry in book.procedures.items()
    }


def direct(graph: Graph) -> dict[str, list[str]]:
    """The graph without links that follow from others (A before B before C makes A before C).

    >>> direct({"a": [], "b": ["a"], "c": ["a", "b"]})
    {'a': [], 'b': ['a'], 'c': ['b']}
    """
    number = {id: index for index, id in enumerate(graph)}
    earlier: dict[str, int] = {}  # a bit for each procedure that comes before, near or far
    kept: dict[str, list[str]] = {}
    for id in TopologicalSorter(graph).static_order():
        near = graph[id]
        beyond = 0
        for other in near:
            beyond |= earlier[other]
        kept[id] = [other for other in near if not beyond >> number[other] & 1]
        earlier[id] = beyond
        for other in near:
            earlier[id] |= 1 << number[other]
    return {id: kept[id] for id in graph}


def after(graph: Graph) -> dict[str, list[str]]:
    """The graph turned round: each procedure to those that come directly after it."""
    turned: dict[str, list[str]] = {id: [] for id in graph}
    for id, before in graph.items():
        for other in before:
            turned[other].append(id)
    return turned


def in_order(graph: Graph, lane: Mapping[str, Any], rank: Callable[[str], Any]) -> list[str]:
    """Everything, each after what comes before it; what may come next goes by lane while the lane has more to do.

    ``rank`` decides between those that are free. What nothing follows from early waits until something needs it, so
    that a short chain stands beside the work that it belongs to.

    >>> in_order({"a": [], "b": ["a"], "x": [], "c": ["b", "x"]}, {"a": 1, "b": 1, "x": 2, "c": 1}, lambda id: id)
    ['a', 'b', 'x', 'c']
    """
    next_ = after(graph)
    missing = {id: len(before) for id, before in graph.items()}
    free: list[tuple[int, Any, str]] = []
    depth = depths(graph)

    def push(id: str) -> None:
        heappush(free, (depth[id], rank(id), id))

    for id, count in missing.items():
        if count == 0:
            push(id)
    done: list[str] = []
    while free:
        same = [
            entry for entry in free if done and lane[entry[2]] == lane[done[-1]] and entry[0] <= depth[done[-1]] + 1
        ]
        if same:
            chosen = min(same)
            free.remove(chosen)
            id = chosen[2]
        else:
            id = heappop(free)[2]
        done.append(id)
        for other in next_[id]:
            missing[other] -= 1
            if missing[other] == 0:
                push(other)
        free.sort()
    return done


def depths(graph: Graph) -> dict[str, int]:
    """How many procedures deep each stands; one that has nothing before it stands just above what needs it first.

    >>> depths({"a": [], "b": ["a"], "c": ["b"], "late": [], "d": ["c", "late"]})
    {'a': 0, 'b': 1, 'c': 2, 'late': 2, 'd': 3}
    """
    depth: dict[str, int] = {}
    for id in TopologicalSorter(graph).static_order():
        depth[id] = max((depth[other] + 1 for other in graph[id]), default=0)
    turned = after(graph)
    found = {id: depth[id] for id in graph}
    for id, before in graph.items():
        if not before and turned[id]:
            found[id] = min(depth[other] for other in turned[id]) - 1
    return found
