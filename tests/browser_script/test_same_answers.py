"""Every on-site calculator gives the same in Python and in the page's script, over thousands of drawn inputs."""

from __future__ import annotations

from random import Random

import pytest

from calculators.run import read_inputs
from tests.browser_script.drawn import case
from tests.browser_script.engine import ON_SITE, difference, in_python, in_script

pytestmark = pytest.mark.slow

CASES = 2000


@pytest.mark.parametrize("name", ON_SITE)
def test_the_page_answers_as_python_does(name: str) -> None:
    """Values read, messages, outputs, cautions, working, what is shown and the drawing."""
    calculator = ON_SITE[name]
    random = Random(name)
    cases = [case(random, calculator, number) for number in range(CASES)]
    theirs = in_script(name, cases)
    answered = 0
    for given, found in zip(cases, theirs, strict=True):
        ours = in_python(calculator, given)
        answered += "answer" in ours["outcome"]
        wrong = difference(ours, found, name)
        assert not wrong, f"{calculator.function.__module__}: Python and script differ: {wrong}\nfor {given}"
    assert answered >= CASES / 10, (
        f"{calculator.function.__module__}: only {answered} of {CASES} drawn cases have an answer"
    )


@pytest.mark.parametrize("name", ON_SITE)
def test_an_emptied_field_means_the_same(name: str) -> None:
    """No default steps in unseen for a figure that was taken out: the page says so, and so does Python."""
    calculator = ON_SITE[name]
    inputs = [item.name for item in calculator.inputs]
    found = in_script(name, [{"texts": dict.fromkeys(inputs, ""), "values": {}, "metric": False, "draws": False}])
    read = found[0]["read"]
    values, refused = read_inputs(calculator, dict.fromkeys(inputs, ""))
    assert {one.input: one.message for one in refused} == {
        input: said["message"] for input, said in read.items() if "message" in said
    }
    assert values == {input: said["value"] for input, said in read.items() if "message" not in said}
    figures = {item.name for item in calculator.inputs if item.quantity not in ("text", "plan", "rows")}
    assert figures <= {one.input for one in refused}
