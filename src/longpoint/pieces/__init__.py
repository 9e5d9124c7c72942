"""Fitted shapes and trim into pieces: edges, points, saw settings, hook readings.

In: `Shapes` and the house's settings. Out: `Piece` records and findings. Left and right of a piece
are as it lies at the saw on its back, face up, its outer edge (skirting: top edge) away from you:
round an opening the pieces run clockwise as seen from the room.
"""
