"""Cornice where wall and ceiling meet."""
