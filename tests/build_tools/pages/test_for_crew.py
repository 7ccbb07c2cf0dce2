"""The crew's site holds no price, rate, budget or private note: every byte of it is searched for sentinels."""

from __future__ import annotations

import io
import os
import subprocess
import sys
import zipfile
from collections.abc import Iterator
from functools import partial
from pathlib import Path

import pytest

from build_tools.commands.site import QUIET, settings_for
from build_tools.environment import ROOT
from tests.builds import copy_book
from tests.once import once

BUDGET, RATE, USUAL, PRICE, RENT = 7319191, 91351, 91367, 8641973, 8641987
SECRETS = {"budget": BUDGET, "rate": RATE, "usual rate": USUAL, "price": PRICE, "rent": RENT}
WORDS = ("zanzibarlike", "quokkaesque", "dollarettes")
JOB = f"""
title: Shed
summary: One room.
start: 2026-12-07
deadline: 2026-12-31
dwellings: {{shed: {{title: Shed}}}}
spaces:
  room: {{title: Room, dwelling: shed, length: 10', width: 8', measures: {{turned-rows: '0', lower-doorways: '0'}}}}
people:
  - {{person: tobin-reyes, rate: {RATE} dollarettes, note: He is zanzibarlike.}}
  - {{person: wren-okafor}}
already_done: [{{procedure: subfloor-preparation}}, {{procedure: flooring-receiving}}]
prices:
  - {{material: floor-cleats, price: {PRICE} dollarettes, lead_time: 2 days}}
  - {{tool: floor-nailer, price: {RENT} dollarettes}}
money: {{budget: {BUDGET} dollarettes, labour_rate: {USUAL} dollarettes}}
private_note: The bank is quokkaesque.
tasks:
  rack: {{procedure: strip-floor-racking, space: room}}
  nail:
    procedure: floor-nailing
    space: room
    note: Start at the long wall.
    inputs: {{strip-floor-take-off: {{rooms: 'space:rooms'}}}}
variants:
  more: {{title: More, why: To see., more_people: [{{person: ansel-brook, rate: {RATE} dollarettes}}]}}
"""


COMMANDS = {"owner": ["mkdocs", "build", "--quiet"], "crew": ["build_tools", "build", "--for", "crew"]}


@pytest.fixture(scope="module")
def sites(run_folder: Path, kept: Path) -> dict[str, Path]:
    """The sites of a book with one job, for the owner (by MkDocs alone) and for the crew, from a folder of its own."""
    folder = once(run_folder / "crew", partial(build_both, kept))
    return {reader: folder / reader / "site" for reader in COMMANDS}


def build_both(kept: Path, folder: Path) -> None:
    """Build both sites of that book."""
    folder.mkdir()
    book = copy_book(folder)
    for file in (book / "jobs").glob("*.yaml"):
        file.unlink()
    (book / "jobs" / "shed.yaml").write_text(JOB, encoding="utf-8")
    for reader, command in COMMANDS.items():
        place = folder / reader
        place.mkdir()
        (place / ".cache").symlink_to(kept)
        settings_for(book, place, today="2026-12-01")
        env = {**os.environ, **QUIET, "PYTHONPATH": str(ROOT)}
        ran = subprocess.run(
            [sys.executable, "-m", *command], cwd=place, env=env, capture_output=True, text=True, check=False
        )
        assert ran.returncode == 0, ran.stdout + ran.stderr
        assert "WARNING" not in ran.stderr


def contents(site: Path) -> Iterator[tuple[str, bytes]]:
    """Every file of a site with its bytes; of a packed one also those of what is inside."""
    for path in sorted(site.rglob("*")):
        if path.is_file():
            data = path.read_bytes()
            name = str(path.relative_to(site))
            yield name, data
            if zipfile.is_zipfile(io.BytesIO(data)):
                with zipfile.ZipFile(io.BytesIO(data)) as packed:
                    for inner in packed.namelist():
                        yield f"{name}: {inner}", packed.read(inner)


def spellings(number: int) -> list[bytes]:
    """A figure plain and in threes."""
    return [str(number).encode(), f"{number:,}".encode()]


SENTINELS = [spelling for number in SECRETS.values() for spelling in spellings(number)] + [
    word.encode() for word in WORDS
]


def test_no_byte_of_the_crews_site_holds_money_or_a_private_note(sites: dict[str, Path]) -> None:
    held = [(name, secret) for name, data in contents(sites["crew"]) for secret in SENTINELS if secret in data]
    assert held == []


def test_the_crew_has_no_page_of_the_cost_and_no_word_of_it(sites: dict[str, Path]) -> None:
    assert not (sites["crew"] / "jobs" / "shed" / "cost.html").exists()
    assert [name for name, data in contents(sites["crew"]) if b"cost.html" in data] == []


def test_the_crew_has_the_rest_of_the_job(sites: dict[str, Path]) -> None:
    crew, owner = ({name for name, _ in contents(sites[reader]) if "jobs/" in name} for reader in ("crew", "owner"))
    assert owner - crew == {"jobs/shed/cost.html"}
    assert crew


def test_the_owners_site_holds_what_is_looked_for(sites: dict[str, Path]) -> None:
    """So that the search above would find it; and MkDocs by itself makes the owner's site."""
    page = (sites["owner"] / "jobs" / "shed" / "cost.html").read_text(encoding="utf-8")
    for secret in (BUDGET, RATE, USUAL, PRICE, RENT):
        assert any(spelling.decode() in page for spelling in spellings(secret)), secret
    assert "quokkaesque" in page
