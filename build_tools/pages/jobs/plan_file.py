"""The plan of a job as a file for programs, the same that ``plan JOB --json`` prints."""

from __future__ import annotations

import json

from build_tools.pages.renderer import Renderer
from build_tools.plan.data import plan_as_data
from build_tools.plan.planned_job import PlannedJob


def plan_json(renderer: Renderer, id: str, planned: PlannedJob) -> str:
    """The file ``plan.json`` of a job."""
    return (
        json.dumps(plan_as_data(planned.plan, accelerations=planned.accelerations), ensure_ascii=False, indent=1) + "\n"
    )
