"""The one traversal of an entry: what stands where."""

from __future__ import annotations

from build_tools.book.model.base import RefersTo
from build_tools.book.model.job import Task
from build_tools.book.traverse import traverse

TASK = Task.model_validate(
    {
        "procedure": "floor-nailing",
        "space": "room",
        "inputs": {
            "strip-floor-take-off": {"rooms": "space:rooms", "waste": "value:cutting-waste"},
            "trim-take-off": {"openings": [{"name": "Door", "kind": "door"}]},
        },
    }
)


def test_the_names_before_a_mapping_refer_to_calculators_and_its_texts_do_not() -> None:
    refers = [(location, kind.scheme, value) for location, kind, value in traverse(TASK) if isinstance(kind, RefersTo)]
    assert refers == [
        (("procedure",), "procedure", "floor-nailing"),
        (("inputs", "strip-floor-take-off"), "calculator", "strip-floor-take-off"),
        (("inputs", "trim-take-off"), "calculator", "trim-take-off"),
    ]


def test_the_texts_of_a_mapping_are_measures_down_to_the_rows() -> None:
    texts = [
        value for location, kind, value in traverse(TASK) if location[:1] == ("inputs",) and value not in TASK.inputs
    ]
    assert texts == ["space:rooms", "value:cutting-waste", "Door", "door"]
