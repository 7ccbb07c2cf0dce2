"""What of a lock does not fit its door, and what mends it. Lengths in inches."""

from __future__ import annotations

from calculators.declaration import refuse
from calculators.writing import inches

PREPARED_BACKSETS = [2.375, 2.75]
SERIES_160_WIDTH = 1.0
SERIES_161_WIDTH = 1.125
"""ANSI/BHMA A156.115: the 160 preparation is for the shorter backset, the 161 for the longer one."""
REACH_LEAST = 34.0
REACH_MOST = 48.0
HAIR = 0.015625


def refuse_sizes(edge_bore: float, cross_bore: float, backset: float, thinnest: float, thickest: float) -> None:
    """Refuse bores that break out, and a box that takes no door."""
    if edge_bore >= cross_bore:
        refuse("edge_bore", f"{inches(edge_bore)} is not smaller than the cross bore, {inches(cross_bore)}")
    if backset <= cross_bore / 2:
        refuse(
            "backset",
            f"at a backset of {inches(backset)} a cross bore of {inches(cross_bore)} breaks out of the edge: "
            f"the backset must be over {inches(cross_bore / 2)}",
        )
    if thinnest > thickest:
        refuse("thickness_least", f"{inches(thinnest)} is more than the thickest door, {inches(thickest)}")


def faceplate_of(faceplate: str, backset: float, height: float, depth: float) -> tuple[float, float, float]:
    """Width, height and depth of the mortise for a faceplate; all 0 for a latch that is driven in.

    >>> [faceplate_of("series", 2.75, 2.25, 0.125), faceplate_of("drive-in", 2.75, 2.25, 0.125)]
    [(1.125, 2.25, 0.125), (0.0, 0.0, 0.0)]
    """
    if faceplate == "drive-in":
        return (0.0, 0.0, 0.0)
    is_161 = faceplate == "series" and abs(backset - PREPARED_BACKSETS[1]) <= HAIR
    return (SERIES_161_WIDTH if is_161 else SERIES_160_WIDTH, height, depth)


def misfit(fails: bool, what: str, mend: str) -> list[dict[str, str]]:
    """A line of what does not fit, when it fails."""
    return [{"what": what, "mend": mend}] if fails else []


def thickness_misfits(thickness: float, least: float, most: float) -> list[dict[str, str]]:
    """Whether the hardware takes the door's thickness.

    >>> [len(thickness_misfits(each, 1.375, 1.75)) for each in (1.25, 1.375, 2.0)]
    [1, 0, 1]
    """
    takes = f"The door is {inches(thickness)} thick; the hardware takes {inches(least)} to {inches(most)}"
    thin = misfit(thickness < least - HAIR, takes, "Get hardware made for a door this thin")
    return thin + misfit(thickness > most + HAIR, takes, "Get the maker's kit for thick doors before boring")


def wood_misfits(beside: float, wood_beside: float, stile: float, needed: float) -> list[dict[str, str]]:
    """Whether enough wood is left beside the faceplate, and the solid edge is wide enough."""
    found = misfit(
        beside < wood_beside - HAIR,
        f"{inches(beside)} of wood is left each side of faceplate and edge bore; {inches(wood_beside)} is wanted",
        "Use a narrower faceplate or a drive-in latch",
    )
    return found + misfit(
        0 < stile < needed - HAIR,
        f"The solid edge is {inches(stile)} wide; this lock needs {inches(needed)}",
        "Use a shorter backset, or a lock made for a narrow stile",
    )


def hole_misfits(name: str, cut: float, wanted: float, within: float, small: str, large: str) -> list[dict[str, str]]:
    """Whether a hole that is in the door already has the size that the hardware wants.

    >>> hole_misfits("edge bore", 1.25, 1, 0.0625, "", "Glue in a dowel")[0]["mend"]
    'Glue in a dowel'
    """
    says = f"The {name} in the door is {inches(cut)}; the hardware wants {inches(wanted)}"
    return misfit(cut < wanted - within, says, small) + misfit(cut > wanted + within, says, large)


def holes_misfits(
    cut_cross_bore: float,
    cross_bore: float,
    cut_edge_bore: float,
    edge_bore: float,
    cut_backset: float,
    backset: float,
    within: float,
) -> list[dict[str, str]]:
    """What of the holes in the door does not suit the hardware, each beside the size that it wants."""
    guide = "Clamp a plywood guide with the right hole over it and bore again"
    dowel = "Glue in a dowel and bore again"
    latch = "Get a latch of the backset that is in the door, or one that adjusts to it"
    found = hole_misfits("cross bore", cut_cross_bore, cross_bore, within, guide, "Glue in a plug and bore again")
    found.extend(hole_misfits("edge bore", cut_edge_bore, edge_bore, within, dowel, dowel))
    found.extend(hole_misfits("backset", cut_backset, backset, within, latch, latch))
    return found


def rose_misfits(rose: float, hole: float, tolerance: float, is_deadbolt: bool, spacing: float) -> list[dict[str, str]]:
    """Whether the rose covers the bore, and does not meet that of the knob."""
    found = misfit(
        rose < hole + 2 * tolerance,
        f"A rose of {inches(rose)} does not cover a bore of {inches(hole)}",
        "Fit a plate that covers the bore",
    )
    return found + misfit(
        is_deadbolt and spacing < rose,
        f"At {inches(spacing)} apart the roses of knob and deadbolt meet",
        f"Set them more than {inches(rose)} apart",
    )


def strike_misfits(screw: float, to_stud: float, least: float) -> list[dict[str, str]]:
    """Whether the screws of a deadbolt's strike reach far enough into the stud."""
    bite = max(0.0, screw - to_stud)
    return misfit(
        bite < least - HAIR,
        f"Strike screws of {inches(screw)} go {inches(bite)} into the stud; {inches(least)} is the least",
        f"Use screws of {inches(to_stud + least)} or longer",
    )


def reach_misfits(at: float) -> list[dict[str, str]]:
    """Whether the lock of an accessible door is within reach (2010 ADA 404.2.7)."""
    return misfit(
        at < REACH_LEAST - HAIR or at > REACH_MOST + HAIR,
        f"{inches(at)} is outside the reach of an accessible door, {inches(REACH_LEAST)} to {inches(REACH_MOST)}",
        "Move it within that reach",
    )


def cautions_for(is_deadbolt: bool, reveal: float, thrown: float, backset: float, width: float) -> list[str]:
    """What to watch with this lock."""
    cautions = []
    if is_deadbolt:
        cautions.append("The deadbolt must open from the inside by its turn, without a key.")
    if reveal >= thrown / 2:
        cautions.append(
            f"The gap of {inches(reveal)} takes half of the throw or more: mend the hang of the door before the lock."
        )
    if min(abs(backset - PREPARED_BACKSETS[0]), abs(backset - PREPARED_BACKSETS[1])) > HAIR:
        cautions.append(f"{inches(backset)} is not a common backset: have the latch in hand before boring.")
    if width == SERIES_161_WIDTH:
        cautions.append("Many latches have a 1 in faceplate at this backset too: scribe around the one in hand.")
    return cautions
