"""The calculator that DEVELOPERS.md shows a newcomer works as it stands there."""

from __future__ import annotations

import doctest
import textwrap
from pathlib import Path
from typing import Any

from calculators.declaration import Calculator
from calculators.run import compute, shown

GUIDE = Path(__file__).parents[2] / "DEVELOPERS.md"


def test_the_calculator_of_the_guide_works() -> None:
    section = GUIDE.read_text(encoding="utf-8").partition("## Your first calculator")[2].partition("\n## ")[0]
    code = textwrap.dedent(section.partition("```python\n")[2].partition("   ```\n")[0])
    names: dict[str, Any] = {"__name__": "calculators.house.wall_paint"}
    exec(compile(code, str(GUIDE), "exec"), names)
    paint = names["wall_paint"]
    assert isinstance(paint, Calculator)
    assert (paint.name, paint.trade) == ("wall-paint", "house")
    assert shown(paint, compute(paint, {"wall": "300 sq ft"})) == {"paint": "1.75 gal"}
    assert shown(paint, compute(paint, paint.example))
    example = doctest.DocTestParser().get_doctest(str(paint.__doc__), names, "wall_paint", str(GUIDE), 0)
    assert doctest.DocTestRunner().run(example).failed == 0
