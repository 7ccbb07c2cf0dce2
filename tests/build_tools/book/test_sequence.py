"""The graph of the work against networkx, on drawn graphs."""

from __future__ import annotations

import networkx
from hypothesis import given
from hypothesis import strategies as st

from build_tools.book.sequence import after, depths, direct, in_order

NAMES = [f"p{number}" for number in range(12)]


@st.composite
def graphs(draw: st.DrawFn) -> dict[str, list[str]]:
    """A graph without circles: each may name only those ahead of it in a drawn order."""
    order = draw(st.permutations(NAMES[: draw(st.integers(1, len(NAMES)))]))
    return {id: draw(st.lists(st.sampled_from(order[:at]), unique=True)) if at else [] for at, id in enumerate(order)}


def drawn(graph: dict[str, list[str]]) -> networkx.DiGraph[str]:
    """The same for networkx."""
    made: networkx.DiGraph[str] = networkx.DiGraph()
    made.add_nodes_from(graph)
    made.add_edges_from((other, id) for id, before in graph.items() for other in before)
    return made


@given(graphs())
def test_direct_is_the_transitive_reduction(graph: dict[str, list[str]]) -> None:
    assert set(drawn(direct(graph)).edges) == set(networkx.transitive_reduction(drawn(graph)).edges)


@given(graphs())
def test_after_is_the_graph_turned_round(graph: dict[str, list[str]]) -> None:
    assert set(drawn(after(graph)).edges) == set(drawn(graph).reverse().edges)


@given(graphs(), st.integers(1, 4))
def test_everything_comes_once_and_after_what_it_needs(graph: dict[str, list[str]], lanes: int) -> None:
    order = in_order(graph, {id: int(id[1:]) % lanes for id in graph}, lambda id: id)
    assert sorted(order) == sorted(graph)
    place = {id: at for at, id in enumerate(order)}
    assert all(place[other] < place[id] for id, before in graph.items() for other in before)


@given(graphs())
def test_depth_is_the_longest_way_from_the_top(graph: dict[str, list[str]]) -> None:
    levels = {id: at for at, level in enumerate(networkx.topological_generations(drawn(graph))) for id in level}
    found = depths(graph)
    for id, before in graph.items():
        assert found[id] == levels[id] if before else found[id] >= 0
    assert all(found[other] < found[id] for id, before in graph.items() for other in before)
