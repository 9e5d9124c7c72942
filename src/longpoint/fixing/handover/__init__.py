"""Handing over: what stands on the wall judged, what is left to do, what the painter gets.

In: a house with what was read of finished sets, and its pieces. Out: verdicts by the guide of the
place and day, defects, progress, and the painter's quantities.
"""
