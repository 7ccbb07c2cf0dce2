"""What every slab is asked, and what is bought for it: base, concrete as it is delivered, forms, bars."""

from __future__ import annotations

from typing import Annotated

from calculators.declaration import Output
from calculators.declaring import length, mass, percent, volume, yes_no

BaseBeyond = Annotated[float, length("Base beyond each form", "6 in, from 0 to 24 in, usually 4 to 12 in")]
BaseLoose = Annotated[float, percent("Extra base for compaction", "25 %, from 0 to 60 %, usually 15 to 35 %")]
BaseWeight = Annotated[
    float, mass("A loose cubic yard of base weighs", "2950 lb, from 1500 to 4500 lb, usually 2700 to 3300 lb")
]
Waste = Annotated[float, percent("Concrete over the measure", "10 %, from 0 to 40 %, usually 5 to 15 %")]
Truck = Annotated[float, volume("A truck carries", "10 cu yd, from 1 to 15 cu yd, usually 4 to 11 cu yd")]
BagYield = Annotated[
    float, volume("A bag of concrete mix makes", "0.6 cu ft, from 0.1 to 2 cu ft, usually 0.3 to 0.75 cu ft")
]
StakeSpacing = Annotated[float, length("Stakes at most apart", "36 in, from 12 to 72 in, usually 24 to 48 in")]
Reinforced = Annotated[bool, yes_no("Reinforcing bars", default="no")]
BarSpacing = Annotated[float, length("Bar spacing, both ways", "18 in, from 6 to 48 in, usually 12 to 24 in")]
BarLap = Annotated[float, length("Lap of bars", "24 in, from 6 to 72 in, usually 18 to 36 in")]
BarStock = Annotated[float, length("Bars are long", "20 ft, from 5 to 60 ft, usually 10 to 40 ft")]
SupportSpacing = Annotated[
    float, length("Bar supports apart, both ways", "24 in, from 12 to 60 in, usually 18 to 48 in")
]
BarsARoll = Annotated[float, length("Bar that a roll of tie wire ties", "320 ft, from 20 to 2000 ft")]

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
