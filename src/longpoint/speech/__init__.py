"""What is said, so that it can be said in another language.

In: an English message and what it speaks of. Out: a text that reads in English as it is, and of
which a `Tongue` makes its own language just before it is written.
"""
