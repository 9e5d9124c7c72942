"""Labels for the pieces of a house: where they stand on the paper, and what stands on them.

In: a `HousePlan`, a grid of label paper. Out: pages of drawings to scale, and the list of bundles.
"""
