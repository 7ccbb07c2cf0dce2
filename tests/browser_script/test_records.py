"""Records in V8 and in Python: the same files are refused, and the same ones give the same table."""

from __future__ import annotations

import json
import sys
import unicodedata
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from pydantic import ValidationError

from build_tools.book.printable import printable
from build_tools.browser.form_script import pieces
from build_tools.records.lines import csv_of, lines_of
from build_tools.records.model import Record
from build_tools.records.reading import merged, records_in
from tests.build_tools.records.test_records import item, reading, record
from tests.script_engine import new_engine

PIECES = pieces("elements/local-time", "times", "shared", "merging")
TEXT = st.text(st.sampled_from('aB1 ,"=-+@/\n\r\t;＝－\u00a0\ufeff\u202e|½°'), max_size=8)
TIMES = st.integers(0, 9).map(lambda n: f"2026-11-25T14:00:00.{n:03}Z")
STEPS = st.sampled_from(["place", "set", "acceptance", "gone"])
ITEMS = st.one_of(
    st.builds(lambda step, at, done: item("tick", step, at, done=done), STEPS, TIMES, st.booleans()),
    st.builds(lambda at, text, verdict: reading(at, text, verdict), TIMES, TEXT, st.sampled_from(["pass", "outside"])),
    st.builds(lambda step, at, text: item("note", step, at, text=text), STEPS, TIMES, TEXT),
    st.builds(
        lambda step, at, who, passed, role: item(
            "hold", step, at, looked=who, when="2026-11-25T08:00", passed=passed, **role
        ),
        STEPS,
        TIMES,
        TEXT,
        st.booleans(),
        st.sampled_from([{}, {"role": ""}, {"role": "not the crew lead"}]),
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


@pytest.mark.parametrize("ticked", [[], ["place"], ["place", "set"], ["place", "set", "acceptance"], ["acceptance"]])
def test_the_same_count(engine: Any, ticked: list[str]) -> None:
    """Of two steps so many are done, and the checks at the end are said once they are all that is left."""
    given = record([item("tick", step, done=True) for step in ticked])
    sums = json.loads(engine.eval(f"JSON.stringify(summaryOf({json.dumps(given)}))"))
    done = len({"place", "set"}.intersection(ticked))
    assert (sums["done"], sums["of"], sums["checksOpen"]) == (done, 2, done == 2 and "acceptance" not in ticked)


LOOKED = item("hold", "set", looked="Wren Okafor", role="", when="2026-11-25T08:00", passed=True)
WHOLE = record([item("tick", "place", done=True), reading("2026-11-25T14:00:00.000Z", "12", "pass"), LOOKED])
NO_TIMES = (
    "2026-99-99T99:99:99.999Z",
    "2026-02-30T08:00:00.000Z",
    "2026-13-01T08:00:00.000Z",
    "2026-11-25T24:00:00.000Z",
    "2026-11-25T08:00:60.000Z",
    "0000-11-25T08:00:00.000Z",
    "2026-11-25T08:00:00.000+00:00",
    "2026-11-25T08:00:00Z",
    "٢٠٢٦-11-25T08:00:00.000Z",
    "2026-11-25T08:00:00.000Z\n",
    ["2026-11-25T08:00:00.000Z"],
)


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
        (["items", 2, "role"], None),
        (["steps", 1, "hold"], 0),
        (["steps", 0, "measures", 0, "limits"], None),
        (["items", 0, "kind"], "toString"),
        (["items", 0, "done"], "yes"),
        (["items", 0, "at"], "2026"),
        *(([place, *path], time) for place, *path in (["taken"], ["items", 0, "at"]) for time in NO_TIMES),
        *((["items", 2, "when"], time) for time in ("yesterday", "2026-02-30T08:00", "2026-11-25T08:00:00", None)),
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


def test_one_rule_for_what_is_unseen(engine: Any) -> None:
    """Every character that both know is shown as it is or by its code, the same on a page as in a terminal."""
    text = "".join(one for one in map(chr, range(sys.maxunicode + 1)) if unicodedata.category(one) not in ("Cn", "Co"))
    told = json.loads(str(engine.eval(f"JSON.stringify(printable({json.dumps(text)}))")))
    assert told == printable(text)
    assert printable("\x1b\u202e\n\U000e0041") == r"\u001b\u202e\n\udb40\udc41"


TOO_LARGE = 2**53
COUNT = '"revision": 2'


@pytest.mark.parametrize(
    ("old", "new", "taken"),
    [
        ("{", "\ufeff{", True),
        ("{", "\ufeff\ufeff{", False),
        ("{", "\ufeff [ {", False),
        (COUNT, f'"revision": {TOO_LARGE - 1}', True),
        (COUNT, '"revision":\n-7', True),
        (COUNT, f'"revision": {TOO_LARGE}', False),
        (COUNT, f'"revision": {10**400}', False),
        (COUNT, f'"revision": -{TOO_LARGE}', False),
        (COUNT, '"revision": 1.0', False),
        (COUNT, '"revision": 1e3', False),
        (COUNT, '"r\\u0065vision": 2.0', False),
        (COUNT, '"revision": 1.0, "revision": 2', False),
        (COUNT, '"revision": 01', False),
        (COUNT, '"revision": true', False),
        ('"version": 1', '"version": 1.0', False),
        ('"version": 1', '"version": 1e0', False),
        ('"value": 12.0', '"value": 1.25e1', True),
        ('"value": 12.0', '"value": 1e21', True),
        ('"Set the bowl."', r'"\"revision\": 1.0, \\"', True),
    ],
)
def test_one_rule_for_what_is_written(engine: Any, old: str, new: str, taken: bool) -> None:
    """The page and the terminal take a byte order mark, and counts that are whole, plain, and told apart by script."""
    text = json.dumps(WHOLE)
    assert old in text
    text = text.replace(old, new, 1)
    assert engine.eval(f"recordsIn({json.dumps(text)}) !== null") == taken
    if taken:
        assert len(records_in(text.encode())) == 1
    else:
        with pytest.raises(ValidationError):
            records_in(text.encode())


def test_only_what_the_schema_names_is_taken(engine: Any) -> None:
    """A page address, a prototype or anything else beside the fields of a record is left in the file."""
    more: dict[str, Any] = json.loads(json.dumps(WHOLE))
    parts = [more, more["job"], more["space"], more["procedure"], more["steps"][0], more["steps"][0]["measures"][0]]
    for part in (*parts, *more["items"]):
        part |= {"page": "javascript:alert(1)", "toString": "no", "constructor": {}}
    text = json.dumps(more).replace('"toString"', '"__proto__"')
    taken = json.loads(str(engine.eval(f"JSON.stringify(recordsIn({json.dumps(text)}))")))
    assert taken == [WHOLE]


@pytest.mark.parametrize(("minutes", "ahead"), [(-60, 0), (14, 0), (16, 1), (60 * 24 * 365 * 900, 1)])
def test_entries_ahead_of_the_clock(engine: Any, minutes: int, ahead: int) -> None:
    """What is dated minutes from now is a clock that differs; more than that is parted from the rest."""
    at = f"new Date(Date.now() + {minutes} * 60000).toISOString()"
    given = f"[{{...{json.dumps(WHOLE)}, taken: {at}, items: [{{...{json.dumps(WHOLE['items'][0])}, at: {at}}}]}}]"
    told = engine.eval(f"""(() => {{
        const {{ made, ahead }} = partedByNow({given});
        return JSON.stringify([made[0].items.length, ahead.length, Date.parse(made[0].taken) <= Date.now() + 900000]);
    }})()""")
    assert json.loads(str(told)) == [1 - ahead, ahead, True]


@pytest.mark.parametrize(("hours", "ahead"), [(13, 0), (15, 1)])
def test_a_look_that_is_still_to_come(engine: Any, hours: int, ahead: int) -> None:
    """A hold point was looked at in the time of some place, of which none is 15 hours ahead of UTC."""
    when = f"new Date(Date.now() + {hours} * 3600000).toISOString().slice(0, 16)"
    given = f"[{{...{json.dumps(WHOLE)}, items: [{{...{json.dumps(LOOKED)}, when: {when}}}]}}]"
    assert engine.eval(f"partedByNow({given}).ahead.length") == ahead
