"""Types of values, as far as annotations and constants tell them.

Script tells Python's types apart less well (a list has no truth of its own, 3.0 is 3), so the compiler picks what it
writes by type. ``any`` is always right: the helpers of ``script/python.js`` then look at run time.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping, MutableMapping, Sequence
from dataclasses import dataclass, fields, is_dataclass
from functools import cache, reduce
from types import NoneType, UnionType
from typing import Any, Literal, Union, get_args, get_origin, get_type_hints, is_typeddict

from build_tools.browser.in_script import data_in_script

Kind = Literal["never", "none", "bool", "int", "float", "str", "list", "tuple", "dict", "record", "any"]


@dataclass(frozen=True, slots=True)
class Type:
    """A kind of value; ``of`` are the types inside it.

    A list has one, a tuple one for each place (or one for all), a dict its keys' and its values'. ``cls`` is the class
    of a record (a frozen dataclass), or of a dict with declared keys (a TypedDict). A dict that has ``digits`` as keys
    is looked up only: script would walk through it in order of size.
    """

    kind: Kind
    of: tuple[Type, ...] = ()
    cls: type | None = None
    digits: bool = False

    @property
    def item(self) -> Type:
        """What walking through it gives."""
        if self.kind in ("str", "never"):
            return self
        return self.of[0] if self.kind == "dict" else joined(self.of) if self.of else ANY

    def at(self, place: object) -> Type:
        """What stands at a place or under a key; None for one that is not known before the run."""
        if self.kind in ("str", "never"):
            return self
        if self.kind == "dict":
            return fields_of(self.cls).get(str(place), ANY) if self.cls else self.of[1]
        if self.kind == "tuple" and isinstance(place, int) and -len(self.of) <= place < len(self.of):
            return self.of[place]
        return self.item if self.kind in ("list", "tuple") else ANY


ANY, NEVER, NONE = Type("any"), Type("never"), Type("none")
BOOL, INT, FLOAT, STR = Type("bool"), Type("int"), Type("float"), Type("str")
NUMBERS = (INT, FLOAT)
PLAIN: dict[object, Type] = {bool: BOOL, int: INT, float: FLOAT, str: STR, None: NONE, NoneType: NONE}
LISTS = (list, Sequence, Collection, Iterable, Iterator)
DICTS = (dict, Mapping, MutableMapping)
DEEPEST = 6


def list_of(item: Type) -> Type:
    """A list of such items."""
    return Type("list", (item,))


def dict_of(value: Type, digits: bool = False) -> Type:
    """A dict of such values by words."""
    return Type("dict", (STR, value), digits=digits)


def of_hint(hint: Any) -> Type:
    """The type that an annotation declares.

    >>> of_hint(dict[str, list[float]]).at("x").item.kind
    'float'
    """
    if hint in PLAIN:
        return PLAIN[hint]
    origin, inner = get_origin(hint) or hint, get_args(hint)
    if origin in (Union, UnionType):
        rest = [of_hint(each) for each in inner if each is not NoneType]
        return rest[0] if len(rest) == 1 and rest[0].kind == "record" else ANY
    if origin is Literal:
        return joined(of_value(each) for each in inner)
    if origin in LISTS:
        return list_of(of_hint(inner[0]) if inner else ANY)
    if origin is tuple:
        return Type("tuple", tuple(of_hint(each) for each in inner if each is not Ellipsis))
    if origin in DICTS:
        return Type("dict", (of_hint(inner[0]), of_hint(inner[1])) if inner else (ANY, ANY))
    if is_typeddict(hint):
        return Type("dict", (STR, ANY), hint)
    return Type("record", (), hint) if isinstance(hint, type) and is_dataclass(hint) else ANY


@cache
def fields_of(cls: type | None) -> dict[str, Type]:
    """The fields of a dataclass, or the keys of a TypedDict, with their types."""
    return {name: of_hint(hint) for name, hint in get_type_hints(cls).items()} if cls else {}


def of_value(value: object) -> Type:
    """The type of a constant.

    >>> of_value({"a": 1, "b": 2.5}).at("a").kind
    'float'
    """
    if value is None or type(value) in PLAIN:
        return PLAIN[None if value is None else type(value)]
    if isinstance(value, list):
        return list_of(joined(map(of_value, value)))
    if isinstance(value, tuple):
        return Type("tuple", tuple(map(of_value, value)))
    if isinstance(value, dict):
        digits = any(isinstance(key, str) and key.isdigit() for key in value)
        return dict_of(joined(map(of_value, value.values())), digits)
    return Type("record", (), type(value)) if is_dataclass(value) else ANY


def joined(types: Iterable[Type]) -> Type:
    """The type of a value that has one of these types."""
    return reduce(join, types, NEVER)


def join(one: Type, other: Type, depth: int = 0) -> Type:
    """The narrowest type that holds both.

    >>> join(INT, FLOAT).kind, join(INT, STR).kind, join(list_of(NEVER), list_of(STR)).item.kind
    ('float', 'any', 'str')
    """
    if one == other or other == NEVER:
        return one
    if one == NEVER:
        return other
    if one in NUMBERS and other in NUMBERS:
        return FLOAT
    same = one.kind == other.kind and one.kind in ("list", "tuple", "dict") and depth < DEEPEST
    if not same or (one.cls is not other.cls):
        return ANY
    if len(one.of) != len(other.of):
        return Type(one.kind, (join(one.item, other.item, depth + 1),))
    pairs = zip(one.of, other.of, strict=True)
    inner = tuple(join(mine, theirs, depth + 1) for mine, theirs in pairs)
    return Type(one.kind, inner, one.cls, one.digits or other.digits)


def families_of(*types: Type) -> set[str]:
    """What values are added to and compared with their like: ``number``, ``text``, ``list``, a kind; less the unknown.

    >>> sorted(families_of(BOOL, STR, ANY))
    ['number', 'text']
    """
    names = {"int": "number", "float": "number", "bool": "number", "str": "text", "tuple": "list"}
    return {names.get(each.kind, each.kind) for each in types} - {"any", "never"}


def figure_of(is_divided: bool, left: Type, right: Type) -> Type:
    """The type of a figure that was worked out; ``any`` where it may be a whole number or not."""
    if is_divided or FLOAT in (left, right):
        return FLOAT
    return INT if {left.kind, right.kind} <= {"int", "bool"} else ANY


def as_written(value: Any) -> Any:
    """A constant as JSON can hold it; raises TypeError for one that cannot be, ValueError for a figure out of reach."""
    if isinstance(value, list | tuple):
        return [as_written(each) for each in value]
    if isinstance(value, dict):
        if not all(isinstance(key, str) and key != "__proto__" for key in value):
            raise TypeError
        return {key: as_written(each) for key, each in value.items()}
    if is_dataclass(value) and not isinstance(value, type):
        return {field.name: as_written(getattr(value, field.name)) for field in fields(value)}
    if isinstance(value, int | float) and (value - value != 0 or (isinstance(value, int) and abs(value) > 2**53)):
        raise ValueError
    if value is not None and not isinstance(value, str | int | float):
        raise TypeError
    return value


def literal(value: object) -> str:
    """A constant as script."""
    return data_in_script(as_written(value))
