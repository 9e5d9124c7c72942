"""The phone's way into the core: what a page asks goes in, what it shows comes out.

In: a request of `messages`, as JSON. Out: its answer, or a refusal in three sentences. The journal
that a phone keeps is described in `entries`; `fold` makes a house of it.
"""

from longpoint.phone.answers import answer
from longpoint.phone.planned import Ports

__all__ = ["Ports", "answer"]
