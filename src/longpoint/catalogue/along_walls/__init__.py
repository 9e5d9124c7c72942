"""Rails and beads that run along the walls of a room, as skirting does."""
