"""Every check of the book: one change to a good small book, and the exact lines that must come out of it.

``small/`` is a good book. A case replaces a piece of one of its files and says the problems, whole text compared.
"""

from __future__ import annotations

import shutil
from dataclasses import dataclass
from pathlib import Path

import pytest

from build_tools.book.checks import check_book
from build_tools.book.load import load_book
from calculators.registry import CALCULATORS

FEW = {name: CALCULATORS[name] for name in ("wax-ring", "lock-schedule")}
SMALL = Path(__file__).parent / "small"
BOWL = "plumbing/set-bowl.yaml"
FLOOR = "doors/lay-floor.yaml"
VALUES = "reference/values/values.yaml"


@dataclass(frozen=True)
class Case:
    """One mistake: in ``file`` the text ``old`` becomes ``new``; ``expected`` are the problems, hint lines and all."""

    name: str
    file: str
    old: str
    new: str
    expected: tuple[str, ...]


def problems_of(folder: Path) -> list[str]:
    """All that reading and checking finds, as it is shown."""
    loaded = load_book(folder)
    return [str(problem) for problem in sorted(set(loaded.problems + check_book(loaded.book, FEW)))]


def broken(tmp_path: Path, file: str, old: str, new: str) -> list[str]:
    """The problems of the small book with one change; paths are shown without the folder."""
    folder = tmp_path / "small"
    shutil.copytree(SMALL, folder)
    path = folder / file
    text = path.read_text(encoding="utf-8")
    assert text.count(old) == 1, f"{old!r} stands {text.count(old)} times in {file}"
    path.write_text(text.replace(old, new), encoding="utf-8")
    return [problem.removeprefix("small/") for problem in problems_of(folder)]


def test_the_small_book_is_good() -> None:
    """Without a change there is nothing to say, so that each case shows its own mistake alone."""
    assert problems_of(SMALL) == []


CASES = [
    # reading
    Case(
        "tab for indentation",
        BOWL,
        "    why: The ring is",
        "\twhy: The ring is",
        (
            "plumbing/set-bowl.yaml:18:1: error: is not YAML: while scanning a plain scalar found a tab character that violates indentation",
        ),
    ),
    Case(
        "colon in plain text",
        BOWL,
        "do: Measure the rise.",
        "do: Measure: the rise.",
        (
            "plumbing/set-bowl.yaml:31:16: error: is not YAML: mapping values are not allowed in this context\n    text that holds ': ' stands in quotes, or after '>-' on lines of its own",
        ),
    ),
    Case(
        "repeated key",
        BOWL,
        "who: helper",
        "who: helper\nwho: lead",
        ("plumbing/set-bowl.yaml:10:1: error: 'who' is written twice; it stands already in line 9\n    keep one",),
    ),
    Case(
        "anchor",
        BOWL,
        "who: helper",
        "who: &who helper",
        ("plumbing/set-bowl.yaml:9:6: error: an anchor ('&who') is not used in this book\n    leave it out",),
    ),
    Case(
        "control character",
        BOWL,
        "do: Measure the rise.",
        "do: Measure\x07 the rise.",
        ("plumbing/set-bowl.yaml:31:16: error: holds a character that YAML does not allow",),
    ),
    # schema and types
    Case(
        "unknown field",
        BOWL,
        "summary: The bowl",
        "sumary: The bowl",
        (
            "plumbing/set-bowl.yaml:1:1: error: the field 'summary' is missing",
            "plumbing/set-bowl.yaml:3:1: error: there is no field 'sumary' here\n    did you mean 'summary'?",
        ),
    ),
    Case(
        "missing field", BOWL, "who: helper\n", "", ("plumbing/set-bowl.yaml:1:1: error: the field 'who' is missing",)
    ),
    Case(
        "word not of the list",
        BOWL,
        "who: helper",
        "who: helpr",
        (
            "plumbing/set-bowl.yaml:9:6: error: 'helpr' is not one of 'helper', 'lead' or 'licensed person'\n    did you mean 'helper'?",
        ),
    ),
    Case(
        "no number",
        BOWL,
        "  number: 2",
        "  number: two",
        ("plumbing/set-bowl.yaml:5:11: error: 'two' does not fit 'revision.number': a whole number is wanted",),
    ),
    Case(
        "no date",
        BOWL,
        "2026-03-14",
        "14 March",
        (
            "plumbing/set-bowl.yaml:6:9: error: '14 March' does not fit 'revision.date': a date is wanted, like 2026-03-14",
        ),
    ),
    Case(
        "text where a list belongs",
        BOWL,
        "tools: [short-level]\nmaterials",
        "tools: short-level\nmaterials",
        (
            "plumbing/set-bowl.yaml:24:8: error: 'short-level' does not fit 'tools': a list is wanted, each item after a hyphen",
        ),
    ),
    Case(
        "empty steps",
        FLOOR,
        "steps:\n  - id: lay\n    do: Lay the boards to a gap of [](value:gap).\n",
        "steps: []\n",
        ("doors/lay-floor.yaml:15:8: error: 'steps' is empty; at least one is wanted",),
    ),
    Case(
        "unknown field deep inside",
        BOWL,
        "        why: The floor is",
        "        wy: The floor is",
        (
            "plumbing/set-bowl.yaml:33:9: error: the field 'why' is missing",
            "plumbing/set-bowl.yaml:34:9: error: there is no field 'wy' here\n    did you mean 'why'?",
        ),
    ),
    Case(
        "warning without harm",
        BOWL,
        "        harm: It strains the back.\n",
        "",
        ("plumbing/set-bowl.yaml:51:9: error: a CAUTION says what the hazard does to a person, in 'harm'",),
    ),
    Case(
        "measurement without tolerance",
        BOWL,
        "        least: -1/2 in\n        most: 1-1/4 in\n",
        "",
        (
            "plumbing/set-bowl.yaml:36:9: error: a measurement says its tolerance: 'target' with 'within', or 'least', 'most' or both",
        ),
    ),
    Case(
        "target without tolerance",
        BOWL,
        "        least: -1/2 in\n        most: 1-1/4 in\n",
        "        target: 0 in\n",
        ("plumbing/set-bowl.yaml:36:9: error: a 'target' takes either 'within', or both 'plus' and 'minus'",),
    ),
    Case(
        "before says nothing",
        BOWL,
        "  - procedure: lay-floor\n    why",
        "  - why",
        ("plumbing/set-bowl.yaml:17:5: error: 'before' takes either 'procedure' or 'state'",),
    ),
    Case(
        "axis with step but no end",
        BOWL,
        "from: 0 in, to: 1/2 in, step",
        "from: 0 in, step",
        (
            "plumbing/set-bowl.yaml:44:13: error: an axis takes either 'values', or all three of 'from', 'to' and 'step'",
        ),
    ),
    Case(
        "bad id of a step",
        BOWL,
        "- id: lower",
        "- id: Lower it",
        (
            "plumbing/set-bowl.yaml:48:9: error: 'Lower it' is not a name here: small letters, digits and single hyphens are wanted",
        ),
    ),
    # units and quantities
    Case(
        "unit unknown",
        BOWL,
        "least: -1/2 in",
        "least: -1/2 ich",
        (
            "plumbing/set-bowl.yaml:37:16: error: '-1/2 ich' is not a number with a unit that is known: write for example 1/4 in, 24 h, 2 % or 1:48",
        ),
    ),
    Case(
        "two kinds in one measurement",
        BOWL,
        "most: 1-1/4 in",
        "most: 3 lb",
        ("plumbing/set-bowl.yaml:38:15: error: '3 lb' is a mass, while 'least' of this measurement is a length",),
    ),
    Case(
        "least above most",
        BOWL,
        "least: -1/2 in",
        "least: 2 in",
        ("plumbing/set-bowl.yaml:37:16: error: the least, 2 in, is more than the most, 1-1/4 in",),
    ),
    Case(
        "hours that are a length",
        BOWL,
        "hours: 2 h",
        "hours: 2 in",
        ("plumbing/set-bowl.yaml:13:10: error: '2 in' is a length; a time is wanted: write 90 min, 24 h or 3 days",),
    ),
    Case(
        "closing time unreadable",
        BOWL,
        "    for: 2 h",
        "    for: a while",
        ("plumbing/set-bowl.yaml:21:10: error: 'a while' is not a time: write 90 min, 24 h or 3 days",),
    ),
    Case(
        "material without a number",
        BOWL,
        "quantity: 1 each",
        "quantity: some",
        ("plumbing/set-bowl.yaml:27:15: error: 'some' is not a number with its unit\n    write it like '2 each'",),
    ),
    Case(
        "material in another unit",
        BOWL,
        "quantity: 1 each",
        "quantity: 2 gal",
        (
            "plumbing/set-bowl.yaml:27:15: error: '2 gal' is not in the unit of this material, which is counted in 'each'",
        ),
    ),
    Case(
        "standard unreadable",
        VALUES,
        "quantity: 1/4 in",
        "quantity: 1/4 ich",
        (
            "reference/values/values.yaml:9:13: error: '1/4 ich' is not a number with a unit that is known: write for example 1/4 in, 24 h, 2 % or 1:48",
        ),
    ),
    Case(
        "notice unreadable",
        "reference/inspections/inspections.yaml",
        "notice: 0 h",
        "notice: soon",
        ("reference/inspections/inspections.yaml:4:11: error: 'soon' is not a time: write 90 min, 24 h or 3 days",),
    ),
    # ids
    Case(
        "step id twice",
        BOWL,
        "- id: lower",
        "- id: measure",
        ("plumbing/set-bowl.yaml:48:9: error: the step id 'measure' is taken already in line 30",),
    ),
    Case(
        "step id of a section",
        BOWL,
        "- id: lower",
        "- id: tools",
        ("plumbing/set-bowl.yaml:48:9: error: the step id 'tools' is the name of a section of the page",),
    ),
    # references
    Case(
        "procedure unknown",
        BOWL,
        "procedure: lay-floor",
        "procedure: lay-flor",
        (
            "plumbing/set-bowl.yaml:17:16: error: 'before' refers to procedure 'lay-flor', which is not in the book\n    did you mean 'lay-floor'?",
        ),
    ),
    Case(
        "step unknown",
        BOWL,
        "point: Lay a straightedge",
        "point: After [laying](procedure:lay-floor#ley), lay a straightedge",
        (
            "plumbing/set-bowl.yaml:33:16: error: step 'measure' refers to step 'ley' of 'lay-floor', which has no such step\n    did you mean 'lay'?",
        ),
    ),
    Case(
        "procedure of a link unknown",
        BOWL,
        "point: Lay a straightedge",
        "point: After [](procedure:lay-flour), lay a straightedge",
        (
            "plumbing/set-bowl.yaml:33:16: error: step 'measure' refers to procedure 'lay-flour', which is not in the book\n    did you mean 'lay-floor'?",
        ),
    ),
    Case(
        "value unknown",
        FLOOR,
        "[](value:gap)",
        "[](value:gapp)",
        (
            "doors/lay-floor.yaml:17:9: error: step 'lay' refers to value 'gapp', which is not in the book\n    did you mean 'gap'?",
        ),
    ),
    Case(
        "value of a field unknown",
        BOWL,
        "recess: value:recess",
        "recess: value:reces",
        (
            "plumbing/set-bowl.yaml:46:23: error: step 'measure' refers to value 'reces', which is not in the book\n    did you mean 'recess'?",
        ),
    ),
    Case(
        "term unknown",
        BOWL,
        "[](term:wax-ring)",
        "[](term:wax-rings)",
        (
            "plumbing/set-bowl.yaml:3:10: error: 'summary' refers to term 'wax-rings', which is not in the book\n    did you mean 'wax-ring'?",
        ),
    ),
    Case(
        "tool unknown",
        BOWL,
        "    tools: [short-level]",
        "    tools: [short-levle]",
        (
            "plumbing/set-bowl.yaml:24:9: error: tool 'short-level' is listed, but no step uses it\n    name it at its step",
            "plumbing/set-bowl.yaml:55:13: error: step 'lower' refers to tool 'short-levle', which is not in the book\n    did you mean 'short-level'?",
        ),
    ),
    Case(
        "material unknown",
        BOWL,
        "    materials: [ring]",
        "    materials: [rings]",
        (
            "plumbing/set-bowl.yaml:26:15: error: material 'ring' is listed, but no step uses it\n    name it at its step",
            "plumbing/set-bowl.yaml:56:17: error: step 'lower' refers to material 'rings', which is not in the book\n    did you mean 'ring'?",
        ),
    ),
    Case(
        "calculator unknown",
        BOWL,
        "calculator: wax-ring",
        "calculator: wax-rings",
        (
            "plumbing/set-bowl.yaml:43:19: error: step 'measure' refers to calculator 'wax-rings', which is not in the book\n    did you mean 'wax-ring'?",
        ),
    ),
    Case(
        "calculator of a link unknown",
        BOWL,
        "See [](term:wax-ring).",
        "See [](term:wax-ring), [](calculator:waxring).",
        (
            "plumbing/set-bowl.yaml:3:10: error: 'summary' refers to calculator 'waxring', which is not in the book\n    did you mean 'wax-ring'?",
        ),
    ),
    Case(
        "inspection unknown",
        BOWL,
        "inspection: lead-look",
        "inspection: lead-looks",
        (
            "plumbing/set-bowl.yaml:58:19: error: step 'lower' refers to inspection 'lead-looks', which is not in the book\n    did you mean 'lead-look'?",
        ),
    ),
    Case(
        "source unknown",
        BOWL,
        "source: plumbing-code",
        "source: plumbing-cod",
        (
            "plumbing/set-bowl.yaml:65:13: error: 'sources' refers to source 'plumbing-cod', which is not in the book\n    did you mean 'plumbing-code'?",
        ),
    ),
    Case(
        "person unknown",
        BOWL,
        "approved_by: pat-lead",
        "approved_by: pat-leed",
        (
            "plumbing/set-bowl.yaml:8:16: error: 'revision' refers to person 'pat-leed', which is not in the book\n    did you mean 'pat-lead'?",
        ),
    ),
    Case(
        "scheme unknown",
        BOWL,
        "[](term:wax-ring)",
        "[](therm:wax-ring)",
        (
            "plumbing/set-bowl.yaml:3:10: error: the link 'therm:wax-ring' is no reference of the book and no web address\n    did you mean 'term'?",
        ),
    ),
    Case(
        "file instead of a reference",
        BOWL,
        "[](term:wax-ring)",
        "[ring](../terms.md)",
        (
            "plumbing/set-bowl.yaml:3:10: error: the link '../terms.md' is no reference of the book and no web address\n    write it as one of procedure:..., trade:..., value:..., term:..., tool:..., material:..., source:..., inspection:..., person:..., calculator:...",
        ),
    ),
    Case(
        "script address",
        BOWL,
        "[](term:wax-ring)",
        "[ring](javascript:alert)",
        (
            "plumbing/set-bowl.yaml:3:10: error: the link 'javascript:alert' is no reference of the book and no web address\n    write it as one of procedure:..., trade:..., value:..., term:..., tool:..., material:..., source:..., inspection:..., person:..., calculator:...",
        ),
    ),
    Case(
        "picture in prose",
        BOWL,
        "[](term:wax-ring)",
        "![ring](ring.png)",
        ("plumbing/set-bowl.yaml:3:10: error: a picture stands in 'photo' or 'drawing' of a step, not in prose",),
    ),
    Case(
        "training of an unknown procedure",
        "crew/people.yaml",
        "[set-bowl]",
        "[set-bowls]",
        (
            "crew/people.yaml:4:16: error: 'pat-lead' refers to procedure 'set-bowls', which is not in the book\n    did you mean 'set-bowl'?",
        ),
    ),
    # order
    Case(
        "circle",
        FLOOR,
        "steps:",
        "before:\n  - procedure: set-bowl\n    why: It stands there.\nsteps:",
        (
            "doors/lay-floor.yaml:16:16: error: these come before each other in a circle: 'lay-floor' after 'set-bowl' after 'lay-floor'\n    leave out one of these 'before' links",
        ),
    ),
    # tools and materials
    Case(
        "tool used, not listed",
        BOWL,
        "tools: [short-level]\nmaterials",
        "tools: []\nmaterials",
        (
            "plumbing/set-bowl.yaml:55:13: error: step 'lower' uses tool 'short-level', which the procedure does not list\n    add it to 'tools'",
        ),
    ),
    Case(
        "tool listed, not used",
        BOWL,
        "    tools: [short-level]\n    materials: [ring]",
        "    materials: [ring]",
        (
            "plumbing/set-bowl.yaml:24:9: error: tool 'short-level' is listed, but no step uses it\n    name it at its step",
        ),
    ),
    Case(
        "material used, not listed",
        BOWL,
        "materials:\n  - material: ring\n    quantity: 1 each\n    per: for each bowl\n",
        "",
        (
            "plumbing/set-bowl.yaml:52:17: error: step 'lower' uses material 'ring', which the procedure does not list\n    add it to 'materials'",
        ),
    ),
    Case(
        "material listed, not used",
        BOWL,
        "    tools: [short-level]\n    materials: [ring]",
        "    tools: [short-level]",
        (
            "plumbing/set-bowl.yaml:26:15: error: material 'ring' is listed, but no step uses it\n    name it at its step",
        ),
    ),
    Case(
        "tool listed twice",
        BOWL,
        "tools: [short-level]\nmaterials",
        "tools: [short-level, short-level]\nmaterials",
        ("plumbing/set-bowl.yaml:24:22: error: tool 'short-level' is listed twice",),
    ),
    # calculators
    Case(
        "input unknown",
        BOWL,
        "fixed: {recess: value:recess}",
        "fixed: {reces: 1/2 in}",
        ("plumbing/set-bowl.yaml:46:22: error: 'reces' is not an input of 'wax-ring'; did you mean 'recess'?",),
    ),
    Case(
        "wrong unit",
        BOWL,
        "fixed: {recess: value:recess}",
        "fixed: {recess: 2 lb}",
        (
            "plumbing/set-bowl.yaml:46:23: error: Recess under the bowl: '2 lb' is a mass; a length is wanted: write 5' 3-1/2\", 63-1/2 in or 1613 mm",
        ),
    ),
    Case(
        "beyond the hard limit",
        BOWL,
        "    materials: [ring]\n",
        "    materials: [ring]\n    calculator: {calculator: wax-ring, inputs: {rise: 40 in}}\n",
        (
            "plumbing/set-bowl.yaml:57:55: error: Finished floor above the flange's top: 40 in is more than the 4 in that this answers for",
        ),
    ),
    Case(
        "missing input",
        BOWL,
        "    materials: [ring]\n",
        "    materials: [ring]\n    calculator: {calculator: lock-schedule, inputs: {}}\n",
        ("plumbing/set-bowl.yaml:57:53: error: Openings is not given, and has no usual value; write it",),
    ),
    Case(
        "row input misspelt",
        BOWL,
        "    materials: [ring]\n",
        "    materials: [ring]\n    calculator: {calculator: lock-schedule, inputs: {openings: [{name: front, use: outsde door}]}}\n",
        (
            "plumbing/set-bowl.yaml:57:64: error: Openings, row 1, What it closes: 'outsde door' is not one of outside-door, garage-to-house, bedroom, bathroom, closet, hall-or-other-room, utility-room; did you mean 'outside-door'?",
        ),
    ),
    Case(
        "axis is no input",
        BOWL,
        "down: {input: rise,",
        "down: {input: rize,",
        (
            "plumbing/set-bowl.yaml:44:21: error: 'rize' is not an input of calculator 'wax-ring'\n    did you mean 'rise'?",
        ),
    ),
    Case(
        "across is no input",
        BOWL,
        "across: {input: ring,",
        "across: {input: fit,",
        (
            "plumbing/set-bowl.yaml:45:23: error: 'fit' is not an input of calculator 'wax-ring'\n    its inputs are rise_from, rise, flange_above_subfloor, floor_layers, recess, ring, least_squeeze, most_squeeze, most_spacer",
        ),
    ),
    Case(
        "axis in a wrong unit",
        BOWL,
        "values: [1 in, 1-1/2 in]",
        "values: [1 in, 2 lb]",
        (
            "plumbing/set-bowl.yaml:45:44: error: Thickness of the ring: '2 lb' is a mass; a length is wanted: write 5' 3-1/2\", 63-1/2 in or 1613 mm",
        ),
    ),
    Case(
        "axis runs backwards",
        BOWL,
        "from: 0 in, to: 1/2 in",
        "from: 1 in, to: 1/2 in",
        ("plumbing/set-bowl.yaml:44:57: error: an axis runs from the smaller to the larger in steps above nought",),
    ),
    Case(
        "axis too long",
        BOWL,
        "to: 1/2 in, step: 1/4 in",
        "to: 500 in, step: 1/4 in",
        ("plumbing/set-bowl.yaml:44:57: error: gives 2001 lines; a table has at most 200",),
    ),
    Case(
        "axis fixed as well",
        BOWL,
        "fixed: {recess: value:recess}",
        "fixed: {rise: 0 in}",
        ("plumbing/set-bowl.yaml:46:21: error: 'rise' is fixed and runs down as well",),
    ),
    Case(
        "output unknown",
        BOWL,
        "show: [squeeze]",
        "show: [squeezes]",
        (
            "plumbing/set-bowl.yaml:47:14: error: 'squeezes' is not an output of calculator 'wax-ring'\n    did you mean 'squeeze'?",
        ),
    ),
    Case(
        "output of an amount unknown",
        BOWL,
        "quantity: 1 each",
        "quantity: {calculator: wax-ring, inputs: {rise: 0 in}, output: rings}",
        (
            "plumbing/set-bowl.yaml:27:68: error: 'rings' is not an output of calculator 'wax-ring'\n    did you mean 'thick_rings'?",
        ),
    ),
    Case(
        "amount is words",
        BOWL,
        "quantity: 1 each",
        "quantity: {calculator: wax-ring, inputs: {rise: 0 in}, output: fit}",
        ("plumbing/set-bowl.yaml:27:68: error: 'fit' of 'wax-ring' is no number",),
    ),
    Case(
        "default of an unknown calculator",
        VALUES,
        "default_of: [wax-ring.recess]",
        "default_of: [wax-rig.recess]",
        ("reference/values/values.yaml:6:16: error: there is no calculator 'wax-rig'\n    did you mean 'wax-ring'?",),
    ),
    Case(
        "default of an unknown input",
        VALUES,
        "default_of: [wax-ring.recess]",
        "default_of: [wax-ring.reces]",
        (
            "reference/values/values.yaml:6:16: error: calculator 'wax-ring' has no input 'reces'\n    did you mean 'recess'?",
        ),
    ),
    Case(
        "default of the wrong kind",
        VALUES,
        "quantity: 1/2 in",
        "quantity: 3 lb",
        (
            "plumbing/set-bowl.yaml:46:23: error: Recess under the bowl: '3 lb' is a mass; a length is wanted: write 5' 3-1/2\", 63-1/2 in or 1613 mm",
            "reference/values/values.yaml:3:13: error: does not fit wax-ring.recess: Recess under the bowl: '3 lb' is a mass; a length is wanted: write 5' 3-1/2\", 63-1/2 in or 1613 mm",
        ),
    ),
    Case(
        "default set twice",
        VALUES,
        "  means: Room for the floor to swell.",
        "  means: Room for the floor to swell.\n  default_of: [wax-ring.recess]",
        (
            "reference/values/values.yaml:12:16: error: 'wax-ring.recess' has the value 'recess' as its default already\n    keep one",
        ),
    ),
    Case(
        "value without a source",
        VALUES,
        "  basis: common practice\n",
        "",
        ("reference/values/values.yaml:2:3: error: the field 'basis' is missing",),
    ),
    # prose
    Case(
        "figure repeats a standard",
        FLOOR,
        "to a gap of [](value:gap).",
        "to a gap of [](value:gap), that is 1/4 in.",
        (
            "doors/lay-floor.yaml:17:9: warning: '1/4 in' repeats the crew standard 'gap'\n    write [](value:gap), so that the page follows when the standard changes",
        ),
    ),
    # messages
    Case(
        "message after its step",
        BOWL,
        "        avoid: Two people lift it.",
        "        avoid: Two people lift it.\n        guards: measure",
        (
            "plumbing/set-bowl.yaml:51:9: error: this CAUTION stands at step 'lower', after step 'measure' that it guards\n    move it to step 'measure' or before it",
        ),
    ),
    Case(
        "message guards no step",
        BOWL,
        "        avoid: Two people lift it.",
        "        avoid: Two people lift it.\n        guards: lowr",
        (
            "plumbing/set-bowl.yaml:55:17: error: guards step 'lowr', which this procedure has not\n    did you mean 'lower'?",
        ),
    ),
    # pages
    Case(
        "folder is no trade",
        "reference/trades/trades.yaml",
        "doors:\n  title",
        "dors:\n  title",
        (
            "doors/lay-floor.yaml:1:1: error: nobody can reach this page: its folder 'doors' is no trade of reference/trades\n    did you mean 'dors'?",
        ),
    ),
    Case(
        "trade named like a page",
        "reference/trades/trades.yaml",
        "doors:\n  title: Doors\n  summary: Doors.\n  order: 2",
        "doors:\n  title: Doors\n  summary: Doors.\n  order: 2\nterms:\n  title: Terms\n  summary: Terms.\n  order: 3",
        (
            "reference/trades/trades.yaml:9:1: error: a trade cannot be called 'terms': the site has a page of that name",
        ),
    ),
    # pictures
    Case(
        "photo missing",
        BOWL,
        "    materials: [ring]\n",
        "    materials: [ring]\n    photo: {file: bowl.jpg, alt: The bowl}\n",
        ("plumbing/set-bowl.yaml:57:19: error: there is no file 'bowl.jpg' beside this one",),
    ),
    Case(
        "photo is no photo",
        BOWL,
        "    materials: [ring]\n",
        "    materials: [ring]\n    photo: {file: bowl.txt, alt: The bowl}\n",
        ("plumbing/set-bowl.yaml:57:19: error: 'bowl.txt' is no photo: it ends in .jpg or .jpeg or .png or .webp",),
    ),
    Case(
        "photo elsewhere",
        BOWL,
        "    materials: [ring]\n",
        "    materials: [ring]\n    photo: {file: ../bowl.jpg, alt: The bowl}\n",
        ("plumbing/set-bowl.yaml:57:19: error: '../bowl.jpg' is a path; a photo lies beside the YAML file",),
    ),
    Case(
        "photo without words",
        BOWL,
        "    materials: [ring]\n",
        "    materials: [ring]\n    photo: {file: bowl.jpg}\n",
        ("plumbing/set-bowl.yaml:57:12: error: the field 'alt' of 'photo' is missing",),
    ),
]


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.name)
def test_a_mistake_is_named_by_its_line(case: Case, tmp_path: Path) -> None:
    """The problems are these and no others."""
    assert broken(tmp_path, case.file, case.old, case.new) == list(case.expected)
