"""Which lock on which door, how many of each, which locks share a key and how many keys that makes."""

from __future__ import annotations

from typing import Annotated, Any, TypedDict

from calculators.declaration import COMMON_PRACTICE, CREW_RULE, Answer, Citation, Output, output_rows, refuse
from calculators.declaring import Guidance, Help, calculator, choice, count, rows, text, yes_no
from calculators.writing import decimal

FUNCTIONS = {
    "outside-door": "keyed entry",
    "garage-to-house": "keyed entry",
    "bedroom": "privacy",
    "bathroom": "privacy",
    "closet": "passage",
    "hall-or-other-room": "passage",
    "utility-room": "passage",
}
REASONS = {
    "outside-door": "Locks against the street with a key; opens from inside by the hand alone",
    "garage-to-house": "The garage door keeps nobody out, so this one locks like an outside door",
    "bedroom": "A button inside for privacy; a pin opens it from the hall when somebody needs help",
    "bathroom": "A button inside for privacy; a pin opens it from the hall when somebody needs help",
    "closet": "Nobody is to be locked in a closet, so it has nothing to lock",
    "hall-or-other-room": "Nothing to keep private and no way out to guard",
    "utility-room": "Nothing to keep private; give it a key group when the owner wants it locked",
}


def group_of(groups: list[dict[str, Any]], name: str) -> dict[str, Any]:
    """The key group of that name, capitals or not, added to the groups when it is new."""
    for group in groups:
        if group["group"].lower() == name.lower():
            return group
    added = {"group": name, "openings": 0, "cylinders": 0, "keys": 0}
    groups.append(added)
    return added


def refuse_openings(openings: list[dict[str, Any]]) -> None:
    """Refuse an empty list, names that are missing or twice, and a lock that could shut somebody in."""
    if len(openings) == 0:
        refuse("openings", "the list has no opening: give at least one")
    seen: list[str] = []
    for opening in openings:
        name = opening["name"].strip()
        if name == "":
            refuse("openings", "an opening has no name: give each one its own")
        if name.lower() in seen:
            refuse("openings", f"two openings are named '{name}': give each one its own name")
        seen.append(name.lower())
        if opening["inside_key"]:
            refuse(
                "openings",
                f"'{name}' would need a key from the inside, and a fire could shut somebody in. The way out opens from"
                " inside without a key (IRC R311.2), and this crew sets no such lock on any door",
            )


class LockedOpening(TypedDict):
    """A door that gets a lock."""

    name: Annotated[str, text("Opening")]
    use: Annotated[
        str,
        choice(
            "What it closes",
            {
                "outside-door": "Outside door",
                "garage-to-house": "Garage to house",
                "bedroom": "Bedroom",
                "bathroom": "Bathroom",
                "closet": "Closet",
                "hall-or-other-room": "Hall or other room",
                "utility-room": "Utility room",
            },
        ),
    ]
    group: Annotated[str, text("Key group", default=""), Help("Locks with the same word open with one key.")]
    deadbolt: Annotated[
        str, choice("Deadbolt", {"by-use": "as the use asks", "yes": "yes", "no": "no"}, default="by-use")
    ]
    inside_key: Annotated[bool, yes_no("Needs a key from inside", default="no")]


@calculator(
    title="Lock schedule",
    summary="Which lock belongs on which door, how many of each to order, and which share a key.",
    outputs=(
        Output("keyed_entry", "Keyed entry locksets", "count", "each", step=1),
        Output("privacy", "Privacy sets", "count", "each", step=1),
        Output("passage", "Passage sets", "count", "each", step=1),
        Output("deadbolts", "Deadbolts", "count", "each", step=1),
        Output("cylinders", "Cylinders", "count", "each", step=1),
        Output("groups", "Key groups", "count", step=1),
        Output("keys", "Keys to count", "count", step=1),
        Output("strike_screws", "Long screws for deadbolt strikes", "count", "each", step=1),
        output_rows(
            "schedule",
            "Schedule",
            Output("name", "Opening", "text"),
            Output("function", "Function", "text"),
            Output("deadbolt", "Deadbolt", "yes-no"),
            Output("group", "Key group", "text"),
            Output("reason", "Why", "text"),
        ),
        output_rows(
            "key_groups",
            "Key groups",
            Output("group", "Key group", "text"),
            Output("openings", "Openings", "count", step=1),
            Output("cylinders", "Cylinders", "count", step=1),
            Output("keys", "Keys", "count", step=1),
        ),
    ),
    formula=(
        "Outside and from the garage: keyed entry and deadbolt. Bedroom and bathroom: privacy. All else: passage, or"
        " keyed entry where a key group is given. Keys = cylinders x keys with each; an entry lock is one cylinder and"
        " a deadbolt another."
    ),
    sources=(
        Citation("irc", "R311.2"),
        Citation("ipmc", "304.18.1"),
        Citation("municipal-door-security", "locking hardware"),
        COMMON_PRACTICE,
        CREW_RULE,
    ),
    example={
        "openings": [
            {"name": "Front door", "use": "outside-door", "group": "house"},
            {"name": "Back door", "use": "outside-door", "group": "house"},
            {"name": "Bedroom 1", "use": "bedroom"},
            {"name": "Bath", "use": "bathroom"},
            {"name": "Hall closet", "use": "closet"},
        ]
    },
    other_names=("door hardware schedule", "key schedule", "which knob", "keyed alike"),
    cannot_decide=(
        "Which doors must have which lock, and whether a door from the garage must close by itself, is for the local"
        " code and the inspector. A landlord's duties about locks and keys are set by the law of the place."
    ),
)
def lock_schedule(
    openings: Annotated[list[dict[str, Any]], rows("Openings", LockedOpening)],
    keys_each: Annotated[int, count("Keys with each cylinder", "2, from 1 to 10, usually 2 to 3")],
    screws_each: Annotated[
        int,
        count("Long screws at each deadbolt strike", "4, from 2 to 8"),
        Guidance("at least 4", "door security codes of cities"),
    ],
) -> Answer:
    """The function of each lock, the totals by function, the key groups and the keys.

    A keyed opening without a group is a group of its own; its lock and its deadbolt share a key. Refused when there
    is no opening or when one would need a key from the inside.

    Source: IRC R311.2 (the way out opens from inside without a key); the functions are common practice.

    >>> front = {"name": "Front", "use": "outside-door", "group": "", "deadbolt": "by-use", "inside_key": False}
    >>> bath = {"name": "Bath", "use": "bathroom", "group": "", "deadbolt": "by-use", "inside_key": False}
    >>> found = lock_schedule(openings=[front, bath])
    >>> found["keyed_entry"], found["privacy"], found["deadbolts"], found["cylinders"], found["keys"]
    (1, 1, 1, 2, 4.0)
    """
    totals = {"keyed entry": 0, "privacy": 0, "passage": 0}
    deadbolts = 0
    ways_out = 0
    schedule = []
    groups: list[dict[str, Any]] = []
    cautions = []
    working = []
    refuse_openings(openings)
    for opening in openings:
        name = opening["name"].strip()
        use = opening["use"]
        asked = opening["group"].strip()
        from_outside = use == "outside-door" or use == "garage-to-house"
        lock = FUNCTIONS[use]
        reason = REASONS[use]
        if asked != "" and not from_outside:
            if use == "bathroom":
                cautions.append(f"'{name}' is a bathroom: it keeps its privacy lock, and its key group is not used.")
                asked = ""
            else:
                lock = "keyed entry"
                reason = "Keyed from outside, as a key group was given; the inside always opens by the hand alone"
                cautions.append(f"'{name}' is keyed from outside: try it from inside, locked, before anybody uses it.")
        bolted = opening["deadbolt"] == "yes" or (from_outside and opening["deadbolt"] != "no")
        if bolted and not from_outside:
            cautions.append(f"'{name}' is no way in from outside: a deadbolt there can shut somebody in. Leave it off.")
        if from_outside and not bolted:
            cautions.append(f"'{name}' is a way in from outside and has no deadbolt.")
        cylinders = 1 if lock == "keyed entry" else 0
        if bolted:
            cylinders = cylinders + 1
            deadbolts = deadbolts + 1
        if use == "outside-door":
            ways_out = ways_out + 1
        shown = ""
        if cylinders > 0:
            shown = asked or f"{name} (own key)"
            group = group_of(groups, shown)
            group["openings"] = group["openings"] + 1
            group["cylinders"] = group["cylinders"] + cylinders
            group["keys"] = group["keys"] + cylinders * keys_each
        totals[lock] = totals[lock] + 1
        schedule.append({"name": name, "function": lock, "deadbolt": bolted, "group": shown, "reason": reason})
    cylinders_all = 0
    each = decimal(keys_each, 0)
    for group in groups:
        cylinders_all = cylinders_all + group["cylinders"]
        word = group["group"]
        count = group["cylinders"]
        working.append(f"key group '{word}': cylinders {count} x keys {each} = {decimal(count * keys_each, 0)}")
    if ways_out == 0:
        cautions.append("No outside door is in the list: is the way out on another list?")
    screws = decimal(screws_each, 0)
    working.append(f"strike screws: deadbolts {deadbolts} x {screws} = {decimal(deadbolts * screws_each, 0)}")
    return {
        "keyed_entry": totals["keyed entry"],
        "privacy": totals["privacy"],
        "passage": totals["passage"],
        "deadbolts": deadbolts,
        "cylinders": cylinders_all,
        "groups": len(groups),
        "keys": cylinders_all * keys_each,
        "strike_screws": deadbolts * screws_each,
        "schedule": schedule,
        "key_groups": groups,
        "cautions": cautions,
        "working": working,
    }
