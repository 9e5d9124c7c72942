"""What readings, marks, cuts and timber may be out by, and where each figure comes from."""
