"""What of a stick goes back on the rack."""

from longpoint.sticks.plan import CutStick
from longpoint.survey.instruments import Saw


def rest_mm(stick: CutStick, saw: Saw) -> float:
    """Return the length that is kept of a stick; 0 when it is too short to keep. [mm]"""
    return stick.left_mm if stick.left_mm >= saw.keep_mm else 0.0
