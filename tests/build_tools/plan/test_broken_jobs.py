"""Every mistake of a job file: one change to a good job, and the exact lines that must come out of it.

``small/`` is a good book with one job, ``broken_jobs.yaml`` the changes to the job, whole text compared.
"""

from __future__ import annotations

import random
import re
import shutil
from dataclasses import dataclass
from datetime import date
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest
import yaml
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from build_tools.book.checks import check
from build_tools.book.checks.context import Context
from build_tools.book.load import load_book
from build_tools.book.memo import Memo
from build_tools.plan.cache import plan_jobs

SMALL = Path(__file__).parent / "small"
JOB = "jobs/cabin.yaml"
TODAY = date(2026, 12, 9)


@dataclass(frozen=True)
class Case:
    """One mistake: in the job each text ``old`` becomes ``new``; ``expected`` are the diagnostics with their hints."""

    name: str
    changes: dict[str, str]
    expected: list[str]


def diagnostics_of(folder: Path) -> list[str]:
    """All that reading, checking and planning find, in the order in which a build tries them."""
    loaded = load_book(folder)
    context = Context.of(loaded.book, Memo(), {})
    found = {*loaded.diagnostics, *check(context)}
    if not any(diagnostic.severity == "error" for diagnostic in found):
        with TemporaryDirectory() as kept:
            found |= set(plan_jobs(context, TODAY, Path(kept))[1])
    assert all(diagnostic.line >= 1 and diagnostic.column >= 1 for diagnostic in found)
    return [str(diagnostic) for diagnostic in sorted(found)]


def broken(tmp_path: Path, changes: dict[str, str]) -> list[str]:
    """The diagnostics of the small book with changes in its job; paths are shown without the folder."""
    folder = Path(shutil.copytree(SMALL, tmp_path / "small"))
    text = (folder / JOB).read_text(encoding="utf-8")
    for old, new in changes.items():
        assert text.count(old) == 1, f"{old!r} stands {text.count(old)} times"
        text = text.replace(old, new)
    (folder / JOB).write_text(text, encoding="utf-8")
    return [diagnostic.removeprefix("small/") for diagnostic in diagnostics_of(folder)]


def test_the_small_job_is_good() -> None:
    """Without a change there is nothing to say, so that each case shows its own mistake alone."""
    assert diagnostics_of(SMALL) == []


CASES = [Case(**case) for case in yaml.safe_load((SMALL.parent / "broken_jobs.yaml").read_text(encoding="utf-8"))]


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.name)
def test_a_mistake_is_named_by_its_line(case: Case, tmp_path: Path) -> None:
    """The diagnostics are these and no others."""
    assert broken(tmp_path, case.changes) == case.expected


ODD = [
    "", "~", "0", "-1", "-3 h", "99999999999999999999", "1e400", "nan", "inf", "25:00", "1:48", "yes", "½ h", "٣ h",
    "2026-02-30", "0001-01-01", "9999-12-31", "2026-12-08", "{}", "[]", "[[[]]]", "[room, room]", "{room: room}",
    "room", "bath", "alda-fenn", "[alda-fenn]", "[hang]", "sand", "hang", "space:length", "space:area",
    "space:bath.rooms",
    "value:shut", "value:none", "8 h", "3 ft", "20 sq ft", "10000 days", "10000 h", "[saturday]", "Größe", "'\u202e'",
]  # fmt: skip
"""What somebody may write where something else is wanted."""
VALUE = re.compile(r"(?<=: )[^,{}\[\]\n]+|(?<=\[)[^,{}\[\]\n]+")


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A copy of the small book to break."""
    return Path(shutil.copytree(SMALL, tmp_path / "small"))


@pytest.mark.slow
@settings(max_examples=120, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(seed=st.integers(0, 2**32 - 1))
def test_no_odd_value_gives_a_traceback(folder: Path, seed: int) -> None:
    """Whatever stands at a place of the job, the answer is a list of diagnostics, or the job is planned."""
    chance = random.Random(seed)
    text = (SMALL / JOB).read_text(encoding="utf-8")
    for _ in range(chance.choice([1, 1, 2, 3])):
        place = chance.choice(list(VALUE.finditer(text)))
        text = text[: place.start()] + chance.choice(ODD) + text[place.end() :]
    (folder / JOB).write_text(text, encoding="utf-8")
    diagnostics_of(folder)


@pytest.mark.slow
@settings(max_examples=80, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(seed=st.integers(0, 2**32 - 1))
def test_no_broken_job_file_gives_a_traceback(folder: Path, seed: int) -> None:
    """Whatever is cut, doubled or put into the file, the answer is a list of diagnostics, or the job is planned."""
    chance = random.Random(seed)
    raw = bytearray((SMALL / JOB).read_bytes())
    for _ in range(chance.randint(1, 4)):
        at = chance.randrange(len(raw) + 1)
        match chance.randrange(4):
            case 0:
                del raw[at : at + chance.randint(1, 40)]
            case 1:
                raw[at:at] = chance.choice([b"\t", b": ", b"- ", b"\n", b"{", b"]", b"'", b"&a ", b"\xff", b"9", b"%"])
            case 2:
                raw[at:at] = raw[at : at + chance.randint(1, 60)]
            case _:
                lines = bytes(raw).split(b"\n")
                one, other = chance.randrange(len(lines)), chance.randrange(len(lines))
                lines[one], lines[other] = lines[other], lines[one]
                raw = bytearray(b"\n".join(lines))
    (folder / JOB).write_bytes(bytes(raw))
    diagnostics_of(folder)
