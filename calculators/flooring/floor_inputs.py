"""What several floors are asked."""

from __future__ import annotations

from typing import Annotated

from calculators.declaring import Usual, area, choice, length, time

FaceWidth = Annotated[
    float, length("Face width of the strip", "in", default="2-1/4 in", limits="1 to 8 in"), Usual("1-1/2 to 5 in")
]
MeasuredArea = Annotated[
    float,
    area("Area already measured, beside the rooms", "sq ft", default="0", limits="0 to 20000 sq ft", instead="rooms"),
]
HoursADay = Annotated[float, time("Working hours a day", "h", default="8 h", limits="1 to 16 h")]
Layout = Annotated[
    str, choice("Layout", {"straight": "Straight with the walls", "diagonal": "Diagonal"}, default="straight")
]
