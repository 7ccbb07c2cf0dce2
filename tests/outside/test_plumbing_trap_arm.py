"""The trap arm against the lengths that codes and pages of the trade print."""

from __future__ import annotations

import pytest

from calculators.plumbing.trap_arm import trap_arm

A_BIT = 1 / 32
"""The finest mark of a tape, in inches."""
STANDARD = 0.25 / 12


def passes(pipe: float, run: float, code: str, slope: float = STANDARD) -> bool:
    """Whether an arm of that size and length passes."""
    return bool(trap_arm(code=code, pipe=pipe, run=run, slope=slope)["result"] == "passes")


@pytest.mark.parametrize("code", ["ipc", "irc"])
@pytest.mark.parametrize(("pipe", "feet"), [(1.25, 5), (1.5, 6), (2, 8), (3, 12), (4, 16)])
def test_ipc_table_909_1(pipe: float, feet: float, code: str) -> None:
    """IPC Table 909.1 and IRC Table P3105.1, as a builders' journal prints the lengths: 5, 6, 8, 12, 16 ft."""
    assert passes(pipe, feet * 12, code)
    longer = trap_arm(code=code, pipe=pipe, run=feet * 12 + A_BIT)
    assert longer["checks"][0]["result"] != "passes"


@pytest.mark.parametrize(("pipe", "feet"), [(1.25, 2.5), (1.5, 3.5), (2, 5), (3, 6), (4, 10)])
def test_upc_table_1002_2(pipe: float, feet: float) -> None:
    """UPC Table 1002.2, as several pages quote it: 2 ft 6 in, 3 ft 6 in, 5 ft, 6 ft, 10 ft for 4 in and larger."""
    assert passes(pipe, feet * 12, "upc")
    assert not passes(pipe, feet * 12 + A_BIT, "upc")


def test_a_two_inch_arm_loses_a_third_of_its_length() -> None:
    """A page of the trade: 3/8 in/ft in place of 1/4 takes 2.66 ft, a third, off the 8 ft of a 2 in arm."""
    steeper = trap_arm(pipe=2, slope=0.375 / 12)["longest"]
    assert 96 - steeper == pytest.approx(2.66 * 12, abs=0.1)
    assert steeper / 96 == pytest.approx(2 / 3)


def test_the_fall_is_at_most_the_size() -> None:
    """IPC 909.2 (from memory): the total fall in the arm is at most the diameter of the pipe."""
    assert passes(1.5, 36, "ipc", 0.5 / 12)
    assert not passes(1.5, 36, "ipc", 0.52 / 12)


def test_the_vent_is_two_diameters_away() -> None:
    """IPC 909.3, as the same journal has it: a vent stands at least two pipe diameters from its trap."""
    assert passes(1.5, 3, "ipc")
    assert not passes(1.5, 3 - A_BIT, "ipc")


def test_the_outlet_is_two_feet_above_the_weir_at_most() -> None:
    """IPC 1002.1: 24 in, upright."""
    assert trap_arm(drop=24)["result"] == "passes"
    assert trap_arm(drop=24.1)["result"] == "does not pass"
