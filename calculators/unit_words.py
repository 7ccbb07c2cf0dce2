"""What people call the units: each word in small letters, with its quantity and written unit."""

from __future__ import annotations

WORDS = {
    "length": {
        "in": '", in, inch, inches',
        "ft": "', ft, foot, feet",
        "yd": "yd, yds, yard, yards",
        "mm": "mm",
        "cm": "cm",
        "m": "m, meter, meters, metre, metres",
    },
    "area": {
        "sq in": "sq in, in2, square inch, square inches",
        "sq ft": "sq ft, sqft, sf, ft2, square foot, square feet",
        "sq yd": "sq yd, sy, yd2, square yard, square yards",
        "m2": "m2, sq m, square meters, square metres",
    },
    "volume": {
        "cu in": "cu in, in3, cubic inch, cubic inches",
        "cu ft": "cu ft, cf, ft3, cubic foot, cubic feet",
        "cu yd": "cu yd, cy, yd3, cubic yard, cubic yards",
        "bd ft": "bd ft, bf, board foot, board feet",
        "gal": "gal, gals, gallon, gallons",
        "L": "l, liter, liters, litre, litres",
        "m3": "m3, cu m, cubic meters, cubic metres",
    },
    "percent": {"%": "%, percent, pct"},
    "angle": {"deg": "deg, degree, degrees"},
    "mass": {
        "oz": "oz, ounce, ounces",
        "lb": "lb, lbs, pound, pounds",
        "ton": "ton, tons",
        "kg": "kg",
        "t": "t, tonne, tonnes",
    },
    "time": {
        "s": "s, sec, second, seconds",
        "min": "min, mins, minute, minutes",
        "h": "h, hr, hrs, hour, hours",
        "days": "day, days",
        "weeks": "week, weeks",
    },
    "temperature": {"F": "f, deg f, degrees f", "C": "c, deg c, degrees c"},
    "each": {"each": "each, ea"},
    "psi": {"psi": "psi"},
    "psf": {"psf": "psf"},
    "A": {"A": "a, amp, amps"},
    "V": {"V": "v, volt, volts"},
    "W": {"W": "w, watt, watts"},
}
"""Quantity, written unit, what people call it. The last group has no conversion: its quantity is the unit itself
(`3000 psi`)."""

UNIT_WORDS: dict[str, list[str]] = {
    word: [quantity, unit]
    for quantity, units in WORDS.items()
    for unit, words in units.items()
    for word in words.split(", ")
}
"""Each word with its quantity and written unit."""

NAMED: dict[str, str] = {
    "length": "a length",
    "area": "an area",
    "volume": "a volume",
    "slope": "a slope",
    "angle": "an angle",
    "mass": "a mass",
    "time": "a time",
    "temperature": "a temperature",
    "percent": "a percentage",
    "count": "a count",
    "number": "a plain number",
}
"""The quantities in words, for messages."""

EXAMPLES: dict[str, str] = {
    "length": "5' 3-1/2\", 63-1/2 in or 1613 mm",
    "area": "300 sq ft or 28 m2",
    "volume": "2-1/2 cu yd, 5 gal or 1.9 m3",
    "slope": "2 %, 1/4 in/ft, 1:48 or 1.19 deg",
    "angle": "45 deg",
    "mass": "10 lb or 4.5 kg",
    "time": "90 min, 24 h or 3 days",
    "temperature": "70 F or 21 C",
    "percent": "10 %",
    "count": "3",
    "number": "2.5",
}
"""How each quantity can be written, for messages."""
