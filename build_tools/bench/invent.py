"""Writes a large book: the real one, filled up with invented procedures that use its tools, materials and values."""

from __future__ import annotations

import shutil
from dataclasses import dataclass
from pathlib import Path
from random import Random
from typing import Any

import yaml

from build_tools.bench.tables import Shape, table_shapes
from build_tools.bench.words import STATES, THINGS, VERBS, Words
from build_tools.book.book import Book
from build_tools.book.load import load_book

STEPS = 15
"""Of what else a procedure holds there is as much as the real ones have for that many steps."""
SIZES = ["1/16 in", "1/8 in", "3/16 in", "1/4 in", "3/8 in", "1/2 in", "3/4 in"]
_Dumper: Any = getattr(yaml, "CSafeDumper", yaml.SafeDumper)


def write_book(real: Path, folder: Path, procedures: int, seed: int = 1) -> None:
    """Copy the real book to ``folder`` and add invented procedures until it holds ``procedures`` of them."""
    shutil.copytree(real, folder, ignore=shutil.ignore_patterns("jobs"))
    book = load_book(folder).book
    writer = _Writer(book, Random(seed), table_shapes(book), sorted(book.procedures))
    for number in range(1, procedures - len(book.procedures) + 1):
        trade = sorted(book.trades)[number % len(book.trades)]
        id = f"work-{number:04}"
        (folder / trade).mkdir(exist_ok=True)
        text = yaml.dump(writer.procedure(number), Dumper=_Dumper, sort_keys=False, width=120, allow_unicode=True)
        (folder / trade / f"{id}.yaml").write_text(text, encoding="utf-8")
        writer.written.append(id)


@dataclass
class _Writer:
    """Makes one procedure after the other; each may refer to those before it."""

    book: Book
    random: Random
    shapes: list[Shape]
    written: list[str]

    def __post_init__(self) -> None:
        self.words = Words(self.random)

    def procedure(self, number: int) -> dict[str, Any]:
        """A procedure as its YAML has it."""
        words, random = self.words, self.random
        tools = self._some(self.book.tools, 18)
        materials = self._some(self.book.materials, 8)
        steps = [self._step(index, number, tools, materials) for index in range(STEPS)]
        _use_all(steps, tools, "tools")
        _use_all(steps, materials, "materials")
        return {
            "title": f"{words.one(VERBS).capitalize()} the {words.one(THINGS)}, method {number}",
            "other_names": [f"{words.one(THINGS)} {words.one(STATES)}" for _ in range(7)],
            "summary": f"{words.detail()} {words.sign()}",
            "revision": {
                "number": str(random.randint(1, 9)),
                "date": f"2026-{random.randint(1, 12):02}-{random.randint(1, 28):02}",
                "changed": words.order(),
                "approved_by": random.choice(sorted(self.book.people)),
            },
            "who": random.choice(["helper", "lead"]),
            "alone": words.point(),
            "reserved": words.why(),
            "labour": {
                "people": str(random.randint(1, 3)),
                "hours": f"{random.randint(1, 12)} h",
                "per": "1 each",
                "basis": "this crew's rule",
            },
            "before": [*self._earlier(), {"state": words.point(), "why": words.why()}],
            "closes": [self._closes()],
            "safety": [self._message("WARNING") for _ in range(2)],
            "tools": tools,
            "materials": [self._material(name) for name in materials],
            "steps": steps,
            "acceptance": [self._check() for _ in range(4)],
            "questions": [{"ask": f"Why is this so: {words.point()}", "answer": words.detail()} for _ in range(6)],
            "sources": [
                {"source": name, "clause": f"chapter {random.randint(1, 20)}"}
                for name in self._some(self.book.sources, 6)
            ],
        }

    def _step(self, index: int, number: int, tools: list[str], materials: list[str]) -> dict[str, Any]:
        words, random = self.words, self.random
        step: dict[str, Any] = {"id": f"step-{index + 1}", "do": words.order()}
        step["detail"] = f"{words.detail()} {self._reference(2)}"
        step["key_points"] = [{"point": words.point(), "why": words.why()} for _ in range(2)]
        if index % 5 in (1, 3):
            step["messages"] = [self._message(random.choice(["WARNING", "CAUTION"]))]
        step["tools"] = random.sample(tools, min(4, len(tools)))
        step["materials"] = random.sample(materials, min(1, len(materials)))
        if index % 4 != 0:
            step["measurements"] = [self._measurement()]
        if index % 2 == 1:
            step["checks"] = [self._check()]
        if self.shapes and (index == 4 or (index == 10 and number % 5 == 0)):
            step["table"] = random.choice(self.shapes).table(random, words.order())
        if self.shapes and (index == 6 or (index == 12 and number % 2 == 0)):
            step["calculator"] = random.choice(self.shapes).form()
        if self.book.inspections and index == 8:
            step["hold"] = {"inspection": self._some(self.book.inspections, 1)[0], "stops": words.point()}
        return step

    def _closes(self) -> dict[str, str]:
        words = self.words
        time = f"{self.random.randint(2, 72)} h"
        return {
            "what": words.place(),
            "shuts_out": self.random.choice(("everybody", "next work", "users")),
            "for": time,
            "why": words.why(),
            "basis": "common practice",
        }

    def _material(self, name: str) -> dict[str, str]:
        quantity = f"{self.random.randint(1, 24)} {self.book.materials[name].item.counted_in}"
        return {"material": name, "quantity": quantity, "per": self.words.place()}

    def _message(self, word: str) -> dict[str, str]:
        hazard, harm, avoid = self.words.danger()
        return {"word": word, "hazard": hazard, "harm": harm, "avoid": avoid}

    def _check(self) -> dict[str, str]:
        return {"check": self.words.order(), "passes": self.words.sign(), "outside": self.words.mend()}

    def _measurement(self) -> dict[str, str]:
        random = self.random
        target = f"{random.randint(2, 96)} {random.choice(['in', 'in', 'ft'])}"
        what = f"The {self.words.one(THINGS)} {self.words.place()}"
        return {
            "what": what,
            "target": target,
            "within": random.choice(SIZES),
            "outside": self.words.mend(),
            "basis": "common practice",
        }

    def _earlier(self) -> list[dict[str, str]]:
        """The procedures that come first."""
        ids = self._some(self.written, 2)
        return [{"procedure": id, "why": self.words.why()} for id in ids]

    def _reference(self, count: int) -> str:
        """A sentence that refers to other entries of the book."""
        kinds = {"procedure": self.written, "term": self.book.terms, "value": self.book.values, "tool": self.book.tools}
        links = [f"[]({kind}:{self._some(names, 1)[0]})" for kind, names in kinds.items() if names]
        return f"See {' and '.join(self._some(links, count))}." if links else ""

    def _some(self, ids: Any, count: int) -> list[str]:
        return self.random.sample(sorted(ids), min(count, len(ids)))


def _use_all(steps: list[dict[str, Any]], ids: list[str], field: str) -> None:
    """Every listed tool and material is used by some step."""
    used = {id for step in steps for id in step[field]}
    for index, id in enumerate(id for id in ids if id not in used):
        steps[index][field].append(id)
