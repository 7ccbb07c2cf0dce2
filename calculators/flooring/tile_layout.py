"""How tiles fall across a room: full ones, and the cuts at the walls. Lengths in inches."""

from __future__ import annotations

from calculators.writing import whole

NOISE = 1e-6
Fall = dict[str, float]


def most_full(room: float, tile: float, joint: float) -> int:
    """Whole tiles with joints between them that go into the room.

    >>> most_full(60.0, 12.0, 0.125), most_full(60.5, 12.0, 0.125)
    (4, 5)
    """
    return whole((room + joint) / (tile + joint) + NOISE, "down")


def fall(full: float, first: float, last: float, gap: float) -> Fall:
    """One way across: full tiles, the first and the last cut (0 for none), the space at each wall."""
    pieces = full + (1 if first > 0 else 0) + (1 if last > 0 else 0)
    return {"full": full, "first": first, "last": last, "gap": gap, "pieces": pieces}


def balanced(room: float, tile: float, joint: float, gap: float) -> Fall:
    """The two cuts alike and no narrower than half a tile: a joint or a tile stands on the middle of the room.

    One full tile fewer than would fit is laid, and what is left with it is halved. Where full tiles leave no more than
    a joint, there are no cuts and the gaps at the walls take that little. Needs room for a tile and a joint.

    >>> balanced(89.5, 12.0, 0.125, 0.25)["full"], balanced(89.5, 12.0, 0.125, 0.25)["first"]
    (6, 8.0625)
    >>> balanced(97.45, 12.0, 0.125, 0.25)["pieces"], round(balanced(97.45, 12.0, 0.125, 0.25)["gap"], 4)
    (8, 0.2875)
    """
    inside = room - 2 * gap
    full = most_full(inside, tile, joint)
    left = inside - (full * (tile + joint) - joint)
    if left <= joint + NOISE:
        return fall(full, 0.0, 0.0, gap + left / 2)
    cut = (left + tile - joint) / 2
    return fall(full - 1, cut, cut, gap)


def full_at_start(room: float, tile: float, joint: float, gap: float) -> Fall:
    """A full tile at the doorway, and what is left at the far wall.

    >>> full_at_start(89.5, 12.0, 0.125, 0.25)["full"], full_at_start(89.5, 12.0, 0.125, 0.25)["last"]
    (7, 4.125)
    """
    inside = room - 2 * gap
    full = most_full(inside, tile, joint)
    left = inside - full * (tile + joint)
    return fall(full, 0.0, 0.0, gap + (left + joint) / 2) if left <= NOISE else fall(full, 0.0, left, gap)


def positions(one: Fall, tile: float, joint: float, count: float) -> list[float]:
    """Where tiles begin and end, from the wall: begin, end, begin, end. Of many, the first and the last `count`.

    >>> positions(balanced(38.75, 12.0, 0.125, 0.25), 12.0, 0.125, 50)
    [0.25, 7.1875, 7.3125, 19.3125, 19.4375, 31.4375, 31.5625, 38.5]
    """
    found = []
    at = one["gap"]
    pieces = one["pieces"]
    for i in range(whole(pieces, "nearest")):
        wide = tile
        if i == 0 and one["first"] > 0:
            wide = one["first"]
        if i == pieces - 1 and one["last"] > 0:
            wide = one["last"]
        if i < count or i >= pieces - count:
            found.append(at)
            found.append(at + wide)
        at = at + wide + joint
    return found
