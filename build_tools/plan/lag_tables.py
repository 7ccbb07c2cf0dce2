"""The lags of a problem: for each slot at which something may end, the first at which the next may start."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass
from datetime import date, timedelta

from build_tools.plan.notice import Notice
from build_tools.plan.worktime import Worktime


@dataclass(frozen=True, slots=True)
class LagTables:
    """Adds each lag to the tables of a problem once, and gives its name."""

    worktime: Worktime
    tables: dict[str, list[int]]

    def of(self, hours: float) -> str:
        """A time by the clock after an end."""
        name = f"{hours:.10g} h"
        if name not in self.tables:
            self.tables[name] = self.worktime.ready(timedelta(hours=hours))
        return name

    def from_start(self, hours: float, slots: int) -> str:
        """A time that counts from the start of an activity of that length, by the end that it has then."""
        name = f"{hours:.10g} h from the start of {slots}"
        if name not in self.tables:
            lag = timedelta(hours=hours)
            self.tables[name] = [
                max(end, self.worktime.slot_at(self.worktime.starts(max(end - slots, 0)) + lag))
                for end in range(self.worktime.slots + 1)
            ]
        return name

    def notice(self, notice: Notice, holidays: Collection[date]) -> str:
        """Until somebody comes who is called at the end."""
        name = f"notice {notice.text}"
        if name not in self.tables:
            self.tables[name] = [
                self.worktime.slot_at(notice.over(self.worktime.ends(slot), holidays))
                for slot in range(self.worktime.slots + 1)
            ]
        return name

    def longer(self, one: str, other: str) -> bool:
        """Whether one lag by the clock is longer than another."""
        return float(one.removesuffix(" h")) > float(other.removesuffix(" h"))
