"""The record: out as a file, in on another device, many of them on the owner's page, and on paper."""

from __future__ import annotations

import base64
import csv
import io
import json
from datetime import UTC, datetime, timedelta
from io import BytesIO
from pathlib import Path
from typing import Any

import jsonschema
from pypdf import PdfReader
from selenium.webdriver.remote.webelement import WebElement

from build_tools.records.lines import csv_of, lines_of
from build_tools.records.model import Record
from build_tools.records.reading import merged, records_in
from tests.browser.on_site import CATCH, HELD, MEASURED, OnSite, forget_all
from tests.browser.window import Window

JOB = "?job=garden-studio&space=bath"


def work(window: Window) -> OnSite:
    """A toilet half set: a tick, a reading outside, and the hold point passed."""
    page = OnSite(window, JOB)
    page.tick("open-box")
    page.read(MEASURED, "13-1/2")
    page.look(HELD, "Tobin Reyes")
    page.wait_kept(3)
    return page


def now(**later: int) -> str:
    """A time that much later than now."""
    return (datetime.now(UTC) + timedelta(**later)).isoformat(timespec="milliseconds").replace("+00:00", "Z")


def file_of(record: dict[str, Any], folder: Path) -> Path:
    """The record as a file."""
    path = folder / "record.json"
    path.write_text(json.dumps(record), encoding="utf-8")
    return path


def test_the_file_keeps_to_its_schema(empty: Window, site: Path) -> None:
    """What is handed out is what the published schema and the model say."""
    record = work(empty).record()
    schema = json.loads((site / "record.schema.json").read_text(encoding="utf-8"))
    jsonschema.Draft202012Validator.check_schema(schema)
    jsonschema.Draft202012Validator(schema).validate(record)
    read = Record.model_validate_json(json.dumps(record))
    assert (read.job.id, read.space.id, read.procedure.id) == ("garden-studio", "bath", "toilet-set")
    assert [item.kind for item in read.items] == ["tick", "reading", "hold"]
    assert [item.verdict for item in read.items if item.kind == "reading"] == ["outside"]


def test_on_another_device(empty: Window, tmp_path: Path) -> None:
    """All of it is there; what was entered on that device in the meantime is not lost."""
    file = file_of(work(empty).record(), tmp_path)
    forget_all(empty.driver, empty.address)
    page = OnSite(empty, JOB)
    page.tick("check-supply")
    page.tick("open-box")
    page.tick("open-box")
    page.press("The record")
    empty.until(lambda: empty.find_all("#record-in"), "the way in")
    empty.find("#record-in").send_keys(str(file))
    empty.until(lambda: "3 entries of 'Set a toilet'" in empty.find(".said").text, "put in")
    page.wait_kept(4)
    page.reload()
    empty.until(lambda: page.ticked() == ["check-supply"], "the later of each")
    assert "13-1/2" in str(empty.find(f"#{MEASURED} .reading input").get_attribute("value"))
    assert "Tobin Reyes looked" in empty.find(f"#{HELD} .looked").text


def test_a_file_that_is_none(empty: Window, tmp_path: Path) -> None:
    """It is named, and nothing is taken from it."""
    page = OnSite(empty)
    page.press("The record")
    empty.until(lambda: empty.find_all("#record-in"), "the way in")
    for content in ("{", "[]", '{"format": "crew-methods-record", "version": 1}'):
        file = tmp_path / "broken.json"
        file.write_text(content, encoding="utf-8")
        empty.find("#record-in").send_keys(str(file))
        empty.until(lambda: "broken.json is no record" in empty.find(".said").text, "the refusal")
    assert page.kept() == 0


def put_in(page: OnSite, file: Path, says: str) -> None:
    """Put a file in at the panel of the record, and wait until that is said."""
    window = page.window
    if not window.find_all("#record-in"):
        page.press("The record")
    window.until(lambda: window.find_all("#record-in"), "the way in").pop().send_keys(str(file))
    window.until(lambda: says in window.find(".said").text, f"'{says}'")


def in_database(window: Window, does: str, given: Any) -> None:
    """What an earlier edition may have left in the database: ``does`` works on its ``store``."""
    script = f"""
        const [given, done] = arguments;
        indexedDB.databases().then(([{{name}}]) => indexedDB.open(name).onsuccess = ({{target: {{result: base}}}}) => {{
            const work = base.transaction('items', 'readwrite');
            const store = work.objectStore('items');
            work.oncomplete = () => {{ base.close(); done(); }};
            {does}
        }});
    """
    window.driver.execute_async_script(script, given)


def test_a_clock_that_was_ahead_is_asked_about(empty: Window, tmp_path: Path) -> None:
    """Entries of the year 2999 are said and left out; a tap takes them, and a later tick still counts."""
    page = work(empty)
    record = page.record()
    ahead = {**record["items"][0], "at": "2999-01-01T00:00:00.000Z", "step": "open-box", "done": False}
    file = file_of({**record, "items": [*record["items"][1:], ahead]}, tmp_path)
    put_in(page, file, "record.json has an entry whose time is still to come: ")
    assert page.ticked() == ["open-box"]
    page.press("Take in what is ahead")
    empty.until(lambda: page.ticked() == [], "the tick taken back")
    page.tick("open-box")
    page.wait_written()
    page.reload()
    empty.until(lambda: page.ticked() == ["open-box"], "a tick that counts over it")
    empty.open("records.html")
    empty.until(lambda: empty.find_all("#records-in"), "the way in").pop().send_keys(str(file))
    told = empty.until(lambda: empty.find_all(".records-told .ahead") and empty.find(".records-told"), "the question")
    assert "0 of 21" in empty.find("[data-read]").text
    press(told, "Take in what is ahead")
    empty.until(lambda: not empty.find_all(".records-told .ahead"), "taken")


def test_a_time_that_is_none_can_be_undone(empty: Window, tmp_path: Path) -> None:
    """A file with such a time is refused; one that an earlier edition has kept stops nothing."""
    page = work(empty)
    record = page.record()
    bad = "2026-99-99T99:99:99.999Z"
    put_in(page, file_of({**record, "items": [{**record["items"][0], "at": bad}]}, tmp_path), "is no record")
    in_database(
        empty,
        """store.openCursor(IDBKeyRange.lowerBound([''])).onsuccess = ({target: {result}}) => {
            if (!result) return;
            result.update({...result.value, at: given});
            result.continue();
        };""",
        bad,
    )
    page.reload()
    page.tick("open-box")
    page.wait_written()
    page.tick("open-box")
    page.wait_written()
    page.tick("open-box")
    page.wait_written()
    page.reload()
    empty.until(lambda: page.ticked() == ["open-box"], "the tick")
    empty.open("records.html")
    empty.until(lambda: "1 of 21" in empty.find("[data-device]").text, "what is sound")


def test_no_address_comes_from_a_file(empty: Window, tmp_path: Path) -> None:
    """A procedure that the book has not is text, whatever page the file, or a device that took it once, says it has."""
    page = work(empty)
    record = page.record()
    for id, address in {
        "strange": "javascript:document.title='run'",
        "other": "https://example.org/",
        "constructor": "x",
    }.items():
        procedure = {**record["procedure"], "id": id, "title": id, "page": address}
        file = file_of({**record, "page": address, "procedure": procedure}, tmp_path)
        put_in(page, file, f"'{id}' put in")
    page.wait_kept(12)
    in_database(
        empty,
        """store.get([0, 'strange']).onsuccess = ({target: {result}}) =>
            store.put({...result, ...given}, [0, 'strange']);""",
        {"page": "javascript:document.title='run'"},
    )
    empty.open("records.html")
    empty.find("#records-in").send_keys(str(file))
    empty.until(lambda: empty.find_all("[data-read] table"), "the table")
    links = [str(link.get_attribute("href")) for link in empty.find_all(".records-out a")]
    assert [link.rpartition("/")[2].partition("?")[0] for link in links] == ["toilet-set.html"]
    assert "strange" in empty.find("[data-device]").text


def test_the_owner_reads_many(empty: Window, tmp_path: Path) -> None:
    """For each job: what is done, by whom, what was outside, which holds are open; and the same table as Python's."""
    record = work(empty).record()
    later = json.loads(json.dumps(record))
    later["items"] = [{**item, "at": now(minutes=1), "done": False} for item in record["items"][:1]]
    door = json.loads(json.dumps(record))
    door["procedure"] |= {"id": "door", "title": "=A\x1b[1m\u202e door"}
    door["items"] = []
    paths = []
    for number, each in enumerate((record, later, door)):
        paths.append(tmp_path / f"{number}.json")
        paths[-1].write_text(json.dumps(each), encoding="utf-8")
    (tmp_path / "none\u202e.json").write_text("{}", encoding="utf-8")
    empty.open("records.html")
    empty.script(CATCH)
    empty.find("#records-in").send_keys("\n".join(str(path) for path in (*paths, tmp_path / "none\u202e.json")))
    empty.until(lambda: empty.find_all("[data-read] table"), "the table")
    assert r"none\u202e.json is no record" in empty.find(".records-told").text
    text = empty.find("[data-read]").text
    assert r"=A\u001b[1m\u202e door" in text
    assert "0 of 21" in text and "13-1/2" in text and "hold" in text.lower()
    empty.find("[data-read] button").click()
    told = empty.until(lambda: empty.script("return handedOut.at(-1)"), "the CSV")
    records = merged(Record.model_validate_json(path.read_text(encoding="utf-8")) for path in paths)
    wanted = csv_of(line for each in records for line in lines_of(each))
    assert told.lstrip("\ufeff") == wanted
    assert {row["procedure"] for row in csv.DictReader(io.StringIO(wanted))} == {
        "Set a toilet",
        "'=A\x1b[1m\u202e door",
    }
    empty.width(360)
    assert empty.sideways() <= 0


def test_work_that_comes_again_starts_afresh(empty: Window) -> None:
    """A second tap empties the entries of this place, also after a reload; another place keeps its own."""
    work(empty)
    other = OnSite(empty, "?job=")
    other.tick("open-box")
    other.wait_kept(4)
    page = OnSite(empty, JOB)
    empty.until(lambda: page.ticked() == ["open-box"], "the tick")
    page.press("The record")
    page.press("Start afresh")
    assert page.ticked() == ["open-box"]
    page.press("Yes, empty 3 entries")
    empty.until(lambda: page.ticked() == [], "no tick")
    page.reload()
    empty.until(lambda: "1 entry was made here before" in empty.find(".before-place").text, "nothing comes by itself")
    assert page.ticked() == []
    assert empty.find(f"#{MEASURED} .reading input").get_attribute("value") == ""
    assert "is-open" in str(empty.find(f"#{HELD} .hold").get_attribute("class"))
    assert {line.state for line in lines_of(Record.model_validate(page.record()))} == {"open", "missing"}
    assert OnSite(empty, "?job=").ticked() == ["open-box"]


def test_everything_on_this_device(empty: Window, tmp_path: Path) -> None:
    """A job leaves as one file, whatever procedures it has; another device shows and takes all of it."""
    work(empty)
    strip = OnSite(empty, JOB, "flooring/strip-floor-racking.html")
    strip.tick(strip.steps()[0])
    strip.wait_kept(4)
    loose = OnSite(empty, "?job=")
    loose.tick("open-box")
    loose.wait_kept(5)
    empty.open("records.html")
    here = empty.until(lambda: empty.find_all("[data-device] table") and empty.find("[data-device]"), "what lies here")
    assert [head.text for head in here.find_elements("css selector", "h3")] == ["Garden studio", "No job chosen"]
    assert "1 of 21" in here.text and "13-1/2" in here.text
    link = here.find_element("link text", "Set a toilet").get_attribute("href")
    assert str(link).endswith("plumbing/toilet-set.html?job=garden-studio&space=bath")
    empty.script(CATCH)
    press(here, "Take this job out")
    text = empty.until(lambda: empty.script("return handedOut.at(-1)"), "the file")
    assert [record.procedure.id for record in records_in(text.encode())] == ["strip-floor-racking", "toilet-set"]
    press(here, "Take everything out")
    empty.until(lambda: empty.script("return handedOut.length") == 2, "all of it")
    assert len(records_in(str(empty.script("return handedOut.at(-1)")).encode())) == 3
    file = tmp_path / "job.json"
    file.write_text(text, encoding="utf-8")
    forget_all(empty.driver, empty.address)
    page = OnSite(empty, JOB)
    page.press("The record")
    empty.until(lambda: empty.find_all("#record-in"), "the way in").pop().send_keys(str(file))
    page.wait_kept(4)
    empty.open("records.html")
    empty.until(lambda: "1 of 21" in empty.find("[data-device]").text, "what came")
    assert "Rack" in empty.find("[data-device]").text
    empty.width(360)
    assert empty.sideways() <= 0


def test_a_device_with_nothing_says_so(empty: Window) -> None:
    """Nothing was entered yet."""
    empty.open("records.html")
    empty.until(lambda: "Nothing was entered" in empty.find("[data-device]").text, "the words")


def press(box: WebElement, words: str) -> None:
    """Press the button of that name in a box."""
    next(one for one in box.find_elements("css selector", "button") if one.text == words).click()


def test_the_record_on_paper(empty: Window) -> None:
    """Printed, the record stands alone: the entries, and none of the page around it."""
    page = work(empty)
    page.press("The record")
    empty.script("window.print = () => {}")
    page.press("Print the record")
    empty.until(lambda: empty.find_all(".record-sheet"), "the sheet")
    pdf = empty.driver.execute_cdp_cmd("Page.printToPDF", {"paperWidth": 8.5, "paperHeight": 11})["data"]
    text = " ".join(sheet.extract_text() for sheet in PdfReader(BytesIO(base64.b64decode(pdf))).pages)
    words = " ".join(text.split())
    assert "Tobin Reyes" in words and "13-1/2" in words and "outside" in words
    assert "Tools" not in words and "Key points" not in words
