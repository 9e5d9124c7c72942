"""Thousands of pieces of a profile, planned in parts of sticks first."""
