"""A small job in a copy of the book, for tests of what is printed and shown."""

from __future__ import annotations

from pathlib import Path

from tests.builds import change, copy_book

TWO_ROOMS = """\
title: Two rooms
summary: A floor that is coated once more, a toilet, a lock and the alarms.
start: 2026-12-07
deadline: 2026-12-11
dwellings:
  flat: {title: Flat}
spaces:
  room: {title: Room, dwelling: flat, length: 14', width: 12', crews: 2}
  bath: {title: Bath, dwelling: flat, length: 8', width: 5', reached_through: [room]}
openings:
  front: {title: Front door, space: room}
people:
  - {person: tobin-reyes, rate: 40 dollars}
  - {person: wren-okafor, rate: 20 dollars}
already_done:
  - {procedure: circuits-proved-dead}
money: {budget: 2000 dollars}
tasks:
  recoat:
    procedure: floor-recoat
    space: room
    inputs: {floor-finish: {rooms: 'space:rooms'}}
    serves: {doors: '1'}
  stops: {procedure: supply-stops, space: bath, count: 3}
  toilet: {procedure: toilet-set, space: bath, inputs: {wax-ring: {rise: 1/4 in flange above floor}}}
  lock:
    procedure: lockset-install
    space: room
    opening: front
    inputs: {lock-schedule: {openings: [{opening: front, use: outside-door}]}}
  alarms:
    procedure: alarm-places
    space: room
    inputs: {alarm-places: {storeys: '1', sleeping_rooms: '2', sleeping_areas: '1', fuel: 'yes', garage: 'no'}}
    after: [recoat]
variants:
  floor-last:
    title: Coat the floor last
    why: The rooms are in use until then.
    tasks:
      - {task: alarms, after: []}
      - {task: recoat, after: [toilet, stops, lock, alarms], not_before: 2026-12-08}
  other-hands:
    title: Ida in place of Wren, and Saturday
    why: Wren may be wanted elsewhere.
    without: [wren-okafor]
    more_people: [{person: ida-marsh}]
    more_days: [saturday]
    tasks: [{task: alarms, people: 1}]
"""


PATCHES = """\
  trips:
    patch:
      title: test patches
      part: 20 %
    coat:
      title: screen and coat
      part: 80 %
      wait: value:recoat-test-wait
"""


def two_rooms(folder: Path, deadline: str = "2026-12-11") -> Path:
    """A copy of the book in that folder with this job alone, to be handed over on that day.

    The floor is recoated in one go: the job is worked out by hand.
    """
    book = copy_book(folder)
    change(book / "flooring" / "floor-recoat.yaml", PATCHES, "")
    for file in (book / "jobs").glob("*.yaml"):
        file.unlink()
    file = book / "jobs" / "two-rooms.yaml"
    file.write_text(TWO_ROOMS, encoding="utf-8")
    change(file, "deadline: 2026-12-11", f"deadline: {deadline}")
    return book
