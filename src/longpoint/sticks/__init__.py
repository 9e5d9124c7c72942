"""Pieces onto sticks: demand, exact length used, plan, bound, check.

In: `Piece` records, stock and saw. Out: a `CutPlan`, verified by a checker that doesn't trust
whoever made it. Lengths inside the nester are whole hundredths of a millimetre.
"""
