"""The whole book as a hostile inspector reads it: straight from the files, with no check of the book's own.

Each rule tells file, place and what to write. A mistake in the book's own checks is seen here, because nothing of them
is used: the YAML is read as plain text and walked anew.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

import networkx
import pytest
import yaml

from build_tools.commands.site import BOOK
from calculators.declaration import Input, Output
from calculators.registry import CALCULATORS

LAST = "handing-over"
ENDS_ELSEWHERE: dict[str, str] = {}
"""Procedures that no handing over waits for, with the reason."""

LABELS = ("common practice", "this crew's rule")
BANNED = re.compile(
    r"\b(proper(ly)?|as needed|appropriate(ly)?|ensur\w+|make sure|adequate(ly)?|suitabl[ey]|correctly|sufficient(ly)?"
    r"|(if|as|where|when) (necessary|required|needed))\b",
    re.IGNORECASE,
)
PROSE = {"do", "detail", "point", "why", "hazard", "harm", "avoid", "check", "passes", "outside", "stops"}
"""The fields that a helper reads. What is measured (``what``) has the basis of its measurement."""

UNITS = (
    "inches inch in feet foot ft yards yard yd miles mile mm cm m sq_ft sq_yd sq_in sq_mi cu_ft cu_yd cu_in gallons "
    "gallon gal qt oz pounds lbs lb tons ton g kg psi psf pcf kV V volts amps amp A watts kW W F degrees degree "
    "percent seconds second s minutes minute min hours hour h days day weeks week months month years gpm fpm ppm"
).split()
UNIT = "|".join(re.escape(unit).replace("_", " ") for unit in sorted(UNITS, key=len, reverse=True))
SPELLED_UNIT = (
    "inch(?:es)?|feet|foot|yards?|miles?|gallons?|pounds?|tons?|seconds?|minutes?|hours?|days?|weeks?|months?"
)
"""Units of numbers in words. Years are left out: 'it is seen for thirty years' is no figure that somebody works to."""
DIGITS = r"\d[\d,]*(?:\.\d+)?(?:[ -]\d+/\d+|/\d+)?"
SPELLED = (
    "half an?|three quarters of an?|a quarter of an?|a quarter|an?(?= hundred)|a hundred|two|three|four|five|six|seven"
    "|eight|nine|ten|eleven|twelve|fifteen|sixteen|twenty|thirty|forty|sixty"
)
FIGURE = re.compile(
    rf"(?<![\w./#-]){DIGITS}(?:(?: to | or | and |-){DIGITS})*(?:-| )(?:{UNIT})\b|(?<![\w./]){DIGITS}\s?%"
    rf"|(?<![\w./])1:\d+\b"
    rf"|(?i:\b(?:{SPELLED})(?:(?: to | or )(?:{SPELLED}))?[ -](?:{SPELLED_UNIT})\b)"
)
"""A number with a unit: '1/4 in', '60 to 200 lb', 'half an hour', '2 %', a slope of '1:48'."""
ONE_NUMBER = re.compile(DIGITS)
CALLED_BY = re.compile(
    r"common practice|this crew's rule|from memory|worked|maker"
    r"|\b(IRC|IPC|UPC|IBC|IPMC|NEC|NFPA|OSHA|MUTCD|ACI|ASTM|ANSI|CFR|ADA|"
    r"PROWAG|TCNA|NWFA|EPA|HUD|FMCSA|ASHRAE|AWI|FEMA|BHMA|DOT|APWA|CGA|source:)",
)
"""What stands in the parentheses beside a figure: a label, or a publisher with the clause."""
REFERENCE = re.compile(r"\[[^\]]*\]\([^)]*\)")
BRACKET = re.compile(r"\((?:[^()]|\([^()]*\))*\)")
SENTENCE = re.compile(r"(?<=[.!?:])\s+(?=[A-Z\"'(\[])")
WHO = re.compile(r"licen[sc]ed|plumber|electrician|fitter|utility|permit|owner|authority|engineer|city", re.IGNORECASE)
STEPS = range(10, 26)


def read(file: Path) -> Any:
    """A file of the book, each scalar as the text that was written."""
    return yaml.load(file.read_text(encoding="utf-8"), yaml.BaseLoader)


@dataclass(frozen=True)
class Procedure:
    """A procedure as it is written, with the name to tell."""

    name: str
    data: dict[str, Any]

    @property
    def id(self) -> str:
        """The name of its file."""
        return self.name.split("/")[1]

    @property
    def trade(self) -> str:
        """The name of its folder."""
        return self.name.split("/")[0]

    @property
    def steps(self) -> list[dict[str, Any]]:
        """Its steps."""
        return list(self.data["steps"])

    def messages(self) -> Iterator[tuple[str, dict[str, Any]]]:
        """Each safety message, with the place where it stands."""
        for message in self.data.get("safety", []):
            yield f"{self.name}, safety", message
        for step in self.steps:
            for message in step.get("messages", []):
                yield f"{self.name}, step '{step['id']}'", message

    def measurements(self) -> Iterator[tuple[str, dict[str, Any]]]:
        """Each measurement, with the place where it stands."""
        for step in self.steps:
            for measurement in step.get("measurements", []):
                yield f"{self.name}, step '{step['id']}', measurement '{measurement.get('what', '?')}'", measurement

    def parts(self) -> Iterator[tuple[str, dict[str, Any]]]:
        """What is worked from: safety, each step, acceptance."""
        yield f"{self.name}, safety", {"safety": self.data.get("safety", [])}
        for step in self.steps:
            yield f"{self.name}, step '{step['id']}'", step
        yield f"{self.name}, acceptance", {"acceptance": self.data.get("acceptance", [])}


@cache
def procedures() -> tuple[Procedure, ...]:
    """Every procedure of the book."""
    files = sorted(file for trade in kind("trades") for file in (BOOK / trade).glob("*.yaml"))
    return tuple(Procedure(f"{file.parent.name}/{file.stem}", read(file)) for file in files)


@cache
def kind(name: str) -> dict[str, dict[str, Any]]:
    """Every entry of one kind of the reference, by id, with the file that it stands in."""
    entries: dict[str, dict[str, Any]] = {}
    for file in sorted((BOOK / "reference" / name).glob("*.yaml")):
        for id, entry in read(file).items():
            assert id not in entries, f"reference/{name}: '{id}' stands in two files; take one away"
            entries[id] = {**entry, "file": f"reference/{name}/{file.name}"}
    return entries


def prose(node: Any) -> Iterator[tuple[str, str]]:
    """Each text that a helper reads in a part, with the name of its field."""
    if isinstance(node, dict):
        for key, value in node.items():
            if isinstance(value, str) and key in PROSE:
                yield key, " ".join(value.split())
            elif key not in ("calculator", "table", "drawing", "photo", "tools", "materials"):
                yield from prose(value)
    elif isinstance(node, list):
        for item in node:
            yield from prose(item)


def quantity(written: str) -> str:
    """A figure as written, or that of the value that it names."""
    name = written.removeprefix("-")
    if not name.startswith("value:"):
        return written
    return str(kind("values").get(name.removeprefix("value:"), {}).get("quantity", ""))


def numbers(node: Any) -> set[str]:
    """The numbers that fields state, values followed: what prose beside them may repeat."""
    if isinstance(node, dict):
        return {number for value in node.values() for number in numbers(value)}
    if isinstance(node, list):
        return {number for item in node for number in numbers(item)}
    return set(ONE_NUMBER.findall(quantity(node)))


def stated(step: dict[str, Any]) -> set[str]:
    """The numbers of a step's measurements, form and table: each has its basis there."""
    fields = ("target", "within", "plus", "minus", "least", "most")
    limits = [way for one in step.get("measurements", []) for way in one.get("ways", [one])]
    given = [[limit.get(field, "") for field in fields] for limit in limits]
    form, table = step.get("calculator", {}), step.get("table", {})
    return numbers([given, form.get("inputs", {}), {k: v for k, v in table.items() if k not in ("caption", "show")}])


def _referred(link: re.Match[str]) -> str:
    """What stands in place of a link: one to a source names it, any other is a reference."""
    return "source:" if "](source:" in link[0] else "REF"


def loose_figures(text: str, known: Iterable[str] = ()) -> list[str]:
    """The figures of a text that are no reference and have no label in their sentence.

    >>> loose_figures("Keep 2 in clear.")
    ['2 in']
    >>> loose_figures("Keep 2 in clear (common practice). Wait two hours.")
    ['two hours']
    >>> loose_figures("Keep [](value:gap) clear, and 1/4 in (IRC R302.1) below.")
    []
    >>> loose_figures("Lower it by 1/4 in.", known={"1/4"})
    []
    """
    found = []
    for sentence in SENTENCE.split(REFERENCE.sub(_referred, text)):
        brackets = BRACKET.findall(sentence)
        if any(CALLED_BY.search(bracket) for bracket in brackets):
            continue
        for match in FIGURE.finditer(sentence):
            if not set(ONE_NUMBER.findall(match[0]) or [match[0]]) <= set(known):
                found.append(match[0])
    return found


def basis_trouble(basis: Any) -> str:
    """What is wrong with where a figure comes from; empty when it is right."""
    if isinstance(basis, str):
        return "" if basis in LABELS else f"'{basis}' is no label"
    if not isinstance(basis, dict):
        return "it has no basis"
    if basis.get("source") not in kind("sources"):
        return f"there is no source '{basis.get('source')}'"
    return "" if basis.get("clause", "").strip() else f"no clause of '{basis['source']}' is named"


def tell(complaints: list[str]) -> None:
    """Fail with every complaint, a line each."""
    assert not complaints, f"{len(complaints)} complaints:\n" + "\n".join(complaints)


def has_unit(written: str) -> bool:
    """Whether a figure has a number and a unit or a word for what is counted."""
    return re.fullmatch(rf"-?{DIGITS}\s*[A-Za-z%°/].*", quantity(written)) is not None


def test_the_book_is_there() -> None:
    """The inspector has found the book: all its trades, some forty procedures, hundreds of texts."""
    assert len(procedures()) >= 40
    assert {procedure.trade for procedure in procedures()} == set(kind("trades"))
    assert sum(len(list(prose(part))) for procedure in procedures() for _, part in procedure.parts()) > 5000


def test_every_measurement_has_a_unit_and_a_tolerance() -> None:
    """Target with what it may be off, or a least or a most, each with its unit; and what to do outside."""
    complaints = []
    for procedure in procedures():
        for place, measurement in procedure.measurements():
            ways = measurement.get("ways", [measurement])
            given = [{part: way[part] for part in ("target", "within", "plus", "minus") if part in way} for way in ways]
            limits = [{part: way[part] for part in ("least", "most") if part in way} for way in ways]
            off = any(one.get("target") and ("within" in one or {"plus", "minus"} <= set(one)) for one in given)
            if not (off or any(limits)):
                complaints.append(f"{place}: write 'target' with 'within', or 'least' or 'most'")
            complaints.extend(
                f"{place}: '{part}: {written}' has no unit; write it like '1/4 in'"
                for one in [*given, *limits]
                for part, written in one.items()
                if not isinstance(written, dict) and not has_unit(written)
            )
            if not measurement.get("outside", "").strip():
                complaints.append(f"{place}: write in 'outside' what to do then")
    tell(complaints)


def test_no_reading_and_no_input_is_told_by_its_sign() -> None:
    """One person's plus is another's minus: which way a figure goes is picked in words."""
    signs = re.compile(r"\b(plus|minus)\b|less than (nothing|nought|0)", re.IGNORECASE)
    asked = {place: str(one["what"]) for each in procedures() for place, one in each.measurements()}
    for calculator in CALCULATORS.values():
        declared: list[Input | Output] = [each for item in calculator.inputs for each in (item, *item.columns)]
        declared += [each for item in calculator.outputs for each in (item, *item.columns)]
        asked |= {f"{calculator.name}.{each.name}": f"{each.label}. {each.help}" for each in declared}
    tell([f"{place}: say the two ways in words: '{words}'" for place, words in asked.items() if signs.search(words)])


def test_every_figure_in_prose_has_a_source_or_a_label() -> None:
    """A figure with its unit is a reference, stands beside its label or clause, or repeats one that the step states."""
    complaints = []
    for procedure in procedures():
        everywhere = set().union(*(stated(step) for step in procedure.steps))
        for place, part in procedure.parts():
            known = everywhere if place.endswith("acceptance") else stated(part)
            for field, text in prose(part):
                for figure in loose_figures(text, known):
                    complaints.append(
                        f"{place}, {field}: '{figure}' in '{text[:70]}...': write [](value:...), '(common practice)', "
                        "'(this crew's rule)' or the clause behind it"
                    )
    tell(complaints)


def test_every_figure_of_an_answer_has_a_source_or_a_label() -> None:
    """What a learner is told; a figure of the question itself may come back."""
    complaints = []
    for procedure in procedures():
        everywhere = set().union(*(stated(step) for step in procedure.steps))
        for question in procedure.data.get("questions", []):
            asked = {
                part for figure in FIGURE.findall(question["ask"]) for part in [figure, *ONE_NUMBER.findall(figure)]
            }
            for figure in loose_figures(" ".join(question["answer"].split()), everywhere | asked):
                complaints.append(f"{procedure.name}, answer to '{question['ask'][:50]}...': '{figure}' has no label")
    tell(complaints)


def test_every_figure_of_a_danger_or_an_inspection_has_a_label() -> None:
    """What hurts, what to do after, what somebody looks at. What protects has its basis beside it."""
    tell(
        [
            f"{entry['file']}, '{id}', {field}: '{figure}' has no label; write one in parentheses, or a reference"
            for name in ("dangers", "inspections")
            for id, entry in kind(name).items()
            for field in ("hazard", "harm", "afterwards", "looks_at")
            for figure in loose_figures(" ".join(entry.get(field, "").split()))
        ]
    )


def test_every_basis_is_a_label_or_a_clause_of_a_source() -> None:
    """Values, measurements, hours, waits, and what protects from a danger."""
    asked: list[tuple[str, Any]] = [
        (f"{value['file']}, value '{id}'", value.get("basis")) for id, value in kind("values").items()
    ]
    for id, danger in kind("dangers").items():
        for number, protection in enumerate(danger["protects"], 1):
            asked.append((f"{danger['file']}, danger '{id}', what protects {number}", protection.get("basis")))
    for procedure in procedures():
        asked.append((f"{procedure.name}, labour", procedure.data["labour"].get("basis")))
        for number, closes in enumerate(procedure.data.get("closes", []), 1):
            asked.append((f"{procedure.name}, closes {number}", closes.get("basis")))
        asked.extend((place, measurement.get("basis")) for place, measurement in procedure.measurements())
    tell(
        [
            f"{place}: {trouble}; write 'basis: common practice', 'this crew's rule' or {{source: ..., clause: ...}}"
            for place, basis in asked
            if (trouble := basis_trouble(basis))
        ]
    )


def test_no_word_stands_in_place_of_a_figure_a_sign_or_a_test() -> None:
    """'Properly', 'as needed' and their like are nothing that somebody can see."""
    tell(
        [
            f"{place}, {field}: '{found[0]}' in '{text[:70]}...': write the figure, the sign or the test"
            for procedure in procedures()
            for place, part in procedure.parts()
            for field, text in prose(part)
            if (found := BANNED.search(text))
        ]
    )


def test_a_reserved_trade_says_who_may_do_it() -> None:
    """Concrete, plumbing and power: what is kept for whom, and what the crew does."""
    reserved = {id for id, trade in kind("trades").items() if trade.get("reserved") == "true"}
    assert {"concrete", "plumbing", "power"} <= reserved
    tell(
        [
            f"{procedure.name}: write in 'reserved' what is kept for whom, and what the crew does"
            for procedure in procedures()
            if procedure.trade in reserved and not WHO.search(procedure.data.get("reserved", ""))
        ]
    )


def test_every_procedure_says_who_does_it() -> None:
    """Who, and what one may do alone."""
    tell(
        [
            f"{procedure.name}: write in '{field}' who may do it"
            for procedure in procedures()
            for field in ("who", "alone")
            if not procedure.data.get(field, "").strip()
        ]
    )


def test_every_material_has_a_quantity() -> None:
    """Listed materials have a figure or a calculator's output; what a step uses is listed, what is listed is used."""
    complaints = []
    for procedure in procedures():
        listed = {line["material"] for line in procedure.data.get("materials", [])}
        used = {material for step in procedure.steps for material in step.get("materials", [])}
        for line in procedure.data.get("materials", []):
            amount = line.get("quantity", "")
            counted = kind("materials")[line["material"]]["counted_in"]
            if isinstance(amount, dict):
                good = bool(amount.get("calculator")) and bool(amount.get("output"))
            else:
                good = re.fullmatch(rf"{DIGITS}\s+{re.escape(counted)}", quantity(amount)) is not None
            if not good:
                complaints.append(
                    f"{procedure.name}, material '{line['material']}': write 'quantity' in '{counted}', or as an output"
                )
            if not line.get("per", "").strip():
                complaints.append(f"{procedure.name}, material '{line['material']}': write 'per' how much work")
        for id in sorted(used - listed):
            complaints.append(f"{procedure.name}: a step uses '{id}', and 'materials' gives no quantity of it")
        for id in sorted(listed - used):
            complaints.append(f"{procedure.name}: no step uses the material '{id}'; name it at the step, or drop it")
    tell(complaints)


def test_tools_of_steps_are_on_the_list() -> None:
    """What a step takes in hand stands on the list at the top."""
    complaints = []
    for procedure in procedures():
        lines = procedure.data.get("tools", [])
        listed = {line if isinstance(line, str) else line["tool"] for line in lines}
        for step in procedure.steps:
            for id in sorted(set(step.get("tools", [])) - listed):
                complaints.append(f"{procedure.name}, step '{step['id']}': list the tool '{id}' at the top too")
    tell(complaints)


def test_every_warning_names_its_danger() -> None:
    """DANGER, WARNING and CAUTION lead to what protects, and say hazard, harm and what to do."""
    complaints = []
    for procedure in procedures():
        for place, message in procedure.messages():
            if message["word"] != "NOTICE" and message.get("danger") not in kind("dangers"):
                complaints.append(f"{place}: write 'danger' with an entry of reference/dangers")
            for field in ("hazard", "avoid", *(["harm"] if message["word"] != "NOTICE" else [])):
                if not message.get(field, "").strip():
                    complaints.append(f"{place}: this {message['word']} has no '{field}'")
    tell(complaints)


def test_every_danger_is_met() -> None:
    """An entry of the dangers that no step warns of says nothing to anybody."""
    met = {message.get("danger") for procedure in procedures() for _, message in procedure.messages()}
    tell(
        [
            f"{danger['file']}: no step warns of '{id}'; name it at a message, or drop it"
            for id, danger in kind("dangers").items()
            if id not in met
        ]
    )


def test_the_dangers_of_a_fit_out_are_there() -> None:
    """Those without which a list of dangers is none."""
    wanted = {
        "silica", "wet-cement", "trench", "live-power", "fuel-gas", "saws", "finish-vapour", "rags-that-heat",
        "buried-lines", "falls", "traffic", "sewer-gas", "hot-water", "old-poisons", "lifting",
    }  # fmt: skip
    assert wanted <= set(kind("dangers"))


def test_a_message_stands_before_what_it_guards() -> None:
    """Never after."""
    complaints = []
    for procedure in procedures():
        ids = [step["id"] for step in procedure.steps]
        for message in procedure.data.get("safety", []):
            if message.get("guards", ids[0]) not in ids:
                complaints.append(f"{procedure.name}, safety: there is no step '{message['guards']}' to guard")
        for number, step in enumerate(procedure.steps):
            for message in step.get("messages", []):
                guarded = message.get("guards", step["id"])
                if guarded not in ids[number:]:
                    complaints.append(f"{procedure.name}, step '{step['id']}': put it at '{guarded}' or before")
    tell(complaints)


@pytest.mark.parametrize("field", ["acceptance", "questions", "sources", "other_names"])
def test_every_procedure_has_its_parts(field: str) -> None:
    """Acceptance, questions for a learner, sources, the words that people search for."""
    least = {"acceptance": 3, "questions": 5, "sources": 1, "other_names": 4}[field]
    tell(
        [
            f"{procedure.name}: has {len(procedure.data.get(field, []))} of '{field}'; write {least} or more"
            for procedure in procedures()
            if len(procedure.data.get(field, [])) < least
        ]
    )


def test_every_procedure_has_a_handful_of_steps() -> None:
    """10 to 25, with ids of their own."""
    complaints = []
    for procedure in procedures():
        ids = [step["id"] for step in procedure.steps]
        if len(ids) not in STEPS:
            complaints.append(f"{procedure.name}: has {len(ids)} steps; write 10 to 25")
        complaints.extend(f"{procedure.name}: two steps are named '{id}'" for id in set(ids) if ids.count(id) > 1)
    tell(complaints)


def test_every_step_can_be_seen_to_be_done() -> None:
    """A step says what makes or breaks it, measures, checks or shows: none is one bare sentence."""
    telling = ("key_points", "measurements", "checks", "table", "calculator", "hold")
    tell(
        [
            f"{procedure.name}, step '{step['id']}': write a check, a measurement or a key point with its reason"
            for procedure in procedures()
            for step in procedure.steps
            if not any(step.get(part) for part in telling)
        ]
    )


def test_hours_grow_with_the_work() -> None:
    """Hours are a figure or a calculator's output, for a stated quantity."""
    complaints = []
    for procedure in procedures():
        labour = procedure.data["labour"]
        if isinstance(labour["hours"], str) and not re.search(
            r"\d\s*(h|hours?|min|minutes)$", quantity(labour["hours"])
        ):
            complaints.append(f"{procedure.name}, labour: write 'hours' in hours")
        if not re.search(r"\d\s*\S", labour.get("per", "")):
            complaints.append(f"{procedure.name}, labour: write 'per' for how much work the hours are")
    tell(complaints)


def test_every_hold_names_an_inspection() -> None:
    """Who looks, and what stops until then."""
    complaints = []
    for procedure in procedures():
        for step in procedure.steps:
            hold = step.get("hold")
            if hold is None:
                continue
            if hold.get("inspection") not in kind("inspections"):
                complaints.append(f"{procedure.name}, step '{step['id']}': write in 'hold' an inspection of the book")
            if not hold.get("stops", "").strip():
                complaints.append(f"{procedure.name}, step '{step['id']}': write in 'stops' what waits")
    tell(complaints)


@cache
def graph() -> networkx.DiGraph[str]:
    """What goes before what: an arrow from each procedure to what waits for it."""
    links: networkx.DiGraph[str] = networkx.DiGraph()
    links.add_nodes_from(procedure.id for procedure in procedures())
    for procedure in procedures():
        for line in procedure.data.get("before", []):
            if "procedure" in line:
                links.add_edge(line["procedure"], procedure.id)
    return links


def test_every_link_leads_to_a_procedure() -> None:
    """What must be done first is a procedure of the book, and says why."""
    ids = {procedure.id for procedure in procedures()}
    complaints = [f"'{id}' is in some 'before', and no procedure" for id in graph() if id not in ids]
    for procedure in procedures():
        for line in procedure.data.get("before", []):
            if not line.get("why", "").strip():
                complaints.append(
                    f"{procedure.name}, before: write 'why' of '{line.get('procedure', line.get('state'))}'"
                )
    tell(complaints)


def test_the_order_has_no_circle() -> None:
    """Nothing waits for itself."""
    try:
        circle = networkx.find_cycle(graph())
    except networkx.NetworkXNoCycle:
        return
    raise AssertionError(f"take one of these links out of its 'before': {circle}")


def test_every_procedure_leads_to_handing_over() -> None:
    """From the first stake to the keys: the house cannot be handed over without it, or it is said why."""
    leading = networkx.ancestors(graph(), LAST) | {LAST}
    tell(
        [
            f"{procedure.name}: nothing on the way to {LAST} waits for it; name it in a 'before', or say why not"
            for procedure in procedures()
            if procedure.id not in leading and procedure.id not in ENDS_ELSEWHERE
        ]
    )
    assert set(ENDS_ELSEWHERE) <= set(graph()) - leading, "take out of ENDS_ELSEWHERE what leads there now"
