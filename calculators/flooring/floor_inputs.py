"""What several floors are asked, and what they are measured in."""

from __future__ import annotations

from typing import Annotated

from calculators.declaring import area, choice, length, time

CUBIC_FEET_A_GALLON = 231 / 1728

FaceWidth = Annotated[float, length("Face width of the strip", "2-1/4 in, from 1 to 8 in, usually 1-1/2 to 5 in")]
MeasuredArea = Annotated[
    float, area("Area already measured, beside the rooms", "0, from 0 to 20000 sq ft", instead="rooms")
]
HoursADay = Annotated[float, time("Working hours a day", "8 h, from 1 to 16 h")]
Layout = Annotated[
    str, choice("Layout", {"straight": "Straight with the walls", "diagonal": "Diagonal"}, default="straight")
]
