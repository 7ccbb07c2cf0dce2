"""The scripts of the site: what they hold, and that they are the same every time."""

from __future__ import annotations

import gzip
import json
import os
import re
import subprocess
import sys
from dataclasses import replace
from pathlib import Path

import pytest

from build_tools.book.checks.context import Context
from build_tools.book.load import load_book
from build_tools.book.memo import Memo
from build_tools.browser.compiler.bundle import Scripts, compile_calculators
from build_tools.browser.scripts import make_scripts, script_problems
from build_tools.commands.site import BOOK
from build_tools.environment import ROOT
from calculators.registry import CALCULATORS
from tests.browser_script.engine import LABEL, label
from tests.build_tools.browser.compiler.probe import Probe
from tests.script_engine import new_engine

PRINT = """
from build_tools.browser.compiler.bundle import compile_calculators
from calculators.registry import CALCULATORS
made = compile_calculators(CALCULATORS.values())
print(repr((made.core, made.draw, sorted(made.functions.items()))))
"""


@pytest.fixture(scope="module")
def compiled() -> Scripts:
    return compile_calculators(CALCULATORS.values())


@pytest.fixture(scope="module")
def scripts(tmp_path_factory: pytest.TempPathFactory) -> dict[str, str]:
    return make_scripts(Context.of(load_book(BOOK).book, Memo()), tmp_path_factory.mktemp("kept"))


@pytest.mark.slow
def test_each_run_compiles_the_same(compiled: Scripts) -> None:
    """With the order of sets shuffled by another seed."""
    settings = {**os.environ, "PYTHONHASHSEED": "7"}
    other = subprocess.run([sys.executable, "-c", PRINT], cwd=ROOT, env=settings, capture_output=True, check=True)
    made = repr((compiled.core, compiled.draw, sorted(compiled.functions.items())))
    assert other.stdout.decode().strip() == made


def test_on_site_calculators_have_a_script_and_no_others(compiled: Scripts) -> None:
    assert set(compiled.functions) == {name for name, each in CALCULATORS.items() if each.on_site}


def test_scripts_are_plain_letters_without_comments(scripts: dict[str, str]) -> None:
    for address, script in scripts.items():
        assert script.isascii(), address
        assert not re.search(r"^\s*//", script, re.MULTILINE), address
        assert "</script" not in script, address
        assert "DECLARATION" not in script, address


def test_a_script_alone_fetches_nothing(scripts: dict[str, str]) -> None:
    """Ordinary scripts: no modules, no addresses."""
    for address, script in scripts.items():
        assert not re.search(r"\b(import|export|fetch|XMLHttpRequest|eval|document\.write)\b", script), address
        assert "://" not in script.replace("http://www.w3.org/2000/svg", ""), address


def test_the_crew_standards_are_in_the_declarations(scripts: dict[str, str]) -> None:
    engine = new_engine()
    engine.eval(scripts["assets/script/crew.js"])
    engine.eval(scripts["assets/script/calculators/water-closet-place.js"])
    found = engine.eval("JSON.stringify(crew.complete('water-closet-place', {}))")
    assert json.loads(str(found))["nose"] == 18


@pytest.mark.slow
def test_a_kept_compilation_is_taken_again(tmp_path: Path) -> None:
    context = Context.of(load_book(BOOK).book, Memo())
    first = make_scripts(context, tmp_path)
    (kept,) = (tmp_path / "scripts").glob("*.json")
    held = json.loads(kept.read_text(encoding="utf-8"))
    kept.write_text(json.dumps({**held, "core": "// kept"}), encoding="utf-8")
    again = Context.of(load_book(BOOK).book, Memo())
    assert make_scripts(again, tmp_path)["assets/script/crew.js"] == "// kept"
    assert first["assets/script/crew.js"] != "// kept"


def test_a_calculator_that_the_page_cannot_run_is_a_problem(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """In the one shape of errors, so that the build stops with the others."""
    probe = Probe("def main(values, answer):\n    return {'title': {1.5}}\n", tmp_path, monkeypatch)
    broken = replace(CALCULATORS["wax-ring"], drawing=probe.module.main)
    context = Context.of(load_book(BOOK).book, Memo(), {"wax-ring": broken})
    found = script_problems(context, tmp_path)
    assert [str(problem) for problem in found] == [f"{probe.name}.py:2:22: error: a set: use a list"]


def test_an_answer_and_a_refusal_for_a_person(scripts: dict[str, str]) -> None:
    engine = new_engine()
    engine.eval(scripts["assets/script/crew.js"])
    engine.eval(scripts["assets/script/calculators/wax-ring.js"])
    engine.eval(LABEL)
    label(engine, CALCULATORS["wax-ring"])

    def said(call: str) -> object:
        return json.loads(str(engine.eval(f"JSON.stringify({call})")))

    assert said("crew.read('5\\' 3-1/2\"', 'length', 'in')") == 63.5
    assert said("crew.read('about a yard', 'length', 'in')") is None
    assert said("crew.write(63.5, 'length', 'ft-in')") == "5' 3-1/2\""
    assert said("crew.unit('length', 'in', true)") == "mm"
    lower = said("crew.readInput('wax-ring', 'rise', '13 flange above floor', true)")
    assert lower == {"value": pytest.approx(-13 / 25.4)}
    refusal = said("crew.run('wax-ring', {rise: 5})")
    assert refusal == {
        "input": "rise",
        "message": "Finished floor and top of the flange: 5 in floor above flange is more than "
        "the 4 in floor above flange that this answers for",
    }
    in_metric = said("crew.run('wax-ring', {rise: 5}, true)")
    assert isinstance(in_metric, dict)
    assert in_metric["message"].endswith(
        "127 mm floor above flange is more than the 101.6 mm floor above flange that this answers for"
    )
    shown = said("crew.shown('wax-ring', crew.run('wax-ring', {rise: 0.5}).answer)")
    assert isinstance(shown, list)
    assert {"name": "ring_to_use", "label": "Use", "text": "1-1/2 in ring"} in shown


def test_a_fault_of_ours_is_a_message_and_no_exception(scripts: dict[str, str]) -> None:
    engine = new_engine()
    engine.eval(scripts["assets/script/crew.js"])
    engine.eval("crew.add({name: 'broken', inputs: [], outputs: []}, function () { return nothing.at.all; }, null)")
    found = json.loads(str(engine.eval("JSON.stringify(crew.run('broken', {}))")))
    assert found["message"].startswith("This cannot be worked out here: ReferenceError")


def test_the_scripts_of_the_toilet_page_are_small(scripts: dict[str, str]) -> None:
    """The compiled part of the 30 KB that a procedure page may bring along."""
    names = ("crew", "calculators/water-closet-place", "calculators/wax-ring")
    sizes = [len(gzip.compress(scripts[f"assets/script/{name}.js"].encode(), 9)) for name in names]
    assert sum(sizes) < 18_000
