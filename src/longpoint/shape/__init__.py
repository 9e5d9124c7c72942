"""The true shape of an opening or a room, fitted to its readings, with its doubt.

In: readings from `longpoint.survey`. Out: `FittedOpening`, `FittedRoom`, and findings.

Axes, once for the whole package: seen from inside the room, x to the right, y up, origin at the
bottom left corner, the bottom side along x; angles anticlockwise, in degrees wherever a name can
be seen. Corners run anticlockwise: bottom left, bottom right, top right, top left; side i runs
from corner i to corner i + 1: bottom, right, head, left.
"""
