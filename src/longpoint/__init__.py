"""Plans the fix-out of a house: readings in, pieces, sticks and sheets out."""

__version__ = "0.1.0"
