"""What a crew's own finished work says of its saw and its tape, and of the forecasts it was given.

In: frames as they went up (gaps, quirks), forecasts and what came of them, a line's values unit by
unit. Out: what the saw and the tape are out by, with how surely it is known; whether forecasts keep
their word; and an alarm when a line begins to drift.
"""
