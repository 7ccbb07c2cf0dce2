"""Writes a large book: the real one, filled up with invented procedures that use its tools, materials and values."""

from __future__ import annotations

import shutil
from dataclasses import dataclass
from pathlib import Path
from random import Random
from typing import Any

import yaml

from build_tools.bench.tables import Shape, table_shapes
from build_tools.bench.words import THINGS, VERBS, Words
from build_tools.book.book import Book
from build_tools.book.load import load_book

STEPS = 15
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
        tools = self._some(self.book.tools, 8)
        materials = self._some(self.book.materials, 5)
        sources = self._some(self.book.sources, 2)
        steps = [self._step(index, tools, materials) for index in range(STEPS)]
        _use_all(steps, tools, "tools")
        _use_all(steps, materials, "materials")
        return {
            "title": f"{words.one(VERBS).capitalize()} the {words.one(THINGS)}, method {number}",
            "other_names": [f"{words.one(THINGS)} {words.one(VERBS)}ing"],
            "summary": f"{words.detail()} {words.sign()}",
            "revision": {
                "number": str(random.randint(1, 9)),
                "date": f"2026-{random.randint(1, 12):02}-{random.randint(1, 28):02}",
                "changed": words.order(),
                "approved_by": random.choice(sorted(self.book.people)),
            },
            "who": random.choice(["helper", "lead"]),
            "alone": words.point(),
            "labour": {
                "people": str(random.randint(1, 3)),
                "hours": f"{random.randint(1, 12)} h",
                "per": "1 each",
                "basis": "this crew's rule",
            },
            "before": [*self._earlier(), {"state": words.point(), "why": words.why()}],
            "closes": [
                {
                    "what": words.place(),
                    "for": f"{random.randint(2, 72)} h",
                    "why": words.why(),
                    "basis": "common practice",
                }
            ],
            "safety": [self._message("WARNING")],
            "tools": tools,
            "materials": [
                {
                    "material": id,
                    "quantity": f"{random.randint(1, 24)} {self.book.materials[id].item.counted_in}",
                    "per": words.place(),
                }
                for id in materials
            ],
            "steps": steps,
            "acceptance": [self._check() for _ in range(3)],
            "questions": [{"ask": f"Why is this so: {words.point()}", "answer": words.why()} for _ in range(4)],
            "sources": [{"source": id, "clause": f"chapter {random.randint(1, 20)}"} for id in sources],
        }

    def _step(self, index: int, tools: list[str], materials: list[str]) -> dict[str, Any]:
        words, random = self.words, self.random
        step: dict[str, Any] = {"id": f"step-{index + 1}", "do": words.order()}
        if index % 2 == 0:
            step["detail"] = f"{words.detail()} {words.point()} {self._reference()}"
        step["key_points"] = [{"point": words.point(), "why": words.why()} for _ in range(2)]
        if index % 5 == 2:
            step["messages"] = [self._message(random.choice(["WARNING", "CAUTION"]))]
        step["tools"] = random.sample(tools, min(2, len(tools)))
        step["materials"] = random.sample(materials, min(1, len(materials)))
        if index % 2 == 1:
            step["measurements"] = [self._measurement()]
        if index % 3 == 1:
            step["checks"] = [self._check()]
        if self.shapes and index in (4, 10):
            step["table"] = random.choice(self.shapes).table(random, words.order())
        return step

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

    def _reference(self) -> str:
        """A sentence that refers to other entries of the book."""
        kinds = {"procedure": self.written, "term": self.book.terms, "value": self.book.values, "tool": self.book.tools}
        links = [f"[]({kind}:{self._some(ids, 1)[0]})" for kind, ids in kinds.items() if ids]
        return f"See {' and '.join(self._some(links, 2))}." if links else ""

    def _some(self, ids: Any, count: int) -> list[str]:
        return self.random.sample(sorted(ids), min(count, len(ids)))


def _use_all(steps: list[dict[str, Any]], ids: list[str], field: str) -> None:
    """Every listed tool and material is used by some step."""
    used = {id for step in steps for id in step[field]}
    for index, id in enumerate(id for id in ids if id not in used):
        steps[index][field].append(id)
