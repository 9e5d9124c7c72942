"""Panelling frames on a wall."""
