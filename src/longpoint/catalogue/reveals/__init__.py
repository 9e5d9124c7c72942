"""Boards that line an opening, and the stops in it."""
