"""Records in V8 and in Python: the same files are refused, and the same ones give the same table."""

from __future__ import annotations

import json
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from pydantic import ValidationError

from build_tools.browser.form_script import SCRIPTS
from build_tools.records.lines import csv_of, lines_of
from build_tools.records.model import Record
from build_tools.records.reading import merged, records_in
from tests.build_tools.records.test_records import item, reading, record
from tests.script_engine import new_engine

PIECES = sorted((SCRIPTS / "shared").glob("*.js"))
TEXT = st.text(st.sampled_from('aB1 ,"=-+@/\n'), max_size=8)
TIMES = st.integers(0, 9).map(lambda n: f"2026-11-25T14:00:00.{n:03}Z")
STEPS = st.sampled_from(["place", "set", "acceptance", "gone"])
ITEMS = st.one_of(
    st.builds(lambda step, at, done: item("tick", step, at, done=done), STEPS, TIMES, st.booleans()),
    st.builds(lambda at, text, verdict: reading(at, text, verdict), TIMES, TEXT, st.sampled_from(["pass", "outside"])),
    st.builds(lambda step, at, text: item("note", step, at, text=text), STEPS, TIMES, TEXT),
    st.builds(
        lambda step, at, who, passed: item("hold", step, at, looked=who, when="2026-11-25T08:00", passed=passed),
        STEPS,
        TIMES,
        TEXT,
        st.booleans(),
    ),
)
RECORDS = st.builds(
    lambda items, space, revision, taken: record(
        items,
        space={"id": space, "title": space.title()},
        procedure={"id": "toilet-set", "title": "Set a toilet", "revision": revision},
        taken=taken,
    ),
    st.lists(ITEMS, max_size=8, unique_by=lambda one: (one["kind"], one["step"])),
    st.sampled_from(["bath", "", "guest"]),
    st.integers(1, 3),
    TIMES,
)


@pytest.fixture(scope="module")
def engine() -> Any:
    """V8 with the functions that need no page."""
    engine = new_engine()
    engine.eval("".join(path.read_text(encoding="utf-8") for path in PIECES))
    return engine


@settings(max_examples=60)
@given(st.lists(RECORDS, max_size=4))
def test_the_same_table(engine: Any, records: list[dict[str, Any]]) -> None:
    """Whatever was entered on whichever devices, the page and the terminal write the same."""
    texts = [json.dumps(one) for one in records]
    told = engine.eval(f"csvOf(merged({json.dumps(texts)}.flatMap(recordsIn)).flatMap(linesOf))")
    read = merged(Record.model_validate_json(text) for text in texts)
    assert told == csv_of(line for one in read for line in lines_of(one))


WHOLE = record([item("tick", "place", done=True), reading("2026-11-25T14:00:00.000Z", "12", "pass")])


@pytest.mark.parametrize(
    ("path", "value"),
    [
        (["format"], "another"),
        (["version"], 2),
        (["taken"], "yesterday"),
        (["job"], None),
        (["procedure", "revision"], "2"),
        (["steps"], {}),
        (["steps", 0, "print"], 3),
        (["steps", 1, "hold"], 0),
        (["steps", 0, "measures", 0, "limits"], None),
        (["items", 0, "kind"], "toString"),
        (["items", 0, "done"], "yes"),
        (["items", 0, "at"], "2026"),
        (["items", 1, "verdict"], "good"),
        (["items", 1, "value"], "12"),
        (["items", 1, "name"], None),
    ],
)
def test_the_same_files_are_refused(engine: Any, path: list[Any], value: object) -> None:
    """One wrong field, and neither takes the file; as it was, both do."""
    assert engine.eval(f"recordsIn({json.dumps(json.dumps(WHOLE))}) !== null")
    broken = json.loads(json.dumps(WHOLE))
    place = broken
    for key in path[:-1]:
        place = place[key]
    place[path[-1]] = value
    text = json.dumps(broken)
    assert engine.eval(f"recordsIn({json.dumps(text)}) === null")
    with pytest.raises(ValidationError):
        Record.model_validate_json(text)


@pytest.mark.parametrize(
    ("text", "count"), [("[]", 0), ("[{}]", 0), ("WHOLE", 1), ("[WHOLE]", 1), (" [WHOLE, WHOLE]", 2)]
)
def test_a_file_of_several(engine: Any, text: str, count: int) -> None:
    """One record or a list of them; a list with a broken one, or none, is refused whole."""
    text = text.replace("WHOLE", json.dumps(WHOLE))
    assert engine.eval(f"(recordsIn({json.dumps(text)}) || []).length") == count
    if count:
        assert len(records_in(text.encode())) == count
    else:
        with pytest.raises(ValidationError):
            records_in(text.encode())
