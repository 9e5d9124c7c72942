"""Figures from other people's files, each confirmed by a person before a house file holds it.

In: tables, models and sections as somebody else wrote them. Out: a list with one line for each
value as it was read, and where it stands; and from a list that a person has gone through, a house
file with what was confirmed, and nothing else.
"""
