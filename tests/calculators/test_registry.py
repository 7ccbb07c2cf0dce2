"""The registry finds every calculator, once."""

from __future__ import annotations

import sys
from pathlib import Path

import pytest

import calculators
from calculators.registry import CALCULATORS, find

MODULE = """
from calculators.declaration import CREW_RULE, Answer, Output
from calculators.declaring import calculator


@calculator(
    title="Invented", summary="", outputs=(Output("out", "Out", "count"),), formula="", sources=(CREW_RULE,), example={}
)
def invented() -> Answer:
    return {"out": 0, "cautions": [], "working": []}
"""


@pytest.fixture
def trades(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder of trades that stands in for the one of the package."""
    monkeypatch.setattr(calculators, "__path__", [str(tmp_path)])
    for name in [name for name in sys.modules if name.startswith("calculators.invented")]:
        monkeypatch.delitem(sys.modules, name)
    return tmp_path


def add(trades: Path, file: str, text: str) -> None:
    """A module below the folder of trades."""
    path = trades / file
    path.parent.mkdir(exist_ok=True)
    (path.parent / "__init__.py").write_text("", encoding="utf-8")
    path.write_text(text, encoding="utf-8")


def test_every_calculator_module_is_found_in_the_order_of_names() -> None:
    here = Path(calculators.__file__).parent
    modules = [path for path in here.glob("*/*.py") if "\n@calculator(" in path.read_text(encoding="utf-8")]
    assert len(CALCULATORS) == len(modules) > 0
    assert {name.replace("-", "_") for name in CALCULATORS} == {path.stem for path in modules}
    assert list(CALCULATORS) == sorted(CALCULATORS)
    assert all(name == calculator.name for name, calculator in CALCULATORS.items())


def test_a_module_with_a_calculator_is_one(trades: Path) -> None:
    add(trades, "invented_a/one.py", MODULE)
    add(trades, "invented_a/helpers.py", "X = 1\n")
    assert list(find()) == ["invented"]


def test_two_with_one_name_stop_the_import(trades: Path) -> None:
    add(trades, "invented_b/one.py", MODULE)
    add(trades, "invented_b/two.py", MODULE)
    with pytest.raises(ValueError, match=r"two calculators 'invented': calculators\.invented_b\.one and .*\.two"):
        find()


def test_a_calculator_that_another_module_imports_is_still_one(trades: Path) -> None:
    add(trades, "invented_c/one.py", MODULE)
    add(trades, "invented_c/two.py", "from calculators.invented_c.one import invented\n")
    assert [(name, each.trade) for name, each in find().items()] == [("invented", "invented_c")]
