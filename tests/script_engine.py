"""A script engine (V8) that is closed before Python ends: one that is left open can keep the program from ending."""

from __future__ import annotations

import atexit

from py_mini_racer import MiniRacer


def new_engine() -> MiniRacer:
    """An engine with nothing in it."""
    made = MiniRacer()
    atexit.register(made.close)
    return made
