"""What devices write down, as entries that are never changed, and how devices pass them on.

In: entries of a journal, each with the name of its device and that device's own count. Out: which
of them another device lacks, and both journals put together. What an entry means is none of this
room's business: `phone/fold` makes a house of them.
"""

from longpoint.journal.counters import Counters, UpTo, counters_sum
from longpoint.journal.counting import counting, in_order
from longpoint.journal.entry import (
    MOST_COUNT,
    Entry,
    Key,
    as_written,
    checked_entry,
    is_house,
    key_of,
    read_entry,
)
from longpoint.journal.far_ahead import MOST_AHEAD, WHY_REFUSED, furthest_ahead
from longpoint.journal.passing_on import Clash, Merged, Seen, lacking, lacking_of, merged, seen

__all__ = [
    "MOST_AHEAD",
    "MOST_COUNT",
    "WHY_REFUSED",
    "Clash",
    "Counters",
    "Entry",
    "Key",
    "Merged",
    "Seen",
    "UpTo",
    "as_written",
    "checked_entry",
    "counters_sum",
    "counting",
    "furthest_ahead",
    "in_order",
    "is_house",
    "key_of",
    "lacking",
    "lacking_of",
    "merged",
    "read_entry",
    "seen",
]
