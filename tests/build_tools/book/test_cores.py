"""Work shared out among cores: every item once, nothing lost that cannot be done later."""

from __future__ import annotations

import os
import shutil
from pathlib import Path

from build_tools.book.cores import FEW, beside, shared_out
from build_tools.book.load import load_book
from tests.builds import SMALL

ITEMS = list(range(3 * FEW))


def _squared(number: int) -> int:
    return number * number


def test_every_item_is_worked_once() -> None:
    assert sorted(shared_out(_squared, ITEMS)) in ([_squared(number) for number in ITEMS], [])


def test_few_items_are_left_to_be_done_later() -> None:
    assert shared_out(_squared, ITEMS[: FEW - 1]) == []


def test_a_process_that_dies_leaves_its_items_out() -> None:
    """Its results are missing, and those of this process are there."""
    here = os.getpid()

    def works_here_alone(number: int) -> int:
        if os.getpid() != here:
            os._exit(1)
        return number

    assert set(shared_out(works_here_alone, ITEMS)) <= set(ITEMS)


def test_a_book_read_on_every_core_is_the_book_read_alone(tmp_path: Path) -> None:
    shutil.copytree(SMALL, tmp_path / "small")
    (written,) = (tmp_path / "small/plumbing").glob("set-bowl.yaml")
    for number in range(2 * FEW):
        shutil.copy(written, written.with_name(f"set-bowl-{number}.yaml"))
    wrong = written.with_name("set-bowl-7.yaml")
    wrong.write_text("title: a\ntitle: b\n", encoding="utf-8")
    loaded = load_book(tmp_path / "small")
    alone = load_book(written.parent.parent).book.procedures["set-bowl"]
    assert len(loaded.book.procedures) >= 2 * FEW - 1
    assert all(entry.item == alone.item for id, entry in loaded.book.procedures.items() if id.startswith("set-bowl-"))
    (problem,) = loaded.problems
    assert str(problem).startswith("small/plumbing/set-bowl-7.yaml:2:1: error: 'title' is written twice")


def test_work_beside_is_done_when_the_block_ends(tmp_path: Path) -> None:
    """What a process beside this one leaves behind is there afterwards."""
    left = tmp_path / "left.txt"
    with beside(lambda: left.write_text("done", encoding="utf-8")):
        pass
    assert left.read_text(encoding="utf-8") == "done"
