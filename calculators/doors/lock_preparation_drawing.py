"""The door's edge, its face and the jamb at the height of one lock, side by side."""

from __future__ import annotations

from typing import Any

from calculators.declaration import Answer, Sheet
from calculators.drawing import Shape, break_line, circle, dimension, label, leader, line, rectangle, sheet
from calculators.writing import inches

UP = 4.0
"""So much of the door and the jamb is drawn above and below the lock."""
APART = 2.0
BEYOND = 1.5


def lock_preparation_drawing(values: dict[str, Any], answer: Answer) -> Sheet:
    """0, 0 is the centre of the lock on the face's high edge; the face to the right, the edge to the left of it.

    The jamb stands right of the face. Bores, faceplate and rose are to scale; the door goes on beyond the breaks.
    """
    shapes: list[Shape] = []
    thick = values["thickness"]
    centre = answer["cross_bore_centre"]
    bore = answer["cross_bore_diameter"] / 2
    edge_bore = answer["edge_bore_diameter"] / 2
    tall = answer["faceplate_height"] / 2
    wide = answer["faceplate_width"] / 2
    deep = answer["mortise_depth"]
    off = thick * values["bevel"]
    up = max(UP, values["rose"] / 2 + 1.5, bore + 1.5)

    # The edge.
    left = -APART - thick
    middle = left + answer["edge_bore_centre"]
    shapes.append(line(left, -up, left, up, "cut"))
    shapes.append(line(-APART, -up, -APART, up, "cut"))
    shapes.append(break_line(left, up, -APART, up))
    shapes.append(break_line(left, -up, -APART, -up))
    if tall > 0:
        shapes.append(rectangle(middle - wide, -tall, 2 * wide, 2 * tall, "none", "outline"))
        shapes.append(dimension(middle - wide, -tall, middle - wide, tall, inches(2 * tall), "left"))
    shapes.append(circle(middle, 0.0, edge_bore, "paper", "outline"))
    shapes.append(line(middle, -tall - 0.75, middle, tall + 0.75, "centre"))
    shapes.append(dimension(left, up, middle, up, inches(answer["edge_bore_centre"], 0.03125), "above"))
    shapes.append(dimension(left, -up, -APART, -up, inches(thick), "below"))
    shapes.append(label((left - APART) / 2, -up + 0.75, "edge"))

    # The face.
    right = max(centre + max(bore, values["rose"] / 2) + 1.0, centre + bore + BEYOND)
    shapes.append(line(0.0, -up, 0.0, up, "cut"))
    shapes.append(break_line(right, -up, right, up))
    shapes.append(line(0.0, up, right, up, "fine"))
    shapes.append(line(0.0, -up, right, -up, "fine"))
    if off > 0:
        shapes.append(line(off, -up, off, up, "hidden"))
    for side in [-1.0, 1.0]:
        shapes.append(line(deep, side * edge_bore, centre - bore, side * edge_bore, "hidden"))
    if tall > 0:
        shapes.append(rectangle(0.0, -tall, deep, 2 * tall, "none", "hidden"))
    shapes.append(circle(centre, 0.0, bore, "none", "cut"))
    shapes.append(circle(centre, 0.0, values["rose"] / 2, "none", "centre"))
    shapes.append(line(0.0, 0.0, centre + bore + 0.5, 0.0, "centre"))
    shapes.append(line(centre, -bore - 0.5, centre, bore + 0.5, "centre"))
    shapes.append(dimension(0.0, 0.0, centre, 0.0, "backset " + inches(centre), "below"))
    if values["stile"] > 0 and values["stile"] < right:
        shapes.append(line(values["stile"], -up, values["stile"], up, "limit"))
        shapes.append(dimension(0.0, -up, values["stile"], -up, "solid edge " + inches(values["stile"]), "below"))
    shapes.append(leader(centre, bore, "cross bore " + inches(2 * bore), "above"))
    shapes.append(leader(max(deep, (centre - bore) / 2), edge_bore, "edge bore " + inches(2 * edge_bore), "above"))
    shapes.append(leader(centre, -values["rose"] / 2, "rose " + inches(values["rose"]), "below"))
    shapes.append(label(right / 2, -up + 0.75, "face"))

    # The jamb.
    jamb = right + APART
    stop = jamb + thick + values["stop_gap"]
    strike = jamb + answer["strike_from_jamb_edge"]
    shapes.append(line(jamb, -up, jamb, up, "cut"))
    shapes.append(line(stop, -up, stop, up, "cut"))
    shapes.append(break_line(stop + BEYOND, -up, stop + BEYOND, up))
    shapes.append(line(jamb, up, stop + BEYOND, up, "fine"))
    shapes.append(line(jamb, -up, stop + BEYOND, -up, "fine"))
    shapes.append(circle(strike, 0.0, edge_bore, "none", "outline"))
    shapes.append(line(jamb, 0.0, stop, 0.0, "centre"))
    shapes.append(line(strike, -edge_bore - 0.75, strike, edge_bore + 0.75, "centre"))
    shapes.append(dimension(jamb, up, strike, up, inches(answer["strike_from_jamb_edge"], 0.03125), "above"))
    shapes.append(dimension(strike, 0.0, stop, 0.0, inches(answer["strike_from_stop"], 0.03125), "below"))
    shapes.append(label((jamb + stop) / 2, -up + 0.75, "jamb"))
    shapes.append(leader(stop + 0.375, -up + 1.5, "stop", "below"))
    shapes.append(leader(strike, edge_bore, "strike", "above"))
    return sheet("Where to bore", words(values, answer), shapes)


def words(values: dict[str, Any], answer: Answer) -> str:
    """The drawing in words."""
    plate = "There is no faceplate."
    if answer["faceplate_height"] > 0:
        plate = (
            f"The faceplate is {inches(answer['faceplate_width'])} by {inches(answer['faceplate_height'])}, "
            f"let in {inches(answer['mortise_depth'], 0.03125)}."
        )
    stile = f" The solid edge is {inches(values['stile'])} wide." if values["stile"] > 0 else ""
    centre = inches(answer["cross_bore_centre"])
    from_face = inches(answer["edge_bore_centre"], 0.03125)
    return (
        f"At {inches(answer['centre_height'])} above the finished floor. The face: a cross bore of "
        f"{inches(answer['cross_bore_diameter'])}, its centre {centre} from the high edge, and a rose of "
        f"{inches(values['rose'])} over it. The edge of the {inches(values['thickness'])} door: an edge bore of "
        f"{inches(answer['edge_bore_diameter'])}, {from_face} from either face. {plate} The jamb: the strike's centre "
        f"is {inches(answer['strike_from_jamb_edge'], 0.03125)} from its edge and "
        f"{inches(answer['strike_from_stop'], 0.03125)} from the stop.{stile}"
    )
