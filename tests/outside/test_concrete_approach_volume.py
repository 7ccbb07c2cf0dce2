"""The approach's area, volume, forms and bars against shapely, scipy and numpy, and against published tables."""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest
from scipy.integrate import dblquad
from shapely.geometry import LineString, Polygon

from calculators.concrete.approach_concrete import approach_concrete
from calculators.declaration import Answer
from calculators.run import run

STANDARD: dict[str, Any] = {one.name: one.default for one in approach_concrete.inputs}
PLAIN: dict[str, Any] = {"side": "none", "slope": 0.0, "edge_width": 0.0, "edge_taper": 0.0}
APPROACHES: list[dict[str, Any]] = [
    {},
    {"side": "none"},
    {"side": "wing", "left": 48, "right": 36, "slope": 0.06, "curb_height": 7, "lip": 0.5},
    {"throat": 240, "depth": 108, "left": 36, "right": 84, "thickness": 8, "edge_thickness": 11, "edge_taper": 30},
    {"throat": 110, "depth": 50, "left": 0, "right": 60, "slope": 0.12, "edge_width": 40, "edge_taper": 0},
]


def approach(**changes: Any) -> Answer:
    """The answer for the standard inputs with these changes."""
    return run(approach_concrete, changes)


def corners(given: dict[str, Any]) -> list[tuple[float, float, float]]:
    """The top of the approach, counter-clockwise from the curb, left: x along the curb, y from the curb, height."""
    out_left, out_right = (0.0, 0.0) if given["side"] == "none" else (given["left"], given["right"])
    far = given["lip"] + given["slope"] * given["depth"]
    top = given["curb_height"]
    back_left, back_right = (out_left, out_right) if given["side"] == "wing" else (0.0, 0.0)
    back_top = top + given["slope"] * given["depth"]
    points: list[tuple[float, float, float]] = []
    if out_left > 0:
        points.append((-out_left, 0, top))
    points += [(0, 0, given["lip"]), (given["throat"], 0, given["lip"])]
    if out_right > 0:
        points.append((given["throat"] + out_right, 0, top))
    if back_right > 0:
        points.append((given["throat"] + back_right, given["depth"], back_top))
    points += [(given["throat"], given["depth"], far), (0, given["depth"], far)]
    if back_left > 0:
        points.append((-back_left, given["depth"], back_top))
    return points


def plan(given: dict[str, Any]) -> Polygon:
    """The approach seen from above."""
    return Polygon([(x, y) for x, y, _ in corners(given)])


def secant(*points: tuple[float, float, float]) -> float:
    """How much longer a plumb line through a sloping slab is than its thickness, by the plane's normal."""
    one, two, three = (np.array(point, dtype=float) for point in points)
    normal = np.cross(two - one, three - one)
    return float(np.linalg.norm(normal) / abs(normal[2]))


@pytest.mark.parametrize("changes", APPROACHES)
def test_shapely_finds_the_same_area(changes: dict[str, Any]) -> None:
    """The general geometry library shapely 2: the polygon's area in sq ft."""
    assert approach(**changes)["area"] == pytest.approx(plan(STANDARD | changes).area / 144)


@pytest.mark.parametrize("changes", APPROACHES)
def test_scipy_integrates_the_same_volume(changes: dict[str, Any]) -> None:
    """The general library scipy: the plumb depth of the concrete, integrated over the plan piece by piece."""
    given = STANDARD | changes
    throat, depth, lip, top = given["throat"], given["depth"], given["lip"], given["curb_height"]
    left, right = (0, 0) if given["side"] == "none" else (given["left"], given["right"])
    far = lip + given["slope"] * depth
    keeps = 1 if given["side"] == "wing" else 0
    flat, taper, extra = given["edge_width"], given["edge_taper"], given["edge_thickness"] - given["thickness"]

    def thick(y: float) -> float:
        return float(np.interp(y, [0, flat, flat + taper], [extra, extra, 0 if taper > 0 else extra]))

    def reach(width: float, y: float) -> float:
        return width if keeps else width * (1 - y / depth)

    pieces = [(secant((0, 0, lip), (throat, 0, lip), (0, depth, far)), lambda y: 0.0, lambda y: throat)]
    if left > 0:
        slab = secant((0, 0, lip), (0, depth, far), (-left, 0, top))
        pieces.append((slab, lambda y: -reach(left, y), lambda y: 0.0))
    if right > 0:
        slab = secant((throat, 0, lip), (throat, depth, far), (throat + right, 0, top))
        pieces.append((slab, lambda y: throat, lambda y: throat + reach(right, y)))
    total = 0.0
    for slab, start, end in pieces:
        plumb = slab * given["thickness"]
        total += dblquad(lambda x, y, p=plumb: p + thick(y), 0, flat, start, end)[0]
        total += dblquad(lambda x, y, p=plumb: p + thick(y), flat, flat + taper, start, end)[0]
        total += dblquad(lambda x, y, p=plumb: p, flat + taper, depth, start, end)[0]
    assert approach(**changes)["concrete"] == pytest.approx(total / 1728, rel=1e-7)


@pytest.mark.parametrize("changes", APPROACHES)
def test_forms_measure_the_edges_in_space(changes: dict[str, Any]) -> None:
    """numpy: distances between the corners of the top, all four sides formed."""
    points = [np.array(point) for point in corners(STANDARD | changes)]
    around = sum(float(np.linalg.norm(b - a)) for a, b in zip(points, points[1:] + points[:1], strict=True))
    assert approach(**changes, form_curb=True, form_walk=True)["forms"] == pytest.approx(around)


@pytest.mark.parametrize("changes", [case for case in APPROACHES if "throat" not in case])
def test_bars_lie_in_the_plan(changes: dict[str, Any]) -> None:
    """shapely: a grid of lines cut by the plan, each shorter by the cover at both ends; nothing here is lapped."""
    given = STANDARD | changes | {"left": 36, "right": 36}
    outline = plan(given)
    cover, spacing = given["bar_cover"], given["bar_spacing"]
    west, _, east, north = outline.bounds
    total = 0.0
    for at in np.linspace(cover, north - cover, int(np.ceil((north - 2 * cover) / spacing)) + 1):
        total += max(0.0, outline.intersection(LineString([(west - 1, at), (east + 1, at)])).length - 2 * cover)
    for at in np.linspace(west + cover, east - cover, int(np.ceil((east - west - 2 * cover) / spacing)) + 1):
        total += max(0.0, outline.intersection(LineString([(at, -1), (at, north + 1)])).length - 2 * cover)
    assert approach(**(changes | {"left": 36, "right": 36}), reinforced=True)["bars"] == pytest.approx(total)


@pytest.mark.parametrize(
    ("thickness", "area"),
    [(3, 108), (4, 81), (5, 65), (6, 54), (7, 46.3), (8, 40.5), (9, 36), (10, 32.4), (11, 29.5), (12, 27)],
)
def test_area_that_a_yard_covers(thickness: float, area: float) -> None:
    """Concrete handbook table: square feet covered by one cubic yard, printed to about 0.3 sq ft."""
    answer = approach(**PLAIN, thickness=thickness, edge_thickness=thickness)
    assert answer["area"] / (answer["concrete"] / 27) == pytest.approx(area, abs=0.3)


@pytest.mark.parametrize(
    ("thickness", "yards"),
    [(3, 0.9259), (4, 1.2346), (5, 1.5432), (6, 1.8519), (8, 2.4691), (10, 3.0864), (12, 3.7037)],
)
def test_yards_a_hundred_square_feet(thickness: float, yards: float) -> None:
    """100 t / 324, worked by hand; tables print two decimals."""
    answer = approach(**PLAIN, throat=120, depth=120, thickness=thickness, edge_thickness=thickness)
    assert answer["concrete"] / 27 == pytest.approx(yards, abs=1e-4)


@pytest.mark.parametrize("waste", [5, 6, 7])
def test_a_suppliers_worked_example(waste: float) -> None:
    """A ready-mix supplier's example: 16 x 20 ft, 4 in: 106.667 cu ft, 3.95 cu yd; order 4-1/4 in quarter yards."""
    answer = approach(**PLAIN, throat=240, depth=192, thickness=4, edge_thickness=4, waste=waste)
    assert answer["concrete"] == pytest.approx(106.667, abs=0.001)
    assert answer["concrete"] / 27 == pytest.approx(3.95, abs=0.005)
    assert answer["weight"] == pytest.approx(4.25 * 4050)


def test_forty_five_bags_a_yard() -> None:
    """The print on 80 lb bags: 0.60 cu ft each (from memory, and quoted all over)."""
    answer = approach(**PLAIN, throat=108, depth=36, thickness=12, edge_thickness=12, waste=0)
    assert answer["concrete"] == pytest.approx(27)
    assert answer["bags"] == pytest.approx(45)


def test_base_weighs_what_the_road_department_prints() -> None:
    """WSDOT Design Manual M 22-01, Exhibit 620-1: crushed base 2,950 lb a yard in the truck, 3,700 lb compacted."""
    answer = approach(**PLAIN, throat=120, depth=120, base_thickness=4, base_beyond=0)
    assert answer["base"] / 27 == pytest.approx(1.235, abs=0.001)
    assert answer["base_tons"] == pytest.approx(answer["base"] / 27 * 3700, rel=0.005)


def test_base_by_the_round_factor() -> None:
    """1.5 short tons a yard, the common factor between 1.4 and 1.6 (from memory): 100 sq ft x 4 in is 1.85 tons."""
    answer = approach(**PLAIN, throat=120, depth=120, base_thickness=4, base_beyond=0, base_loose=0, base_weight=3000)
    assert answer["base_tons"] / 2000 == pytest.approx(1.85, abs=0.005)
