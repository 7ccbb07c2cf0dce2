"""The plan of a job as a file for programs, the same that ``plan JOB --json`` prints."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING

from build_tools.plan.data import plan_as_data
from build_tools.plan.planned_job import PlannedJob

if TYPE_CHECKING:
    from build_tools.pages.site import Maker


def plan_json(maker: Maker, id: str, planned: PlannedJob) -> str:
    """The file ``plan.json`` of a job."""
    return json.dumps(plan_as_data(planned.plan, tries=planned.tries), ensure_ascii=False, indent=1) + "\n"
