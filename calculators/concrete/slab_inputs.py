"""What every slab is asked, and what is bought for it: base, concrete as it is delivered, forms, bars."""

from __future__ import annotations

from typing import Annotated

from calculators.declaration import Output
from calculators.declaring import Usual, length, mass, percent, volume, yes_no

BaseBeyond = Annotated[
    float, length("Base beyond each form", "in", default="6 in", limits="0 to 24 in"), Usual("4 to 12 in")
]
BaseLoose = Annotated[
    float, percent("Extra base for compaction", "%", default="25 %", limits="0 to 60 %"), Usual("15 to 35 %")
]
BaseWeight = Annotated[
    float,
    mass("A loose cubic yard of base weighs", "lb", default="2950 lb", limits="1500 to 4500 lb"),
    Usual("2700 to 3300 lb"),
]
Waste = Annotated[
    float, percent("Concrete over the measure", "%", default="10 %", limits="0 to 40 %"), Usual("5 to 15 %")
]
Truck = Annotated[
    float, volume("A truck carries", "cu yd", default="10 cu yd", limits="1 to 15 cu yd"), Usual("4 to 11 cu yd")
]
BagYield = Annotated[
    float,
    volume("A bag of concrete mix makes", "cu ft", default="0.6 cu ft", limits="0.1 to 2 cu ft"),
    Usual("0.3 to 0.75 cu ft"),
]
StakeSpacing = Annotated[
    float, length("Stakes at most apart", "in", default="36 in", limits="12 to 72 in"), Usual("24 to 48 in")
]
Reinforced = Annotated[bool, yes_no("Reinforcing bars", default="no")]
BarSpacing = Annotated[
    float, length("Bar spacing, both ways", "in", default="18 in", limits="6 to 48 in"), Usual("12 to 24 in")
]
BarLap = Annotated[float, length("Lap of bars", "in", default="24 in", limits="6 to 72 in"), Usual("18 to 36 in")]
BarStock = Annotated[float, length("Bars are long", "ft", default="20 ft", limits="5 to 60 ft"), Usual("10 to 40 ft")]
SupportSpacing = Annotated[
    float,
    length("Bar supports apart, both ways", "in", default="24 in", limits="12 to 60 in"),
    Usual("18 to 48 in"),
]
BarsARoll = Annotated[float, length("Bar that a roll of tie wire ties", "ft", default="320 ft", limits="20 to 2000 ft")]

BOUGHT = (
    Output("concrete", "Concrete in place", "volume", "cu yd", step=0.01, rounds="up"),
    Output("order", "Concrete to order", "volume", "cu yd", step=1 / 4, rounds="up"),
    Output("loads", "Truck loads", "count", step=1, rounds="up"),
    Output("bags", "The same in bags", "count", "bags", step=1, rounds="up"),
    Output("weight", "The order weighs", "mass", "lb", step=10, rounds="up"),
    Output("base", "Base in place, compacted", "volume", "cu yd", step=0.01, rounds="up"),
    Output("base_loose_volume", "Base to buy, loose", "volume", "cu yd", step=0.1, rounds="up"),
    Output("base_tons", "Base to buy", "mass", "ton", step=0.1, rounds="up"),
    Output("forms", "Form lumber", "length", "ft", step=1, rounds="up"),
)
EDGES_AND_BARS = (
    Output("stakes", "Stakes", "count", "stakes", step=1, rounds="up"),
    Output("strip", "Isolation strip, where no form stands", "length", "ft", step=1, rounds="up"),
    Output("bars", "Reinforcing bar", "length", "ft", step=1, rounds="up"),
    Output("supports", "Bar supports", "count", "each", step=1, rounds="up"),
    Output("wire", "Tie wire", "count", "roll", step=1, rounds="up"),
)
