"""What to tap when the pieces of an opening are up and the joints stand open.

In: gaps, steps and quirks as seen on the wall. Out: what they tell, the taps in their order, what
no tap can cure, and all of it in words.
"""
