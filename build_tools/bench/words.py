"""Sentences of the trade, drawn by lot: enough of them that hardly two of a thousand procedures are alike."""

from __future__ import annotations

from random import Random


def _phrases(text: str) -> list[str]:
    return [phrase.strip() for line in text.splitlines() for phrase in line.split("|") if phrase.strip()]


VERBS = """set level plumb clamp fasten seal drill trim mark measure cut dry-fit shim tighten brush sand wipe lift
lower square snap lay stagger caulk prime test flush drain cap wrap thread cover""".split()
THINGS = _phrases(
    """
bracket|cleat|flange|hinge leaf|strike plate|trim board|starter course|shut-off valve|supply line|threshold
jamb leg|head casing|form board|stake|expansion strip|edge forms|corner bead|nailing strip|closet rod
shelf cleat|access panel|drip edge|sill pan|vent hood|meter board|trap arm|cleanout|tailpiece|escutcheon
wall plate|backer rod|base shoe|reducer strip|transom bar|ledger|riser board
    """
)
PLACES = _phrases(
    """
at the wall line|beside the door|under the window|along the long side|at the low corner|over the joint
behind the finished face|at the first stud|between the two marks|on the hinge side|at the outlet end
past the edge|above the finished floor|against the stop|in the middle of the run|at each end of the row
next to the opening|on the side that shows|where the two rooms meet|inside the chase
    """
)
STATES = _phrases(
    """
dry and free of dust|flush with the face|tight to the stop|in line with its neighbour|clear of the wall
plumb both ways|held by two fasteners|open along the whole seam|seated all round|marked on both sides
out of wind|still loose enough to slide|backed by solid wood|bedded without a gap|square to the line
    """
)
BECAUSE = _phrases(
    """
the joint opens when the wood dries|water finds the low spot and stays there|the next piece copies the error
the door binds in damp weather|the fastener misses the framing|the seal tears when it is moved once more
the finish cracks along the edge|nobody can reach it once the wall is closed
the crew after this one starts from it|the slope runs the wrong way|the noise comes back within a year
the part is bought twice|the screw head pulls through|the gap shows from across the room
the load hangs on one corner
    """
)
SIGNS = _phrases(
    """
no light shows under the straightedge|the bubble stands between its lines|a strip of paper drags all along
the two diagonals read the same|nothing moves under a hand's weight|a drop of water runs to the outlet
the latch clicks without a push|the line touches at both ends and in the middle
    """
)
MENDS = _phrases(
    """
take it up and set it again|plane the high spot and try once more|add a shim on the low side
loosen the last two fasteners and start from the fixed end|cut a new piece|call the lead before going on
clean the seat and lay a new bead|move the mark and check the other side
    """
)
HAZARDS = _phrases(
    """
A blade that is still turning|Dust from the cut|A sharp edge|A load that tips|A live wire behind the wall
Fumes in a closed room|Wet cement on skin|A nail that goes through
    """
)
HARMS = _phrases(
    """
It cuts to the bone|It scars the lungs over years|It opens the palm|It crushes feet and fingers
It stops the heart|It makes people faint before they notice|It burns, and is felt hours later
It strikes whoever holds the work
    """
)
AVOIDS = _phrases(
    """
Wait until it stands still, and keep the guard on|Wear the mask and cut outdoors|Wear gloves and turn it away
Two people carry it, and one says when|Switch off, lock, and test before touching
Open two windows and go out to rest|Wash at once with clean water, and wear boots
Keep the other hand out of the line of fire
    """
)


class Words:
    """Draws sentences; the same seed gives the same ones."""

    def __init__(self, random: Random) -> None:
        self.random = random

    def one(self, of: list[str]) -> str:
        """One of a list."""
        return self.random.choice(of)

    def place(self) -> str:
        """A place with the mark that it is known by."""
        return f"{self.one(PLACES)} (mark {self.one(list('ABCDEFGHJKLMNPRSTUVWXYZ'))})"

    def order(self) -> str:
        """One action."""
        return f"{self.one(VERBS).capitalize()} the {self.one(THINGS)} {self.place()}."

    def detail(self) -> str:
        """Two sentences on how."""
        return (
            f"Hold the {self.one(THINGS)} {self.one(PLACES)} and {self.one(VERBS)} it until it is {self.one(STATES)}. "
            f"Go from there to the {self.one(THINGS)} {self.place()}, and look back before you {self.one(VERBS)} it."
        )

    def point(self) -> str:
        """What makes or breaks a step."""
        return f"The {self.one(THINGS)} {self.place()} is {self.one(STATES)}."

    def why(self) -> str:
        """A reason."""
        place = self.place()
        return f"{place[0].upper()}{place[1:]}, {self.one(BECAUSE)}."

    def sign(self) -> str:
        """What is seen when it is right."""
        return f"At the {self.one(THINGS)} {self.place()}, {self.one(SIGNS)}."

    def mend(self) -> str:
        """What to do when it is not."""
        return f"At the {self.one(THINGS)} {self.place()}, {self.one(MENDS)}."

    def danger(self) -> tuple[str, str, str]:
        """A hazard, what it does, and how to avoid it."""
        which = self.random.randrange(len(HAZARDS))
        return f"{HAZARDS[which]} {self.one(PLACES)}.", f"{HARMS[which]}.", f"{AVOIDS[which]}."
