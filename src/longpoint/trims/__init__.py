"""Which pieces a trim is made of, and how their corners meet.

In: widths, quirks, corner angles. Out: saw angles and edge lengths. Plain geometry of one joint or
one outline; `longpoint.pieces` turns it into pieces of a house.
"""
