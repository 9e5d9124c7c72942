"""Shelves between the cheeks of an alcove."""
