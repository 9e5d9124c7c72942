"""Lengths, angles and doubts, and how a carpenter writes and reads them.

In: text and numbers as written. Out: millimetres, degrees, standard uncertainties; and text again.
"""
