"""A reader of QR codes, written from ISO/IEC 18004 and knowing nothing of what drew them.

It takes the drawing as a camera would: light and dark squares, the quiet zone, the three finder patterns, and from
there the text. Versions 1 to 6 in byte mode, which is what an address needs; a damaged code is refused, not mended.
"""

from __future__ import annotations

import re
from itertools import pairwise

Modules = list[list[bool]]
"""Rows of modules, dark ones true."""

LEVELS = {0b01: "L", 0b00: "M", 0b11: "Q", 0b10: "H"}
"""Table 12: the level of error correction, as it stands in the format information."""
BLOCKS = {
    1: {"L": (7, [19]), "M": (10, [16]), "Q": (13, [13]), "H": (17, [9])},
    2: {"L": (10, [34]), "M": (16, [28]), "Q": (22, [22]), "H": (28, [16])},
    3: {"L": (15, [55]), "M": (26, [44]), "Q": (18, [17] * 2), "H": (22, [13] * 2)},
    4: {"L": (20, [80]), "M": (18, [32] * 2), "Q": (26, [24] * 2), "H": (16, [9] * 4)},
    5: {"L": (26, [108]), "M": (24, [43] * 2), "Q": (18, [15, 15, 16, 16]), "H": (22, [11, 11, 12, 12])},
    6: {"L": (18, [68] * 2), "M": (16, [27] * 4), "Q": (24, [19] * 4), "H": (28, [15] * 4)},
}
"""Table 9: for each version and level the words of correction in a block, and the words of data in each block."""
FINDER = ["1111111", "1000001", "1011101", "1011101", "1011101", "1000001", "1111111"]
QUIET = 4


def modules_of(svg: str) -> Modules:
    """The squares of a drawing without its quiet zone, which must be there and light.

    A drawing of unit boxes: a light box over all, then dark runs (``M x y h n v1 h -n z``).
    """
    box = re.search(r'viewBox="0 0 (\d+) (\d+)"', svg)
    assert box is not None and box[1] == box[2], "not a square"
    side = int(box[1])
    light, dark = re.findall(r'<path fill="(#[0-9a-f]+)" d="([^"]+)"', svg)
    assert light == ("#fff", f"M0 0h{side}v{side}H0z") and dark[0] == "#000"
    drawn = [[False] * side for _ in range(side)]
    for x, y, length in re.findall(r"M(\d+) (\d+)h(\d+)v1h-\3z", dark[1]):
        for step in range(int(length)):
            drawn[int(y)][int(x) + step] = True
    edge = range(QUIET)
    for n in (*edge, *(side - 1 - m for m in edge)):
        assert not any(drawn[n]) and not any(row[n] for row in drawn), "the quiet zone is not light"
    return [row[QUIET : side - QUIET] for row in drawn[QUIET : side - QUIET]]


def read_qr(modules: Modules) -> str:
    """The text of a code."""
    words = data_words(modules)
    bits = "".join(f"{word:08b}" for word in words)
    assert bits[:4] == "0100", "not in byte mode"
    count = int(bits[4:12], 2)
    end = 12 + 8 * count
    assert bits[end : end + 4].strip("0") == "", "no end after the text"
    return bytes(int(bits[at : at + 8], 2) for at in range(12, end, 8)).decode("utf-8")


def data_words(modules: Modules) -> list[int]:
    """The words of data, after the patterns, the format and the words of correction were found right."""
    side = len(modules)
    version, rest = divmod(side - 17, 4)
    assert rest == 0 and version in BLOCKS, f"{side} modules a side"
    _patterns(modules)
    level, mask = _format(modules)
    correction, blocks = BLOCKS[version][level]
    words = _words(modules, version, mask)
    total = sum(blocks) + correction * len(blocks)
    assert total <= len(words) <= total + 1
    made: list[list[int]] = [[] for _ in blocks]
    stream = iter(words)
    for n in range(max(blocks)):
        for block, size in zip(made, blocks, strict=True):
            if n < size:
                block.append(next(stream))
    data = [word for block in made for word in block]
    for _ in range(correction):
        for block in made:
            block.append(next(stream))
    for block in made:
        assert _syndromes(block, correction) == [0] * correction, "a block is not whole"
    return data


def _patterns(modules: Modules) -> None:
    """The three finder patterns with the light line around each, and the two timing patterns."""
    side = len(modules)
    for top, left in ((0, 0), (0, side - 7), (side - 7, 0)):
        found = ["".join("01"[modules[top + y][left + x]] for x in range(7)) for y in range(7)]
        assert found == FINDER, f"no finder pattern at {left}, {top}"
    for n in range(8):
        around = (modules[7][n], modules[n][7], modules[7][side - 1 - n], modules[n][side - 8])
        assert not any((*around, modules[side - 8][n], modules[side - 1 - n][7])), "no separator"
    for line in (modules[6][8 : side - 8], [row[6] for row in modules[8 : side - 8]]):
        assert all(a != b for a, b in pairwise(line)), "no timing pattern"


def _format(modules: Modules) -> tuple[str, int]:
    """The level and the mask, from both copies of the format information, which is a (15, 5) BCH code."""
    side = len(modules)
    first = [(8, x) for x in (0, 1, 2, 3, 4, 5, 7, 8)] + [(y, 8) for y in (7, 5, 4, 3, 2, 1, 0)]
    second = [(side - 1 - n, 8) for n in range(7)] + [(8, side - 8 + n) for n in range(8)]
    one, other = (int("".join("01"[modules[y][x]] for y, x in places), 2) for places in (first, second))
    assert one == other and modules[side - 8][8], "the two copies of the format differ"
    value = one ^ 0b101010000010010
    left = value
    for shift in range(4, -1, -1):
        if left >> (shift + 10) & 1:
            left ^= 0b10100110111 << shift
    assert left == 0, "the format is damaged"
    return LEVELS[value >> 13], value >> 10 & 0b111


def _masked(mask: int, y: int, x: int) -> bool:
    """Table 10: whether a mask turns a module over."""
    return [
        (y + x) % 2,
        y % 2,
        x % 3,
        (y + x) % 3,
        (y // 2 + x // 3) % 2,
        y * x % 2 + y * x % 3,
        (y * x % 2 + y * x % 3) % 2,
        ((y + x) % 2 + y * x % 3) % 2,
    ][mask] == 0


def _words(modules: Modules, version: int, mask: int) -> list[int]:
    """The words in the order in which they stand: two columns at a time from the right, up and down."""
    side = len(modules)
    bits = []
    upwards = True
    right = side - 1
    while right > 0:
        right -= right == 6  # the timing pattern has its column to itself
        for n in range(side):
            y = side - 1 - n if upwards else n
            bits += [modules[y][x] ^ _masked(mask, y, x) for x in (right, right - 1) if not _fixed(side, version, y, x)]
        upwards = not upwards
        right -= 2
    return [int("".join("01"[bit] for bit in bits[at : at + 8]), 2) for at in range(0, len(bits) - 7, 8)]


def _fixed(side: int, version: int, y: int, x: int) -> bool:
    """Whether a module belongs to a pattern or to the format."""
    corner = (y < 9 and (x < 9 or x >= side - 8)) or (y >= side - 8 and x < 9)
    middle = side - 7
    aligned = version > 1 and abs(y - middle) <= 2 and abs(x - middle) <= 2
    return corner or aligned or 6 in (x, y)


def _syndromes(block: list[int], count: int) -> list[int]:
    """The values of a block, as a polynomial over GF(256), at the roots of its generator: noughts where it is whole."""
    found = []
    for power in range(count):
        total = 0
        for word in block:
            total = _times(total, _power(power)) ^ word
        found.append(total)
    return found


def _power(exponent: int) -> int:
    value = 1
    for _ in range(exponent):
        value = _times(value, 2)
    return value


def _times(a: int, b: int) -> int:
    """A product in GF(256), reduced by the standard's polynomial 100011101."""
    product = 0
    while b:
        if b & 1:
            product ^= a
        a <<= 1
        if a & 0x100:
            a ^= 0b100011101
        b >>= 1
    return product
